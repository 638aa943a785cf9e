#include "engine/report/pulled_apart.h"

#include <algorithm>

namespace hs::report {
namespace {

using frame::Kind;

constexpr double kRuns_mm = 420, kBays_mm = 60;

Pull of_kind(const frame::Piece& piece) {
  constexpr double kFront = -420, kFrame = -210;
  switch (piece.kind) {
    case Kind::BaseFront:
      return {0, kFront, -420};
    case Kind::BaseBack:
    case Kind::BaseEnd:
      return {0, 0, -420};
    case Kind::Carrier:
    case Kind::CrossPiece:
      return {0, 0, -300};
    case Kind::Bottom:
      return {0, 0, -130};
    case Kind::Back:
      return {0, 350, 0};
    case Kind::Stretcher:
    case Kind::Deck:
      return {0, 0, 130};
    case Kind::Stile:
    case Kind::Rail:
      return {0, kFrame, 0};
    case Kind::Door:
    case Kind::DrawerFront:
      return {0, kFront, 0};
    case Kind::DrawerSide:
    case Kind::DrawerEnd:
    case Kind::DrawerBottom:
      return {0, kFrame, 0};
    case Kind::Substrate:
      return {0, 0, piece.nth == 0 ? 330.0 : 430.0};
    case Kind::MetalTop:
      return {0, 0, 560};
    case Kind::RiserFront:
    case Kind::RiserSide:
    case Kind::RiserRib:
    case Kind::Slab:
      return {0, 0, 760};
    case Kind::RiserTop:
      return {0, 0, 900};
    case Kind::RiserCap:
      return {0, 0, 1020};
    case Kind::Side:
    case Kind::Shelf:
    case Kind::SlidePacker:
      return {};
  }
  return {};
}

double of_run(const frame::Frame& frame, bool oven) {
  return frame.runs.size() > 1 && oven == frame.runs[1].oven ? kRuns_mm : 0;
}

}  // namespace

Pull pull_of(const frame::Frame& frame, const frame::Piece& piece, bool bays_apart) {
  Pull by = of_kind(piece);
  by.x_mm += of_run(frame, piece.oven);
  if (bays_apart && piece.bay != frame::kWholeRun) by.x_mm += kBays_mm * piece.bay;
  return by;
}

Pull pull_of_oven(const frame::Frame& frame) {
  if (frame.places.masonry_base) return {};
  double up = 0;
  for (const frame::Piece& piece : frame.pieces) {
    if (piece.oven) up = std::max(up, of_kind(piece).z_mm);
  }
  constexpr double kOver_mm = 140;
  return {of_run(frame, true), 0, up + kOver_mm};
}

Block moved(const Block& b, const Pull& by) {
  return {b.left_mm + by.x_mm, b.right_mm + by.x_mm,  b.near_mm + by.y_mm,
          b.far_mm + by.y_mm,  b.bottom_mm + by.z_mm, b.top_mm + by.z_mm};
}

}  // namespace hs::report
