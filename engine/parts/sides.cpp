#include "engine/parts/sides.h"

#include <algorithm>
#include <vector>

namespace hs::parts {
namespace {

using frame::Axis;
using frame::Coat;
using frame::Face;
using frame::HoleUse;
using frame::Kind;
using frame::Piece;

// The side away from the pull, and the one that the cups are at.
bool hinged_right(const Piece& door) {
  for (const frame::Hole& hole : door.holes) {
    const bool right = hole.u_mm > door.place.width_mm() / 2;
    if (hole.use == HoleUse::HingeCup) return right;
    if (hole.use == HoleUse::Pull) return !right;
  }
  return false;
}

// Upright, from left to right through its thickness.
std::string_view across_x(const Piece& piece, bool right) {
  constexpr std::string_view kSides[] = {"inside", "outside"};
  switch (piece.kind) {
    case Kind::Side:
    case Kind::DrawerSide:
      // The left one comes first.
      return kSides[right == (piece.nth % 2 == 1) ? 1 : 0];
    case Kind::BaseEnd:
    case Kind::RiserSide:
      return kSides[piece.at(right ? Face::Right : Face::Left).coat == Coat::Body ? 1 : 0];
    default:
      return right ? "right face" : "left face";
  }
}

// Upright, from the cook to the back through its thickness.
std::string_view across_y(const Piece& piece, bool far) {
  switch (piece.kind) {
    case Kind::Back:
    case Kind::BaseBack:
      return far ? "outside" : "inside";
    case Kind::RiserFront:
    case Kind::DrawerEnd:
      return far == (piece.nth % 2 == 1) ? "outside" : "inside";
    case Kind::Door:
    case Kind::DrawerFront:
    case Kind::BaseFront:
    case Kind::Stile:
    case Kind::Rail:
      return far ? "inside" : "outside";
    default:
      return far ? "back face" : "front face";
  }
}

}  // namespace

std::string_view side_of(const Piece& piece, Face face) {
  const Axis axis = frame::axis_of(face);
  const bool high = frame::is_high(face);
  if (axis == piece.thick) {
    if (axis == Axis::Z) return high ? "top" : "underside";
    return axis == Axis::X ? across_x(piece, high) : across_y(piece, high);
  }
  if (axis == Axis::Z) return high ? "upper edge" : "lower edge";
  if (axis == Axis::Y) return high ? "back edge" : "front edge";
  if (piece.kind == Kind::Door) return high == hinged_right(piece) ? "hinged edge" : "pull's edge";
  return high ? "right edge" : "left edge";
}

std::array<std::string, 6> sides_of(const Part& part, std::span<const Piece> pieces) {
  std::array<std::string, 6> out;
  for (std::size_t at = 0; at < out.size(); ++at) {
    std::vector<std::string_view> told;
    for (std::size_t i = 0; i < part.pieces.size(); ++i) {
      const std::string_view word = side_of(pieces[part.pieces[i]], part.faces[i][at]);
      if (std::find(told.begin(), told.end(), word) == told.end()) told.push_back(word);
    }
    std::sort(told.begin(), told.end());
    for (std::size_t i = 0; i < told.size(); ++i) {
      // "left or right edge": what they are both called is said once.
      const std::size_t space = told[i].rfind(' ');
      const bool shared = i + 1 < told.size() && space != std::string_view::npos &&
                          told[i + 1].ends_with(told[i].substr(space));
      out[at] += (i == 0 ? "" : " or ") + std::string(shared ? told[i].substr(0, space) : told[i]);
    }
  }
  return out;
}

}  // namespace hs::parts
