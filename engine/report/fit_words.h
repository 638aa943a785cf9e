#pragma once
// One place of the fit map in words.

#include <string>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

// "Ana", "Ana and Ben", "Ana, Ben and Cleo".
std::string names_of(const config::Config& config, const std::vector<std::size_t>& cooks);

// A few short lines: floor and distance, who sees how much, for whose hands the floor is too high,
// for whose face it is too hot.
// `spot` is evaluate::fit_at() of that place. Empty where nobody works at the oven.
std::vector<std::string> fit_words(const config::Config& config, const evaluate::FitSpot& spot,
                                   double oven_floor_mm, double standoff_mm, Units units);

}  // namespace hs::report
