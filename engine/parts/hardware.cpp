#include "engine/parts/hardware.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "engine/frame/stock.h"

namespace hs::parts {
namespace {

using frame::Kind;
using frame::Piece;

constexpr double kJointEnd_mm = 40, kJointPitch_mm = 150;
constexpr double kBoardPitch_mm = 16 * frame::kInch_mm;  // screws of PVC boards
constexpr double kGlue_l_m2 = 0.2, kFiller_mm = 1, kPreserve_l_m2 = 0.3;
constexpr double kPackerUnder_mm = 20;  // of a packer, under a screw's head: a wider one is bored
constexpr double kScrewShort_mm = 3;    // a screw ends this far inside the far face
constexpr double kLayer_mm2 = 200.0 * 200.0;  // of one screw between two sheets

double size(const Piece& piece, frame::Axis axis) { return frame::size_of(piece.place, axis); }

// Screws across a PVC board: two to 6 in, three to 10, four for 12. A magazine's answer, read.
int across(double width_mm) {
  return width_mm <= *frame::dressed_width_mm(6) + 0.05    ? 2
         : width_mm <= *frame::dressed_width_mm(10) + 0.05 ? 3
                                                           : 4;
}

int hinges(const Piece& door) {
  for (const frame::Hole& hole : door.holes) {
    if (hole.use == frame::HoleUse::HingeCup) return hole.count;
  }
  const double high_mm = door.place.height_mm();
  return high_mm < 900 ? 2 : high_mm < 1600 ? 3 : 4;
}

// The longest screw that stays inside what it holds together, of the lengths that are sold.
int screw_mm(double through_mm) {
  int best_mm = 10;
  for (const int sold_mm : {12, 16, 20, 25, 30, 35, 40, 50}) {
    if (sold_mm <= through_mm - kScrewShort_mm) best_mm = sold_mm;
  }
  return best_mm;
}

struct Counts {
  int hinges = 0, face_hinges = 0, pulls = 0, pins = 0, box = 0, drawer = 0, frame = 0, boxes = 0;
  int crosses = 0, shims = 0, boards = 0, layers = 0, blocks = 0;
  double side_mm = 0;                // the thinnest side of a box
  std::map<long long, int> packers;  // screws by the packer's width, 0.1 mm
  double bed_l = 0, glued_mm2 = 0, filled_mm2 = 0, cut_mm2 = 0;
  std::map<long long, int> slides;            // by length, mm
  std::map<std::pair<bool, int>, int> sides;  // boxes by run and bay
};

// Edges that are filled, and those of treated lumber that a saw opened.
void count_edges(Counts& out, const Piece& piece) {
  for (std::size_t f = 0; f < piece.surfaces.size(); ++f) {
    const auto face = static_cast<frame::Face>(f);
    const frame::Axis axis = frame::axis_of(face);
    if (axis == piece.thick) continue;
    const double mm2 = size(piece, frame::u_of(axis)) * size(piece, frame::v_of(axis));
    if (piece.at(face).edge == frame::Edge::Filled) out.filled_mm2 += mm2;
    const bool milled = face == frame::Face::Below;
    if (piece.material == frame::Material::Carrier && !milled) out.cut_mm2 += mm2;
  }
}

void count(Counts& out, const Piece& piece, const Choices& choices) {
  const double x = size(piece, frame::Axis::X), y = size(piece, frame::Axis::Y),
               z = size(piece, frame::Axis::Z), thick = size(piece, piece.thick);
  count_edges(out, piece);
  switch (piece.kind) {
    case Kind::Bottom:
    case Kind::Deck:
    case Kind::Stretcher:
      out.box += 2 * screws_along(y);
      out.glued_mm2 += 2 * y * thick;
      break;
    case Kind::Back:
      // To both sides, to the bottom and to what closes the box above.
      out.box += 2 * screws_along(z) + 2 * screws_along(x);
      out.glued_mm2 += 2 * (x + z) * thick;
      break;
    case Kind::Side:
      out.side_mm = out.side_mm > 0 ? std::min(out.side_mm, thick) : thick;
      ++out.sides[{piece.oven, piece.bay}];
      break;
    case Kind::Shelf:
      out.pins += 4;
      break;
    case Kind::Door: {
      const bool cups =
          std::any_of(piece.holes.begin(), piece.holes.end(),
                      [](const frame::Hole& hole) { return hole.use == frame::HoleUse::HingeCup; });
      (cups ? out.hinges : out.face_hinges) += hinges(piece);
      ++out.pulls;
      break;
    }
    case Kind::DrawerFront:
      ++out.pulls;
      out.drawer += 4;
      break;
    case Kind::DrawerSide:
      if (piece.nth % 2 == 0) ++out.slides[std::llround(y)];
      break;
    case Kind::DrawerEnd:
      out.drawer += 2 * screws_along(z);
      out.glued_mm2 += 2 * z * thick;
      break;
    case Kind::DrawerBottom:
      out.drawer += 2 * screws_along(x) + 2 * screws_along(y);
      break;
    case Kind::SlidePacker:
      out.packers[std::llround(10 * x)] += screws_along(y);
      break;
    case Kind::Stile:
      // The first two stand at the ends; the rest end between the rails.
      if (piece.nth >= 2) out.frame += 4;
      out.box += screws_along(z);
      break;
    case Kind::Rail:
      out.frame += 4;
      out.box += screws_along(x);
      break;
    case Kind::BaseFront:
    case Kind::BaseBack:
      out.boards += across(z) * (static_cast<int>(std::ceil(x / kBoardPitch_mm)) + 1);
      break;
    case Kind::BaseEnd:
      out.boards += across(z) * (static_cast<int>(std::ceil(y / kBoardPitch_mm)) + 1);
      break;
    case Kind::CrossPiece:
      ++out.crosses;
      break;
    case Kind::Carrier:
      out.shims += frame::supports_under(x);
      break;
    case Kind::Substrate:
      out.layers += std::max(4, static_cast<int>(std::ceil(x * y / kLayer_mm2)));
      break;
    case Kind::MetalTop:
    case Kind::RiserCap:
      out.bed_l += x * y * choices.bedding_mm * 1e-6;
      break;
    case Kind::RiserRib:
      // The top lies on each rib as on the walls.
      out.blocks += screws_along(y);
      out.glued_mm2 += y * thick;
      [[fallthrough]];
    case Kind::RiserSide:
      out.blocks += 2 * screws_along(z);
      out.glued_mm2 += 2 * z * thick;
      out.bed_l += x * y * choices.bedding_mm * 1e-6;
      break;
    case Kind::RiserTop:
      out.blocks += 2 * screws_along(x) + 2 * screws_along(y);
      out.glued_mm2 += 2 * (x + y) * thick;
      break;
    case Kind::RiserFront:
    case Kind::Slab:
      out.bed_l += x * y * choices.bedding_mm * 1e-6;
      break;
  }
}

}  // namespace

int screws_along(double joint_mm) {
  const double between_mm = joint_mm - 2 * kJointEnd_mm;
  return std::max(2, static_cast<int>(std::ceil(between_mm / kJointPitch_mm - 1e-9)) + 1);
}

std::vector<Hardware> hardware_of(std::span<const Piece> pieces, const Choices& choices) {
  Counts n;
  for (const Piece& piece : pieces) count(n, piece, choices);
  std::vector<Hardware> out;
  const auto add = [&out](std::string name, double quantity, std::string_view unit,
                          std::string_view rule) {
    if (quantity > 0) out.push_back({std::move(name), quantity, unit, rule});
  };
  const int boxes = static_cast<int>(n.sides.size());
  add("cup hinge, 35 mm, stainless", n.hinges, "",
      "2 a door, 3 from 900 mm, 4 from 1600 mm; each with its plate, set by the hinge's own "
      "template at the cups' heights");
  add("hinge on the face, stainless", n.face_hinges, "",
      "doors thinner than 15 mm: 2, 3 from 900 mm, 4 from 1600 mm");
  for (const auto& [length_mm, pairs] : n.slides) {
    add("side slides, " + std::to_string(length_mm) + " mm", pairs, "pair", "one pair a drawer");
  }
  add("pull, 96 mm", n.pulls, "", "one a door and a drawer");
  add("shelf pin, 5 mm", n.pins, "", "4 a shelf");
  add("exterior screw 4.5 x 50", n.box, "",
      "boxes: each joint 40 mm from its ends and at most 150 mm apart, at least 2");
  std::map<int, int> packers;  // by the screw's length
  for (const auto& [tenths_mm, screws] : n.packers) {
    const double packer_mm = std::min(static_cast<double>(tenths_mm) / 10, kPackerUnder_mm);
    packers[screw_mm(packer_mm + n.side_mm)] += screws;
  }
  for (const auto& [length_mm, screws] : packers) {
    add("exterior screw 3.5 x " + std::to_string(length_mm) + ", packer", screws, "",
        "slide packers, as boxes: through the packer into the side and not out of it; one wider "
        "than 20 mm is bored until 20 mm are left under the head");
  }
  add("exterior screw 3.5 x 35", n.drawer, "", "drawers: the same, and 4 a front");
  add("pocket screw, exterior", n.frame, "", "face frame: 2 a joint");
  add("connecting bolt", boxes > 1 ? 4 * (boxes - 1) : 0, "",
      "4 between neighbouring boxes: 60 mm from the corners of their sides, clear of slides and "
      "pins, drilled through both once they are clamped in line");
  add("exterior screw 5 x 70", 4 * boxes, "",
      "4 from each box into the base: through its bottom, near its corners");
  add("structural screw 6 x 100", 4 * n.crosses, "", "2 at each end of a cross piece");
  add("pair of shims", n.shims, "",
      "under each carrying board one at both ends and between them at most 400 mm apart, by the "
      "ends of cross pieces where there is one");
  add("screw for cellular PVC", n.boards, "",
      "every 16 in and at both ends: 2 in boards to 6 in, 3 to 10 in, 4 in 12 in");
  add("exterior screw 4.5 x 30", n.layers, "",
      "sheets under the metal: one for each 200 x 200 mm, at least 4 a piece");
  add("exterior screw 4.5 x 50, block", n.blocks, "",
      "as boxes: each joint, the top on its walls and on its ribs too");
  const auto tenths = [](double litres) { return std::ceil(litres * 10 - 1e-9) / 10; };
  add("exterior wood glue", tenths(n.glued_mm2 * 1e-6 * kGlue_l_m2), "l",
      "0.2 l for each square metre of joint; ask the label");
  add("edge filler, exterior", tenths(n.filled_mm2 * kFiller_mm * 1e-6), "l",
      "1 mm over every sheet edge that is seen");
  add("preservative for cut lumber", tenths(n.cut_mm2 * 1e-6 * kPreserve_l_m2), "l",
      "sawn ends and edges of treated lumber, two coats: 0.3 l for each square metre");
  add(std::string(kBeddingAdhesive), tenths(n.bed_l), "l",
      "area of the metal, and of what of the oven's block or slab stands on it, times the bed's "
      "thickness");
  return out;
}

}  // namespace hs::parts
