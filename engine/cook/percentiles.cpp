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

// 0..100, of the survey's men, of its women, or of both half each.
template <typename ShareBelow>
double survey_percent(config::Build build, ShareBelow share_below) {
  const double men = 100 * share_below(kSurveyMen), women = 100 * share_below(kSurveyWomen);
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
  return survey_percent(build, [stature_mm](const SurveyGroup& group) {
    return normal_share_below((stature_mm - group.stature_mean_mm) / group.stature_sd_mm);
  });
}

double survey_eye_percentile(config::Build build, double eye_mm) {
  return survey_percent(build, [eye_mm](const SurveyGroup& group) {
    // A least-squares line passes through the means, and what it leaves has its standard error.
    const double sd_mm = std::hypot(group.eye.slope * group.stature_sd_mm, group.eye.see);
    return normal_share_below((eye_mm - group.eye.at(group.stature_mean_mm)) / sd_mm);
  });
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

Standing standing_of(const config::Cook& cook) {
  Standing standing;
  if (cook.build == config::Build::Child) {
    if (!cook.age_years) return standing;
    const ChildStature child = child_stature_check(cook.stature_mm, *cook.age_years);
    standing.stature_percent = 0.5 * (child.boys_percent + child.girls_percent);
    return standing;
  }
  standing.stature_percent = survey_percentile(cook.build, cook.stature_mm);
  if (cook.eye_height_mm && !cook.seated) {
    standing.eye_percent = survey_eye_percentile(cook.build, *cook.eye_height_mm - cook.shoe_mm);
  }
  return standing;
}

}  // namespace hs::cook
