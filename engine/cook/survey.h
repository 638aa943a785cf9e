#pragma once
// The published measurements of people behind engine/cook, as data.
//
// Adults: US Army Anthropometric Survey 2012 (ANSUR II, NATICK/TR-15/007, public-use raw files),
// 4082 men and 1986 women of 17 to 58 years, bare feet, minimal clothing. A soldier sample:
// civilians are a little shorter and heavier, old people shorter.
// Children: Snyder et al. 1977, UM-HSRI-77-17 (made for the US Consumer Product Safety
// Commission), individual records.
// Proportions: Drillis & Contini 1966 as in Winter, Biomechanics and Motor Control of Human
// Movement, Fig. 4.1 (second hand).
// tests/reference/check_survey.py recomputes every number here from the raw files.

#include <array>

namespace hs::cook {

// value = slope * stature + intercept, mm; see: standard error of one person's value.
struct Line {
  double slope = 0, intercept = 0, see = 0;
  constexpr double at(double stature_mm) const { return slope * stature_mm + intercept; }
};

// One sex of the survey: its stature, and least-squares lines on stature.
struct SurveyGroup {
  int people = 0;
  double stature_mean_mm = 0, stature_sd_mm = 0, stature_min_mm = 0, stature_max_mm = 0;
  Line eye;           // stature - sitting height + eye height sitting
  Line elbow;         // radiale: acromial height - acromion-radiale length (datum D2)
  Line shoulder;      // acromial height
  Line sit_eye;       // eye height sitting, above the seat
  Line sit_elbow;     // elbow rest height: underside of the bent elbow, above the seat
  Line sit_shoulder;  // sitting height - (stature - acromial height), above the seat
  Line arm_to_grip;   // shoulder-elbow + forearm-centre of grip (D5): upper bound of straight arm
  Line forearm_hand;  // elbow to fingertip
  Line abdomen;       // abdominal extension depth, sitting: back to front of the belly
  Line buttock_knee;  // back of the buttock to the front of the knee, sitting
};

inline constexpr SurveyGroup kSurveyMen{
    .people = 4082,
    .stature_mean_mm = 1756.21,
    .stature_sd_mm = 68.55,
    .stature_min_mm = 1491,
    .stature_max_mm = 1993,
    .eye = {0.96244, -47.81, 8.61},
    .elbow = {0.68980, -105.94, 16.54},
    .shoulder = {0.89261, -126.89, 16.16},
    .sit_eye = {0.36814, 157.98, 21.51},
    .sit_elbow = {0.07333, 116.25, 28.21},
    .sit_shoulder = {0.29831, 78.91, 23.07},
    .arm_to_grip = {0.41414, -14.59, 18.51},
    .forearm_hand = {0.26741, 10.59, 14.36},
    .abdomen = {0.07856, 116.69, 36.94},
    .buttock_knee = {0.35701, -9.03, 18.35},
};

inline constexpr SurveyGroup kSurveyWomen{
    .people = 1986,
    .stature_mean_mm = 1628.47,
    .stature_sd_mm = 64.20,
    .stature_min_mm = 1409,
    .stature_max_mm = 1829,
    .eye = {0.95443, -34.72, 7.61},
    .elbow = {0.66734, -62.84, 14.68},
    .shoulder = {0.87932, -96.85, 13.66},
    .sit_eye = {0.34792, 181.11, 20.60},
    .sit_elbow = {0.04713, 155.68, 26.08},
    .sit_shoulder = {0.27282, 118.98, 21.64},
    .arm_to_grip = {0.42371, -38.00, 18.58},
    .forearm_hand = {0.27442, -7.02, 15.37},
    .abdomen = {0.08545, 90.49, 30.99},
    .buttock_knee = {0.37978, -27.86, 21.65},
};

// Share of elbow-to-fingertip that reaches the centre of the grip: the survey's forearm-centre of
// grip over forearm-hand, mean of men (349.01 / 480.21) and women (317.71 / 439.86).
inline constexpr double kGripShareOfForearmHand = 0.7245;

// Mean abdominal depth over stature, mean of men (0.1451) and women (0.1411).
inline constexpr double kAbdomenRatio = 0.1431;

// Drillis & Contini fractions of stature (Winter, Fig. 4.1). Good to about 1 % for adults (the
// survey's means agree), not valid for children.
inline constexpr double kEyeRatio = 0.936, kShoulderRatio = 0.818, kElbowRatio = 0.630;
inline constexpr double kHipRatio = 0.530, kAnkleRatio = 0.039, kFootRatio = 0.152;
inline constexpr double kSittingHeightRatio = 0.520;

// The hip joint above the trochanterion, the bony point that surveys measure: 0.530 less the
// survey's mean trochanterion ratio (0.513 men, 0.519 women). Computed, adults.
inline constexpr double kHipAboveTrochanterRatio = 0.014;

// A ratio to the child's own stature: mean and SD between children of one age.
struct Ratio {
  double mean = 0, sd = 0;
};

// Children of one year bin [a, a + 1), both sexes; heights above the ground or the seat. The
// shoulder is the suprasternale (in the adult survey the acromion is 2 to 5 mm above it), so the
// elbow errs by less than 0.4 % of stature.
struct ChildRow {
  Ratio eye, elbow, shoulder;
  Ratio sit_eye;
  Ratio sit_elbow;     // underside of the bent elbow: sitting shoulder - shoulder-elbow length
  Ratio sit_shoulder;  // sitting height - (stature - suprasternale)
  Ratio trochanter, shoulder_elbow, elbow_hand, buttock_knee, foot;
  Ratio stature_mm;  // not a ratio: stature itself
};

// Ages 2 to 17; row i stands for its bin's middle, kChildFirstAge + i.
inline constexpr double kChildFirstAge = 2.5;
inline constexpr std::array<ChildRow, 16> kChildRows{{
#include "engine/cook/child_ratios.inc"
}};

}  // namespace hs::cook
