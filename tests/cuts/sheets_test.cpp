#include "engine/cuts/sheets.h"

#include <catch_amalgamated.hpp>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "tests/cuts/published.h"
#include "tests/cuts/sheet_walker.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

namespace {

using hs::cuts::Pane;
using hs::cuts::plan_sheets;
using hs::cuts::SheetJob;
using hs::cuts::SheetPart;
using hs::cuts::SheetPlan;
using hs::test::Random;

// By definition: a piece gives the parts when it is one of them after trimming, or when a cut
// somewhere leaves two pieces that give some of them each. Every place and every choice is tried.
class TryEverything {
 public:
  explicit TryEverything(const SheetJob& job) : job_(job) {}

  int fewest_sheets() {
    const unsigned all = (1u << job_.parts.size()) - 1;
    std::vector<int> sheets(all + 1, 0);
    const int width = static_cast<int>(job_.width - 2 * job_.trim);
    const int height = static_cast<int>(job_.height - 2 * job_.trim);
    for (unsigned set = 1; set <= all; ++set) {
      sheets[set] = 1000;
      for (unsigned one = set; one > 0; one = (one - 1) & set) {
        if (sheets[set & ~one] + 1 < sheets[set] && gives(one, width, height)) {
          sheets[set] = sheets[set & ~one] + 1;
        }
      }
    }
    return sheets[all];
  }

 private:
  bool gives(unsigned set, int width, int height) {
    if (set == 0) return true;
    if (width <= 0 || height <= 0) return false;
    const auto key = std::make_tuple(set, width, height);
    const auto at = known_.find(key);
    if (at != known_.end()) return at->second;
    return known_[key] = try_cuts(set, width, height);
  }

  bool try_cuts(unsigned set, int width, int height) {
    if ((set & (set - 1)) == 0) {
      std::size_t index = 0;
      while ((set >> index) != 1) ++index;
      const SheetPart& part = job_.parts[index];
      return (part.width <= width && part.height <= height) ||
             (job_.turn && part.height <= width && part.width <= height);
    }
    const int kerf = static_cast<int>(job_.kerf);
    for (unsigned one = (set - 1) & set; one > 0; one = (one - 1) & set) {
      for (int x = 1; x < width; ++x) {
        if (gives(one, x, height) && gives(set & ~one, width - x - kerf, height)) return true;
      }
      for (int y = 1; y < height; ++y) {
        if (gives(one, width, y) && gives(set & ~one, width, height - y - kerf)) return true;
      }
    }
    return false;
  }

  const SheetJob& job_;
  std::map<std::tuple<unsigned, int, int>, bool> known_;
};

SheetJob random_job(Random& random, int side, int most_parts) {
  SheetJob job;
  job.width = side / 2 + 1 + random.below(side);
  job.height = side / 2 + 1 + random.below(side);
  job.kerf = random.below(3);
  job.trim = random.one_in(4) ? 1 : 0;
  job.turn = random.one_in(2);
  const int parts = 1 + random.below(most_parts);
  for (int i = 0; i < parts; ++i) {
    const SheetPart part{1 + random.below(side * 3 / 4), 1 + random.below(side * 3 / 4)};
    if (!hs::cuts::sheet_holds(job, part)) continue;
    job.parts.insert(job.parts.end(), random.one_in(4) ? 2 : 1, part);
  }
  if (job.parts.size() > static_cast<std::size_t>(most_parts)) {
    job.parts.resize(static_cast<std::size_t>(most_parts));
  }
  return job;
}

SheetPart pair_of(const nlohmann::json& pair) {
  return {pair[0].get<std::int64_t>(), pair[1].get<std::int64_t>()};
}

// The list's sheet, without parts.
SheetJob sheet_job(const nlohmann::json& list, std::int64_t kerf, bool turn) {
  const SheetPart sheet = pair_of(list["sheet"]);
  return {sheet.width, sheet.height, kerf, 0, turn, {}};
}

}  // namespace

