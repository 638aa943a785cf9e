#include "engine/clearance/published.h"

#include <algorithm>

namespace hs::clearance {
namespace {

constexpr double kInch_mm = 25.4;
constexpr double kSquareInch_cm2 = 2.54 * 2.54;
constexpr double kPound_kg = 0.45359237;

}  // namespace

std::optional<double> unlisted_mm(Side side, config::Fuel fuel) {
  if (fuel == config::Fuel::Electric) return {};
  switch (side) {
    case Side::Left:
    case Side::Right:
    case Side::Back:
      return masonry_heater_mm({}, {});
    case Side::Above:
    case Side::Front:
      return 48 * kInch_mm;
    case Side::Below:
      return {};
  }
  return {};
}

double masonry_heater_mm(std::optional<double> wall_mm, std::optional<double> channel_mm) {
  const bool thick =
      wall_mm && *wall_mm >= 8 * kInch_mm && channel_mm && *channel_mm >= 5 * kInch_mm;
  return (thick ? 4 : 36) * kInch_mm;
}

Apron hearth_extension(double opening_width_mm, double opening_height_mm) {
  constexpr double kSixSquareFeet_mm2 = 6 * 12 * 12 * kInch_mm * kInch_mm;
  const bool large = opening_width_mm * opening_height_mm >= kSixSquareFeet_mm2;
  return {(large ? 20 : 16) * kInch_mm, (large ? 12 : 8) * kInch_mm};
}

double chimney_top_mm(std::optional<double> leaves_roof_mm, std::optional<Obstacle> near) {
  double top_mm = 0;
  if (leaves_roof_mm) top_mm = *leaves_roof_mm + kOverRoof_mm;
  if (near && near->away_mm <= kNear_mm) top_mm = std::max(top_mm, near->top_mm + kOverNear_mm);
  return top_mm;
}

Vents grill_vents(double gas_kg) {
  const double square_in = std::max(10.0, 0.5 * gas_kg / kPound_kg);
  return {square_in * kSquareInch_cm2, square_in * kSquareInch_cm2, true};
}

Vents fire_feature_vents(double gas_kg) {
  const double pounds = gas_kg / kPound_kg;
  return {pounds * kSquareInch_cm2, 0.5 * pounds * kSquareInch_cm2, false};
}

}  // namespace hs::clearance
