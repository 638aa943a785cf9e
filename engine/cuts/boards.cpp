#include "engine/cuts/boards.h"

#include <algorithm>

#include "engine/cuts/bounds.h"
#include "engine/cuts/dive.h"
#include "engine/cuts/greedy.h"
#include "engine/cuts/lines.h"
#include "engine/cuts/loss_search.h"
#include "engine/cuts/relaxation.h"

namespace hs::cuts {

bool holds_any(const BoardJob& job, std::int64_t part) {
  const Lines lines = lines_of({job.stocks, job.kerf, {part}});
  return cheapest_place(lines, part + job.kerf).bin >= 0;
}

// Quick plans, the relaxation, then dives and slices of the full search in turn, each slice longer
// than the last.
struct BoardSearch::State {
  enum class Phase : std::uint8_t { Quick, Relax, Dive, Search, Done };

  BoardJob job;
  Lines lines;
  Meter meter;
  std::int64_t allowed = 0;  // work
  Phase phase = Phase::Quick;
  std::vector<Fill> best;
  std::int64_t best_cost = 0, bound = 0;

  std::size_t quick = 0;
  std::vector<Fill> pool;
  std::optional<Relaxation> relaxation;
  std::vector<Share> root;
  std::optional<Dive> dive;
  std::uint32_t dives = 0;
  std::optional<LossSearch> search;
  std::int64_t slice = 20'000'000, slice_end = 0;
  bool search_over = false;

  explicit State(const BoardJob& given) : job(given), lines(lines_of(given)) {
    if (lines.size.empty()) {
      phase = Phase::Done;
      return;
    }
    accept(longest_first(lines, whole(lines), cheapest_place(lines, lines.size[0]).bin,
                         Where::First, meter));
    list_costs(lines, best_cost);
    raise(material_bound(lines));
    raise(rounding_bound(lines));
    meter.work = 0;
  }

  void accept(std::vector<Fill> fills) {
    if (fills.empty()) return;
    const std::int64_t cost = cost_of(lines, fills);
    if (!best.empty() && cost >= best_cost) return;
    best = std::move(fills);
    best_cost = cost;
    if (bound >= best_cost) phase = Phase::Done;
  }

  void raise(std::int64_t cost) {
    bound = std::max(bound, std::min(rounded_up(lines, cost), best_cost));
    if (bound >= best_cost) phase = Phase::Done;
  }

  void work() {
    switch (phase) {
      case Phase::Quick:
        return try_quick();
      case Phase::Relax:
        return relax();
      case Phase::Dive:
        return go_on_diving();
      case Phase::Search:
        return go_on_searching();
      case Phase::Done:
        return;
    }
  }

  // Every kind of board in turn, both ways to place, then the fullest boards first.
  void try_quick() {
    const std::size_t kinds = lines.bins.size();
    meter.work += 100;
    if (quick < 2 * kinds) {
      const auto bin = static_cast<int>(quick / 2);
      if (lines.bins[quick / 2].count < 0) {
        accept(longest_first(lines, whole(lines), bin,
                             quick % 2 == 0 ? Where::First : Where::Tightest, meter));
      }
    } else {
      accept(best_worth(lines, whole(lines), lines.size, meter));
      if (phase != Phase::Done) {
        const bool small = lines.size.size() <= Relaxation::kMostSizes;
        phase = small ? Phase::Relax : Phase::Done;
        pool = best;
        if (small) relaxation.emplace(lines, whole(lines), pool);
      }
    }
    ++quick;
  }

  void relax() {
    const bool more = relaxation->improve(meter);
    raise(relaxation->prices().bound(lines));
    if (more || phase == Phase::Done) return;
    root = relaxation->solution();
    if (relaxation->prices().scale > 0) {
      search.emplace(lines, whole(lines), relaxation->prices());
      search->aim(bound);
    } else {
      search_over = true;
    }
    start_dive();
  }

  void start_dive() {
    phase = Phase::Dive;
    dive.emplace(lines, pool, root, dives++);
  }

  void go_on_diving() {
    if (dive->advance(best_cost, meter)) return;
    accept(dive->plan());
    if (phase == Phase::Done) return;
    if (search_over) return start_dive();
    phase = Phase::Search;
    slice_end = meter.work + slice;
    slice = std::min<std::int64_t>(slice * 2, 500'000'000);
  }

  void go_on_searching() {
    switch (search->advance(meter)) {
      case LossSearch::State::Searching:
        if (meter.work >= slice_end) start_dive();
        return;
      case LossSearch::State::Found:
        accept(search->fills());
        if (phase != Phase::Done) search->aim(bound);
        return;
      case LossSearch::State::None:
        raise(search->target() + 1);
        if (phase != Phase::Done) search->aim(bound);
        return;
      case LossSearch::State::GivenUp:
        search_over = true;
        return start_dive();
    }
  }
};

BoardSearch::BoardSearch(const BoardJob& job) : state_(std::make_unique<State>(job)) {}
BoardSearch::~BoardSearch() = default;
BoardSearch::BoardSearch(BoardSearch&&) noexcept = default;
BoardSearch& BoardSearch::operator=(BoardSearch&&) noexcept = default;

void BoardSearch::advance(std::int64_t steps) {
  state_->allowed += steps * kWorkPerStep;
  while (!done() && state_->meter.work < state_->allowed) state_->work();
}

bool BoardSearch::done() const { return state_->phase == State::Phase::Done; }
std::int64_t BoardSearch::steps_used() const { return state_->meter.work / kWorkPerStep; }
std::int64_t BoardSearch::cost() const { return state_->best_cost; }
std::int64_t BoardSearch::lower_bound() const { return state_->bound; }

BoardPlan BoardSearch::best() const {
  std::vector<Fill> fills = state_->best;
  use_offcuts(state_->lines, fills);
  return {boards_of(state_->job, state_->lines, fills), state_->best_cost, state_->bound,
          state_->bound >= state_->best_cost};
}

BoardPlan plan_boards(const BoardJob& job, std::int64_t steps) {
  BoardSearch search(job);
  search.advance(steps);
  return search.best();
}

}  // namespace hs::cuts
