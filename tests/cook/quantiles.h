#pragma once
// Percentiles back to values: what the engine never needs and its percentiles are checked by.

#include <cmath>
#include <limits>
#include <numbers>

#include "engine/cook/percentiles.h"

namespace hs::test {

// P. J. Acklam's approximation of the normal quantile, for share below 0.5.
inline double lower_quantile(double share) {
  constexpr double kTail = 0.02425;
  if (share < kTail) {
    const double q = std::sqrt(-2 * std::log(share));
    const double top =
        ((((-7.784894002430293e-03 * q - 3.223964580411365e-01) * q - 2.400758277161838e+00) * q -
          2.549732539343734e+00) *
             q +
         4.374664141464968e+00) *
            q +
        2.938163982698783e+00;
    const double bottom =
        (((7.784695709041462e-03 * q + 3.224671290700398e-01) * q + 2.445134137142996e+00) * q +
         3.754408661907416e+00) *
            q +
        1;
    return top / bottom;
  }
  const double q = share - 0.5;
  const double r = q * q;
  const double top =
      (((((-3.969683028665376e+01 * r + 2.209460984245205e+02) * r - 2.759285104469687e+02) * r +
         1.383577518672690e+02) *
            r -
        3.066479806614716e+01) *
           r +
       2.506628277459239e+00) *
      q;
  const double bottom =
      ((((-5.447609879822406e+01 * r + 1.615858368580409e+02) * r - 1.556989798598866e+02) * r +
        6.680131188771972e+01) *
           r -
       1.328068155288572e+01) *
          r +
      1;
  return top / bottom;
}

// The z below which `share` (0..1, exclusive) of a standard normal population lies; minus or plus
// infinity at or beyond 0 and 1. Acklam's rational approximation (relative error 1.2e-9) and one
// Halley step: within 1e-12 for shares of 1e-10 and more. From memory; the tests check it against
// printed quantiles and by its round trip.
inline double normal_quantile(double share) {
  constexpr double kInfinity = std::numeric_limits<double>::infinity();
  if (share <= 0) return -kInfinity;
  if (share >= 1) return kInfinity;
  if (share > 0.5) return -normal_quantile(1 - share);
  const double z = lower_quantile(share);
  const double density = std::exp(-0.5 * z * z) / std::sqrt(2 * std::numbers::pi);
  const double step = (cook::normal_share_below(z) - share) / density;
  return z - step / (1 + 0.5 * z * step);
}

// The value below which `percent` (0..100) of a normal population lies, in mean's unit.
inline double normal_percentile(double mean, double sd, double percent) {
  return mean + sd * normal_quantile(percent / 100);
}

// The stature with this z: M (1 + L S z)^(1 / L). Valid while 1 + L S z > 0.
inline double lms_value(const cook::Lms& lms, double z) {
  if (lms.l == 0) return lms.m * std::exp(lms.s * z);
  return lms.m * std::exp(std::log1p(lms.l * lms.s * z) / lms.l);
}

}  // namespace hs::test
