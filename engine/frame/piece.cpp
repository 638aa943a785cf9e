#include "engine/frame/piece.h"

namespace hs::frame {

std::vector<Block> blocks_of(const Piece& piece) {
  std::vector<Block> all = piece.folds;
  all.push_back(piece.place);
  return all;
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
