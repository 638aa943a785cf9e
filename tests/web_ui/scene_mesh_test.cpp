// The scene's meshes against the engine: closed, outward, true to size, and with nothing before a
// point that an eye sees.

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/report/station_layout.h"
#include "engine/sight/sight.h"
#include "tests/report/preset.h"
#include "web/scene/figure.h"
#include "web/scene/model.h"
#include "web/scene/oven_mesh.h"

using namespace hs;
using namespace hs::web::scene;
using hs::frame::Piece;

namespace {

using Key = std::tuple<long, long, long>;
Key key_of(Vec p) {
  // A hundredth of a millimetre is one place.
  return {std::lround(p.x * 100), std::lround(p.y * 100), std::lround(p.z * 100)};
}

// Edges that are not walked as often one way as the other.
int open_edges(const Shape& shape) {
  std::map<std::pair<Key, Key>, int> walked;
  for (const auto& t : shape.triangles) {
    const std::array<Key, 3> k{key_of(shape.points[t[0]]), key_of(shape.points[t[1]]),
                               key_of(shape.points[t[2]])};
    for (std::size_t i = 0; i < 3; ++i) {
      const Key& a = k[i];
      const Key& b = k[(i + 1) % 3];
      if (a == b) continue;
      ++walked[{a, b}];
      --walked[{b, a}];
    }
  }
  return static_cast<int>(
      std::count_if(walked.begin(), walked.end(), [](const auto& e) { return e.second != 0; }));
}

// Positive when the faces look outward.
double volume(const Shape& shape) {
  double sum = 0;
  for (const auto& t : shape.triangles) {
    sum += dot(shape.points[t[0]], cross(shape.points[t[1]], shape.points[t[2]])) / 6;
  }
  return sum;
}

struct Room {
  Vec low{1e9, 1e9, 1e9}, high{-1e9, -1e9, -1e9};
};
Room room_of(std::span<const Vec> points) {
  Room room;
  for (const Vec& p : points) {
    room.low = {std::min(room.low.x, p.x), std::min(room.low.y, p.y), std::min(room.low.z, p.z)};
    room.high = {std::max(room.high.x, p.x), std::max(room.high.y, p.y),
                 std::max(room.high.z, p.z)};
  }
  return room;
}
Room room_of(const Mesh& mesh, Material material) {
  std::vector<Vec> points;
  for (const Vertex& v : mesh.vertices) {
    if (v.material == static_cast<std::uint8_t>(material)) points.push_back({v.x, v.y, v.z});
  }
  return room_of(points);
}

// Of what is painted with a material, mm2.
double painted(const Mesh& mesh, Material material) {
  double area = 0;
  for (std::size_t i = 0; i + 2 < mesh.indices.size(); i += 3) {
    const auto at = [&](std::size_t k) {
      const Vertex& v = mesh.vertices[mesh.indices[i + k]];
      return Vec{v.x, v.y, v.z};
    };
    if (mesh.vertices[mesh.indices[i]].material != static_cast<std::uint8_t>(material)) continue;
    area += length(cross(at(1) - at(0), at(2) - at(0))) / 2;
  }
  return area;
}

bool hits(const Shape& shape, Vec from, Vec to) {
  const Vec way = to - from;
  for (const auto& t : shape.triangles) {
    const Vec a = shape.points[t[0]], ab = shape.points[t[1]] - a, ac = shape.points[t[2]] - a;
    const Vec p = cross(way, ac);
    const double det = dot(ab, p);
    if (std::abs(det) < 1e-9) continue;
    const Vec s = from - a;
    const double u = dot(s, p) / det;
    const Vec q = cross(s, ab);
    const double v = dot(way, q) / det;
    const double along = dot(ac, q) / det;
    if (u >= 0 && v >= 0 && u + v <= 1 && along > 1e-6 && along < 1 - 1e-6) return true;
  }
  return false;
}

// Ovens of every kind, mouth and floor.
std::vector<config::Oven> ovens() {
  std::vector<config::Oven> all;
  for (int kind = 0; kind <= static_cast<int>(config::OvenKind::Other); ++kind) {
    for (const config::MouthShape mouth :
         {config::MouthShape::Rectangle, config::MouthShape::Arch, config::MouthShape::HalfRound}) {
      for (const bool deep : {false, true}) {
        config::Oven oven;
        oven.kind = static_cast<config::OvenKind>(kind);
        oven.mouth_shape = mouth;
        if (deep) {
          oven.width_mm = 1100;
          oven.depth_mm = 1300;
          oven.height_mm = 700;
          oven.mouth_height_mm = 280;
          oven.mouth_side_height_mm = 130;
          oven.throat_mm = 250;
          oven.brow_mm = 60;
          oven.floor_shape = config::FloorShape::Round;
          oven.floor_width_mm = 900;
          oven.floor_depth_mm = 900;
          oven.outer_mouth.width_mm = 520;
          oven.outer_mouth.height_mm = 340;
        }
        if (oven::impossible(oven).empty()) all.push_back(oven);
      }
    }
  }
  return all;
}

}  // namespace

