#pragma once
// The parts of cutting_of(), for its own files.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/evaluate/cutting.h"

namespace hs::evaluate {

// Does this stock hold the item by itself? And does any that is bought as needed?
bool holds(const config::Config& config, const CutGroup& group, const CutStock& stock,
           const CutItem& item);
bool held(const config::Config& config, const CutGroup& group, const CutItem& item);

// The plan for these items of the group: its sticks, value and bound. Every item must be held.
void plan_board_group(const config::Config& config, CutGroup& group,
                      const std::vector<std::size_t>& items, std::int64_t steps);
void plan_sheet_group(const config::Config& config, CutGroup& group,
                      const std::vector<std::size_t>& items, std::int64_t steps);

// Whole tenths of a millimetre, as the searches count.
inline constexpr double kCutQuanta = 10;
std::int64_t cut_quanta(double mm);

// Is every stock of the group that is bought priced?
bool all_priced(const CutGroup& group);

}  // namespace hs::evaluate
