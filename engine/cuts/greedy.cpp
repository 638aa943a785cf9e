#include "engine/cuts/greedy.h"

#include <algorithm>
#include <cstddef>

namespace hs::cuts {
namespace {

constexpr std::int64_t kMostWork = 500'000'000;  // for one plan by worth

const Bin& bin_at(const Lines& lines, int bin) { return lines.bins[static_cast<std::size_t>(bin)]; }

struct Open {
  Fill fill;
  std::vector<std::int64_t> left;  // in each room
};

Open opened(const Lines& lines, int bin) { return {{bin, {}}, bin_at(lines, bin).rooms}; }

void put(Open& board, int type, int room, std::int64_t size) {
  board.left[static_cast<std::size_t>(room)] -= size;
  for (Take& take : board.fill.takes) {
    if (take.type != type || take.room != room) continue;
    ++take.count;
    return;
  }
  board.fill.takes.push_back({type, 1, room});
}

}  // namespace

void cheapen(const Lines& lines, std::vector<Fill>& fills) {
  for (Fill& fill : fills) {
    const Bin& now = bin_at(lines, fill.bin);
    if (now.count >= 0 || now.rooms.size() > 1) continue;
    std::int64_t need = 0;
    for (const Take& take : fill.takes) {
      need += take.count * lines.size[static_cast<std::size_t>(take.type)];
    }
    const Place place = cheapest_place(lines, need);
    if (place.bin < 0 || bin_at(lines, place.bin).cost >= now.cost) continue;
    fill.bin = place.bin;
    for (Take& take : fill.takes) take.room = place.room;
  }
}

void use_offcuts(const Lines& lines, std::vector<Fill>& fills) {
  Rest left = whole(lines);
  for (const Fill& fill : fills) {
    int& count = left.count[static_cast<std::size_t>(fill.bin)];
    if (count > 0) --count;
  }
  const auto length_of = [&](const Fill& fill) {
    std::int64_t sum = 0;
    for (const Take& take : fill.takes) {
      sum += take.count * lines.size[static_cast<std::size_t>(take.type)];
    }
    return sum;
  };
  for (std::size_t b = 0; b < lines.bins.size(); ++b) {
    if (lines.bins[b].cost != 0) continue;
    for (; left.count[b] > 0; --left.count[b]) {
      std::size_t from = fills.size();
      for (std::size_t f = 0; f < fills.size(); ++f) {
        if (bin_at(lines, fills[f].bin).cost == 0 || fills[f].takes.empty()) continue;
        if (from == fills.size() || length_of(fills[f]) < length_of(fills[from])) from = f;
      }
      if (from == fills.size()) return;
      Rest parts{std::vector<int>(lines.size.size(), 0), left.count};
      for (const Take& take : fills[from].takes) {
        parts.demand[static_cast<std::size_t>(take.type)] += take.count;
      }
      Meter meter;
      const Worth moved =
          worth_most(lines, parts, lines.size, static_cast<int>(b), Care::Quick, meter);
      if (moved.value <= 0) break;
      for (const Take& take : moved.fill.takes) {
        int count = take.count;
        for (Take& own : fills[from].takes) {
          if (own.type != take.type) continue;
          const int taken = std::min(count, own.count);
          own.count -= taken;
          count -= taken;
        }
      }
      fills.push_back(moved.fill);
    }
  }
}

std::vector<Fill> longest_first(const Lines& lines, Rest rest, int bin, Where where, Meter& meter) {
  std::vector<Open> boards;
  // What costs nothing is opened from the start, shortest first, so that it is used first.
  std::vector<int> free;
  for (std::size_t b = 0; b < lines.bins.size(); ++b) {
    if (lines.bins[b].cost == 0) free.push_back(static_cast<int>(b));
  }
  std::stable_sort(free.begin(), free.end(), [&](int a, int b) {
    return bin_at(lines, a).rooms.front() < bin_at(lines, b).rooms.front();
  });
  for (const int b : free) {
    for (int n = 0; n < rest.count[static_cast<std::size_t>(b)]; ++n) {
      boards.push_back(opened(lines, b));
    }
  }
  for (std::size_t type = 0; type < rest.demand.size(); ++type) {
    const std::int64_t size = lines.size[type];
    // Where a piece of this size did not fit, the next one does not either.
    std::size_t from = 0;
    for (int n = 0; n < rest.demand[type]; ++n) {
      std::size_t chosen = boards.size();
      int room = 0;
      std::int64_t tightest = 0;
      for (std::size_t b = from; b < boards.size(); ++b) {
        ++meter.work;
        for (std::size_t r = 0; r < boards[b].left.size(); ++r) {
          const std::int64_t after = boards[b].left[r] - size;
          if (after < 0 || (chosen < boards.size() && after >= tightest)) continue;
          chosen = b;
          room = static_cast<int>(r);
          tightest = after;
        }
        if (chosen < boards.size() && where == Where::First) break;
      }
      if (where == Where::First) from = chosen;
      if (chosen == boards.size()) {
        Place place = cheapest_place(lines, size);
        const std::vector<std::int64_t>& rooms = bin_at(lines, bin).rooms;
        for (std::size_t r = rooms.size(); r-- > 0;) {
          if (rooms[r] >= size) place = {bin, static_cast<int>(r)};
        }
        boards.push_back(opened(lines, place.bin));
        room = place.room;
      }
      put(boards[chosen], static_cast<int>(type), room, size);
    }
  }
  std::vector<Fill> fills;
  for (Open& board : boards) {
    if (!board.fill.takes.empty()) fills.push_back(std::move(board.fill));
  }
  cheapen(lines, fills);
  return fills;
}

Worth worth_most(const Lines& lines, const Rest& rest, const std::vector<std::int64_t>& value,
                 int bin, Care care, Meter& meter) {
  Worth worth{{bin, {}}, 0, true};
  Knapsack sack{lines.size, value, rest.demand};
  const std::vector<std::int64_t>& rooms = bin_at(lines, bin).rooms;
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    const auto filling = best_filling(sack, rooms[r], care, meter);
    if (!filling) return {{bin, {}}, -1, false};
    worth.exact = worth.exact && filling->exact;
    worth.value += filling->value;
    for (std::size_t i = 0; i < sack.most.size(); ++i) {
      if (filling->count[i] == 0) continue;
      worth.fill.takes.push_back({static_cast<int>(i), filling->count[i], static_cast<int>(r)});
      sack.most[i] -= filling->count[i];
    }
  }
  return worth;
}

