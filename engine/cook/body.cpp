#include "engine/cook/body.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include "engine/cook/percentiles.h"
#include "engine/cook/survey.h"

namespace hs::cook {
namespace {

using config::Build;

// The eye of a relaxed stander is about over the middle of the foot; toe tips lie 0.45 of the
// foot's length in front of it. Our judgement.
constexpr double kToesShareOfFoot = 0.45;

// The hip joint above the seat: sitting height 0.520 H less hip to vertex (1 - 0.530) H. Computed
// from the Drillis & Contini fractions.
constexpr double kSeatedHipRatio = kSittingHeightRatio - (1 - kHipRatio);

// Seated, feet flat: the toe tips lie in front of the knee's front by three quarters of the foot
// (0.114 H) less the knee's own thickness before its axis (about 0.034 H). Our judgement.
constexpr double kToesBeforeKneeRatio = 0.08;

struct Known {
  double value_mm = 0;
  double sd_mm = 0;
};

// The two survey groups as this cook's build weighs them.
Known known(Build build, const Line& men, const Line& women, double stature_mm) {
  const double a_mm = men.at(stature_mm), b_mm = women.at(stature_mm);
  if (build == Build::AdultA) return {a_mm, men.see};
  if (build == Build::AdultB) return {b_mm, women.see};
  // Build not said: an equal mixture of the two groups at this stature. Its variance is the mean
  // of theirs plus the square of half the distance between their means.
  const double half_mm = 0.5 * (a_mm - b_mm);
  return {0.5 * (a_mm + b_mm),
          std::sqrt(0.5 * (men.see * men.see + women.see * women.see) + half_mm * half_mm)};
}

Known known(Build build, Line SurveyGroup::*line, double stature_mm) {
  return known(build, kSurveyMen.*line, kSurveyWomen.*line, stature_mm);
}

Estimate estimate(const Known& known, double above_ground_mm, Basis basis) {
  return {known.value_mm + above_ground_mm, known.sd_mm, basis};
}

void use_measured(Estimate& estimate, const std::optional<double>& measured_mm) {
  if (measured_mm) estimate = {*measured_mm, 0, Basis::Measured};
}

bool outside(double value, double low, double high) { return value < low || value > high; }

Body adult(const config::Cook& cook) {
  const double h_mm = cook.stature_mm;
  const auto of = [&](Line SurveyGroup::*line) { return known(cook.build, line, h_mm); };
  Body body;
  body.arm_to_grip_mm = of(&SurveyGroup::arm_to_grip).value_mm;
  body.forearm_hand_mm = of(&SurveyGroup::forearm_hand).value_mm;
  body.belly_mm = 0.5 * of(&SurveyGroup::abdomen).value_mm;
  body.eye_lever_mm = (kEyeRatio - kHipRatio) * h_mm;
  if (cook.seated) {
    const Basis basis = Basis::SurveySeated;
    body.eye = estimate(of(&SurveyGroup::sit_eye), cook.seat_height_mm, basis);
    body.elbow = estimate(of(&SurveyGroup::sit_elbow), cook.seat_height_mm, basis);
    body.shoulder = estimate(of(&SurveyGroup::sit_shoulder), cook.seat_height_mm, basis);
    body.hip_mm = cook.seat_height_mm + kSeatedHipRatio * h_mm;
    body.toes_mm =
        of(&SurveyGroup::buttock_knee).value_mm - body.belly_mm + kToesBeforeKneeRatio * h_mm;
  } else {
    const Basis basis = Basis::SurveyAdult;
    body.eye = estimate(of(&SurveyGroup::eye), cook.shoe_mm, basis);
    body.elbow = estimate(of(&SurveyGroup::elbow), cook.shoe_mm, basis);
    body.shoulder = estimate(of(&SurveyGroup::shoulder), cook.shoe_mm, basis);
    body.hip_mm = kHipRatio * h_mm + cook.shoe_mm;
    body.leg_mm = (kHipRatio - kAnkleRatio) * h_mm;
    body.toes_mm = kToesShareOfFoot * kFootRatio * h_mm;
  }
  const double low_mm = (cook.build == Build::AdultA ? kSurveyMen : kSurveyWomen).stature_min_mm;
  const double high_mm = (cook.build == Build::AdultB ? kSurveyWomen : kSurveyMen).stature_max_mm;
  body.outside_survey = outside(h_mm, low_mm, high_mm);
  return body;
}

Body child(const config::Cook& cook) {
  const double h_mm = cook.stature_mm;
  Body body;
  body.child = true;
  body.age_assumed = !cook.age_years;
  body.age_years = cook.age_years ? *cook.age_years : age_at_median(h_mm);

  // Linear between the middles of the year bins.
  constexpr double kLast = static_cast<double>(kChildRows.size() - 1);
  const double place = std::clamp(body.age_years - kChildFirstAge, 0.0, kLast);
  const double below = std::min(std::floor(place), kLast - 1);
  const ChildRow& a = kChildRows[static_cast<std::size_t>(below)];
  const ChildRow& b = kChildRows[static_cast<std::size_t>(below) + 1];
  const auto ratio = [&](Ratio ChildRow::*member) {
    const double part = place - below;
    const Ratio &low = a.*member, &high = b.*member;
    return Ratio{low.mean + (high.mean - low.mean) * part, low.sd + (high.sd - low.sd) * part};
  };
  const auto of = [&](Ratio ChildRow::*member) {
    const Ratio r = ratio(member);
    return Known{r.mean * h_mm, r.sd * h_mm};
  };

  const double forearm_hand_mm = of(&ChildRow::elbow_hand).value_mm;
  body.forearm_hand_mm = forearm_hand_mm;
  // Snyder has no elbow-to-grip length; the hand's part of the forearm is taken as in adults.
  body.arm_to_grip_mm =
      of(&ChildRow::shoulder_elbow).value_mm + kGripShareOfForearmHand * forearm_hand_mm;
  // Nor a belly depth: the adult ratio, which is a judgement for children.
  body.belly_mm = 0.5 * kAbdomenRatio * h_mm;
  const double standing_hip_mm =
      of(&ChildRow::trochanter).value_mm + kHipAboveTrochanterRatio * h_mm;
  const double standing_eye_mm = of(&ChildRow::eye).value_mm;
  body.eye_lever_mm = standing_eye_mm - standing_hip_mm;
  const Basis basis = Basis::SurveyChild;
  if (cook.seated) {
    body.eye = estimate(of(&ChildRow::sit_eye), cook.seat_height_mm, basis);
    body.elbow = estimate(of(&ChildRow::sit_elbow), cook.seat_height_mm, basis);
    body.shoulder = estimate(of(&ChildRow::sit_shoulder), cook.seat_height_mm, basis);
    body.hip_mm = cook.seat_height_mm + kSeatedHipRatio * h_mm;
    body.toes_mm =
        of(&ChildRow::buttock_knee).value_mm - body.belly_mm + kToesBeforeKneeRatio * h_mm;
  } else {
    body.eye = estimate(of(&ChildRow::eye), cook.shoe_mm, basis);
    body.elbow = estimate(of(&ChildRow::elbow), cook.shoe_mm, basis);
    body.shoulder = estimate(of(&ChildRow::shoulder), cook.shoe_mm, basis);
    body.hip_mm = standing_hip_mm + cook.shoe_mm;
    // Snyder's ankle (sphyrion) is 0.038 to 0.041 H at every age: the adult fraction serves.
    body.leg_mm = standing_hip_mm - kAnkleRatio * h_mm;
    body.toes_mm = kToesShareOfFoot * of(&ChildRow::foot).value_mm;
  }
  // Three SD either side of the mean of the children whose ratios these are. Our judgement.
  const Ratio stature_mm = ratio(&ChildRow::stature_mm);
  body.outside_survey = std::abs(h_mm - stature_mm.mean) > 3 * stature_mm.sd;
  return body;
}

}  // namespace

Body body_of(const config::Cook& cook) {
  Body body = cook.build == Build::Child ? child(cook) : adult(cook);
  body.seated = cook.seated;
  body.stature_mm = cook.stature_mm + cook.shoe_mm;
  use_measured(body.eye, cook.eye_height_mm);
  use_measured(body.elbow, cook.elbow_height_mm);
  use_measured(body.shoulder, cook.shoulder_height_mm);
  return body;
}

}  // namespace hs::cook
