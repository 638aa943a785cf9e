#pragma once
// From the ground's heights to a base cut once: each panel's bottom as heights every so many mm and
// at every joint, how it is drawn on the board, what stays of the board, and what to do where a cut
// is not the way.
//
// Straight lines between readings. The arithmetic is exact; the readings are not (levels.h): one
// cut, and perhaps a trim. Heights in mm above the ground at the working side's feet.

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "engine/survey/levels.h"

namespace hs::survey {

// A panel seen from above, as one stands before its outer face: from its left to its right end.
struct PanelLine {
  std::string_view name;  // "front of the oven's counter"
  double from_x_mm = 0, from_y_mm = 0, to_x_mm = 0, to_y_mm = 0;

  double length_mm() const;
};

// The ground under a panel, straight from knot to knot.
struct Knot {
  double along_mm = 0;  // from the panel's left end
  double ground_mm = 0;
  bool read = false;   // a reading; else an end that has its neighbour's height
  bool joint = false;  // where two stones meet
  bool doubtful = false;
};

struct Ground {
  std::vector<Knot> knots;   // from end to end, along_mm rising; empty where it is not known
  std::string_view lacks;    // what is to be read first; empty: nothing
  double widest_gap_mm = 0;  // between two readings
  std::vector<std::size_t> doubtful;  // readings under it to be taken again: Point::first
  double high_mm = 0, low_mm = 0;
  double high_at_mm = 0, low_at_mm = 0;  // along the panel; ties: the first

  double at(double along_mm) const;  // between the ends
  bool known() const { return !knots.empty(); }
};

// What ground does a panel stand on? Points of the panel within kOnLine_mm of its line, kinds panel
// and joint; a reading within kAtEnd_mm of an end stands for the end. Not known where an end has
// none. `feet_mm`: the points' height at the feet, which becomes 0. Points at one place along the
// panel: the higher counts, because the board would stand on it.
inline constexpr double kOnLine_mm = 60, kAtEnd_mm = 120;  // our judgement
Ground ground_under(const PanelLine& panel, std::span<const Point> points, double feet_mm);

// Where a straightedge touches when it is laid on the ground along the panel without shims: the
// upper hull's edge over its middle. `rise_mm`: how much higher its right end then is.
struct Rest {
  double left_mm = 0, right_mm = 0;  // along the panel; equal: it rocks on one point
  double rise_mm = 0;
};
Rest rest_on(const Ground& ground, double length_mm);

// Every place where a level board that comes down first touches: the highest ground, to 0.05 mm.
std::vector<double> level_touches(const Ground& ground);

enum class Way : unsigned char {
  Straight,  // no more than kStraight_mm to cut: leave it straight
  Shim,      // no more than kShim_mm: shims are quicker than a scribe, and can be set again
  Scribe,
  Legs,  // the board cannot reach, or the cut leaves a wedge: legs, a taller board, or relevel
};
inline constexpr double kStraight_mm = 1;
inline constexpr double kShim_mm = 6;    // 1/4 in: our judgement
inline constexpr double kWedge_mm = 60;  // our judgement

struct Ordinate {
  double along_mm = 0;
  double height_mm = 0;  // of board that stays, from its top edge; to 0.1 mm
  double cut_mm = 0;     // up from the bottom edge of the board ripped to rip_mm
  bool read = false, joint = false, doubtful = false;
};

struct Cut {
  double least_mm = 0, most_mm = 0;  // of board that stays, at the highest and the lowest ground
  double fall_mm = 0;                // under the panel, high to low
  double rip_mm = 0;                 // rip the board to this first
  // Compass, with the panel shimmed level on its highest ground: of the ripped board, and of the
  // board as it comes.
  double compass_mm = 0, compass_unripped_mm = 0;
  std::vector<double> touches;
  Rest rest;
  Way way = Way::Scribe;
  std::vector<Ordinate> ordinates;
};

struct Board {
  double height_mm = 0;            // as it comes
  double least_mm = 0;             // that must stay
  double step_mm = 100;            // between ordinates
  std::optional<double> top_mm{};  // wanted top of the base; absent: as near usual_mm as it goes
  double usual_mm = 100;
  // The highest and the lowest ground read within the base, between its boards: what carries stands
  // on it, and the top clears it as it clears the ground under a board.
  std::optional<double> inside_high_mm{}, inside_low_mm{};
};

struct Base {
  double top_mm = 0;     // of the base, in use
  bool possible = true;  // some height suits this board
  bool fits = true;      // the one in use does
  // Heights of the top that leave enough at the highest ground and reach the lowest.
  double lowest_top_mm = 0, highest_top_mm = 0;
  double board_needed_mm = 0;      // least board for this ground
  double high_mm = 0, low_mm = 0;  // under the boards
  std::size_t high_panel = 0, low_panel = 0;
  double highest_mm = 0, lowest_mm = 0;  // under the boards and between them
  std::vector<std::optional<Cut>> cuts;  // as the panels; absent: its ground is not known
  std::vector<std::size_t> order;        // panels, the first one to be set first
};

// How is the base cut? One level top over all panels whose ground is known. The first panel in
// `order` has the highest ground: set on it, its top is the base's. nullopt: no panel's ground is
// known. Law: with every ordinate cut, the panels on this ground have their tops at top_mm, to the
// ordinates' own rounding of 0.1 mm.
std::optional<Base> base_on(std::span<const PanelLine> panels, std::span<const Ground> grounds,
                            const Board& board);

}  // namespace hs::survey
