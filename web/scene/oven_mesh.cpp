#include "web/scene/oven_mesh.h"

#include <algorithm>
#include <numbers>

namespace hs::web::scene {
namespace {

using config::OvenKind;

// Points of a profile: up its left side, over its top, down its right side, back along its foot.
constexpr int kSide = 4, kTop = 24, kFoot = 6;
constexpr int kFloorSteps = 72;
constexpr double kDomeSpring = 0.30;  // share of a dome's height where its sides begin to lean in

enum class Crown : std::uint8_t { Curve, Rounded };

struct Profile {
  double half_mm, foot_mm, spring_mm, top_mm;  // heights above the ground
  Crown crown = Crown::Curve;
  double power = 2;  // of the curve: 2 an ellipse, more: squarer
};

Ring ring_of(const Profile& p, double y) {
  Ring ring;
  const auto add = [&](double x, double z) { ring.push_back({x, y, z}); };
  for (int i = 0; i < kSide; ++i) {
    add(-p.half_mm, p.foot_mm + (p.spring_mm - p.foot_mm) * i / kSide);
  }
  const double rise = p.top_mm - p.spring_mm;
  for (int i = 0; i < kTop; ++i) {
    const double turn = std::numbers::pi * i / kTop;
    if (p.crown == Crown::Curve) {
      const double c = std::cos(turn), s = std::sin(turn);
      if (p.power == 2) {
        add(-p.half_mm * c, p.spring_mm + rise * s);
      } else {
        add(-p.half_mm * std::copysign(std::pow(std::abs(c), 2 / p.power), c),
            p.spring_mm + rise * std::pow(std::max(0.0, s), 2 / p.power));
      }
    } else {
      // Two quarter circles with a flat top between them.
      const double round = std::min(rise, p.half_mm);
      const double middle = i * 2 <= kTop ? -(p.half_mm - round) : p.half_mm - round;
      add(middle - round * std::cos(turn), p.spring_mm + rise * std::sin(turn));
    }
  }
  for (int i = 0; i < kSide; ++i) {
    add(p.half_mm, p.spring_mm + (p.foot_mm - p.spring_mm) * i / kSide);
  }
  for (int i = 0; i < kFoot; ++i) {
    add(p.half_mm - 2 * p.half_mm * i / kFoot, p.foot_mm);
  }
  return ring;
}

bool boxed(OvenKind kind) { return kind == OvenKind::SteelCabinet || kind == OvenKind::Other; }

// How much of its full width and height a dome has at a depth.
double dome_share(double y, double depth, double front_share) {
  const double middle = 0.46 * depth;
  if (y >= middle) {
    const double along = (y - middle) / (depth - middle);
    return std::sqrt(std::max(0.0, 1 - along * along));
  }
  const double along = (middle - y) / middle;
  const double reach = std::sqrt(std::max(0.0, 1 - front_share * front_share));
  return std::sqrt(std::max(0.0, 1 - along * along * reach * reach));
}

// The strip between two rings of equally many points, one inside the other; looks towards the side
// from which they run clockwise.
Shape strip(const Ring& inner, const Ring& outer) {
  Shape shape;
  const auto n = static_cast<std::uint32_t>(inner.size());
  shape.points = inner;
  shape.points.insert(shape.points.end(), outer.begin(), outer.end());
  for (std::uint32_t i = 0; i < n; ++i) {
    const std::uint32_t j = (i + 1) % n;
    shape.triangles.push_back({i, n + j, n + i});
    shape.triangles.push_back({i, j, n + j});
  }
  return shape;
}

struct Sizes {
  const config::Oven& oven;
  const oven::Geometry& g;
  double base, floor, depth, above, wall, crown;
};

Sizes sizes_of(const config::Oven& oven, const oven::Geometry& g, double base_mm) {
  const double floor = base_mm + oven.floor_above_base_mm;
  const double above = base_mm + oven.height_mm - floor;
  const double wall = std::clamp(0.14 * above, 15.0, 160.0);
  return {oven,
          g,
          base_mm,
          floor,
          std::max(oven.depth_mm, g.floor.far_mm),
          above,
          wall,
          std::max({above - wall, g.inner.height_mm, g.outer.height_mm})};
}

std::vector<Ring> shell_rings(const Sizes& s) {
  std::vector<Ring> rings;
  const double half = s.oven.width_mm / 2, top = s.floor + s.above;
  if (boxed(s.oven.kind) || s.oven.kind == OvenKind::MasonryBarrel) {
    const bool box = boxed(s.oven.kind);
    // The face must stand clear of the mouth, whose corners may be high.
    const double round = box ? std::min(0.12 * s.above, 60.0) : 0.72 * s.above;
    const double bevel = 12;
    const std::pair<double, double> steps[] = {
        {0, bevel},           {0.3 * bevel, 0.3 * bevel},           {bevel, 0},
        {s.depth - bevel, 0}, {s.depth - 0.3 * bevel, 0.3 * bevel}, {s.depth, bevel}};
    for (const auto& [y, in] : steps) {
      rings.push_back(ring_of(
          {half - in, s.floor, top - round, top - in, box ? Crown::Rounded : Crown::Curve}, y));
    }
    return rings;
  }
  // A dome: its face is as high as in the section, and wide enough for the mouth.
  const double front = std::min(
      s.above, std::max(s.g.outer.height_mm + std::min(s.wall, s.above - s.g.outer.height_mm),
                        0.62 * s.above));
  const double share_up = front / s.above;
  const double margin = 0.4 * s.wall;
  const double mouth = s.g.outer.half_width_mm + margin, lintel = s.g.outer.height_mm + margin;
  const double share_wide = std::clamp(std::max(share_up, (mouth + margin) / half), 0.0, 1.0);
  // As round as the corners of the mouth allow.
  const auto clear = [&](double power) {
    const double spring = kDomeSpring * front;
    if (lintel <= spring) return true;
    const double x = mouth / (half * share_wide), z = (lintel - spring) / (front - spring);
    return x < 1 && z < 1 && std::pow(x, power) + std::pow(z, power) <= 1;
  };
  double power = 2;
  while (power < 8 && !clear(power)) power += 0.25;
  // Steps closer together where the dome is steep.
  constexpr int kSteps = 20;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    const double y = s.depth * 0.5 * (1 - std::cos(t * std::numbers::pi));
    const double wide = std::max(0.02, dome_share(y, s.depth, share_wide));
    const double high = std::max(0.02, dome_share(y, s.depth, share_up));
    const double up = s.above * high;
    rings.push_back(ring_of(
        {half * wide, s.floor, s.floor + kDomeSpring * up, s.floor + up, Crown::Curve, power}, y));
  }
  return rings;
}

// Half the vault's width at a depth: wide enough for every straight ray from the mouth to the
// floor, so that no wall stands before a point that an eye sees.
double vault_half_mm(const oven::Geometry& g, double y) {
  const double near = g.throat_mm, mouth = g.inner.half_width_mm;
  double half = std::max(0.0, g.floor.half_width_at(y));
  constexpr int kSteps = 48;
  for (int i = 0; i <= kSteps; ++i) {
    const double at = y + (g.floor.far_mm - y) * i / kSteps;
    if (at - near < 1) continue;
    const double wide = std::max(0.0, g.floor.half_width_at(at));
    half = std::max(half, mouth + (wide - mouth) * (y - near) / (at - near));
  }
  return half + 2;
}

std::vector<Ring> vault_rings(const Sizes& s) {
  const oven::Geometry& g = s.g;
  const double near = g.throat_mm, far = g.floor.far_mm;
  const double mouth = g.inner.height_mm;
  const double low_near = std::min(s.crown, mouth + 0.25 * (s.crown - mouth));
  std::vector<Ring> rings;
  constexpr int kSteps = 18;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = 0.5 * (1 - std::cos(std::numbers::pi * i / kSteps));
    const double y = near + (far - near) * t;
    double top = 0;
    if (t < 0.46) {
      const double along = (0.46 - t) / 0.46;
      top = low_near + (s.crown - low_near) * std::sqrt(std::max(0.0, 1 - along * along));
    } else {
      const double along = (t - 0.46) / 0.54;
      top = 0.3 * s.crown + 0.7 * s.crown * std::sqrt(std::max(0.0, 1 - along * along));
    }
    // Rays fall from the mouth's top to the floor.
    const double rays = mouth * (1 - t);
    top = std::max(top, rays + 2);
    const double spring = std::clamp(std::max(0.35 * top, rays + 1), 0.0, top - 1);
    rings.push_back(ring_of({vault_half_mm(g, y), s.floor, s.floor + spring, s.floor + top}, y));
  }
  return rings;
}

