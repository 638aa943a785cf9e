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

// The oven cook whose hands set the ceiling: a young child's only where nobody else is there.
std::optional<std::size_t> lowest_hands(const config::Config& config,
                                        const evaluate::Evaluation& evaluation);

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
