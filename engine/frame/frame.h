#pragma once
// From the heights in use to cabinets: base, boxes, faces, doors and drawers, sheets and a folded
// metal top, the block under the oven. Every piece is a block of the station frame
// (engine/base/block.h) that touches its neighbours and overlaps none: joints are butts.
//
// Upwards: base (boards of treated lumber on shims, hidden by boards that carry nothing), boxes,
// sheets, a bed, metal. Boxes are whole 10 mm high and the base takes what is left, so that the
// counter lands at the height in use exactly, at the ground where the cook's feet are. What was
// measured when built (as_built.h) takes the place of what was drawn, and all that is not built yet
// follows it.
//
// From the front: the counter's edge, behind it by the overhang the fronts, behind them the boxes.
// The metal's turned-down edges hang before the fronts, at free ends and behind.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/piece.h"
#include "engine/frame/places.h"

namespace hs::frame {

// What others have worked out.
struct Asked {
  Levels levels;
  // Free area of each opening of a gas bay, cm2: so that both published forms are met.
  double gas_high_cm2 = 0, gas_low_cm2 = 0;
  // Where the ground was read: the top that the base's boards are cut to, and the highest and the
  // lowest ground under the base, all above the feet. The boxes take what is left.
  std::optional<double> base_mm;
  double ground_high_mm = 0, ground_low_mm = 0;

  bool operator==(const Asked&) const = default;
};

struct Bay {
  config::Holds holds = config::Holds::Doors;
  Block box;      // outside of its box
  Block opening;  // what is free between its sides, from the front of the box or face frame
};

struct Run {
  bool oven = false;
  Block counter;         // from the ground to the height in use, as wide as the counter's top
  Block boxes;           // all of its boxes
  double face_mm = 0;    // y of the fronts' faces
  double toe_mm = 0;     // y of the base's front
  double sheets_mm = 0;  // thickness of what is under the metal
  double top_mm = 0;     // where the metal's top lands, as built
  bool free_left = true, free_right = true;  // nothing of ours stands there
  std::vector<Bay> bays;                     // from the left
};

struct Measure {
  std::string name;  // as in frame.as_built
  double planned_mm = 0;
  double used_mm = 0;
  bool built = false;
  std::optional<double> ignored_mm{};  // measured, too far from what is planned to be believed
};

// Why no cabinet is drawn. `where`: a literal.
struct Refusal {
  std::string_view rule;
  double measured_mm = 0, limit_mm = 0;
  std::string_view where;
};

struct GasBay {
  bool oven = false;
  int bay = 0;
  double clear_width_mm = 0, clear_depth_mm = 0, clear_height_mm = 0;
};

// Between our counter and a grill beside it.
struct GrillGap {
  bool right = true;
  double free_mm = 0;               // negative: they overlap
  std::optional<double> step_mm;    // grill's shelf above our counter beside it
  std::optional<double> listed_mm;  // its manual's, at its sides
};

struct Frame {
  // Empty where anything was refused, and where nobody works at a counter of ours.
  std::vector<Piece> pieces;
  std::vector<Refusal> refusals;
  Places places;
  double base_mm = 0;     // its top, above the ground at the feet
  double low_mm = 0;      // the lowest ground that its boards reach down to; 0: not read
  std::vector<Run> runs;  // from the left; a masonry oven's pier is none
  std::vector<Measure> measures;
  int built_unknown = 0;  // measured pieces that are not there
  std::vector<GasBay> gas;
  std::optional<GrillGap> grill;
  std::optional<double> slab_mm;  // a block too low for a box: one slab

  bool made() const { return !pieces.empty(); }
};

inline constexpr double kFarOff_mm = 25;     // a slip of the tape, not a piece: our judgement
inline constexpr double kLeastBox_mm = 200;  // and of what is still a cabinet
inline constexpr double kLeastDepth_mm = 200;
inline constexpr double kLeastBay_mm = 150;
inline constexpr double kLeastFront_mm = 60;
inline constexpr double kSkirtAir_mm = 3;  // between a turned-down edge and the fronts
inline constexpr double kRiserWall_mm = 30;
inline constexpr double kSeam_mm = 1;  // a metal top's end where another counter meets it

// Any config that validate() passes, heights in the field table's ranges. Every number is finite.
// Some 20 us.
Frame frame_of(const config::Config& config, const Asked& asked);

// A board round the base as seen from above, and which way its outer face looks.
struct BaseBoard {
  Kind kind = Kind::BaseFront;  // BaseFront, BaseBack, BaseEnd
  bool oven = false;
  bool meets = false;  // an end beside another counter: what sticks out behind that one
  Face outside = Face::Near;
  Block place;  // bottom and top are 0: they are the ground's and the base's to say
};
// The boards of every base that frame_of() would draw for these heights, run by run from the left:
// front, back, left end, right end. None where the plan leaves no room for them.
std::vector<BaseBoard> base_boards(const config::Config& config, const Levels& levels);

// 64 bits over all that frame_of() reads, equal for equal answers on every machine.
std::uint64_t digest_of(const config::Config& config, const Asked& asked);

// The least height of a block under the oven that is made as a box.
double least_riser_mm(const config::Materials& build);

}  // namespace hs::frame