void add_solid(OvenShape& shape, const Sizes& s) {
  const double half = s.oven.width_mm / 2, rise = s.oven.floor_above_base_mm;
  const bool heavy = config::is_masonry(s.oven.kind) || boxed(s.oven.kind) || rise < 50;
  const double under = heavy ? s.base : s.floor - 0.45 * rise;
  if (s.floor - under > 1) {
    shape.solid.add(box({-half, 0, under}, {half, s.depth, s.floor - 0.5}));
  }
  if (!heavy) {
    const double foot = std::min(0.08 * s.depth, 55.0);
    for (const double x : {-half + 0.10 * half, half - 0.10 * half - foot}) {
      for (const double y : {0.06 * s.depth, 0.94 * s.depth - foot}) {
        shape.solid.add(box({x, y, s.base}, {x + foot, y + foot, under}));
      }
    }
  }
  if (s.g.brow_mm > 0) {
    const double edge = s.floor + s.g.brow_edge_mm;
    const double top =
        std::min(s.base + s.oven.height_mm, edge + std::max(30.0, 0.5 * s.g.brow_mm));
    const double wide = std::min(half, s.g.outer.half_width_mm + 0.5 * s.wall);
    const auto side = [&](double x) {
      return Ring{{x, 0, edge},
                  {x, 0, top},
                  {x, -s.g.brow_mm, edge + 0.3 * (top - edge)},
                  {x, -s.g.brow_mm, edge}};
    };
    shape.solid.add(loft(std::array{side(-wide), side(wide)}, Caps::Both));
  }
  shape.top_mm = s.base + s.oven.height_mm;
  const bool flue = heavy && s.oven.kind != OvenKind::Other && rise >= 50;
  if (flue) {
    const double wide = std::clamp(0.16 * s.depth, 90.0, 200.0);
    const bool stone = config::is_masonry(s.oven.kind);
    const double y = (stone ? 0.30 * s.g.throat_mm : 0.62 * s.depth) + wide / 2;
    const double foot = stone ? s.floor + 0.62 * s.above : shape.top_mm - 10;
    constexpr int kSides = 18;
    Ring low, high;
    for (int i = 0; i < kSides; ++i) {
      const double angle = 2 * std::numbers::pi * i / kSides;
      const Vec p{wide / 2 * std::cos(angle), y + wide / 2 * std::sin(angle), foot};
      low.push_back(p);
      high.push_back({p.x, p.y, shape.top_mm + 260});
    }
    shape.solid.add(loft(std::array{low, high}, Caps::Both));
    shape.top_mm += 260;
  }
}

}  // namespace

