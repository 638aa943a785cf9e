#include "engine/cuts/loss_search.h"

#include <algorithm>
#include <numeric>

namespace hs::cuts {
namespace {

constexpr std::size_t kMostFillings = 4000;          // of one board
constexpr std::int64_t kMostLooks = 400'000;         // while they are listed
constexpr std::size_t kMostDeadCounts = 20'000'000;  // numbers kept in dead ends, 4 bytes each

// Every filling of one bin that holds the longest part that is left, leaves no room for another one
// and loses no more than the budget.
class Lister {
 public:
  Lister(const Lines& lines, const Prices& prices, const std::vector<double>& best_rate,
         const Rest& rest, std::int64_t budget)
      : lines_(lines),
        prices_(prices),
        best_rate_(best_rate),
        left_(rest.demand),
        budget_(budget) {}

  void list(int bin, std::size_t room, std::size_t longest) {
    bin_ = bin;
    const Bin& kind = lines_.bins[static_cast<std::size_t>(bin)];
    rooms_ = kind.rooms;
    order_.resize(rooms_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::swap(order_[0], order_[room]);
    open_.assign(rooms_.size() + 1, 0);
    for (std::size_t i = rooms_.size(); i-- > 0;) open_[i] = open_[i + 1] + rooms_[order_[i]];
    value_ = 0;
    limit_ = prices_.scale * kind.cost + prices_.spare[static_cast<std::size_t>(bin)];
    takes_.clear();
    put(longest, 1, 0);
    fill(0, longest);
    put(longest, -1, 0);
  }

  std::vector<Fill> fillings;
  std::vector<std::int64_t> losses;
  std::int64_t looks = 0;
  bool complete = true;

 private:
  void put(std::size_t type, int count, std::size_t place) {
    left_[type] -= count;
    value_ += count * prices_.value[type];
    rooms_[order_[place]] -= count * lines_.size[type];
    const int room = static_cast<int>(order_[place]);
    if (!takes_.empty() && takes_.back().type == static_cast<int>(type) &&
        takes_.back().room == room) {
      takes_.back().count += count;
      if (takes_.back().count == 0) takes_.pop_back();
    } else {
      takes_.push_back({static_cast<int>(type), count, room});
    }
  }

  void fill(std::size_t place, std::size_t from) {
    if (++looks > kMostLooks || fillings.size() >= kMostFillings) {
      complete = false;
      return;
    }
    const std::int64_t room = rooms_[order_[place]];
    std::size_t type = from;
    while (type < left_.size() && (left_[type] == 0 || lines_.size[type] > room)) ++type;
    // What the rest of the board can earn at most. One more covers the rounding.
    const double rest = (type < left_.size() ? static_cast<double>(room) * best_rate_[type] : 0) +
                        static_cast<double>(open_[place + 1]) * best_rate_[0];
    if (value_ + static_cast<std::int64_t>(rest * (1 + 1e-12)) + 1 < limit_ - budget_) return;
    if (type == left_.size()) {
      if (!is_full(room)) return;
      if (place + 1 < rooms_.size()) {
        fill(place + 1, 0);
        return;
      }
      if (limit_ - value_ > budget_) return;
      fillings.push_back({bin_, takes_});
      losses.push_back(limit_ - value_);
      return;
    }
    const auto most =
        static_cast<int>(std::min<std::int64_t>(left_[type], room / lines_.size[type]));
    if (most > 0) put(type, most, place);
    for (int count = most;; --count) {
      fill(place, type + 1);
      if (count == 0) break;
      put(type, -1, place);
    }
  }

  bool is_full(std::int64_t room) const {
    for (std::size_t i = left_.size(); i-- > 0;) {
      if (lines_.size[i] > room) return true;
      if (left_[i] > 0) return false;
    }
    return true;
  }

  const Lines& lines_;
  const Prices& prices_;
  const std::vector<double>& best_rate_;
  std::vector<int> left_;
  std::int64_t budget_ = 0, value_ = 0, limit_ = 0;
  int bin_ = 0;
  std::vector<std::int64_t> rooms_, open_;
  std::vector<std::size_t> order_;
  std::vector<Take> takes_;
};

}  // namespace

std::size_t LossSearch::Hash::operator()(const Rest& rest) const {
  std::uint64_t hash = 0x9E3779B97F4A7C15u;
  const auto mix = [&hash](int value) {
    hash ^= static_cast<std::uint64_t>(value) + 0x9E3779B97F4A7C15u + (hash << 6) + (hash >> 2);
    hash *= 0xBF58476D1CE4E5B9u;
  };
  for (const int value : rest.demand) mix(value);
  for (const int value : rest.count) mix(value);
  return static_cast<std::size_t>(hash ^ (hash >> 32));
}

LossSearch::LossSearch(const Lines& lines, Rest rest, const Prices& prices)
    : lines_(lines), whole_(std::move(rest)), prices_(prices) {
  best_rate_.assign(lines.size.size() + 1, 0);
  for (std::size_t i = lines.size.size(); i-- > 0;) {
    best_rate_[i] = std::max(best_rate_[i + 1], static_cast<double>(prices.value[i]) /
                                                    static_cast<double>(lines.size[i]));
  }
}

void LossSearch::aim(std::int64_t target) {
  target_ = target;
  stack_.clear();
  holes_ = found_ = false;
  Meter meter;
  open(whole_, prices_.scale * target - prices_.total, 0, meter);
}

void LossSearch::open(Rest rest, std::int64_t budget, std::int64_t cost, Meter& meter) {
  Node node{std::move(rest), budget, cost, {}, {}, 0, true};
  if (is_empty(node.rest)) {
    found_ = true;
  } else {
    list_fillings(node, meter);
  }
  stack_.push_back(std::move(node));
}

void LossSearch::list_fillings(Node& node, Meter& meter) {
  const auto& demand = node.rest.demand;
  const auto longest = static_cast<std::size_t>(
      std::find_if(demand.begin(), demand.end(), [](int left) { return left > 0; }) -
      demand.begin());
  Lister lister(lines_, prices_, best_rate_, node.rest, node.budget);
  for (std::size_t b = 0; b < lines_.bins.size(); ++b) {
    const Bin& bin = lines_.bins[b];
    if (node.rest.count[b] == 0 || node.cost + bin.cost > target_) continue;
    for (std::size_t r = 0; r < bin.rooms.size(); ++r) {
      if (bin.rooms[r] >= lines_.size[longest]) lister.list(static_cast<int>(b), r, longest);
    }
  }
  meter.work += lister.looks * 25 + static_cast<std::int64_t>(demand.size()) * 4;
  std::vector<std::size_t> order(lister.fillings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return lister.losses[a] < lister.losses[b];
  });
  for (const std::size_t i : order) {
    node.fillings.push_back(std::move(lister.fillings[i]));
    node.losses.push_back(lister.losses[i]);
  }
  node.complete = lister.complete;
}

void LossSearch::close() {
  Node node = std::move(stack_.back());
  stack_.pop_back();
  if (!node.complete) {
    holes_ = true;
    if (!stack_.empty()) stack_.back().complete = false;
    return;
  }
  const std::size_t width = node.rest.demand.size() + 16;
  if (dead_.size() * width > kMostDeadCounts) dead_.clear();
  const auto [at, added] = dead_.try_emplace(std::move(node.rest), node.budget);
  if (!added) at->second = std::max(at->second, node.budget);
}

LossSearch::State LossSearch::advance(Meter& meter) {
  meter.work += 100;
  if (found_) return State::Found;
  if (stack_.empty()) return holes_ ? State::GivenUp : State::None;
  Node& node = stack_.back();
  if (node.next == node.fillings.size()) {
    close();
    return State::Searching;
  }
  const std::size_t i = node.next++;
  Rest rest = node.rest;
  remove(rest, node.fillings[i]);
  const std::int64_t budget = node.budget - node.losses[i];
  const std::int64_t cost =
      node.cost + lines_.bins[static_cast<std::size_t>(node.fillings[i].bin)].cost;
  meter.work += static_cast<std::int64_t>(rest.demand.size()) * 3;
  const auto known = dead_.find(rest);
  if (known != dead_.end() && known->second >= budget) return State::Searching;
  open(std::move(rest), budget, cost, meter);
  return found_ ? State::Found : State::Searching;
}

std::vector<Fill> LossSearch::fills() const {
  std::vector<Fill> fills;
  for (const Node& node : stack_) {
    if (node.next > 0 && !is_empty(node.rest)) fills.push_back(node.fillings[node.next - 1]);
  }
  return fills;
}

}  // namespace hs::cuts
