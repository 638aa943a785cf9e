// Plane fits against worked examples, and the doubtful point.
#include "engine/survey/plane.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::survey;
using Catch::Matchers::WithinAbs;

TEST_CASE("a plane through five points of a published question is the exact one",
          "[survey][source]") {
  // Question at math-gpt.org (read); answer in exact fractions, computed by hand elimination.
  const std::vector<Spot3> spots{{0, -3, 0}, {4, 0, 0}, {3, -1, 1}, {1, -2, 1}, {-1, -4, -3}};
  const auto plane = fit_plane(spots);
  REQUIRE(plane.has_value());
  CHECK_THAT(plane->level_mm, WithinAbs(158.0 / 15, 1e-12));
  CHECK_THAT(plane->across, WithinAbs(-7.0 / 3, 1e-12));
  CHECK_THAT(plane->back, WithinAbs(56.0 / 15, 1e-12));
}

TEST_CASE("a plane through six readings of pavers is the one worked by hand", "[survey][source]") {
  // Normal equations solved by hand: a = 181/6, b = 1/12, c = 17/72; residuals in sixths.
  const std::vector<Spot3> spots{{0, 0, 30},  {60, 0, 35}, {60, 24, 41},
                                 {0, 24, 36}, {30, 0, 33}, {30, 24, 38}};
  const auto plane = fit_plane(spots);
  REQUIRE(plane.has_value());
  CHECK_THAT(plane->level_mm, WithinAbs(181.0 / 6, 1e-9));
  CHECK_THAT(plane->across, WithinAbs(1.0 / 12, 1e-9));
  CHECK_THAT(plane->back, WithinAbs(17.0 / 72, 1e-9));
  const double expected[] = {-1.0 / 6, -1.0 / 6, 1.0 / 6, 1.0 / 6, 1.0 / 3, -1.0 / 3};
  const std::vector<double> off = residuals(*plane, spots);
  for (std::size_t i = 0; i < off.size(); ++i) CHECK_THAT(off[i], WithinAbs(expected[i], 1e-9));
}

TEST_CASE("too few points, or points on one line, give no plane", "[survey]") {
  CHECK_FALSE(fit_plane(std::vector<Spot3>{{0, 0, 1}, {10, 0, 2}}).has_value());
  CHECK_FALSE(
      fit_plane(std::vector<Spot3>{{0, 0, 1}, {10, 10, 2}, {20, 20, 5}, {30, 30, 1}}).has_value());
  CHECK_FALSE(fit_plane(std::vector<Spot3>{{5, 5, 1}, {5, 5, 2}, {5, 5, 3}}).has_value());
}

TEST_CASE("water runs down the steepest way", "[survey]") {
  // A 3-4-5 slope by hand: rises 0.03 across and 0.04 back, so it falls 0.05 to the front left.
  const Slope slope = slope_of({10, 0.03, 0.04});
  CHECK_THAT(slope.share, WithinAbs(0.05, 1e-15));
  CHECK_THAT(slope.x, WithinAbs(-0.6, 1e-12));
  CHECK_THAT(slope.y, WithinAbs(-0.8, 1e-12));
  CHECK(slope_of({10, 0, 0}).share == 0);
}

TEST_CASE("three slips among eighteen points do not hide each other", "[survey][law]") {
  test::Random random(41);
  for (int i = 0; i < test::sweep(200); ++i) {
    std::vector<Spot3> spots;
    for (int k = 0; k < 18; ++k) {
      const double x = 300.0 * (k % 6), y = 300.0 * (k / 6);
      spots.push_back({x, y, 0.02 * x - 0.01 * y + random.below(31) / 10.0});
    }
    const std::size_t bad[] = {static_cast<std::size_t>(random.below(6)),
                               static_cast<std::size_t>(6 + random.below(6)),
                               static_cast<std::size_t>(12 + random.below(6))};
    const double slip = 60 + random.below(200);
    for (const std::size_t k : bad) spots[k].z_mm += slip;
    const std::vector<double> off = outliers(spots).off_mm;
    for (std::size_t k = 0; k < spots.size(); ++k) {
      const bool slipped = std::find(std::begin(bad), std::end(bad), k) != std::end(bad);
      REQUIRE((off[k] != 0) == slipped);
    }
  }
}

TEST_CASE("a lip that stones have is no slip, and fewer than six points judge nobody", "[survey]") {
  std::vector<Spot3> spots;
  for (int k = 0; k < 9; ++k) spots.push_back({300.0 * (k % 3), 300.0 * (k / 3), 0});
  spots[4].z_mm = kLip_mm;
  CHECK(outliers(spots).off_mm[4] == 0);
  spots[4].z_mm = kLip_mm + 0.1;
  CHECK_THAT(outliers(spots).off_mm[4], WithinAbs(kLip_mm + 0.1, 1e-9));
  spots.resize(kFewest - 1);
  spots[4].z_mm = 500;
  const Outliers few = outliers(spots);
  for (const double off : few.off_mm) CHECK(off == 0);
  for (const bool judged : few.judged) CHECK_FALSE(judged);
}

TEST_CASE("along one line a reading is judged by the others on it", "[survey]") {
  // 2 mm of fall each 400 mm, the fourth 98 mm (3 7/8 in) low; a builder's own line is never exact.
  std::vector<Spot3> spots;
  for (int k = 0; k < 6; ++k) spots.push_back({400.0 * k, 150.0 + k % 2, -2.0 * k});
  CHECK(outliers(spots).one_line);
  for (const double off : outliers(spots).off_mm) CHECK(off == 0);
  spots[3].z_mm -= 98;
  const Outliers found = outliers(spots);
  for (std::size_t k = 0; k < spots.size(); ++k) {
    CHECK(found.judged[k]);
    CHECK_THAT(found.off_mm[k], WithinAbs(k == 3 ? -98 : 0, 1e-3));
  }
  CHECK(on_one_line(spots));
  spots[0].y_mm += 3 * kOneLine_mm;
  CHECK_FALSE(on_one_line(spots));
}

TEST_CASE("one or two points beside a line are judged by nobody, a third makes them", "[survey]") {
  std::vector<Spot3> spots;
  for (int k = 0; k < 6; ++k) spots.push_back({400.0 * k, 0, 0});
  spots.push_back({1000, -400, 90});
  Outliers told = outliers(spots);
  CHECK_FALSE(told.one_line);
  CHECK_FALSE(told.judged[6]);
  CHECK(told.judged[0]);
  CHECK(told.off_mm[6] == 0);
  // Of the line itself a slip is still told.
  spots[2].z_mm = 60;
  told = outliers(spots);
  CHECK_THAT(told.off_mm[2], WithinAbs(60, 1e-9));
  spots[2].z_mm = 0;
  spots.push_back({400, -400, 0});
  spots.push_back({1600, -400, 0});
  told = outliers(spots);
  CHECK(told.judged[6]);
  CHECK_THAT(told.off_mm[6], WithinAbs(90, 1e-9));
  CHECK(told.off_mm[7] == 0);
}
