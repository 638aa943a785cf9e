#include "engine/report/drawing.h"

#include <array>
#include <cmath>

#include "catch_amalgamated.hpp"

using namespace hs::report;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kExact = 1e-9;  // sums of a few doubles

double length(Spot a, Spot b) { return std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm); }

}  // namespace

TEST_CASE("marks keep their points, their text and their order", "[report][drawing]") {
  Drawing d;
  d.line(Role::Sightline, {0, 0}, {3, 4}, Weight::Heavy, true);
  d.text(Role::Label, {1, 2}, "first");
  d.dimension({0, 0}, {0, 10}, "second", Ends::Last);
  d.dot(Role::Eye, {5, -6}, 2);
  REQUIRE(d.marks().size() == 4);
  CHECK(d.marks()[0].shape == Shape::Polyline);
  CHECK(d.marks()[0].dashed);
  CHECK(d.points(d.marks()[0])[1] == Spot{3, 4});
  CHECK(d.text(d.marks()[0]).empty());
  CHECK(d.text(d.marks()[1]) == "first");
  CHECK(d.text(d.marks()[2]) == "second");
  CHECK(d.marks()[2].ends == Ends::Last);
  CHECK(d.points(d.marks()[3])[0] == Spot{5, -6});
  const Box box = d.bounds();
  CHECK(box.left_mm == 0);
  CHECK(box.bottom_mm == -6);
  CHECK(box.right_mm == 5);
  CHECK(box.top_mm == 10);
  d.clear();
  CHECK(d.marks().empty());
  CHECK(d.bounds().right_mm == 0);
}

TEST_CASE("hatch lines fill a polygon at their spacing and nowhere else", "[report][drawing]") {
  // A square of 100 with level lines 10 apart: ten lines of 100 each.
  const std::array square{Spot{0, 0}, Spot{100, 0}, Spot{100, 100}, Spot{0, 100}};
  std::vector<Spot> ends;
  hatch_lines(square, 10, 0, ends);
  REQUIRE(ends.size() == 20);
  for (std::size_t i = 0; i < ends.size(); i += 2) {
    CHECK_THAT(length(ends[i], ends[i + 1]), WithinAbs(100, kExact));
    CHECK_THAT(ends[i].y_mm, WithinAbs(5 + 5.0 * static_cast<double>(i), kExact));
  }
  // Whatever the angle, the lines' whole length times the spacing is near the area.
  for (const double angle_deg : {0.0, 30.0, 50.0, 90.0, 133.0}) {
    ends.clear();
    hatch_lines(square, 1, angle_deg, ends);
    double sum = 0;
    for (std::size_t i = 0; i < ends.size(); i += 2) sum += length(ends[i], ends[i + 1]);
    constexpr double kOneLine = 142;  // the longest line across, once too many or too few
    CHECK_THAT(sum, WithinAbs(10000, kOneLine));
  }
}

TEST_CASE("a hatch leaves the bay of a hollow polygon free", "[report][drawing]") {
  // A U: its bay is x 40..60 above y 20.
  const std::array u{Spot{0, 0},   Spot{100, 0}, Spot{100, 100}, Spot{60, 100},
                     Spot{60, 20}, Spot{40, 20}, Spot{40, 100},  Spot{0, 100}};
  std::vector<Spot> ends;
  hatch_lines(u, 7, 0, ends);
  REQUIRE(ends.size() > 20);
  for (std::size_t i = 0; i < ends.size(); i += 2) {
    const double middle = (ends[i].x_mm + ends[i + 1].x_mm) / 2;
    if (ends[i].y_mm > 20) CHECK((middle < 40 || middle > 60));
  }
  ends.clear();
  hatch_lines(std::array{Spot{0, 0}, Spot{1, 1}}, 7, 0, ends);
  CHECK(ends.empty());
}

TEST_CASE("a hatch holds still while its polygon moves", "[report][drawing]") {
  const auto levels = [](double top) {
    std::vector<Spot> ends;
    hatch_lines(std::array{Spot{0, 0}, Spot{50, 0}, Spot{50, top}, Spot{0, top}}, 10, 0, ends);
    return ends;
  };
  const std::vector<Spot> before = levels(60);
  const std::vector<Spot> after = levels(63);
  REQUIRE(after.size() >= before.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    CHECK_THAT(after[i].y_mm, WithinAbs(before[i].y_mm, kExact));
  }
}

TEST_CASE("a smooth curve goes through what it was given", "[report][drawing]") {
  const std::array given{Spot{0, 0}, Spot{10, -2}, Spot{14, 9}, Spot{3, 12}};
  const std::vector<Spot> curve = smooth_closed(given, 5);
  REQUIRE(curve.size() == 20);
  for (std::size_t i = 0; i < given.size(); ++i) CHECK(length(curve[5 * i], given[i]) < kExact);
}
