#include "engine/cook/percentiles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "engine/cook/survey.h"

namespace hs::cook {
namespace {

struct CdcRow {
  Lms boys, girls;
};

// Row i is at kCdcFirstMonths + 6 i months: CDC tabulates at the middle of each month.
constexpr double kCdcFirstMonths = 30.5;
constexpr std::array<CdcRow, 32> kCdcRows{{
#include "engine/cook/cdc_stature.inc"
}};

constexpr double kYoungestYears = 3, kOldestYears = 17;

Lms between(const Lms& a, const Lms& b, double part) {
  return {a.l + (b.l - a.l) * part, a.m + (b.m - a.m) * part, a.s + (b.s - a.s) * part};
}

double survey_share_below(const SurveyGroup& group, double stature_mm) {
  return normal_share_below((stature_mm - group.stature_mean_mm) / group.stature_sd_mm);
}

}  // namespace

double normal_share_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

double lms_z(const Lms& lms, double x_mm) {
  const double log_ratio = std::log(x_mm / lms.m);
  // (x/M)^L - 1 as expm1 keeps its digits as L passes through 0, which it does at some ages.
  return lms.l == 0 ? log_ratio / lms.s : std::expm1(lms.l * log_ratio) / (lms.l * lms.s);
}

Lms cdc_stature(ChildSex sex, double age_years) {
  constexpr double kLast = static_cast<double>(kCdcRows.size() - 1);
  const double place = std::clamp((age_years * 12 - kCdcFirstMonths) / 6, 0.0, kLast);
  const double below = std::min(std::floor(place), kLast - 1);
  const CdcRow& a = kCdcRows[static_cast<std::size_t>(below)];
  const CdcRow& b = kCdcRows[static_cast<std::size_t>(below) + 1];
  const double part = place - below;
  return sex == ChildSex::Boy ? between(a.boys, b.boys, part) : between(a.girls, b.girls, part);
}

double child_median_stature(double age_years) {
  return 0.5 * (cdc_stature(ChildSex::Boy, age_years).m + cdc_stature(ChildSex::Girl, age_years).m);
}

double age_at_median(double stature_mm) {
  double low = kYoungestYears, high = kOldestYears;
  if (stature_mm <= child_median_stature(low)) return low;
  if (stature_mm >= child_median_stature(high)) return high;
  // The median rises with age throughout, so bisection closes in; 40 halvings reach 1e-11 years.
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (child_median_stature(middle) < stature_mm ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double survey_percentile(config::Build build, double stature_mm) {
  const double men = 100 * survey_share_below(kSurveyMen, stature_mm);
  const double women = 100 * survey_share_below(kSurveyWomen, stature_mm);
  switch (build) {
    case config::Build::AdultA:
      return men;
    case config::Build::AdultB:
      return women;
    case config::Build::Adult:
    case config::Build::Child:
      return 0.5 * (men + women);
  }
  return 0;
}

ChildStature child_stature_check(double stature_mm, double age_years) {
  const auto percent = [&](ChildSex sex) {
    return 100 * normal_share_below(lms_z(cdc_stature(sex, age_years), stature_mm));
  };
  ChildStature result{percent(ChildSex::Boy), percent(ChildSex::Girl), false};
  const auto outside = [](double p) { return p < 1 || p > 99; };
  result.unusual = outside(result.boys_percent) && outside(result.girls_percent);
  return result;
}

}  // namespace hs::cook
