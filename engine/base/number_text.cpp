#include "engine/base/number_text.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "engine/base/text.h"

namespace hs {
namespace {

constexpr double kMmPerInch = 25.4;  // exact: international inch, 1959
constexpr std::int64_t kLargest = 1'000'000'000'000'000'000;

constexpr double kTens[] = {1, 10, 100, 1000, 10000, 100000, 1000000};

std::string fraction_text(std::int64_t top, std::int64_t bottom, Fractions style) {
  if (style == Fractions::Ascii) return std::to_string(top) + "/" + std::to_string(bottom);
  struct Glyph {
    std::int64_t top, bottom;
    const char* text;
  };
  constexpr Glyph kGlyphs[] = {
      {1, 2, "\u00BD"}, {1, 4, "\u00BC"}, {3, 4, "\u00BE"}, {1, 8, "\u215B"},
      {3, 8, "\u215C"}, {5, 8, "\u215D"}, {7, 8, "\u215E"},
  };
  for (const Glyph& glyph : kGlyphs) {
    if (glyph.top == top && glyph.bottom == bottom) return glyph.text;
  }
  constexpr const char* kSuper[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                    "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
  constexpr std::uint32_t kSubscriptZero = 0x2080;
  std::string out;
  for (const char digit : std::to_string(top)) out += kSuper[digit - '0'];
  out += "\u2044";
  for (const char digit : std::to_string(bottom)) {
    append_code_point(out, kSubscriptZero + static_cast<std::uint32_t>(digit - '0'));
  }
  return out;
}

// Whole inches and a reduced fraction: "5 3/8", "5", "3/8", "0". parts: 1/denominator inches.
std::string mixed_text(std::int64_t parts, std::int64_t denominator, Fractions style) {
  const std::int64_t whole = parts / denominator;
  const std::int64_t rest = parts % denominator;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t common = std::gcd(rest, denominator);
  const std::string fraction = fraction_text(rest / common, denominator / common, style);
  if (whole == 0) return fraction;
  // A fraction's own characters are small enough to stand against the whole inches.
  return std::to_string(whole) + (style == Fractions::Ascii ? " " : "") + fraction;
}

std::int64_t inch_parts(double mm, int denominator) {
  return static_cast<std::int64_t>(std::round(std::abs(mm) * denominator / kMmPerInch));
}

}  // namespace

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "null";
  const double scaled = std::round(std::abs(value) * kTens[decimals]);
  const std::int64_t whole =
      scaled < static_cast<double>(kLargest) ? static_cast<std::int64_t>(scaled) : kLargest;
  std::string digits = std::to_string(whole);
  const auto places = static_cast<std::size_t>(decimals);
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  if (places > 0) digits.insert(digits.size() - places, 1, '.');
  return (value < 0 && whole != 0 ? "-" : "") + digits;
}

std::string trimmed(double value, int most_decimals) {
  std::string out = fixed(value, most_decimals);
  if (out.find('.') == std::string::npos) return out;
  out.resize(out.find_last_not_of('0') + 1);
  if (out.back() == '.') out.pop_back();
  return out;
}

std::string mm_text(double mm, int decimals) { return fixed(mm, decimals) + " mm"; }

std::string inches_text(double mm, int denominator, Fractions style) {
  const std::int64_t parts = inch_parts(mm, denominator);
  return (mm < 0 && parts != 0 ? "-" : "") + mixed_text(parts, denominator, style) + " in";
}

std::string feet_inches_text(double mm, int denominator, Fractions style) {
  const std::int64_t parts = inch_parts(mm, denominator);
  const std::int64_t per_foot = std::int64_t{12} * denominator;
  std::string out = mm < 0 && parts != 0 ? "-" : "";
  if (parts >= per_foot) out += std::to_string(parts / per_foot) + "' ";
  return out + mixed_text(parts % per_foot, denominator, style) + "\"";
}

std::string length_range_text(double low_mm, double high_mm, Unit unit) {
  if (unit == Unit::Mm) return trimmed(low_mm, 1) + " to " + trimmed(high_mm, 1) + " mm";
  constexpr int kPerInch = 16;
  const auto bound = [](double parts) {
    const auto size = static_cast<std::int64_t>(std::abs(parts));
    return (parts < 0 ? "-" : "") + mixed_text(size, kPerInch, Fractions::Ascii);
  };
  return bound(std::ceil(low_mm * kPerInch / kMmPerInch)) + " to " +
         bound(std::floor(high_mm * kPerInch / kMmPerInch)) + " in";
}

}  // namespace hs
