// Bases cut to the ground: worked by hand, and put down on that ground by a small simulation.
#include "engine/survey/scribe.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::survey;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kRounding_mm = 1e-9;
constexpr double kTop_mm = 0.5;  // what a cut base's top may be off, anywhere
constexpr double kTenth_mm = 0.051;

Point at(double x, double y, double height, Kind kind = Kind::Panel) {
  Point point;
  point.x_mm = x;
  point.y_mm = y;
  point.kind = kind;
  point.readings = 1;
  point.height_mm = height;
  return point;
}

PanelLine along_x(double length) { return {"front", 0, 0, length, 0}; }

Ground ground_of(const std::vector<Point>& points, double length) {
  return ground_under(along_x(length), points, 0);
}

// A panel put down on the ground: among all straight lines for its top that keep its bottom on or
// over the ground, the one that is lowest in the middle (least work of weight). Two unknowns, so
// the answer stands on two of the ordinates; all pairs are tried.
struct Laid {
  double left_mm = 0, right_mm = 0;  // heights of the top's ends
};
Laid laid_down(const Cut& cut, const Ground& ground, double length) {
  // Both outlines are straight between these places.
  std::vector<double> places;
  for (const Ordinate& o : cut.ordinates) places.push_back(o.along_mm);
  for (const Knot& k : ground.knots) places.push_back(k.along_mm);
  const auto panel_height = [&](double along) {
    for (std::size_t i = 0; i + 1 < cut.ordinates.size(); ++i) {
      const Ordinate& a = cut.ordinates[i];
      const Ordinate& b = cut.ordinates[i + 1];
      if (along > b.along_mm) continue;
      return a.height_mm +
             (b.height_mm - a.height_mm) * (along - a.along_mm) / (b.along_mm - a.along_mm);
    }
    return cut.ordinates.back().height_mm;
  };
  std::vector<double> least;  // of the top, for the bottom to clear the ground
  for (const double along : places) least.push_back(ground.at(along) + panel_height(along));
  Laid best;
  double best_middle = 1e9;
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t j = 0; j < places.size(); ++j) {
      if (places[j] - places[i] < 1) continue;
      const double slope = (least[j] - least[i]) / (places[j] - places[i]);
      const double left = least[i] - slope * places[i];
      bool clear = true;
      for (std::size_t k = 0; k < places.size(); ++k) {
        clear = clear && left + slope * places[k] >= least[k] - 1e-9;
      }
      const double middle = left + slope * length / 2;
      if (!clear || middle >= best_middle) continue;
      best_middle = middle;
      best = {left, left + slope * length};
    }
  }
  return best;
}

}  // namespace

TEST_CASE("readings of pavers become the heights that a scribe cuts", "[survey][source]") {
  // Worked by hand from the rule of the trade (from memory): the panel is tallest where the reading
  // down from the line is largest, and what is cut there is the tallest less its own. Readings 830,
  // 842, 836 mm; heights -830 .. of the ground, feet at -835, base 100 above the feet.
  const std::vector<Point> points{at(0, 0, 5), at(500, 0, -7), at(1000, 0, -1)};
  const PanelLine panel = along_x(1000);
  const std::vector<PanelLine> panels{panel};
  const std::vector<Ground> grounds{ground_of(points, 1000)};
  const auto base =
      base_on(panels, grounds, {.height_mm = 139.7, .least_mm = 50, .step_mm = 250, .top_mm = 100});
  REQUIRE(base.has_value());
  const Cut& cut = *base->cuts[0];
  CHECK_THAT(cut.least_mm, WithinAbs(95, kRounding_mm));
  CHECK_THAT(cut.most_mm, WithinAbs(107, kRounding_mm));
  CHECK_THAT(cut.fall_mm, WithinAbs(12, kRounding_mm));
  CHECK_THAT(cut.rip_mm, WithinAbs(107, kRounding_mm));
  CHECK_THAT(cut.compass_mm, WithinAbs(12, kRounding_mm));
  CHECK_THAT(cut.compass_unripped_mm, WithinAbs(44.7, kRounding_mm));
  CHECK(cut.touches == std::vector<double>{0});
  CHECK(cut.way == Way::Scribe);
  const double heights[] = {95, 101, 107, 104, 101};
  const double cuts[] = {12, 6, 0, 3, 6};
  REQUIRE(cut.ordinates.size() == 5);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK_THAT(cut.ordinates[i].along_mm, WithinAbs(250.0 * static_cast<double>(i), kRounding_mm));
    CHECK_THAT(cut.ordinates[i].height_mm, WithinAbs(heights[i], kRounding_mm));
    CHECK_THAT(cut.ordinates[i].cut_mm, WithinAbs(cuts[i], kRounding_mm));
  }
  // Ends at 5 and -1, a hollow between: it rests on both ends, and leans 6 down to the right.
  CHECK(cut.rest.left_mm == 0);
  CHECK(cut.rest.right_mm == 1000);
  CHECK_THAT(cut.rest.rise_mm, WithinAbs(-6, kRounding_mm));
}

