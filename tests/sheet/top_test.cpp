// The blank of a folded top: sizes by hand, laws of its outline, and what is refused.
#include "engine/sheet/top.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::sheet;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kInch = 25.4;

Top cap() {
  Top top;
  top.metal = {0.0625 * kInch, 0.0625 * kInch, 0.446};
  top.width_mm = 60 * kInch;
  top.depth_mm = 26 * kInch;
  for (Flange& flange : top.flanges) flange.down_mm = 1.5 * kInch;
  return top;
}

bool crosses(const Spot& a, const Spot& b, const Spot& c, const Spot& d) {
  const auto turn = [](const Spot& p, const Spot& q, const Spot& r) {
    return (q.x_mm - p.x_mm) * (r.y_mm - p.y_mm) - (q.y_mm - p.y_mm) * (r.x_mm - p.x_mm);
  };
  return turn(a, b, c) * turn(a, b, d) < -1e-9 && turn(c, d, a) * turn(c, d, b) < -1e-9;
}

// Every corner is a right one, no edge has no length, none crosses another.
void check_outline(const Blank& blank) {
  const std::vector<Spot>& o = blank.outline;
  REQUIRE(o.size() >= 4);
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Spot& a = o[i];
    const Spot& b = o[(i + 1) % o.size()];
    const bool upright = a.x_mm == b.x_mm, level = a.y_mm == b.y_mm;
    CHECK(upright != level);
    CHECK(a.x_mm >= 0);
    CHECK(a.y_mm >= 0);
    CHECK(a.x_mm <= blank.width_mm);
    CHECK(a.y_mm <= blank.depth_mm);
    for (std::size_t j = i + 2; j < o.size(); ++j) {
      if (crosses(a, b, o[j], o[(j + 1) % o.size()])) {
        FAIL_CHECK("outline crosses itself at " << i << " and " << j);
      }
    }
  }
}

double told(const Blank& blank, std::string_view where, std::string_view what, Reads reads) {
  const auto row = std::find_if(blank.told.begin(), blank.told.end(), [&](const Told& one) {
    return one.where == where && one.what == what && one.reads == reads;
  });
  return row == blank.told.end() ? std::nan("") : row->mm;
}

std::vector<Remark> cautions_on(const Blank& blank, std::string_view where) {
  std::vector<Remark> out;
  for (const Remark& one : blank.cautions) {
    if (one.where == where) out.push_back(one);
  }
  return out;
}

}  // namespace

TEST_CASE("the blank of a cap is the one computed by hand", "[sheet][source]") {
  // 60 x 26 in outside, 1 1/2 in flanges, T = R = 0.0625 in, K 0.446 (computed): 62.784 x 28.784
  // in; the full rectangle weighs 32.64 lb at 0.289 lb/in3.
  const Blank blank = blank_of(cap());
  REQUIRE(blank.possible());
  CHECK_THAT(blank.width_mm / kInch, WithinAbs(62.784, 1e-3));
  CHECK_THAT(blank.depth_mm / kInch, WithinAbs(28.784, 1e-3));
  const double full_lb =
      mass_kg(blank.width_mm * blank.depth_mm, 0.0625 * kInch, 0.289 * 27.6799) / 0.45359237;
  CHECK_THAT(full_lb, WithinRel(32.64, 0.001));
  // Four notches of some 1.4 x 1.4 in are not there.
  const double notches_in2 = (blank.width_mm * blank.depth_mm - blank.area_mm2) / (kInch * kInch);
  CHECK(notches_in2 > 4 * 1.38 * 1.38);
  CHECK(notches_in2 < 4 * 1.5 * 1.5);
  CHECK(blank.mass_kg < mass_kg(blank.width_mm * blank.depth_mm, 0.0625 * kInch));
  check_outline(blank);
  CHECK(blank.outline.size() == 28);
  CHECK(blank.bends.size() == 4);
  CHECK(blank.sheet == 0);  // of 48 x 96 in
}

TEST_CASE("outside and inside are told apart", "[sheet]") {
  const Blank blank = blank_of(cap());
  const double t = 0.0625 * kInch;
  CHECK(told(blank, "top", "width", Reads::Outside) == 60 * kInch);
  CHECK_THAT(told(blank, "top", "width", Reads::Inside), WithinAbs(60 * kInch - 2 * t, 1e-9));
  CHECK_THAT(told(blank, "front flange", "height", Reads::Inside),
             WithinAbs(1.5 * kInch - t, 1e-9));
  CHECK(told(blank, "blank", "width", Reads::Flat) == blank.width_mm);
}

