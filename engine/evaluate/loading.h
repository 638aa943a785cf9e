#pragma once
// What is built under its loads: worked out of the pieces, and judged.

#include "engine/evaluate/build.h"
#include "engine/evaluate/room_findings.h"

namespace hs::evaluate {

// Of these pieces, for the heights in use.
loads::Loads loads_of_build(const config::Config& config, const Evaluation& e,
                            const frame::Frame& frame, std::span<const frame::Piece> pieces);

// Whatever loads_of_build() reads beside the pieces, into the digest of a build.
std::uint64_t loads_digest(const config::Config& config, const Evaluation& e, std::uint64_t before);

void add_load_findings(Findings& out, const config::Config& config, const loads::Loads& loads);

}  // namespace hs::evaluate