TEST_CASE("a straightedge rests on the hull's edge over its middle, or rocks", "[survey]") {
  // By hand: a stone proud by 10 at 300 of 1000; the right end is level with the left. Over the
  // middle the edge runs from the stone to the right end, 10 down over 700.
  const Ground stone = ground_of({at(0, 0, 0), at(300, 0, 10), at(1000, 0, 0)}, 1000);
  const Rest rest = rest_on(stone, 1000);
  CHECK(rest.left_mm == 300);
  CHECK(rest.right_mm == 1000);
  CHECK_THAT(rest.rise_mm, WithinAbs(-10.0 / 700 * 1000, 1e-9));
  CHECK(level_touches(stone) == std::vector<double>{300});
  const Rest rocks = rest_on(ground_of({at(0, 0, 0), at(500, 0, 10), at(1000, 0, 0)}, 1000), 1000);
  CHECK(rocks.left_mm == 500);
  CHECK(rocks.right_mm == 500);
  // Two stones of one height: level on both.
  const Ground two =
      ground_of({at(0, 0, 0), at(200, 0, 8), at(500, 0, 2), at(900, 0, 8), at(1000, 0, 1)}, 1000);
  CHECK(level_touches(two) == std::vector<double>{200, 900});
  CHECK_THAT(rest_on(two, 1000).rise_mm, WithinAbs(0, kRounding_mm));
}

TEST_CASE("level ground gives straight bottoms", "[survey][law]") {
  const std::vector<Point> points{at(0, 0, 3), at(400, 0, 3), at(1200, 0, 3, Kind::Joint)};
  const std::vector<PanelLine> panels{along_x(1200)};
  const std::vector<Ground> grounds{ground_of(points, 1200)};
  const auto base = base_on(panels, grounds, {.height_mm = 139.7, .least_mm = 50, .step_mm = 100});
  REQUIRE(base.has_value());
  const Cut& cut = *base->cuts[0];
  CHECK(cut.way == Way::Straight);
  CHECK(cut.fall_mm == 0);
  CHECK(cut.compass_mm == 0);
  REQUIRE(cut.ordinates.size() == 13);
  for (const Ordinate& o : cut.ordinates) {
    CHECK(o.cut_mm == 0);
    CHECK_THAT(o.height_mm, WithinAbs(97, kRounding_mm));
  }
  CHECK(cut.ordinates.back().joint);
}

TEST_CASE("a panel without a reading near an end is not guessed", "[survey]") {
  CHECK(ground_of({at(0, 0, 0), at(800, 0, 1)}, 1000).lacks == "a reading at its right end");
  CHECK(ground_of({at(200, 0, 0), at(1000, 0, 1)}, 1000).lacks == "a reading at its left end");
  CHECK(ground_of({at(500, 0, 0)}, 1000).lacks == "readings at both ends");
  CHECK(ground_of({}, 1000).lacks == "readings at both ends");
  // A point beside the line, or of another kind, is not on it.
  CHECK_FALSE(ground_of({at(0, kOnLine_mm + 1, 0), at(1000, 0, 0)}, 1000).known());
  CHECK_FALSE(ground_of({at(0, 0, 0, Kind::Other), at(1000, 0, 0)}, 1000).known());
  const Ground near = ground_of({at(kAtEnd_mm, kOnLine_mm, 4), at(1000, 0, 1)}, 1000);
  REQUIRE(near.known());
  CHECK(near.at(0) == 4);
  // Two points at one place of the panel: the board would stand on the higher.
  CHECK(ground_of({at(0, 0, 4), at(0, 20, 7), at(1000, 0, 1)}, 1000).at(0) == 7);
}

TEST_CASE("the base's top suits the board, or the ground is too much for it", "[survey]") {
  const std::vector<PanelLine> panels{along_x(1000)};
  const auto based = [&](double low, double high, std::optional<double> top, double board) {
    const std::vector<Ground> grounds{ground_of({at(0, 0, low), at(1000, 0, high)}, 1000)};
    return *base_on(panels, grounds,
                    {.height_mm = board, .least_mm = 50, .step_mm = 100, .top_mm = top});
  };
  // By hand: ground -20 to 30; at least 50 over 30 is 80, at most 140 over -20 is 120.
  const Base usual = based(-20, 30, {}, 140);
  CHECK(usual.possible);
  CHECK(usual.fits);
  CHECK(usual.lowest_top_mm == 80);
  CHECK(usual.highest_top_mm == 120);
  CHECK(usual.top_mm == 100);
  CHECK(usual.board_needed_mm == 100);
  // 30 higher: 100 is too low, 110 is the nearest that leaves enough.
  CHECK(based(10, 60, {}, 140).top_mm == 110);
  CHECK(based(-70, -20, {}, 140).top_mm == 70);
  // Given heights are kept and judged.
  CHECK_FALSE(based(-20, 30, 79.9, 140).fits);
  CHECK(based(-20, 30, 80, 140).fits);
  CHECK(based(-20, 30, 120, 140).fits);
  CHECK_FALSE(based(-20, 30, 120.1, 140).fits);
  // Exactly enough board, and a tenth less.
  CHECK(based(-20, 30, {}, 100).possible);
  const Base poor = based(-20, 30, {}, 99.9);
  CHECK_FALSE(poor.possible);
  CHECK_FALSE(poor.fits);
  CHECK(poor.cuts[0]->way == Way::Legs);
}

