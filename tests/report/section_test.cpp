#include "engine/report/section.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/report/figure.h"
#include "engine/report/oven_cut.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::WithinAbs;
using hs::test::kPresets;
using hs::test::preset;

namespace {

constexpr double kDrawn = 1e-6;  // mm; the drawing copies numbers, it rounds none

std::vector<Mark> of(const Drawing& d, Shape shape, Role role) {
  std::vector<Mark> found;
  for (const Mark& mark : d.marks()) {
    if (mark.shape == shape && mark.role == role) found.push_back(mark);
  }
  return found;
}

std::vector<std::string> labels(const Drawing& d) {
  std::vector<std::string> found;
  for (const Mark& mark : d.marks()) {
    if (mark.char_count > 0) found.push_back(std::string(d.text(mark)));
  }
  return found;
}

double area(std::span<const Spot> p) {
  double twice = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Spot& a = p[i];
    const Spot& b = p[(i + 1) % p.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return std::abs(twice) / 2;
}

}  // namespace

TEST_CASE("every preset draws finite points for every cook", "[report][section]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (std::size_t person = 0; person < config.cooks.size(); ++person) {
      for (const bool stacked : {true, false}) {
        INFO(name << ", cook " << person);
        const SectionView view{.person = person, .units = Units::Millimetre, .stacked = stacked};
        const Drawing d = section(config, e, view);
        REQUIRE(d.marks().size() > 8);
        for (const Mark& mark : d.marks()) {
          for (const Spot& p : d.points(mark)) {
            CHECK(std::isfinite(p.x_mm));
            CHECK(std::isfinite(p.y_mm));
          }
        }
        const SectionFrame frame = section_frame(config, e, person);
        const Box all = d.bounds();
        CHECK(all.left_mm >= frame.box.left_mm - kDrawn);
        CHECK(all.bottom_mm >= frame.box.bottom_mm - kDrawn);
        CHECK(all.top_mm <= frame.box.top_mm + kDrawn);
      }
    }
  }
}

TEST_CASE("the ray starts at the eye and lands at the farthest point seen", "[report][section]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (std::size_t person = 0; person < config.cooks.size(); ++person) {
      INFO(name << ", cook " << person);
      const evaluate::CookResult& cook = e.cooks[person];
      const Drawing d = section(config, e, {.person = person});
      const std::vector<Mark> rays = of(d, Shape::Polyline, Role::Sightline);
      if (!cook.at_oven) {
        CHECK(rays.empty());
        continue;
      }
      REQUIRE(rays.size() >= 1);
      const Spot eye = d.points(rays[0])[0];
      CHECK_THAT(eye.x_mm, WithinAbs(-config.view.standoff_mm, kDrawn));
      CHECK_THAT(eye.y_mm, WithinAbs(cook.body.eye.value_mm, kDrawn));
      if (!cook.watching.farthest_mm) continue;
      const Spot end = d.points(rays[0])[1];
      CHECK_THAT(end.x_mm, WithinAbs(*cook.watching.farthest_mm, kDrawn));
      CHECK_THAT(end.y_mm, WithinAbs(*e.used.oven_floor_mm, kDrawn));
    }
  }
}

TEST_CASE("the pizza's hidden part is drawn as long as it is", "[report][section]") {
  config::Config config;
  config.cooks[0].stature_mm = 1750;
  for (const double standoff_mm : {400.0, 500.0, 600.0, 700.0, 800.0, 1000.0, 1400.0}) {
    config.view.standoff_mm = standoff_mm;
    const evaluate::Evaluation e = evaluate::evaluate(config);
    const Drawing d = section(config, e, {});
    const auto width = [&](Role role) {
      double sum = 0;
      for (const Mark& mark : of(d, Shape::Polygon, role)) {
        const auto p = d.points(mark);
        sum += p[1].x_mm - p[0].x_mm;
      }
      return sum;
    };
    INFO(standoff_mm);
    // The pizza of 320 lies whole on the floor of 430: its two parts make it up.
    CHECK_THAT(width(Role::Pizza) + width(Role::Hidden), WithinAbs(320, 1.01));
    const double hidden = e.cooks[0].watching.unseen_line * 320;
    // What is drawn leaves out hidden parts of up to 1 mm.
    CHECK_THAT(width(Role::Hidden), WithinAbs(hidden, 1.01));
    CHECK(of(d, Shape::Hatch, Role::Hidden).empty() ==
          (*e.cooks[0].watching.farthest_mm >= e.geometry.floor.far_mm - 1));
  }
}