Ring opening(const oven::Outline& outline, double y_mm, double floor_mm) {
  return ring_of(
      {outline.half_width_mm, floor_mm, floor_mm + outline.spring_mm, floor_mm + outline.height_mm},
      y_mm);
}

OvenShape oven_shape(const config::Oven& oven, const oven::Geometry& geometry, double base_mm) {
  const Sizes s = sizes_of(oven, geometry, base_mm);
  OvenShape shape;
  const Ring outer = opening(geometry.outer, 0, s.floor);
  const Ring inner = opening(geometry.inner, geometry.throat_mm, s.floor);

  const std::vector<Ring> shell = shell_rings(s);
  shape.shell = loft(shell, Caps::None);
  shape.shell.add(strip(outer, shell.front()));
  // The back is closed by a strip to its own middle.
  Ring back(shell.back().size());
  Vec middle;
  for (const Vec& p : shell.back()) middle = middle + p;
  middle = middle * (1.0 / static_cast<double>(back.size()));
  std::fill(back.begin(), back.end(), middle);
  Shape end = strip(back, shell.back());
  turn_out(end);
  shape.shell.add(end);

  // Everything inside looks inward.
  const std::vector<Ring> vault = vault_rings(s);
  Shape hollow;
  if (geometry.throat_mm > 0) {
    Shape throat = loft(std::array{outer, inner}, Caps::None);
    turn_out(throat);
    hollow.add(throat);
  }
  Shape face = strip(inner, vault.front());
  turn_out(face);
  hollow.add(face);
  Shape room = loft(vault, Caps::None);
  turn_out(room);
  hollow.add(room);
  std::fill(back.begin(), back.end(), Vec{0, vault.back().front().y, s.floor});
  hollow.add(strip(back, vault.back()));

  shape.inside.points = shape.hearth.points = hollow.points;
  for (const auto& t : hollow.triangles) {
    const bool low = std::all_of(
        t.begin(), t.end(), [&](std::uint32_t p) { return hollow.points[p].z < s.floor + 0.01; });
    (low ? shape.hearth : shape.inside).triangles.push_back(t);
  }
  add_solid(shape, s);
  return shape;
}

