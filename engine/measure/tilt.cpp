#include "engine/measure/tilt.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace hs::measure {
namespace {

constexpr std::size_t kParts = 8;
constexpr double kRad = std::numbers::pi / 180;
// Feet that are hardly below the phone say nothing about which way is down.
constexpr double kLeastDown_deg = 2;
// Steeper than this the tangent runs away.
constexpr double kSteepest_deg = 75;
// cos 45 degrees: on its back, not on its edge.
constexpr double kOnBack = 0.7;

double squared(double x) { return x * x; }

// How much of d(tan) comes with one degree.
double tan_per_deg(double deg) { return kRad / squared(std::cos(deg * kRad)); }

}  // namespace

std::optional<Hold> hold(std::span<const Gravity> readings) {
  if (readings.size() < kFewest) return std::nullopt;
  std::array<double, kParts> means{};
  double up = 0;
  for (std::size_t part = 0; part < kParts; ++part) {
    const std::size_t from = readings.size() * part / kParts;
    const std::size_t to = readings.size() * (part + 1) / kParts;
    for (std::size_t i = from; i < to; ++i) {
      const Gravity& g = readings[i];
      const double flat = std::sqrt(g.x * g.x + g.z * g.z);
      const double all = std::sqrt(g.x * g.x + g.y * g.y + g.z * g.z);
      // Also false for what is not a number.
      if (!(all > 0 && all < 1e6)) return std::nullopt;
      means[part] += std::atan2(g.y, flat) / kRad;
      up += g.z / all;
    }
    means[part] /= static_cast<double>(to - from);
  }
  const auto [low, high] = std::minmax_element(means.begin(), means.end());
  if (*high - *low > kStill_deg) return std::nullopt;
  double mean = 0, squares = 0;
  for (const double m : means) mean += m / kParts;
  for (const double m : means) squares += squared(m - mean);
  return Hold{mean, std::sqrt(squares / (kParts - 1) / kParts),
              up / static_cast<double>(readings.size())};
}

Angle one_way(const Hold& hold) {
  return {hold.deg,
          std::sqrt(squared(hold.scatter_deg) + squared(kSensor_deg) + squared(kZero_deg)),
          std::nullopt};
}

std::optional<Angle> both_ways(const Hold& forward, const Hold& turned) {
  const double zero_deg = (forward.deg + turned.deg) / 2;
  if (!(std::abs(zero_deg) <= kMostZero_deg)) return std::nullopt;
  const double scatter_deg =
      std::sqrt(squared(forward.scatter_deg) + squared(turned.scatter_deg)) / 2;
  return Angle{(forward.deg - turned.deg) / 2,
               std::sqrt(squared(scatter_deg) + squared(kSensor_deg)), zero_deg};
}

std::optional<Length> fall(const Hold& away, const Hold& turned, double run_mm) {
  // On its back in both, the same side up.
  if (!(std::min(std::abs(away.up), std::abs(turned.up)) >= kOnBack && away.up * turned.up > 0)) {
    return std::nullopt;
  }
  const std::optional<Angle> angle = both_ways(away, turned);
  if (!angle) return std::nullopt;
  // With +z up a raised top end has +y.
  const double raised_deg = away.up > 0 ? angle->deg : -angle->deg;
  return Length{-run_mm * std::tan(raised_deg * kRad),
                run_mm * tan_per_deg(raised_deg) * angle->error_deg};
}

std::optional<Length> eye_height(const Hold& feet, const Hold& eye, double distance_mm,
                                 double distance_error_mm) {
  if (!(std::abs(feet.deg) >= kLeastDown_deg && std::abs(feet.deg) <= kSteepest_deg &&
        std::abs(eye.deg) <= kSteepest_deg && distance_mm > 0)) {
    return std::nullopt;
  }
  // Feet are below whoever holds the phone, whatever the sensor's sign.
  const double down = feet.deg > 0 ? -1 : 1;
  const double low_deg = down * feet.deg, high_deg = down * eye.deg;
  const double height_mm = distance_mm * (std::tan(high_deg * kRad) - std::tan(low_deg * kRad));
  if (!(height_mm > 0)) return std::nullopt;
  const double low_mm = distance_mm * tan_per_deg(low_deg);
  const double high_mm = distance_mm * tan_per_deg(high_deg);
  const double own_low_deg2 = squared(feet.scatter_deg) + squared(kSensor_deg);
  const double own_high_deg2 = squared(eye.scatter_deg) + squared(kSensor_deg);
  // The zero is the same in both.
  return Length{height_mm,
                std::sqrt(squared(low_mm) * own_low_deg2 + squared(high_mm) * own_high_deg2 +
                          squared((high_mm - low_mm) * kZero_deg) +
                          squared(height_mm / distance_mm * distance_error_mm))};
}

}  // namespace hs::measure
