#pragma once
// Round places along an axis, in the person's unit.

#include <string>
#include <vector>

#include "engine/report/summary.h"

namespace hs::report {

// Distance between ticks, mm: the least of 1, 2, 4, 6, 12, 24 or 48 inches, or of as many times 50
// mm, that lies `least` apart where the axis from low to high is `length` long (both in the
// drawing's own measure).
double tick_step(double low_mm, double high_mm, double length, double least, Units units);

// The multiples of the step from low to high.
std::vector<double> ticks(double low_mm, double high_mm, double step_mm);

// "36", "900": without its unit, which the axis says once.
std::string tick_text(double mm, Units units);
std::string_view unit_text(Units units);

}  // namespace hs::report