TEST_CASE("a blank folds back to the outside sizes", "[sheet][law]") {
  // Folded again by arcs: flat between the tangents, a bend's outside radius R + T at either end.
  test::Random random(7);
  int made = 0;
  for (int i = 0; i < test::sweep(400); ++i) {
    Top top;
    top.metal.thick_mm = random.between(0.8, 3);
    top.metal.inside_radius_mm = top.metal.thick_mm * random.between(1, 8);
    top.metal.k = random.between(0.35, 0.5);
    top.width_mm = random.between(300, 2500);
    top.depth_mm = random.between(300, 900);
    for (Flange& flange : top.flanges) {
      if (random.one_in(4)) continue;
      flange.down_mm = random.between(30, 80);
      flange.hem = static_cast<Hem>(random.below(3));
      flange.return_mm = random.between(6, 9) * top.metal.thick_mm;
      flange.gap_mm = random.between(1, 3) * top.metal.thick_mm;
    }
    const Blank blank = blank_of(top);
    if (!blank.possible()) continue;
    ++made;
    check_outline(blank);
    const Metal& m = top.metal;
    double width = blank.width_mm, depth = blank.depth_mm;
    for (const BendLine& bend : blank.bends) {
      double& size = bend.side == Side::Left || bend.side == Side::Right ? width : depth;
      const Flange& flange = top.flanges[static_cast<std::size_t>(bend.side)];
      size -= bend.arc_mm;
      if (bend.hem) {
        const double turn = bend.radius_mm + m.thick_mm;
        size -= flange.return_mm - turn;  // straight part of the return
        size += turn;                     // the flange's straight part ends above the fold
      } else {
        const double outer = m.inside_radius_mm + m.thick_mm;
        size -= flange.down_mm - outer;
        size += outer;
      }
    }
    CHECK_THAT(width, WithinAbs(top.width_mm, 1e-6));
    CHECK_THAT(depth, WithinAbs(top.depth_mm, 1e-6));
    CHECK(blank.area_mm2 > 0);
    CHECK(blank.area_mm2 <= blank.width_mm * blank.depth_mm + 1e-6);
  }
  CHECK(made > test::sweep(400) / 2);
}

namespace {

bool inside(const std::vector<Spot>& outline, double x, double y) {
  bool in = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const Spot& a = outline[i];
    const Spot& b = outline[j];
    if ((a.y_mm > y) != (b.y_mm > y) &&
        x < a.x_mm + (y - a.y_mm) / (b.y_mm - a.y_mm) * (b.x_mm - a.x_mm)) {
      in = !in;
    }
  }
  return in;
}

// The front left corner folded: x and y from the outside faces, z down from the upper face.
struct Folded {
  const Blank& blank;
  const Metal& metal;
  double side_mm = 0, lap_mm = 0;  // from the blank's edges to where the top is flat
  double arc_mm = allowance_mm(metal, 90), turn_mm = setback_mm(metal, 90);

  // A point of the left flange, `from_mm` beyond the flat top and `deep_mm` into the metal.
  std::array<double, 3> side(double from_mm, double y_flat_mm, double deep_mm) const {
    const double y = y_flat_mm - lap_mm + turn_mm, radius = turn_mm - deep_mm;
    if (from_mm >= arc_mm) return {deep_mm, y, turn_mm + from_mm - arc_mm};
    const double angle = from_mm / arc_mm * std::numbers::pi / 2;
    return {turn_mm - radius * std::sin(angle), y, turn_mm - radius * std::cos(angle)};
  }
  // Is that point inside the front flange's metal?
  bool in_lap(const std::array<double, 3>& at) const {
    const auto [x, y, z] = at;
    double deep = y, from = arc_mm + z - turn_mm;
    if (z < turn_mm) {
      deep = turn_mm - std::hypot(turn_mm - y, turn_mm - z);
      from = std::atan2(turn_mm - y, turn_mm - z) / (std::numbers::pi / 2) * arc_mm;
    }
    if (deep < 1e-6 || deep > metal.thick_mm - 1e-6 || from <= 0) return false;
    return inside(blank.outline, x - turn_mm + side_mm, lap_mm - from);
  }
};

}  // namespace

