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

// The unit a person reads and types lengths in. Files and links are always in mm.
enum class Unit : std::uint8_t { Mm, Inch };

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

// A number of any other quantity, in its own unit; takes "450 C", "842 F", "35 kg", "77 lb",
// "12 years", "8 deg", "40 %" as well as the bare number. Lengths go to parse_length_mm.
std::optional<double> parse_number(Quantity quantity, std::string_view text, Unit bare);

}  // namespace hs
