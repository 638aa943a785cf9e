#pragma once
// The build stage in the report: frame, parts, hardware. Null, all three, before that stage.

#include "engine/base/json_writer.h"
#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {
struct Build;
}

namespace hs::report {

void put_build(JsonWriter& out, const evaluate::Build& build);
void put_build_stage(JsonWriter& out, const evaluate::Evaluation& evaluation);

}  // namespace hs::report
