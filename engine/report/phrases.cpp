#include "engine/report/phrases.h"

#include <algorithm>
#include <cmath>

#include "engine/finish/paint.h"
#include "engine/sight/sight.h"

namespace hs::report {
namespace {

constexpr double kMmPerInch = 25.4;
// Below what any input is known to, and above what adding binary fractions of an inch leaves.
constexpr double kSlack_mm = 0.01;

double distance_step_mm(Units units) { return units == Units::Inch ? kMmPerInch : 10; }

// The number alone, for the first end of a band.
std::string without_unit(std::string text) {
  const std::size_t space = text.rfind(' ');
  return space == std::string::npos ? text : text.substr(0, space);
}

}  // namespace

std::string plain_length(double mm, Units units, bool pretty) {
  return units == Units::Inch ? inches_text(mm, 16, style_of(pretty)) : mm_text(mm);
}

std::string shop_length(double mm, Units units, bool pretty) {
  return units == Units::Inch ? inches_text(mm, 32, style_of(pretty)) : trimmed(mm, 1) + " mm";
}

std::string build_band(const height::Band& band, double within_mm, Units units, bool pretty) {
  const double step_mm = evaluate::mark_step_mm(marks_of(units));
  const double low_mm = std::ceil((band.low_mm - kSlack_mm) / step_mm) * step_mm;
  const double high_mm = std::floor((band.high_mm + kSlack_mm) / step_mm) * step_mm;
  return plain_band({std::min(within_mm, low_mm), std::max(within_mm, high_mm)}, units, pretty);
}

std::string plain_band(const height::Band& band, Units units, bool pretty) {
  const std::string high = plain_length(band.high_mm, units, pretty);
  const std::string low = plain_length(band.low_mm, units, pretty);
  return low == high ? high : without_unit(low) + " to " + high;
}

std::string in_unit(rules::Unit unit, double value, Units units) {
  switch (unit) {
    case rules::Unit::None:
      return {};
    case rules::Unit::Length:
    case rules::Unit::Distance:
      return plain_length(value, units, true);
    case rules::Unit::Angle:
      return degrees(value);
    case rules::Unit::Share:
      return percent(value);
    case rules::Unit::HeatFlux:
      return heat_flux(value);
    case rules::Unit::Lux:
      return lux(value);
    case rules::Unit::Factor:
      return times(value);
    case rules::Unit::Mass:
      return mass(value, units);
  }
  return {};
}

std::string distance(double mm, Units units, Round round) {
  const double step_mm = distance_step_mm(units);
  const double steps =
      round == Round::Up ? std::ceil((mm - kSlack_mm) / step_mm) : std::round(mm / step_mm);
  return units == Units::Inch ? fixed(steps, 0) + " in" : mm_text(steps * step_mm);
}

std::string percent(double share) {
  if (share >= sight::kAllSeen) return "100 %";
  if (share > 0 && share < 0.01) return "less than 1 %";
  return fixed(std::min(99.0, std::round(share * 100)), 0) + " %";
}

std::string percent_apart(double share, double from) {
  constexpr int kMostDecimals = 4;
  std::string text = percent(share);
  for (int decimals = 1; text == percent(from) && decimals <= kMostDecimals; ++decimals) {
    const std::string finer = trimmed(share * 100, decimals) + " %";
    if (finer != trimmed(from * 100, decimals) + " %") text = finer;
  }
  return text;
}

std::string heat_flux(double kw_m2) { return fixed(kw_m2, 2) + " kW/m\u00B2"; }

std::string lux(double lx) { return fixed(lx, 0) + " lx"; }

std::string times(double factor) {
  constexpr double kMost = 100;
  if (factor >= kMost) return "more than 100 times";
  // Never up to a limit that it does not reach.
  constexpr double kHundredths = 100;
  return trimmed(std::floor(factor * kHundredths + 1e-6) / kHundredths, 2) + " times";
}

namespace {
std::string both(double metric, const char* unit, double pounds, Units units) {
  constexpr double kFine = 10;  // below it one decimal more
  const std::string si = fixed(metric, metric < kFine ? 1 : 0) + " " + unit;
  const std::string lb = fixed(pounds, pounds < kFine ? 1 : 0) + " lb";
  return units == Units::Inch ? lb + " (" + si + ")" : si + " (" + lb + ")";
}
}  // namespace

std::string mass(double kg, Units units) {
  return both(kg, "kg", shown_unit(Quantity::Mass, Unit::Inch).from_own(kg), units);
}

std::string force(double newtons, Units units) {
  constexpr double kPound_n = 4.4482216;
  return both(newtons, "N", newtons / kPound_n, units);
}

std::string temperature(double celsius, Units units, int metric_decimals) {
  const ShownUnit unit = shown_unit(Quantity::Temperature, unit_of(units));
  const int decimals = units == Units::Inch ? 0 : metric_decimals;
  return trimmed(unit.from_own(celsius), decimals) + " " + std::string(unit.name);
}

std::string speed(double m_s, Units units) {
  const ShownUnit unit = shown_unit(Quantity::Speed, unit_of(units));
  return trimmed(unit.from_own(m_s), units == Units::Inch ? 0 : 1) + " " + std::string(unit.name);
}

std::string quantity_words(double quantity, std::string_view unit, Units units) {
  if (unit == "l") {
    return units == Units::Inch ? trimmed(quantity / finish::kQuart_l, 2) + " qt"
                                : trimmed(quantity, 2) + " l";
  }
  std::string words = trimmed(quantity, 1);
  if (!unit.empty()) words += " " + std::string(unit) + (words == "1" ? "" : "s");
  return words;
}

std::string degrees(double deg) { return fixed(deg, 0) + "\u00B0"; }

std::optional<std::string> all_seen_from(const config::View& view, const evaluate::CookResult& cook,
                                         Units units) {
  const auto& at_mm = cook.full_view.standoff_mm;
  if (!at_mm) return {};
  std::string text = distance(*at_mm, units, Round::Up);
  // Both may round to the same inch, and "back to where you are" helps nobody.
  if (*at_mm > view.standoff_mm + 0.05 && text == distance(view.standoff_mm, units)) {
    text = distance(*at_mm + distance_step_mm(units), units, Round::Up);
  }
  return text;
}

std::string_view holds_words(config::Holds holds) {
  switch (holds) {
    case config::Holds::Doors:
      return "doors";
    case config::Holds::Drawers:
      return "drawers";
    case config::Holds::DrawerAndDoors:
      return "a drawer over doors";
    case config::Holds::Open:
      return "open";
    case config::Holds::Gas:
      return "the gas cylinder alone";
  }
  return "";
}

std::string_view steps_back(double mm) {
  constexpr double kStep_mm = 400;
  if (mm <= kStep_mm) return "one step back";
  if (mm <= 2 * kStep_mm) return "two steps back";
  return "moving back";
}

std::string plain_marks(std::string_view text) {
  struct Mark {
    std::string_view from, to;
    bool starts;  // a fraction's start: a space parts it from the whole number before it
  };
  constexpr Mark kMarks[] = {
      {"\u00BD", "1/2", true}, {"\u00BC", "1/4", true}, {"\u00BE", "3/4", true},
      {"\u215B", "1/8", true}, {"\u215C", "3/8", true}, {"\u215D", "5/8", true},
      {"\u215E", "7/8", true}, {"\u2044", "/", false},  {"\u2070", "0", true},
      {"\u00B9", "1", true},   {"\u00B2", "2", true},   {"\u00B3", "3", true},
      {"\u2074", "4", true},   {"\u2075", "5", true},   {"\u2076", "6", true},
      {"\u2077", "7", true},   {"\u2078", "8", true},   {"\u2079", "9", true},
      {"\u2080", "0", false},  {"\u2081", "1", false},  {"\u2082", "2", false},
      {"\u2083", "3", false},  {"\u2084", "4", false},  {"\u2085", "5", false},
      {"\u2086", "6", false},  {"\u2087", "7", false},  {"\u2088", "8", false},
      {"\u2089", "9", false},
  };
  std::string out;
  bool after_whole = false;  // the last character written was a plain digit
  while (!text.empty()) {
    const Mark* found = nullptr;
    for (const Mark& mark : kMarks) {
      if (text.starts_with(mark.from)) found = &mark;
    }
    if (found == nullptr) {
      after_whole = text[0] >= '0' && text[0] <= '9';
      out.push_back(text[0]);
      text.remove_prefix(1);
      continue;
    }
    if (found->starts && after_whole) out.push_back(' ');
    after_whole = false;
    out += found->to;
    text.remove_prefix(found->from.size());
  }
  return out;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

std::string lower_first(std::string text) {
  if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z') {
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  }
  return text;
}

}  // namespace hs::report