TEST_CASE("folded flanges keep the stated gap at a corner and lie in no place twice",
          "[sheet][law]") {
  test::Random random(11);
  for (int i = 0; i < test::sweep(60); ++i) {
    Top top = cap();
    top.metal.thick_mm = random.between(0.8, 3);
    top.metal.inside_radius_mm = top.metal.thick_mm * random.between(1, 6);
    top.corner_gap_mm = top.metal.thick_mm * random.between(0.1, 2);
    for (Flange& flange : top.flanges) flange.down_mm = random.between(40, 60);
    const Blank blank = blank_of(top);
    REQUIRE(blank.possible());
    check_outline(blank);
    Folded corner{blank, top.metal};
    for (const BendLine& bend : blank.bends) {
      if (bend.side == Side::Left) corner.side_mm = bend.from.x_mm + bend.arc_mm / 2;
      if (bend.side == Side::Front) corner.lap_mm = bend.from.y_mm + bend.arc_mm / 2;
    }
    const double arc = corner.arc_mm;
    double nearest_mm = 1e9;
    int twice = 0;
    constexpr int kSteps = 40;
    for (int u = 0; u < kSteps; ++u) {
      for (int v = 0; v < kSteps; ++v) {
        const double from = (u + 0.5) / kSteps * 2 * arc;
        const double y = corner.lap_mm - 2 * arc + (v + 0.5) / kSteps * 4 * arc;
        if (!inside(blank.outline, corner.side_mm - from, y)) continue;
        for (const double share : {0.01, 0.25, 0.5, 0.75, 0.99}) {
          const auto at = corner.side(from, y, share * top.metal.thick_mm);
          if (corner.in_lap(at)) ++twice;
          if (from > arc) nearest_mm = std::min(nearest_mm, at[1] - top.metal.thick_mm);
        }
      }
    }
    CHECK(twice == 0);
    CHECK(nearest_mm >= top.corner_gap_mm - 1e-9);
    CHECK(nearest_mm <= top.corner_gap_mm + 4 * arc / kSteps);
    // From its stated size on the top is whole.
    CHECK(told(blank, "corner", "square relief", Reads::Outside) == corner.turn_mm);
    const double whole = 1e-6, x = corner.side_mm, y = corner.lap_mm;
    CHECK(inside(blank.outline, x + whole, y + whole));
    CHECK_FALSE(inside(blank.outline, x - whole, y - whole));
    CHECK_FALSE(inside(blank.outline, x - arc + whole, y - arc + whole));
  }
}

TEST_CASE("a side is turned down along its back part only, by hand", "[sheet]") {
  Top top = cap();  // 60 x 26 in, flanges 1 1/2 in
  Flange& right = top.flanges[index_of(Side::Right)];
  right.long_mm = 6 * kInch;
  right.step_mm = 3;
  const Blank whole = blank_of(cap()), blank = blank_of(top);
  REQUIRE(blank.possible());
  check_outline(blank);
  CHECK(blank.width_mm == whole.width_mm);
  CHECK(blank.depth_mm == whole.depth_mm);
  // Straight, 3 mm inside 60 in, up to 20 in from the front; both from the blank's edges, which are
  // as far outside the top's as a flange adds: 1 1/2 in less a deduction.
  const double added = 1.5 * kInch - deduction_mm(top.metal, 90);
  REQUIRE(blank.starts.size() == 1);
  CHECK_THAT(blank.starts[0].x_mm, WithinAbs(added + 60 * kInch - 3, 1e-9));
  CHECK_THAT(blank.starts[0].y_mm, WithinAbs(added + 20 * kInch, 1e-9));
  CHECK(inside(blank.outline, blank.width_mm - 1, blank.starts[0].y_mm + 1));
  CHECK_FALSE(inside(blank.outline, blank.starts[0].x_mm + 0.01, blank.starts[0].y_mm - 0.01));
  // The slot: one thickness wide, to where the bend ends, R + T from the flange's outside.
  const double bend_ends = added + 60 * kInch - setback_mm(top.metal, 90);
  const double slot_y = blank.starts[0].y_mm - top.metal.thick_mm / 2;
  CHECK_FALSE(inside(blank.outline, bend_ends + 0.01, slot_y));
  CHECK(inside(blank.outline, bend_ends - 0.01, slot_y));
  CHECK(inside(blank.outline, bend_ends + 0.01, slot_y - top.metal.thick_mm));
  for (const BendLine& bend : blank.bends) {
    if (bend.side == Side::Right) CHECK(bend.from.y_mm == blank.starts[0].y_mm);
    if (bend.side == Side::Front) CHECK(bend.to.x_mm == blank.starts[0].x_mm);
  }
  right.long_mm = 2;
  CHECK_FALSE(blank_of(top).possible());
  right.long_mm = 26 * kInch;
  CHECK_FALSE(blank_of(top).possible());
  right.long_mm = 6 * kInch;
  right.step_mm = -1;
  CHECK_FALSE(blank_of(top).possible());
  top.flanges[index_of(Side::Front)].long_mm = 100;
  right.step_mm = 3;
  CHECK_FALSE(blank_of(top).possible());
}

