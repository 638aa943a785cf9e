#pragma once
// "For what share of adults would this work?": the survey's people, a few dozen at a time.

#include <cstdint>
#include <span>

#include "engine/cook/body.h"

namespace hs::cook {

// Some 32 men or 16 women of the US Army survey 2012 (ANSUR II) who are alike in stature and elbow
// height, as their means: bare feet, mm. Cells of nearly equal count, made by halving each group
// seven times at the median (tests/reference/survey_tables.py).
struct AdultCell {
  std::int16_t stature_mm, eye_mm, elbow_mm, shoulder_mm;  // elbow: radiale
  std::uint16_t count;
  bool survey_men;
};

// 256 cells, 4082 men and 1986 women, men first, each by stature.
std::span<const AdultCell> adult_cells();

// Share (0..1) of adults that so many of the survey's men and of its women make up, were men and
// women half the population each (our judgement; the survey has two men for each woman).
double adult_share(int men, int women);

// This cell's person in shoes, with eye, elbow and shoulder as measured.
Body body_of(const AdultCell& cell, double shoe_mm);

// Share (0..1) of adults in shoes of `shoe_mm` for whom works(const Body&) holds. The cells differ
// from the raw survey by at most 0.03 of either sex, 0.006 on average (bands of elbow height with a
// least eye height, tests/reference/check_survey.py). A soldier sample: fit adults of 17 to 58
// years.
template <typename F>
double share_of_adults(F works, double shoe_mm) {
  int men = 0, women = 0;
  for (const AdultCell& cell : adult_cells()) {
    if (works(body_of(cell, shoe_mm))) (cell.survey_men ? men : women) += cell.count;
  }
  return adult_share(men, women);
}

}  // namespace hs::cook
