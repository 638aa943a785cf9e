#pragma once
// What the scene is made of before any graphics library sees it: triangles and lines with a
// material each. A material is a role; the theme gives it a colour when it is drawn.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "web/scene/vec.h"

namespace hs::web::scene {

enum class Material : std::uint8_t {
  Ground,
  Shadow,
  FeetLine,
  ChildZone,
  ChildEdge,
  Cabinet,
  Counter,
  OtherCounter,  // the dough counter's top where it is apart from the oven's
  Riser,
  Masonry,
  Wall,
  Cover,
  Neighbour,  // a grill beside the oven
  OvenShell,
  OvenInside,
  Hearth,
  Unseen,
  SeenLeaning,  // seen only when the cook leans
  Seen,
  Pizza,
  PizzaUnseen,
  Cheese,
  Topping,
  Crust,
  Looker,  // the cook who looks
  Person,
  Furniture,  // a seat, a child's table
  Eye,
  Wedge,
  Edge,       // thin line where two faces meet
  MouthEdge,  // outline of the mouth
  Sightline,
  // What must stay free.
  ClearRoom,  // that somebody asks for round something hot
  ClearEdge,
  UnknownRoom,  // nobody has said how much
  UnknownEdge,
  WorkRoom,  // ground to work on
  WorkEdge,
  Landing,
  LandingEdge,
  // The lamp.
  Lamp,
  Beam,
  // Of the cabinets pulled apart.
  Board,   // plywood
  Lumber,  // treated, that carries
  Picked,  // what a finger has picked
};
inline constexpr std::size_t kMaterialCount = 45;

// 16 bytes. The normal is a unit vector times 127; in a painted layer its first byte is how solid
// the paint is there, 0..127.
struct Vertex {
  float x, y, z;
  std::int8_t nx, ny, nz;
  std::uint8_t material;
};

struct Mesh {
  std::vector<Vertex> vertices;
  std::vector<std::uint32_t> indices;  // three for each triangle
};

// A straight line of a width in CSS px.
struct Line {
  std::array<float, 3> from, to;
  float width_px;
  float material;  // a small whole number
};

// Closed or open surface before it is lit: points may stand once for many triangles.
struct Shape {
  std::vector<Vec> points;
  std::vector<std::array<std::uint32_t, 3>> triangles;

  void add(const Shape& other);
};

using Ring = std::vector<Vec>;

// Rings of equally many points joined to a tube. Its faces look outward when each ring runs
// counter-clockwise for somebody who looks back along the tube from its last ring. Capped ends are
// fans around their middle, so an end must be star-shaped around it.
enum class Caps : std::uint8_t { None, Both };
Shape loft(std::span<const Ring> rings, Caps caps);

Shape box(Vec low, Vec high);
// A limb: a straight rounded rod whose radius runs evenly from one end to the other.
Shape capsule(Vec from, Vec to, double from_radius_mm, double to_radius_mm);
Shape ellipsoid(Vec middle, Vec radii);
// Everything in `shape` turned inside out.
void turn_out(Shape& shape);

// Adds a shape as round everywhere, as flat everywhere, or round where faces meet at less than
// `crease_deg`. The first two cost least.
void emit_round(Mesh& mesh, const Shape& shape, Material material);
void emit_flat(Mesh& mesh, const Shape& shape, Material material);
void emit(Mesh& mesh, const Shape& shape, Material material, double crease_deg);

// A flat fan of a convex outline at one height, its first point the hub. `solid`: 0..1.
void paint_fan(Mesh& mesh, std::span<const Vec> outline, Material material, double solid = 1);
// A rectangle at the height of `low` whose paint fades to nothing `fade` outside it, x and y.
void paint_soft(Mesh& mesh, Vec low, Vec high, Vec fade, Material material, double solid = 1);

Line line(Vec from, Vec to, double width_px, Material material);
// All lines between consecutive points, and from the last to the first.
void outline(std::vector<Line>& lines, std::span<const Vec> points, double width_px,
             Material material);
void box_edges(std::vector<Line>& lines, Vec low, Vec high, double width_px, Material material);

}  // namespace hs::web::scene
