#pragma once
// A piece of what is built, as plain data that the parts list, the drawings and the loads read:
// what it is, where it is, which way its grain runs, its faces, edges and holes.

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "engine/base/block.h"

namespace hs::frame {

enum class Axis : std::uint8_t { X, Y, Z };
// The six faces of a block, as the cook sees them.
enum class Face : std::uint8_t { Left, Right, Near, Far, Below, Above };
constexpr std::size_t index_of(Face face) { return static_cast<std::size_t>(face); }
constexpr Axis axis_of(Face face) { return static_cast<Axis>(static_cast<std::uint8_t>(face) / 2); }
// At the high end of its axis: right, far, above.
constexpr bool is_high(Face face) { return index_of(face) % 2 == 1; }

enum class Material : std::uint8_t {
  Sheet,        // exterior plywood of the cabinets
  DrawerSheet,  // thinner, of the drawers' boxes
  Front,        // of doors and drawer fronts: cellular PVC
  FaceBoard,    // 1x boards of a face frame
  BaseBoard,    // round the base: cellular PVC, carries nothing
  Carrier,      // treated 2x lumber that carries the cabinets
  Metal,        // of the folded top
  Slab,         // stone, concrete or cement board, bought to size
};

enum class Kind : std::uint8_t {
  BaseFront,
  BaseBack,
  BaseEnd,
  Carrier,
  CrossPiece,
  Side,
  Bottom,
  Back,
  Stretcher,
  Deck,
  Shelf,
  Stile,
  Rail,
  Door,
  DrawerFront,
  DrawerSide,
  DrawerEnd,
  DrawerBottom,
  SlidePacker,
  Substrate,
  MetalTop,
  RiserFront,
  RiserSide,
  RiserRib,
  RiserTop,
  RiserCap,
  Slab,
};

// What goes on a face.
enum class Coat : std::uint8_t {
  Sealed,  // primed, not seen
  Inside,  // seen when a door is open
  Body,    // the cabinets' colour
  Front,   // doors' and drawers' colour
  Polish,  // bare metal
  Bare,    // nothing: treated lumber, stone
};

// What is done to an edge; None on the two wide faces.
enum class Edge : std::uint8_t {
  None,
  Sealed,   // hidden sheet edge: sealed before assembly
  Filled,   // seen sheet edge: filled, rounded 2 mm, primed
  Eased,    // board or PVC: its sharp corner taken off
  Cut,      // as sawn
  Folded,   // metal, turned down
  Straight  // metal, not turned down
};

enum class HoleUse : std::uint8_t { ShelfPin, HingeCup, Pull, Vent };

// A hole, slot or row of equal ones, seen from `face`. u and v are the block's other two axes in
// the order x, y, z, from the block's own low corner to the hole's middle.
struct Hole {
  HoleUse use = HoleUse::ShelfPin;
  Face face = Face::Near;
  double u_mm = 0, v_mm = 0;
  bool round = true;
  double wide_mm = 0, high_mm = 0;  // along u and v; round: both the diameter
  double deep_mm = 0;               // 0: through
  int count = 1;                    // in a row along v (along u where `along_u`)
  double pitch_mm = 0;
  bool along_u = false;
};

struct Surface {
  Coat coat = Coat::Sealed;
  Edge edge = Edge::None;
  bool operator==(const Surface&) const = default;
};

// Metal whose end is straight where it meets another top, but turned down from that one's back on:
// there it stands out by a fold's fit and thickness, over sheets that are not cut for it.
struct Tail {
  Face side = Face::Right;
  double from_mm = 0;  // y where it begins; it ends at the back
  double out_mm = 0;   // beyond the straight edge, outside
  double down_mm = 0;  // as turned_down_mm()
};

// bay: counted from the run's left end from 0; kWholeRun: of no bay. Nth: the how manyeth of its
// kind in the bay.
inline constexpr int kWholeRun = -1;
struct Piece {
  Kind kind = Kind::Side;
  Material material = Material::Sheet;
  bool oven = false;  // of the run under the oven, else of the dough counter's
  int bay = kWholeRun;
  int nth = 0;
  Block place;
  std::vector<Block> folds;  // metal: what is turned down from `place`, and what tails add to it
  std::vector<Tail> tails;
  Axis thick = Axis::X;
  Axis grain = Axis::Z;
  bool has_grain = true;
  std::array<Surface, 6> surfaces{};
  std::vector<Hole> holes;

  Surface& at(Face face) { return surfaces[index_of(face)]; }
  const Surface& at(Face face) const { return surfaces[index_of(face)]; }
};

constexpr double low_of(const Block& b, Axis axis) {
  return axis == Axis::X ? b.left_mm : axis == Axis::Y ? b.near_mm : b.bottom_mm;
}
constexpr double size_of(const Block& b, Axis axis) {
  return axis == Axis::X   ? b.right_mm - b.left_mm
         : axis == Axis::Y ? b.far_mm - b.near_mm
                           : b.top_mm - b.bottom_mm;
}
// The two axes that are not `axis`, in the order x, y, z: u and v of a hole.
constexpr Axis u_of(Axis axis) { return axis == Axis::X ? Axis::Y : Axis::X; }
constexpr Axis v_of(Axis axis) { return axis == Axis::Z ? Axis::Y : Axis::Z; }

// Everything that it fills: its folds, then its place.
std::vector<Block> blocks_of(const Piece& piece);

// How far metal is turned down at that side, outside: from its upper face to the fold's lowest
// edge. 0: it is not. The one place that says so: orders, lists and drawings ask it.
double turned_down_mm(const Piece& piece, Face side);

std::string_view kind_name(Kind kind);              // "side", "drawer front"
std::string_view material_name(Material material);  // "exterior plywood"
std::string_view coat_name(Coat coat);
std::string_view edge_name(Edge edge);

}  // namespace hs::frame
