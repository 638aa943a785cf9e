#pragma once
// One sheet fewer: what lay on the emptiest one waits, and again and again a few sheets are emptied
// and cut quickly anew, together with what waits. A change stays where no more waits after it.

#include <cstdint>
#include <vector>

#include "engine/cuts/areas.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

class SheetRepair {
 public:
  // From a plan of one sheet more than is tried for.
  SheetRepair(const Areas& areas, const Layout& from);

  // One try. False when it has worked enough, or plan() was found.
  bool advance(Meter& meter);
  const Layout& plan() const { return plan_; }  // empty: none

 private:
  std::uint32_t random();
  std::int64_t area_of(const std::vector<int>& counts) const;
  std::int64_t used(const Tiles& tiles) const;
  Tiles plainest(Tiles tiles, Meter& meter) const;  // the same parts, cut most plainly
  void add(const Tiles& tiles, int sign, std::vector<int>& counts) const;

  const Areas& areas_;
  Layout sheets_;
  std::vector<int> waiting_;  // of each type
  std::uint32_t state_ = 0x9E3779B9u;
  std::int64_t work_ = 0;
  Layout plan_;
};

}  // namespace hs::cuts
