#include "engine/report/readers_units.h"

#include <algorithm>
#include <array>
#include <optional>

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

}  // namespace

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