TEST_CASE("an eye below the floor sees nothing and its ray is stopped", "[report][section]") {
  config::Config config;
  config.cooks[0].stature_mm = 1500;
  config.station.oven_base_height_mm = 1500;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  REQUIRE(!e.cooks[0].watching.farthest_mm);
  const Drawing d = section(config, e, {});
  const std::vector<Mark> rays = of(d, Shape::Polyline, Role::Sightline);
  REQUIRE(rays.size() == 3);  // the ray and a cross
  CHECK(rays[0].dashed);
  CHECK_THAT(d.points(rays[0])[1].x_mm, WithinAbs(0, kDrawn));
  CHECK(of(d, Shape::Polygon, Role::Seen).empty());
  CHECK(of(d, Shape::Polygon, Role::Pizza).empty());
  CHECK(of(d, Shape::Polygon, Role::Hidden).size() == 1);
}

TEST_CASE("the heights stand beside the drawing in the person's units", "[report][section]") {
  config::Config config;
  config.station.oven_base_height_mm = 1080;
  config.station.counter_height_mm = 900;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  const auto has = [&](Units units, const std::string& text) {
    const std::vector<std::string> all = labels(section(config, e, {.units = units}));
    return std::find(all.begin(), all.end(), text) != all.end();
  };
  CHECK(has(Units::Millimetre, "1080 mm oven counter"));
  CHECK(has(Units::Millimetre, "1230 mm oven floor"));
  CHECK(has(Units::Millimetre, "900 mm dough counter"));
  CHECK(has(Units::Inch, "42\u00BD in oven counter"));
  // Level with each other they are one counter.
  config.station.arrangement = config::Arrangement::OneLevel;
  config.station.counter_height_mm.reset();
  const evaluate::Evaluation level = evaluate::evaluate(config);
  const std::vector<std::string> all = labels(section(config, level, {.units = Units::Millimetre}));
  CHECK(std::count(all.begin(), all.end(), "1080 mm counter") == 1);
}

TEST_CASE("a name under its number says the same, and a counter beside the oven's says so",
          "[report][section]") {
  config::Config config;
  config.station.oven_base_height_mm = 1080;
  config.station.counter_height_mm = 900;
  const auto has = [&](const std::string& text) {
    const Drawing d =
        section(config, evaluate::evaluate(config), {.units = Units::Millimetre, .stacked = true});
    const std::vector<std::string> all = labels(d);
    return std::count(all.begin(), all.end(), text) == 1;
  };
  CHECK(has("900 mm"));
  CHECK(has("dough counter"));
  CHECK(has("1080 mm"));
  CHECK(has("oven counter"));
  // Not under the oven: it is drawn through what the oven stands on.
  config.station.arrangement = config::Arrangement::TwoLevel;
  CHECK(has("dough, beside"));
  config = preset("ovens/masonry_barrel");
  CHECK(has("dough, beside"));
  CHECK(has("slab"));
}

TEST_CASE("recommended heights read in the drawing as they do in the headlines",
          "[report][section]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      INFO(name);
      const Summary s = summary(config, e, units);
      const evaluate::Heights& shown = e.used;
      const bool floor = s.headlines[0].label == "Oven floor";
      const std::optional<double> oven = floor ? shown.oven_floor_mm : shown.oven_base_mm;
      // A given height is told beside the recommended one.
      const auto told = [&](const Headline& h, double mm) {
        const std::string text = plain_length(mm, units, true);
        return h.yours.empty() ? text == h.value : h.yours.starts_with("yours: " + text + ",");
      };
      if (oven) CHECK(told(s.headlines[0], *oven));
      if (shown.counter_mm) CHECK(told(s.headlines[1], *shown.counter_mm));
    }
  }
}

TEST_CASE("labels keep a line's height between each other", "[report][section]") {
  config::Config config;
  config.station.oven_base_height_mm = 920;
  config.station.counter_height_mm = 900;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  constexpr double kText_mm = 150;
  const Drawing d = section(config, e, {.text_mm = kText_mm});
  const double from_x = section_frame(config, e, 0).label_x_mm;
  std::vector<double> heights;
  for (const Mark& mark : of(d, Shape::Text, Role::Label)) {
    const Spot at = d.points(mark)[0];
    if (at.x_mm >= from_x - kDrawn) heights.push_back(at.y_mm);
  }
  REQUIRE(heights.size() == 3);
  std::sort(heights.begin(), heights.end());
  // The labels are pushed apart in steps that halve the lap; what is left of it is under 1 %.
  CHECK(heights[1] - heights[0] >= 0.99 * kText_mm);
  CHECK(heights[2] - heights[1] >= 0.99 * kText_mm);
}

