#pragma once
// A folded metal top as a fabricator wants it: the flat blank with its bend lines and holes, what
// is measured outside and what inside, mass, the sheet it comes from, or why it cannot be folded.
//
// The top lies over a painted substrate; flanges are turned down 90 degrees at any of its four
// sides. Front and back flanges run over the whole width, side flanges stand between them. A
// flange's lowest edge, below the substrate, is where water drips off; it may be hemmed, the return
// inside. A corner is open: a gap between the side flange's end and the lapping one's inside, and a
// square relief where the two bends would meet. Blank frame: x to the right and y to the back as
// the cook sees it, from the blank's own front left corner, the top's face up; every bend goes
// down.
// Where a side flange is not as long as its side it begins at a slot one thickness wide, to where
// its bend ends.
//
// Upstands, drips kicked outward and tops that are not rectangles are left out.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/sheet/bend.h"

namespace hs::sheet {

enum class Side : std::uint8_t { Front, Back, Left, Right };
constexpr std::size_t index_of(Side side) { return static_cast<std::size_t>(side); }
std::string_view side_name(Side side);  // "front flange"

enum class Hem : std::uint8_t { None, Closed, Open };

// A flange that is not there has down_mm 0.
struct Flange {
  double down_mm = 0;    // outside: from the top's upper face to the flange's lowest edge
  Hem hem = Hem::None;   // the return always inside
  double return_mm = 0;  // of the hem, outside, from the lowest edge up
  double gap_mm = 0;     // an open hem's inside
  // Left and right: only so much of the side, up to the back, is turned down; 0: all of it. The
  // rest of the side is a straight edge, so far inside the flange's outside.
  double long_mm = 0, step_mm = 0;
};

// A round hole. In the top: x, y from the outside of its front left corner. In a flange: x along
// it from the top's outside corner (left for front and back, front for the sides), y down from the
// top's upper face.
struct Hole {
  bool in_top = true;
  Side side = Side::Front;  // the flange, where not in the top
  double x_mm = 0, y_mm = 0, diameter_mm = 0;
};

enum class Polish : std::uint8_t { None, AlongWidth, AlongDepth };

struct Top {
  Metal metal;
  double width_mm = 0, depth_mm = 0;  // outside, over the flanges
  std::array<Flange, 4> flanges{};    // by Side
  double corner_gap_mm = 0.5;         // between flanges at a corner, to be welded or left open
  Polish polish = Polish::AlongWidth;
  std::vector<Hole> holes;
  Limits limits;
};

// The substrate that a top is to lie over: bare sizes, what paint adds on each face, the bed of
// adhesive or mat under the metal, and the room a flange keeps from the painted edge.
struct Substrate {
  double width_mm = 0, depth_mm = 0, thick_mm = 0;
  double paint_mm = 0.2;  // on each face, dry: primer and two coats, common practice
  double bedding_mm = 1;
  double fit_mm = 1.5;  // each side that has a flange
  double drip_mm = 12;  // how far a flange hangs below the painted substrate
  std::array<bool, 4> flanged{true, true, true, true};  // by Side
};

// What top goes over this substrate? Outside sizes: the painted substrate, and at each flanged side
// fit and metal. Flanges: metal, bed, painted substrate, drip. Nothing is rounded.
Top top_over(const Substrate& substrate, const Metal& metal);

// Does the inside of the bend clear a sharp corner of the substrate? The least the corner must be
// rounded to, mm; 0: it clears as it is. Computed: the bend's inside is an arc, the corner stands
// fit and bed away from its faces.
double corner_ease_mm(double inside_radius_mm, double fit_mm, double bedding_mm);

struct Spot {
  double x_mm = 0, y_mm = 0;
};
// The middle of a bend's arc, where the brake's blade comes down; half the allowance lies on either
// side of it.
struct BendLine {
  Spot from, to;
  Side side = Side::Front;
  bool hem = false;      // 180 degrees, else 90
  double radius_mm = 0;  // inside
  double arc_mm = 0;     // bend allowance
  double deduct_mm = 0;  // bend deduction; a hem: what it takes from flange and return
};
struct BlankHole {
  Spot at;
  double diameter_mm = 0;
};

// What cannot be folded, or (`caution`) what the fabricator is to be asked about.
struct Remark {
  std::string_view where;  // "front flange", "hole"
  int number = 0;          // of the hole, from 1; 0: not one of several
  std::string_view what;   // "is too short to be bent"
  double measured_mm = 0, limit_mm = 0;
  bool at_most = false;  // the limit is the most, else the least
  bool caution = false;
  bool length = true;  // else a number without a unit
  std::string_view advice;
};
// "front flange is too short to be bent: 4.0 mm, where at least 6.4 mm is needed. Make it longer."
// In decimal inches or mm, as a fabricator reads them.
std::string words(const Remark& remark, Unit unit);

// A length of the order, and which side of the metal it is measured on.
enum class Reads : std::uint8_t { Outside, Inside, Flat };
struct Told {
  std::string_view where, what;  // "top", "width"
  double mm = 0;
  Reads reads = Reads::Outside;
};

struct Sheet {
  double long_mm = 0, wide_mm = 0;
};
// 48 x 96, 48 x 120 and 60 x 120 in, polish along the length: trade sizes, from memory.
std::span<const Sheet> usual_sheets();

struct Blank {
  double width_mm = 0, depth_mm = 0;  // over all
  std::vector<Spot> outline;          // closed, anticlockwise from the front left
  std::vector<BendLine> bends;
  std::vector<BlankHole> holes;
  std::vector<Told> told;
  // The notch where two flanges meet, from the side's blank edge to the front's or back's, as
  // distances from the two; folded, its square relief reaches R + T from either outside face. Empty
  // and 0: no such corner.
  std::vector<Spot> notch;
  double relief_mm = 0;
  // Where a side flange shorter than its side begins: on the straight edge's line.
  std::vector<Spot> starts;
  double area_mm2 = 0;  // without notches and holes
  double mass_kg = 0;
  int sheet = -1;  // the first of usual_sheets() that it fits on by its polish; -1: none
  std::vector<Remark> refusals, cautions;

  bool possible() const { return refusals.empty(); }
};

// The flat of a top. Where it cannot be folded `refusals` says why, and outline, bends, holes and
// numbers are empty. Any finite numbers; what is not one is refused. Lengths are exact for the K
// given. Angles come out within 1 degree, 0.5 in a good shop (fabricators, seen).
Blank blank_of(const Top& top);

}  // namespace hs::sheet
