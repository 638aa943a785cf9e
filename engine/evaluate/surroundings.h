#pragma once
// What stands around the oven, room to work, weather: worked out once, and what it means.

#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/room_findings.h"

namespace hs::evaluate {

// Reads the heights in use and the cooks of `evaluation`.
Surroundings surroundings_of(const config::Config& config, const Evaluation& evaluation);

void add_surroundings(Findings& out, const config::Config& config, const Evaluation& evaluation);
void add_weather(Findings& out, const config::Config& config, const Evaluation& evaluation);

}  // namespace hs::evaluate
