// The cabinets pulled apart: every piece away from its place, the oven over what carries it.

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/evaluate/build.h"
#include "engine/report/pulled_apart.h"
#include "web/scene/built_mesh.h"
#include "web/scene/digest.h"
#include "web/scene/model.h"

namespace hs::web::scene {
namespace {

using frame::Piece;
using report::Pull;

constexpr double kOverGround_mm = 60;
constexpr double kPicked_px = 3;

Material material_of(const Piece& piece) {
  switch (piece.material) {
    case frame::Material::Metal:
      return Material::Counter;
    case frame::Material::Slab:
      return Material::Riser;
    case frame::Material::Carrier:
      return Material::Lumber;
    case frame::Material::Sheet:
    case frame::Material::DrawerSheet:
      return Material::Board;
    case frame::Material::Front:
    case frame::Material::FaceBoard:
    case frame::Material::BaseBoard:
      return Material::Cabinet;
  }
  return Material::Cabinet;
}

// Where pieces are shown: the oven's own x stays, what went under the ground is lifted out of it,
// and a counter left of a pier goes away from it.
class Places {
 public:
  Places(const evaluate::Evaluation& e, const report::StationLayout& layout)
      : frame_(e.build->frame), oven_(report::pull_of_oven(frame_)) {
    for (const Piece& piece : frame_.pieces) {
      lift_mm_ =
          std::max(lift_mm_, kOverGround_mm - report::moved(piece.place, pull(piece)).bottom_mm);
    }
    if (frame_.places.masonry_base && layout.oven_stand) {
      double past_mm = 0;
      for (const Piece& piece : frame_.pieces) {
        if (layout.dough_right) continue;
        past_mm = std::max(
            past_mm, report::moved(piece.place, pull(piece)).right_mm - layout.oven_stand->left_mm);
      }
      left_mm_ = past_mm;
    }
  }

  Pull of(const Piece& piece) const {
    Pull by = pull(piece);
    by.x_mm -= left_mm_;
    by.z_mm += lift_mm_;
    return by;
  }
  double oven_up_mm() const { return oven_.z_mm == 0 ? 0 : oven_.z_mm + lift_mm_; }

 private:
  Pull pull(const Piece& piece) const {
    Pull by = report::pull_of(frame_, piece);
    by.x_mm -= oven_.x_mm;
    return by;
  }

  const frame::Frame& frame_;
  Pull oven_;
  double lift_mm_ = 0, left_mm_ = 0;
};

Block lifted(const Block& block, double up_mm) { return report::moved(block, {0, 0, up_mm}); }

// How far along a ray it meets a block; negative: never.
double meets(const Block& b, Vec from, Vec way) {
  double first = 0, last = 1e12;
  const std::array<std::array<double, 4>, 3> axes{{{from.x, way.x, b.left_mm, b.right_mm},
                                                   {from.y, way.y, b.near_mm, b.far_mm},
                                                   {from.z, way.z, b.bottom_mm, b.top_mm}}};
  for (const auto& [at, along, low, high] : axes) {
    if (std::abs(along) < 1e-12) {
      if (at < low || at > high) return -1;
      continue;
    }
    const double one = (low - at) / along, other = (high - at) / along;
    first = std::max(first, std::min(one, other));
    last = std::min(last, std::max(one, other));
  }
  return first <= last ? first : -1;
}

}  // namespace

bool can_come_apart(const evaluate::Evaluation& e) { return e.build && e.build->frame.made(); }

double oven_lift_mm(const evaluate::Evaluation& e, const report::StationLayout& layout) {
  return can_come_apart(e) ? Places(e, layout).oven_up_mm() : 0;
}

Part apart_part(const config::Config& config, const evaluate::Evaluation& e,
                const report::StationLayout& layout, const ApartView& view) {
  Part part;
  if (!can_come_apart(e)) return part;
  const Places places(e, layout);
  add_ground(part, layout.extent);
  if (layout.masonry_base && layout.oven_stand) {
    add_shadow(part, *layout.oven_stand, 170);
    add_block(part, *layout.oven_stand, Material::Masonry);
    add_courses(part, *layout.oven_stand);
  }
  const std::vector<Piece>& pieces = e.build->frame.pieces;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Pull by = places.of(pieces[i]);
    const bool picked = view.piece == i;
    const Material material = picked ? Material::Picked : material_of(pieces[i]);
    for (const Block& block : frame::blocks_of(pieces[i])) {
      const Block shown = report::moved(block, by);
      add_block(part, shown, material);
      if (picked) {
        box_edges(part.lines, {shown.left_mm, shown.near_mm, shown.bottom_mm},
                  {shown.right_mm, shown.far_mm, shown.top_mm}, kPicked_px, Material::MouthEdge);
      }
    }
    if (pieces[i].kind == frame::Kind::BaseFront || pieces[i].kind == frame::Kind::Carrier) {
      add_shadow(part, report::moved(pieces[i].place, by), 120);
    }
  }
  if (layout.oven_body) {
    add_oven(part, config, e, lifted(*layout.oven_body, places.oven_up_mm()));
  }
  return part;
}

std::vector<Vec> apart_corners(const evaluate::Evaluation& e, const report::StationLayout& layout) {
  std::vector<Vec> points;
  if (!can_come_apart(e)) return points;
  const Places places(e, layout);
  for (const Piece& piece : e.build->frame.pieces) {
    add_corners(points, report::moved(piece.place, places.of(piece)));
  }
  if (layout.oven_body) add_corners(points, lifted(*layout.oven_body, places.oven_up_mm()));
  return points;
}

std::uint64_t apart_digest(const config::Config& config, const evaluate::Evaluation& e,
                           const ApartView& view) {
  Digest d{station_digest(config, e)};
  d.add(view.on ? 1 : 0);
  d.add(view.piece ? static_cast<double>(*view.piece) : -1.0);
  const std::uint64_t build = e.build ? e.build->digest : 0;
  d.bytes(&build, sizeof build);
  return d.value;
}

std::optional<std::size_t> piece_on(const evaluate::Evaluation& e,
                                    const report::StationLayout& layout, Vec from, Vec way) {
  std::optional<std::size_t> found;
  if (!can_come_apart(e)) return found;
  const Places places(e, layout);
  double nearest = 1e12;
  const std::vector<Piece>& pieces = e.build->frame.pieces;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Pull by = places.of(pieces[i]);
    for (const Block& block : frame::blocks_of(pieces[i])) {
      const double at = meets(report::moved(block, by), from, way);
      if (at < 0 || at >= nearest) continue;
      nearest = at;
      found = i;
    }
  }
  return found;
}

}  // namespace hs::web::scene
