#include "engine/measure/tilt.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using Catch::Approx;
using measure::Gravity;
using measure::Hold;

namespace {

constexpr double kRad = std::numbers::pi / 180;

// A phone made of nothing but geometry: its long edge raised by `raised_deg`, rolled about that
// edge by `roll_deg` (0: on its back), its edge off its sensor by `case_deg`, its y axis wrong by
// `bias_g`; each reading with noise, normal by the sum of twelve.
struct Phone {
  double raised_deg = 0, roll_deg = 0, case_deg = 0, bias_g = 0, noise_g = 0, drift_deg = 0;
  bool other_sign = false;  // of the makers that have -z for a phone on its back
  std::size_t readings = 120;
};

std::vector<Gravity> stream(const Phone& phone, std::uint64_t seed = 1) {
  test::Random random(seed);
  const auto noise = [&] {
    double sum = -6;
    for (int i = 0; i < 12; ++i) sum += random.between(0, 1);
    return sum * phone.noise_g;
  };
  std::vector<Gravity> all;
  for (std::size_t i = 0; i < phone.readings; ++i) {
    const double along = static_cast<double>(i) / static_cast<double>(phone.readings) - 0.5;
    const double deg = phone.raised_deg + phone.case_deg + phone.drift_deg * along;
    const double across = std::cos(deg * kRad);
    Gravity g{across * std::sin(phone.roll_deg * kRad) + noise(),
              std::sin(deg * kRad) + phone.bias_g + noise(),
              across * std::cos(phone.roll_deg * kRad) + noise()};
    if (phone.other_sign) g = {-g.x, -g.y, -g.z};
    all.push_back({9.81 * g.x, 9.81 * g.y, 9.81 * g.z});
  }
  return all;
}

Hold held(const Phone& phone, std::uint64_t seed = 1) {
  const auto found = measure::hold(stream(phone, seed));
  REQUIRE(found.has_value());
  return *found;
}

// The same phone laid along the same line by its other end: what was raised is lowered, what is
// wrong with the phone stays.
Phone turned(Phone phone) {
  phone.raised_deg = -phone.raised_deg;
  return phone;
}

}  // namespace

TEST_CASE("a phone at rest without error says its angle, however it is rolled", "[measure]") {
  for (const double raised : {-80.0, -33.5, -1.0, 0.0, 0.1, 12.0, 45.0, 80.0}) {
    for (const double roll : {0.0, 30.0, 90.0, 180.0}) {
      const Hold hold = held({.raised_deg = raised, .roll_deg = roll});
      CHECK(hold.deg == Approx(raised).margin(1e-9));
      CHECK(hold.scatter_deg == Approx(0).margin(1e-9));
      CHECK(hold.up == Approx(std::cos(raised * kRad) * std::cos(roll * kRad)).margin(1e-9));
    }
  }
}

TEST_CASE("by hand: one part in ten raised", "[measure]") {
  // tan(a) = 1/10: a = 5.7106 degrees (arctangent table).
  const std::vector<Gravity> readings(30, Gravity{0, 1, 10});
  CHECK(measure::hold(readings)->deg == Approx(5.7106).margin(5e-5));
}

TEST_CASE("too few readings, no gravity or a moving hand give no angle", "[measure]") {
  CHECK_FALSE(measure::hold({}).has_value());
  CHECK_FALSE(measure::hold(std::vector<Gravity>(measure::kFewest - 1, {0, 0, 9.81})).has_value());
  CHECK(measure::hold(std::vector<Gravity>(measure::kFewest, {0, 0, 9.81})).has_value());
  CHECK_FALSE(measure::hold(std::vector<Gravity>(50, {0, 0, 0})).has_value());
  CHECK_FALSE(measure::hold(std::vector<Gravity>(50, {0, std::nan(""), 9.81})).has_value());
  CHECK_FALSE(
      measure::hold(std::vector<Gravity>(50, {0, std::numeric_limits<double>::infinity(), 9.81}))
          .has_value());
  // The means of the first and last of eight parts are 7/8 of the drift apart.
  CHECK(measure::hold(stream({.drift_deg = 2.2})).has_value());
  CHECK_FALSE(measure::hold(stream({.drift_deg = 2.4})).has_value());
}

