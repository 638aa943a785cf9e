#include "engine/cook/population.h"

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/cook/survey.h"

namespace {

using Catch::Matchers::WithinAbs;
using namespace hs::cook;

struct Moments {
  int people = 0;
  double mean_mm = 0, sd_mm = 0;
};

Moments moments(bool men, std::int16_t AdultCell::*member) {
  Moments result;
  double sum = 0, squares = 0;
  for (const AdultCell& cell : adult_cells()) {
    if (cell.survey_men != men) continue;
    result.people += cell.count;
    sum += static_cast<double>(cell.*member) * cell.count;
    squares += static_cast<double>(cell.*member) * (cell.*member) * cell.count;
  }
  result.mean_mm = sum / result.people;
  result.sd_mm = std::sqrt(squares / result.people - result.mean_mm * result.mean_mm);
  return result;
}

// Cell means are whole millimetres, so a mean over 128 of them is off by far less than half.
constexpr double kRounding_mm = 0.1;

}  // namespace

TEST_CASE("the joint table holds everyone of the survey and keeps its means", "[cook][source]") {
  // US Army survey 2012, raw files, and the means of the derived heights.
  REQUIRE(adult_cells().size() == 256);
  CHECK(moments(true, &AdultCell::stature_mm).people == 4082);
  CHECK(moments(false, &AdultCell::stature_mm).people == 1986);
  CHECK_THAT(moments(true, &AdultCell::stature_mm).mean_mm, WithinAbs(1756.21, kRounding_mm));
  CHECK_THAT(moments(false, &AdultCell::stature_mm).mean_mm, WithinAbs(1628.47, kRounding_mm));
  CHECK_THAT(moments(true, &AdultCell::eye_mm).mean_mm, WithinAbs(1642.44, kRounding_mm));
  CHECK_THAT(moments(false, &AdultCell::eye_mm).mean_mm, WithinAbs(1519.53, kRounding_mm));
  CHECK_THAT(moments(true, &AdultCell::elbow_mm).mean_mm, WithinAbs(1105.49, kRounding_mm));
  CHECK_THAT(moments(false, &AdultCell::elbow_mm).mean_mm, WithinAbs(1023.90, kRounding_mm));
  CHECK_THAT(moments(true, &AdultCell::shoulder_mm).mean_mm, WithinAbs(1440.74, kRounding_mm));
  CHECK_THAT(moments(false, &AdultCell::shoulder_mm).mean_mm, WithinAbs(1335.10, kRounding_mm));
}

TEST_CASE("averaging inside cells narrows the survey's spread by little", "[cook][source]") {
  // SDs of the raw files. A cell's mean stands for its people, so the table's spread is below the
  // raw one, never above; 5 % is what 128 cells of two measures leave out.
  const auto check = [](bool men, std::int16_t AdultCell::*member, double raw_sd_mm) {
    const double sd_mm = moments(men, member).sd_mm;
    CHECK(sd_mm <= raw_sd_mm);
    CHECK(sd_mm >= 0.95 * raw_sd_mm);
  };
  check(true, &AdultCell::stature_mm, 68.55);
  check(false, &AdultCell::stature_mm, 64.20);
  check(true, &AdultCell::eye_mm, 66.54);
  check(false, &AdultCell::eye_mm, 61.74);
  check(true, &AdultCell::elbow_mm, 50.10);
  check(false, &AdultCell::elbow_mm, 45.29);
}

TEST_CASE("cells lie on the survey's regression lines as a whole", "[cook][source]") {
  // Least-squares slope of elbow on stature over the cells against the raw files' (0.6898 men,
  // 0.6673 women). Cells are cut by both measures, so the slope is kept within 3 %.
  for (const bool men : {true, false}) {
    const SurveyGroup& group = men ? kSurveyMen : kSurveyWomen;
    const Moments h = moments(men, &AdultCell::stature_mm), e = moments(men, &AdultCell::elbow_mm);
    double both = 0;
    for (const AdultCell& cell : adult_cells()) {
      if (cell.survey_men != men) continue;
      both += (cell.stature_mm - h.mean_mm) * (cell.elbow_mm - e.mean_mm) * cell.count;
    }
    const double slope = both / h.people / (h.sd_mm * h.sd_mm);
    CHECK_THAT(slope, WithinAbs(group.elbow.slope, 0.03 * group.elbow.slope));
  }
}

