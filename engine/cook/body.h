#pragma once
// A cook as heights and lengths: eye, elbow, shoulder, arm, hip, each with how well it is known.
//
// Adults: US Army survey 2012 (ANSUR II), regressions on stature with their standard errors.
// Children 3-17: ratios to stature by age (Snyder et al. 1977, UM-HSRI-77-17).
// Seated cooks: seat height plus the survey's sitting eye, elbow rest and shoulder.
// A measured height (in shoes) replaces the estimate.

#include <cstdint>

#include "engine/config/config.h"

namespace hs::cook {

enum class Basis : std::uint8_t { Measured, SurveyAdult, SurveyChild, SurveySeated };

// A height above the ground the cook stands or rolls on, shoes included.
struct Estimate {
  double value_mm = 0;
  double sd_mm = 0;  // standard error of one person's value; 0 when measured
  Basis basis = Basis::Measured;
};

// Heights in mm above the ground at the cook's feet, in shoes; lengths in mm. Standing upright, or
// upright on the seat. Angles none: posture is applied by engine/sight.
struct Body {
  // Elbow: the radiale, the outer elbow joint (survey datum D2). A seated estimate is the elbow
  // rest height instead, the underside of the bent elbow, some 22 mm lower: what seated figures go
  // by.
  Estimate eye, elbow, shoulder;
  double stature_mm = 0;       // in shoes, standing
  double hip_mm = 0;           // hip joint above the ground; seated: 0.05 H above the seat
  double leg_mm = 0;           // ankle to hip, what bending knees shortens; 0 when seated
  double eye_lever_mm = 0;     // hip joint to eye, what a hip hinge turns
  double arm_to_grip_mm = 0;   // shoulder to grip, straight
  double forearm_hand_mm = 0;  // elbow to fingertip: the near zone of a counter
  double belly_mm = 0;         // how far the belly is in front of the eye's plumb line
  double toes_mm = 0;          // toe tips in front of that same line; seated: past the knees
  bool child = false;
  bool seated = false;
  double age_years = 0;  // children: given, or where the CDC median has this stature
  bool age_assumed = false;
  // Stature beyond the people measured, so extrapolated: adults outside the survey's shortest and
  // tallest, children more than 3 SD from the mean of Snyder's children of their age.
  bool outside_survey = false;
};

// Answers: where are this cook's eye, elbow and shoulder? Any valid Cook.
//
// Build `adult` (not said) is an equal mixture of the survey's men and women at this stature; its
// variance is the mean of theirs plus the square of half the distance between their means. Shoes
// raise whoever stands, and not a seated cook. No slump is taken off a seated cook (relaxed sitting
// lowers the eye by about 40 mm, Pheasant, second hand): a measured height settles it. Belly: half
// the survey's sitting abdominal depth, as if the eye were over the trunk's middle; toes: 0.45 of
// the foot's length. Both are our judgement. A child without an age has the age at which the
// CDC 2000 median, boys and girls averaged, has this stature, 3 to 17.
Body body_of(const config::Cook& cook);

}  // namespace hs::cook
