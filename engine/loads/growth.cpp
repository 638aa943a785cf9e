// Growth of cellular PVC and metal from the coldest to the hottest of the year.

#include <algorithm>

#include "engine/loads/loads.h"
#include "engine/loads/parts_of.h"

namespace hs::loads {
namespace {

constexpr double kScrew_mm = 5;  // #10 and a little

Growth growth_of(const config::Loads& year, Grows what, double length_mm, double per_degree) {
  Growth out;
  out.what = what;
  out.length_mm = length_mm;
  out.longer_mm = std::max(0.0, growth_mm(length_mm, per_degree, year.high_c - year.build_c));
  out.shorter_mm = std::max(0.0, growth_mm(length_mm, per_degree, year.build_c - year.low_c));
  out.slot_mm = kScrew_mm + out.longer_mm + out.shorter_mm;
  return out;
}

}  // namespace

double growth_mm(double length_mm, double per_degree, double degrees) {
  return length_mm * per_degree * degrees;
}

std::vector<Growth> growth_over_year(const config::Config& config,
                                     std::span<const frame::Piece> pieces) {
  double board_mm = 0, front_mm = 0, metal_mm = 0;
  for (const frame::Piece& piece : pieces) {
    const double wide_mm = std::max(piece.place.width_mm(), piece.place.depth_mm());
    const double longest_mm = std::max(wide_mm, piece.place.height_mm());
    if (piece.material == frame::Material::BaseBoard) board_mm = std::max(board_mm, longest_mm);
    if (piece.material == frame::Material::Front) front_mm = std::max(front_mm, longest_mm);
    if (piece.kind == frame::Kind::MetalTop) metal_mm = std::max(metal_mm, wide_mm);
  }
  std::vector<Growth> out;
  if (board_mm > 0) {
    out.push_back(growth_of(config.loads, Grows::BaseBoard, board_mm, kPvcGrowth));
    out.back().needed_mm = out.back().longer_mm;
  }
  if (front_mm > 0) {
    // Two doors meet in one gap, each held in the middle: half of each, or all of one.
    out.push_back(growth_of(config.loads, Grows::Front, front_mm, kPvcGrowth));
    out.back().needed_mm = out.back().longer_mm;
    out.back().room_mm = config.build.gap_mm;
  }
  if (metal_mm > 0) {
    // Over sheets that heat does not lengthen: half at each end, shorter as well as longer.
    out.push_back(growth_of(config.loads, Grows::MetalTop, metal_mm, kSteelGrowth));
    out.back().needed_mm = std::max(out.back().longer_mm, out.back().shorter_mm) / 2;
    out.back().room_mm = config.build.fit_mm;
  }
  return out;
}

}  // namespace hs::loads
