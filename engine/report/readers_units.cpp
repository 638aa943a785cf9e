#include "engine/report/readers_units.h"

#include <algorithm>
#include <array>
#include <optional>

#include "engine/base/number_text.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }
bool of_number(char c) { return digit(c) || c == '.' || c == '/'; }

// The system of a measure's unit; absent: it does not begin with a number and a unit.
std::optional<Units> system_of(std::string_view measure) {
  std::size_t at = 0;
  while (at < measure.size() && (of_number(measure[at]) || measure[at] == ' ')) ++at;
  if (at == 0 || !digit(measure[0])) return {};
  const std::size_t end = std::min(measure.find_first_of(" /", at), measure.size());
  const std::string_view unit = measure.substr(at, end - at);
  constexpr std::array<std::string_view, 7> kInch{"in", "ft", "sq", "lb", "mph", "F", "\u00B0F"};
  constexpr std::array<std::string_view, 8> kMetric{"mm", "m",   "cm2", "cm\u00B2",
                                                    "kg", "m/s", "C",   "\u00B0C"};
  if (std::find(kInch.begin(), kInch.end(), unit) != kInch.end()) return Units::Inch;
  if (std::find(kMetric.begin(), kMetric.end(), unit) != kMetric.end()) return Units::Millimetre;
  return {};
}

// Where the measure that ends `text` begins: its last number, "15 3/4" being one; npos: none, or a
// mark stands between.
std::size_t measure_at(std::string_view text) {
  const auto begins = [text](std::size_t at) {
    return digit(text[at]) && (at == 0 || text[at - 1] == ' ');
  };
  std::size_t at = text.size();
  for (;;) {
    if (at == 0) return std::string_view::npos;
    --at;
    const bool stop = text[at] == '.' && (at + 1 == text.size() || text[at + 1] == ' ');
    if (stop || text[at] == ',' || text[at] == ';' || text[at] == ':' || text[at] == ')') {
      return std::string_view::npos;
    }
    if (begins(at)) break;
  }
  if (text.find('/', at) > text.find(' ', at)) return at;
  std::size_t whole = at;
  while (whole > 1 && of_number(text[whole - 2])) --whole;
  return whole < at && begins(whole - 1) ? whole - 1 : at;
}

double value_of(std::string_view digits) {
  double value = 0, part = 0;
  for (const char c : digits) {
    if (c == '.') {
      part = 1;
    } else {
      value = 10 * value + (c - '0');
      part *= 10;
    }
  }
  return part > 0 ? value / part : value;
}

// Without its unit; what is thinner than a saw's mark has decimals.
std::string inches_of(double mm) {
  constexpr double kThin_mm = 3;
  if (mm < kThin_mm) return fixed(mm / 25.4, 3);
  const std::string text = shop_length(mm, Units::Inch, false);
  return text.substr(0, text.rfind(' '));
}

std::string turned(std::string_view unit, double value) {
  constexpr double kFoot_m2 = 0.09290304, kQuart_l = 0.946352946;
  if (unit == "mm") return inches_of(value) + " in";
  if (unit == "l") return trimmed(value / kQuart_l, 2) + " qt";
  if (unit == "lx") return fixed(value * kFoot_m2, 0) + " fc";
  if (unit == "m2" || unit == "m\u00B2") return fixed(value / kFoot_m2, 0) + " sq ft";
  return {};
}

std::size_t number_end(std::string_view text, std::size_t at) {
  while (at < text.size() && (digit(text[at]) || text[at] == '.')) ++at;
  return at > 0 && text[at - 1] == '.' ? at - 1 : at;
}

}  // namespace

std::string readers_own(std::string_view text, Units units) {
  if (units != Units::Inch) return std::string(text);
  std::string out;
  int deep = 0;
  for (std::size_t at = 0; at < text.size();) {
    deep += text[at] == '(' ? 1 : text[at] == ')' ? -1 : 0;
    const bool begins = deep == 0 && digit(text[at]) && (at == 0 || text[at - 1] == ' ');
    if (!begins) {
      out += text[at++];
      continue;
    }
    // "2438.4 x 1219.2 mm": both are turned.
    std::size_t end = number_end(text, at), second = 0;
    if (text.substr(end).starts_with(" x ") && end + 3 < text.size() && digit(text[end + 3])) {
      second = end + 3;
      end = number_end(text, second);
    }
    const std::size_t unit_at = end + 1;
    const std::size_t unit_end = std::min(text.find_first_of(" ,.;:)", unit_at), text.size());
    std::string own;
    if (end < text.size() && text[end] == ' ' && unit_end > unit_at &&
        !text.substr(unit_end).starts_with(" (")) {
      const std::string_view unit = text.substr(unit_at, unit_end - unit_at);
      own = turned(
          unit, value_of(text.substr(second > 0 ? second : at, end - (second > 0 ? second : at))));
      if (!own.empty() && second > 0) {
        own = unit == "mm" ? inches_of(value_of(text.substr(at, second - 3 - at))) + " x " + own
                           : std::string();
      }
    }
    if (own.empty()) {
      out.append(text.substr(at, end - at));
      at = end;
    } else {
      out.append(own).append(" (").append(text.substr(at, unit_end - at)).append(")");
      at = unit_end;
    }
  }
  return out;
}

std::string readers_first(std::string_view text, Units units) {
  std::string out;
  for (;;) {
    const std::size_t open = text.find(" (");
    const std::size_t close = open == text.npos ? text.npos : text.find(')', open);
    if (close == text.npos) return out.append(text);
    const std::string_view before = text.substr(0, open),
                           inside = text.substr(open + 2, close - open - 2);
    const std::size_t from = measure_at(before);
    const auto first = from == before.npos ? std::nullopt : system_of(before.substr(from));
    const auto second = system_of(inside);
    if (first && second && *first != *second && *second == units) {
      out.append(before.substr(0, from)).append(inside);
      out.append(" (").append(before.substr(from)).append(")");
    } else {
      out.append(text.substr(0, close + 1));
    }
    text.remove_prefix(close + 1);
  }
}

}  // namespace hs::report
