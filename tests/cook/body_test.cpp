#include "engine/cook/body.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/base/quantity.h"
#include "engine/cook/survey.h"

namespace {

using Catch::Matchers::WithinAbs;
using namespace hs::cook;
using hs::config::Build;
using hs::config::Cook;

// Slopes are kept to 5 decimals and intercepts to 2: 0.02 mm at the tallest.
constexpr double kPrinted_mm = 0.1;

Cook barefoot(Build build, double stature_mm) {
  Cook cook;
  cook.build = build;
  cook.stature_mm = stature_mm;
  cook.shoe_mm = 0;
  return cook;
}

Cook child_of(double age_years, double stature_mm) {
  Cook cook = barefoot(Build::Child, stature_mm);
  cook.age_years = age_years;
  return cook;
}

Cook seated(Cook cook, double seat_mm) {
  cook.seated = true;
  cook.seat_height_mm = seat_mm;
  return cook;
}

constexpr Build kAdults[] = {Build::Adult, Build::AdultA, Build::AdultB};

// Every kind of cook of this stature: three adult builds, children of each age and of none given.
std::vector<Cook> cooks_of(double stature_mm) {
  std::vector<Cook> cooks;
  for (const Build build : kAdults) cooks.push_back(barefoot(build, stature_mm));
  cooks.push_back(barefoot(Build::Child, stature_mm));
  for (int tenths = 30; tenths <= 179; tenths += 7) {
    cooks.push_back(child_of(tenths / 10.0, stature_mm));
  }
  return cooks;
}

}  // namespace

TEST_CASE("Drillis and Contini fractions give the printed heights of a 1750 mm adult",
          "[cook][source]") {
  // Winter, Biomechanics and Motor Control of Human Movement, Fig. 4.1.
  CHECK_THAT(kEyeRatio * 1750, WithinAbs(1638.0, kPrinted_mm));
  CHECK_THAT(kElbowRatio * 1750, WithinAbs(1102.5, kPrinted_mm));
  CHECK_THAT(kShoulderRatio * 1750, WithinAbs(1431.5, kPrinted_mm));
  CHECK_THAT(body_of(barefoot(Build::AdultA, 1750)).hip_mm, WithinAbs(927.5, kPrinted_mm));
}

TEST_CASE("survey medians give the survey's eye and elbow heights", "[cook][source]") {
  // US Army survey 2012, regressions recomputed from the raw file.
  constexpr double kTable_mm = 0.5;  // the tolerance of the printed figures
  const Body man = body_of(barefoot(Build::AdultA, 1755));
  const Body woman = body_of(barefoot(Build::AdultB, 1626));
  CHECK_THAT(man.eye.value_mm, WithinAbs(1641.3, kTable_mm));
  CHECK_THAT(woman.eye.value_mm, WithinAbs(1517.2, kTable_mm));
  CHECK_THAT(man.elbow.value_mm, WithinAbs(1104.7, kTable_mm));
  CHECK_THAT(woman.elbow.value_mm, WithinAbs(1022.3, kTable_mm));
  CHECK_THAT(man.eye.sd_mm, WithinAbs(8.6, 0.05));
  CHECK_THAT(woman.eye.sd_mm, WithinAbs(7.6, 0.05));
  CHECK_THAT(man.elbow.sd_mm, WithinAbs(16.5, 0.05));
  CHECK_THAT(woman.elbow.sd_mm, WithinAbs(14.7, 0.05));
  CHECK(man.eye.basis == Basis::SurveyAdult);
}

