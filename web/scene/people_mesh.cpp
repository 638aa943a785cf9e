// The cooks where the layout puts them, and what the one who looks sees.

#include <algorithm>

#include "engine/sight/lean.h"
#include "web/scene/digest.h"
#include "web/scene/figure.h"
#include "web/scene/model.h"
#include "web/scene/oven_mesh.h"

namespace hs::web::scene {
namespace {

constexpr int kOutlineSteps = 96;
// Painted layers over each other; the theme's paints are all that tell them apart.
constexpr double kLayer_mm = 0.8;
constexpr double kPizzaTop_mm = 12;

bool leans(const evaluate::CookResult& cook) {
  return cook.stoop && (cook.stoop->posture.trunk_deg > 0 || cook.stoop->posture.knee_deg > 0);
}

Vec place_of(const sight::Eye& eye, double floor_mm) {
  return {eye.x_mm, -eye.distance_mm, floor_mm + eye.height_mm};
}

sight::Eye leaning_eye(const evaluate::CookResult& cook) {
  return sight::bent(cook.watching.eye, {cook.body.eye_lever_mm, cook.body.leg_mm},
                     cook.stoop->posture);
}

Ring raised(std::span<const sight::Point> points, double z_mm) {
  Ring ring;
  for (const sight::Point& p : points) ring.push_back({p.x_mm, p.y_mm, z_mm});
  return ring;
}

void add_wedge(Part& part, Vec eye, const Ring& seen) {
  if (seen.size() < 3) return;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    paint_fan(part.veil, std::array{eye, seen[i], seen[(i + 1) % seen.size()]}, Material::Wedge);
  }
  // Its four corners, as far as a rounded outline has any.
  for (const Vec way : {Vec{-1, -2, 0}, Vec{1, -2, 0}, Vec{-1, 2, 0}, Vec{1, 2, 0}}) {
    const auto corner = std::max_element(seen.begin(), seen.end(),
                                         [&](Vec a, Vec b) { return dot(a, way) < dot(b, way); });
    part.lines.push_back(line(eye, *corner, 1.1, Material::Sightline));
  }
}

void add_pizza(Part& part, const evaluate::Evaluation& e, const Ring& seen, double floor,
               double crust_mm, bool known) {
  const sight::Disc& pizza = e.pizza;
  if (pizza.radius_mm <= 0) return;
  // The rim: a rounded band as high as the crust.
  const double high = std::max(20.0, crust_mm);
  const Ring edge = disc_outline({pizza.y_mm, pizza.radius_mm}, floor);
  const Vec hub{0, pizza.y_mm, floor};
  std::vector<Ring> bands;
  const double wide = std::min(20.0, pizza.radius_mm / 3);
  const std::pair<double, double> steps[] = {{-0.02, 0.05}, {0.0, 0.35},   {-0.12, 0.8},
                                             {-0.4, 1.0},   {-0.75, 0.85}, {-1.0, 0.4}};
  for (const auto& [in, up] : steps) {
    Ring band;
    for (const Vec& p : edge) {
      const Vec out = unit(p - hub);
      band.push_back(p + out * (in * wide) + Vec{0, 0, up * high});
    }
    bands.push_back(std::move(band));
  }
  Shape rim = loft(bands, Caps::None);
  emit_round(part.solid, rim, Material::Crust);
  const Ring top = disc_outline({pizza.y_mm, pizza.radius_mm - 0.7 * wide}, floor + kPizzaTop_mm);
  paint_fan(part.paint, top, known ? Material::PizzaUnseen : Material::Pizza);
  if (!known) {
    // Cheese on the sauce, and slices on the cheese.
    const double most = pizza.radius_mm - 1.7 * wide;
    paint_fan(part.paint, disc_outline({pizza.y_mm, most}, floor + kPizzaTop_mm + kLayer_mm),
              Material::Cheese);
    constexpr int kSlices = 11;
    constexpr double kGolden_rad = 2.39996;
    for (int i = 0; i < kSlices; ++i) {
      const double out = 0.80 * most * std::sqrt((i + 0.3) / kSlices), turn = kGolden_rad * i;
      Ring slice = disc_outline({0, 0.11 * pizza.radius_mm}, floor + kPizzaTop_mm + 2 * kLayer_mm);
      for (Vec& p : slice) p = p + Vec{out * std::cos(turn), pizza.y_mm + out * std::sin(turn), 0};
      paint_fan(part.paint, slice, Material::Topping);
    }
    return;
  }
  Ring shown = common(top, seen);
  for (Vec& p : shown) p.z = floor + kPizzaTop_mm + kLayer_mm;
  paint_fan(part.paint, shown, Material::Pizza);
}

void add_oven(Digest& d, const config::Config& config, const evaluate::Evaluation& e) {
  const config::Oven& o = config.oven;
  const oven::Geometry& g = e.geometry;
  for (const double n : {o.width_mm, o.depth_mm, o.height_mm, o.floor_above_base_mm,
                         g.outer.half_width_mm, g.outer.height_mm, g.outer.spring_mm,
                         g.inner.half_width_mm, g.inner.height_mm, g.inner.spring_mm, g.throat_mm,
                         g.brow_mm, g.floor.half_width_mm, g.floor.near_mm, g.floor.far_mm}) {
    d.add(n);
  }
  d.add(static_cast<int>(o.kind));
  d.add(g.floor.round ? 1 : 0);
  d.add(e.used.oven_base_mm);
}

void add_view(Digest& d, const PeopleView& view) {
  d.add(view.person);
  d.add(view.leaning ? 1 : 0);
  d.add(view.inside ? 1 : 0);
}

void add_station(Digest& d, const config::Config& config, const evaluate::Evaluation& e) {
  add_oven(d, config, e);
  const config::Station& s = config.station;
  d.add(static_cast<int>(s.arrangement));
  for (const double n :
       {s.prep_depth_mm, s.prep_width_mm, s.oven_setback_mm, s.overhang_mm, s.toe_space_mm}) {
    d.add(n);
  }
  for (const std::optional<double>& n :
       {s.left_gap_mm, s.right_gap_mm, s.back_gap_mm, s.landing_left_mm, s.landing_right_mm,
        s.aisle_mm, s.knee_height_mm, config.site.cover_height_mm, e.used.counter_mm}) {
    d.add(n);
  }
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = e.cooks[i];
    // The side of the dough counter goes by the hands that work at the oven.
    d.add(static_cast<int>(config.cooks[i].handed));
    d.add(config.cooks[i].share);
    d.add((cook.at_oven ? 1 : 0) + (cook.at_prep ? 2 : 0) + (cook.young_child ? 4 : 0) +
          (cook.body.seated ? 8 : 0));
    d.add(cook.table_mm);
    d.add(cook.step_mm);
    d.add(cook.body.belly_mm);
  }
}

}  // namespace