TEST_CASE("the feet line stands at the toes and says their distance", "[report][section]") {
  config::Config config;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  const Drawing d = section(config, e, {.units = Units::Millimetre, .text_mm = 60});
  const std::vector<Mark> feet = of(d, Shape::Polyline, Role::Feet);
  REQUIRE(feet.size() == 1);
  const double toes_mm = -config.view.standoff_mm + e.cooks[0].body.toes_mm;
  CHECK_THAT(d.points(feet[0])[0].x_mm, WithinAbs(toes_mm, kDrawn));
  const double gap_mm = -config.station.oven_setback_mm - toes_mm;
  const std::string text = std::to_string(std::lround(gap_mm / 10) * 10) + " mm toes to edge";
  const std::vector<std::string> all = labels(d);
  CHECK(std::find(all.begin(), all.end(), text) != all.end());
}

TEST_CASE("the heat limit stands where a face may linger, at the eye's height",
          "[report][section][heat]") {
  config::Config config;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  const Drawing d = section(config, e, {.units = Units::Millimetre, .text_mm = 60});
  const std::vector<Mark> limit = of(d, Shape::Polyline, Role::HeatLimit);
  REQUIRE(limit.size() == 1);
  CHECK(limit[0].dashed);
  const auto ends = d.points(limit[0]);
  CHECK_THAT(ends[0].x_mm, WithinAbs(-e.cooks[0].heat.linger_standoff_mm, kDrawn));
  CHECK_THAT(ends[1].x_mm, WithinAbs(ends[0].x_mm, kDrawn));
  CHECK(ends[0].y_mm < e.cooks[0].body.eye.value_mm);
  CHECK(ends[1].y_mm > e.cooks[0].body.eye.value_mm);
}

TEST_CASE("words of the heat limit keep clear of the head and of the cover", "[report][section]") {
  const auto places = [](const config::Config& config, const SectionView& view) {
    std::vector<Spot> found;
    const evaluate::Evaluation e = evaluate::evaluate(config);
    const Drawing d = section(config, e, view);
    for (const Mark& mark : of(d, Shape::Text, Role::HeatLimit)) found.push_back(d.points(mark)[0]);
    return found;
  };
  config::Config config;
  const Figure figure =
      figure_of(evaluate::evaluate(config).cooks[0].body, -config.view.standoff_mm);
  // Half a line is as near as two lines of text come.
  for (const double text_mm : {40.0, 80.0, 130.0, 180.0}) {
    for (const bool stacked : {true, false}) {
      for (const double cover_mm : {0.0, 1950.0, 2300.0}) {
        CAPTURE(text_mm, stacked, cover_mm);
        config.site.cover_height_mm.reset();
        if (cover_mm > 0) config.site.cover_height_mm = cover_mm;
        const std::vector<Spot> rows = places(config, {.text_mm = text_mm, .stacked = stacked});
        REQUIRE(!rows.empty());
        for (const Spot& at : rows) {
          const bool beside = at.x_mm > figure.eye.x_mm + 100;
          CHECK((beside || at.y_mm > figure.top_mm + 0.5 * text_mm));
          if (cover_mm > 0) CHECK(std::abs(at.y_mm - cover_mm) >= 0.5 * text_mm);
        }
      }
    }
  }
  // A sheet's key says it.
  CHECK(places(config, {.keyed = true}).empty());
}

