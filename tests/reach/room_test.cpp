#include "engine/reach/room.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "catch_amalgamated.hpp"

namespace {

using Catch::Matchers::WithinAbs;
using namespace hs::reach;

constexpr double kExact_mm = 1e-9;  // plain arithmetic on doubles
constexpr double kWholeMm = 0.5;    // published inches, kept as whole mm
constexpr double kInch_mm = 25.4;

const Zone* find(const std::vector<Zone>& all, std::string_view rule) {
  const auto it =
      std::find_if(all.begin(), all.end(), [rule](const Zone& z) { return z.rule == rule; });
  return it == all.end() ? nullptr : &*it;
}

double area_mm2(const std::vector<hs::PlanSpot>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const hs::PlanSpot& a = outline[i];
    const hs::PlanSpot& b = outline[(i + 1) % outline.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return twice / 2;
}

Station usual() {
  Station station;
  station.setback_mm = 80;
  station.oven_width_mm = 600;
  station.oven_depth_mm = 650;
  station.blade_mm = 330;
  station.peel_mm = 900;
  station.aisle_mm = 1300;
  return station;
}

}  // namespace

TEST_CASE("the published widths are the inches they were printed in", "[reach][source]") {
  // US kitchen planning guidelines (work aisle second hand; 12 and 23 read); ADA 2010 304.3.1.
  CHECK_THAT(kAisleOne_mm, WithinAbs(42 * kInch_mm, kWholeMm));
  CHECK_THAT(kAisleSeveral_mm, WithinAbs(48 * kInch_mm, kWholeMm));
  CHECK_THAT(kLanding_mm, WithinAbs(15 * kInch_mm, kWholeMm));
  CHECK_THAT(kLandingAcross_mm, WithinAbs(48 * kInch_mm, kWholeMm));
  CHECK_THAT(kPrepWidth_mm, WithinAbs(36 * kInch_mm, kWholeMm));
  CHECK_THAT(kPrepDepth_mm, WithinAbs(24 * kInch_mm, kWholeMm));
  CHECK_THAT(kWheelchairTurn_mm, WithinAbs(60 * kInch_mm, 1.5));  // the standard prints 1525
}

TEST_CASE("a peel longer than the working distance ends behind the body", "[reach]") {
  const PeelHold longer = peel_hold(0, 500, 900);
  CHECK(longer.tip_mm == 500);
  CHECK(longer.tail_mm == 400);
  const PeelHold shorter = peel_hold(0, 800, 600);
  CHECK(shorter.tip_mm == 600);
  CHECK(shorter.tail_mm == 0);
}

TEST_CASE("drawn straight out and turned about the body a peel takes the same ground behind",
          "[reach][law]") {
  // The handle's end is a peel's length in front of the mouth either way, as long as the tip is at
  // the mouth; a peel shorter than the distance leaves the body as what is furthest back.
  for (const double peel : {500.0, 600.0, 900.0, 1500.0}) {
    CHECK_THAT(turn_behind_mm(peel_hold(0, 500, peel), 80),
               WithinAbs(drawback_mm(peel, 80), kExact_mm));
  }
  CHECK(turn_behind_mm(peel_hold(0, 800, 600), 80) == 720);
  CHECK(drawback_mm(50, 80) == 0);
}

TEST_CASE("zones lie where the work is, anticlockwise, as deep as asked for", "[reach][law]") {
  Station station = usual();
  station.opens_mm = 500;
  station.opens_across_mm = 450;
  station.seated = true;
  const auto all = zones(station, peel_hold(20, 500, 900));
  for (const Zone& zone : all) {
    CAPTURE(std::string(zone.rule));
    CHECK(zone.outline.size() >= 4);
    CHECK(area_mm2(zone.outline) > 0);
    REQUIRE(zone.required_mm);
  }
  for (const char* rule : {"reach.aisle", "reach.peel_room", "room.drawer", "room.doors_both",
                           "room.wheelchair_turn"}) {
    const Zone& zone = *find(all, rule);
    double near = 1e9, far = -1e9;
    for (const hs::PlanSpot& spot : zone.outline) {
      near = std::min(near, spot.y_mm);
      far = std::max(far, spot.y_mm);
    }
    CAPTURE(rule);
    CHECK_THAT(far - near, WithinAbs(*zone.required_mm, 1e-6));
    CHECK_THAT(far, WithinAbs(-80, 1e-6));  // from the counter's edge outwards
    CHECK(zone.available_mm == 1300);
  }
}

TEST_CASE("more than one cook asks for the wider aisle", "[reach]") {
  Station station = usual();
  CHECK(find(zones(station, {}), "reach.aisle")->required_mm == kAisleOne_mm);
  station.cooks = 2;
  CHECK(find(zones(station, {}), "reach.aisle")->required_mm == kAisleSeveral_mm);
}

TEST_CASE("a turning circle is asked for only where a seated cook is named", "[reach]") {
  Station station = usual();
  CHECK(find(zones(station, {}), "room.wheelchair_turn") == nullptr);
  station.seated = true;
  const Zone turn = *find(zones(station, {}), "room.wheelchair_turn");
  // A polygon of 24 sides in the circle is 1.14 % smaller than it.
  const double circle = 3.14159265358979 / 4 * kWheelchairTurn_mm * kWheelchairTurn_mm;
  CHECK(area_mm2(turn.outline) < circle);
  CHECK(area_mm2(turn.outline) > 0.98 * circle);
}

TEST_CASE("doors that nobody measured ask for nothing; nothing is made up for them", "[reach]") {
  Station station = usual();
  CHECK(find(zones(station, {}), "room.drawer") == nullptr);
  CHECK(find(zones(station, {}), "room.doors_both") == nullptr);
  CHECK(find(zones(station, {}), "room.peel_turn") == nullptr);
  station.opens_mm = 550;
  const auto all = zones(station, {});
  CHECK(find(all, "room.drawer")->required_mm == 550 + kBeforeDrawer_mm);
  CHECK(find(all, "room.doors_both") == nullptr);
  station.aisle_mm.reset();
  for (const Zone& zone : zones(station, peel_hold(0, 500, 900))) CHECK_FALSE(zone.available_mm);
}
