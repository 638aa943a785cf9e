#pragma once
// The full search for few parts or few kinds of parts: of every choice of parts the smallest
// rectangles that they can be cut out of, and the fewest sheets.

#include <cstdint>
#include <vector>

#include "engine/cuts/areas.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

class SheetExact {
 public:
  // So many ways to part all the choices in two; above kMostExact the search is not for the job.
  static std::int64_t size_of(const Areas& areas);
  static constexpr std::int64_t kMostExact = 3'000'000;

  explicit SheetExact(const Areas& areas);

  // One choice of parts; false when all are done and plan() is there.
  bool advance(Meter& meter);
  Layout plan() const;

 private:
  struct Corner {
    std::int64_t w = 0, h = 0;
  };
  // Every rectangle that does, and none that a smaller one does as well; w rises, h falls.
  using Corners = std::vector<Corner>;

  template <typename Fn>
  void each_split(std::size_t choice, Fn fn) const;
  void put(Corners& corners, const Corner& corner) const;
  void join(const Corners& a, const Corners& b, Corners& out) const;
  void cut_up(Tiles& tiles, int tile, std::size_t choice) const;

  const Areas& areas_;
  std::vector<std::size_t> weight_;  // of each type in a choice's number
  std::size_t next_ = 1;
  std::vector<Corners> corners_;
  std::vector<int> sheets_;               // fewest for each choice
  std::vector<std::size_t> first_sheet_;  // what one of them holds
};

}  // namespace hs::cuts