TEST_CASE("the lines pass through the survey's mean heights and lengths", "[cook][source]") {
  // US Army survey 2012, means of the raw file: a least-squares line passes through the mean point.
  const double men_mm = kSurveyMen.stature_mean_mm, women_mm = kSurveyWomen.stature_mean_mm;
  const Body man = body_of(barefoot(Build::AdultA, men_mm));
  const Body woman = body_of(barefoot(Build::AdultB, women_mm));
  CHECK_THAT(man.shoulder.value_mm, WithinAbs(1440.7, kPrinted_mm));
  CHECK_THAT(woman.shoulder.value_mm, WithinAbs(1335.1, kPrinted_mm));
  CHECK_THAT(man.arm_to_grip_mm, WithinAbs(712.7, kPrinted_mm));
  CHECK_THAT(woman.arm_to_grip_mm, WithinAbs(652.0, kPrinted_mm));
  CHECK_THAT(man.forearm_hand_mm, WithinAbs(480.2, kPrinted_mm));
  CHECK_THAT(woman.forearm_hand_mm, WithinAbs(439.9, kPrinted_mm));
  CHECK_THAT(2 * man.belly_mm, WithinAbs(254.7, kPrinted_mm));
  CHECK_THAT(2 * woman.belly_mm, WithinAbs(229.7, kPrinted_mm));
  const Body man_seated = body_of(seated(barefoot(Build::AdultA, men_mm), 500));
  const Body woman_seated = body_of(seated(barefoot(Build::AdultB, women_mm), 500));
  CHECK_THAT(man_seated.eye.value_mm, WithinAbs(500 + 804.5, kPrinted_mm));
  CHECK_THAT(woman_seated.eye.value_mm, WithinAbs(500 + 747.7, kPrinted_mm));
  CHECK_THAT(man_seated.elbow.value_mm, WithinAbs(500 + 245.0, kPrinted_mm));
  CHECK_THAT(woman_seated.elbow.value_mm, WithinAbs(500 + 232.4, kPrinted_mm));
  // Sitting height less the stretch from acromion to vertex: 918.3 - (1756.2 - 1440.7).
  CHECK_THAT(man_seated.shoulder.value_mm, WithinAbs(500 + 602.8, kPrinted_mm));
  CHECK_THAT(woman_seated.shoulder.value_mm, WithinAbs(500 + 563.2, kPrinted_mm));
}

TEST_CASE("survey and Drillis and Contini eye heights agree within 10 mm", "[cook][source]") {
  // Statures 1500 to 1900 mm, either sex.
  for (double stature_mm = 1500; stature_mm <= 1900; stature_mm += 10) {
    for (const Build build : {Build::AdultA, Build::AdultB}) {
      CAPTURE(stature_mm);
      CHECK(std::abs(body_of(barefoot(build, stature_mm)).eye.value_mm - kEyeRatio * stature_mm) <
            10);
    }
  }
}

TEST_CASE("a baker's bench of 914 mm is in the heavy band of the statures it was made for",
          "[cook][source]") {
  // Hamelman, Bread, 2004: 36 in suits 5 ft 4 to 6 ft; heavy work 100 to 250 mm below the elbow.
  CHECK_THAT(body_of(barefoot(Build::AdultB, 1626)).elbow.value_mm - 914, WithinAbs(108, 2));
  CHECK_THAT(body_of(barefoot(Build::AdultA, 1829)).elbow.value_mm - 914, WithinAbs(242, 2));
}

TEST_CASE("a 1750 mm cook in 25 mm shoes has the eye at 1661 and the elbow at 1126",
          "[cook][source]") {
  // Hand calculation: 0.96244 * 1750 - 47.81 + 25 and 0.68980 * 1750 - 105.94 + 25.
  Cook cook = barefoot(Build::AdultA, 1750);
  cook.shoe_mm = 25;
  CHECK_THAT(body_of(cook).eye.value_mm, WithinAbs(1661.46, kPrinted_mm));
  CHECK_THAT(body_of(cook).elbow.value_mm, WithinAbs(1126.21, kPrinted_mm));
  CHECK_THAT(body_of(cook).hip_mm, WithinAbs(952.5, kPrinted_mm));
  CHECK_THAT(body_of(cook).stature_mm, WithinAbs(1775, kPrinted_mm));
}

TEST_CASE("a hip hinge of 20 degrees moves the eye of a 1750 mm adult 42.8 down and 243 forward",
          "[cook][source]") {
  // Winter's fractions and plane geometry.
  constexpr double kCheck_mm = 0.2;
  const double lever_mm = body_of(barefoot(Build::Adult, 1750)).eye_lever_mm;
  const double down_mm = lever_mm * (1 - std::cos(hs::deg_to_rad(20)));
  CHECK_THAT(lever_mm, WithinAbs(710.5, kCheck_mm));
  CHECK_THAT(down_mm, WithinAbs(42.8, kCheck_mm));
  CHECK_THAT(lever_mm * std::sin(hs::deg_to_rad(20)), WithinAbs(243.0, kCheck_mm));
  CHECK_THAT(kEyeRatio * 1750 - down_mm, WithinAbs(1595.2, kCheck_mm));
}

