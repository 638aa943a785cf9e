// The cold trial: a tape mark that disagrees names the input most likely off.

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"

using Catch::Matchers::WithinAbs;
using namespace hs;

namespace {

config::Config blocked_up() {
  config::Config c;
  c.cooks[0].stature_mm = 1750;
  c.cooks[0].build = config::Build::AdultA;
  c.trial.oven_base_height_mm = 1000;
  c.trial.standoff_mm = 700;
  return c;
}

// The mark by the closed form x = h d / (E - F - h), for a mouth without a throat.
double closed_form_mark(double eye_mm, double floor_mm, double mouth_mm, double standoff_mm) {
  return mouth_mm * standoff_mm / (eye_mm - floor_mm - mouth_mm);
}

}  // namespace

TEST_CASE("no mark, no trial", "[evaluate][trial]") {
  CHECK_FALSE(evaluate::evaluate(blocked_up()).trial);
}

TEST_CASE("the predicted mark is the closed form's", "[evaluate][trial]") {
  config::Config c = blocked_up();
  c.trial.cold_farthest_seen_mm = 240;
  const auto e = evaluate::evaluate(c);
  REQUIRE(e.trial);
  REQUIRE(e.trial->predicted_mm);
  const double expected = closed_form_mark(e.cooks[0].body.eye.value_mm, 1150, 130, 700);
  CHECK_THAT(*e.trial->predicted_mm, WithinAbs(expected, 0.1));
}

TEST_CASE("a mark within the inputs' errors agrees", "[evaluate][trial]") {
  config::Config c = blocked_up();
  c.trial.cold_farthest_seen_mm = 100;
  const double predicted = *evaluate::evaluate(c).trial->predicted_mm;
  c.trial.cold_farthest_seen_mm = std::round(predicted + 3);
  const auto e = evaluate::evaluate(c);
  CHECK(e.trial->agrees);
  CHECK(e.trial->likely_field.empty());
}

TEST_CASE("correcting the named input makes the prediction meet the mark", "[evaluate][trial]") {
  config::Config c = blocked_up();
  c.trial.cold_farthest_seen_mm = 262;
  const auto e = evaluate::evaluate(c);
  REQUIRE_FALSE(e.trial->agrees);
  REQUIRE(e.trial->corrected_mm);
  CHECK(e.trial->standard_errors > 1);
  if (e.trial->likely_field == "cooks.0.eye_height_mm")
    c.cooks[0].eye_height_mm = e.trial->corrected_mm;
  if (e.trial->likely_field == "oven.mouth_height_mm")
    c.oven.mouth_height_mm = *e.trial->corrected_mm;
  if (e.trial->likely_field == "trial.at.standoff_mm") c.trial.standoff_mm = e.trial->corrected_mm;
  if (e.trial->likely_field == "oven.floor_above_base_mm") {
    c.oven.floor_above_base_mm = *e.trial->corrected_mm;
  }
  const auto again = evaluate::evaluate(c);
  // The correction is kept in tenths of a millimetre, which the mark magnifies.
  CHECK_THAT(*again.trial->predicted_mm, WithinAbs(262, 1.0));
}

TEST_CASE("a mouth that was measured wrong by a finger's width is found", "[evaluate][trial]") {
  // The eye is measured, so little is left to doubt but the mouth.
  config::Config c = blocked_up();
  c.cooks[0].eye_height_mm = 1660;
  const double truth = closed_form_mark(1660, 1150, 145, 700);
  c.trial.cold_farthest_seen_mm = std::round(truth);
  const auto e = evaluate::evaluate(c);
  REQUIRE_FALSE(e.trial->agrees);
  CHECK(e.trial->likely_field == "oven.mouth_height_mm");
  REQUIRE(e.trial->corrected_mm);
  // The mark was rounded to a millimetre.
  CHECK_THAT(*e.trial->corrected_mm, WithinAbs(145, 0.5));
}

TEST_CASE("a mark that no one input explains within four of its errors offers no correction",
          "[evaluate][trial]") {
  config::Config c = blocked_up();
  c.trial.cold_farthest_seen_mm = 120;
  const auto e = evaluate::evaluate(c);
  CHECK_FALSE(e.trial->agrees);
  CHECK(e.trial->likely_field.empty());
  CHECK_FALSE(e.trial->corrected_mm);
}
