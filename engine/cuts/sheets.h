#pragma once
// Which parts come out of which sheet: the fewest sheets, every cut from edge to edge of the piece
// it is made in (guillotine cuts), so that a track saw or a panel saw can follow.
//
// Sizes are whole numbers of one unit that the caller chooses. Two pieces beside each other are one
// saw cut apart. Few parts, or few kinds of parts, are planned exactly; longer lists get the best
// of many quick plans, with a bound that says how far from proven they are. The search is bounded
// by steps and not by a clock, so that the same job gives the same plan on every machine.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

namespace hs::cuts {

struct SheetPart {
  std::int64_t width = 0, height = 0;  // finished; width along the sheet's width
};

struct SheetJob {
  std::int64_t width = 0, height = 0;
  std::int64_t kerf = 0;
  std::int64_t trim = 0;  // lost along every edge, the trimming cut with it
  bool turn = false;      // parts may be turned by a right angle: no grain to follow
  std::vector<SheetPart> parts;
};

// Ranges that keep every sum of areas inside 64 bits.
inline constexpr std::int64_t kLongestSide = 1'000'000;
inline constexpr std::size_t kMostSheetParts = 2'000;

// A piece of a sheet. Nodes of a sheet refer to each other by their place in its list; the first is
// the sheet inside its trimmed edges. The `first` of a cut always holds a part, `second` may be an
// offcut.
struct Pane {
  enum class Kind : std::uint8_t {
    Offcut,
    Part,
    Across,  // cut at `at` from the left edge: `first` is left of the saw, `second` right of it
    Along,   // cut at `at` from the lower edge: `first` is below the saw, `second` above it
  };
  Kind kind = Kind::Offcut;
  std::int64_t width = 0, height = 0;  // 0 where the saw takes all that is left
  std::int64_t at = 0;
  std::size_t first = 0, second = 0;
  std::size_t part = 0;  // index in SheetJob::parts; width and height say whether it is turned
};
using SheetCuts = std::vector<Pane>;

struct SheetPlan {
  std::vector<SheetCuts> sheets;
  std::int64_t lower_bound = 0;  // no plan needs fewer
  bool proven = false;           // the bound meets the number of sheets
};

// A step is about a microsecond of a desktop computer's work.
inline constexpr std::int64_t kUsualSheetSteps = 1'000'000;

// Does a sheet of the job hold the part? Sides must be in range, at least 1.
bool sheet_holds(const SheetJob& job, const SheetPart& part);

// The search for one job, in as many goes as the caller likes; how it is split changes nothing.
// Every part must be held by a sheet.
class SheetSearch {
 public:
  explicit SheetSearch(const SheetJob& job);
  ~SheetSearch();
  SheetSearch(SheetSearch&&) noexcept;
  SheetSearch& operator=(SheetSearch&&) noexcept;

  // Works on for about so many steps; returns early when nothing is left to try.
  void advance(std::int64_t steps);
  bool done() const;
  std::int64_t steps_used() const;
  std::size_t sheets() const;        // of the best plan so far
  std::int64_t lower_bound() const;  // so far
  SheetPlan best() const;            // complete and valid from the first moment on

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// The whole search with a bound on its steps.
SheetPlan plan_sheets(const SheetJob& job, std::int64_t steps = kUsualSheetSteps);

}  // namespace hs::cuts