TEST_CASE("a six-year-old of 1157 mm has eye and elbow below what adult fractions say",
          "[cook][source]") {
  // Snyder et al. 1977, bin of age 6.
  const Body body = body_of(child_of(6, 1157));
  CHECK_THAT(body.eye.value_mm, WithinAbs(1045, 10));
  CHECK_THAT(body.elbow.value_mm, WithinAbs(702, 10));
  CHECK(body.eye.value_mm <= kEyeRatio * 1157 - 30);
  CHECK(body.elbow.value_mm <= kElbowRatio * 1157 - 20);
  CHECK(body.child);
  CHECK_FALSE(body.age_assumed);
  CHECK(body.eye.basis == Basis::SurveyChild);
  // In the middle of the bin, its own mean ratios: 0.9032 and 0.6067.
  const Body middle = body_of(child_of(6.5, 1157));
  CHECK_THAT(middle.eye.value_mm, WithinAbs(1045.0, kPrinted_mm));
  CHECK_THAT(middle.elbow.value_mm, WithinAbs(702.0, kPrinted_mm));
  CHECK_THAT(middle.eye.sd_mm, WithinAbs(0.0102 * 1157, kPrinted_mm));
}

TEST_CASE("children's eyes are a near constant distance below the crown", "[cook][source]") {
  // Snyder et al. 1977: crown to eye 114 mm, within 4 mm of every year's mean from 5 to 17. Here
  // it is formed at the mean stature of each bin; the mean of ratios differs from the ratio of
  // means, and the eye was measured on a part of the children only: 2 mm.
  for (int age = 5; age <= 17; ++age) {
    const double stature_mm = kChildRows[static_cast<std::size_t>(age - 2)].stature_mm.mean;
    const Body body = body_of(child_of(age + 0.5, stature_mm));
    CAPTURE(age, stature_mm);
    CHECK_THAT(stature_mm - body.eye.value_mm, WithinAbs(114, 4 + 2));
  }
}

TEST_CASE("a seated cook's eye is inside the printed range of wheelchair users", "[cook][source]") {
  // Seat 485 and eye level 1090 to 1295: ADA 1991, Fig. A3.
  const Body woman = body_of(seated(barefoot(Build::AdultB, 1626), 485));
  const Body man = body_of(seated(barefoot(Build::AdultA, 1755), 485));
  CHECK_THAT(woman.eye.value_mm, WithinAbs(1233, 2));
  CHECK_THAT(man.eye.value_mm, WithinAbs(1289, 2));
  for (const Body& body : {woman, man}) {
    CHECK(body.eye.value_mm > 1090);
    CHECK(body.eye.value_mm < 1295);
    CHECK(body.eye.basis == Basis::SurveySeated);
    CHECK(body.seated);
    CHECK(body.leg_mm == 0);
  }
}

TEST_CASE("not saying the build lies half-way and is less certain than either build",
          "[cook][law]") {
  for (double stature_mm = 800; stature_mm <= 2300; stature_mm += 25) {
    const Body a = body_of(barefoot(Build::AdultA, stature_mm));
    const Body b = body_of(barefoot(Build::AdultB, stature_mm));
    const Body either = body_of(barefoot(Build::Adult, stature_mm));
    CAPTURE(stature_mm);
    const auto check = [](const Estimate& x, const Estimate& y, const Estimate& mixed) {
      CHECK_THAT(mixed.value_mm, WithinAbs((x.value_mm + y.value_mm) / 2, 1e-9));
      // Mixture of two equal groups: second moment about the common mean.
      const double dx_mm = x.value_mm - mixed.value_mm, dy_mm = y.value_mm - mixed.value_mm;
      const double variance =
          (x.sd_mm * x.sd_mm + dx_mm * dx_mm + y.sd_mm * y.sd_mm + dy_mm * dy_mm) / 2;
      CHECK_THAT(mixed.sd_mm * mixed.sd_mm, WithinAbs(variance, 1e-6));
      CHECK(mixed.sd_mm >= std::min(x.sd_mm, y.sd_mm));
    };
    check(a.eye, b.eye, either.eye);
    check(a.elbow, b.elbow, either.elbow);
    check(a.shoulder, b.shoulder, either.shoulder);
  }
}

TEST_CASE("the taller cook of a kind has the higher eye, elbow, shoulder and hip", "[cook][law]") {
  for (double stature_mm = 800; stature_mm < 2300; stature_mm += 10) {
    const std::vector<Cook> shorter = cooks_of(stature_mm), taller = cooks_of(stature_mm + 10);
    for (std::size_t i = 0; i < shorter.size(); ++i) {
      const Body a = body_of(shorter[i]), b = body_of(taller[i]);
      CAPTURE(stature_mm, i);
      CHECK(a.eye.value_mm < b.eye.value_mm);
      CHECK(a.elbow.value_mm < b.elbow.value_mm);
      CHECK(a.shoulder.value_mm < b.shoulder.value_mm);
      CHECK(a.hip_mm < b.hip_mm);
      CHECK(a.arm_to_grip_mm < b.arm_to_grip_mm);
    }
  }
}

