#pragma once
// The board job as the search sees it: equal lengths together, the saw cut inside every length.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/cuts/boards.h"

namespace hs::cuts {

// A kind of board. A room is a stretch without a defect, one cut longer than it is, so that pieces
// fit when their sizes (length and one cut) add up to no more than the room.
struct Bin {
  std::size_t stock = 0;
  std::int64_t cost = 0;
  int count = -1;                    // -1: as many as it takes
  std::vector<std::int64_t> rooms;   // at least one
  std::vector<std::int64_t> starts;  // of each room along the board
};

struct Lines {
  std::vector<std::int64_t> size;  // distinct, longest first
  std::vector<int> demand;         // of each size, at least 1
  std::vector<Bin> bins;
  std::int64_t cost_step = 1;  // every plan's cost is a multiple of it
  // [n]: some number of boards costs n steps together. Empty: too many to list.
  std::vector<bool> reachable;
};

// How one board is filled.
struct Take {
  int type = 0, count = 0, room = 0;
};
struct Fill {
  int bin = 0;
  std::vector<Take> takes;
};

// What is still to be cut and what there still is.
struct Rest {
  std::vector<int> demand;
  std::vector<int> count;  // of each bin; -1: as many as it takes
  bool operator==(const Rest&) const = default;
};

// Work done, in units of about a nanosecond.
struct Meter {
  std::int64_t work = 0;
};
inline constexpr std::int64_t kWorkPerStep = 1000;

Lines lines_of(const BoardJob& job);
Rest whole(const Lines& lines);
std::int64_t cost_of(const Lines& lines, const std::vector<Fill>& fills);
// Takes the fill's pieces and its board out of what is left.
void remove(Rest& rest, const Fill& fill);
bool is_empty(const Rest& rest);
// The cheapest bin without a count that holds the size in its first room that does.
struct Place {
  int bin = -1, room = 0;
};
Place cheapest_place(const Lines& lines, std::int64_t size);
// Lists the costs that boards can add up to, as far as `most`.
void list_costs(Lines& lines, std::int64_t most);
// The next cost at or above `cost` that boards can add up to.
std::int64_t rounded_up(const Lines& lines, std::int64_t cost);
// Pieces with their places; fills must take every part exactly once.
std::vector<Board> boards_of(const BoardJob& job, const Lines& lines,
                             const std::vector<Fill>& fills);

}  // namespace hs::cuts
