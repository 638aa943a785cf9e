#pragma once
// Does it tip over? A rigid body on its feet: about each edge of the figure that the feet span,
// what turns it over against what holds it.

#include <optional>
#include <span>
#include <vector>

#include "engine/loads/mass.h"

namespace hs::loads {

inline constexpr double kGravity_m_s2 = 9.80665;

struct Spot {
  double x_mm = 0, y_mm = 0;
};

// A level push or pull at a height.
struct Push {
  double x_n = 0, y_n = 0;  // to the right, to the back
  double z_mm = 0;
};

enum class Side : unsigned char { Front, Right, Back, Left };

struct Tip {
  double factor = 0;  // holds / turns; kMost where nothing turns it
  double holds_n_m = 0, turns_n_m = 0;
  Side side = Side::Front;  // over which edge
  double reach_mm = 0;      // from that edge to the farthest foot, square to it
};
inline constexpr double kMost = 100;

// The edge with the least factor. Weights outside an edge turn it over that edge, pushes the other
// way do not hold it. Feet that span no area: factor 0. Source: statics.
Tip tip_of(std::span<const Lump> lumps, std::span<const Push> pushes, std::span<const Spot> feet);

// Corners of the figure round the spots, the way the hands of a clock do not go.
std::vector<Spot> hull_of(std::span<const Spot> spots);

// Least pull in this direction at this height that tips it, N; 0: it falls by itself, nullopt: it
// never does.
std::optional<double> tips_at_n(std::span<const Lump> lumps, std::span<const Spot> feet,
                                const Push& one_newton);

// Pressure of wind, N/m2: 0.613 Kz Kd V^2 with V in m/s (ASCE 7, 26.10-1, metric). Kz 0.85 (open
// country, up to 15 ft; from memory), Kd 0.85 (as in its example), no hill.
inline constexpr double kExposure = 0.85, kDirection = 0.85;
double wind_pressure_pa(double gust_m_s, double exposure = kExposure,
                        double direction = kDirection);
// Of an upright box: 1.3 (ASCE 7, other structures, square, flat on; from memory).
inline constexpr double kBoxForce = 1.3;

}  // namespace hs::loads
