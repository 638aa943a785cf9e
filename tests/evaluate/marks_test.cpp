// What a builder keeps a height to, and that all which follows has that height.

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/height/height.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"

using namespace hs;
using Catch::Matchers::WithinAbs;
using evaluate::at_mark;
using evaluate::Marks;

namespace {

constexpr double kExact = 1e-9;
constexpr double kSlack_mm = 0.011;  // the mark's own, and what adding leaves
constexpr Marks kMarks[] = {Marks::QuarterInch, Marks::FiveMillimetres};

bool is_mark(double mm, Marks marks) {
  const double steps = mm / evaluate::mark_step_mm(marks);
  return std::abs(steps - std::round(steps)) < kExact * 1000;
}

}  // namespace

TEST_CASE("a mark goes to the nearest step but not past what may be built", "[evaluate][law]") {
  CHECK(at_mark(1077.6, Marks::FiveMillimetres, {}) == 1080);
  CHECK(at_mark(1077.6, Marks::FiveMillimetres, 1079) == 1075);
  CHECK(at_mark(1077.6, Marks::FiveMillimetres, 1080) == 1080);
  CHECK(at_mark(1077.6, Marks::Exact, 1000) == 1077.6);
  // Hands: the nearest 1/4 in to a ceiling is at most half a step, 3.2 mm, past it; 3 mm may stay.
  for (double ceiling_mm = 900; ceiling_mm < 1000; ceiling_mm += 0.1) {
    for (const Marks marks : kMarks) {
      const double at_mm = at_mark(ceiling_mm, marks, ceiling_mm + height::kOverHands_mm);
      CAPTURE(ceiling_mm, at_mm);
      CHECK(at_mm <= ceiling_mm + height::kOverHands_mm + kSlack_mm);
      CHECK(std::abs(at_mm - ceiling_mm) < evaluate::mark_step_mm(marks));
      CHECK(is_mark(at_mm, marks));
      // Nothing may be built over a cover's limit.
      CHECK(at_mark(ceiling_mm, marks, ceiling_mm) <= ceiling_mm + kSlack_mm);
    }
  }
}

TEST_CASE("recommended heights are marks, near what was searched and under every ceiling",
          "[evaluate][law]") {
  test::Random random(20261127);
  int ovens = 0, level = 0, masonry = 0;
  for (int i = 0; i < 400; ++i) {  // fewer meet no masonry
    config::Config c = test::random_config(random);
    c.station.counter_height_mm.reset();
    c.station.oven_base_height_mm.reset();
    if (!evaluate::check(c).empty()) continue;
    const evaluate::Evaluation exact = evaluate::evaluate_fit(c);
    for (const Marks marks : kMarks) {
      const evaluate::Evaluation e = evaluate::evaluate_fit(c, marks);
      const evaluate::Heights &best = e.recommended.heights, &found = e.recommended.searched;
      CAPTURE(i, static_cast<int>(marks));
      CHECK(e.marks == marks);
      // The search knows nothing of marks.
      CHECK(found.counter_mm == exact.recommended.heights.counter_mm);
      CHECK(found.oven_base_mm == exact.recommended.heights.oven_base_mm);
      const double step_mm = evaluate::mark_step_mm(marks);
      const bool one = c.station.arrangement == config::Arrangement::OneLevel;
      if (best.oven_base_mm) {
        ++ovens;
        const double lift_mm = c.oven.floor_above_base_mm;
        const bool floor = config::is_masonry(c.oven.kind);
        masonry += floor ? 1 : 0;
        CHECK(is_mark(floor ? *best.oven_floor_mm : *best.oven_base_mm, marks));
        CHECK(*best.oven_base_mm >= 0);  // never below the ground
        // Only what would be below the least goes one mark up.
        const double least_mm = config::find_field("station.oven_base_height_mm")->min;
        const bool raised = *best.oven_base_mm - step_mm < std::max(0.0, least_mm);
        CHECK(std::abs(*best.oven_base_mm - *found.oven_base_mm) <
              (raised ? 2 : 1) * step_mm + kSlack_mm);
        CHECK_THAT(*best.oven_floor_mm, WithinAbs(*best.oven_base_mm + lift_mm, kExact * 1000));
        const auto highest_mm = evaluate::highest_base_mm(c);
        if (highest_mm && *highest_mm > 0) {
          CHECK(*best.oven_base_mm <= *highest_mm + kSlack_mm);
        }
        // A mark makes no height fail that was well.
        const auto fails = [](const evaluate::Evaluation& of) {
          int count = 0;
          for (const Finding& f : of.findings) {
            const bool hands = f.rule == "height.hand_ceiling" || f.rule == "height.cover_ceiling";
            count += hands && f.verdict == Verdict::Fail ? 1 : 0;
          }
          return count;
        };
        CHECK(fails(e) <= fails(exact));
      }
      if (best.counter_mm && best.oven_base_mm && one) {
        ++level;
        CHECK(*best.counter_mm == *best.oven_base_mm);
      } else if (best.counter_mm) {
        if (c.station.arrangement == config::Arrangement::TwoLevel || !best.oven_base_mm) {
          CHECK(is_mark(*best.counter_mm, marks));
        }
        CHECK(std::abs(*best.counter_mm - *found.counter_mm) < step_mm + kSlack_mm);
        if (c.station.arrangement == config::Arrangement::Riser && best.riser_mm) {
          CHECK(*best.riser_mm >= -kSlack_mm);
        }
      }
      // Nothing given: what is used is what is recommended, to the last bit.
      CHECK(e.used.counter_mm == best.counter_mm);
      if (best.oven_base_mm) CHECK(e.used.oven_base_mm == best.oven_base_mm);
      for (const evaluate::ArrangementResult& a : e.arrangements) {
        if (a.arrangement != c.station.arrangement) continue;
        CHECK(a.heights.counter_mm == best.counter_mm);
        CHECK(a.heights.oven_base_mm == best.oven_base_mm);
      }
    }
  }
  CHECK(ovens > 0);
  CHECK(level > 0);
  CHECK(masonry > 0);
}

TEST_CASE("a given height is used as it is given, whatever the marks", "[evaluate]") {
  config::Config c;
  c.station.arrangement = config::Arrangement::TwoLevel;
  c.station.counter_height_mm = 913.3;
  c.station.oven_base_height_mm = 1001.7;
  for (const Marks marks : kMarks) {
    const evaluate::Evaluation e = evaluate::evaluate_fit(c, marks);
    CHECK(*e.used.oven_base_mm == 1001.7);
    CHECK(*e.used.counter_mm == 913.3);
  }
}