TEST_CASE("a top over a painted substrate leaves the room asked for", "[sheet]") {
  Substrate under{.width_mm = 1500, .depth_mm = 600, .thick_mm = 36};
  under.flanged = {true, true, true, false};
  const Metal metal{1.6, 1.6, 0.45};
  const Top top = top_over(under, metal);
  // By hand: 600 + 2 x 0.2 + 2 x (1.5 + 1.6); one side only: 1500 + 0.4 + 3.1.
  CHECK_THAT(top.depth_mm, WithinAbs(606.6, 1e-9));
  CHECK_THAT(top.width_mm, WithinAbs(1503.5, 1e-9));
  // 1.6 + 1 + 36 + 0.4 + 12.
  CHECK_THAT(top.flanges[0].down_mm, WithinAbs(51, 1e-9));
  CHECK(top.flanges[3].down_mm == 0);
  const Blank blank = blank_of(top);
  CHECK(blank.possible());
  check_outline(blank);
  CHECK(blank.bends.size() == 3);
}

TEST_CASE("a substrate's sharp corner meets the inside of a wide bend", "[sheet]") {
  CHECK(corner_ease_mm(1.6, 1.5, 1) == 0);
  CHECK(corner_ease_mm(1.6, 2, 0) == 0);
  // Without room the corner must be rounded like the bend itself.
  CHECK_THAT(corner_ease_mm(3, 0, 0), WithinAbs(3, 1e-12));
  // Rounded by what it says, the corner's arc just touches the bend's: sqrt((R-f-e)^2+(R-b-e)^2)
  // + e = R.
  const double ease = corner_ease_mm(6, 1, 0.5);
  CHECK(ease > 0);
  CHECK_THAT(std::hypot(6 - 1 - ease, 6 - 0.5 - ease) + ease, WithinAbs(6, 1e-9));
}

TEST_CASE("holes lie on the blank where they are folded from", "[sheet]") {
  Top top = cap();
  top.holes = {{true, Side::Front, 30 * kInch, 13 * kInch, 35},
               {false, Side::Front, 30 * kInch, 0.75 * kInch, 6}};
  const Blank blank = blank_of(top);
  REQUIRE(blank.possible());
  REQUIRE(blank.holes.size() == 2);
  CHECK_THAT(blank.holes[0].at.x_mm, WithinAbs(blank.width_mm / 2, 1e-9));
  CHECK_THAT(blank.holes[0].at.y_mm, WithinAbs(blank.depth_mm / 2, 1e-9));
  // 1 1/2 in flange, hole's middle 3/4 in down: 3/4 in from the cut edge.
  CHECK_THAT(blank.holes[1].at.y_mm, WithinAbs(0.75 * kInch, 1e-9));
}

