#pragma once
// The full search for a plan of at most a given cost, or the proof that there is none.
//
// At the relaxation's prices a filling never earns more than its board costs; what it earns less is
// its loss. All the losses of a plan add up to its cost less the bound, so a search for a plan of
// that cost may follow only fillings whose losses fit what is left of that difference. The longest
// part that is left is always cut next; a board that could take one more part is never better.

#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "engine/cuts/lines.h"
#include "engine/cuts/relaxation.h"

namespace hs::cuts {

class LossSearch {
 public:
  enum class State : std::uint8_t {
    Searching,
    Found,    // fills() costs no more than the target
    None,     // there is no such plan
    GivenUp,  // not found, but some boards had more fillings than could be listed
  };

  // For the parts in `rest`, at prices that hold for it.
  LossSearch(const Lines& lines, Rest rest, const Prices& prices);

  // Begins again for another cost. What is known of dead ends stays.
  void aim(std::int64_t target);
  std::int64_t target() const { return target_; }
  // One board, or one step back.
  State advance(Meter& meter);
  std::vector<Fill> fills() const;

 private:
  struct Node {
    Rest rest;
    std::int64_t budget = 0;  // loss that is left
    std::int64_t cost = 0;
    std::vector<Fill> fillings;
    std::vector<std::int64_t> losses;
    std::size_t next = 0;
    bool complete = true;  // every filling below it was looked at
  };
  struct Hash {
    std::size_t operator()(const Rest& rest) const;
  };

  void open(Rest rest, std::int64_t budget, std::int64_t cost, Meter& meter);
  void close();
  void list_fillings(Node& node, Meter& meter);

  const Lines& lines_;
  Rest whole_;
  Prices prices_;
  std::vector<double> best_rate_;  // value for size of the best from each type on
  std::int64_t target_ = 0;
  std::vector<Node> stack_;
  bool holes_ = false;
  bool found_ = false;
  std::unordered_map<Rest, std::int64_t, Hash> dead_;  // the largest budget that did not do
};

}  // namespace hs::cuts
