#include "engine/cuts/sheet_blocks.h"

#include <algorithm>

#include "engine/cuts/sheet_quick.h"

namespace hs::cuts {
namespace {

constexpr std::size_t kMostBlocks = 30'000;
constexpr std::size_t kMostWaiting = 400'000;
constexpr std::size_t kMostTypes = 200;
constexpr std::size_t kMostFull = 2'000;

std::uint64_t mixed(std::uint64_t hash, std::uint64_t value) {
  return (hash ^ value) * 1'099'511'628'211u;
}

}  // namespace

// For a heap: the smallest area on top; ties by what the blocks are, so that the order is the same
// everywhere.
bool SheetBlocks::Later::operator()(const Block& a, const Block& b) const {
  const std::int64_t a_area = a.w * a.h, b_area = b.w * b.h;
  if (a_area != b_area) return a_area > b_area;
  if (a.w != b.w) return a.w > b.w;
  if (a.first != b.first) return a.first > b.first;
  return a.second > b.second;
}

SheetBlocks::SheetBlocks(const Areas& areas, std::int64_t sheets)
    : areas_(areas), sheets_(sheets), types_(areas.types.size()), left_(areas.demand) {
  spare_ = sheets * areas.w * areas.h;
  bool small = types_ <= kMostTypes;
  for (std::size_t i = 0; i < types_; ++i) {
    spare_ -= areas.types[i].w * areas.types[i].h * areas.demand[i];
    small = small && areas.demand[i] < 256;
  }
  spare_left_ = spare_;
  if (!small || spare_ < 0) return;
  for (std::size_t i = 0; i < types_; ++i) {
    const Areas::Type& type = areas.types[i];
    const auto index = static_cast<int>(i);
    if (type.w <= areas.w && type.h <= areas.h) {
      waiting_.push_back({type.w, type.h, Pane::Kind::Part, index, 0});
    }
    if (areas.turn && type.w != type.h && type.h <= areas.w && type.w <= areas.h) {
      waiting_.push_back({type.h, type.w, Pane::Kind::Part, index, 0});
    }
  }
  std::make_heap(waiting_.begin(), waiting_.end(), Later());
}

void SheetBlocks::accept(const Block& block, Meter& meter) {
  std::vector<std::uint8_t> own(types_, 0);
  if (block.kind == Pane::Kind::Part) {
    own[static_cast<std::size_t>(block.first)] = 1;
  } else {
    for (std::size_t i = 0; i < types_; ++i) {
      own[i] = static_cast<std::uint8_t>(counts(block.first)[i] + counts(block.second)[i]);
    }
  }
  std::uint64_t hash =
      mixed(mixed(14'695'981'039'346'656'037u, static_cast<std::uint64_t>(block.w)),
            static_cast<std::uint64_t>(block.h));
  for (const std::uint8_t count : own) hash = mixed(hash, count);
  meter.work += 100 + static_cast<std::int64_t>(types_) * 4;
  if (!seen_.insert(hash).second) return;
  const auto index = static_cast<int>(blocks_.size());
  blocks_.push_back(block);
  counts_.insert(counts_.end(), own.begin(), own.end());
  if (areas_.w * areas_.h - block.w * block.h <= spare_) full_.push_back(index);
  const auto goes_with = [&](int other) {
    meter.work += 20;
    for (std::size_t i = 0; i < types_; ++i) {
      if (own[i] + counts(other)[i] > areas_.demand[i]) return false;
    }
    return true;
  };
  for (int other = 0; other <= index; ++other) {
    const Block& with = blocks_[static_cast<std::size_t>(other)];
    const bool beside = with.h == block.h && with.w + block.w <= areas_.w;
    const bool above = with.w == block.w && with.h + block.h <= areas_.h;
    if ((!beside && !above) || waiting_.size() + 2 > kMostWaiting || !goes_with(other)) continue;
    if (beside) {
      waiting_.push_back({with.w + block.w, block.h, Pane::Kind::Across, other, index});
      std::push_heap(waiting_.begin(), waiting_.end(), Later());
    }
    if (above) {
      waiting_.push_back({block.w, with.h + block.h, Pane::Kind::Along, other, index});
      std::push_heap(waiting_.begin(), waiting_.end(), Later());
    }
  }
  meter.work += index * 2;
}

bool SheetBlocks::advance(Meter& meter) {
  meter.work += 50;
  if (!choosing_) {
    if (waiting_.empty() || blocks_.size() >= kMostBlocks) {
      start_choosing();
      return !full_.empty();
    }
    std::pop_heap(waiting_.begin(), waiting_.end(), Later());
    const Block block = waiting_.back();
    waiting_.pop_back();
    accept(block, meter);
    return true;
  }
  choose(meter);
  if (!plan_.empty()) return false;
  return next_ < full_.size() || !chosen_.empty();
}

void SheetBlocks::start_choosing() {
  choosing_ = true;
  waiting_.clear();
  std::stable_sort(full_.begin(), full_.end(), [&](int a, int b) {
    const Block& one = blocks_[static_cast<std::size_t>(a)];
    const Block& two = blocks_[static_cast<std::size_t>(b)];
    return one.w * one.h > two.w * two.h;
  });
  if (full_.size() > kMostFull) full_.resize(kMostFull);
}

// One step of a search in depth: the next block that is still to be had, or one step back.
void SheetBlocks::choose(Meter& meter) {
  const auto use = [&](std::size_t place, int sign) {
    const int block = full_[place];
    for (std::size_t i = 0; i < types_; ++i) left_[i] -= sign * counts(block)[i];
    const Block& own = blocks_[static_cast<std::size_t>(block)];
    spare_left_ -= sign * (areas_.w * areas_.h - own.w * own.h);
    meter.work += static_cast<std::int64_t>(types_);
  };
  for (; next_ < full_.size(); ++next_) {
    const int block = full_[next_];
    const Block& own = blocks_[static_cast<std::size_t>(block)];
    bool good = areas_.w * areas_.h - own.w * own.h <= spare_left_;
    for (std::size_t i = 0; i < types_ && good; ++i) good = counts(block)[i] <= left_[i];
    meter.work += 10 + static_cast<std::int64_t>(types_) / 4;
    if (!good) continue;
    use(next_, 1);
    chosen_.push_back(next_);  // the same one again, where there are parts for it
    finish(meter);
    return;
  }
  if (chosen_.empty()) return;
  use(chosen_.back(), -1);
  next_ = chosen_.back() + 1;
  chosen_.pop_back();
}

// Are the parts that are left few enough, or quickly cut?
bool SheetBlocks::finish(Meter& meter) {
  const std::int64_t sheets = sheets_ - static_cast<std::int64_t>(chosen_.size());
  const bool all = std::all_of(left_.begin(), left_.end(), [](int count) { return count == 0; });
  if (!all && (sheets <= 0 || spare_left_ == 0)) return false;
  Layout rest;
  if (!all) {
    rest = quick_plan(areas_, left_, quick_way(tries_++ % kQuickWays), meter);
    if (static_cast<std::int64_t>(rest.size()) > sheets) return false;
  }
  for (const std::size_t place : chosen_) {
    const Block& block = blocks_[static_cast<std::size_t>(full_[place])];
    Tiles tiles{{Pane::Kind::Offcut, areas_.w, areas_.h}};
    int tile = cut_off(tiles, 0, Pane::Kind::Across, block.w);
    tile = cut_off(tiles, tile, Pane::Kind::Along, block.h);
    cut_up(tiles, tile, full_[place]);
    plan_.push_back(std::move(tiles));
  }
  plan_.insert(plan_.end(), rest.begin(), rest.end());
  return true;
}

void SheetBlocks::cut_up(Tiles& tiles, int tile, int block) const {
  const Block& own = blocks_[static_cast<std::size_t>(block)];
  if (own.kind == Pane::Kind::Part) {
    cut_part(tiles, tile, own.first, own.w, own.h, Pane::Kind::Across);
    return;
  }
  const Block& first = blocks_[static_cast<std::size_t>(own.first)];
  const int at = cut_off(tiles, tile, own.kind, own.kind == Pane::Kind::Across ? first.w : first.h);
  cut_up(tiles, at, own.first);
  cut_up(tiles, at + 1, own.second);
}

}  // namespace hs::cuts