TEST_CASE("boxes, limbs and heads are closed and look outward", "[scene][mesh]") {
  const Shape shapes[] = {box({-1, 2, 3}, {4, 6, 9}), capsule({0, 0, 0}, {30, 40, 120}, 20, 12),
                          capsule({0, 0, 0}, {0, 0, -80}, 10, 10),
                          ellipsoid({5, 5, 5}, {60, 80, 100})};
  for (const Shape& shape : shapes) {
    CHECK(open_edges(shape) == 0);
    CHECK(volume(shape) > 0);
  }
  CHECK(volume(shapes[0]) == Catch::Approx(5.0 * 4 * 6));
  Mesh mesh;
  emit_round(mesh, shapes[3], Material::Person);
  emit(mesh, shapes[3], Material::Person, 60);
  emit_flat(mesh, shapes[3], Material::Person);
  for (const Vertex& v : mesh.vertices) {
    const Vec out = Vec{v.x, v.y, v.z} - Vec{5, 5, 5};
    CHECK(dot(out, {1.0 * v.nx, 1.0 * v.ny, 1.0 * v.nz}) > 0);
  }
}

TEST_CASE("every oven's shell, throat and vault are one closed surface", "[scene][oven]") {
  const std::vector<config::Oven> all = ovens();
  REQUIRE(all.size() >= 24);
  for (const config::Oven& oven : all) {
    CAPTURE(static_cast<int>(oven.kind), static_cast<int>(oven.mouth_shape), oven.throat_mm);
    const oven::Geometry g = oven::geometry_of(oven);
    const OvenShape shape = oven_shape(oven, g, 900);
    Shape whole = shape.shell;
    whole.add(shape.inside);
    whole.add(shape.hearth);
    CHECK(open_edges(whole) == 0);
    CHECK(volume(whole) > 0);
    CHECK(open_edges(shape.solid) == 0);
    CHECK(volume(shape.solid) > 0);
  }
}

TEST_CASE("body, mouth and floor have the oven's own sizes", "[scene][oven]") {
  constexpr double kRound_mm = 0.001;
  for (const config::Oven& oven : ovens()) {
    const oven::Geometry g = oven::geometry_of(oven);
    const double base = 800, floor = base + oven.floor_above_base_mm;
    CAPTURE(static_cast<int>(oven.kind), static_cast<int>(oven.mouth_shape));
    const Ring mouth = opening(g.inner, g.throat_mm, floor);
    const Room room = room_of(mouth);
    CHECK(room.high.x - room.low.x == Catch::Approx(oven.mouth_width_mm).margin(kRound_mm));
    CHECK(room.low.z == Catch::Approx(floor));
    CHECK(room.high.z - floor == Catch::Approx(oven.mouth_height_mm).margin(kRound_mm));
    for (const Vec& p : mouth) {
      CHECK(std::abs(p.x) <= g.inner.half_width_at(p.z - floor) + kRound_mm);
    }
    const OvenShape shape = oven_shape(oven, g, base);
    const Room shell = room_of(shape.shell.points);
    // The widest ring of a dome stands beside the step that would be exactly the widest.
    CHECK(shell.high.x - shell.low.x <= oven.width_mm + kRound_mm);
    CHECK(shell.high.x - shell.low.x >= 0.985 * oven.width_mm);
    CHECK(shell.high.z <= base + oven.height_mm + kRound_mm);
    CHECK(shell.high.z >= base + oven.height_mm - 0.02 * oven.height_mm);
    const Room hearth = room_of(floor_outline(g.floor, floor));
    CHECK(hearth.high.x - hearth.low.x == Catch::Approx(oven.floor_width_mm).margin(1));
    CHECK(hearth.high.y - hearth.low.y == Catch::Approx(oven.floor_depth_mm).margin(1));
  }
}