Look look_of(const config::Config&, const evaluate::Evaluation& e,
             const report::StationLayout& layout, std::size_t person) {
  Look look;
  if (person >= e.cooks.size()) return look;
  const evaluate::CookResult& cook = e.cooks[person];
  look.sees_oven = cook.at_oven && layout.oven_body.has_value();
  if (!look.sees_oven) return look;
  look.eye = look.leaning_eye = place_of(cook.watching.eye, layout.floor_mm);
  look.can_lean = leans(cook);
  if (look.can_lean) look.leaning_eye = place_of(leaning_eye(cook), layout.floor_mm);
  look.target = {0, e.pizza.y_mm, layout.floor_mm};
  return look;
}

Part people_part(const config::Config& config, const evaluate::Evaluation& e,
                 const report::StationLayout& layout, const PeopleView& view) {
  Part part;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = e.cooks[i];
    const bool looks = i == view.person && cook.at_oven && layout.oven_body;
    const report::Stand& stand = report::stand_of(layout, i, view.person);
    Stance stance{.under_eye = {stand.x_mm, stand.y_mm, stand.z_mm},
                  .turned_deg = -stand.facing_deg};
    if (looks && view.leaning && leans(cook)) stance.posture = cook.stoop->posture;
    const report::CookPlace& place = layout.cooks[i];
    // Who is at a counter or a table has both hands on it.
    const bool at_table = !looks && place.table_box && place.table;
    const bool at_counter = !looks && !at_table && place.prep && layout.dough_counter;
    if (at_table || at_counter) {
      const report::Block& top = at_table ? *place.table_box : *layout.dough_counter;
      const Vec hands{stand.x_mm, top.near_mm + 0.10 * cook.body.stature_mm,
                      top.top_mm + 0.020 * cook.body.stature_mm};
      const double rise = cook.body.shoulder.value_mm + stand.z_mm - hands.z;
      if (rise > 0.1 * cook.body.stature_mm) stance.hands = hands;
    }
    constexpr double kHalf_mm = 120;
    const Vec feet{stand.x_mm, stand.y_mm, 0.5};
    paint_soft(part.ground, feet - Vec{kHalf_mm, kHalf_mm, 0}, feet + Vec{kHalf_mm, 60, 0},
               {130, 130, 0}, Material::Shadow);
    if (looks && view.inside) continue;
    add_figure(part.solid, cook.body, stance, looks ? Material::Looker : Material::Person);
  }
  // The tape that toes stay behind, as wide as somebody who stands at it.
  if (layout.feet_line_y_mm) {
    const double x = config.view.lateral_mm, y = *layout.feet_line_y_mm;
    constexpr double kTape_mm = 45;
    const std::array tape{Vec{x - kTapeHalf_mm, y, 0}, Vec{x + kTapeHalf_mm, y, 0},
                          Vec{x + kTapeHalf_mm, y + kTape_mm, 0},
                          Vec{x - kTapeHalf_mm, y + kTape_mm, 0}};
    paint_fan(part.ground, tape, Material::FeetLine);
  }
  return part;
}

