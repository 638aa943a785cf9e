#pragma once
// The two heights of the first screen, and what is shown of them elsewhere in the same words.

#include <optional>
#include <string>
#include <string_view>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

inline constexpr std::string_view kNoHeight = "\u2014";  // in place of a height

// Highest that a builder may mark the oven's base: the hands' ceiling with what no hand can tell,
// the cover's with nothing. nullopt: nothing limits it.
std::optional<double> highest_base_mm(const config::Config& config,
                                      const evaluate::Evaluation& evaluation);

// The heights as a builder marks them at this step; what is over the ceiling goes one step down.
// The oven's floor follows from its base, the riser from both.
evaluate::Heights marked_heights(const config::Config& config,
                                 const evaluate::Evaluation& evaluation, double step_mm);

// Which heights in use were given and are not the recommended ones. On one level a given height is
// both.
struct Given {
  bool oven_base = false, counter = false;
};
Given given_heights(const config::Station& station);

Headline oven_headline(const config::Config& config, const evaluate::Evaluation& evaluation,
                       Units units);
Headline dough_headline(const config::Config& config, const evaluate::Evaluation& evaluation,
                        Units units);

}  // namespace hs::report