TEST_CASE("shares of adults count men and women equally and everyone once", "[cook][law]") {
  const auto everyone = [](const Body&) { return true; };
  CHECK(share_of_adults(everyone, 25) == 1);
  CHECK(share_of_adults([](const Body&) { return false; }, 25) == 0);
  CHECK(adult_share(4082, 0) == 0.5);
  CHECK(adult_share(0, 1986) == 0.5);
  // 1700 mm: between the two sexes' shares, half-way.
  const auto tall = [](const Body& body) { return body.stature_mm >= 1700; };
  int men = 0, women = 0;
  for (const AdultCell& cell : adult_cells()) {
    if (cell.stature_mm >= 1700) (cell.survey_men ? men : women) += cell.count;
  }
  CHECK_THAT(share_of_adults(tall, 0), WithinAbs(0.5 * (men / 4082.0 + women / 1986.0), 1e-12));
}

TEST_CASE("the share of adults at least as tall falls as the limit rises", "[cook][law]") {
  double previous = 1;
  for (double limit_mm = 1300; limit_mm <= 2100; limit_mm += 10) {
    const auto tall = [&](const Body& body) { return body.stature_mm >= limit_mm; };
    const double share = share_of_adults(tall, 0);
    CHECK(share <= previous);
    // Shoes add to everyone: the same share, 25 mm higher.
    const auto tall_in_shoes = [&](const Body& body) { return body.stature_mm >= limit_mm + 25; };
    CHECK(share_of_adults(tall_in_shoes, 25) == share);
    previous = share;
  }
  CHECK(previous == 0);
}

TEST_CASE("shares meet the survey's sample percentiles", "[cook][source]") {
  // US Army survey 2012, sample percentiles of the derived heights, barefoot. One sex is half of
  // the share; a cell holds 1/128 of a sex and the sample percentile is read to 1 mm: 0.02.
  constexpr double kCells = 0.02;
  const auto share_of_sex = [](bool men, auto works) {
    int men_below = 0, women_below = 0;
    for (const AdultCell& cell : adult_cells()) {
      if (cell.survey_men != men || !works(body_of(cell, 0))) continue;
      (men ? men_below : women_below) += cell.count;
    }
    return 2 * adult_share(men_below, women_below);
  };
  const auto elbow_below = [](double mm) {
    return [mm](const Body& body) { return body.elbow.value_mm <= mm; };
  };
  const auto eye_below = [](double mm) {
    return [mm](const Body& body) { return body.eye.value_mm <= mm; };
  };
  CHECK_THAT(share_of_sex(true, elbow_below(1025)), WithinAbs(0.05, kCells));
  CHECK_THAT(share_of_sex(true, elbow_below(1104)), WithinAbs(0.50, kCells));
  CHECK_THAT(share_of_sex(true, elbow_below(1190)), WithinAbs(0.95, kCells));
  CHECK_THAT(share_of_sex(false, elbow_below(951)), WithinAbs(0.05, kCells));
  CHECK_THAT(share_of_sex(false, elbow_below(1022)), WithinAbs(0.50, kCells));
  CHECK_THAT(share_of_sex(false, elbow_below(1100)), WithinAbs(0.95, kCells));
  CHECK_THAT(share_of_sex(true, eye_below(1536)), WithinAbs(0.05, kCells));
  CHECK_THAT(share_of_sex(true, eye_below(1753)), WithinAbs(0.95, kCells));
  CHECK_THAT(share_of_sex(false, eye_below(1421)), WithinAbs(0.05, kCells));
  CHECK_THAT(share_of_sex(false, eye_below(1626)), WithinAbs(0.95, kCells));
}

TEST_CASE("a cell's person is taken as measured, in shoes", "[cook]") {
  const AdultCell& cell = adult_cells().front();
  const Body body = body_of(cell, 25);
  CHECK(body.eye.value_mm == cell.eye_mm + 25);
  CHECK(body.elbow.value_mm == cell.elbow_mm + 25);
  CHECK(body.shoulder.value_mm == cell.shoulder_mm + 25);
  CHECK(body.stature_mm == cell.stature_mm + 25);
  CHECK(body.eye.basis == Basis::Measured);
  CHECK(body.eye.sd_mm == 0);
}
