#include "engine/cuts/lines.h"

#include <algorithm>
#include <numeric>

namespace hs::cuts {
namespace {

// The stretches of a board that parts may come from. A defect narrower than the saw cut takes a
// whole cut all the same.
Bin bin_of(const BoardStock& stock, std::size_t index, std::int64_t kerf) {
  Bin bin;
  bin.stock = index;
  bin.cost = stock.cost;
  bin.count = stock.count.value_or(-1);
  std::vector<Blocked> blocked;
  for (const Blocked& bad : stock.blocked) {
    if (bad.from < bad.to) blocked.push_back(bad);
  }
  std::sort(blocked.begin(), blocked.end(), [](const Blocked& a, const Blocked& b) {
    return a.from != b.from ? a.from < b.from : a.to < b.to;
  });
  std::int64_t from = stock.trim;
  const std::int64_t end = stock.length - stock.trim;
  const auto add = [&](std::int64_t to) {
    if (to <= from) return;
    bin.rooms.push_back(to - from + kerf);
    bin.starts.push_back(from);
  };
  for (const Blocked& bad : blocked) {
    add(std::min(bad.from, end));
    from = std::max({from, bad.to, bad.from + kerf});
  }
  add(end);
  return bin;
}

}  // namespace

Lines lines_of(const BoardJob& job) {
  Lines lines;
  std::vector<std::int64_t> sizes = job.parts;
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  for (const std::int64_t length : sizes) {
    const std::int64_t size = length + job.kerf;
    if (lines.size.empty() || lines.size.back() != size) {
      lines.size.push_back(size);
      lines.demand.push_back(0);
    }
    ++lines.demand.back();
  }
  std::int64_t step = 0;
  for (std::size_t i = 0; i < job.stocks.size(); ++i) {
    Bin bin = bin_of(job.stocks[i], i, job.kerf);
    const std::int64_t longest =
        bin.rooms.empty() ? 0 : *std::max_element(bin.rooms.begin(), bin.rooms.end());
    // A board that holds no part at all is no board for this job.
    if (lines.size.empty() || longest < lines.size.back() || bin.count == 0) continue;
    step = std::gcd(step, bin.cost);
    lines.bins.push_back(std::move(bin));
  }
  lines.cost_step = std::max<std::int64_t>(step, 1);
  return lines;
}

Rest whole(const Lines& lines) {
  Rest rest{lines.demand, {}};
  for (const Bin& bin : lines.bins) rest.count.push_back(bin.count);
  return rest;
}

std::int64_t cost_of(const Lines& lines, const std::vector<Fill>& fills) {
  std::int64_t cost = 0;
  for (const Fill& fill : fills) cost += lines.bins[static_cast<std::size_t>(fill.bin)].cost;
  return cost;
}

void remove(Rest& rest, const Fill& fill) {
  for (const Take& take : fill.takes)
    rest.demand[static_cast<std::size_t>(take.type)] -= take.count;
  int& count = rest.count[static_cast<std::size_t>(fill.bin)];
  if (count > 0) --count;
}

bool is_empty(const Rest& rest) {
  return std::all_of(rest.demand.begin(), rest.demand.end(), [](int left) { return left == 0; });
}

Place cheapest_place(const Lines& lines, std::int64_t size) {
  Place best;
  std::int64_t cost = 0;
  for (std::size_t b = 0; b < lines.bins.size(); ++b) {
    const Bin& bin = lines.bins[b];
    if (bin.count >= 0 || (best.bin >= 0 && bin.cost >= cost)) continue;
    for (std::size_t r = 0; r < bin.rooms.size(); ++r) {
      if (bin.rooms[r] < size) continue;
      best = {static_cast<int>(b), static_cast<int>(r)};
      cost = bin.cost;
      break;
    }
  }
  return best;
}

std::int64_t rounded_up(const Lines& lines, std::int64_t cost) {
  const std::int64_t step = lines.cost_step;
  auto steps = static_cast<std::size_t>((std::max<std::int64_t>(cost, 0) + step - 1) / step);
  while (steps < lines.reachable.size() && !lines.reachable[steps]) ++steps;
  return static_cast<std::int64_t>(steps) * step;
}

void list_costs(Lines& lines, std::int64_t most) {
  constexpr std::int64_t kMostListed = 1'000'000;
  if (most / lines.cost_step > kMostListed) return;
  lines.reachable.assign(static_cast<std::size_t>(most / lines.cost_step) + 1, false);
  lines.reachable[0] = true;
  for (const Bin& bin : lines.bins) {
    const auto cost = static_cast<std::size_t>(bin.cost / lines.cost_step);
    if (cost == 0) continue;
    for (std::size_t n = cost; n < lines.reachable.size(); ++n) {
      if (lines.reachable[n - cost]) lines.reachable[n] = true;
    }
  }
}

std::vector<Board> boards_of(const BoardJob& job, const Lines& lines,
                             const std::vector<Fill>& fills) {
  // The parts of each size, first written first.
  std::vector<std::vector<std::size_t>> waiting(lines.size.size());
  for (std::size_t i = job.parts.size(); i-- > 0;) {
    const std::int64_t size = job.parts[i] + job.kerf;
    const auto at = std::lower_bound(lines.size.begin(), lines.size.end(), size, std::greater<>());
    waiting[static_cast<std::size_t>(at - lines.size.begin())].push_back(i);
  }
  std::vector<Board> boards;
  for (const Fill& fill : fills) {
    const Bin& bin = lines.bins[static_cast<std::size_t>(fill.bin)];
    Board board{bin.stock, {}};
    for (std::size_t r = 0; r < bin.rooms.size(); ++r) {
      std::int64_t at = bin.starts[r];
      // Longest first: a slip at a long piece still leaves room for the short ones.
      std::vector<Take> takes;
      for (const Take& take : fill.takes) {
        if (static_cast<std::size_t>(take.room) == r && take.count > 0) takes.push_back(take);
      }
      std::sort(takes.begin(), takes.end(),
                [](const Take& a, const Take& b) { return a.type < b.type; });
      for (const Take& take : takes) {
        for (int n = 0; n < take.count; ++n) {
          std::vector<std::size_t>& parts = waiting[static_cast<std::size_t>(take.type)];
          board.pieces.push_back({parts.back(), at});
          parts.pop_back();
          at += lines.size[static_cast<std::size_t>(take.type)];
        }
      }
    }
    boards.push_back(std::move(board));
  }
  return boards;
}

}  // namespace hs::cuts
