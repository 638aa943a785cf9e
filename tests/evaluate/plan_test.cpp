// The plan of the work against the order that a shop must keep.

#include <algorithm>
#include <string_view>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/packet.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"

using namespace hs;
using namespace hs::evaluate;
using test::verdict;

namespace {

// Orders of tasks that the shop must keep.
std::size_t task(const Timetable& table, std::string_view key) {
  for (std::size_t i = 0; i < table.tasks.size(); ++i) {
    if (table.tasks[i].key == key) return i;
  }
  FAIL("no task " << key);
  return 0;
}
bool waits(const Timetable& table, std::size_t later, std::size_t earlier) {
  if (later == earlier) return true;
  for (const schedule::After& after : table.tasks[later].after) {
    if (waits(table, after.task, earlier)) return true;
  }
  return false;
}

config::Config demo() { return test::preset("demo"); }

}  // namespace

TEST_CASE("the plan keeps the shop's order", "[packet][plan]") {
  config::Config c = demo();
  c.power.outlets = 1;
  c.plan.start = "2027-04-05";  // a Monday
  c.plan.wet_days = "2027-04-05 2027-04-06 2027-04-07";
  const Evaluation e = evaluate_packet(c);
  REQUIRE(e.packet != nullptr);
  const Timetable& t = e.packet->timetable;
  const auto later = [&](std::string_view second, std::string_view first) {
    INFO(first << " before " << second);
    CHECK(waits(t, task(t, second), task(t, first)));
  };
  later("boxes.assemble", "joint.pull");
  later("paint.primer", "wiring.cut");
  later("buy.order", "open.settle");
  later("paint.primer", "base.fit");  // its boards are painted all round
  later("base.boards", "paint.coat_2");
  later("site.cabinets", "base.boards");
  later("metal.measure", "top.substrate");
  later("metal.fold", "metal.measure");
  later("block.set", "metal.bed");  // it stands on the metal
  later("oven.place", "block.set");
  // An adhesive's grab is not its strength: a day of waiting at the least.
  CHECK(t.tasks[task(t, "joint.test")].wait_min >= 24 * 60);
  REQUIRE(t.plan.has_value());
  // No work on a weekend, and no work that needs a dry day on the three wet ones.
  for (std::size_t i = 0; i < t.tasks.size(); ++i) {
    for (const schedule::Span& span : t.plan->tasks[i].work) {
      const auto day = span.from / (24 * 60);
      CHECK(day % 7 < 5);
      if (t.tasks[i].needs != 0) CHECK(day >= 3);
    }
  }
  CHECK(verdict(e, "plan.days") == Verdict::Ok);
  c.plan.start = "";
  CHECK(verdict(evaluate_packet(c), "plan.days") == Verdict::Unknown);
}

TEST_CASE(
    "what stands at a wall is tied before anything opens, by the screws that tipping asks for",
    "[packet][plan][loads]") {
  config::Config c = demo();
  const auto named = [](const Evaluation& e, std::string_view start) {
    double count = 0;
    for (const parts::Hardware& one : e.build->parts.hardware) {
      if (one.name.starts_with(start)) count += one.quantity;
    }
    return count;
  };
  const auto has_tie = [](const Evaluation& e) {
    const auto& tasks = e.packet->timetable.tasks;
    return std::any_of(tasks.begin(), tasks.end(),
                       [](const schedule::Task& one) { return one.key == "site.tie"; });
  };
  c.loads.held = config::Held::Free;
  const Evaluation loose = evaluate_packet(c);
  CHECK(named(loose, "screw of the tie") == 0);
  CHECK_FALSE(has_tie(loose));

  c.loads.held = config::Held::Wall;
  const Evaluation e = evaluate_packet(c);
  int tied = 0;
  for (const loads::RunLoads& run : e.build->loads.runs) {
    tied += std::any_of(run.cases.begin(), run.cases.end(),
                        [](const loads::TipCase& one) { return one.tie_n > 0; });
  }
  REQUIRE(tied > 0);
  CHECK(named(e, "screw of the tie") == tied * e.build->loads.screws);
  CHECK(named(e, "washer of the tie") == tied * e.build->loads.screws);
  REQUIRE(has_tie(e));
  const Timetable& t = e.packet->timetable;
  CHECK(waits(t, task(t, "site.tie"), task(t, "site.cabinets")));
  CHECK(waits(t, task(t, "fronts.hang"), task(t, "site.tie")));

  c.loads.held = config::Held::Ground;
  const Evaluation ground = evaluate_packet(c);
  CHECK(named(ground, "screw of the tie") == 0);
  CHECK(has_tie(ground));
}

TEST_CASE("begun as late as the plan says, the same hands are done on the same day",
          "[packet][plan]") {
  const config::Config c = test::preset("stations/open_courtyard");
  const Evaluation e = evaluate_packet(c);
  const Timetable& t = e.packet->timetable;
  REQUIRE(t.plan.has_value());
  int hold = 0;
  for (std::size_t i = 0; i < t.tasks.size(); ++i) {
    const schedule::Placed& placed = t.plan->tasks[i];
    INFO(t.tasks[i].key);
    // Something that nobody works at ends when the task may begin.
    const auto end_with = [&](schedule::Minute from) {
      std::vector<schedule::Task> tasks = t.tasks;
      schedule::Task until;
      until.name = "until then";
      until.wait_min = static_cast<int>(from);
      until.who = -1;
      tasks[i].after.push_back({tasks.size(), false});
      tasks.push_back(until);
      const auto plan = schedule::plan_of(tasks, t.calendar);
      REQUIRE(plan);
      return plan->end;
    };
    CHECK(end_with(placed.latest) == t.plan->end);
    hold += placed.holds_end() ? 1 : 0;
    // A day later it is not.
    if (placed.holds_end()) CHECK(end_with(placed.latest + 24 * 60) > t.plan->end);
  }
  CHECK(hold >= 3);
  // Fronts may wait for as long as the fabricator folds the tops.
  const std::size_t fronts = task(t, "fronts.hang");
  CHECK(t.plan->tasks[task(t, "safety.check")].holds_end());
  CHECK(t.plan->tasks[fronts].latest - t.plan->tasks[fronts].start > 14 * 24 * 60);
}

TEST_CASE("a date that is none is refused in words", "[packet][config]") {
  config::Config c;
  CHECK(check(c).empty());
  for (const char* bad : {"2027-02-29", "tomorrow", "2027-4-5", "05.04.2027"}) {
    c.plan.start = bad;
    const auto problems = check(c);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].path == "plan.start");
    CHECK(problems[0].allowed.find("2027-04-05") != std::string::npos);
  }
  c.plan.start = "2028-02-29";
  CHECK(check(c).empty());
  c.plan.wet_days = "2027-04-05 soon";
  CHECK(check(c).size() == 1);
}
