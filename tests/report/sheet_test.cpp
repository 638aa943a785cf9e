#include "engine/report/sheet.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/report/figure.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/station_layout.h"
#include "engine/sight/lean.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::WithinAbs;
using hs::test::kPresets;
using hs::test::preset;

namespace {

constexpr double kDrawn_mm = 1e-6;  // the drawing copies numbers, it rounds none

std::string all_text(const Drawing& d) {
  std::string all;
  for (const Mark& mark : d.marks()) {
    if (mark.char_count > 0) all += std::string(d.text(mark)) + "\n";
  }
  return all;
}

bool says(const Sheet& sheet, std::string_view words) {
  // The key is wrapped; the description is not.
  return sheet.description.find(words) != std::string::npos ||
         all_text(sheet.drawing).find(words) != std::string::npos;
}

Sheet drawn(const char* kind, const config::Config& config, SheetView view = {}) {
  return find_sheet(kind)->draw(config, evaluate::evaluate_fit(config), view);
}

std::vector<Mark> of(const Drawing& d, Shape shape, Role role) {
  std::vector<Mark> found;
  for (const Mark& mark : d.marks()) {
    if (mark.shape == shape && mark.role == role) found.push_back(mark);
  }
  return found;
}

}  // namespace

TEST_CASE("every sheet of every preset is finite, in both units, for every cook",
          "[report][sheet]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (const SheetKind& kind : sheet_kinds()) {
      for (std::size_t cook = 0; cook <= config.cooks.size(); ++cook) {
        for (const Units units : {Units::Inch, Units::Millimetre}) {
          INFO(name << " " << kind.name << " " << cook);
          const Sheet sheet = kind.draw(config, e, {units, cook});
          for (const Mark& mark : sheet.drawing.marks()) {
            for (const Spot& p : sheet.drawing.points(mark)) {
              REQUIRE((std::isfinite(p.x_mm) && std::isfinite(p.y_mm)));
              REQUIRE(std::hypot(p.x_mm, p.y_mm) < 2e4);
            }
          }
          const std::size_t bars = of(sheet.drawing, Shape::Polyline, Role::Scale).size();
          REQUIRE(bars == (kind.section.empty() ? 1 : 0));
          REQUIRE_FALSE(sheet.description.empty());
        }
      }
    }
  }
}

TEST_CASE("the line of known length has that length", "[report][sheet]") {
  const auto bar = [](Units units) {
    const Sheet sheet = drawn("plan", config::Config{}, {.units = units});
    const auto ends = sheet.drawing.points(of(sheet.drawing, Shape::Polyline, Role::Scale)[0]);
    return ends[1].x_mm - ends[0].x_mm;
  };
  CHECK_THAT(bar(Units::Millimetre), WithinAbs(1000, kDrawn_mm));
  CHECK_THAT(bar(Units::Inch), WithinAbs(36 * 25.4, kDrawn_mm));
}

TEST_CASE("every dimension says the length that it spans", "[report][sheet]") {
  for (const char* name : kPresets) {
    for (const SheetKind& kind : sheet_kinds()) {
      if (!kind.section.empty()) continue;  // a plot spans no length
      const config::Config config = preset(name);
      const Sheet sheet =
          kind.draw(config, evaluate::evaluate_fit(config), {.units = Units::Millimetre});
      std::size_t checked = 0;
      for (const Mark& mark : of(sheet.drawing, Shape::Dimension, Role::Dimension)) {
        if (mark.char_count == 0) continue;
        const auto ends = sheet.drawing.points(mark);
        const double span = std::hypot(ends[1].x_mm - ends[0].x_mm, ends[1].y_mm - ends[0].y_mm);
        INFO(name << " " << kind.name << " " << sheet.drawing.text(mark));
        CHECK(sheet.drawing.text(mark) == plain_length(span, Units::Millimetre, true));
        ++checked;
      }
      CHECK(checked > 0);
    }
  }
}

TEST_CASE("labels of a sheet do not lie on each other", "[report][sheet]") {
  for (const char* name : kPresets) {
    for (const SheetKind& kind : sheet_kinds()) {
      for (const Units units : {Units::Inch, Units::Millimetre}) {
        const config::Config config = preset(name);
        const Sheet sheet = kind.draw(config, evaluate::evaluate(config), {.units = units});
        std::vector<std::pair<Box, std::string>> placed;
        for (const Mark& mark : sheet.drawing.marks()) {
          if (mark.char_count == 0) continue;
          Drawing alone;
          const auto points = sheet.drawing.points(mark);
          const Spot at = mark.shape == Shape::Dimension
                              ? Spot{(points[0].x_mm + points[1].x_mm) / 2,
                                     (points[0].y_mm + points[1].y_mm) / 2}
                              : points[0];
          alone.text(Role::Label, at, sheet.drawing.text(mark),
                     mark.shape == Shape::Dimension ? Align::Centre : mark.align);
          // Letters fill about 0.7 of their line, and the width's estimate is on the safe side.
          Box box = inked_box(alone, 0.7 * sheet.text_mm);
          for (const auto& [other, text] : placed) {
            const bool apart = box.left_mm >= other.right_mm || box.right_mm <= other.left_mm ||
                               box.bottom_mm >= other.top_mm || box.top_mm <= other.bottom_mm;
            INFO(name << " " << kind.name << ": \"" << sheet.drawing.text(mark) << "\" on \""
                      << text << "\"");
            CHECK(apart);
          }
          placed.emplace_back(box, std::string(sheet.drawing.text(mark)));
        }
      }
    }
  }
}

