#pragma once
// The report's `heat` and `light`.

#include "engine/base/json_writer.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"

namespace hs::report {

// `heat`: what the mouth emits, and what of it reaches each cook's face and hand. All at least.
void put_heat(JsonWriter& out, const config::Config& config, const evaluate::Evaluation& e);

// `light`: the lamp at the oven, null without one; lux on the dough counter and the landing.
void put_light(JsonWriter& out, const evaluate::Evaluation& e);

}  // namespace hs::report
