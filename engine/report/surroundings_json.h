#pragma once
// Report keys about what stands around the oven: "zones" (free room round each hot body), "room"
// (room to work, in plan), "weather" and "cylinder_vents".

#include "engine/base/json_writer.h"
#include "engine/evaluate/evaluate.h"

namespace hs::report {

void put_surroundings(JsonWriter& out, const evaluate::Evaluation& evaluation);

}  // namespace hs::report