TEST_CASE("every figure of the plan carries its source", "[report][sheet]") {
  const Sheet sheet = drawn("plan", preset("stations/four_cooks"), {.units = Units::Millimetre});
  CHECK(says(sheet, "US kitchen planning guidelines, guideline 23; read"));
  CHECK(says(sheet, "US kitchen planning guidelines, guideline 12; read"));
  CHECK(says(sheet, "US kitchen planning guidelines, work aisle; second-hand"));
  CHECK(says(sheet,
             "914 mm round it (NFPA and the US Fire Administration, Outdoor cooking "
             "safety tips; second-hand)"));
  CHECK(says(sheet, "Installation instructions of this oven"));
  CHECK(says(sheet, "1219 mm advised"));
  CHECK(says(sheet, "free ground (computed)"));
}

TEST_CASE("a free room that nobody has said is hatched and named as unknown", "[report][sheet]") {
  const Sheet unknown = drawn("plan", config::Config{});
  CHECK(says(unknown, "Not known how much must stay free: left, right, back, above, front, below"));
  CHECK(of(unknown.drawing, Shape::Hatch, Role::ClearRoom).empty());
  // Four level sides, the swatch, and the landing that is not known either with its own.
  CHECK(of(unknown.drawing, Shape::Hatch, Role::Unknown).size() == 7);
  const Sheet known = drawn("plan", preset("stations/four_cooks"));
  CHECK(of(known.drawing, Shape::Hatch, Role::Unknown).empty());
  CHECK(of(known.drawing, Shape::Hatch, Role::ClearRoom).size() == 5);
  CHECK_FALSE(says(known, "Not known how much"));
}

TEST_CASE("the plan shows every zone that the evaluation has, and what speaks for it",
          "[report][sheet]") {
  for (const char* name : kPresets) {
    INFO(name);
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate_fit(config);
    const Sheet sheet = plan_sheet(config, e, {.units = Units::Millimetre});
    const auto outlined = [&](Role role, std::span<const PlanSpot> zone) {
      for (const Mark& mark : of(sheet.drawing, Shape::Outline, role)) {
        const auto drawn = sheet.drawing.points(mark);
        if (std::equal(drawn.begin(), drawn.end(), zone.begin(), zone.end(),
                       [](const Spot& a, const PlanSpot& b) {
                         return a.x_mm == b.x_mm && a.y_mm == b.y_mm;
                       })) {
          return true;
        }
      }
      return false;
    };
    for (const reach::Zone& zone : e.surroundings.room) {
      CAPTURE(std::string(zone.rule));
      // Landings are as wide as was given; the peel itself is drawn in its zone.
      if (zone.rule == "reach.landing" || zone.rule == "reach.peel_drawback") continue;
      CHECK(outlined(zone.rule == "room.peel_turn" ? Role::Peel : Role::Room, zone.outline));
    }
    if (e.surroundings.child_free.empty()) continue;
    CHECK(outlined(Role::ChildFree, e.surroundings.child_free));
    for (const clearance::Zone& zone : e.surroundings.hot) {
      using clearance::Side;
      if (zone.need.side == Side::Above || zone.need.side == Side::Below) continue;
      if (!zone.box || zone.box->width_mm() < 1 || zone.box->depth_mm() < 1) continue;
      const clearance::Box& b = *zone.box;
      CHECK(outlined(Role::ClearRoom, std::vector<PlanSpot>{{b.left_mm, b.near_mm},
                                                            {b.right_mm, b.near_mm},
                                                            {b.right_mm, b.far_mm},
                                                            {b.left_mm, b.far_mm}}));
    }
  }
  // Who asks for it: the oven's manual, the flue's maker, the grill's manual; a code where the oven
  // has no listing, with its number.
  const Sheet porch = drawn("plan", preset("stations/crowded_porch"));
  CHECK(says(porch, "the flue's maker"));
  CHECK(says(porch, "the grill's manual"));
  CHECK(says(porch, "in front of the counter's, as given"));
  config::Config unlisted;
  unlisted.oven.listed = false;
  const Sheet published = drawn("plan", unlisted);
  CHECK(says(published, "12.6, unlisted solid-fuel appliance"));
  CHECK(says(published, "International Fuel Gas Code, 623"));
  CHECK_FALSE(says(published, "Installation instructions of this oven"));
  config::Config covered;
  covered.site.cover_height_mm = 2400;
  CHECK(says(drawn("plan", covered), "How far the cover reaches is not known"));
}