TEST_CASE("what the engine sees through the mouth the drawn oven leaves free, and hides the rest",
          "[scene][oven][brute]") {
  const double base = 900;
  for (const config::Oven& oven : ovens()) {
    const oven::Geometry g = oven::geometry_of(oven);
    const OvenShape shape = oven_shape(oven, g, base);
    const double floor = base + oven.floor_above_base_mm;
    for (const sight::Eye eye : {sight::Eye{0, 700, 500}, sight::Eye{180, 900, 350}}) {
      const Vec at{eye.x_mm, -eye.distance_mm, floor + eye.height_mm};
      for (int row = 1; row < 10; ++row) {
        const double y = g.floor.near_mm + (g.floor.far_mm - g.floor.near_mm) * row / 10;
        const double half = g.floor.half_width_at(y);
        const sight::Span seen = sight::seen_at(g, eye, y);
        for (int column = -9; column <= 9; ++column) {
          const double x = 0.97 * half * column / 9;
          // A curve drawn with straight pieces is off by a few mm at the very edge.
          constexpr double kEdge_mm = 8;
          const bool inside = x > seen.left_mm + kEdge_mm && x < seen.right_mm - kEdge_mm;
          const bool outside = seen.left_mm >= seen.right_mm || x < seen.left_mm - kEdge_mm ||
                               x > seen.right_mm + kEdge_mm;
          if (!inside && !outside) continue;
          CAPTURE(static_cast<int>(oven.kind), static_cast<int>(oven.mouth_shape), oven.throat_mm,
                  eye.x_mm, x, y);
          const Vec point{x, y, floor + 0.5};
          const bool blocked = hits(shape.shell, at, point) || hits(shape.inside, at, point) ||
                               hits(shape.solid, at, point);
          CHECK(blocked == outside);
        }
      }
    }
  }
}

TEST_CASE("the painted floor has the engine's shares", "[scene][sight]") {
  for (const double standoff : {450.0, 700.0, 1100.0}) {
    config::Config config;
    config.view.standoff_mm = standoff;
    const evaluate::Evaluation e = evaluate::evaluate_fit(config);
    const report::StationLayout layout = report::station_layout(config, e);
    const Part part = sight_part(config, e, layout, {});
    const double floor = e.geometry.floor.area_mm2();
    CHECK(painted(part.paint, Material::Unseen) == Catch::Approx(floor).epsilon(0.002));
    CHECK(painted(part.paint, Material::Seen) / floor ==
          Catch::Approx(e.cooks[0].watching.floor_share).margin(0.003));
    const double pizza = painted(part.paint, Material::PizzaUnseen);
    // The rim takes a little of the disc, the same on the seen and the unseen part or nearly so.
    CHECK(painted(part.paint, Material::Pizza) / pizza ==
          Catch::Approx(e.cooks[0].watching.pizza_share).margin(0.03));
  }
}