Ring floor_outline(const oven::Floor& floor, double z_mm) {
  if (!floor.round) {
    const double h = floor.half_width_mm;
    return {{-h, floor.near_mm, z_mm},
            {h, floor.near_mm, z_mm},
            {h, floor.far_mm, z_mm},
            {-h, floor.far_mm, z_mm}};
  }
  Ring ring;
  const double middle = (floor.near_mm + floor.far_mm) / 2;
  const double deep = (floor.far_mm - floor.near_mm) / 2;
  for (int i = 0; i < kFloorSteps; ++i) {
    const double angle = 2 * std::numbers::pi * i / kFloorSteps;
    ring.push_back({floor.half_width_mm * std::cos(angle), middle + deep * std::sin(angle), z_mm});
  }
  return ring;
}

Ring disc_outline(const sight::Disc& disc, double z_mm) {
  Ring ring;
  for (int i = 0; i < kFloorSteps; ++i) {
    const double angle = 2 * std::numbers::pi * i / kFloorSteps;
    ring.push_back(
        {disc.radius_mm * std::cos(angle), disc.y_mm + disc.radius_mm * std::sin(angle), z_mm});
  }
  return ring;
}

Ring common(std::span<const Vec> a, std::span<const Vec> b) {
  Ring kept(a.begin(), a.end());
  for (std::size_t i = 0; i < b.size() && !kept.empty(); ++i) {
    const Vec p = b[i], q = b[(i + 1) % b.size()];
    const auto side = [&](Vec v) { return (q.x - p.x) * (v.y - p.y) - (q.y - p.y) * (v.x - p.x); };
    Ring next;
    Vec before = kept.back();
    double side_before = side(before);
    for (const Vec& v : kept) {
      const double here = side(v);
      if ((side_before < 0) != (here < 0)) {
        next.push_back(mixed(before, v, side_before / (side_before - here)));
      }
      if (here >= 0) next.push_back(v);
      before = v;
      side_before = here;
    }
    kept = std::move(next);
  }
  return kept;
}

}  // namespace hs::web::scene
