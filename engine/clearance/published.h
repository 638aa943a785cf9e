#pragma once
// What published codes say about free room, chimneys and gas cylinders, for ovens that nobody has
// listed. Codes are adopted locally, late and changed: a listing or a local figure comes first.
//
// No clause was found that is written for an outdoor pizza oven at a home. These are the nearest.

#include <optional>

#include "engine/clearance/clearance.h"

namespace hs::clearance {

// Free room to anything that burns, mm, on a side of an oven that has no listing and that no local
// rule speaks of; nullopt where no code was found (below; an electric oven). Sides and back 36 in:
// NFPA 211 (2016) 12.6, solid fuel, second hand, and IRC R1002.5 for masonry heaters, read; above
// and in front 48 in: IFGC 623, unlisted cooking appliances, read. Where two of them speak the
// larger is taken for every flame.
std::optional<double> unlisted_mm(Side side, config::Fuel fuel);

// IRC R1002.5 (NFPA 211 12.6), masonry heaters, read: 4 in where the walls are at least 8 in of
// solid masonry and the flue channels' at least 5 in, otherwise 36 in. Masonry ovens have no such
// channels, so for them the answer is 36 in.
double masonry_heater_mm(std::optional<double> wall_mm, std::optional<double> channel_mm);

// Strip that must not burn in front of an opening and at each of its sides, mm: IRC R1001.10
// (2006), fireplaces, read. Below 6 square feet of opening 16 and 8 in, otherwise 20 and 12 in.
struct Apron {
  double front_mm = 0, side_mm = 0;
};
Apron hearth_extension(double opening_width_mm, double opening_height_mm);

// Lowest top of a chimney, mm above the same ground as its arguments: 3 ft above where it leaves
// the roof and 2 ft above anything within 10 ft. IRC R1003.9 and NFPA 211, second hand.
inline constexpr double kOverRoof_mm = 914.4, kOverNear_mm = 609.6, kNear_mm = 3048;
struct Obstacle {
  double top_mm = 0, away_mm = 0;
};
double chimney_top_mm(std::optional<double> leaves_roof_mm, std::optional<Obstacle> near);

// Air space round a masonry chimney that passes through framing, mm: 2 in, IRC R1003.18, second
// hand.
inline constexpr double kChimneyFraming_mm = 50.8;

// Openings of a space that encloses a gas cylinder on all sides, cm2; two published forms. Manuals
// that print 3.2 cm2/kg are wrong: 1/2 sq in per lb is 7.1.
struct Vents {
  double high_cm2 = 0, low_cm2 = 0;  // each opening where `each`, otherwise all together
  bool each = false;
};
// Grills and ovens, ANSI Z21.58 wording through five makers' manuals: two openings, 180 degrees
// apart, at the valve's height and two at the floor, each 1/2 sq in per lb and at least 10 sq in.
Vents grill_vents(double gas_kg);
// Fire features, wording ascribed to ANSI Z21.97, manuals: high 1 sq in per lb in all, low 1/2.
Vents fire_feature_vents(double gas_kg);

}  // namespace hs::clearance
