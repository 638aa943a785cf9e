#pragma once
// Whole sheets of metal for the tops' blanks, where the stock list has some: what the cost counts.
// How a fabricator lays the blanks out is the fabricator's own.

#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/cutting.h"
#include "engine/evaluate/metal_order.h"

namespace hs::evaluate {

// Room between two blanks and along a sheet's edges: our judgement.
inline constexpr double kBlankApart_mm = 5;

// One group for each thickness, planned by the search for sheets of wood; brushing, which is a
// blank's width, lies along each sheet's length. Rows that are there come first. Where the list has
// none to buy, one that is there is bought again, at its price if it has one. Blanks that no sheet
// of the list holds are in `too_large`; no row for metal: no groups.
std::vector<CutGroup> metal_groups(const config::Config& config, const MetalSheets& metal);

// Rows for metal that fit no top, with why, after the wood's.
void add_unused_metal(const config::Config& config, const MetalSheets& metal, Cutting& cutting);

}  // namespace hs::evaluate