TEST_CASE("the stated scatter is how far the mean of noisy readings is off", "[measure]") {
  // The standard error of a mean of n independent readings is sd / sqrt(n); over many streams the
  // mean square of the stated one comes to that. 0.01 g of noise on a level phone is 0.573 degrees.
  const double sd_deg = 0.01 / kRad;
  double off2 = 0, stated2 = 0;
  const int streams = test::sweep(400);
  for (int i = 0; i < streams; ++i) {
    const Hold hold = held({.noise_g = 0.01}, static_cast<std::uint64_t>(i + 1));
    off2 += hold.deg * hold.deg / streams;
    stated2 += hold.scatter_deg * hold.scatter_deg / streams;
  }
  const double expected2 = sd_deg * sd_deg / 120;
  CHECK(off2 == Approx(expected2).epsilon(streams > 100 ? 0.25 : 0.6));
  CHECK(stated2 == Approx(expected2).epsilon(streams > 100 ? 0.25 : 0.6));
}

TEST_CASE("a hand that drifts slowly is not taken for many readings", "[measure]") {
  // One degree over the time: parts 1/8 apart, their standard deviation sqrt(42/7)/8 = 0.30619, by
  // hand from 2 (0.5^2 + 1.5^2 + 2.5^2 + 3.5^2) = 42; over the root of eight 0.10825.
  CHECK(held({.drift_deg = 1}).scatter_deg == Approx(0.10825).margin(5e-5));
}

TEST_CASE("turned round, the phone's case and its zero cancel", "[measure]") {
  for (const double raised : {0.0, 1.2, -8.0, 21.0}) {
    for (const double off : {-3.0, -0.8, 0.0, 2.5}) {
      const Phone phone{.raised_deg = raised, .case_deg = off};
      const auto angle = measure::both_ways(held(phone), held(turned(phone)));
      REQUIRE(angle.has_value());
      CHECK(angle->deg == Approx(raised).margin(1e-9));
      CHECK(angle->zero_deg.value() == Approx(off).margin(1e-9));
      CHECK(angle->error_deg == Approx(measure::kSensor_deg).margin(1e-9));
    }
  }
  // A bias of the axis is no angle, but what is left of it is small: half its square times the
  // curve of the arc tangent, under 0.02 degrees for 0.03 g (1.7 degrees) at 20 degrees.
  for (const double bias : {-0.03, 0.03}) {
    const Phone phone{.raised_deg = 20, .bias_g = bias};
    const auto angle = measure::both_ways(held(phone), held(turned(phone)));
    REQUIRE(angle.has_value());
    CHECK(std::abs(held(phone).deg - 20) > 1);
    CHECK(std::abs(angle->deg - 20) < 0.02);
  }
}

TEST_CASE("a phone that was not turned round is found out", "[measure]") {
  const Phone phone{.raised_deg = 15, .case_deg = 0.5};
  CHECK_FALSE(measure::both_ways(held(phone), held(phone)).has_value());
  Phone most = turned({.raised_deg = 10, .case_deg = measure::kMostZero_deg - 0.01});
  CHECK(measure::both_ways(held(turned(most)), held(most)).has_value());
  most.case_deg = measure::kMostZero_deg + 0.01;
  CHECK_FALSE(measure::both_ways(held(turned(most)), held(most)).has_value());
}

TEST_CASE("one way alone is told with the phone's own zero in its error", "[measure]") {
  const auto angle = measure::one_way(held({.raised_deg = 14}));
  CHECK(angle.deg == Approx(14));
  CHECK_FALSE(angle.zero_deg.has_value());
  // sqrt(0.3^2 + 1^2), by hand.
  CHECK(angle.error_deg == Approx(1.04403).margin(1e-5));
}

TEST_CASE("turned round and noisy, the truth is within what is stated as often as it should be",
          "[measure]") {
  // Noise alone, without the sensor's own share: two in three within one standard error (68.3 % of
  // a normal; of eight parts Student's t with 14 degrees of freedom gives 66.6 %).
  int within = 0;
  const int streams = test::sweep(600);
  for (int i = 0; i < streams; ++i) {
    const Phone phone{.raised_deg = 9, .case_deg = 1.1, .noise_g = 0.01};
    const auto angle =
        measure::both_ways(held(phone, static_cast<std::uint64_t>(2 * i + 1)),
                           held(turned(phone), static_cast<std::uint64_t>(2 * i + 2)));
    REQUIRE(angle.has_value());
    const double scatter = std::sqrt(angle->error_deg * angle->error_deg - 0.09);
    if (std::abs(angle->deg - 9) <= scatter) ++within;
  }
  const double share = static_cast<double>(within) / streams;
  CHECK(share > (streams > 100 ? 0.61 : 0.5));
  CHECK(share < (streams > 100 ? 0.73 : 0.85));
}

