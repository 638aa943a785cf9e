#include "engine/cuts/knapsack.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace hs::cuts {
namespace {

constexpr std::int64_t kMostTableCells = 200'000'000;
constexpr std::int64_t kMostNodes = 20'000'000;

struct Kind {
  std::int64_t size = 0, value = 0;
  int most = 0;
  std::size_t index = 0;
  double per_size = 0;
};

// What is worth taking, best value for its size first; ties to the longer, then to the first.
std::vector<Kind> kinds_of(const Knapsack& sack, std::int64_t room) {
  std::vector<Kind> kinds;
  for (std::size_t i = 0; i < sack.size.size(); ++i) {
    const std::int64_t size = sack.size[i];
    const auto most = static_cast<int>(std::min<std::int64_t>(sack.most[i], room / size));
    if (most <= 0 || sack.value[i] <= 0) continue;
    kinds.push_back({size, sack.value[i], most, i,
                     static_cast<double>(sack.value[i]) / static_cast<double>(size)});
  }
  std::sort(kinds.begin(), kinds.end(), [](const Kind& a, const Kind& b) {
    if (a.per_size != b.per_size) return a.per_size > b.per_size;
    return a.size != b.size ? a.size > b.size : a.index < b.index;
  });
  return kinds;
}

// Depth first: as many as fit of the best kind, then fewer. False when `nodes` were not enough.
bool search_tree(const std::vector<Kind>& kinds, std::int64_t room, std::int64_t nodes,
                 std::int64_t& best, std::vector<int>& best_count, Meter& meter) {
  const std::size_t n = kinds.size();
  std::vector<int> count(n, 0);
  std::vector<std::int64_t> shortest(n + 1, room + 1);  // from each kind on
  for (std::size_t i = n; i-- > 0;) shortest[i] = std::min(shortest[i + 1], kinds[i].size);
  std::int64_t value = 0, left = room, used = 0;
  std::size_t at = 0;
  for (;;) {
    // Down: take greedily while something better than the best is still possible.
    for (; at < n; ++at) {
      ++used;
      if (left < shortest[at]) break;
      // Whatever follows is worth no more for its size than this kind. One more than the product
      // covers its rounding: values stay below 2^41 for every size that fits.
      const double most = static_cast<double>(left) * kinds[at].per_size;
      if (value + static_cast<std::int64_t>(most * (1 + 1e-12)) + 1 <= best) break;
      const auto take =
          static_cast<int>(std::min<std::int64_t>(kinds[at].most, left / kinds[at].size));
      count[at] = take;
      value += take * kinds[at].value;
      left -= take * kinds[at].size;
    }
    if (value > best) {
      best = value;
      best_count = count;
    }
    if (used > nodes) {
      meter.work += used * 8;
      return false;
    }
    // Back: one fewer of the last kind taken.
    while (at > 0 && count[at - 1] == 0) --at;
    if (at == 0) break;
    --count[at - 1];
    value -= kinds[at - 1].value;
    left += kinds[at - 1].size;
  }
  meter.work += used * 8;
  return true;
}

// best[w]: most value in w. Each kind in bundles of 1, 2, 4 ..., so that any number can be taken.
bool fill_table(const std::vector<Kind>& kinds, std::int64_t room, std::int64_t& best,
                std::vector<int>& best_count, Meter& meter) {
  std::int64_t step = 0;
  for (const Kind& kind : kinds) step = std::gcd(step, kind.size);
  struct Bundle {
    std::size_t kind, size;
    std::int64_t value;
    int count;
  };
  std::vector<Bundle> bundles;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    for (int left = kinds[i].most, n = 1; left > 0; n *= 2) {
      const int count = std::min(n, left);
      left -= count;
      bundles.push_back({i, static_cast<std::size_t>(kinds[i].size / step * count),
                         kinds[i].value * count, count});
    }
  }
  const auto width = static_cast<std::size_t>(room / step) + 1;
  const auto cells = static_cast<std::int64_t>(width) * static_cast<std::int64_t>(bundles.size());
  if (cells > kMostTableCells) return false;
  meter.work += cells;
  std::vector<std::int64_t> most(width, 0);
  std::vector<std::vector<bool>> taken(bundles.size(), std::vector<bool>(width, false));
  for (std::size_t b = 0; b < bundles.size(); ++b) {
    for (std::size_t w = width; w-- > bundles[b].size;) {
      const std::int64_t with = most[w - bundles[b].size] + bundles[b].value;
      if (with <= most[w]) continue;
      most[w] = with;
      taken[b][w] = true;
    }
  }
  best = most[width - 1];
  best_count.assign(kinds.size(), 0);
  std::size_t w = width - 1;
  for (std::size_t b = bundles.size(); b-- > 0;) {
    if (!taken[b][w]) continue;
    best_count[bundles[b].kind] += bundles[b].count;
    w -= bundles[b].size;
  }
  return true;
}

}  // namespace

std::optional<Filling> best_filling(const Knapsack& sack, std::int64_t room, Care care,
                                    Meter& meter) {
  const std::vector<Kind> kinds = kinds_of(sack, room);
  std::int64_t best = 0;
  std::vector<int> count(kinds.size(), 0);
  const auto sizes = static_cast<std::int64_t>(kinds.size());
  meter.work += static_cast<std::int64_t>(sack.size.size()) * 20;
  // Exact: as long as the table would take; then the table is the surer way.
  const std::int64_t nodes =
      std::min(2000 + sizes * (care == Care::Quick ? 50 : 50 + room / 8), kMostNodes);
  const bool exact = search_tree(kinds, room, nodes, best, count, meter);
  if (!exact && care == Care::Exact && !fill_table(kinds, room, best, count, meter) &&
      !search_tree(kinds, room, 1'000'000, best, count, meter)) {
    return {};
  }
  Filling filling{best, std::vector<int>(sack.size.size(), 0), exact || care == Care::Exact};
  for (std::size_t i = 0; i < kinds.size(); ++i) filling.count[kinds[i].index] = count[i];
  return filling;
}

}  // namespace hs::cuts
