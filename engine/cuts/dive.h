#pragma once
// A plan out of the relaxation: what it buys whole is bought, the rest is relaxed again, until
// nothing is left; the last boards are searched in full. Other choices on the way give other plans.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/cuts/lines.h"
#include "engine/cuts/loss_search.h"
#include "engine/cuts/relaxation.h"

namespace hs::cuts {

class Dive {
 public:
  // `choice` 0 follows the largest share; bit d of it takes the second largest at the d-th choice.
  // `root` is the solved relaxation of the whole job.
  Dive(const Lines& lines, std::vector<Fill>& pool, const std::vector<Share>& root,
       std::uint32_t choice);

  // One column, or one board. False when the dive has ended; plan() is the best it met.
  // `below`: what is known already, only less is of use.
  bool advance(std::int64_t below, Meter& meter);
  const std::vector<Fill>& plan() const { return plan_; }

 private:
  void fix(const std::vector<Share>& shares, Meter& meter);
  bool take(std::size_t column);
  bool search_end(std::int64_t target, Meter& meter);
  void finish_greedily(Meter& meter);

  const Lines& lines_;
  std::vector<Fill>& pool_;
  std::uint32_t choice_ = 0, depth_ = 0;
  Rest rest_;
  std::vector<Fill> fixed_;
  std::int64_t fixed_cost_ = 0;
  std::optional<Relaxation> relaxation_;
  std::optional<LossSearch> end_;  // the full search for the last boards
  std::int64_t end_work_ = 0;
  std::vector<Fill> plan_;
};

}  // namespace hs::cuts