TEST_CASE("figures are as tall as their body, stand on the ground and see from its eye",
          "[scene][figure]") {
  for (const bool seated : {false, true}) {
    for (const double stature : {1150.0, 1500.0, 1700.0, 1950.0}) {
      config::Cook cook;
      cook.stature_mm = stature;
      cook.seated = seated;
      if (stature < 1300) cook.build = config::Build::Child;
      const cook::Body body = cook::body_of(cook);
      for (const sight::Posture posture :
           {sight::Posture{}, sight::Posture{30, 0}, sight::Posture{20, seated ? 0.0 : 40.0}}) {
        CAPTURE(seated, stature, posture.trunk_deg, posture.knee_deg);
        const Stance stance{.under_eye = {100, -700, 0}, .posture = posture};
        const Joints j = joints_of(body, stance);
        const sight::Eye eye =
            sight::bent({0, 700, body.eye.value_mm}, {body.eye_lever_mm, body.leg_mm}, posture);
        CHECK(j.eye.x == Catch::Approx(100));
        CHECK(j.eye.y == Catch::Approx(-eye.distance_mm).margin(0.01));
        CHECK(j.eye.z == Catch::Approx(eye.height_mm).margin(0.01));
        Mesh mesh;
        add_figure(mesh, body, stance, Material::Looker);
        const Room room = room_of(mesh, Material::Looker);
        CHECK(room.low.z >= -1);
        CHECK(room.low.z <= 6);
        if (posture == sight::Posture{}) {
          if (!seated) CHECK(room.high.z == Catch::Approx(body.stature_mm).margin(2));
          CHECK(room.high.y == Catch::Approx(-700 + body.toes_mm).margin(0.02 * stature));
        }
        for (int side = 0; side < 2; ++side) {
          CHECK(length(j.elbow[side] - j.shoulder[side]) < 0.25 * body.stature_mm);
          // Knees bend forward and legs keep their length.
          CHECK(j.knee[side].y >= std::min(j.hip[side].y, j.ankle[side].y) - 1);
        }
      }
    }
  }
}

TEST_CASE("a figure turned to its right faces +x", "[scene][figure]") {
  const cook::Body body = cook::body_of(config::Cook{});
  const Joints j = joints_of(body, {.under_eye = {}, .turned_deg = -90});
  CHECK(j.toe[0].x > 50);
  CHECK(std::abs(j.toe[0].y) < 0.1 * body.stature_mm);
}

TEST_CASE("parts of every station are finite, and change their digest only with their mesh",
          "[scene][model]") {
  config::Config config;
  config.cooks.push_back(config::Cook{
      .name = "Two", .stature_mm = 1150, .build = config::Build::Child, .age_years = 6});
  config.station.aisle_mm = 1500;
  config.station.back_gap_mm = 200;
  config.station.left_gap_mm = 300;
  config.site.cover_height_mm = 2500;
  for (const config::Arrangement arrangement :
       {config::Arrangement::OneLevel, config::Arrangement::Riser, config::Arrangement::TwoLevel}) {
    config.station.arrangement = arrangement;
    const evaluate::Evaluation e = evaluate::evaluate_fit(config);
    const report::StationLayout layout = report::station_layout(config, e);
    for (const Part& part : {station_part(config, e, layout), people_part(config, e, layout, {}),
                             sight_part(config, e, layout, {})}) {
      for (const Mesh* mesh : {&part.ground, &part.solid, &part.paint, &part.veil, &part.ghost}) {
        for (const Vertex& v : mesh->vertices) {
          CHECK(std::isfinite(v.x + v.y + v.z));
          CHECK(v.material < kMaterialCount);
        }
        for (const std::uint32_t i : mesh->indices) CHECK(i < mesh->vertices.size());
      }
    }
  }
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  // No edge of a cover's post or of what stands behind the cooks goes up across the picture.
  const report::StationLayout layout = report::station_layout(config, e);
  REQUIRE(layout.cover->posts.size() == 4);
  for (const Line& line : station_part(config, e, layout).lines) {
    for (const report::Block& post : layout.cover->posts) {
      const double x = static_cast<double>(line.from[0]), y = static_cast<double>(line.from[1]);
      const double z = static_cast<double>(line.from[2]);
      const bool at_post = x >= post.left_mm && x <= post.right_mm && y >= post.near_mm &&
                           y <= post.far_mm && z < post.top_mm - 1;
      if (at_post) CHECK(static_cast<double>(line.to[2]) <= z);
    }
  }
  config::Config deeper = config;
  deeper.station.prep_depth_mm += 50;
  const evaluate::Evaluation d = evaluate::evaluate_fit(deeper);
  CHECK(station_digest(config, e) != station_digest(deeper, d));
  CHECK(sight_digest(config, e, {}) == sight_digest(deeper, d, {}));
  config::Config nearer = config;
  nearer.view.standoff_mm -= 100;
  nearer.station.oven_base_height_mm = e.used.oven_base_mm;
  config.station.oven_base_height_mm = e.used.oven_base_mm;
  nearer.station.counter_height_mm = config.station.counter_height_mm = e.used.counter_mm;
  const evaluate::Evaluation f = evaluate::evaluate_fit(config);
  const evaluate::Evaluation n = evaluate::evaluate_fit(nearer);
  CHECK(station_digest(config, f) == station_digest(nearer, n));
  CHECK(people_digest(config, f, {}) != people_digest(nearer, n, {}));
  CHECK(sight_digest(config, f, {}) != sight_digest(nearer, n, {}));
  CHECK(people_digest(config, f, {}) != people_digest(config, f, {.leaning = true}));
}

