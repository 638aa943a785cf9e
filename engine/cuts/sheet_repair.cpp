#include "engine/cuts/sheet_repair.h"

#include <algorithm>
#include <utility>

#include "engine/cuts/sheet_quick.h"

namespace hs::cuts {
namespace {

// Lists of a shop are found in a hundredth of this; it stays short beside what is tried after it.
constexpr std::int64_t kMostWork = 10'000 * kWorkPerStep;
constexpr std::uint32_t kMostEmptied = 3;  // sheets at once
constexpr std::uint32_t kSeeds = 200;      // of shuffled orders

}  // namespace

SheetRepair::SheetRepair(const Areas& areas, const Layout& from)
    : areas_(areas), sheets_(from), waiting_(areas.demand.size(), 0) {
  const auto emptiest =
      std::min_element(sheets_.begin(), sheets_.end(),
                       [this](const Tiles& a, const Tiles& b) { return used(a) < used(b); });
  if (emptiest == sheets_.end()) return;
  add(*emptiest, 1, waiting_);
  sheets_.erase(emptiest);
}

std::uint32_t SheetRepair::random() {
  state_ ^= state_ << 13;
  state_ ^= state_ >> 17;
  state_ ^= state_ << 5;
  return state_;
}

std::int64_t SheetRepair::area_of(const std::vector<int>& counts) const {
  std::int64_t area = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    area += counts[i] * areas_.types[i].w * areas_.types[i].h;
  }
  return area;
}

std::int64_t SheetRepair::used(const Tiles& tiles) const {
  std::vector<int> counts(areas_.types.size(), 0);
  add(tiles, 1, counts);
  return area_of(counts);
}

void SheetRepair::add(const Tiles& tiles, int sign, std::vector<int>& counts) const {
  for (const Tile& tile : tiles) {
    if (tile.kind == Pane::Kind::Part) counts[static_cast<std::size_t>(tile.type)] += sign;
  }
}

bool SheetRepair::advance(Meter& meter) {
  if (sheets_.empty() || work_ >= kMostWork) return false;
  const std::int64_t before = meter.work;
  const auto count = static_cast<std::uint32_t>(sheets_.size());
  const std::uint32_t emptied = std::min(count, 1 + random() % kMostEmptied);
  // The chosen ones go to the front.
  std::vector<int> pool = waiting_;
  for (std::uint32_t i = 0; i < emptied; ++i) {
    std::swap(sheets_[i], sheets_[i + random() % (count - i)]);
    add(sheets_[i], 1, pool);
  }
  const std::uint32_t way = random() % kQuickWays;
  Layout made = quick_plan(areas_, pool, quick_way(way + kQuickWays * (random() % kSeeds)), meter);
  // The fullest stay, as many as there is room for.
  std::vector<std::pair<std::int64_t, std::size_t>> order;
  for (std::size_t i = 0; i < made.size(); ++i) order.push_back({-used(made[i]), i});
  std::sort(order.begin(), order.end());
  order.resize(std::min<std::size_t>(order.size(), emptied));
  std::vector<int> left = pool;
  for (const auto& [minus, i] : order) add(made[i], -1, left);
  meter.work += 200 + static_cast<std::int64_t>(areas_.types.size()) * 4;
  work_ += meter.work - before;
  if (area_of(left) > area_of(waiting_)) return true;
  waiting_ = std::move(left);
  for (std::uint32_t i = 0; i < emptied; ++i) {
    sheets_[i] = i < order.size() ? std::move(made[order[i].second])
                                  : Tiles{{Pane::Kind::Offcut, areas_.w, areas_.h}};
  }
  if (std::any_of(waiting_.begin(), waiting_.end(), [](int n) { return n > 0; })) return true;
  for (const Tiles& tiles : sheets_) {
    if (used(tiles) > 0) plan_.push_back(plainest(tiles, meter));
  }
  sheets_.clear();
  return false;
}

// Fewer cuts, then the larger offcut.
Tiles SheetRepair::plainest(Tiles tiles, Meter& meter) const {
  Areas own = areas_;
  std::fill(own.demand.begin(), own.demand.end(), 0);
  add(tiles, 1, own.demand);
  const auto better = [](const Tiles& a, const Tiles& b) {
    if (a.size() != b.size()) return a.size() < b.size();
    return largest_offcut({a}) > largest_offcut({b});
  };
  const auto look_at = [&](Layout made) {
    if (made.size() == 1 && better(made[0], tiles)) tiles = std::move(made[0]);
  };
  look_at(strip_plan(own, Pane::Kind::Along, false, meter));
  look_at(strip_plan(own, Pane::Kind::Across, false, meter));
  for (std::uint32_t way = 0; way < kQuickWays; ++way) {
    look_at(quick_plan(own, own.demand, quick_way(way), meter));
  }
  return tiles;
}

}  // namespace hs::cuts