TEST_CASE("how much ground falls decides between straight, shims, a cut and legs", "[survey]") {
  const std::vector<PanelLine> panels{along_x(1000)};
  const auto way = [&](double fall) {
    const std::vector<Ground> grounds{ground_of({at(0, 0, 0), at(1000, 0, fall)}, 1000)};
    return base_on(panels, grounds, {.height_mm = 300, .least_mm = 50, .step_mm = 100})
        ->cuts[0]
        ->way;
  };
  CHECK(way(kStraight_mm) == Way::Straight);
  CHECK(way(kStraight_mm + 0.1) == Way::Shim);
  CHECK(way(kShim_mm) == Way::Shim);
  CHECK(way(kShim_mm + 0.1) == Way::Scribe);
  CHECK(way(kWedge_mm) == Way::Scribe);
  CHECK(way(kWedge_mm + 0.1) == Way::Legs);
}

TEST_CASE("the panel on the highest ground is set first", "[survey]") {
  const std::vector<PanelLine> panels{
      {"front", 0, 0, 1000, 0}, {"left", 0, 600, 0, 0}, {"right", 1000, 0, 1000, 600}};
  const std::vector<Point> points{at(0, 0, 5), at(1000, 0, -3), at(0, 600, 20), at(1000, 600, 9)};
  std::vector<Ground> grounds;
  for (const PanelLine& panel : panels) grounds.push_back(ground_under(panel, points, 0));
  const auto base = base_on(panels, grounds, {.height_mm = 140, .least_mm = 50, .step_mm = 100});
  REQUIRE(base.has_value());
  CHECK(base->order == std::vector<std::size_t>{1, 2, 0});
  CHECK(base->high_panel == 1);
  CHECK(base->low_panel == 0);
}

TEST_CASE("cut panels put down on their ground have a level top, all at one height",
          "[survey][law]") {
  test::Random random(2024);
  for (int i = 0; i < test::sweep(400); ++i) {
    // A slope with stones that stand proud and sunk, read at uneven places.
    const double across = random.between(-0.02, 0.02), back = random.between(-0.02, 0.02);
    const std::vector<PanelLine> panels{{"front", 0, 100, 1800, 100},
                                        {"left end", 0, 700, 0, 100},
                                        {"right end", 1800, 100, 1800, 700}};
    std::vector<Point> points;
    const auto add = [&](double x, double y) {
      points.push_back(at(x, y, across * x + back * y + random.between(-8, 8),
                          random.one_in(3) ? Kind::Joint : Kind::Panel));
    };
    for (double x = 0; x < 1800; x += random.between(90, 350)) add(x, 100);
    add(1800, 100);
    add(0, 700);
    add(0, 400 + random.between(-50, 50));
    add(1800, 700);
    std::vector<Ground> grounds;
    for (const PanelLine& panel : panels) grounds.push_back(ground_under(panel, points, 0));
    const auto base = base_on(
        panels, grounds, {.height_mm = 200, .least_mm = 40, .step_mm = 20.0 + random.below(300)});
    REQUIRE(base.has_value());
    for (std::size_t p = 0; p < panels.size(); ++p) {
      REQUIRE(base->cuts[p].has_value());
      const Cut& cut = *base->cuts[p];
      const double length = panels[p].length_mm();
      const Laid laid = laid_down(cut, grounds[p], length);
      REQUIRE_THAT(laid.left_mm, WithinAbs(base->top_mm, kTop_mm));
      REQUIRE_THAT(laid.right_mm, WithinAbs(base->top_mm, kTop_mm));
      // Least and most are the ordinates' own; the compass draws the same line.
      double least = 1e9, most = -1e9;
      for (const Ordinate& o : cut.ordinates) {
        least = std::min(least, o.height_mm);
        most = std::max(most, o.height_mm);
        REQUIRE(o.cut_mm >= -kTenth_mm);
        const double drawn = grounds[p].at(o.along_mm) + cut.compass_mm - grounds[p].high_mm;
        REQUIRE_THAT(o.cut_mm, WithinAbs(drawn, 3 * kTenth_mm));
      }
      REQUIRE_THAT(least, WithinAbs(cut.least_mm, kTenth_mm));
      REQUIRE_THAT(most, WithinAbs(cut.most_mm, kTenth_mm));
      for (std::size_t k = 1; k < cut.ordinates.size(); ++k) {
        REQUIRE(cut.ordinates[k].along_mm > cut.ordinates[k - 1].along_mm);
      }
    }
  }
}
