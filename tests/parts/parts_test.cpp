// The parts list against the pieces it is made from.

#include "engine/parts/parts.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/frame/stock.h"
#include "tests/report/preset.h"
#include "tests/support/random.h"

using namespace hs;
using namespace hs::parts;
using Catch::Matchers::WithinAbs;
using frame::Axis;
using frame::Face;
using frame::Piece;

namespace {

constexpr double kTenth_mm = 0.05 + 1e-9;  // sizes are told to 0.1 mm

evaluate::Evaluation all_of(const config::Config& config) { return evaluate::evaluate_all(config); }

// A piece turned by half a turn about one of its axes, told in coordinates from its own low corner:
// every face with what is on it, every hole by the box that it takes out. Nothing of engine/parts.
struct Told {
  std::array<long long, 3> size{};
  std::array<int, 6> faces{};
  std::multiset<std::array<long long, 8>> holes;
  bool operator==(const Told&) const = default;
};

Told told(const Piece& piece, int about) {  // about: -1 as it is, else the axis
  const auto tenths = [](double mm) { return std::llround(mm * 10); };
  Told out;
  for (int a = 0; a < 3; ++a) {
    out.size[static_cast<std::size_t>(a)] =
        tenths(frame::size_of(piece.place, static_cast<Axis>(a)));
  }
  const auto flips = [about](int axis) { return about >= 0 && axis != about; };
  for (int f = 0; f < 6; ++f) {
    const int to = flips(f / 2) ? f ^ 1 : f;
    const frame::Surface& surface = piece.surfaces[static_cast<std::size_t>(f)];
    out.faces[static_cast<std::size_t>(to)] =
        10 * static_cast<int>(surface.coat) + static_cast<int>(surface.edge);
  }
  for (const frame::Hole& hole : piece.holes) {
    for (int i = 0; i < hole.count; ++i) {
      std::array<double, 3> at{};
      const double step = i * hole.pitch_mm;
      at[static_cast<std::size_t>(frame::u_of(piece.thick))] =
          hole.u_mm + (hole.along_u ? step : 0);
      at[static_cast<std::size_t>(frame::v_of(piece.thick))] =
          hole.v_mm + (hole.along_u ? 0 : step);
      std::array<long long, 8> line{};
      for (int a = 0; a < 3; ++a) {
        const auto s = static_cast<std::size_t>(a);
        if (static_cast<Axis>(a) == piece.thick) continue;
        const double size = frame::size_of(piece.place, static_cast<Axis>(a));
        line[s] = tenths(flips(a) ? size - at[s] : at[s]);
      }
      const int face = static_cast<int>(hole.face);
      line[3] = hole.deep_mm == 0 ? -1 : flips(face / 2) ? face ^ 1 : face;
      line[4] = tenths(hole.wide_mm);
      line[5] = tenths(hole.high_mm);
      line[6] = tenths(hole.deep_mm);
      line[7] = hole.round ? 1 : 0;
      out.holes.insert(line);
    }
  }
  return out;
}

// Tenths of a millimetre may round either way when a place is counted from the other end.
bool near(const Told& a, const Told& b) {
  if (a.faces != b.faces || a.holes.size() != b.holes.size()) return false;
  for (std::size_t i = 0; i < 3; ++i) {
    if (std::abs(a.size[i] - b.size[i]) > 1) return false;
  }
  std::vector<std::array<long long, 8>> left(b.holes.begin(), b.holes.end());
  for (const auto& hole : a.holes) {
    const auto match = std::find_if(left.begin(), left.end(), [&](const auto& other) {
      for (std::size_t i = 0; i < 8; ++i) {
        if (std::abs(hole[i] - other[i]) > (i < 3 ? 2 : i == 3 ? 0 : 1)) return false;
      }
      return true;
    });
    if (match == left.end()) return false;
    left.erase(match);
  }
  return true;
}

bool can_be_turned_into(const Piece& a, const Piece& b) {
  const Told as_it_is = told(a, -1);
  for (int about = -1; about < 3; ++about) {
    if (near(as_it_is, told(b, about))) return true;
  }
  return false;
}

config::Config varied(test::Random& random) {
  config::Config c;
  c.station.prep_width_mm = 700 + 10 * random.below(200);
  c.station.arrangement = static_cast<config::Arrangement>(random.below(3));
  c.frame.face = static_cast<config::FaceKind>(random.below(2));
  c.frame.fronts = static_cast<config::FrontKind>(random.below(2));
  c.frame.dough_bays = static_cast<config::Holds>(random.below(5));
  c.frame.bay_1 = static_cast<config::Holds>(random.below(5));
  c.frame.oven_bays = static_cast<config::Holds>(random.below(4));
  return c;
}

}  // namespace