std::int64_t room_alone(const Lines& lines, const Rest& rest,
                        const std::vector<std::int64_t>& value, std::int64_t room, Meter& meter) {
  const auto filling = best_filling({lines.size, value, rest.demand}, room, Care::Exact, meter);
  return filling ? filling->value : -1;
}

std::vector<Fill> best_worth(const Lines& lines, Rest rest, const std::vector<std::int64_t>& value,
                             Meter& meter) {
  std::vector<Fill> fills;
  const std::int64_t end = meter.work + kMostWork;
  while (!is_empty(rest)) {
    if (meter.work > end) return {};
    Worth best;
    double best_rate = 0;
    for (std::size_t b = 0; b < lines.bins.size(); ++b) {
      if (rest.count[b] == 0) continue;
      Worth worth = worth_most(lines, rest, value, static_cast<int>(b), Care::Quick, meter);
      if (worth.value <= 0) continue;
      const std::int64_t cost = lines.bins[b].cost;
      // What costs nothing comes before all else.
      const double rate = cost == 0 ? 1e18 * static_cast<double>(worth.value)
                                    : static_cast<double>(worth.value) / static_cast<double>(cost);
      if (rate <= best_rate) continue;
      best = std::move(worth);
      best_rate = rate;
    }
    if (best.value <= 0) return {};
    // The same filling again, as long as all of it is still wanted.
    const auto bin = static_cast<std::size_t>(best.fill.bin);
    const auto again = [&] {
      if (rest.count[bin] == 0) return false;
      for (const Take& take : best.fill.takes) {
        int wanted = 0;
        for (const Take& other : best.fill.takes) {
          if (other.type == take.type) wanted += other.count;
        }
        if (rest.demand[static_cast<std::size_t>(take.type)] < wanted) return false;
      }
      return true;
    };
    do {
      remove(rest, best.fill);
      fills.push_back(best.fill);
    } while (again());
  }
  cheapen(lines, fills);
  return fills;
}

}  // namespace hs::cuts
