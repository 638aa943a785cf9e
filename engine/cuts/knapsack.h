#pragma once
// The most valuable filling of one room: whole numbers, each size at most so often, exact.

#include <cstdint>
#include <optional>
#include <vector>

#include "engine/cuts/lines.h"

namespace hs::cuts {

struct Knapsack {
  std::vector<std::int64_t> size;
  std::vector<std::int64_t> value;  // at least 0; a filling's sum stays below 2^62
  std::vector<int> most;            // of each
};

struct Filling {
  std::int64_t value = 0;
  std::vector<int> count;
  bool exact = true;  // false: there may be better ones
};

enum class Care : std::uint8_t {
  Quick,  // a good filling, the best where that is soon known
  Exact,  // the best one, if at all
};

// A filling of `room`. Tree search first, a table where that takes too long; nothing where the
// table would be too large as well.
std::optional<Filling> best_filling(const Knapsack& sack, std::int64_t room, Care care,
                                    Meter& meter);

}  // namespace hs::cuts
