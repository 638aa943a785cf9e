#include "engine/frame/piece.h"

#include <algorithm>
#include <cmath>

namespace hs::frame {

std::vector<Block> blocks_of(const Piece& piece) {
  std::vector<Block> all = piece.folds;
  all.push_back(piece.place);
  return all;
}

double turned_down_mm(const Piece& piece, Face side) {
  constexpr double kSame_mm = 1e-6;
  const Axis axis = axis_of(side);
  const auto end_of = [&](const Block& block) {
    return low_of(block, axis) + (is_high(side) ? size_of(block, axis) : 0);
  };
  for (const Block& fold : piece.folds) {
    const double thin_mm = std::min(fold.width_mm(), fold.depth_mm());
    const bool along = std::abs(size_of(fold, axis) - thin_mm) < kSame_mm;
    if (along && std::abs(end_of(fold) - end_of(piece.place)) < kSame_mm) {
      return piece.place.top_mm - fold.bottom_mm;
    }
  }
  return 0;
}

std::string_view kind_name(Kind kind) {
  constexpr std::string_view kNames[] = {"base board, front",
                                         "base board, back",
                                         "base board, end",
                                         "carrying board",
                                         "cross piece",
                                         "side",
                                         "bottom",
                                         "back",
                                         "stretcher",
                                         "deck",
                                         "shelf",
                                         "stile",
                                         "rail",
                                         "door",
                                         "drawer front",
                                         "drawer side",
                                         "drawer end",
                                         "drawer bottom",
                                         "slide packer",
                                         "substrate",
                                         "metal top",
                                         "block front",
                                         "block side",
                                         "block rib",
                                         "block top",
                                         "block's metal cap",
                                         "slab"};
  return kNames[static_cast<std::size_t>(kind)];
}

std::string_view material_name(Material material) {
  constexpr std::string_view kNames[] = {
      "exterior plywood",      "exterior plywood, thin", "cellular PVC sheet", "1x board",
      "cellular PVC 1x board", "treated 2x lumber",      "stainless sheet",    "slab"};
  return kNames[static_cast<std::size_t>(material)];
}

std::string_view coat_name(Coat coat) {
  constexpr std::string_view kNames[] = {"sealed",         "inside colour", "body colour",
                                         "front's colour", "polish",        "bare"};
  return kNames[static_cast<std::size_t>(coat)];
}

std::string_view edge_name(Edge edge) {
  constexpr std::string_view kNames[] = {
      "", "sealed", "filled and rounded", "eased", "cut", "turned down", "straight"};
  return kNames[static_cast<std::size_t>(edge)];
}

}  // namespace hs::frame
