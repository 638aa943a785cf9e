#include "engine/report/ticks.h"

#include <cmath>

#include "engine/base/number_text.h"

namespace hs::report {

double tick_step(double low_mm, double high_mm, double length, double least, Units units) {
  const double base_mm = units == Units::Inch ? 25.4 : 50.0;
  constexpr double kMultiples[] = {1, 2, 4, 6, 12, 24};
  for (const double multiple : kMultiples) {
    if (length * base_mm * multiple / (high_mm - low_mm) >= least) return base_mm * multiple;
  }
  return base_mm * 48;
}

std::vector<double> ticks(double low_mm, double high_mm, double step_mm) {
  constexpr double kSlack = 1e-9;  // an end that is a multiple is a tick
  std::vector<double> places;
  for (double n = std::ceil(low_mm / step_mm - kSlack); n <= high_mm / step_mm + kSlack; n += 1) {
    places.push_back(n * step_mm);
  }
  return places;
}

std::string tick_text(double mm, Units units) {
  return units == Units::Inch ? trimmed(mm / 25.4, 1) : trimmed(mm, 0);
}

std::string_view unit_text(Units units) { return units == Units::Inch ? "in" : "mm"; }

}  // namespace hs::report
