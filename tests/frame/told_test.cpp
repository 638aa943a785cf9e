// What a builder is told of cabinets that are refused, or that have something left open.

#include <algorithm>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/frame/stock.h"
#include "engine/report/summary.h"
#include "tests/frame/two_levels.h"
#include "tests/support/findings.h"

using namespace hs;
using namespace hs::frame;
using Catch::Matchers::WithinAbs;
using evaluate::evaluate_all;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

constexpr double kExact_mm = 1e-6;

std::string told(const config::Config& c, std::string_view rule) {
  const Evaluation e = evaluate_all(c);
  const Finding* finding = found(e, rule);
  return finding ? report::sentence(*finding, c, e, report::Units::Millimetre) : std::string();
}

double top_of(const Frame& frame, Kind kind, bool oven) {
  double top_mm = 0;
  for (const Piece& piece : frame.pieces) {
    if (piece.kind == kind && piece.oven == oven) top_mm = std::max(top_mm, piece.place.top_mm);
  }
  return top_mm;
}

}  // namespace

TEST_CASE("a cabinet height that leaves no base is told the one that does", "[frame]") {
  config::Config c = test::two_levels();
  // 880.8 under the top: 900 leaves nothing, 780 leaves the 100 that a base is at least.
  c.frame.box_mm = 900;
  CHECK(told(c, "frame.box_given") ==
        "Boxes 900 mm high under the dough counter are too high for the counter's height: set "
        "'Cabinet height' to 780 mm, or leave it out.");
  c.frame.box_mm = 780;
  CHECK(evaluate_all(c).build->frame.made());
  // No board is wider than 285.8: 595.1 at least.
  c.frame.box_mm = 400;
  CHECK(told(c, "frame.box_given") ==
        "Boxes 400 mm high under the dough counter are too low for the counter's height: set "
        "'Cabinet height' to 600 mm, or leave it out.");
  c.frame.box_mm = 600;
  CHECK(evaluate_all(c).build->frame.made());
}

TEST_CASE("no refusal tells a length below nothing", "[frame][law]") {
  for (double counter_mm = 300; counter_mm <= 1200; counter_mm += 90) {
    for (const double box_mm : {200.0, 500.0, 800.0, 1400.0}) {
      for (const double base_mm : {60.0, 250.0}) {
        config::Config c = test::two_levels();
        c.station.counter_height_mm = counter_mm;
        c.frame.box_mm = box_mm;
        c.frame.base_mm = base_mm;
        const Evaluation e = evaluate_all(c);
        for (const Refusal& one : e.build->frame.refusals) {
          CAPTURE(counter_mm, box_mm, base_mm, one.rule);
          CHECK(one.measured_mm >= 0);
        }
      }
    }
  }
}

TEST_CASE("a box that came out higher takes its height from the base", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.as_built = "dough.box=31 1/8 in";  // 790.6, and 780 is drawn
  const Evaluation e = evaluate_all(c);
  REQUIRE(e.build->frame.made());
  CHECK_THAT(e.build->frame.base_mm, WithinAbs(880.8 - 790.6, kExact_mm));
  CHECK(verdict(e, "frame.top_height", "for dough") == Verdict::Ok);
  // What carries it needs its 35 mm and the shims: then the measure is left out and named.
  c.build.shim_mm = 60;
  const Evaluation left_out = evaluate_all(c);
  REQUIRE(left_out.build->frame.made());
  CHECK_THAT(left_out.build->frame.base_mm, WithinAbs(100.8, kExact_mm));
  CHECK(told(c, "frame.as_built_fits") ==
        "Of what you measured, dough.box: with 791 mm where 780 mm is drawn the rest cannot be "
        "built, so it is left out and all is made as drawn. Measure again; if it came out so, "
        "change the drawing.");
  CHECK(found(left_out, "frame.as_built") == nullptr);
  // Others that were measured stay.
  c.frame.as_built = "oven.substrate.width=641 dough.box=790.6";
  const Evaluation both = evaluate_all(c);
  REQUIRE(both.build->frame.made());
  CHECK(found(both, "frame.as_built_fits", "dough.box") != nullptr);
  CHECK(found(both, "frame.as_built_fits", "oven.substrate.width") == nullptr);
}

