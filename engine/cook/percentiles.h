#pragma once
// Where a stature stands among people: normal percentiles, LMS percentiles, the survey, CDC 2000.

#include <cstdint>
#include <optional>

#include "engine/config/config.h"

namespace hs::cook {

// Share of a standard normal population below z, 0..1. By std::erfc, relative error about 1e-15.
double normal_share_below(double z);

// Box-Cox power, median and coefficient of variation of one age (Cole's LMS method, as CDC uses).
struct Lms {
  double l = 1, m = 0, s = 0;  // m in mm
};

// z = ((x / M)^L - 1) / (L S); ln(x / M) / S when L is 0. CDC 2000 growth charts. x > 0.
double lms_z(const Lms& lms, double x_mm);

enum class ChildSex : std::uint8_t { Boy, Girl };

// CDC 2000 stature for age (US children), at 2.54 to 18.04 years; held constant outside. The table
// steps by half a year, linear between: medians within
// 1.3 mm, P1 and P99 within 0.1 of CDC's monthly table.
Lms cdc_stature(ChildSex sex, double age_years);

// Mean of the boys' and the girls' CDC 2000 median stature at this age, mm.
double child_median_stature(double age_years);
// The age, 3 to 17 years, at which that mean is this stature; the ends are clamped.
double age_at_median(double stature_mm);

// Percentile (0..100) of an adult's barefoot stature in the US Army survey 2012, taken as normal
// (within 2 of the sample's own P5, P50 and P95). AdultA: its men; AdultB: its women; Adult: half
// men, half women. A child is compared with Adult.
double survey_percentile(config::Build build, double stature_mm);

// The same of a standing adult's eye height, barefoot: the survey's mean and standard deviation as
// its line on stature and that line's standard error imply them.
double survey_eye_percentile(config::Build build, double eye_mm);

// Percentiles (0..100) of a child's stature for age, CDC 2000.
struct ChildStature {
  double boys_percent = 0, girls_percent = 0;
  bool unusual = false;  // outside P1..P99 of boys and of girls: worth checking height and age
};
ChildStature child_stature_check(double stature_mm, double age_years);

// Where a cook stands among people, 0..100: how many in 100 are shorter, and how many in 100 have
// lower eyes. Adults: the survey. Children: CDC 2000 at their age, boys and girls half each.
struct Standing {
  std::optional<double> stature_percent;  // absent: a child whose age was taken from the stature
  std::optional<double> eye_percent;      // only a standing adult's measured eye says anything new
};
Standing standing_of(const config::Cook& cook);

}  // namespace hs::cook
