#include "engine/loads/mass.h"

#include <vector>

namespace hs::loads {

double density_kg_m3(frame::Material material) {
  switch (material) {
    case frame::Material::Sheet:
    case frame::Material::DrawerSheet:
      return 577;
    case frame::Material::Front:
    case frame::Material::BaseBoard:
      return 550;
    case frame::Material::FaceBoard:
    case frame::Material::Carrier:
      return 545;
    case frame::Material::Metal:
      return 8000;
    case frame::Material::Slab:
      return 2400;
  }
  return 0;
}

Lump lump_of(const Block& block, double density) {
  constexpr double kCubicMetre_mm3 = 1e9;
  return {block.width_mm() * block.depth_mm() * block.height_mm() / kCubicMetre_mm3 * density,
          (block.left_mm + block.right_mm) / 2, (block.near_mm + block.far_mm) / 2,
          (block.bottom_mm + block.top_mm) / 2};
}

Lump lump_of(const frame::Piece& piece) {
  const double density = density_kg_m3(piece.material);
  std::vector<Lump> all{lump_of(piece.place, density)};
  for (const Block& fold : piece.folds) all.push_back(lump_of(fold, density));
  return sum_of(all);
}

Lump sum_of(std::span<const Lump> lumps) {
  Lump sum;
  for (const Lump& one : lumps) {
    sum.mass_kg += one.mass_kg;
    sum.x_mm += one.mass_kg * one.x_mm;
    sum.y_mm += one.mass_kg * one.y_mm;
    sum.z_mm += one.mass_kg * one.z_mm;
  }
  if (sum.mass_kg <= 0) return {};
  sum.x_mm /= sum.mass_kg;
  sum.y_mm /= sum.mass_kg;
  sum.z_mm /= sum.mass_kg;
  return sum;
}

}  // namespace hs::loads