TEST_CASE("the room to keep free is dashed around the oven's body", "[report][section]") {
  config::Config config;
  config.station.oven_base_height_mm = 1000;
  config.oven.listed_clearance.above_mm = 300;
  config.oven.listed_clearance.back_mm = 120;
  config.site.local_clearance.front_mm = 900;
  const auto edges = [&] {
    std::vector<std::pair<Spot, Spot>> found;
    const Drawing d = section(config, evaluate::evaluate(config), {});
    for (const Mark& mark : of(d, Shape::Polyline, Role::Dimension)) {
      if (mark.dashed) found.push_back({d.points(mark)[0], d.points(mark)[1]});
    }
    return found;
  };
  const double top = 1000 + config.oven.height_mm + 300, back = config.oven.depth_mm + 120;
  const auto all = edges();
  REQUIRE(all.size() == 3);
  CHECK(all[0] == std::pair(Spot{-900, top}, Spot{back, top}));
  CHECK(all[1] == std::pair(Spot{back, 1000}, Spot{back, top}));
  CHECK(all[2] == std::pair(Spot{-900, 1000}, Spot{-900, top}));
  // A front edge farther out than the picture goes is left out; the one above ends there.
  config.site.local_clearance.front_mm = 4000;
  const double left = section_frame(config, evaluate::evaluate(config), 0).box.left_mm;
  REQUIRE(edges().size() == 2);
  CHECK(edges()[0].first == Spot{left, top});
  // Nothing asked in front: no edge, and no question: few marks.
  config.site.local_clearance.front_mm.reset();
  REQUIRE(edges().size() == 2);
  CHECK(edges()[0].first == Spot{0, top});
}

TEST_CASE("a clearance that nobody has given is a question in the drawing", "[report][section]") {
  config::Config config;
  const auto questions = [&] {
    const Drawing d = section(config, evaluate::evaluate(config), {});
    const std::vector<std::string> all = labels(d);
    return std::count(all.begin(), all.end(), "?") +
           std::count(all.begin(), all.end(), "clearance?");
  };
  CHECK(questions() == 2);
  config.oven.listed_clearance.above_mm = 300;
  CHECK(questions() == 1);
  config.site.local_clearance.back_mm = 120;
  CHECK(questions() == 0);
  // Without an oven there is nothing to keep clear of.
  config = preset("stations/prep_only");
  REQUIRE(!evaluate::evaluate(config).used.oven_base_mm);
  CHECK(questions() == 0);
}

TEST_CASE("the cover is drawn where the picture can hold it", "[report][section]") {
  config::Config config;
  config.station.oven_base_height_mm = 1000;
  const double open_top = section_frame(config, evaluate::evaluate(config), 0).box.top_mm;
  const auto covers = [&] {
    const evaluate::Evaluation e = evaluate::evaluate(config);
    const Drawing d = section(config, e, {});
    const std::vector<std::string> all = labels(d);
    std::ptrdiff_t lines = 0;
    for (const Mark& mark : of(d, Shape::Polyline, Role::Ground)) {
      const double y = d.points(mark)[0].y_mm;
      if (config.site.cover_height_mm && y == *config.site.cover_height_mm) ++lines;
    }
    CHECK(std::count(all.begin(), all.end(), "cover") == lines);
    CHECK(d.bounds().top_mm <= section_frame(config, e, 0).box.top_mm + kDrawn);
    return lines;
  };
  CHECK(covers() == 0);
  config.site.cover_height_mm = 2100;
  CHECK(covers() == 1);
  CHECK(section_frame(config, evaluate::evaluate(config), 0).box.top_mm > 2100);
  // A cover far overhead would make everything under it small.
  config.site.cover_height_mm = 3000;
  CHECK(covers() == 0);
  CHECK_THAT(section_frame(config, evaluate::evaluate(config), 0).box.top_mm,
             WithinAbs(open_top, kDrawn));
}

TEST_CASE("the figure has the body's own heights and reach", "[report][figure]") {
  for (const double stature_mm : {1100.0, 1500.0, 1750.0, 2050.0}) {
    config::Cook cook{.name = "A", .stature_mm = stature_mm};
    for (const bool seated : {false, true}) {
      cook.seated = seated;
      const cook::Body body = cook::body_of(cook);
      const Figure figure = figure_of(body, -700);
      INFO(stature_mm << (seated ? " seated" : ""));
      CHECK_THAT(figure.eye.x_mm, WithinAbs(-700, kDrawn));
      CHECK_THAT(figure.eye.y_mm, WithinAbs(body.eye.value_mm, kDrawn));
      CHECK_THAT(figure.toes_mm, WithinAbs(-700 + body.toes_mm, kDrawn));
      double front = -1e9, bottom = 1e9, top = -1e9;
      for (const Spot& p : figure.shape) {
        front = std::max(front, p.x_mm);
        bottom = std::min(bottom, p.y_mm);
        top = std::max(top, p.y_mm);
      }
      // A smooth curve bulges a little past the points it goes through.
      constexpr double kBulge_mm = 15;
      // The belly of a very short adult stands out farther than the toes.
      CHECK_THAT(front, WithinAbs(std::max(figure.toes_mm, -700 + body.belly_mm), kBulge_mm));
      CHECK_THAT(bottom, WithinAbs(0, kBulge_mm));
      CHECK_THAT(top, WithinAbs(figure.top_mm, kBulge_mm));
      if (!seated) CHECK_THAT(figure.top_mm, WithinAbs(body.stature_mm, 0.02 * stature_mm));
    }
  }
}