TEST_CASE("what cannot be folded is refused in words", "[sheet]") {
  Top top = cap();
  const auto first = [](const Top& t) {
    const Blank blank = blank_of(t);
    CHECK_FALSE(blank.possible());
    CHECK(blank.outline.empty());
    return blank.refusals.empty() ? std::string() : words(blank.refusals[0], Unit::Mm);
  };
  // Fabricators' least (read): 4 T and 3 T + R are both 6.35 mm at T = R = 1/16 in. Refused just
  // below; between it and the V-die's 6.16 T (from memory) only cautioned.
  top.flanges[0].down_mm = 6.3;
  CHECK_THAT(first(top), ContainsSubstring("front flange is too short to be bent: 6.3 mm, where at "
                                           "least 6.4 mm is needed"));
  top.flanges[0].down_mm = 6.36;
  CHECK(blank_of(top).possible());
  const std::vector<Remark> low = cautions_on(blank_of(top), "front flange");
  REQUIRE(low.size() == 1);
  CHECK_THAT(words(low[0], Unit::Inch), ContainsSubstring("0.250 in"));
  top.flanges[0].down_mm = 9.79;
  CHECK(cautions_on(blank_of(top), "front flange").empty());

  top = cap();
  top.metal.inside_radius_mm = 0.99 * top.metal.thick_mm;
  CHECK_THAT(first(top), ContainsSubstring("too tight"));
  top.metal.inside_radius_mm = 1.0 * top.metal.thick_mm;
  CHECK(blank_of(top).possible());
  CHECK(cautions_on(blank_of(top), "bend").size() == 1);
  top.metal.inside_radius_mm = 1.25 * top.metal.thick_mm;
  CHECK(cautions_on(blank_of(top), "bend").empty());
  top.metal.k = 0.8;
  CHECK_THAT(first(top), ContainsSubstring("K that no bend has: 0.8, where at most 0.5"));
  top = cap();
  top.metal.thick_mm = 0.0508 * kInch;
  CHECK_THAT(
      words(cautions_on(blank_of(top), "metal").at(0), Unit::Inch),
      ContainsSubstring("another metal's gauge: 0.051 in, where at least 0.063 in is usual"));
  top.metal.thick_mm = std::nan("");
  CHECK_THAT(first(top), ContainsSubstring("no number"));
  top = cap();
  top.flanges[2] = {38, Hem::Closed, 3, 0};
  CHECK_THAT(first(top), ContainsSubstring("left flange has a hem that turns back too little"));
  top.flanges[2] = {38, Hem::Closed, 36, 0};
  CHECK_THAT(first(top), ContainsSubstring("runs up into its bend"));
  top.flanges[2] = {38, Hem::Open, 10, 1};
  CHECK_THAT(first(top), ContainsSubstring("too little inside"));
  top.flanges[2] = {-5, Hem::None, 0, 0};
  CHECK_THAT(first(top), ContainsSubstring("no height"));
  top = cap();
  top.width_mm = 8;
  CHECK_THAT(first(top), ContainsSubstring("no width that can be folded"));
}

TEST_CASE("a hole at a bend is refused, near one asked about", "[sheet][source]") {
  // Fabricators (read): hole's edge 2 T to 4 T, and R, from the bend.
  const double t = 0.0625 * kInch;
  Top top = cap();
  const double bend = 2 * t;  // where it begins, from the outside
  top.holes = {{true, Side::Front, 500, bend + 3 * t - 0.01 + 10, 20}};
  CHECK_FALSE(blank_of(top).possible());
  top.holes[0].y_mm = bend + 3 * t + 0.01 + 10;
  CHECK(blank_of(top).possible());
  CHECK(cautions_on(blank_of(top), "hole").size() == 1);
  top.holes[0].y_mm = bend + 5 * t + 0.01 + 10;
  CHECK(cautions_on(blank_of(top), "hole").empty());
  CHECK_THAT(words(blank_of([&] {
                     Top near = top;
                     near.holes[0].y_mm = 10;
                     return near;
                   }())
                       .refusals.at(0),
                   Unit::Mm),
             ContainsSubstring("hole 1 is too near to a bend"));
  top.holes.push_back(top.holes[0]);
  CHECK_FALSE(blank_of(top).possible());
}

TEST_CASE("the polish lies along its sheet", "[sheet]") {
  // 48 x 96 in sheets (from memory): a blank 50 in wide needs the polish along its width.
  Top top = cap();
  top.width_mm = 50 * kInch;
  CHECK(blank_of(top).sheet == 0);
  top.polish = Polish::AlongDepth;
  CHECK(blank_of(top).sheet == 2);
  top.width_mm = 130 * kInch;
  CHECK(blank_of(top).sheet == -1);
}