TEST_CASE(
    "pulled apart, no piece of any station is in another's place, and each is picked where it is",
    "[scene][apart]") {
  int stations = 0;
  for (const char* name : hs::test::kPresets) {
    CAPTURE(name);
    const config::Config c = hs::test::preset(name);
    const evaluate::Evaluation e = evaluate::evaluate_all(c);
    if (!can_come_apart(e)) continue;
    ++stations;
    const report::StationLayout layout = report::station_layout(c, e);
    const Part part = apart_part(c, e, layout, {true, {}});
    CHECK(part.solid.vertices.size() >= 8 * e.build->frame.pieces.size());
    double lowest = 1e9;
    for (const Vertex& v : part.solid.vertices) {
      CHECK(std::isfinite(v.x + v.y + v.z));
      lowest = std::min(lowest, static_cast<double>(v.z));
    }
    CHECK(lowest >= 0);  // nothing under the ground
    CHECK(apart_digest(c, e, {true, {}}) != apart_digest(c, e, {true, 0}));
    CHECK(apart_digest(c, e, {true, {}}) != station_digest(c, e));
    // What a picked piece paints is where a ray at it picks it.
    for (std::size_t i = 0; i < e.build->frame.pieces.size(); ++i) {
      const Part with = apart_part(c, e, layout, {true, i});
      Vec low{1e9, 1e9, 1e9}, high{-1e9, -1e9, -1e9};
      for (const Vertex& v : with.solid.vertices) {
        if (v.material != static_cast<std::uint8_t>(Material::Picked)) continue;
        low = {std::min(low.x, static_cast<double>(v.x)), std::min(low.y, static_cast<double>(v.y)),
               std::min(low.z, static_cast<double>(v.z))};
        high = {std::max(high.x, static_cast<double>(v.x)),
                std::max(high.y, static_cast<double>(v.y)),
                std::max(high.z, static_cast<double>(v.z))};
      }
      REQUIRE(low.x < high.x);
      // From inside of it, so that nothing else is nearer.
      const Piece& piece = e.build->frame.pieces[i];
      if (!piece.folds.empty()) continue;  // not a block
      CHECK(piece_on(e, layout, (low + high) * 0.5, {0.6, 0.48, 0.64}) == i);
    }
  }
  CHECK(stations > 5);
}

TEST_CASE("the shaders have a place for every material", "[scene][shaders]") {
  for (const char* name : {"solid.vert", "paint.vert", "line.vert"}) {
    std::ifstream in(std::string(HEARTHSIGHT_SOURCE_DIR) + "/shaders/" + name);
    std::stringstream text;
    text << in.rdbuf();
    const std::string wanted = "palette[" + std::to_string(kMaterialCount) + "];";
    CAPTURE(name);
    CHECK(text.str().find(wanted) != std::string::npos);
  }
}

