// Words for a part's surfaces against its holes and coats, which come another way.

#include "engine/parts/sides.h"

#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "tests/report/preset.h"

using namespace hs;
using parts::At;

namespace {

std::string word(const std::array<std::string, 6>& sides, At at) {
  return sides[static_cast<std::size_t>(at)];
}

}  // namespace

TEST_CASE("a part's faces and edges are called by where they are when it stands", "[parts][law]") {
  int doors = 0, sides_seen = 0;
  for (const char* name : test::kPresets) {
    INFO(name);
    const evaluate::Evaluation e = evaluate::evaluate_all(test::preset(name));
    if (!e.build) continue;
    for (const parts::Part& part : e.build->parts.parts) {
      INFO("part " << part.number);
      REQUIRE(part.faces.size() == part.pieces.size());
      const auto sides = parts::sides_of(part, e.build->frame.pieces);
      for (const std::string& one : sides) CHECK_FALSE(one.empty());
      if (part.kind == frame::Kind::Side) {
        // What is seen with the door open is the inside; pins go into it.
        ++sides_seen;
        for (const At at : {At::Front, At::Back}) {
          const bool in = part.surfaces[static_cast<std::size_t>(at)].coat == frame::Coat::Inside;
          CHECK(word(sides, at) == (in ? "inside" : "outside"));
        }
      }
      if (part.kind != frame::Kind::Door) continue;
      for (const parts::Cut& cut : part.cuts) {
        if (cut.use == frame::HoleUse::HingeCup) {
          ++doors;
          // Cups are bored into the inside, beside the hinged edge.
          CHECK(word(sides, cut.in_front ? At::Front : At::Back) == "inside");
          const bool low = cut.across_mm < part.width_mm / 2;
          CHECK(word(sides, low ? At::Low : At::High) == "hinged edge");
          CHECK(word(sides, low ? At::High : At::Low) == "pull's edge");
        } else if (cut.use == frame::HoleUse::Pull && cut.count == 2 && cut.row_along) {
          // The pull of a door at a counter is near its top.
          const double middle_mm = cut.along_mm + cut.pitch_mm / 2;
          CHECK(word(sides, middle_mm < part.length_mm / 2 ? At::Start : At::End) == "upper edge");
        }
      }
    }
  }
  CHECK(doors > 3);
  CHECK(sides_seen > 5);
}

TEST_CASE("pieces that are turned have both words", "[parts]") {
  frame::Piece left, right;
  left.kind = right.kind = frame::Kind::Side;
  left.place = {0, 18, 0, 500, 0, 700};
  right.place = {482, 500, 0, 500, 0, 700};
  left.thick = right.thick = frame::Axis::X;
  left.grain = right.grain = frame::Axis::Z;
  right.nth = 1;
  left.at(frame::Face::Right).coat = right.at(frame::Face::Left).coat = frame::Coat::Inside;
  left.at(frame::Face::Near).edge = right.at(frame::Face::Near).edge = frame::Edge::Filled;
  const std::array pieces{left, right};
  const parts::List list = parts::list_of(pieces, {});
  REQUIRE(list.parts.size() == 1);
  const auto sides = parts::sides_of(list.parts[0], pieces);
  // Upside down a left side is a right one.
  CHECK(sides[2] == "lower or upper edge");
  CHECK(sides[3] == "lower or upper edge");
  CHECK((sides[4] == "front edge") != (sides[5] == "front edge"));
  CHECK((sides[0] == "inside") != (sides[1] == "inside"));
}
