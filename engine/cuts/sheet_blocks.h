#pragma once
// Sheets without waste: parts that have a side in common are joined along it, and the joined blocks
// again, as long as nothing is lost inside. Blocks that fill a sheet but for what may be lost are
// then chosen so that no part is cut twice; what is left over is cut quickly.

#include <cstdint>
#include <unordered_set>
#include <vector>

#include "engine/cuts/areas.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

class SheetBlocks {
 public:
  // For a plan of at most so many sheets.
  SheetBlocks(const Areas& areas, std::int64_t sheets);

  // One block, or one choice of a sheet. False when nothing is left to try, or plan() was found.
  bool advance(Meter& meter);
  const Layout& plan() const { return plan_; }  // empty: none

 private:
  struct Block {
    std::int64_t w = 0, h = 0;
    Pane::Kind kind = Pane::Kind::Part;
    int first = 0, second = 0;  // blocks; the type of a part in `first`
  };
  struct Later {
    bool operator()(const Block& a, const Block& b) const;
  };

  const std::uint8_t* counts(int block) const {
    return &counts_[static_cast<std::size_t>(block) * types_];
  }
  void accept(const Block& block, Meter& meter);
  void start_choosing();
  void choose(Meter& meter);
  bool finish(Meter& meter);
  void cut_up(Tiles& tiles, int tile, int block) const;

  const Areas& areas_;
  std::int64_t sheets_ = 0, spare_ = 0;  // area that may be lost in all
  std::size_t types_ = 0;
  std::vector<Block> waiting_;  // a heap, the smallest first
  std::vector<Block> blocks_;
  std::vector<std::uint8_t> counts_;  // of each type in each block
  std::unordered_set<std::uint64_t> seen_;
  std::vector<int> full_;  // blocks that fill a sheet, the fullest first
  bool choosing_ = false;
  std::vector<std::size_t> chosen_;  // places in full_, rising
  std::size_t next_ = 0;
  std::vector<int> left_;  // demand
  std::int64_t spare_left_ = 0;
  std::uint32_t tries_ = 0;
  Layout plan_;
};

}  // namespace hs::cuts
