// Cut plans: how many published lists are proven within a second each, at the usual bound on steps.

#include <algorithm>
#include <chrono>
#include <nlohmann/json.hpp>
#include <string>

#include "engine/cuts/boards.h"
#include "engine/report/cut_json.h"
#include "tests/bench/bench.h"
#include "tests/cuts/published.h"

namespace {

template <typename Fn>
double seconds(Fn fn) {
  const auto start = std::chrono::steady_clock::now();
  fn();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

void bench_boards() {
  int lists = 0, proven = 0, worse = 0;
  double boards = 0, first_fit = 0, optimum = 0, slowest_s = 0;
  for (const hs::test::PublishedBoards& list : hs::test::published_boards()) {
    hs::cuts::BoardPlan plan;
    const double taken_s = seconds([&] { plan = hs::cuts::plan_boards(list.job); });
    const std::size_t by_first_fit = hs::test::first_fit_boards(list.job);
    ++lists;
    if (plan.proven && plan.cost == list.optimum) {
      proven += taken_s <= 1;
      slowest_s = std::max(slowest_s, taken_s);
    } else {
      std::printf("cuts: %s is open: %d boards, at least %d, after %.2f s\n", list.name.c_str(),
                  static_cast<int>(plan.cost), static_cast<int>(plan.lower_bound), taken_s);
    }
    worse += plan.boards.size() > by_first_fit;
    boards += static_cast<double>(plan.boards.size());
    first_fit += static_cast<double>(by_first_fit);
    optimum += static_cast<double>(list.optimum);
  }
  hs::bench::print("cuts: published board lists", lists, "lists");
  hs::bench::print("cuts: proven at their optimum in 1 s each", 100.0 * proven / lists,
                   "% (target 95)");
  hs::bench::print("cuts: slowest of the proven ones", slowest_s * 1000, "ms");
  hs::bench::print("cuts: boards against first fit, longest first", boards / first_fit, "x");
  hs::bench::print("cuts: boards against the optimum", boards / optimum, "x");
  hs::bench::print("cuts: lists where first fit needs fewer boards", worse, "lists (target 0)");
}

// A shop's own lists, with kerf and several lengths.
void bench_shop_boards() {
  const auto lists = nlohmann::json::parse(hs::test::cuts_file("shop_boards.json"));
  int proven = 0;
  double slowest_s = 0;
  for (const auto& list : lists) {
    const auto job = hs::report::read_cut_job(list.dump());
    if (!job) continue;
    hs::cuts::BoardPlan plan;
    slowest_s = std::max(slowest_s, seconds([&] { plan = hs::cuts::plan_boards(job->boards); }));
    const auto& optimum =
        list.contains("optimal_boards") ? list["optimal_boards"] : list["optimal_total_cost"];
    proven += plan.proven && plan.cost == optimum.get<std::int64_t>();
  }
  hs::bench::print("cuts: shop board lists proven at their optimum",
                   100.0 * proven / static_cast<double>(lists.size()), "% (target 100)");
  hs::bench::print("cuts: slowest shop board list", slowest_s * 1000, "ms (target 50)");
}

}  // namespace

void bench_cuts() {
  bench_boards();
  bench_shop_boards();
}