TEST_CASE("every body in the input box is finite and in order", "[cook][law]") {
  for (double stature_mm = 800; stature_mm <= 2300; stature_mm += 20) {
    for (Cook cook : cooks_of(stature_mm)) {
      for (const double shoe_mm : {0.0, 120.0}) {
        cook.shoe_mm = shoe_mm;
        const Body body = body_of(cook);
        CAPTURE(stature_mm, static_cast<int>(cook.build), shoe_mm, body.age_years);
        CHECK(0 < body.hip_mm);
        CHECK(body.hip_mm < body.elbow.value_mm);
        CHECK(body.elbow.value_mm < body.shoulder.value_mm);
        CHECK(body.shoulder.value_mm < body.eye.value_mm);
        CHECK(body.eye.value_mm < body.stature_mm);
        CHECK(0 < body.leg_mm);
        CHECK(body.leg_mm < body.hip_mm);
        for (const double sd_mm : {body.eye.sd_mm, body.elbow.sd_mm, body.shoulder.sd_mm}) {
          CHECK(sd_mm > 0);
          CHECK(sd_mm < 60);
        }
        CHECK(body.forearm_hand_mm > 150);
        CHECK(body.arm_to_grip_mm > body.forearm_hand_mm);
        CHECK(body.arm_to_grip_mm < 0.5 * stature_mm);
        CHECK(0 < body.belly_mm);
        // 0.45 of a foot of 0.148 to 0.159 of stature.
        CHECK(body.toes_mm > 0.06 * stature_mm);
        CHECK(body.toes_mm < 0.08 * stature_mm);
      }
      const Body body = body_of(seated(cook, 485));
      CAPTURE(stature_mm, static_cast<int>(cook.build), body.age_years);
      CHECK(485 < body.hip_mm);
      CHECK(body.hip_mm < body.elbow.value_mm);
      CHECK(body.elbow.value_mm < body.shoulder.value_mm);
      CHECK(body.shoulder.value_mm < body.eye.value_mm);
      CHECK(body.toes_mm > body.belly_mm);  // seated: the feet are in front
    }
  }
}

TEST_CASE("hip and eye lever end at the eye, standing and seated", "[cook][law]") {
  // Adults: hip and lever are fractions of stature, the eye a regression; they meet within 1 % of
  // stature standing. Seated, hip and eye come from three sources: 3 %. For everyone within the
  // people measured.
  for (double stature_mm = 900; stature_mm <= 2000; stature_mm += 20) {
    for (const Cook& cook : cooks_of(stature_mm)) {
      const Body standing = body_of(cook), sitting = body_of(seated(cook, 485));
      if (standing.outside_survey) continue;
      CAPTURE(stature_mm, static_cast<int>(cook.build), standing.age_years);
      CHECK_THAT(standing.hip_mm + standing.eye_lever_mm,
                 WithinAbs(standing.eye.value_mm, 0.01 * stature_mm));
      CHECK_THAT(sitting.hip_mm + sitting.eye_lever_mm,
                 WithinAbs(sitting.eye.value_mm, 0.03 * stature_mm));
    }
  }
}

TEST_CASE("children are never above the adult fractions", "[cook][law]") {
  for (double stature_mm = 800; stature_mm <= 2300; stature_mm += 50) {
    for (int tenths = 30; tenths <= 179; ++tenths) {
      const Body body = body_of(child_of(tenths / 10.0, stature_mm));
      CAPTURE(stature_mm, tenths);
      CHECK(body.eye.value_mm < kEyeRatio * stature_mm);
      CHECK(body.elbow.value_mm < kElbowRatio * stature_mm);
    }
  }
}

TEST_CASE("shoes raise who stands and not who sits", "[cook][law]") {
  for (Cook cook : cooks_of(1400)) {
    const Body bare = body_of(cook), bare_seated = body_of(seated(cook, 500));
    cook.shoe_mm = 40;
    const Body shod = body_of(cook), shod_seated = body_of(seated(cook, 500));
    CHECK_THAT(shod.eye.value_mm - bare.eye.value_mm, WithinAbs(40, 1e-9));
    CHECK_THAT(shod.elbow.value_mm - bare.elbow.value_mm, WithinAbs(40, 1e-9));
    CHECK_THAT(shod.shoulder.value_mm - bare.shoulder.value_mm, WithinAbs(40, 1e-9));
    CHECK_THAT(shod.hip_mm - bare.hip_mm, WithinAbs(40, 1e-9));
    CHECK_THAT(shod.leg_mm - bare.leg_mm, WithinAbs(0, 1e-9));
    CHECK(shod_seated.eye.value_mm == bare_seated.eye.value_mm);
    CHECK(shod_seated.elbow.value_mm == bare_seated.elbow.value_mm);
  }
}