TEST_CASE("the oven cut keeps the oven's own sizes", "[report][oven_cut]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const oven::Geometry g = oven::geometry_of(config.oven);
    const OvenCut cut = oven_cut(config.oven, g, 900);
    INFO(name);
    CHECK_THAT(cut.floor_mm, WithinAbs(900 + config.oven.floor_above_base_mm, kDrawn));
    double low = 1e9, far = -1e9, high = -1e9, body_top = -1e9;
    for (const Spot& p : cut.hollow) {
      low = std::min(low, p.y_mm);
      far = std::max(far, p.x_mm);
      high = std::max(high, p.y_mm);
    }
    for (const Spot& p : cut.shell) body_top = std::max(body_top, p.y_mm);
    CHECK_THAT(low, WithinAbs(cut.floor_mm, kDrawn));
    CHECK_THAT(far, WithinAbs(g.floor.far_mm, kDrawn));
    CHECK(high >= cut.floor_mm + g.inner.height_mm - kDrawn);
    CHECK(high <= 900 + config.oven.height_mm + kDrawn);
    CHECK_THAT(body_top, WithinAbs(900 + config.oven.height_mm, kDrawn));
    CHECK_THAT(cut.hollow[1].y_mm, WithinAbs(cut.floor_mm + g.outer.height_mm, kDrawn));
  }
}

TEST_CASE("what the ray leaves unseen shrinks as it lands farther back", "[report][oven_cut]") {
  const config::Config config;
  const oven::Geometry g = oven::geometry_of(config.oven);
  const OvenCut cut = oven_cut(config.oven, g, 900);
  const Spot edge{0, cut.floor_mm + g.outer.height_mm};
  double before = area(cut.hollow);
  for (const double x : {60.0, 150.0, 250.0, 350.0, 429.0}) {
    const double here = area(unseen_hollow(cut, edge, {x, cut.floor_mm}));
    INFO(x);
    CHECK(here > 0);
    CHECK(here < before);
    before = here;
  }
}

TEST_CASE("the limiting edge is the one the ray grazes", "[report][oven_cut]") {
  config::Config config = preset("ovens/masonry_dome_28");
  const oven::Geometry g = oven::geometry_of(config.oven);
  const OvenCut cut = oven_cut(config.oven, g, 900);
  // A flat ray from far away is limited by the inner opening, which is the lower one; a ray from an
  // eye close above by the outer one.
  const Spot inner =
      limiting_edge(cut, g, {-3000, cut.floor_mm + 900}, {g.floor.far_mm, cut.floor_mm});
  CHECK_THAT(inner.x_mm, WithinAbs(g.throat_mm, kDrawn));
  const Spot outer =
      limiting_edge(cut, g, {-150, cut.floor_mm + 900}, {g.throat_mm + 10, cut.floor_mm});
  CHECK_THAT(outer.x_mm, WithinAbs(0, kDrawn));
}

TEST_CASE("the plan shows the seen share of the pizza as area", "[report][floor_plan]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (std::size_t person = 0; person < config.cooks.size(); ++person) {
      const Drawing d = floor_plan(config, e, person);
      INFO(name << ", cook " << person);
      if (!e.cooks[person].at_oven) {
        CHECK(d.marks().empty());
        continue;
      }
      double seen = 0;
      for (const Mark& mark : of(d, Shape::Polygon, Role::Pizza)) seen += area(d.points(mark));
      double whole = 0;
      for (const Mark& mark : of(d, Shape::Outline, Role::Pizza)) whole += area(d.points(mark));
      REQUIRE(whole > 0);
      // The disc is drawn with 48 corners and the seen outline in 32 steps.
      constexpr double kCorners = 0.01;
      CHECK_THAT(seen / whole, WithinAbs(e.cooks[person].watching.pizza_share, kCorners));
    }
  }
}