TEST_CASE("boards have the sizes that PS 20 gives them", "[frame][source]") {
  // DOC PS 20, size table, dry: 1x6, 1x8, 5/4, 2x10 (public copies).
  constexpr double kInch = 25.4;
  CHECK(*frame::dressed_thickness_mm(4) == 0.75 * kInch);
  CHECK(*frame::dressed_thickness_mm(5) == 1.0 * kInch);
  CHECK(*frame::dressed_thickness_mm(8) == 1.5 * kInch);
  CHECK_FALSE(frame::dressed_thickness_mm(6));
  const std::pair<int, double> widths[] = {{2, 1.5},   {3, 2.5},    {4, 3.5},   {5, 4.5},
                                           {6, 5.5},   {7, 6.5},    {8, 7.25},  {9, 8.25},
                                           {10, 9.25}, {11, 10.25}, {12, 11.25}};
  for (const auto& [nominal, inches] : widths) {
    CHECK_THAT(*frame::dressed_width_mm(nominal), WithinAbs(inches * kInch, 1e-9));
  }
  CHECK_FALSE(frame::dressed_width_mm(14));
  CHECK(frame::board_at_least(89.0) == 6);
  CHECK(frame::board_at_least(88.9) == 4);
  CHECK_FALSE(frame::board_at_least(300));
  // The metric column's soft conversions: 19 x 89, 19 x 140, 19 x 184.
  CHECK_THAT(*frame::dressed_width_mm(4), WithinAbs(89, 0.5));
  CHECK_THAT(*frame::dressed_width_mm(6), WithinAbs(140, 0.5));
  CHECK_THAT(*frame::dressed_width_mm(8), WithinAbs(184, 0.5));
}

TEST_CASE("every piece is in the list once, at its own size", "[parts][law]") {
  test::Random random(31);
  for (int i = 0; i < 200; ++i) {
    const auto e = all_of(varied(random));
    const auto& pieces = e.build->frame.pieces;
    std::vector<int> seen(pieces.size(), 0);
    for (const Part& part : e.build->parts.parts) {
      CHECK(part.quantity() > 0);
      for (const std::size_t at : part.pieces) {
        ++seen[at];
        const Piece& piece = pieces[at];
        // An end that is partly turned down stands out beyond the plate.
        double out_mm = 0;
        for (const frame::Tail& tail : piece.tails) out_mm += tail.out_mm;
        std::vector<double> have{part.length_mm, part.width_mm, part.thick_mm};
        std::vector<double> want{piece.place.width_mm() + out_mm, piece.place.depth_mm(),
                                 piece.place.height_mm()};
        CHECK_THAT(part.thick_mm, WithinAbs(frame::size_of(piece.place, piece.thick), kTenth_mm));
        if (piece.has_grain) {
          CHECK_THAT(part.length_mm,
                     WithinAbs(frame::size_of(piece.place, piece.grain) + out_mm, kTenth_mm));
        } else {
          CHECK(part.length_mm >= part.width_mm);
        }
        std::sort(have.begin(), have.end());
        std::sort(want.begin(), want.end());
        for (std::size_t a = 0; a < 3; ++a) CHECK_THAT(have[a], WithinAbs(want[a], kTenth_mm));
      }
    }
    CHECK(std::all_of(seen.begin(), seen.end(), [](int n) { return n == 1; }));
  }
}

