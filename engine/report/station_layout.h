#pragma once
// Where everything of the station stands, as boxes, outlines and standing places: the one value
// that the front view, the plan and the scene are drawn from.
//
// Station frame, mm: x to the cook's right along the front, 0 at the middle of the mouth; y into
// the oven, 0 at the outer mouth plane; z up from the ground at the cook's feet. Heights, widths
// and distances are the Config's and the Evaluation's. What nobody gives is drawn, not measured,
// and says so beside it: which side the dough counter is on, a cover's sides and back and where its
// posts stand, how thick a top or a wall looks, where a child's own table is.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/clearance/boxes.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/drawing.h"

namespace hs::report {

using hs::Block;

// Where a cook stands or sits: the eye's plumb line, upright. The toe tips are body.toes_mm in
// front of it.
struct Stand {
  double x_mm = 0, y_mm = 0;
  double z_mm = 0;        // what the feet stand on, above the ground
  double facing_deg = 0;  // 0 into the oven (+y), positive turned to the right
};

struct CookPlace {
  std::optional<Stand> watching, working;  // at the oven; upright, at the distances in use
  std::optional<Stand> prep;               // at the dough counter; a young child's: on its step
  std::optional<Stand> table;              // a young child's own low table, away from the oven
  Stand home;                              // while somebody else is at the oven
  std::optional<Block> table_box, step_box;
};

// Free room asked for on one side of the oven, the flue or a grill, as evaluated
// (Surroundings::hot). Where nobody has said how much, the box has a drawn depth (kUnknownRoom_mm)
// and must look and read as unknown.
inline constexpr double kUnknownRoom_mm = 120;
struct ClearZone {
  clearance::Hot hot = clearance::Hot::Oven;
  clearance::Need need;
  Block box;
  bool known() const { return need.required_mm.has_value(); }
};

// Room to work, as evaluated (Surroundings::room): what a rule asks to stay free in plan.
struct RoomZone {
  std::string_view rule;      // "reach.aisle"
  std::vector<Spot> outline;  // x and y; closed, anticlockwise from above
  std::optional<double> required_mm, available_mm;
};

// The nearest thing that was measured on a side of the oven, or behind the cook (Front). How thick
// and high it looks is drawn.
struct Thing {
  clearance::Side side = clearance::Side::Back;
  Block box;
};

// Free counter beside the oven to set a hot pizza down.
struct Landing {
  Block box;          // no height: it lies on its counter's top
  bool given = true;  // false: nobody has said how wide; the box has the advised width
};

struct Cover {
  double underside_mm = 0;
  Block roof;                // its sides and back are drawn
  bool front_given = false;  // its front edge is the Config's; otherwise that is drawn too
  std::vector<Block> posts;  // places drawn
};

struct StationLayout {
  double front_mm = 0;              // y of the counters' front edge
  bool dough_right = true;          // which side of the oven the dough counter is on (drawn)
  bool masonry_base = false;        // the oven's stand is a pier of masonry, not a cabinet
  double top_mm = 40;               // how thick a counter's top looks
  std::optional<Block> oven_stand;  // cabinet or pier under the oven and beside it
  std::optional<Block> riser;       // block between a lower counter and the oven
  std::optional<Block> dough_counter;
  // The oven; absent together when nobody works at it.
  std::optional<Block> oven_body;
  double floor_mm = 0;                         // of the oven, above the ground
  std::vector<Spot> outer_mouth, inner_mouth;  // x and z; closed, from the floor's left corner on
  double throat_mm = 0;                        // y of the inner mouth's plane
  std::optional<Block> brow;
  std::vector<Spot> oven_floor;  // x and y at floor_mm, anticlockwise from above
  std::vector<ClearZone> clear;  // the oven's left, right, back, above, front, below; flue, grill
  std::optional<Block> flue, grill;  // drawn sizes
  std::vector<RoomZone> room;
  std::optional<Landing> landing_left, landing_right;
  std::vector<Thing> things;
  std::optional<Cover> cover;
  // The ground.
  std::optional<double> feet_line_y_mm;  // toe tips of everyone watching stay in front of it
  double child_free_mm = 0;              // round the oven's body; clearance::kChildFree_mm
  std::vector<Spot> child_free;          // Surroundings::child_free
  std::vector<CookPlace> cooks;          // as in the Config
  Block extent;  // the ground plan and height of what is built: counters, oven, tables
};

StationLayout station_layout(const config::Config& config, const evaluate::Evaluation& evaluation);

// Where cook `index` is while `person` is the one at the oven: watching, or at home.
const Stand& stand_of(const StationLayout& layout, std::size_t index, std::size_t person);

}  // namespace hs::report
