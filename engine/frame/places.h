#pragma once
// Where the counters stand and how large they are, as blocks of the station frame: what is built
// follows from them, and every picture of the station is drawn from them.

#include <optional>

#include "engine/base/block.h"
#include "engine/config/config.h"

namespace hs::frame {

// The heights in use; absent: nobody works there.
struct Levels {
  std::optional<double> counter_mm, oven_base_mm;
  bool operator==(const Levels&) const = default;
};

struct Places {
  double front_mm = 0;                 // y of the counters' front edge
  bool dough_right = true;             // which side of the oven the dough counter is on
  bool masonry_base = false;           // the oven's stand is a pier of masonry, not a cabinet
  std::optional<Block> oven_stand;     // cabinet or pier under the oven and beside it
  std::optional<Block> riser;          // block between a lower counter and the oven
  std::optional<Block> dough_counter;  // beside the oven's stand, or alone
};

// Each block reaches from the ground to the top of its counter (the riser: from counter to oven)
// and is as wide and deep as the counter's top, overhang included. The side of the dough counter is
// the one with more landing, then with more room, then of the hand that most peels are held in: our
// judgement.
Places places(const config::Config& config, const Levels& levels);

// x of whatever of them is farthest left; 0 where nothing stands.
double left_mm(const Places& places);

}  // namespace hs::frame
