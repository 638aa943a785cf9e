#include "engine/evaluate/curves.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/fit_rows.h"
#include "engine/evaluate/steps.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::evaluate;
using Catch::Matchers::WithinAbs;
using hs::test::kPresets;
using hs::test::preset;

namespace {
constexpr double kSame = 1e-9;       // the same sum, done twice
constexpr double kShare = 0.0005;    // what a share is known to (engine/sight/sight.h)
constexpr double kBorder_mm = 1.01;  // what fit_map() promises for a border, and a rounding
}  // namespace

TEST_CASE("a curve says at the height in use what the evaluation says", "[evaluate][curves][law]") {
  for (const char* name : kPresets) {
    INFO(name);
    const config::Config config = preset(name);
    const Evaluation e = evaluate_fit(config);
    for (const Curve& curve : seen_shares(config, e, 10).cooks) {
      CHECK_THAT(*curve.at_used, WithinAbs(e.cooks[curve.cook].watching.pizza_share, kSame));
      CHECK_THAT(*curve.ceiling_mm + config.oven.floor_above_base_mm,
                 WithinAbs(e.cooks[curve.cook].ceiling_floor_mm, kSame));
    }
    // The cost is the square of what is off by, and off by is what the plot shows.
    const auto off_of = [](double cost) { return 150 * std::sqrt(cost); };
    for (const Curve& curve : dough_hands(config, e, 10).cooks) {
      const CookResult& cook = e.cooks[curve.cook];
      CHECK_THAT(*curve.at_used,
                 WithinAbs(off_of(height::band_cost(cook.prep_offset_mm, cook.prep_band)), 1e-6));
    }
    for (const Curve& curve : oven_hands(config, e, 10).cooks) {
      CHECK_THAT(*curve.at_used,
                 WithinAbs(off_of(height::hand_cost(*e.used.oven_floor_mm,
                                                    e.cooks[curve.cook].body.elbow.value_mm)),
                           1e-6));
    }
  }
}

TEST_CASE("curves cover every good height, on whole steps", "[evaluate][curves][law]") {
  for (const char* name : kPresets) {
    INFO(name);
    const config::Config config = preset(name);
    const Evaluation e = evaluate_fit(config);
    for (const double step_mm : {10.0, 12.7}) {
      for (const Curves& curves : {dough_hands(config, e, step_mm), oven_hands(config, e, step_mm),
                                   seen_shares(config, e, step_mm)}) {
        if (curves.cooks.empty()) {
          CHECK(curves.heights_mm.empty());
          continue;
        }
        for (std::size_t i = 0; i < curves.heights_mm.size(); ++i) {
          const double steps = curves.heights_mm[i] / step_mm;
          CHECK_THAT(steps, WithinAbs(std::round(steps), 1e-6));
          if (i > 0)
            CHECK_THAT(curves.heights_mm[i] - curves.heights_mm[i - 1], WithinAbs(step_mm, 1e-6));
        }
        REQUIRE(curves.used_mm.has_value());
        CHECK(curves.heights_mm.front() <= *curves.used_mm);
        CHECK(curves.heights_mm.back() >= *curves.used_mm);
        for (const Curve& curve : curves.cooks) {
          CHECK(curve.values.size() == curves.heights_mm.size());
        }
      }
    }
  }
}

TEST_CASE("raising the oven never hides more of the pizza below the eye",
          "[evaluate][curves][law]") {
  const config::Config config = preset("stations/four_cooks");
  const Evaluation e = evaluate_fit(config);
  const Curves curves = seen_shares(config, e, 10);
  REQUIRE(curves.cooks.size() > 1);
  for (const Curve& curve : curves.cooks) {
    for (std::size_t i = 1; i < curve.values.size(); ++i) {
      CHECK(curve.values[i] >= curve.values[i - 1] - kShare);
    }
  }
}

TEST_CASE("a young child has no curve for the others' dough counter", "[evaluate][curves]") {
  const config::Config config = preset("demo");
  const Evaluation e = evaluate_fit(config);
  const auto child = std::find_if(e.cooks.begin(), e.cooks.end(),
                                  [](const CookResult& cook) { return cook.young_child; });
  REQUIRE(child != e.cooks.end());
  REQUIRE(child->at_prep);
  for (const Curve& curve : dough_hands(config, e, 10).cooks) {
    CHECK_FALSE(e.cooks[curve.cook].young_child);
  }
}

TEST_CASE("each border of the fit map parts seen from not seen", "[evaluate][fit_map][brute]") {
  for (const char* name : {"demo", "stations/four_cooks", "stations/seated_cook"}) {
    INFO(name);
    const config::Config config = preset(name);
    const Scene scene = scene_of(config);
    const FitMap map = fit_map(config, 48, 32);
    std::size_t places = 0;
    for (const FitCook& cook : map.cooks) {
      const cook::Body& body = scene.bodies[cook.cook];
      CHECK_THAT(cook.ceiling_mm, WithinAbs(height::floor_ceiling_mm(body.elbow.value_mm), kSame));
      for (const FitPlace& place : cook.border) {
        const auto sees = [&](double floor_mm) {
          return sees_target(scene, config.view,
                             eye_of(body, config.view, place.standoff_mm, floor_mm));
        };
        CHECK(sees(place.floor_mm));
        CHECK_FALSE(sees(place.floor_mm - kBorder_mm));
        // The search that the findings use gives the same place.
        const auto lowest = lowest_floor_showing(scene, config.view, body, place.standoff_mm, 0);
        REQUIRE(lowest.has_value());
        CHECK_THAT(*lowest, WithinAbs(place.floor_mm, kBorder_mm + 0.1));
        ++places;
      }
    }
    CHECK(places > 20);
  }
}

