#pragma once
// The build stage, after a finger has let go: what is built for the heights in use.

#include <cstdint>
#include <memory>

#include "engine/evaluate/evaluate.h"
#include "engine/frame/frame.h"
#include "engine/loads/loads.h"
#include "engine/parts/parts.h"

namespace hs::evaluate {

struct Build {
  std::uint64_t digest = 0;  // of all that it was made from
  frame::Frame frame;
  parts::List parts;  // of the frame's pieces
  loads::Loads loads;
};

// For an evaluation without a build: cabinets for the heights in use, and what there is to say of
// them among the findings. What was built before is taken over where its digest is the same.
void add_build(const config::Config& config, Evaluation& evaluation,
               const std::shared_ptr<const Build>& before = {});

// The dragged path: what was built before stays as it was, with what there was to say of it.
void keep_build(Evaluation& evaluation, const Evaluation& before);

// evaluate() and the build stage: all that a report holds.
Evaluation evaluate_all(const config::Config& config, Marks marks = Marks::Exact);

}  // namespace hs::evaluate
