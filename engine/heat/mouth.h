#pragma once
// The oven's mouth as a glowing opening, and the heat it throws on what is in front of it.
//
// The outer opening is taken as a diffuse emitter at the floor's temperature. Where it is larger
// than the mouth behind it all of it counts, and a brow gives no shade: both on the safe side. A
// flame rolling under the dome, sparks and hot air are not in it, so every figure is told as "at
// least", and a fixed zone admits no face and no lamp whatever the figure is.

#include <vector>

#include "engine/heat/contour.h"
#include "engine/oven/oven.h"

namespace hs::heat {

inline constexpr double kStefanBoltzmann = 5.670374419e-8;  // W/(m2 K4), CODATA 2018, from memory
inline constexpr double kWallEmissivity = 0.9;              // sooty brick and stone: our judgement
inline constexpr double kFlame_c = 600;                     // a rolling flame: our judgement

// sigma T^4, kW/m2.
double black_body_kw_m2(double temperature_c);

// Effective emissivity of a cavity seen through its mouth, e / (e + (1 - e) f): the leading term of
// Gouffe 1945, second hand. mouth_share: mouth's area over all inner area, the mouth's included.
double cavity_emissivity(double wall_emissivity, double mouth_share);

struct Mouth {
  std::vector<Vec> outline;  // in the plane y = 0; curves as chords that keep the area
  Vec middle;                // half-way up the middle line
  double half_width_mm = 0, height_mm = 0;
  double area_mm2 = 0;
  double emissivity = 0;
  double emissive_kw_m2 = 0;
  double flame_factor = 1;  // how much more a rolling flame at 600 C would emit; at least 1
};

// The inside is taken as no higher than the mouth, which makes the cavity's share of mouth the
// largest and its emissivity the smallest it can be.
Mouth mouth_of(const oven::Geometry& oven, double floor_temp_c);

// Irradiance at a receiver, kW/m2. At or behind the mouth's plane: all that the mouth emits.
double irradiance_kw_m2(const Mouth& mouth, const Receiver& receiver);

// At a point that is turned to the middle of the mouth: a face that looks in, a hand held out.
double irradiance_facing_kw_m2(const Mouth& mouth, const Vec& at);

// The fixed hot zone: from half the mouth's height up without end, as far in front as a bent face
// is ever let (sight::kFaceLimit_mm), and this much wider than the mouth on either side. Our
// judgement. Not from the flux and no clearance: it says where no face and no lamp is put.
inline constexpr double kHotZoneReach_mm = 450, kHotZoneBeside_mm = 150;
bool in_hot_zone(const Mouth& mouth, const Vec& at);

// Nearest standoff, in front of the mouth's plane, from which on a face at this height and place
// across gets no more than kLinger_kw_m2, rounded up to 10 mm; never less than the fixed zone's
// reach where the face is above its lower edge. Told as "at least" as well.
double linger_standoff_mm(const Mouth& mouth, double x_mm, double z_mm);

}  // namespace hs::heat