Part sight_part(const config::Config& config, const evaluate::Evaluation& e,
                const report::StationLayout& layout, const PeopleView& view) {
  Part part;
  if (!layout.oven_body || view.person >= e.cooks.size()) return part;
  const evaluate::CookResult& cook = e.cooks[view.person];
  const double floor = layout.floor_mm;
  if (!cook.at_oven) {
    add_pizza(part, e, {}, floor, config.view.crust_mm, false);
    return part;
  }
  const Ring seen = raised(sight::seen_outline(e.geometry, cook.watching.eye, kOutlineSteps),
                           floor + 3 * kLayer_mm);
  Ring leaning;
  if (leans(cook)) {
    leaning = raised(sight::seen_outline(e.geometry, leaning_eye(cook), kOutlineSteps),
                     floor + 2 * kLayer_mm);
  }
  // Through the cook's own eyes there is nothing to explain: what shows is what is seen.
  if (view.inside) {
    add_pizza(part, e, {}, floor, config.view.crust_mm, false);
    return part;
  }
  paint_fan(part.paint, floor_outline(e.geometry.floor, floor + kLayer_mm), Material::Unseen);
  paint_fan(part.paint, leaning, Material::SeenLeaning);
  paint_fan(part.paint, seen, Material::Seen);
  const bool bent = view.leaning && leans(cook);
  add_pizza(part, e, bent ? leaning : seen, floor, config.view.crust_mm, true);
  add_wedge(part, place_of(bent ? leaning_eye(cook) : cook.watching.eye, floor),
            bent ? leaning : seen);
  return part;
}

std::uint64_t station_digest(const config::Config& config, const evaluate::Evaluation& e) {
  Digest d;
  add_station(d, config, e);
  return d.value;
}

std::uint64_t people_digest(const config::Config& config, const evaluate::Evaluation& e,
                            const PeopleView& view) {
  Digest d;
  add_station(d, config, e);
  add_view(d, view);
  d.add(config.view.standoff_mm);
  d.add(config.view.lateral_mm);
  for (const evaluate::CookResult& cook : e.cooks) {
    const cook::Body& b = cook.body;
    for (const double n :
         {b.eye.value_mm, b.elbow.value_mm, b.shoulder.value_mm, b.stature_mm, b.hip_mm, b.leg_mm,
          b.eye_lever_mm, b.arm_to_grip_mm, b.forearm_hand_mm, b.belly_mm, b.toes_mm}) {
      d.add(n);
    }
    d.add(leans(cook) ? cook.stoop->posture.trunk_deg : 0);
    d.add(leans(cook) ? cook.stoop->posture.knee_deg : 0);
  }
  return d.value;
}

std::uint64_t sight_digest(const config::Config& config, const evaluate::Evaluation& e,
                           const PeopleView& view) {
  Digest d;
  add_oven(d, config, e);
  add_view(d, view);
  d.add(e.pizza.y_mm);
  d.add(e.pizza.radius_mm);
  d.add(config.view.crust_mm);
  if (view.person < e.cooks.size()) {
    const evaluate::CookResult& cook = e.cooks[view.person];
    d.add(cook.at_oven ? 1 : 0);
    for (const double n : {cook.watching.eye.x_mm, cook.watching.eye.distance_mm,
                           cook.watching.eye.height_mm, cook.body.eye_lever_mm, cook.body.leg_mm,
                           leans(cook) ? cook.stoop->posture.trunk_deg : 0.0,
                           leans(cook) ? cook.stoop->posture.knee_deg : 0.0}) {
      d.add(n);
    }
  }
  return d.value;
}

}  // namespace hs::web::scene
