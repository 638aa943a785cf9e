// Ovens that cannot be built are refused in words, everything wrong at once; what exists is not.

#include <algorithm>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/oven/oven.h"

using hs::Problem;
using hs::config::MouthShape;
using hs::config::Oven;
using hs::oven::impossible;

namespace {

// The one problem of an oven that has just one.
Problem only_problem(const Oven& oven) {
  const std::vector<Problem> problems = impossible(oven);
  std::string paths;
  for (const Problem& problem : problems) paths += problem.path + " ";
  INFO("problems at: " << paths);
  REQUIRE(problems.size() == 1);
  return problems.front();
}

// A masonry oven with an outer mouth, in order.
Oven masonry() {
  Oven oven;
  oven.width_mm = 1200;
  oven.depth_mm = 1250;
  oven.height_mm = 750;
  oven.floor_above_base_mm = 115;
  oven.mouth_width_mm = 420;
  oven.mouth_height_mm = 280;
  oven.mouth_shape = MouthShape::Arch;
  oven.mouth_side_height_mm = 150;
  oven.throat_mm = 250;
  oven.floor_width_mm = 711;
  oven.floor_depth_mm = 711;
  oven.outer_mouth.width_mm = 520;
  oven.outer_mouth.height_mm = 350;
  return oven;
}

}  // namespace

TEST_CASE("the default oven and a masonry oven are possible", "[oven]") {
  CHECK(impossible(Oven{}).empty());
  CHECK(impossible(masonry()).empty());
}

TEST_CASE("a mouth wider than the body is refused", "[oven]") {
  Oven oven;
  oven.mouth_width_mm = 600;
  CHECK(impossible(oven).empty());
  oven.mouth_width_mm = 600.1;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.mouth_width_mm");
  CHECK(problem.given == "600.1 mm");
  CHECK(problem.allowed == "at most 600 mm (the body's width)");
}

TEST_CASE("an arch that springs above its top is refused", "[oven]") {
  Oven oven;
  oven.mouth_shape = MouthShape::Arch;
  oven.mouth_side_height_mm = 130;  // flat: a rectangle, which exists
  CHECK(impossible(oven).empty());
  oven.mouth_side_height_mm = 140;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.mouth_side_height_mm");
  CHECK(problem.given == "140 mm");
  CHECK(problem.allowed.find("at most 130 mm") == 0);
}

TEST_CASE("the side height of a mouth that is no arch is not read", "[oven]") {
  Oven oven;
  oven.mouth_side_height_mm = 1000;
  CHECK(impossible(oven).empty());
  oven.mouth_shape = MouthShape::HalfRound;
  CHECK(impossible(oven).empty());
}

TEST_CASE("an outer arch that springs above its top is refused", "[oven]") {
  Oven oven = masonry();
  oven.outer_mouth.side_height_mm = 360;
  CHECK(only_problem(oven).path == "oven.outer_mouth.side_height_mm");
  CHECK(only_problem(oven).allowed.find("at most 350 mm") == 0);
}

TEST_CASE("a mouth that ends above the body is refused", "[oven]") {
  Oven oven;
  oven.mouth_height_mm = 250;
  CHECK(impossible(oven).empty());
  oven.mouth_height_mm = 260;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.mouth_height_mm");
  CHECK(problem.allowed == "at most 250 mm (the body's height less the floor's height in it)");
}

TEST_CASE("an outer mouth that ends above the body is refused", "[oven]") {
  Oven oven = masonry();
  oven.outer_mouth.height_mm = 640;
  CHECK(only_problem(oven).path == "oven.outer_mouth.height_mm");
  CHECK(only_problem(oven).allowed.find("at most 635 mm") == 0);
}

TEST_CASE("a floor above the body's top is refused by its own name", "[oven]") {
  Oven oven;
  oven.floor_above_base_mm = 500;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.floor_above_base_mm");
  CHECK(problem.allowed.find("at most 270 mm") == 0);
}

TEST_CASE("a floor and throat deeper than the body are refused", "[oven]") {
  Oven oven;
  oven.throat_mm = 220;
  CHECK(impossible(oven).empty());
  oven.throat_mm = 230;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.floor_depth_mm");
  CHECK(problem.allowed == "at most 420 mm (the body's depth less the throat)");
}

TEST_CASE("a throat as deep as the body is refused by its own name", "[oven]") {
  Oven oven;
  oven.throat_mm = 650;
  const Problem problem = only_problem(oven);
  CHECK(problem.path == "oven.throat_mm");
  CHECK(problem.allowed.find("at most 220 mm") == 0);
}

TEST_CASE("a floor wider than the body is refused", "[oven]") {
  Oven oven;
  oven.floor_width_mm = 610;
  CHECK(only_problem(oven).path == "oven.floor_width_mm");
  CHECK(only_problem(oven).allowed == "at most 600 mm (the body's width)");
}

TEST_CASE("an outer opening smaller than the mouth is refused", "[oven]") {
  Oven narrow = masonry();
  narrow.outer_mouth.width_mm = 410;
  CHECK(only_problem(narrow).path == "oven.outer_mouth.width_mm");
  CHECK(only_problem(narrow).allowed.find("at least 420 mm") == 0);
  Oven low = masonry();
  low.outer_mouth.height_mm = 270;
  CHECK(only_problem(low).path == "oven.outer_mouth.height_mm");
  CHECK(only_problem(low).allowed.find("at least 280 mm") == 0);
}

TEST_CASE("an outer opening wider than the body is refused", "[oven]") {
  Oven oven = masonry();
  oven.outer_mouth.width_mm = 1300;
  CHECK(only_problem(oven).path == "oven.outer_mouth.width_mm");
  CHECK(only_problem(oven).allowed == "at most 1200 mm (the body's width)");
}

TEST_CASE("a mouth wider than the floor behind it exists and is allowed", "[oven]") {
  Oven oven;
  oven.floor_width_mm = 350;
  CHECK(impossible(oven).empty());
}

TEST_CASE("every impossibility is named at once, each path once", "[oven]") {
  Oven oven;
  oven.mouth_shape = MouthShape::Arch;
  oven.mouth_side_height_mm = 500;
  oven.mouth_width_mm = 700;
  oven.mouth_height_mm = 300;
  oven.floor_width_mm = 650;
  oven.floor_depth_mm = 700;
  oven.outer_mouth.width_mm = 650;
  oven.outer_mouth.height_mm = 290;
  const std::vector<Problem> problems = impossible(oven);
  for (const char* path : {"oven.mouth_side_height_mm", "oven.mouth_width_mm",
                           "oven.mouth_height_mm", "oven.floor_width_mm", "oven.floor_depth_mm",
                           "oven.outer_mouth.width_mm", "oven.outer_mouth.height_mm"}) {
    INFO(path);
    CHECK(std::any_of(problems.begin(), problems.end(),
                      [&](const Problem& problem) { return problem.path == path; }));
  }
}
