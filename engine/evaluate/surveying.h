#pragma once
// The survey's part of evaluate(): a build-stage result, not worked out while a finger drags.

#include <cstddef>
#include <string_view>

#include "engine/evaluate/evaluate.h"
#include "engine/frame/frame.h"

namespace hs::evaluate {

// "point 4": how a finding names the point whose first reading has this index.
std::string_view point_name(std::size_t reading);

// Works out evaluation.survey and adds its findings, in order of harm with the rest. Nothing where
// no point is there. Needs the heights in use; may be called once.
void add_survey(const config::Config& config, Evaluation& evaluation);

// Where the cabinets of a base that is cut to the ground stand: its top, and the ground under it.
void stand_on(const survey::Base& base, frame::Asked& asked);

// The base's panels in the survey frame, each along the outer face of one of the frame's own
// boards: fronts, ends, one between two counters, backs. None under a masonry oven: it stands on
// its own footing.
void base_panels(const config::Config& config, const Heights& used, SurveyResult& out);

}  // namespace hs::evaluate