TEST_CASE("a shop's sheets are cut at their optimum, with proof", "[cuts]") {
  // Optima by construction: no waste at all.
  const auto lists = nlohmann::json::parse(hs::test::cuts_file("shop_sheets.json"));
  int checked = 0;
  for (const auto& list : lists) {
    if (!list.contains("parts")) continue;
    SheetJob job = sheet_job(list, list["kerf"].get<std::int64_t>(), false);
    for (const auto& part : list["parts"]) job.parts.push_back(pair_of(part));
    const SheetPlan plan = plan_sheets(job);
    INFO(list["name"]);
    CHECK(hs::test::broken_by(job, plan) == "");
    CHECK(plan.sheets.size() == list["optimal_sheets"].get<std::size_t>());
    CHECK(plan.proven);
    // A wider saw needs one sheet more: the area alone says so.
    ++job.kerf;
    CHECK(plan_sheets(job).lower_bound > list["optimal_sheets"].get<std::int64_t>());
    ++checked;
  }
  CHECK(checked == 2);
}

TEST_CASE("sides, bottoms and tops of a station come out of six sheets, with proof", "[cuts]") {
  // In tenths of a mm: a plan of six sheets was found by hand. What is higher than half a sheet
  // stands beside each other only, and is 12,746 mm long with its cuts: more than five sheets of
  // 2431.2.
  const std::pair<int, SheetPart> kinds[] = {
      {2, {11189, 7668}}, {2, {11989, 6068}}, {6, {7530, 7088}}, {3, {7530, 5488}},
      {2, {7530, 5464}},  {1, {5968, 6628}},  {2, {5464, 5305}}, {2, {5444, 5105}},
      {3, {7530, 3264}},  {6, {3264, 6905}},  {3, {3244, 6705}}, {3, {6262, 1221}},
      {2, {5968, 1221}},  {4, {5464, 1030}}};
  SheetJob job{24400, 12200, 32, 60, false, {}};
  for (const auto& [count, part] : kinds) {
    job.parts.insert(job.parts.end(), static_cast<std::size_t>(count), part);
  }
  const SheetPlan plan = plan_sheets(job, 20'000);
  CHECK(hs::test::broken_by(job, plan) == "");
  CHECK(plan.sheets.size() == 6);
  CHECK(plan.lower_bound == 6);
  CHECK(plan.proven);
}

TEST_CASE("equal parts fill a sheet as often as a table over all cuts says", "[cuts]") {
  const auto lists = nlohmann::json::parse(hs::test::cuts_file("shop_sheets.json"));
  int checked = 0;
  for (const auto& list : lists) {
    if (!list.contains("max_per_sheet")) continue;
    for (const auto& [name, most] : list["max_per_sheet"].items()) {
      const std::int64_t kerf = name[4] - '0';
      const bool turn = name.ends_with("free");
      for (const int count : {most.get<int>(), most.get<int>() + 1, 3 * most.get<int>() + 1}) {
        SheetJob job = sheet_job(list, kerf, turn);
        job.parts.assign(static_cast<std::size_t>(count), pair_of(list["part"]));
        const SheetPlan plan = plan_sheets(job);
        INFO(list["name"] << " " << name << " x " << count);
        CHECK(hs::test::broken_by(job, plan) == "");
        CHECK(static_cast<int>(plan.sheets.size()) ==
              (count + most.get<int>() - 1) / most.get<int>());
        CHECK(plan.proven);
        ++checked;
      }
    }
  }
  CHECK(checked == 6 * 6 * 3);
}

TEST_CASE("small sheet jobs need what trying every cut needs, with proof", "[cuts]") {
  Random random(23);
  for (int i = 0; i < hs::test::sweep(400); ++i) {
    const SheetJob job = random_job(random, 9, 6);
    const SheetPlan plan = plan_sheets(job);
    INFO("case " << i);
    REQUIRE(hs::test::broken_by(job, plan) == "");
    REQUIRE(plan.proven);
    REQUIRE(static_cast<int>(plan.sheets.size()) == TryEverything(job).fewest_sheets());
  }
}

TEST_CASE("long sheet lists hold together, and are no worse than strips by hand", "[cuts]") {
  Random random(29);
  for (int i = 0; i < hs::test::sweep(60); ++i) {
    const SheetJob job = random_job(random, 400, 60);
    const SheetPlan plan = plan_sheets(job, 20'000);
    INFO("case " << i);
    REQUIRE(hs::test::broken_by(job, plan) == "");
    REQUIRE(plan.sheets.size() <= hs::test::first_fit_sheets(job));
  }
}

TEST_CASE("a sheet plan is complete however early it is stopped, and how it is split", "[cuts]") {
  Random random(31);
  for (int i = 0; i < hs::test::sweep(60); ++i) {
    const SheetJob job = random_job(random, 200, i % 2 == 0 ? 40 : 10);
    hs::cuts::SheetSearch whole(job), split(job);
    INFO("case " << i);
    std::size_t sheets = split.sheets();
    std::int64_t bound = split.lower_bound();
    for (int n = 0; n < 40; ++n) {
      split.advance(100);
      REQUIRE(hs::test::broken_by(job, split.best()) == "");
      REQUIRE(split.sheets() <= sheets);
      REQUIRE(split.lower_bound() >= bound);
      sheets = split.sheets();
      bound = split.lower_bound();
    }
    whole.advance(4000);
    REQUIRE(whole.steps_used() == split.steps_used());
    REQUIRE(whole.done() == split.done());
    const SheetPlan a = whole.best(), b = split.best();
    REQUIRE(a.sheets.size() == b.sheets.size());
    for (std::size_t n = 0; n < a.sheets.size(); ++n) {
      REQUIRE(a.sheets[n].size() == b.sheets[n].size());
      for (std::size_t k = 0; k < a.sheets[n].size(); ++k) {
        REQUIRE(a.sheets[n][k].part == b.sheets[n][k].part);
        REQUIRE(a.sheets[n][k].at == b.sheets[n][k].at);
      }
    }
  }
}

TEST_CASE("grain, kerf and trimmed edges are kept to", "[cuts]") {
  // Arithmetic: 20 + 20 and one cut of 2 are 42.
  CHECK(plan_sheets({42, 30, 2, 0, false, {{20, 30}, {20, 30}}}).sheets.size() == 1);
  CHECK(plan_sheets({41, 30, 2, 0, false, {{20, 30}, {20, 30}}}).sheets.size() == 2);
  // Turned, both lie across; with grain neither does.
  CHECK(plan_sheets({30, 42, 2, 0, true, {{20, 30}, {20, 30}}}).sheets.size() == 1);
  CHECK_FALSE(hs::cuts::sheet_holds({29, 42, 2, 0, false, {}}, {30, 20}));
  CHECK(hs::cuts::sheet_holds({29, 42, 2, 0, true, {}}, {30, 20}));
  // Edges of 1 on every side leave 42 x 30.
  CHECK(plan_sheets({44, 32, 2, 1, false, {{20, 30}, {20, 30}}}).sheets.size() == 1);
  CHECK(plan_sheets({44, 32, 2, 2, false, {{20, 28}, {20, 28}}}).sheets.size() == 2);
  const SheetPlan none = plan_sheets({10, 10, 1, 0, false, {}});
  CHECK((none.sheets.empty() && none.proven && none.lower_bound == 0));
  // Five around one in the middle: it fits, but no cut goes through.
  const SheetJob wheel{5, 5, 0, 0, true, {{3, 2}, {3, 2}, {3, 2}, {3, 2}, {1, 1}}};
  CHECK(plan_sheets(wheel).sheets.size() == 2);
}

TEST_CASE("what is left of a sheet stays in one piece", "[cuts]") {
  const SheetJob job{100, 50, 0, 0, false, {{20, 50}}};
  const SheetPlan plan = plan_sheets(job);
  std::int64_t largest = 0;
  for (const Pane& pane : plan.sheets.at(0)) {
    if (pane.kind == Pane::Kind::Offcut) largest = std::max(largest, pane.width * pane.height);
  }
  CHECK(largest == 80 * 50);
}
