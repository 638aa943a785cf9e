// What is built: ground, counters, oven, cover and what stands around.

#include <algorithm>

#include "web/scene/built_mesh.h"
#include "web/scene/model.h"
#include "web/scene/oven_mesh.h"

namespace hs::web::scene {
namespace {

using report::Block;

constexpr double kSmooth_deg = 50;            // of curved ones
constexpr double kThin = 1.1, kStrong = 2.4;  // CSS px
constexpr double kToeHeight_mm = 100;         // of a toe space, drawn
constexpr double kPanel_mm = 40;              // a counter on legs

Vec low_of(const Block& b) { return {b.left_mm, b.near_mm, b.bottom_mm}; }
Vec high_of(const Block& b) { return {b.right_mm, b.far_mm, b.top_mm}; }

// What stands on the ground, maybe before the oven and the cooks, has its edges there only: upright
// ones would cross the picture.
void add_ghost(Part& part, const Block& b, Material material) {
  const Vec low = low_of(b), high = high_of(b);
  emit_flat(part.ghost, box(low, high), material);
  if (low.z > 0) {
    box_edges(part.lines, low, high, kThin, Material::Edge);
  } else {
    outline(part.lines,
            Ring{low, {high.x, low.y, low.z}, {high.x, high.y, low.z}, {low.x, high.y, low.z}},
            kThin, Material::Edge);
  }
}

// The shadow of one thing on the top of another, not past that top's edges.
void add_shadow_on(Part& part, const Block& what, const Block& top, double most_mm) {
  const auto room = [&](double a, double b) { return std::clamp(std::min(a, b), 1.0, most_mm); };
  const Vec fade{room(what.left_mm - top.left_mm, top.right_mm - what.right_mm),
                 room(what.near_mm - top.near_mm, top.far_mm - what.far_mm), 0};
  const double z = top.top_mm + 0.6;
  paint_soft(part.paint, {what.left_mm, what.near_mm, z}, {what.right_mm, what.far_mm, z}, fade,
             Material::Shadow);
}

// Top, face set back by the overhang, toe space at its foot; on panels where knees go under it.
void add_counter(Part& part, const config::Station& station, const report::StationLayout& layout,
                 const Block& all, Material top_material, bool open) {
  Block top = all;
  top.bottom_mm = std::max(all.bottom_mm, all.top_mm - layout.top_mm);
  add_block(part, top, top_material);
  Block body = all;
  body.top_mm = top.bottom_mm;
  body.near_mm += station.overhang_mm;
  if (body.height_mm() <= 0) return;
  if (open) {
    for (const bool right : {false, true}) {
      Block panel = body;
      (right ? panel.left_mm : panel.right_mm) =
          right ? body.right_mm - kPanel_mm : body.left_mm + kPanel_mm;
      add_block(part, panel, Material::Cabinet);
    }
    Block back = body;
    back.near_mm = back.far_mm - kPanel_mm;
    add_block(part, back, Material::Cabinet);
    return;
  }
  Block kick = body;
  kick.top_mm = std::min(kToeHeight_mm, 0.5 * all.top_mm);
  kick.near_mm += station.toe_space_mm;
  body.bottom_mm = kick.top_mm;
  add_block(part, kick, Material::Cabinet, false);
  add_block(part, body, Material::Cabinet);
}

}  // namespace

void add_ground(Part& part, const Block& extent) {
  const Vec middle{(extent.left_mm + extent.right_mm) / 2, (extent.near_mm + extent.far_mm) / 2, 0};
  const double half_x = extent.width_mm() / 2, half_y = extent.depth_mm() / 2;
  paint_soft(part.ground, middle - Vec{half_x + 250, half_y + 500, 0},
             middle + Vec{half_x + 250, half_y + 200, 0}, {1300, 1300, 0}, Material::Ground);
}

void add_shadow(Part& part, const Block& b, double fade_mm) {
  paint_soft(part.ground, {b.left_mm, b.near_mm, 0}, {b.right_mm, b.far_mm, 0},
             {fade_mm, fade_mm, 0}, Material::Shadow);
}

void add_block(Part& part, const Block& b, Material material, bool edges) {
  if (b.width_mm() <= 0 || b.depth_mm() <= 0 || b.height_mm() <= 0) return;
  emit_flat(part.solid, box(low_of(b), high_of(b)), material);
  if (edges) box_edges(part.lines, low_of(b), high_of(b), kThin, Material::Edge);
}

void add_courses(Part& part, const Block& b) {
  constexpr double kCourse_mm = 200, kBlock_mm = 400, kProud_mm = 1;
  const double y = b.near_mm - kProud_mm;
  for (int course = 0; course * kCourse_mm < b.top_mm; ++course) {
    const double low = course * kCourse_mm, high = std::min(low + kCourse_mm, b.top_mm);
    if (course > 0) {
      const Vec left{b.left_mm - kProud_mm, y, low}, right{b.right_mm + kProud_mm, y, low};
      part.lines.push_back(line(left, right, kThin, Material::Edge));
      part.lines.push_back(line(left, {left.x, b.far_mm, low}, kThin, Material::Edge));
      part.lines.push_back(line(right, {right.x, b.far_mm, low}, kThin, Material::Edge));
    }
    const double first = b.left_mm + (course % 2 == 0 ? kBlock_mm : kBlock_mm / 2);
    for (double x = first; x < b.right_mm; x += kBlock_mm) {
      part.lines.push_back(line({x, y, low}, {x, y, high}, kThin, Material::Edge));
    }
  }
}

void add_oven(Part& part, const config::Config& config, const evaluate::Evaluation& e,
              const Block& body) {
  const double base = body.bottom_mm;
  const OvenShape oven = oven_shape(config.oven, e.geometry, base);
  const Material shell =
      config::is_masonry(config.oven.kind) ? Material::Masonry : Material::OvenShell;
  emit(part.solid, oven.solid, shell, kSmooth_deg - 20);
  emit(part.solid, oven.inside, Material::OvenInside, kSmooth_deg);
  emit_flat(part.solid, oven.hearth, Material::Hearth);
  emit(part.ghost, oven.shell, shell, kSmooth_deg);
  const double floor = base + config.oven.floor_above_base_mm;
  const Ring outer = opening(e.geometry.outer, -1, floor);
  outline(part.lines, outer, kStrong, Material::MouthEdge);
  if (e.geometry.throat_mm > 0) {
    outline(part.lines, opening(e.geometry.inner, e.geometry.throat_mm, floor), kThin,
            Material::MouthEdge);
  }
  outline(part.lines, floor_outline(e.geometry.floor, floor + 4), kThin, Material::Edge);
}

Part station_part(const config::Config& config, const evaluate::Evaluation& e,
                  const report::StationLayout& layout) {
  Part part;
  add_ground(part, layout.extent);

  bool knees = config.station.knee_height_mm.has_value();
  for (const evaluate::CookResult& cook : e.cooks) knees |= cook.body.seated && cook.at_prep;
  constexpr double kFade_mm = 170;
  const auto counter = [&](const Block& block, Material top, bool open) {
    add_shadow(part, block, kFade_mm);
    add_counter(part, config.station, layout, block, top, open);
  };
  if (layout.oven_stand) {
    if (layout.masonry_base) {
      add_shadow(part, *layout.oven_stand, kFade_mm);
      add_block(part, *layout.oven_stand, Material::Masonry);
      add_courses(part, *layout.oven_stand);
    } else {
      counter(*layout.oven_stand, Material::Counter, false);
    }
  }
  if (layout.dough_counter) counter(*layout.dough_counter, Material::OtherCounter, knees);
  if (layout.riser) {
    add_block(part, *layout.riser, Material::Riser);
    if (layout.oven_stand) add_shadow_on(part, *layout.riser, *layout.oven_stand, 90);
  }
  if (layout.oven_body) {
    add_oven(part, config, e, *layout.oven_body);
    if (layout.oven_stand && !layout.riser) {
      add_shadow_on(part, *layout.oven_body, *layout.oven_stand, 90);
    }
  }
  for (const report::Thing& thing : layout.things) {
    const bool standing = thing.box.bottom_mm <= 0;
    if (standing) add_shadow(part, thing.box, 120);
    if (thing.side == clearance::Side::Front) {
      // Between the eye and the station as often as not.
      add_ghost(part, thing.box, Material::Wall);
    } else {
      const bool wall = thing.side == clearance::Side::Back;
      add_block(part, thing.box, wall ? Material::Wall : Material::Neighbour);
    }
  }
  if (layout.cover) {
    add_ghost(part, layout.cover->roof, Material::Cover);
    for (const Block& post : layout.cover->posts) {
      add_shadow(part, post, 60);
      add_ghost(part, post, Material::Cover);
    }
  }
  for (const report::CookPlace& place : layout.cooks) {
    for (const std::optional<Block>* box : {&place.table_box, &place.step_box}) {
      if (!*box) continue;
      // A child who has a table is drawn at it, and not on the step at the counter too.
      if (box == &place.step_box && place.table) continue;
      add_shadow(part, **box, 110);
      if (box == &place.step_box) {
        add_block(part, **box, Material::Furniture);
        continue;
      }
      // A table: a top on four legs.
      Block top = **box;
      top.bottom_mm = top.top_mm - 25;
      add_block(part, top, Material::Furniture);
      constexpr double kLeg_mm = 40;
      for (const double x : {top.left_mm + 15, top.right_mm - 15 - kLeg_mm}) {
        for (const double y : {top.near_mm + 15, top.far_mm - 15 - kLeg_mm}) {
          add_block(part, {x, x + kLeg_mm, y, y + kLeg_mm, 0, top.bottom_mm}, Material::Furniture,
                    false);
        }
      }
    }
  }
  // Where children stay out, on the ground: tinted, with a dashed edge.
  if (!layout.child_free.empty()) {
    std::vector<Vec> zone;
    for (const report::Spot& p : layout.child_free) zone.push_back({p.x_mm, p.y_mm, 0});
    paint_fan(part.ground, zone, Material::ChildZone);
    constexpr double kDash_mm = 70;
    double gone = 0;
    for (std::size_t i = 0; i < zone.size(); ++i) {
      const Vec a = zone[i] + Vec{0, 0, 1}, b = zone[(i + 1) % zone.size()] + Vec{0, 0, 1};
      const double far = length(b - a);
      for (double at = 0; at < far;) {
        const double in_dash = std::fmod(gone, 2 * kDash_mm);
        const double left = in_dash < kDash_mm ? kDash_mm - in_dash : 2 * kDash_mm - in_dash;
        const double step = std::max(0.01, std::min(left, far - at));
        if (in_dash < kDash_mm) {
          part.lines.push_back(
              line(mixed(a, b, at / far), mixed(a, b, (at + step) / far), 2, Material::ChildEdge));
        }
        at += step;
        gone += step;
      }
    }
  }
  return part;
}

void add_corners(std::vector<Vec>& points, const Block& b) {
  for (const double x : {b.left_mm, b.right_mm}) {
    for (const double y : {b.near_mm, b.far_mm}) {
      for (const double z : {b.bottom_mm, b.top_mm}) points.push_back({x, y, z});
    }
  }
}

std::vector<Vec> corners_of(const evaluate::Evaluation& e, const report::StationLayout& layout,
                            std::size_t person) {
  std::vector<Vec> points;
  const auto add = [&](const Block& b) { add_corners(points, b); };
  for (const std::optional<Block>* block :
       {&layout.oven_stand, &layout.dough_counter, &layout.oven_body}) {
    if (*block) add(**block);
  }
  // Half as wide as a person with elbows.
  constexpr double kHalf_mm = 230;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const report::Stand& stand = report::stand_of(layout, i, person);
    const double top = stand.z_mm + e.cooks[i].body.stature_mm;
    add({stand.x_mm - kHalf_mm, stand.x_mm + kHalf_mm, stand.y_mm - kHalf_mm, stand.y_mm + kHalf_mm,
         0, top});
    if (layout.cooks[i].table_box) add(*layout.cooks[i].table_box);
  }
  return points;
}

}  // namespace hs::web::scene
