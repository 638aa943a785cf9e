#pragma once
// Quick plans: longest first into the first or the tightest board, and board by board with the
// filling that is worth most.

#include <cstdint>
#include <vector>

#include "engine/cuts/knapsack.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

enum class Where : std::uint8_t { First, Tightest };

// Longest part first, into the first open board that takes it, or into the one it leaves the least
// room in. Offcuts and other counted boards are opened first where they are free; then boards of
// `bin`, or of the cheapest bin that holds a part where `bin` does not. Afterwards each board
// becomes the cheapest one that holds the same pieces. Fills the whole rest.
std::vector<Fill> longest_first(const Lines& lines, Rest rest, int bin, Where where, Meter& meter);

// Board by board: of every bin that is left the filling worth most by `value`, then the board that
// gives most value for its cost. Empty where a filling could not be found, or not soon enough.
std::vector<Fill> best_worth(const Lines& lines, Rest rest, const std::vector<std::int64_t>& value,
                             Meter& meter);

// The filling of one bin worth most, room after room, from what is left; value -1: not found.
struct Worth {
  Fill fill;
  std::int64_t value = -1;
  bool exact = true;  // of one room; rooms are filled one after another
};
Worth worth_most(const Lines& lines, const Rest& rest, const std::vector<std::int64_t>& value,
                 int bin, Care care, Meter& meter);

// What one room alone is worth at most; -1: not found.
std::int64_t room_alone(const Lines& lines, const Rest& rest,
                        const std::vector<std::int64_t>& value, std::int64_t room, Meter& meter);

// What is free and unused takes the parts it can from the bought board that is the least full, as
// much length as fits: the offcuts go first, and what is left of bought boards is longer.
void use_offcuts(const Lines& lines, std::vector<Fill>& fills);

// Each board becomes the cheapest uncounted one that holds the same pieces.
void cheapen(const Lines& lines, std::vector<Fill>& fills);

}  // namespace hs::cuts