TEST_CASE("zones are the engine's own boxes, and only when asked for", "[ui][scene][zones]") {
  config::Config c = hs::test::preset("stations/open_courtyard");
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const report::StationLayout layout = report::station_layout(c, e);
  const Part none = zones_part(e, layout, false);
  CHECK(none.veil.indices.empty());
  CHECK(none.ground.indices.empty());
  CHECK(none.lines.empty());
  CHECK(zones_digest(e, layout, true) != zones_digest(e, layout, false));
  const Part part = zones_part(e, layout, true);
  Room wanted;
  std::vector<Vec> corners;
  double faces_mm2 = 0;
  for (const clearance::Zone& zone : e.surroundings.hot) {
    if (!zone.box) continue;
    const clearance::Box& b = *zone.box;
    if (b.width_mm() <= 1 || b.depth_mm() <= 1 || b.height_mm() <= 1) continue;
    corners.push_back({b.left_mm, b.near_mm, b.bottom_mm});
    corners.push_back({b.right_mm, b.far_mm, b.top_mm});
    faces_mm2 += 2 * (b.width_mm() * b.depth_mm() + b.width_mm() * b.height_mm() +
                      b.depth_mm() * b.height_mm());
  }
  REQUIRE(corners.size() >= 8);
  wanted = room_of(corners);
  const Room drawn = room_of(part.veil, Material::ClearRoom);
  CHECK(length(drawn.low - wanted.low) < 0.01);
  CHECK(length(drawn.high - wanted.high) < 0.01);
  CHECK(painted(part.veil, Material::ClearRoom) == Catch::Approx(faces_mm2));
  // The aisle as the reach module asks for it.
  for (const reach::Zone& zone : e.surroundings.room) {
    if (zone.rule != "reach.aisle") continue;
    const Room aisle = room_of(part.ground, Material::WorkRoom);
    CHECK(aisle.high.y - aisle.low.y == Catch::Approx(*zone.required_mm));
  }
  CHECK(painted(part.veil, Material::Landing) > 0);
  // Everything that is known is named with its length.
  int named = 0;
  for (const ZoneName& name : zone_names(e, layout)) {
    if (name.material == Material::ClearRoom) CHECK(name.required_mm.has_value());
    named += name.material == Material::ClearRoom ? 1 : 0;
  }
  CHECK(static_cast<std::size_t>(named) == corners.size() / 2);
}

TEST_CASE("a side that nobody has said anything about shows as not known", "[ui][scene][zones]") {
  config::Config c;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const report::StationLayout layout = report::station_layout(c, e);
  const Part part = zones_part(e, layout, true);
  const auto unknown = std::count_if(layout.clear.begin(), layout.clear.end(),
                                     [](const auto& zone) { return !zone.known(); });
  REQUIRE(unknown > 0);
  CHECK(painted(part.veil, Material::UnknownRoom) > 0);
  CHECK(std::any_of(part.lines.begin(), part.lines.end(), [](const Line& line) {
    return line.material == static_cast<float>(Material::UnknownEdge);
  }));
}

TEST_CASE("the lamp hangs where the engine says, and shines on the pizza", "[ui][scene][lamp]") {
  config::Config c;
  CHECK(lamp_part(evaluate::evaluate(c), report::station_layout(c, evaluate::evaluate(c)))
            .solid.indices.empty());
  c.light.mount = config::Mount::Right;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const report::StationLayout layout = report::station_layout(c, e);
  REQUIRE(e.light.lamp->head.has_value());
  const Part part = lamp_part(e, layout);
  const Room room = room_of(part.solid, Material::Lamp);
  const Vec head = *e.light.lamp->head + Vec{0, 0, layout.floor_mm};
  const Vec foot = e.light.lamp->mount + Vec{0, 0, layout.floor_mm};
  for (const Vec& at : {head, foot}) {
    CHECK((at.x >= room.low.x - 1 && at.x <= room.high.x + 1));
    CHECK((at.y >= room.low.y - 1 && at.y <= room.high.y + 1));
    CHECK((at.z >= room.low.z - 1 && at.z <= room.high.z + 1));
  }
  // The beam ends on the whole pizza.
  const Room beam = room_of(part.veil, Material::Beam);
  CHECK(beam.high.y == Catch::Approx(e.pizza.y_mm + e.pizza.radius_mm).margin(2));
  CHECK(part.veil.vertices.size() > 30);
  config::Config moved = c;
  moved.light.head = {head.x, -head.y, e.light.lamp->head->z + 10};
  const evaluate::Evaluation f = evaluate::evaluate(moved);
  CHECK(lamp_digest(f, layout) != lamp_digest(e, layout));
  CHECK(station_digest(moved, f) == station_digest(c, e));
}
