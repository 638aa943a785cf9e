#include "web/scene/mesh.h"

#include <algorithm>
#include <numbers>

namespace hs::web::scene {
namespace {

constexpr int kAround = 12;  // sides of a limb
constexpr int kCapRings = 3;
constexpr double kFlat_mm2 = 1e-6;  // twice a triangle's area under which it has no normal

std::array<float, 3> floats(Vec v) {
  return {static_cast<float>(v.x), static_cast<float>(v.y), static_cast<float>(v.z)};
}

std::int8_t byte_of(double share) {
  return static_cast<std::int8_t>(std::lround(std::clamp(share, -1.0, 1.0) * 127));
}

Vertex vertex(Vec at, Vec normal, Material material) {
  const auto p = floats(at);
  return {p[0],
          p[1],
          p[2],
          byte_of(normal.x),
          byte_of(normal.y),
          byte_of(normal.z),
          static_cast<std::uint8_t>(material)};
}

Vec across(const Shape& shape, const std::array<std::uint32_t, 3>& t) {
  const Vec& a = shape.points[t[0]];
  return cross(shape.points[t[1]] - a, shape.points[t[2]] - a);
}

std::uint32_t count32(std::size_t count) { return static_cast<std::uint32_t>(count); }

// Two directions square to `along` and to each other.
void square_to(Vec along, Vec& u, Vec& v) {
  const Vec helper = std::abs(along.z) < 0.9 ? Vec{0, 0, 1} : Vec{0, 1, 0};
  u = unit(cross(helper, along));
  v = cross(along, u);
}

struct Turn {
  double cosine, sine;
};
// The directions around a limb, computed once: they are most of what a figure asks of sin and cos.
const std::array<Turn, kAround>& turns() {
  static const std::array<Turn, kAround> kTurns = [] {
    std::array<Turn, kAround> all{};
    for (std::size_t i = 0; i < all.size(); ++i) {
      const double angle = 2 * std::numbers::pi * static_cast<double>(i) / kAround;
      all[i] = {std::cos(angle), std::sin(angle)};
    }
    return all;
  }();
  return kTurns;
}

Ring circle(Vec middle, Vec u, Vec v, double radius_mm) {
  Ring ring;
  ring.reserve(kAround);
  for (const Turn& turn : turns()) {
    ring.push_back(middle + u * (radius_mm * turn.cosine) + v * (radius_mm * turn.sine));
  }
  return ring;
}

}  // namespace

void Shape::add(const Shape& other) {
  const std::uint32_t base = count32(points.size());
  points.insert(points.end(), other.points.begin(), other.points.end());
  for (const auto& t : other.triangles) {
    triangles.push_back({t[0] + base, t[1] + base, t[2] + base});
  }
}

Shape loft(std::span<const Ring> rings, Caps caps) {
  Shape shape;
  if (rings.empty()) return shape;
  const std::uint32_t n = count32(rings[0].size());
  for (const Ring& ring : rings) {
    shape.points.insert(shape.points.end(), ring.begin(), ring.end());
  }
  for (std::uint32_t r = 0; r + 1 < count32(rings.size()); ++r) {
    for (std::uint32_t i = 0; i < n; ++i) {
      const std::uint32_t j = (i + 1) % n;
      const std::uint32_t a = r * n + i, b = r * n + j;
      shape.triangles.push_back({a, b, b + n});
      shape.triangles.push_back({a, b + n, a + n});
    }
  }
  if (caps == Caps::None) return shape;
  const auto cap = [&](const Ring& ring, std::uint32_t at, bool start) {
    Vec middle;
    for (const Vec& p : ring) middle = middle + p;
    middle = middle * (1.0 / static_cast<double>(n));
    const std::uint32_t hub = count32(shape.points.size());
    shape.points.push_back(middle);
    for (std::uint32_t i = 0; i < n; ++i) {
      const std::uint32_t a = at + i, b = at + (i + 1) % n;
      if (start) {
        shape.triangles.push_back({hub, b, a});
      } else {
        shape.triangles.push_back({hub, a, b});
      }
    }
  };
  cap(rings.front(), 0, true);
  cap(rings.back(), (count32(rings.size()) - 1) * n, false);
  return shape;
}

Shape box(Vec low, Vec high) {
  const Ring under{{low.x, low.y, low.z},
                   {high.x, low.y, low.z},
                   {high.x, high.y, low.z},
                   {low.x, high.y, low.z}};
  Ring over = under;
  for (Vec& p : over) p.z = high.z;
  const std::array rings{under, over};
  return loft(rings, Caps::Both);
}

Shape capsule(Vec from, Vec to, double from_radius_mm, double to_radius_mm) {
  const Vec along = unit(to - from);
  Vec u, v;
  square_to(along, u, v);
  std::vector<Ring> rings;
  const auto cap = [&](Vec middle, double radius, double first_deg, double last_deg) {
    for (int i = 0; i <= kCapRings; ++i) {
      const double deg = first_deg + (last_deg - first_deg) * i / kCapRings;
      const double angle = deg * std::numbers::pi / 180;
      rings.push_back(circle(middle + along * (radius * std::sin(angle)), u, v,
                             std::max(0.01, radius * std::cos(angle))));
    }
  };
  cap(from, from_radius_mm, -90, 0);
  cap(to, to_radius_mm, 0, 90);
  return loft(rings, Caps::Both);
}

Shape ellipsoid(Vec middle, Vec radii) {
  constexpr int kRings = 12;
  std::vector<Ring> rings;
  for (int r = 0; r <= kRings; ++r) {
    const double lat = (-0.5 + static_cast<double>(r) / kRings) * std::numbers::pi;
    const double wide = std::max(0.0001, std::cos(lat));
    rings.push_back(circle(middle + Vec{0, 0, radii.z * std::sin(lat)}, {radii.x * wide, 0, 0},
                           {0, radii.y * wide, 0}, 1));
  }
  return loft(rings, Caps::Both);
}

void turn_out(Shape& shape) {
  for (auto& t : shape.triangles) std::swap(t[1], t[2]);
}

void emit_round(Mesh& mesh, const Shape& shape, Material material) {
  std::vector<Vec> normals(shape.points.size());
  for (const auto& t : shape.triangles) {
    const Vec face = across(shape, t);
    for (const std::uint32_t p : t) normals[p] = normals[p] + face;
  }
  const std::uint32_t base = count32(mesh.vertices.size());
  for (std::size_t p = 0; p < shape.points.size(); ++p) {
    mesh.vertices.push_back(vertex(shape.points[p], unit(normals[p]), material));
  }
  for (const auto& t : shape.triangles) {
    for (const std::uint32_t p : t) mesh.indices.push_back(base + p);
  }
}

void emit_flat(Mesh& mesh, const Shape& shape, Material material) {
  for (const auto& t : shape.triangles) {
    const Vec normal = unit(across(shape, t));
    for (const std::uint32_t p : t) {
      mesh.indices.push_back(count32(mesh.vertices.size()));
      mesh.vertices.push_back(vertex(shape.points[p], normal, material));
    }
  }
}

void emit(Mesh& mesh, const Shape& shape, Material material, double crease_deg) {
  const std::size_t count = shape.triangles.size();
  std::vector<Vec> face(count), own(count);
  // Which triangles meet in a point.
  std::vector<std::uint32_t> first(shape.points.size() + 1, 0);
  for (std::size_t t = 0; t < count; ++t) {
    face[t] = across(shape, shape.triangles[t]);
    if (length(face[t]) < kFlat_mm2) continue;
    own[t] = unit(face[t]);
    for (const std::uint32_t p : shape.triangles[t]) ++first[p + 1];
  }
  for (std::size_t i = 1; i < first.size(); ++i) first[i] += first[i - 1];
  std::vector<std::uint32_t> meeting(first.back());
  std::vector<std::uint32_t> next(first.begin(), first.end() - 1);
  for (std::size_t t = 0; t < count; ++t) {
    if (own[t] == Vec{}) continue;
    for (const std::uint32_t p : shape.triangles[t]) meeting[next[p]++] = count32(t);
  }
  const double least = std::cos(crease_deg * std::numbers::pi / 180);
  // The vertices that each point has already, as lists: a corner with the same normal uses one of
  // them again.
  constexpr std::uint32_t kNone = 0xFFFFFFFFU;
  const std::uint32_t base = count32(mesh.vertices.size());
  std::vector<std::uint32_t> newest(shape.points.size(), kNone), older;
  for (std::size_t t = 0; t < count; ++t) {
    if (own[t] == Vec{}) continue;
    for (const std::uint32_t p : shape.triangles[t]) {
      Vec sum;
      for (std::uint32_t k = first[p]; k < first[p + 1]; ++k) {
        const std::uint32_t other = meeting[k];
        if (dot(own[other], own[t]) >= least) sum = sum + face[other];
      }
      const Vertex wanted = vertex(shape.points[p], unit(sum), material);
      std::uint32_t at = newest[p];
      while (at != kNone) {
        const Vertex& v = mesh.vertices[base + at];
        if (v.nx == wanted.nx && v.ny == wanted.ny && v.nz == wanted.nz) break;
        at = older[at];
      }
      if (at == kNone) {
        at = count32(older.size());
        older.push_back(newest[p]);
        newest[p] = at;
        mesh.vertices.push_back(wanted);
      }
      mesh.indices.push_back(base + at);
    }
  }
}

void paint_fan(Mesh& mesh, std::span<const Vec> points, Material material, double solid) {
  if (points.size() < 3) return;
  const std::uint32_t base = count32(mesh.vertices.size());
  for (const Vec& p : points) mesh.vertices.push_back(vertex(p, {solid, 0, 0}, material));
  for (std::uint32_t i = 1; i + 1 < count32(points.size()); ++i) {
    mesh.indices.insert(mesh.indices.end(), {base, base + i, base + i + 1});
  }
}

void paint_soft(Mesh& mesh, Vec low, Vec high, Vec fade, Material material, double solid) {
  // Corners are rounded off in a few steps, so that no diagonal shows.
  constexpr int kCorner = 5;
  std::vector<Vec> inner, outer;
  const std::array<Vec, 4> corners{Vec{high.x, high.y, low.z}, Vec{low.x, high.y, low.z},
                                   Vec{low.x, low.y, low.z}, Vec{high.x, low.y, low.z}};
  for (std::size_t c = 0; c < corners.size(); ++c) {
    for (int i = 0; i <= kCorner; ++i) {
      const double angle =
          (static_cast<double>(c) + static_cast<double>(i) / kCorner) * std::numbers::pi / 2;
      inner.push_back(corners[c]);
      outer.push_back(corners[c] + Vec{fade.x * std::cos(angle), fade.y * std::sin(angle), 0});
    }
  }
  paint_fan(mesh, inner, material, solid);
  const std::uint32_t base = count32(mesh.vertices.size());
  const std::uint32_t n = count32(inner.size());
  for (const Vec& p : inner) mesh.vertices.push_back(vertex(p, {solid, 0, 0}, material));
  for (const Vec& p : outer) mesh.vertices.push_back(vertex(p, {}, material));
  for (std::uint32_t i = 0; i < n; ++i) {
    const std::uint32_t j = (i + 1) % n;
    mesh.indices.insert(mesh.indices.end(),
                        {base + i, base + n + i, base + n + j, base + i, base + n + j, base + j});
  }
}

Line line(Vec from, Vec to, double width_px, Material material) {
  return {floats(from), floats(to), static_cast<float>(width_px),
          static_cast<float>(static_cast<std::uint8_t>(material))};
}

void outline(std::vector<Line>& lines, std::span<const Vec> points, double width_px,
             Material material) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    lines.push_back(line(points[i], points[(i + 1) % points.size()], width_px, material));
  }
}

void box_edges(std::vector<Line>& lines, Vec low, Vec high, double width_px, Material material) {
  const auto ring = [&](double z) {
    return Ring{{low.x, low.y, z}, {high.x, low.y, z}, {high.x, high.y, z}, {low.x, high.y, z}};
  };
  const Ring under = ring(low.z), over = ring(high.z);
  outline(lines, under, width_px, material);
  outline(lines, over, width_px, material);
  for (std::size_t i = 0; i < under.size(); ++i) {
    lines.push_back(line(under[i], over[i], width_px, material));
  }
}

}  // namespace hs::web::scene
