// Cut plans: how many published lists are proven within a second each, at the usual bound on steps.

#include <algorithm>
#include <chrono>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "engine/cuts/boards.h"
#include "engine/cuts/sheets.h"
#include "engine/report/cut_json.h"
#include "tests/bench/bench.h"
#include "tests/cuts/published.h"
#include "tests/cuts/sheet_walker.h"
#include "tests/support/random.h"

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

// A shop's own sheets: two lists by construction without waste, and equal parts.
void bench_shop_sheets() {
  const auto lists = nlohmann::json::parse(hs::test::cuts_file("shop_sheets.json"));
  int jobs = 0, proven = 0, worse = 0;
  double slowest_s = 0;
  const auto run = [&](const hs::cuts::SheetJob& job, std::size_t optimum) {
    hs::cuts::SheetPlan plan;
    slowest_s = std::max(slowest_s, seconds([&] { plan = hs::cuts::plan_sheets(job); }));
    ++jobs;
    proven += plan.proven && plan.sheets.size() == optimum;
    worse += plan.sheets.size() > hs::test::first_fit_sheets(job);
  };
  for (const auto& list : lists) {
    if (const auto job = hs::report::read_cut_job(list.dump())) {
      run(*job->sheets, list["optimal_sheets"].get<std::size_t>());
      continue;
    }
    for (const auto& [kind, most] : list["max_per_sheet"].items()) {
      nlohmann::json job = list;
      job.erase("max_per_sheet");
      job.erase("part");
      job["kerf"] = kind[4] - '0';
      job["turn"] = kind.ends_with("free");
      job["parts"] = std::vector<nlohmann::json>(most.get<std::size_t>() + 1, list["part"]);
      run(*hs::report::read_cut_job(job.dump())->sheets, 2);
    }
  }
  hs::bench::print("cuts: shop sheet lists", jobs, "lists");
  hs::bench::print("cuts: shop sheet lists proven at their optimum", 100.0 * proven / jobs,
                   "% (target 100)");
  hs::bench::print("cuts: slowest shop sheet list", slowest_s * 1000, "ms (target 1000)");
  hs::bench::print("cuts: sheet lists where first fit needs fewer", worse, "lists (target 0)");
}

// Invented lists of a shop's size, sides of 6 to 36 in out of 96 x 48 in: how near the bound.
void bench_invented_sheets() {
  hs::test::Random random(41);
  int lists = 0, proven = 0, worse = 0;
  double sheets = 0, bound = 0, slowest_s = 0;
  for (; lists < 40; ++lists) {
    hs::cuts::SheetJob job{1536, 768, 2, 0, lists % 2 == 0, {}};
    for (int n = 8 + random.below(33); n > 0; --n) {
      job.parts.push_back({96 + random.below(480), 96 + random.below(480)});
    }
    hs::cuts::SheetPlan plan;
    slowest_s = std::max(slowest_s, seconds([&] { plan = hs::cuts::plan_sheets(job); }));
    proven += plan.proven;
    worse += plan.sheets.size() > hs::test::first_fit_sheets(job);
    sheets += static_cast<double>(plan.sheets.size());
    bound += static_cast<double>(plan.lower_bound);
  }
  hs::bench::print("cuts: invented sheet lists proven", 100.0 * proven / lists, "%");
  hs::bench::print("cuts: invented sheet lists, sheets against the bound", sheets / bound, "x");
  hs::bench::print("cuts: slowest invented sheet list", slowest_s * 1000, "ms");
  hs::bench::print("cuts: invented lists where first fit needs fewer", worse, "lists (target 0)");
}

}  // namespace

void bench_cuts() {
  bench_boards();
  bench_shop_boards();
  bench_shop_sheets();
  bench_invented_sheets();
}