TEST_CASE("pieces are one part exactly where one can be turned into the other", "[parts][law]") {
  test::Random random(32);
  int merged = 0, mirrored = 0;
  for (int i = 0; i < 100; ++i) {
    const auto e = all_of(varied(random));
    const auto& pieces = e.build->frame.pieces;
    const auto& list = e.build->parts.parts;
    for (std::size_t p = 0; p < list.size(); ++p) {
      for (std::size_t at = 1; at < list[p].pieces.size(); ++at) {
        INFO(frame::kind_name(list[p].kind));
        CHECK(can_be_turned_into(pieces[list[p].pieces[0]], pieces[list[p].pieces[at]]));
        ++merged;
      }
      for (std::size_t q = p + 1; q < list.size(); ++q) {
        if (list[q].kind != list[p].kind || list[q].material != list[p].material) continue;
        const Piece &a = pieces[list[p].pieces[0]], &b = pieces[list[q].pieces[0]];
        if (a.thick != b.thick || !list[p].grain_along) continue;
        if (a.material == frame::Material::Metal) continue;  // it is not turned
        const bool same_size = std::abs(list[p].length_mm - list[q].length_mm) < 0.01 &&
                               std::abs(list[p].width_mm - list[q].width_mm) < 0.01;
        if (!same_size) continue;
        INFO(frame::kind_name(list[p].kind) << " " << list[p].number << " " << list[q].number);
        CHECK_FALSE(can_be_turned_into(a, b));
        ++mirrored;
      }
    }
  }
  CHECK(merged > 500);
  CHECK(mirrored > 20);
}

TEST_CASE("rough sizes and stock follow the material", "[parts]") {
  const auto e = all_of(config::Config{});
  REQUIRE(e.build->frame.made());
  std::set<frame::Material> seen;
  for (const Part& part : e.build->parts.parts) {
    seen.insert(part.material);
    switch (part.material) {
      case frame::Material::Sheet:
      case frame::Material::DrawerSheet:
      case frame::Material::Front:
        CHECK_THAT(*part.rough_length_mm - part.length_mm, WithinAbs(3, 1e-9));
        CHECK_THAT(*part.rough_width_mm - part.width_mm, WithinAbs(3, 1e-9));
        CHECK(part.stock.empty());
        break;
      case frame::Material::Carrier:
      case frame::Material::BaseBoard:
      case frame::Material::FaceBoard:
        CHECK_THAT(*part.rough_length_mm - part.length_mm, WithinAbs(25, 1e-9));
        CHECK(*part.rough_width_mm >= part.width_mm - 0.1);
        CHECK_FALSE(part.stock.empty());
        break;
      case frame::Material::Metal:
      case frame::Material::Slab:
        CHECK_FALSE(part.rough_length_mm);
        break;
    }
  }
  CHECK(seen.count(frame::Material::Metal) == 1);
  CHECK(seen.count(frame::Material::Carrier) == 1);
}

TEST_CASE("screws stand 40 mm from the ends and at most 150 mm apart", "[parts]") {
  CHECK(screws_along(50) == 2);
  CHECK(screws_along(230) == 2);  // 40 + 150 + 40
  CHECK(screws_along(230.5) == 3);
  CHECK(screws_along(380) == 3);
  CHECK(screws_along(760) == 6);  // 680 between: five spaces of 136
  CHECK(screws_along(10) == 2);
}

TEST_CASE("hardware of a station counted by hand", "[parts]") {
  config::Config c;
  c.station.arrangement = config::Arrangement::OneLevel;
  c.station.counter_height_mm = 920;  // boxes of 780: three drawers of about 230
  c.station.prep_width_mm = 1250;     // 1225 of boxes: three bays of 408
  c.frame.dough_bays = config::Holds::Doors;
  c.frame.bay_1 = config::Holds::Drawers;
  const auto e = all_of(c);
  REQUIRE(e.build->frame.made());
  std::map<std::string, double> count;
  int drawers = 0, doors = 0, boxes = 0, shelves = 0;
  for (const Piece& piece : e.build->frame.pieces) {
    drawers += piece.kind == frame::Kind::DrawerFront ? 1 : 0;
    doors += piece.kind == frame::Kind::Door ? 1 : 0;
    boxes += piece.kind == frame::Kind::Bottom ? 1 : 0;
    shelves += piece.kind == frame::Kind::Shelf ? 1 : 0;
  }
  for (const Hardware& one : e.build->parts.hardware) {
    count[one.name] = one.quantity;
    CHECK_FALSE(one.rule.empty());
  }
  // 640 of stand, one end of it free: 615 of boxes in bays of at most 450: two; both open.
  CHECK(boxes == 5);
  CHECK(doors == 2);
  CHECK(drawers == 3);
  CHECK(shelves == 4);
  CHECK(count["cup hinge, 35 mm, stainless"] == 4);
  CHECK(count["pull, 96 mm"] == 5);
  CHECK(count["shelf pin, 5 mm"] == 16);
  CHECK(count["connecting bolt"] == 16);
  CHECK(count["exterior screw 5 x 70"] == 20);
  double slides = 0;
  for (const auto& [name, quantity] : count)
    slides += name.starts_with("side slides") ? quantity : 0;
  CHECK(slides == 3);
}

