#pragma once
// The parts of cutting_of(), for its own files.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

#include "engine/evaluate/cutting.h"

namespace hs::evaluate {

// Does this stock hold the item by itself? And does any that is bought as needed?
bool holds(const config::Config& config, const CutGroup& group, const CutStock& stock,
           const CutItem& item);
bool held(const config::Config& config, const CutGroup& group, const CutItem& item);

// The plan for some items of one group, in as many goes as the caller likes; how it is split
// changes nothing. The group outlives it. Every item must be held.
class GroupRun {
 public:
  virtual ~GroupRun() = default;
  // Works on for about so many steps; false: nothing is left to try, or its own steps are used.
  virtual bool advance(std::int64_t steps) = 0;
  // Writes the best plan so far into the group: its sticks, value and bound. Once, at the end.
  virtual void finish() = 0;
};
std::unique_ptr<GroupRun> board_run(const config::Config& config, CutGroup& group,
                                    std::vector<std::size_t> items, std::int64_t steps);
std::unique_ptr<GroupRun> sheet_run(const config::Config& config, CutGroup& group,
                                    std::vector<std::size_t> items, std::int64_t steps);

// Whole tenths of a millimetre, as the searches count.
inline constexpr double kCutQuanta = 10;
std::int64_t cut_quanta(double mm);

// Is every stock of the group that is bought priced?
bool all_priced(const CutGroup& group);

}  // namespace hs::evaluate
