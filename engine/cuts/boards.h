#pragma once
// Which parts come out of which board: the cheapest boards that hold every part, with a proof.
//
// Lengths are whole numbers of one unit that the caller chooses (sixteenths of an inch, tenths of a
// millimetre), costs whole numbers of another. n pieces fit a stretch of a board when their lengths
// and n - 1 saw cuts fit it: the last piece needs no cut after it where it ends the stretch.
//
// Exact for lists of a shop's size: a bound from the linear relaxation over all ways to fill a
// board, checked in whole numbers, and a search that stops when an answer meets it. The search is
// bounded by steps and not by a clock, so that the same job gives the same plan on every machine.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace hs::cuts {

// A knot or a split, from `from` to `to` along the board: no part may touch it. Nothing where it
// has no length.
struct Blocked {
  std::int64_t from = 0, to = 0;
};

struct BoardStock {
  std::int64_t length = 0;
  std::int64_t cost = 1;     // 0 for an offcut that is there already: it is then used first
  std::optional<int> count;  // how many there are; absent: as many as it takes
  std::int64_t trim = 0;     // lost at each end, the trimming cut with it
  std::vector<Blocked> blocked;
};

struct BoardJob {
  std::vector<BoardStock> stocks;
  std::int64_t kerf = 0;
  std::vector<std::int64_t> parts;  // finished lengths; equal ones are written as often as needed
};

// Ranges that keep every sum inside 64 bits.
inline constexpr std::int64_t kLongestBoard = 1'000'000'000;
inline constexpr std::int64_t kMostCost = 1'000'000'000;
inline constexpr std::size_t kMostParts = 10'000;
inline constexpr std::size_t kMostStocks = 200;

struct Piece {
  std::size_t part = 0;  // index in BoardJob::parts
  std::int64_t at = 0;   // from the board's start to the piece's
};
struct Board {
  std::size_t stock = 0;  // index in BoardJob::stocks
  std::vector<Piece> pieces;
};
struct BoardPlan {
  std::vector<Board> boards;
  std::int64_t cost = 0;
  std::int64_t lower_bound = 0;  // no plan costs less
  bool proven = false;           // the bound meets the cost
};

// A step is about a microsecond of a desktop computer's work; this many are enough for nearly every
// published test list, and take a phone some seconds.
inline constexpr std::int64_t kUsualSteps = 1'500'000;

// Is there a stock without a count that holds the part? Where there is one for every part, a plan
// exists. Lengths, kerf and costs must be in range (parts and stocks at least 1, blocked stretches
// inside their board).
bool holds_any(const BoardJob& job, std::int64_t part);

// The search for one job, in as many goes as the caller likes; how it is split changes nothing.
// Every part must be held by a stock without a count.
class BoardSearch {
 public:
  explicit BoardSearch(const BoardJob& job);
  ~BoardSearch();
  BoardSearch(BoardSearch&&) noexcept;
  BoardSearch& operator=(BoardSearch&&) noexcept;

  // Works on for about so many steps; returns early when the best plan is proven.
  void advance(std::int64_t steps);
  bool done() const;  // proven, or nothing is left to try
  std::int64_t steps_used() const;
  std::int64_t cost() const;         // of the best plan so far
  std::int64_t lower_bound() const;  // so far
  BoardPlan best() const;            // complete and valid from the first moment on

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// The whole search with a bound on its steps.
BoardPlan plan_boards(const BoardJob& job, std::int64_t steps = kUsualSteps);

}  // namespace hs::cuts
