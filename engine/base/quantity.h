#pragma once
// The kinds of number that the project handles, each with one unit in files and one quantum.
//
// Files, links and the engine hold millimetres, degrees, degrees Celsius, kilograms, years, lumens,
// metres a second, watts.
// A number is rounded to its quantum when it is read, so that equal inputs are equal bits on every
// machine and a link round-trips exactly.
//
// Inside formulas numbers are doubles whose names end in their unit (eye_mm, gaze_deg).

#include <cmath>
#include <cstdint>
#include <numbers>
#include <string_view>

namespace hs {

enum class Quantity : std::uint8_t {
  Length,       // mm, 0.1
  Angle,        // degrees, 0.1
  Temperature,  // degrees Celsius, 0.1
  Mass,         // kg, 0.1
  Years,        // years, 0.1
  Share,        // 0..1, 0.01
  Weight,       // a judgement, no unit, 0.01
  Flux,         // of light, lumens, 1
  Speed,        // m/s, 0.1
  Power,        // W, 1
  Money,        // of the household's own currency, 0.01
  Count,        // how many, 1
  Text,         // UTF-8
  Flag,         // true or false
  Choice,       // one of a closed list of words
};

// Quanta per unit: 10 means that the unit is kept in tenths. 0 for what is not a number.
constexpr int quanta_per_unit(Quantity q) {
  switch (q) {
    case Quantity::Length:
    case Quantity::Angle:
    case Quantity::Temperature:
    case Quantity::Mass:
    case Quantity::Years:
    case Quantity::Speed:
      return 10;
    case Quantity::Share:
    case Quantity::Weight:
    case Quantity::Money:
      return 100;
    case Quantity::Flux:
    case Quantity::Power:
    case Quantity::Count:
      return 1;
    case Quantity::Text:
    case Quantity::Flag:
    case Quantity::Choice:
      return 0;
  }
  return 0;
}

constexpr std::string_view unit_name(Quantity q) {
  switch (q) {
    case Quantity::Length:
      return "mm";
    case Quantity::Angle:
      return "degree";
    case Quantity::Temperature:
      return "degree Celsius";
    case Quantity::Mass:
      return "kg";
    case Quantity::Years:
      return "years";
    case Quantity::Flux:
      return "lumen";
    case Quantity::Speed:
      return "m/s";
    case Quantity::Power:
      return "W";
    case Quantity::Money:
    case Quantity::Count:
    case Quantity::Share:
    case Quantity::Weight:
    case Quantity::Text:
    case Quantity::Flag:
    case Quantity::Choice:
      return "";
  }
  return "";
}

constexpr bool is_number(Quantity q) { return quanta_per_unit(q) != 0; }

// The nearest multiple of 1/per_unit, halves away from zero, never -0. The result is the double
// nearest to integer/per_unit, so it prints with the expected number of decimals.
inline double round_to(double value, int per_unit) {
  const double whole = std::round(value * per_unit);
  return whole == 0.0 ? 0.0 : whole / per_unit;
}

inline double quantised(Quantity q, double value) {
  const int per_unit = quanta_per_unit(q);
  return per_unit == 0 ? value : round_to(value, per_unit);
}

constexpr double kDegPerRad = 180.0 / std::numbers::pi;
constexpr double deg_to_rad(double deg) { return deg / kDegPerRad; }
constexpr double rad_to_deg(double rad) { return rad * kDegPerRad; }

}  // namespace hs
