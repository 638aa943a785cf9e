// Laws that hold for any station, over random configs from the whole field table.

#include "tests/support/sweep.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/report_json.h"
#include "engine/rules/rules.h"
#include "tests/support/random_config.h"

using namespace hs;

namespace {

bool finite(const std::optional<double>& v) { return !v || std::isfinite(*v); }

bool all_finite(const evaluate::Evaluation& e) {
  bool ok = finite(e.recommended.heights.oven_base_mm) &&
            finite(e.recommended.heights.counter_mm) && std::isfinite(e.recommended.standoff_mm) &&
            std::isfinite(e.recommended.feet_line_mm) &&
            std::isfinite(e.recommended.prep_depth_mm) && finite(e.fits_adults_share);
  for (const Finding& f : e.findings)
    ok = ok && finite(f.measured) && finite(f.limit) && finite(f.margin);
  for (const auto& cook : e.cooks) {
    ok = ok && std::isfinite(cook.hand_above_elbow_mm) && finite(cook.full_view.standoff_mm) &&
         finite(cook.full_view.oven_floor_height_mm) && std::isfinite(cook.watching.floor_share) &&
         std::isfinite(cook.watching.pizza_share) && finite(cook.watching.farthest_mm) &&
         std::isfinite(cook.prep_offset_mm) && std::isfinite(cook.zones.far_mm);
  }
  return ok;
}

}  // namespace

TEST_CASE("any station that passes check gives finite numbers and keeps the hard ceiling",
          "[evaluate][law]") {
  test::Random random(20260101);
  int evaluated = 0;
  for (int i = 0; i < test::sweep(3000); ++i) {
    const config::Config c = test::random_config(random);
    if (!evaluate::check(c).empty()) continue;
    ++evaluated;
    const evaluate::Evaluation e = evaluate::evaluate(c);
    REQUIRE(all_finite(e));
    REQUIRE(e.cooks.size() == c.cooks.size());
    if (const auto& floor_mm = e.recommended.heights.oven_floor_mm) {
      for (const auto& cook : e.cooks) {
        if (!cook.at_oven || cook.young_child) continue;
        // An oven whose own floor is higher than these hands allow stands on the ground at best.
        REQUIRE((*floor_mm <= cook.ceiling_floor_mm + 0.05 ||
                 *e.recommended.heights.oven_base_mm == 0));
      }
      REQUIRE(e.recommended.oven_band);
      REQUIRE(e.recommended.oven_band->low_mm <= *e.recommended.heights.oven_base_mm);
      REQUIRE(e.recommended.oven_band->high_mm >= *e.recommended.heights.oven_base_mm);
    }
    for (const Finding& f : e.findings) REQUIRE(rules::find_rule(f.rule) != nullptr);
    const std::string report = report::report_json(c, e);
    // As a number: somebody may be called so.
    REQUIRE(report.find("nan,") == std::string::npos);
    REQUIRE(report.find("nan\n") == std::string::npos);
    REQUIRE(report.find("inf,") == std::string::npos);
  }
  REQUIRE(evaluated > test::sweep(3000) / 200);
}

TEST_CASE("full view is the least height and the nearest standoff that show the target",
          "[evaluate][law]") {
  test::Random random(77);
  int checked = 0;
  for (int i = 0; i < test::sweep(400); ++i) {
    config::Config c;
    c.cooks[0].stature_mm = 1450 + random.below(500);
    c.view.standoff_mm = 400 + random.below(900);
    c.view.lateral_mm = random.below(5) * 40 - 80;
    c.oven.mouth_shape = static_cast<config::MouthShape>(random.below(3));
    c.oven.mouth_height_mm = 110 + random.below(120);
    c.oven.mouth_side_height_mm = 50;
    c.oven.throat_mm = random.below(3) * 40;
    c.view.target = static_cast<config::Target>(random.below(3));
    c.station.oven_base_height_mm = 850 + random.below(300);
    const auto e = evaluate::evaluate_fit(c);
    const auto seen_at = [&](double floor_mm, double standoff_mm) {
      config::Config there = c;
      there.station.oven_base_height_mm = floor_mm - c.oven.floor_above_base_mm;
      there.view.standoff_mm = standoff_mm;
      return evaluate::evaluate_fit(there).cooks[0].watching.target_seen;
    };
    const auto& full = e.cooks[0].full_view;
    if (full.oven_floor_height_mm) {
      CHECK(seen_at(*full.oven_floor_height_mm + 0.05, c.view.standoff_mm));
      // Below 0.5 mm the share's own accuracy (0.0005 of an area) decides, not the search.
      CHECK_FALSE(seen_at(*full.oven_floor_height_mm - 4, c.view.standoff_mm));
      ++checked;
    }
    if (full.standoff_mm && *full.standoff_mm > 110) {
      CHECK(seen_at(*e.used.oven_floor_mm, *full.standoff_mm + 0.05));
      CHECK_FALSE(seen_at(*e.used.oven_floor_mm, *full.standoff_mm - 10));
      ++checked;
    }
  }
  CHECK(checked > test::sweep(400) / 2);
}
