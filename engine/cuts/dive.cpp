#include "engine/cuts/dive.h"

#include <algorithm>
#include <cmath>

#include "engine/cuts/greedy.h"

namespace hs::cuts {
namespace {

constexpr double kEndBoards = 6.5;  // so many are searched in full
constexpr std::int64_t kEndWork = 10'000'000;

}  // namespace

Dive::Dive(const Lines& lines, std::vector<Fill>& pool, const std::vector<Share>& root,
           std::uint32_t choice)
    : lines_(lines), pool_(pool), choice_(choice), rest_(whole(lines)) {
  Meter meter;
  fix(root, meter);
}

// Buys one board of the column where all of it is still wanted.
bool Dive::take(std::size_t column) {
  const Fill& fill = pool_[column];
  if (rest_.count[static_cast<std::size_t>(fill.bin)] == 0) return false;
  for (const Take& take : fill.takes) {
    int wanted = 0;
    for (const Take& other : fill.takes) wanted += other.type == take.type ? other.count : 0;
    if (wanted > rest_.demand[static_cast<std::size_t>(take.type)]) return false;
  }
  remove(rest_, fill);
  fixed_cost_ += lines_.bins[static_cast<std::size_t>(fill.bin)].cost;
  fixed_.push_back(fill);
  return true;
}

void Dive::fix(const std::vector<Share>& shares, Meter& meter) {
  constexpr double kNearly[] = {0.85, 0.7, 0.95, 0.6};
  const double nearly = kNearly[choice_ % 4];
  bool any = false;
  std::vector<Share> parts;
  for (const Share& share : shares) {
    const auto boards = static_cast<int>(share.boards + 1 - nearly);
    for (int n = 0; n < boards && take(share.column); ++n) any = true;
    const double part = share.boards - boards;
    if (part > 1e-4) parts.push_back({share.column, part});
  }
  if (!any) {
    std::stable_sort(parts.begin(), parts.end(),
                     [](const Share& a, const Share& b) { return a.boards > b.boards; });
    const bool second = depth_ < 32 && ((choice_ >> depth_) & 1u) != 0 && parts.size() > 1;
    ++depth_;
    if (second) std::swap(parts[0], parts[1]);
    for (const Share& part : parts) {
      if (take(part.column)) {
        any = true;
        break;
      }
    }
  }
  // Nothing could be bought: the greedy end is all there is.
  if (!any || is_empty(rest_)) {
    finish_greedily(meter);
    rest_.demand.assign(rest_.demand.size(), 0);
    return;
  }
  finish_greedily(meter);
  relaxation_.emplace(lines_, rest_, pool_);
}

void Dive::finish_greedily(Meter& meter) {
  std::vector<Fill> rest = longest_first(lines_, rest_, cheapest_place(lines_, lines_.size[0]).bin,
                                         Where::Tightest, meter);
  const std::vector<Fill> other = best_worth(lines_, rest_, lines_.size, meter);
  if (!other.empty() && cost_of(lines_, other) < cost_of(lines_, rest)) rest = other;
  const std::int64_t cost = fixed_cost_ + cost_of(lines_, rest);
  if (!plan_.empty() && cost >= cost_of(lines_, plan_)) return;
  plan_ = fixed_;
  plan_.insert(plan_.end(), rest.begin(), rest.end());
}

// True while there is more to search.
bool Dive::search_end(std::int64_t target, Meter& meter) {
  if (!end_) {
    end_.emplace(lines_, rest_, relaxation_->prices());
    end_->aim(target);
    end_work_ = meter.work + kEndWork;
  }
  const LossSearch::State state = end_->advance(meter);
  if (state == LossSearch::State::Searching) return meter.work < end_work_;
  if (state == LossSearch::State::Found) {
    plan_ = fixed_;
    const std::vector<Fill> rest = end_->fills();
    plan_.insert(plan_.end(), rest.begin(), rest.end());
  }
  return false;
}

bool Dive::advance(std::int64_t below, Meter& meter) {
  meter.work += 100;
  if (is_empty(rest_) || !relaxation_) return false;
  if (!plan_.empty() && cost_of(lines_, plan_) < below) return false;
  const std::int64_t target = below - lines_.cost_step - fixed_cost_;
  if (end_) return search_end(target, meter);
  if (relaxation_->improve(meter)) return true;
  // What is bought and the least that the rest costs is no better than what is known.
  if (relaxation_->prices().scale == 0 || relaxation_->prices().bound(lines_) > target)
    return false;
  const std::vector<Share> shares = relaxation_->solution();
  double boards = 0;
  for (const Share& share : shares) boards += share.boards;
  if (boards <= kEndBoards) return search_end(target, meter);
  fix(shares, meter);
  return true;
}

}  // namespace hs::cuts