TEST_CASE("no two zones of the plan are hatched alike", "[report][sheet]") {
  std::set<std::pair<double, bool>> seen;
  for (const Role role :
       {Role::Hidden, Role::ClearRoom, Role::Unknown, Role::Landing, Role::Prep}) {
    const HatchStyle style = hatch_style(role);
    CHECK(seen.insert({style.angle_deg, style.crossed}).second);
  }
}

TEST_CASE("the elevation shows the mouth's outline at its height and every cook's eye",
          "[report][sheet]") {
  const config::Config config = preset("stations/four_cooks");
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  const Sheet sheet = elevation_sheet(config, e, {.units = Units::Millimetre});
  const StationLayout layout = station_layout(config, e);
  const auto mouths = of(sheet.drawing, Shape::Outline, Role::Sightline);
  REQUIRE(mouths.size() == 1);
  const auto points = sheet.drawing.points(mouths[0]);
  REQUIRE(points.size() == layout.inner_mouth.size());
  CHECK(std::equal(points.begin(), points.end(), layout.inner_mouth.begin()));
  const auto eyes = of(sheet.drawing, Shape::Dot, Role::Eye);
  REQUIRE(eyes.size() == config.cooks.size());
  for (std::size_t i = 0; i < eyes.size(); ++i) {
    CHECK_THAT(sheet.drawing.points(eyes[i])[0].y_mm,
               WithinAbs(e.cooks[i].body.eye.value_mm, kDrawn_mm));
    CHECK(says(sheet, config.cooks[i].name + "'s eye " +
                          plain_length(e.cooks[i].body.eye.value_mm, Units::Millimetre, true)));
  }
  CHECK(says(sheet, "2600 mm under the cover"));
}

TEST_CASE("the section's gaze angles are the report's", "[report][sheet]") {
  const config::Config config = preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  const Sheet sheet = section_sheet(config, e, {});
  CHECK(says(sheet, degrees(e.cooks[0].watching.steepest_gaze_deg) + " down to the floor"));
  CHECK(says(sheet, degrees(e.cooks[0].watching.shallowest_gaze_deg) + " down to the farthest"));
  // The arcs begin at the eye's level, in front of it, and turn down by those angles.
  const Spot eye = sheet.drawing.points(of(sheet.drawing, Shape::Dot, Role::Eye)[0])[0];
  std::size_t arcs = 0;
  for (const Mark& mark : of(sheet.drawing, Shape::Polyline, Role::Dimension)) {
    const auto points = sheet.drawing.points(mark);
    if (points.size() < 4 || std::abs(points.front().y_mm - eye.y_mm) > kDrawn_mm) continue;
    const Spot last = points.back();
    const double turned =
        std::atan2(eye.y_mm - last.y_mm, last.x_mm - eye.x_mm) * 180 / 3.14159265358979;
    const double& expected =
        arcs == 0 ? e.cooks[0].watching.steepest_gaze_deg : e.cooks[0].watching.shallowest_gaze_deg;
    CHECK_THAT(turned, WithinAbs(expected, 1e-6));
    ++arcs;
  }
  CHECK(arcs == 2);
}

TEST_CASE("a stooping figure's eye is where the sight module takes it", "[report][sheet]") {
  const config::Config config = preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  const cook::Body& body = e.cooks[0].body;
  const sight::Eye upright{0, 700, 400};
  for (const sight::Posture posture : {sight::Posture{0, 0}, {20, 0}, {0, 30}, {54, 36}}) {
    const sight::Eye eye = sight::bent(upright, {body.eye_lever_mm, body.leg_mm}, posture);
    const Figure figure = bent_figure_of(body, -upright.distance_mm, posture);
    CHECK_THAT(figure.eye.x_mm, WithinAbs(-eye.distance_mm, kDrawn_mm));
    CHECK_THAT(figure.eye.y_mm,
               WithinAbs(body.eye.value_mm + eye.height_mm - upright.height_mm, kDrawn_mm));
    // The feet stay.
    double lowest = 1e9, toes = -1e9;
    for (const Spot& p : figure.shape) {
      lowest = std::min(lowest, p.y_mm);
      if (p.y_mm < 40) toes = std::max(toes, p.x_mm);
    }
    CHECK_THAT(lowest, WithinAbs(0, 5));
    // Drawn by a smooth curve through the toe's tip.
    CHECK_THAT(toes, WithinAbs(-upright.distance_mm + body.toes_mm, 25));
  }
}

TEST_CASE("a sheet is asked for by its name", "[report][sheet]") {
  CHECK(find_sheet("plan") != nullptr);
  CHECK(find_sheet("Plan") == nullptr);
  CHECK(find_sheet("") == nullptr);
  for (const SheetKind& kind : sheet_kinds()) CHECK(find_sheet(kind.name) == &kind);
}
