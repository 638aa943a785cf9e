#pragma once
// Numbers to text and back: the only place where either happens, never by locale.
//
// Writing: fixed decimals through integers, halves away from zero, "-0" printed as "0".
// Reading: decimal point or comma, both as the decimal mark. A comma before exactly three digits
// ("1,051 mm") could as well group thousands; where the unit makes both believable it is refused
// rather than guessed.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/quantity.h"

namespace hs {

// The units a person reads and types in: millimetres with degrees Celsius, kg and m/s, or inches
// with degrees Fahrenheit, lb and mph. Files and links are always in the project's own
// (quantity.h).
enum class Unit : std::uint8_t { Mm, Inch };

// What a quantity is shown and typed in beside lengths in `unit`: the project's own value is
// shown * scale + offset. Pound: exact, international pound of 1959. Mile an hour: exact, by the
// international foot.
struct ShownUnit {
  std::string_view name;
  double scale = 1, offset = 0;

  constexpr double to_own(double shown) const { return shown * scale + offset; }
  constexpr double from_own(double own) const { return (own - offset) / scale; }
};
constexpr ShownUnit shown_unit(Quantity quantity, Unit unit) {
  const bool inch = unit == Unit::Inch;
  switch (quantity) {
    case Quantity::Length:
      return inch ? ShownUnit{"in", 25.4} : ShownUnit{"mm"};
    case Quantity::Temperature:
      return inch ? ShownUnit{"\u00B0F", 5.0 / 9.0, -160.0 / 9.0} : ShownUnit{"\u00B0C"};
    case Quantity::Mass:
      return inch ? ShownUnit{"lb", 0.45359237} : ShownUnit{"kg"};
    case Quantity::Speed:
      return inch ? ShownUnit{"mph", 0.44704} : ShownUnit{"m/s"};
    default:
      return {unit_name(quantity)};
  }
}

// How a binary fraction is written: "5 3/8", or with the fraction's own characters, where
// sixteenths are superscript, U+2044, subscript.
enum class Fractions : std::uint8_t { Ascii, Typographic };

// "1051.50" for (1051.5, 2). decimals 0 to 6; finite values below 1e12 in size. What is not finite
// prints "null", which no reader takes for a number.
std::string fixed(double value, int decimals);

// As fixed(), without trailing zeros: "1051.5", "1051".
std::string trimmed(double value, int most_decimals);

// "1051 mm", or "1051.5 mm" with one decimal.
std::string mm_text(double mm, int decimals = 0);

// "42 1/2 in", to the nearest 1/denominator inch (a power of two, 1 to 64), reduced.
std::string inches_text(double mm, int denominator = 16, Fractions style = Fractions::Ascii);

// "3' 5 3/8\"", "5 3/8\"" below a foot; twelve inches carry to the next foot.
std::string feet_inches_text(double mm, int denominator = 16, Fractions style = Fractions::Ascii);

// "800 to 2300 mm" or "31 1/2 to 90 1/2 in": in inches both ends are rounded into the range, so
// that each may be typed as it is shown.
std::string length_range_text(double low_mm, double high_mm, Unit unit);

// "12", "-3.5", "3,5", "1.5e3" (JSON's exponent). Exact to 15 digits, else to the last bit or two.
// nullopt for anything else and for what no double holds.
std::optional<double> parse_decimal(std::string_view text);

// A length in mm from "3' 5 3/8\"", "3 ft 5 3/8 in", "3'-5 3/8\"", "41-3/8", "41.375 in", "1051
// mm", "105,1 cm", "1.051 m", one-character fractions and typographic marks included. A bare number
// is in `bare`; a bare number with a fraction is in inches always. Not rounded. nullopt: not a
// length (junk, two signs, two units, exponents, thousands marks, inches >= 12 after feet).
std::optional<double> parse_length_mm(std::string_view text, Unit bare);

// A number of any other quantity, in the project's own unit; takes "450 C", "842 F", "35 kg",
// "77 lb", "12 years", "8 deg", "40 %", and a bare number in the unit shown beside `bare`. Lengths
// go to parse_length_mm.
std::optional<double> parse_number(Quantity quantity, std::string_view text, Unit bare);

}  // namespace hs
