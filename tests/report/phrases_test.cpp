#include "engine/report/phrases.h"

#include <cmath>

#include "catch_amalgamated.hpp"

using namespace hs::report;

namespace {

constexpr double kInch_mm = 25.4;

}  // namespace

TEST_CASE("a length is told as it is read off", "[report]") {
  CHECK(plain_length(1051, Units::Millimetre, false) == "1051 mm");
  CHECK(plain_length(1050.925, Units::Inch, false) == "41 3/8 in");
  CHECK(plain_length(16.5, Units::Inch, true) == "\u215D in");
}

TEST_CASE("a band holds the height beside it", "[report]") {
  CHECK(build_band({1052, 1076}, 1075, Units::Millimetre, false) == "1055 to 1075 mm");
  CHECK(build_band({1052, 1076}, 42.25 * kInch_mm, Units::Inch, false) == "41 1/2 to 42 1/4 in");
  // The mark is the nearest step to a ceiling that it may pass by 3 mm.
  CHECK(build_band({1060, 1078}, 1080, Units::Millimetre, false) == "1060 to 1080 mm");
  CHECK(build_band({1074, 1076}, 1075, Units::Millimetre, false) == "1075 mm");
  CHECK(plain_band({1052, 1076}, Units::Millimetre, false) == "1052 to 1076 mm");
  CHECK(plain_band({1075, 1075}, Units::Millimetre, false) == "1075 mm");
}

TEST_CASE("a place to stand is told to the inch or to 10 mm", "[report]") {
  CHECK(distance(700, Units::Inch) == "28 in");
  CHECK(distance(700, Units::Millimetre) == "700 mm");
  CHECK(distance(871, Units::Millimetre, Round::Up) == "880 mm");
  CHECK(distance(871, Units::Inch, Round::Up) == "35 in");
  CHECK(distance(28 * kInch_mm, Units::Inch, Round::Up) == "28 in");
}

TEST_CASE("a share is never called whole while some of it is hidden", "[report][law]") {
  CHECK(percent(0.76444) == "76 %");
  CHECK(percent(0.995) == "99 %");
  CHECK(percent(0.99899) == "99 %");
  CHECK(percent(0.999) == "100 %");
  CHECK(percent(1) == "100 %");
  CHECK(percent(0.004) == "less than 1 %");
  CHECK(percent(0) == "0 %");
  for (int i = 0; i < 9990; ++i) CHECK(percent(i / 10000.0) != "100 %");
}

TEST_CASE("fractions are read aloud as plain ones", "[report]") {
  CHECK(plain_marks("41\u215C in") == "41 3/8 in");
  CHECK(plain_marks("41\u00B9\u00B9\u2044\u2081\u2086 in") == "41 11/16 in");
  CHECK(plain_marks("\u215D in and 2\u00BD in") == "5/8 in and 2 1/2 in");
  CHECK(plain_marks("Ana sees 76 % of it") == "Ana sees 76 % of it");
}

TEST_CASE("what is said of a step back grows with it", "[report]") {
  CHECK(steps_back(180) == "one step back");
  CHECK(steps_back(500) == "two steps back");
  CHECK(steps_back(1500) == "moving back");
}

TEST_CASE("degrees are whole", "[report]") { CHECK(degrees(23.6) == "24\u00B0"); }