TEST_CASE("a slot over doors is told, and only where there is one", "[frame]") {
  const auto slot_mm = [](const config::Config& c) -> double {
    const Evaluation e = evaluate_all(c);
    REQUIRE(e.build->frame.made());
    const Finding* finding = found(e, "frame.door_slot");
    if (finding == nullptr) return 0;
    CHECK(finding->verdict == Verdict::Warn);
    // What the drawing itself has: the opening less the highest front.
    for (const Run& run : e.build->frame.runs) {
      if (run.oven) continue;
      CHECK_THAT(*finding->measured,
                 WithinAbs(run.bays[0].opening.top_mm - top_of(e.build->frame, Kind::Door, false),
                           kExact_mm));
    }
    return *finding->measured;
  };
  config::Config c = test::two_levels();
  CHECK(slot_mm(c) == 0);
  c.build.drip_mm = 40;  // and a gap of 3, less a sheet of 18.3
  CHECK_THAT(slot_mm(c), WithinAbs(24.7, kExact_mm));
  c.frame.face = config::FaceKind::FaceFrame;  // less boards of 38.1
  CHECK_THAT(slot_mm(c), WithinAbs(4.9, kExact_mm));
  c.build.drip_mm = 35;
  CHECK(slot_mm(c) == 0);
  c.frame.face = config::FaceKind::Frameless;
  c.frame.fronts = config::FrontKind::Inset;
  c.build.drip_mm = 18;
  CHECK(slot_mm(c) == 0);  // the gap alone
  c.build.drip_mm = 60;
  CHECK_THAT(slot_mm(c), WithinAbs(44.7, kExact_mm));
}

TEST_CASE("what is said of a bay that is not there is told", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.bay_3 = config::Holds::Gas;
  CHECK(told(c, "frame.bay_missing").empty());  // there are three
  c.frame.bay_mm = 1200;
  CHECK(told(c, "frame.bay_missing") ==
        "You say what the third bay under the dough counter holds, and there is no third bay: it "
        "is left out. Choose another bay for it, or a smaller 'Widest bay'.");
}

TEST_CASE("an oven that is hardly above the counter is told what makes sense", "[frame]") {
  config::Config c = test::two_levels();
  c.station.arrangement = config::Arrangement::Riser;
  const auto at = [&c](double base_mm) {
    c.station.oven_base_height_mm = base_mm;
    return evaluate_all(c);
  };
  for (const double up_mm : {0.5, 1.0, 4.0, 5.9}) {
    CAPTURE(up_mm);
    const Evaluation e = at(920 + up_mm);
    REQUIRE(found(e, "frame.riser_thin") != nullptr);
    CHECK_THAT(*found(e, "frame.riser_thin")->measured, WithinAbs(up_mm, kExact_mm));
    CHECK(found(e, "frame.riser") == nullptr);
  }
  CHECK(found(at(920), "frame.riser_thin") == nullptr);
  CHECK(found(at(926), "frame.riser_thin") == nullptr);
  CHECK(found(at(926), "frame.riser") != nullptr);
}

TEST_CASE("no base board is shorter than what can be screwed", "[frame][law]") {
  config::Config c = test::two_levels();
  int beside = 0;
  for (double depth_mm = 620; depth_mm <= 900; depth_mm += 2.5) {
    CAPTURE(depth_mm);
    c.station.prep_depth_mm = depth_mm;
    const Evaluation e = evaluate_all(c);
    REQUIRE(e.build->frame.made());
    for (const Piece& piece : e.build->frame.pieces) {
      if (piece.kind != Kind::BaseEnd) continue;
      CHECK(piece.place.depth_mm() >= 100 - kExact_mm);
      beside += piece.place.depth_mm() < 100 + kExact_mm ? 1 : 0;
    }
  }
  CHECK(beside > 5);  // the sweep goes through the depths where one would be
}

TEST_CASE("supports under a board stand at its ends and no farther apart than 400", "[frame]") {
  CHECK(supports_under(1) == 2);
  CHECK(supports_under(400) == 2);
  CHECK(supports_under(400.1) == 3);
  CHECK(supports_under(1440) == 5);
  const Evaluation e = evaluate_all(test::two_levels());
  double asked = 0, listed = 0;
  for (const Piece& piece : e.build->frame.pieces) {
    if (piece.kind == Kind::Carrier) asked += supports_under(piece.place.width_mm());
  }
  for (const parts::Hardware& one : e.build->parts.hardware) {
    if (one.name == "pair of shims") listed = one.quantity;
  }
  CHECK(asked >= 8);
  CHECK(listed == asked);
}
