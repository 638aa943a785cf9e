#pragma once
// A phone as an inclinometer: what its sensor feels of gravity becomes angles, a slope, a height,
// each with its standard error.
//
// A phone feels gravity along three axes: x to the right of its screen, y to its top, z out of it.
// Makers do not agree on the sign (the standard has +z for a phone on its back, some have -z), so
// no answer here hangs on it. Angles in degrees, lengths in mm. Nothing here is exact to better
// than the sensor: see kSensor_deg.

#include <cstddef>
#include <optional>
#include <span>

namespace hs::measure {

struct Gravity {
  double x = 0, y = 0, z = 0;  // any unit
};

// What is left of a phone's error once its zero is cancelled: 0.3 degrees, the largest root mean
// square of phones on a robot's arm at rest (Mourcou and others, Sensors 2015, 15(9), 23168). Added
// in squares to what the readings' own scatter says, which knows nothing of it.
inline constexpr double kSensor_deg = 0.3;
// Where the phone was not turned round: its zero, its case and its camera's bump. Our judgement.
inline constexpr double kZero_deg = 1.0;
// A zero further off than this is not a phone's: it was not turned round. Our judgement.
inline constexpr double kMostZero_deg = 6.0;
// At least this many readings; and the means of their parts no further apart than this, or it was
// not held still. Our judgement.
inline constexpr std::size_t kFewest = 24;
inline constexpr double kStill_deg = 2.0;

// One time of holding still.
struct Hold {
  double deg = 0;          // of the phone's long edge to the level; the sign is the sensor's
  double scatter_deg = 0;  // standard error of that mean
  double up = 0;  // how much of gravity is along z, -1..1: near 0 the phone stands on its edge
};

// The mean of the readings, and its standard error from the means of eight parts in their order, so
// that a hand that drifts slowly is not taken for many independent readings. nullopt: too few,
// none of them gravity, or not held still.
std::optional<Hold> hold(std::span<const Gravity> readings);

struct Angle {
  double deg = 0;
  double error_deg = 0;            // standard error
  std::optional<double> zero_deg;  // the phone's own, where it was turned round and is cancelled
};

// From one hold: the phone's zero is in it. From two, the phone's other end forward in the second:
// half the difference is the angle, half the sum the zero. nullopt: a zero beyond kMostZero_deg.
Angle one_way(const Hold& hold);
std::optional<Angle> both_ways(const Hold& forward, const Hold& turned);

struct Length {
  double mm = 0;
  double error_mm = 0;  // standard error
};

// How far does ground fall over `run_mm` along a phone that lies on its back, its top end away in
// the first hold and turned round in the second? Positive: falls away. nullopt: not turned round,
// or not on its back (gravity mostly along z).
std::optional<Length> fall(const Hold& away, const Hold& turned, double run_mm);

// How high is someone's eye above the ground at their feet? From `distance_mm` away, sighting along
// the phone's long edge at their feet and, from the same place and by the same end, at their eye:
// distance times the difference of the tangents, so that nobody need know how high the phone was;
// its zero mostly cancels. `distance_error_mm` is the tape's standard error. nullopt: the feet not
// below the level by 2 degrees, or no height comes out.
std::optional<Length> eye_height(const Hold& feet, const Hold& eye, double distance_mm,
                                 double distance_error_mm);

}  // namespace hs::measure