TEST_CASE("slides are packed out by strips that can be sawn and screwed", "[parts][frame]") {
  config::Config config = test::preset("stations/four_cooks");
  config.frame.face = config::FaceKind::FaceFrame;
  config.frame.oven_bays = config::Holds::Drawers;
  config.frame.dough_bays = config::Holds::DrawerAndDoors;
  config.frame.fronts = config::FrontKind::Inset;
  int strips = 0;
  for (const double rail_mm : {38.1, 45.0, 60.0}) {
    config.frame.rail_mm = rail_mm;
    const auto e = evaluate::evaluate_all(config, evaluate::Marks::FiveMillimetres);
    const auto& pieces = e.build->frame.pieces;
    for (const Piece& piece : pieces) {
      if (piece.kind != frame::Kind::SlidePacker) continue;
      ++strips;
      INFO("rail " << rail_mm << ", bay " << piece.bay << ", drawer " << piece.nth);
      const double wide_mm = piece.place.width_mm();
      CHECK_THAT(piece.place.height_mm(), WithinAbs(frame::kOneBy_mm, 1e-6));
      CHECK(wide_mm >= 5 - 1e-6);
      // Slide and drawer stand beside it, and the drawer passes the opening.
      const auto& runs = e.build->frame.runs;
      const auto run = std::find_if(runs.begin(), runs.end(),
                                    [&](const auto& one) { return one.oven == piece.oven; });
      const Block& open = run->bays[static_cast<std::size_t>(piece.bay)].opening;
      for (const Piece& side : pieces) {
        if (side.kind != frame::Kind::DrawerSide || side.oven != piece.oven ||
            side.bay != piece.bay || side.nth / 2 != piece.nth) {
          continue;
        }
        const bool right = side.nth % 2 == 1;
        const bool right_strip = piece.place.left_mm > (open.left_mm + open.right_mm) / 2;
        if (right != right_strip) continue;
        CHECK_THAT(right ? piece.place.left_mm - side.place.right_mm
                         : side.place.left_mm - piece.place.right_mm,
                   WithinAbs(config.build.slide_mm, 1e-6));
        CHECK(side.place.left_mm >= open.left_mm + config.build.slide_mm - 1e-6);
        CHECK(side.place.right_mm <= open.right_mm - config.build.slide_mm + 1e-6);
      }
    }
    // No screw comes out of the side: 38.1 less a side of 18.3 is 19.8 of packer, 35 of screw.
    std::set<std::string> screws;
    for (const Hardware& one : e.build->parts.hardware) {
      if (one.name.ends_with(", packer")) screws.insert(one.name);
    }
    if (rail_mm == 38.1) {
      CHECK(screws == std::set<std::string>{"exterior screw 3.5 x 20, packer",
                                            "exterior screw 3.5 x 35, packer"});
    }
  }
  CHECK(strips > 0);
}

TEST_CASE("the oven's block is screwed and glued through its top into every wall and rib",
          "[parts]") {
  const auto e = all_of(test::preset("stations/open_courtyard"));
  double screws = 0;
  for (const Hardware& one : e.build->parts.hardware) {
    if (one.name == "exterior screw 4.5 x 50, block") screws += one.quantity;
  }
  // Two sides and a rib, at both their ends of 118 mm: 2 each, 12. The top, 594 x 660: 5 into each
  // of its four walls, 20, and 5 into the rib of 623.
  CHECK(screws == 12 + 20 + 5);
}

TEST_CASE("presets list their parts by material, numbered from one", "[parts]") {
  for (const char* name : test::kPresets) {
    INFO(name);
    const auto e = all_of(test::preset(name));
    int number = 0;
    int last = -1;
    for (const Part& part : e.build->parts.parts) {
      CHECK(part.number == ++number);
      CHECK(static_cast<int>(part.material) >= last);
      last = static_cast<int>(part.material);
    }
    CHECK(e.build->parts.parts.empty() == e.build->frame.pieces.empty());
    CHECK(e.build->parts.hardware.empty() == e.build->frame.pieces.empty());
  }
}
