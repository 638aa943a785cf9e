// What must stay free, looked through: each kind has its own hatch and its own edge.

#include <algorithm>
#include <array>
#include <cmath>

#include "web/scene/digest.h"
#include "web/scene/model.h"

namespace hs::web::scene {
namespace {

using report::Block;

constexpr double kEdge = 2;      // CSS px
constexpr double kProud_mm = 3;  // over what it lies on
constexpr double kFlat_mm = 1;   // less is no room
constexpr double kDash_mm = 60;

Vec low_of(const Block& b) { return {b.left_mm, b.near_mm, b.bottom_mm}; }
Vec high_of(const Block& b) { return {b.right_mm, b.far_mm, b.top_mm}; }
Vec middle_of(const Block& b) { return mixed(low_of(b), high_of(b), 0.5); }

bool solid(const Block& b) {
  return b.width_mm() > kFlat_mm && b.depth_mm() > kFlat_mm && b.height_mm() > kFlat_mm;
}

void dashed(std::vector<Line>& lines, const Vec& from, const Vec& to, Material material) {
  const double far = length(to - from);
  for (double at = 0; at < far; at += 2 * kDash_mm) {
    lines.push_back(line(mixed(from, to, at / far),
                         mixed(from, to, std::min(1.0, (at + kDash_mm) / far)), kEdge, material));
  }
}

void add_faces(Part& part, const Block& b, Material material) {
  const Shape shape = box(low_of(b), high_of(b));
  for (const auto& t : shape.triangles) {
    paint_fan(part.veil, std::array{shape.points[t[0]], shape.points[t[1]], shape.points[t[2]]},
              material);
  }
}

void add_clear(Part& part, const Block& b) {
  if (!solid(b)) return;
  add_faces(part, b, Material::ClearRoom);
  box_edges(part.lines, low_of(b), high_of(b), kEdge, Material::ClearEdge);
}

// Its far side has no place: dashed, and as loud as one that has.
void add_unknown(Part& part, const Block& b) {
  if (!solid(b)) return;
  add_faces(part, b, Material::UnknownRoom);
  std::vector<Line> edges;
  box_edges(edges, low_of(b), high_of(b), kEdge, Material::UnknownEdge);
  const auto end = [](const std::array<float, 3>& p) {
    return Vec{static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
  };
  for (const Line& edge : edges) {
    dashed(part.lines, end(edge.from), end(edge.to), Material::UnknownEdge);
  }
}

// Ground to work on that the scene shows: not every movement's own, which would cover each other.
bool drawn_room(const reach::Zone& zone) {
  return zone.rule == "reach.aisle" || zone.rule == "room.peel_turn" ||
         zone.rule == "room.wheelchair_turn";
}
std::string_view room_word(const reach::Zone& zone) {
  return zone.rule == "reach.aisle"      ? "aisle"
         : zone.rule == "room.peel_turn" ? "peel turns"
                                         : "chair";
}

Ring ring_of(const reach::Zone& zone, double z_mm) {
  Ring ring;
  for (const PlanSpot& p : zone.outline) ring.push_back({p.x_mm, p.y_mm, z_mm});
  return ring;
}

Vec middle_of(const Ring& ring) {
  Vec sum;
  for (const Vec& p : ring) sum = sum + p;
  return ring.empty() ? sum : sum * (1.0 / static_cast<double>(ring.size()));
}

void add_room(Part& part, const reach::Zone& zone) {
  const Ring edge = ring_of(zone, 1);
  if (edge.size() < 3) return;
  if (zone.rule == "room.peel_turn") {
    // What moves over the ground, not the ground itself.
    outline(part.lines, edge, 0.6 * kEdge, Material::WorkEdge);
    return;
  }
  Ring fan{middle_of(edge)};
  fan.insert(fan.end(), edge.begin(), edge.end());
  fan.push_back(edge.front());
  paint_fan(part.ground, fan, Material::WorkRoom);
  outline(part.lines, edge, kEdge, Material::WorkEdge);
}

void add_landing(Part& part, const report::Landing& landing) {
  const Block& b = landing.box;
  if (b.width_mm() <= kFlat_mm || b.depth_mm() <= kFlat_mm) return;
  const double z = b.top_mm + kProud_mm;
  const Ring top{{b.left_mm, b.near_mm, z},
                 {b.right_mm, b.near_mm, z},
                 {b.right_mm, b.far_mm, z},
                 {b.left_mm, b.far_mm, z}};
  paint_fan(part.veil, top, Material::Landing);
  outline(part.lines, top, kEdge, Material::LandingEdge);
}

void add_box(Digest& d, const Block& b) {
  for (const double n : {b.left_mm, b.right_mm, b.near_mm, b.far_mm, b.bottom_mm, b.top_mm}) {
    d.add(n);
  }
}

}  // namespace

Part zones_part(const evaluate::Evaluation& e, const report::StationLayout& layout, bool shown) {
  Part part;
  if (!shown || !layout.oven_body) return part;
  for (const reach::Zone& zone : e.surroundings.room) {
    if (drawn_room(zone)) add_room(part, zone);
  }
  for (const clearance::Zone& zone : e.surroundings.hot) {
    if (zone.box) add_clear(part, *zone.box);
  }
  for (const report::ClearZone& zone : layout.clear) {
    if (!zone.known()) add_unknown(part, zone.box);
  }
  for (const auto& landing : {layout.landing_left, layout.landing_right}) {
    if (landing) add_landing(part, *landing);
  }
  return part;
}

std::vector<ZoneName> zone_names(const evaluate::Evaluation& e,
                                 const report::StationLayout& layout) {
  std::vector<ZoneName> names;
  if (!layout.oven_body) return names;
  for (const clearance::Zone& zone : e.surroundings.hot) {
    if (!zone.box || !solid(*zone.box)) continue;
    names.push_back({middle_of(*zone.box), Material::ClearRoom, "clear", zone.need.required_mm});
  }
  for (const report::ClearZone& zone : layout.clear) {
    if (zone.known() || !solid(zone.box)) continue;
    names.push_back({middle_of(zone.box), Material::UnknownRoom, "not known", {}});
  }
  for (const auto& landing : {layout.landing_left, layout.landing_right}) {
    if (!landing) continue;
    const Vec at{(landing->box.left_mm + landing->box.right_mm) / 2,
                 (landing->box.near_mm + landing->box.far_mm) / 2, landing->box.top_mm};
    names.push_back({at, Material::Landing, "landing", {}});
  }
  for (const reach::Zone& zone : e.surroundings.room) {
    if (!drawn_room(zone) || zone.outline.size() < 3) continue;
    const Ring ring = ring_of(zone, 0);
    Vec at = middle_of(ring);
    // The aisle's name at its far end: where the peel turns has the middle.
    if (zone.rule == "reach.aisle") at = mixed(ring[0], ring[1], 0.5) + Vec{0, 120, 0};
    names.push_back({at, Material::WorkRoom, room_word(zone), zone.required_mm});
  }
  return names;
}

std::uint64_t zones_digest(const evaluate::Evaluation& e, const report::StationLayout& layout,
                           bool shown) {
  Digest d;
  d.add(shown && layout.oven_body ? 1 : 0);
  if (!shown) return d.value;
  for (const clearance::Zone& zone : e.surroundings.hot) {
    d.add(zone.box ? 1 : 0);
    if (zone.box) add_box(d, *zone.box);
  }
  for (const report::ClearZone& zone : layout.clear) {
    d.add(zone.known() ? 1 : 0);
    add_box(d, zone.box);
  }
  for (const auto& landing : {layout.landing_left, layout.landing_right}) {
    d.add(landing ? 1 : 0);
    if (landing) add_box(d, landing->box);
  }
  for (const reach::Zone& zone : e.surroundings.room) {
    if (!drawn_room(zone)) continue;
    for (const PlanSpot& p : zone.outline) {
      d.add(p.x_mm);
      d.add(p.y_mm);
    }
  }
  return d.value;
}

}  // namespace hs::web::scene
