// The lamp at the oven: foot, bent neck, head, and its light through the mouth.

#include <algorithm>
#include <array>

#include "engine/light/lamp.h"
#include "web/scene/digest.h"
#include "web/scene/model.h"
#include "web/scene/oven_mesh.h"

namespace hs::web::scene {
namespace {

// Drawn sizes, mm.
constexpr double kFoot_mm = 28, kFootHigh_mm = 22, kNeck_mm = 8;

Vec raised(const Vec& at, double floor_mm) { return {at.x, at.y, floor_mm + at.z}; }

}  // namespace

Part lamp_part(const evaluate::Evaluation& e, const report::StationLayout& layout) {
  Part part;
  const auto& lamp = e.light.lamp;
  if (!lamp || !lamp->head || !layout.oven_body) return part;
  const Vec foot = raised(lamp->mount, layout.floor_mm);
  const Vec head = raised(*lamp->head, layout.floor_mm);
  emit_flat(part.solid,
            box(foot - Vec{kFoot_mm, kFoot_mm, 0}, foot + Vec{kFoot_mm, kFoot_mm, kFootHigh_mm}),
            Material::Lamp);
  // Up from the foot and over, as a bent neck stands.
  const Vec over{foot.x, foot.y, std::max(foot.z, head.z) + 0.25 * length(head - foot)};
  constexpr int kSteps = 10;
  Vec from = foot;
  for (int i = 1; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    const Vec to = mixed(mixed(foot, over, t), mixed(over, head, t), t);
    emit_round(part.solid, capsule(from, to, kNeck_mm, kNeck_mm), Material::Lamp);
    from = to;
  }
  const Vec aim = raised(lamp->light.aim, layout.floor_mm);
  const Vec ahead = unit(aim - head);
  const double half = light::kHead_mm / 2;
  emit_round(part.solid,
             capsule(head - ahead * half, head + ahead * (0.4 * half), 0.5 * half, half),
             Material::Lamp);
  // Light is drawn as a whole only where the mouth lets it through.
  if (!lamp->checks.light.in_shadow && e.pizza.radius_mm > 0) {
    const Ring lit = disc_outline(e.pizza, layout.floor_mm + 16);
    for (std::size_t i = 0; i < lit.size(); ++i) {
      paint_fan(part.veil, std::array{head, lit[i], lit[(i + 1) % lit.size()]}, Material::Beam);
    }
  }
  if (lamp->light.lit_share > 0) part.lines.push_back(line(head, aim, 1.1, Material::Beam));
  return part;
}

std::uint64_t lamp_digest(const evaluate::Evaluation& e, const report::StationLayout& layout) {
  Digest d;
  const auto& lamp = e.light.lamp;
  d.add(lamp && lamp->head && layout.oven_body ? 1 : 0);
  if (!lamp || !lamp->head) return d.value;
  for (const Vec& at : {lamp->mount, *lamp->head, lamp->light.aim}) {
    for (const double n : {at.x, at.y, at.z}) d.add(n);
  }
  for (const double n : {layout.floor_mm, e.pizza.y_mm, e.pizza.radius_mm, lamp->light.lit_share,
                         lamp->checks.light.in_shadow ? 1.0 : 0.0}) {
    d.add(n);
  }
  return d.value;
}

}  // namespace hs::web::scene
