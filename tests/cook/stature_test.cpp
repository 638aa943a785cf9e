#include "engine/cook/stature.h"

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/cook/body.h"
#include "engine/cook/survey.h"

using namespace hs;
using config::Build;
using config::Cook;

TEST_CASE("the height that follows from an eye level puts the eye there again", "[cook]") {
  for (const Build build : {Build::Adult, Build::AdultA, Build::AdultB, Build::Child}) {
    for (const bool seated : {false, true}) {
      Cook cook;
      cook.build = build;
      cook.seated = seated;
      if (build == Build::Child) cook.age_years = 9;
      for (int stature_mm = 1000; stature_mm <= 2200; stature_mm += 37) {
        cook.stature_mm = stature_mm;
        const double eye_mm = cook::body_of(cook).eye.value_mm;
        const auto found = cook::stature_for_eye(cook, eye_mm);
        REQUIRE(found.has_value());
        CHECK(std::abs(*found - stature_mm) <= 1);
      }
    }
  }
}

TEST_CASE("no height follows from an eye where nobody's is", "[cook]") {
  const Cook cook;
  CHECK_FALSE(cook::stature_for_eye(cook, 400).has_value());
  CHECK_FALSE(cook::stature_for_eye(cook, 2600).has_value());
  CHECK_FALSE(cook::stature_for_eye(cook, std::nan("")).has_value());
}

TEST_CASE("the error that the words state is the survey's", "[cook]") {
  for (const Build build : {Build::Adult, Build::AdultA, Build::AdultB}) {
    Cook cook;
    cook.build = build;
    for (double stature_mm = 1500; stature_mm <= 1900; stature_mm += 50) {
      cook.stature_mm = stature_mm;
      const double sd_mm = cook::body_of(cook).eye.sd_mm;
      CHECK(sd_mm >= 7);
      CHECK(sd_mm <= 10);
    }
  }
}
