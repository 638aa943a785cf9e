// The main job against a calculation done by hand on paper: one cook of 1750 mm in 25 mm shoes at a
// low-mouthed tabletop oven. Eye and elbow come from the US Army survey 2012 regressions (eye
// 0.96244 H - 47.81, elbow 0.68980 H - 105.94), sight from the closed form E - h (1 + d / D).

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"

using Catch::Matchers::WithinAbs;
using namespace hs;

namespace {

config::Config one_cook(double stature_mm) {
  config::Config c;
  c.cooks[0].stature_mm = stature_mm;
  c.cooks[0].build = config::Build::AdultA;
  c.oven.mouth_height_mm = 130;
  c.oven.throat_mm = 0;
  c.oven.floor_depth_mm = 430;
  c.oven.floor_above_base_mm = 150;
  c.view.pizza_diameter_mm = 320;
  c.view.standoff_mm = 700;
  return c;
}

config::Config at_base(double base_mm, double standoff_mm = 700) {
  config::Config c = one_cook(1750);
  c.station.oven_base_height_mm = base_mm;
  c.view.standoff_mm = standoff_mm;
  return c;
}

constexpr double kHandSlack_mm = 4;  // the hand calculation rounds eye, elbow and result to 1 mm,
                                     // and 99.9 % of a disc is seen some 2 mm before its far end
}  // namespace

TEST_CASE("eye and elbow of the hand calculation", "[evaluate][hand]") {
  const auto e = evaluate::evaluate(one_cook(1750));
  CHECK_THAT(e.cooks[0].body.eye.value_mm, WithinAbs(1661, 1));
  CHECK_THAT(e.cooks[0].body.elbow.value_mm, WithinAbs(1126, 1));
}

TEST_CASE("sight alone asks a counter of about 1139 at 700 mm", "[evaluate][hand]") {
  const auto e = evaluate::evaluate(one_cook(1750));
  REQUIRE(e.cooks[0].full_view.oven_floor_height_mm);
  CHECK_THAT(*e.cooks[0].full_view.oven_floor_height_mm - 150, WithinAbs(1139, kHandSlack_mm));
}

TEST_CASE("hands cap the counter near 1076 and the answer is about 1080", "[evaluate][hand]") {
  for (const auto arrangement :
       {config::Arrangement::OneLevel, config::Arrangement::Riser, config::Arrangement::TwoLevel}) {
    config::Config c = one_cook(1750);
    c.station.arrangement = arrangement;
    const auto e = evaluate::evaluate(c);
    CHECK_THAT(e.cooks[0].ceiling_floor_mm - 150, WithinAbs(1076, 1));
    REQUIRE(e.recommended.heights.oven_base_mm);
    CHECK_THAT(*e.recommended.heights.oven_base_mm, WithinAbs(1080, 10));
    CHECK(e.recommended.binding == "height.hand_ceiling");
  }
}

TEST_CASE("at 1080 most of the pizza is seen from 700 and all of it from about 870",
          "[evaluate][hand]") {
  const auto e = evaluate::evaluate(at_base(1080));
  const auto& cook = e.cooks[0];
  CHECK(cook.watching.pizza_share > 0.5);
  CHECK(cook.watching.pizza_share < 0.999);
  REQUIRE(cook.full_view.standoff_mm);
  CHECK_THAT(*cook.full_view.standoff_mm, WithinAbs(870, 10));
  for (const Finding& f : e.findings) {
    if (f.rule == "height.hand_ceiling") CHECK(f.verdict == Verdict::Ok);
  }
  CHECK_FALSE(cook.step_mm);
}

TEST_CASE("914 is too low: all of the pizza only from about 1350", "[evaluate][hand]") {
  const auto e = evaluate::evaluate(at_base(914));
  REQUIRE(e.cooks[0].full_view.standoff_mm);
  CHECK_THAT(*e.cooks[0].full_view.standoff_mm, WithinAbs(1350, 12));
  CHECK(e.cooks[0].watching.pizza_share < 0.5);
}

TEST_CASE("1219 is too high: it fails for the hands", "[evaluate][hand]") {
  const auto e = evaluate::evaluate(at_base(1219));
  bool failed = false;
  for (const Finding& f : e.findings) {
    failed |= f.rule == "height.hand_ceiling" && f.verdict == Verdict::Fail;
  }
  CHECK(failed);
  CHECK(e.cooks[0].step_mm.has_value());
}

TEST_CASE("beside a 1600 mm cook the ceiling falls to about 980 and the taller steps back",
          "[evaluate][hand]") {
  config::Config c = one_cook(1750);
  config::Cook shorter;
  shorter.name = "Shorter";
  shorter.stature_mm = 1600;
  shorter.build = config::Build::AdultB;
  c.cooks.push_back(shorter);
  const auto e = evaluate::evaluate(c);
  REQUIRE(e.recommended.heights.oven_base_mm);
  CHECK_THAT(*e.recommended.heights.oven_base_mm, WithinAbs(980, 3));
  CHECK(e.recommended.binding == "height.hand_ceiling");
  REQUIRE(e.cooks[0].full_view.standoff_mm);
  REQUIRE(e.cooks[1].full_view.standoff_mm);
  CHECK(*e.cooks[0].full_view.standoff_mm > *e.cooks[1].full_view.standoff_mm);

  SECTION("however little the shorter one cooks") {
    c.cooks[1].share = 0.01;
    c.weights.worst_off = 0;
    const auto again = evaluate::evaluate(c);
    CHECK(*again.recommended.heights.oven_base_mm <= *e.recommended.heights.oven_base_mm);
  }
  SECTION("but not when the shorter one only makes dough") {
    c.cooks[1].at = config::At::Prep;
    const auto again = evaluate::evaluate(c);
    CHECK_THAT(*again.recommended.heights.oven_base_mm, WithinAbs(1076, 2));
  }
}

TEST_CASE("masonry: seeing sets the floor at about 1120, hands do not", "[evaluate][hand]") {
  // Throat 250, pizza's far edge 860 from the outer plane, mouth 280 to 300.
  for (const double mouth_mm : {280.0, 290.0, 300.0}) {
    config::Config c = one_cook(1750);
    c.oven.kind = config::OvenKind::MasonryDome28;
    c.oven.throat_mm = 250;
    c.oven.floor_depth_mm = 2 * (860 - 250 - 160);
    c.oven.floor_width_mm = 900;
    c.oven.mouth_height_mm = mouth_mm;
    c.oven.floor_above_base_mm = 100;
    c.oven.width_mm = 1200;
    c.oven.depth_mm = 1300;
    c.oven.height_mm = 900;
    const auto e = evaluate::evaluate(c);
    const double closed_mm = e.cooks[0].body.eye.value_mm - mouth_mm * (1 + 700.0 / 860);
    REQUIRE(e.recommended.heights.oven_floor_mm);
    CHECK_THAT(*e.recommended.heights.oven_floor_mm, WithinAbs(closed_mm, kHandSlack_mm));
    CHECK_THAT(*e.recommended.heights.oven_floor_mm, WithinAbs(1120, 36));
    CHECK(e.recommended.binding == "height.full_view");
  }
}

TEST_CASE("dough belongs 150 to 250 below the elbow, the board on top", "[evaluate][hand]") {
  const auto e = evaluate::evaluate(one_cook(1750));
  REQUIRE(e.recommended.heights.counter_mm);
  // Middle of the band: elbow 1126 - 200 - board 20.
  CHECK_THAT(*e.recommended.heights.counter_mm, WithinAbs(1126 - 200 - 20, 2));
  CHECK(e.cooks[0].prep_verdict == Verdict::Ok);
}
