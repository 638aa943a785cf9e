#include "engine/cuts/bounds.h"

#include <algorithm>
#include <cstddef>

namespace hs::cuts {
namespace {

std::int64_t ceil_div(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

// Sizes up to `cut` alone count by length; those that leave less than `cut` fill a board.
std::int64_t split_bound(const Lines& lines, std::int64_t room, std::int64_t cut) {
  std::int64_t alone = 0, pairs = 0, pair_size = 0, small = 0;
  for (std::size_t i = 0; i < lines.size.size(); ++i) {
    const std::int64_t size = lines.size[i], count = lines.demand[i];
    if (size > room - cut) {
      alone += count;
    } else if (2 * size > room) {
      pairs += count;
      pair_size += size * count;
    } else if (size >= cut) {
      small += size * count;
    }
  }
  const std::int64_t over = small - (pairs * room - pair_size);
  return alone + pairs + std::max<std::int64_t>(0, ceil_div(std::max<std::int64_t>(over, 0), room));
}

// Each size counts for floor((k + 1) size / room) k-ths of a board, or exactly its share where
// (k + 1) size / room is whole.
std::int64_t kth_bound(const Lines& lines, std::int64_t room, std::int64_t k) {
  // In units of 1 / (k room), so that all stays whole.
  std::int64_t sum = 0, whole = 0;
  for (std::size_t i = 0; i < lines.size.size(); ++i) {
    const std::int64_t scaled = (k + 1) * lines.size[i];
    const std::int64_t value = scaled % room == 0 ? k * lines.size[i] : scaled / room * room;
    const std::int64_t total = value * lines.demand[i];
    // Whole boards and their rest apart: the sum of large rooms stays in range.
    whole += total / (k * room);
    sum += total % (k * room);
    whole += sum / (k * room);
    sum %= k * room;
  }
  return whole + (sum > 0 ? 1 : 0);
}

}  // namespace

std::int64_t material_bound(const Lines& lines) {
  std::int64_t length = 0;
  for (std::size_t i = 0; i < lines.size.size(); ++i) length += lines.size[i] * lines.demand[i];
  // The best price a unit: cost / room as small as possible among boards without a count, after
  // counted boards have taken what they can where they are cheaper.
  std::int64_t cost = 0, room = 0;
  const auto room_of = [](const Bin& bin) {
    std::int64_t sum = 0;
    for (const std::int64_t r : bin.rooms) sum += r;
    return sum;
  };
  for (const Bin& bin : lines.bins) {
    if (bin.count >= 0) continue;
    const std::int64_t own = room_of(bin);
    if (room == 0 || bin.cost * room < cost * own) {
      cost = bin.cost;
      room = own;
    }
  }
  if (room == 0) return 0;
  // Counted boards are taken as if they were free: still a bound.
  for (const Bin& bin : lines.bins) {
    if (bin.count > 0) length -= std::min<std::int64_t>(length, room_of(bin) * bin.count);
  }
  const std::int64_t whole = length / room, over = length % room;
  // cost x over / room in whole numbers; both are below 2^31.
  return rounded_up(lines, whole * cost + ceil_div(over * cost, room));
}

std::int64_t rounding_bound(const Lines& lines) {
  if (lines.bins.size() != 1 || lines.bins[0].rooms.size() != 1 || lines.bins[0].count >= 0) {
    return 0;
  }
  const std::int64_t room = lines.bins[0].rooms[0];
  std::int64_t boards = split_bound(lines, room, 0);
  for (const std::int64_t size : lines.size) {
    if (2 * size <= room) boards = std::max(boards, split_bound(lines, room, size));
  }
  for (std::int64_t k = 1; k <= 20; ++k) boards = std::max(boards, kth_bound(lines, room, k));
  return boards * lines.bins[0].cost;
}

}  // namespace hs::cuts
