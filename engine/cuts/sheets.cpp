#include "engine/cuts/sheets.h"

#include <algorithm>
#include <optional>

#include "engine/cuts/areas.h"
#include "engine/cuts/lines.h"
#include "engine/cuts/sheet_blocks.h"
#include "engine/cuts/sheet_exact.h"
#include "engine/cuts/sheet_quick.h"
#include "engine/cuts/sheet_repair.h"

namespace hs::cuts {
namespace {

constexpr std::uint32_t kStripWays = 4;
constexpr std::uint32_t kShuffles = 200;  // of every quick way

}  // namespace

bool sheet_holds(const SheetJob& job, const SheetPart& part) {
  const std::int64_t w = job.width - 2 * job.trim, h = job.height - 2 * job.trim;
  return (part.width <= w && part.height <= h) || (job.turn && part.height <= w && part.width <= h);
}

// Strips and quick plans, the full search where the list is short enough for it, else repairs,
// blocks without waste, then quick plans in shuffled orders.
struct SheetSearch::State {
  enum class Phase : std::uint8_t { Quick, Exact, Repair, Blocks, Shuffled, Done };

  SheetJob job;
  Areas areas;
  Meter meter;
  std::int64_t allowed = 0;  // work
  Phase phase = Phase::Quick;
  Layout best;
  std::int64_t offcut = 0;  // the largest of the best plan
  std::int64_t bound = 0;
  std::uint32_t way = 0;
  std::optional<SheetExact> exact;
  std::optional<SheetRepair> repair;
  std::optional<SheetBlocks> blocks;

  explicit State(const SheetJob& given) : job(given), areas(areas_of(given)) {
    if (areas.types.empty()) {
      phase = Phase::Done;
      return;
    }
    bound = sheets_bound(areas);
    accept(strip_plan(areas, Pane::Kind::Along, false, meter));
    meter.work = 0;
  }

  std::int64_t sheets() const { return static_cast<std::int64_t>(best.size()); }
  bool proven() const { return bound >= sheets(); }

  // Fewer sheets, then the larger offcut; of equals the earlier, which is the plainer to saw.
  void accept(Layout layout) {
    if (layout.empty() || (!best.empty() && layout.size() > best.size())) return;
    const std::int64_t largest = largest_offcut(layout);
    if (layout.size() == best.size() && largest <= offcut) return;
    best = std::move(layout);
    offcut = largest;
  }

  void work() {
    switch (phase) {
      case Phase::Quick:
        return try_quick();
      case Phase::Exact:
        if (exact->advance(meter)) return;
        accept(exact->plan());
        bound = sheets();
        phase = Phase::Done;
        return;
      case Phase::Repair: {
        if (repair->advance(meter)) return;
        const bool better = !repair->plan().empty();
        accept(repair->plan());
        repair.reset();
        if (proven()) {
          phase = Phase::Done;
        } else if (better) {
          repair.emplace(areas, best);
        } else {
          blocks.emplace(areas, sheets() - 1);
          phase = Phase::Blocks;
        }
        return;
      }
      case Phase::Blocks: {
        if (blocks->advance(meter)) return;
        const bool better = !blocks->plan().empty();
        accept(blocks->plan());
        blocks.reset();
        way = kQuickWays;
        phase = proven() ? Phase::Done : better ? Phase::Blocks : Phase::Shuffled;
        if (phase == Phase::Blocks) blocks.emplace(areas, sheets() - 1);
        return;
      }
      case Phase::Shuffled:
        accept(quick_plan(areas, areas.demand, quick_way(way), meter));
        if (proven() || ++way == kQuickWays * kShuffles) phase = Phase::Done;
        return;
      case Phase::Done:
        return;
    }
  }

  void try_quick() {
    meter.work += 100;
    if (way < kStripWays) {
      accept(strip_plan(areas, way % 2 == 0 ? Pane::Kind::Along : Pane::Kind::Across, way >= 2,
                        meter));
    } else if (way < kStripWays + kQuickWays) {
      accept(quick_plan(areas, areas.demand, quick_way(way - kStripWays), meter));
    }
    if (++way < kStripWays + kQuickWays) return;
    if (proven()) {
      phase = Phase::Done;
    } else if (SheetExact::size_of(areas) <= SheetExact::kMostExact) {
      exact.emplace(areas);
      phase = Phase::Exact;
    } else {
      repair.emplace(areas, best);
      phase = Phase::Repair;
    }
  }
};

SheetSearch::SheetSearch(const SheetJob& job) : state_(std::make_unique<State>(job)) {}
SheetSearch::~SheetSearch() = default;
SheetSearch::SheetSearch(SheetSearch&&) noexcept = default;
SheetSearch& SheetSearch::operator=(SheetSearch&&) noexcept = default;

void SheetSearch::advance(std::int64_t steps) {
  state_->allowed += steps * kWorkPerStep;
  while (!done() && state_->meter.work < state_->allowed) state_->work();
}

bool SheetSearch::done() const { return state_->phase == State::Phase::Done; }
std::int64_t SheetSearch::steps_used() const { return state_->meter.work / kWorkPerStep; }
std::size_t SheetSearch::sheets() const { return state_->best.size(); }
std::int64_t SheetSearch::lower_bound() const { return state_->bound; }

SheetPlan SheetSearch::best() const {
  return {sheets_of(state_->job, state_->areas, state_->best), state_->bound, state_->proven()};
}

SheetPlan plan_sheets(const SheetJob& job, std::int64_t steps) {
  SheetSearch search(job);
  search.advance(steps);
  return search.best();
}

}  // namespace hs::cuts
