#pragma once
// What each cook gains and loses as one height changes, for plots and their tables.
//
// Not part of Evaluation: computed only when somebody looks.

#include <cstddef>
#include <optional>
#include <vector>

#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

struct Curve {
  std::size_t cook = 0;
  std::vector<double> values;     // one for each height
  std::optional<double> at_used;  // at the height in use
  Band good;                      // heights at which this cook loses nothing
  // Highest that this cook's hands allow, for the oven's heights.
  std::optional<double> ceiling_mm;
};

struct Curves {
  // Whole multiples of step_mm (> 0), from below every good height to above, rising.
  std::vector<double> heights_mm;
  std::vector<Curve> cooks;  // those concerned, in their order
  std::optional<Band> good;  // in which nobody loses, around the recommended height
  std::optional<double> used_mm;
};

// How far outside what suits this cook's hands each height lies, mm; 0 within. The household search
// weighs its square.
// Dough: over counter heights, against the dough band. A young child works at its own table and has
// no curve. Oven: over heights of the oven's base, against where the hand holds a peel easily.
Curves dough_hands(const config::Config& config, const Evaluation& evaluation, double step_mm);
Curves oven_hands(const config::Config& config, const Evaluation& evaluation, double step_mm);

// Share (0..1, within 0.0005) of the pizza that each oven cook sees upright from the watching
// distance, over heights of the oven's base. `good` of a cook: from the lowest base of the curve
// that shows the whole pizza up to this cook's ceiling; empty (high below low) where there is none.
Curves seen_shares(const config::Config& config, const Evaluation& evaluation, double step_mm);

}  // namespace hs::evaluate