TEST_CASE("a place of the fit map knows who sees it all and whose hands it is too high for",
          "[evaluate][fit_map]") {
  const config::Config config = preset("stations/four_cooks");
  const Evaluation e = evaluate_fit(config);
  const FitSpot here = fit_at(config, *e.used.oven_floor_mm, config.view.standoff_mm);
  std::vector<std::size_t> see_all;
  double least = 1;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    if (!e.cooks[i].at_oven) continue;
    if (e.cooks[i].watching.target_seen) see_all.push_back(i);
    least = std::min(least, e.cooks[i].watching.pizza_share);
  }
  CHECK(here.see_all == see_all);
  std::vector<std::size_t> too_hot;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    if (e.cooks[i].at_oven && config.view.standoff_mm < e.cooks[i].heat.linger_standoff_mm) {
      too_hot.push_back(i);
    }
  }
  CHECK(here.too_hot == too_hot);
  CHECK(fit_at(config, *e.used.oven_floor_mm, 200).too_hot.size() == here.cooks);
  CHECK_THAT(here.share, WithinAbs(least, 0.001));  // from there on it counts as all
  const FitSpot high = fit_at(config, 2000, config.view.standoff_mm);
  CHECK(high.too_high.size() == high.cooks);
  CHECK(high.see_all.empty());
  CHECK(high.share == 0);
  CHECK(fit_at(preset("stations/prep_only"), 1000, 700).cooks == 0);
}

TEST_CASE("the fit map as numbers says of each cook what one place of it says of all",
          "[evaluate][fit_map][law]") {
  const double floors_mm[] = {850, 1010.4, 1200, 1500}, standoffs_mm[] = {200, 450, 700, 1400};
  for (const char* name : {"demo", "stations/four_cooks"}) {
    CAPTURE(name);
    const config::Config config = preset(name);
    const std::vector<FitRows> rows = fit_rows(config, floors_mm, standoffs_mm);
    REQUIRE(!rows.empty());
    int hot = 0, high = 0, hidden = 0;
    for (std::size_t f = 0; f < std::size(floors_mm); ++f) {
      for (std::size_t d = 0; d < std::size(standoffs_mm); ++d) {
        FitSpot wanted;
        wanted.share = 2;
        for (const FitRows& one : rows) {
          REQUIRE(one.cells.size() == std::size(floors_mm) * std::size(standoffs_mm));
          const FitCell& cell = one.cells[f * std::size(standoffs_mm) + d];
          wanted.share = std::min(wanted.share, cell.share);
          if (cell.see_all) wanted.see_all.push_back(one.cook);
          if (one.too_high[f]) wanted.too_high.push_back(one.cook);
          if (cell.too_hot) wanted.too_hot.push_back(one.cook);
          hot += cell.too_hot;
          high += one.too_high[f];
          hidden += cell.share < 0.5;
        }
        const FitSpot spot = fit_at(config, floors_mm[f], standoffs_mm[d]);
        CHECK(rows.size() == spot.cooks);
        CHECK(wanted.share == spot.share);
        CHECK(wanted.see_all == spot.see_all);
        CHECK(wanted.too_high == spot.too_high);
        CHECK(wanted.too_hot == spot.too_hot);
      }
    }
    // All three kinds of place were there.
    CHECK(hot > 0);
    CHECK(high > 0);
    CHECK(hidden > 0);
  }
  CHECK(fit_rows(preset("stations/prep_only"), floors_mm, standoffs_mm).empty());
}

TEST_CASE("the map's good places are those where all see and no hand is too high",
          "[evaluate][fit_map]") {
  const config::Config config = preset("demo");
  const FitMap map = fit_map(config, 24, 16);
  for (int row = 0; row < map.rows; ++row) {
    for (int column = 0; column < map.columns; ++column) {
      const double floor_mm =
          map.floor_low_mm + (map.floor_high_mm - map.floor_low_mm) * column / (map.columns - 1);
      const double standoff_mm =
          map.standoff_low_mm + (map.standoff_high_mm - map.standoff_low_mm) * row / (map.rows - 1);
      const FitSpot spot = fit_at(config, floor_mm, standoff_mm);
      const auto cell = static_cast<std::size_t>(row * map.columns + column);
      const bool good = spot.see_all.size() == spot.cooks && spot.too_high.empty();
      CHECK((map.good[cell] == 1) == good);
      CHECK_THAT(static_cast<double>(map.share[cell]), WithinAbs(spot.share, 1e-6));
    }
  }
}