TEST_CASE("ground that falls away falls away, whatever the maker's sign", "[measure]") {
  // A quarter inch in a foot, 1 in 48: 63.5 mm in 3048; atan(1/48) = 1.19349 degrees.
  for (const bool other : {false, true}) {
    for (const double off : {-1.5, 0.0, 1.5}) {
      const Phone phone{.raised_deg = -1.19349, .case_deg = off, .other_sign = other};
      const auto fall = measure::fall(held(phone), held(turned(phone)), 3048);
      REQUIRE(fall.has_value());
      CHECK(fall->mm == Approx(63.5).margin(0.01));
      // 3048 * 0.3 degrees in radians, by hand 15.96, and a little for the slope.
      CHECK(fall->error_mm == Approx(15.96).margin(0.02));
      const auto rise = measure::fall(held(turned(phone)), held(phone), 3048);
      CHECK(rise.value().mm == Approx(-63.5).margin(0.01));
    }
  }
}

TEST_CASE("a phone on its edge or turned over gives no fall", "[measure]") {
  const Phone phone{.raised_deg = -2};
  Phone edge = phone, face = phone;
  edge.roll_deg = 90;
  face.roll_deg = 180;
  CHECK_FALSE(measure::fall(held(edge), held(turned(edge)), 3048).has_value());
  CHECK_FALSE(measure::fall(held(phone), held(turned(face)), 3048).has_value());
  CHECK_FALSE(measure::fall(held(phone), held({.raised_deg = -14}), 3048).has_value());
}

TEST_CASE("an eye's height from two angles does not hang on where the phone was", "[measure]") {
  for (const double eye_mm : {1100.0, 1540.0, 1720.0}) {
    for (const double phone_mm : {900.0, 1400.0, 1650.0}) {
      for (const double distance_mm : {2000.0, 3000.0}) {
        for (const bool other : {false, true}) {
          const auto angle = [&](double target_mm) {
            return Phone{.raised_deg = std::atan2(target_mm - phone_mm, distance_mm) / kRad,
                         .roll_deg = 90,
                         .other_sign = other};
          };
          const auto found =
              measure::eye_height(held(angle(0)), held(angle(eye_mm)), distance_mm, 5);
          REQUIRE(found.has_value());
          CHECK(found->mm == Approx(eye_mm).margin(1e-6));
        }
      }
    }
  }
}

TEST_CASE("the stated error of an eye's height is what its angles' errors make of it",
          "[measure]") {
  // By hand, 3000 mm away, phone 1000 up, eye at 1600: angles -18.435 and 11.310 degrees; one
  // degree is 3000 * 0.0174533 / cos^2 = 58.178 and 54.454 mm. 0.3 of each: 17.453 and 16.336; the
  // zero, a degree, 3.724; the tape 1600 / 3000 * 5 = 2.667. Root of the squares: 24.341.
  const auto found = measure::eye_height({-18.4349, 0, 0}, {11.3099, 0, 0}, 3000, 5);
  REQUIRE(found.has_value());
  CHECK(found->mm == Approx(1600).margin(0.05));
  CHECK(found->error_mm == Approx(24.341).margin(0.01));
  // And a stream of noise and zeros: the mean square of what it is off by comes to the error.
  test::Random random(5);
  double off2 = 0;
  const int streams = test::sweep(500);
  for (int i = 0; i < streams; ++i) {
    const auto normal = [&](double sd) {
      double sum = -6;
      for (int k = 0; k < 12; ++k) sum += random.between(0, 1);
      return sum * sd;
    };
    const double zero = normal(measure::kZero_deg);
    const auto one = measure::eye_height({-18.4349 + zero + normal(measure::kSensor_deg), 0, 0},
                                         {11.3099 + zero + normal(measure::kSensor_deg), 0, 0},
                                         3000 + normal(5), 5);
    REQUIRE(one.has_value());
    off2 += (one->mm - 1600) * (one->mm - 1600) / streams;
  }
  CHECK(std::sqrt(off2) == Approx(24.341).epsilon(streams > 100 ? 0.12 : 0.35));
}

TEST_CASE("angles that give no height are refused", "[measure]") {
  CHECK_FALSE(measure::eye_height({-1, 0, 0}, {10, 0, 0}, 3000, 5).has_value());
  CHECK_FALSE(measure::eye_height({-80, 0, 0}, {10, 0, 0}, 3000, 5).has_value());
  CHECK_FALSE(measure::eye_height({-20, 0, 0}, {80, 0, 0}, 3000, 5).has_value());
  CHECK_FALSE(measure::eye_height({-20, 0, 0}, {-25, 0, 0}, 3000, 5).has_value());
  CHECK_FALSE(measure::eye_height({-20, 0, 0}, {10, 0, 0}, 0, 5).has_value());
  CHECK_FALSE(measure::eye_height({std::nan(""), 0, 0}, {10, 0, 0}, 3000, 5).has_value());
  CHECK_FALSE(measure::eye_height({-20, 0, 0}, {10, 0, 0}, std::nan(""), 5).has_value());
}