TEST_CASE("a higher seat raises all of a seated cook alike", "[cook][law]") {
  for (const Cook& cook : cooks_of(1500)) {
    const Body low = body_of(seated(cook, 430)), high = body_of(seated(cook, 566));
    CHECK_THAT(high.eye.value_mm - low.eye.value_mm, WithinAbs(136, 1e-9));
    CHECK_THAT(high.elbow.value_mm - low.elbow.value_mm, WithinAbs(136, 1e-9));
    CHECK_THAT(high.shoulder.value_mm - low.shoulder.value_mm, WithinAbs(136, 1e-9));
    CHECK_THAT(high.hip_mm - low.hip_mm, WithinAbs(136, 1e-9));
  }
}

TEST_CASE("a measured height replaces its estimate and nothing else", "[cook][law]") {
  for (Cook cook : cooks_of(1600)) {
    const Body estimated = body_of(cook);
    cook.elbow_height_mm = 1003.5;
    const Body body = body_of(cook);
    CHECK(body.elbow.value_mm == 1003.5);
    CHECK(body.elbow.sd_mm == 0);
    CHECK(body.elbow.basis == Basis::Measured);
    CHECK(body.eye.value_mm == estimated.eye.value_mm);
    CHECK(body.eye.basis == estimated.eye.basis);
    cook.eye_height_mm = 1490;
    cook.shoulder_height_mm = 1320;
    CHECK(body_of(cook).eye.value_mm == 1490);
    CHECK(body_of(cook).eye.sd_mm == 0);
    CHECK(body_of(cook).shoulder.value_mm == 1320);
    // Measured in shoes, or seated: neither is added again.
    cook.shoe_mm = 50;
    CHECK(body_of(seated(cook, 500)).eye.value_mm == 1490);
    CHECK(body_of(cook).eye.value_mm == 1490);
  }
}

TEST_CASE("a child without an age takes the age of the median child of that stature", "[cook]") {
  // CDC 2000: boys 115.7 and girls 115.0 cm at 6 years.
  const Body body = body_of(barefoot(Build::Child, 1153));
  CHECK(body.age_assumed);
  CHECK_THAT(body.age_years, WithinAbs(6.0, 0.1));
  CHECK_FALSE(body.outside_survey);
  CHECK(body_of(barefoot(Build::Child, 800)).age_years == 3);
  CHECK(body_of(barefoot(Build::Child, 2000)).age_years == 17);
}

TEST_CASE("a stature that the survey never met is marked", "[cook]") {
  // Shortest and tallest of the US Army survey 2012: women 1409 to 1829, men 1491 to 1993.
  const auto outside = [](const Cook& cook) { return body_of(cook).outside_survey; };
  CHECK(outside(barefoot(Build::AdultB, 1408)));
  CHECK_FALSE(outside(barefoot(Build::AdultB, 1409)));
  CHECK_FALSE(outside(barefoot(Build::AdultB, 1829)));
  CHECK(outside(barefoot(Build::AdultB, 1830)));
  CHECK(outside(barefoot(Build::AdultA, 1490)));
  CHECK_FALSE(outside(barefoot(Build::AdultA, 1491)));
  CHECK_FALSE(outside(barefoot(Build::AdultA, 1993)));
  CHECK(outside(barefoot(Build::AdultA, 1994)));
  CHECK(outside(barefoot(Build::Adult, 1408)));
  CHECK_FALSE(outside(barefoot(Build::Adult, 1409)));
  CHECK_FALSE(outside(barefoot(Build::Adult, 1993)));
  CHECK(outside(barefoot(Build::Adult, 1994)));
  // Snyder et al. 1977, age 10: P5 to P95 1306 to 1531, mean 1409.7, SD 67.0.
  CHECK_FALSE(outside(child_of(10.5, 1306)));
  CHECK_FALSE(outside(child_of(10.5, 1531)));
  CHECK(outside(child_of(10.5, 1200)));
  CHECK(outside(child_of(10.5, 1620)));
  CHECK(outside(barefoot(Build::Child, 2200)));
}
