// What comes out of the drawing: as-built measures, gas bays, grills, masonry, refusals in words.

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/frame/as_built.h"
#include "engine/frame/cylinder.h"
#include "engine/report/summary.h"
#include "engine/rules/rules.h"
#include "tests/frame/two_levels.h"
#include "tests/support/findings.h"
#include "tests/support/random.h"

using namespace hs;
using namespace hs::frame;
using Catch::Matchers::WithinAbs;
using evaluate::evaluate_all;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

constexpr double kExact_mm = 1e-6;

const Run& run_of(const Frame& frame, bool oven) {
  return *std::find_if(frame.runs.begin(), frame.runs.end(),
                       [oven](const Run& run) { return run.oven == oven; });
}

double area_cm2(const Piece& piece, double low_mm, double high_mm) {
  double sum = 0;
  for (const Hole& hole : piece.holes) {
    const double z = piece.place.bottom_mm + hole.v_mm;
    if (hole.use == HoleUse::Vent && z >= low_mm && z <= high_mm) {
      sum += hole.wide_mm * hole.high_mm / 100;
    }
  }
  return sum;
}

}  // namespace

TEST_CASE("heights by hand: base, box, two sheets, bed, metal", "[frame]") {
  const Evaluation e = evaluate_all(test::two_levels());
  const Frame& frame = e.build->frame;
  REQUIRE(frame.made());
  // 920 less 1.6, 1 and 2 x 18.3 is 880.8; less 100 for the base leaves boxes of 780 and a base of
  // 100.8. The oven's boxes stand on the same base: 1010.3 - 39.2 - 100.8 is 870.3.
  CHECK_THAT(frame.base_mm, WithinAbs(100.8, kExact_mm));
  CHECK_THAT(run_of(frame, false).boxes.height_mm(), WithinAbs(780, kExact_mm));
  CHECK_THAT(run_of(frame, true).boxes.height_mm(), WithinAbs(870.3, kExact_mm));
}

TEST_CASE("what is measured when built is used, and what follows makes up for it", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.as_built = "base=104.3";
  const Evaluation based = evaluate_all(c);
  CHECK_THAT(based.build->frame.base_mm, WithinAbs(104.3, kExact_mm));
  CHECK_THAT(run_of(based.build->frame, false).boxes.height_mm(), WithinAbs(776.5, kExact_mm));
  CHECK_THAT(run_of(based.build->frame, false).top_mm, WithinAbs(920, kExact_mm));
  CHECK_THAT(run_of(based.build->frame, true).top_mm, WithinAbs(1010.3, kExact_mm));
  CHECK(verdict(based, "frame.top_height") == Verdict::Ok);

  // Boxes that came out 1.5 mm low: the base, not built yet, is higher.
  c.frame.as_built = "dough.box=778.5";
  CHECK_THAT(evaluate_all(c).build->frame.base_mm, WithinAbs(102.3, kExact_mm));

  // Both stand: the top is off, and it is said.
  c.frame.as_built = "base=100.8 dough.box=778.5 oven.box=870.3";
  const Evaluation both = evaluate_all(c);
  CHECK_THAT(run_of(both.build->frame, false).top_mm, WithinAbs(918.5, kExact_mm));
  const Finding* off = found(both, "frame.top_height");
  CHECK(off->verdict == Verdict::Warn);
  CHECK_THAT(*off->margin, WithinAbs(-1.5, kExact_mm));
}

TEST_CASE("the metal top is made from the primed sheets as measured", "[frame]") {
  config::Config c = test::two_levels();
  const auto plate = [](const Evaluation& e) {
    const auto& pieces = e.build->frame.pieces;
    return std::find_if(
               pieces.begin(), pieces.end(),
               [](const Piece& piece) { return piece.kind == Kind::MetalTop && !piece.oven; })
        ->place;
  };
  const Evaluation planned = evaluate_all(c);
  const Block drawn = plate(planned);
  // One end free: 1500 less the seam; 610 deep.
  CHECK_THAT(drawn.width_mm(), WithinAbs(1499, kExact_mm));
  CHECK_THAT(drawn.depth_mm(), WithinAbs(610, kExact_mm));
  c.frame.as_built =
      "dough.substrate.width=1493.9 dough.substrate.depth=606 dough.substrate.thick=37.1";
  const Evaluation e = evaluate_all(c);
  const Block made = plate(e);
  // 1493.9 and 1.6 + 1.5 on the free end; 606 and twice that.
  CHECK_THAT(made.width_mm(), WithinAbs(1497, kExact_mm));
  CHECK_THAT(made.depth_mm(), WithinAbs(612.2, kExact_mm));
  // Half a millimetre more of sheet comes off the base: the top still lands.
  CHECK_THAT(made.top_mm, WithinAbs(920, kExact_mm));
  CHECK_THAT(e.build->frame.base_mm, WithinAbs(100.3, kExact_mm));
}

TEST_CASE("a door is made for its opening as measured", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.fronts = config::FrontKind::Inset;
  const auto door = [](const Evaluation& e) {
    const auto& pieces = e.build->frame.pieces;
    return std::find_if(
               pieces.begin(), pieces.end(),
               [](const Piece& piece) { return piece.kind == Kind::Door && piece.bay == 1; })
        ->place;
  };
  c.frame.as_built = "dough.2.opening.width=447.5 dough.2.opening.height=730";
  const Block made = door(evaluate_all(c));
  CHECK_THAT(made.width_mm(), WithinAbs(447.5 - 6, kExact_mm));
  CHECK_THAT(made.height_mm(), WithinAbs(730 - 6, kExact_mm));
}

TEST_CASE("measured pieces are read, or refused by name", "[frame]") {
  CHECK(as_built_problems("").empty());
  CHECK(as_built_problems("base=104.2  dough.12.opening.width=400 riser.height=60").empty());
  const auto all = read_as_built("base=104.24 oven.box=700");
  REQUIRE(all.size() == 2);
  CHECK(all[0].name == "base");
  CHECK(all[0].mm == 104.2);
  // With a unit and fractions: 4 1/8 in is 104.775 mm, 29 1/2 in 749.3.
  constexpr std::string_view kUnits =
      "base=4 1/8 in  dough.box=104.2 mm oven.box=29-1/2 riser.height=60";
  CHECK(as_built_problems(kUnits).empty());
  const auto units = read_as_built(kUnits);
  REQUIRE(units.size() == 4);
  CHECK(units[0].mm == 104.8);
  CHECK(units[1].mm == 104.2);
  CHECK(units[2].mm == 749.3);
  CHECK(units[3].mm == 60);
  for (const AsBuilt& one : units) CHECK(lasting_name(one.name) == one.name);
  CHECK(lasting_name("dough.12.opening.height") == "dough.12.opening.height");
  CHECK(lasting_name("bass").empty());
  for (const char* text : {"base", "base=", "base=x", "base=0", "base=7001", "bass=100", "box=700",
                           "dough.0.opening.width=400", "dough.1.opening=400", "dough.substrate=5",
                           "base=100 base=101", "=5", "oven.1.opening.depth=3"}) {
    INFO(text);
    const auto problems = as_built_problems(text);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].path == "frame.as_built");
  }
  config::Config c;
  c.frame.as_built = "base=nine";
  REQUIRE(evaluate::check(c).size() == 1);
  CHECK(sentence(evaluate::check(c)[0]) ==
        "frame.as_built: \"base=nine\" is not allowed; give 1 to 7000 mm after the '=', "
        "or inches such as 4 1/8 in");
}

TEST_CASE("one piece is measured after the other, and the text of the others stays", "[frame]") {
  std::string text;
  const auto put = [&](std::string_view name, std::string_view size, Unit bare) {
    const Result<std::string> next = with_built(text, name, size, bare);
    if (next) text = *next;
    return next.error();
  };
  CHECK(put("base", "104,24", Unit::Mm).empty());
  CHECK(text == "base=104.2");
  CHECK(put("oven.box", " 29 1/8 ", Unit::Inch).empty());  // 739.775 mm
  CHECK(text == "base=104.2 oven.box=739.8");
  CHECK(put("base", "2' 5 1/8", Unit::Inch).empty());
  CHECK(text == "base=739.8 oven.box=739.8");
  text = "base=4 1/8 in  oven.box=735.5";
  CHECK(put("oven.box", "74 cm", Unit::Inch).empty());
  CHECK(text == "base=4 1/8 in oven.box=740");
  CHECK(put("base", "", Unit::Mm).empty());
  CHECK(put("dough.box", "", Unit::Mm).empty());
  CHECK(text == "oven.box=740");
  for (const auto& [name, size] : {std::pair{"bass", "100"},
                                   {"base", "4 1/x"},
                                   {"base", "0"},
                                   {"base", "7000.2"},
                                   {"base", "nan"}}) {
    INFO(name << " " << size);
    const auto problems = put(name, size, Unit::Mm);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].path == std::string("frame.as_built.") + name);
    CHECK(text == "oven.box=740");
  }
  CHECK(sentence(put("base", "900", Unit::Inch)[0]) ==
        "frame.as_built.base: \"900\" is not allowed; give 1/16 to 275 9/16 in");
}

TEST_CASE("a measure of a piece that is not there, or far off, is pointed at", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.as_built = "riser.height=90";
  CHECK(evaluate_all(c).build->frame.built_unknown == 1);
  CHECK(verdict(evaluate_all(c), "frame.as_built") == Verdict::Warn);
  c.frame.as_built = "base=125.7";  // 24.9 off
  CHECK(found(evaluate_all(c), "frame.as_built") == nullptr);
  // Farther off it is left out, whatever it is: the frame stays as drawn, and it is named.
  const Evaluation drawn = evaluate_all(test::two_levels());
  struct Slip {
    const char* text;
    std::string_view name;
    double drawn_mm;
  };
  for (const Slip& slip :
       {Slip{"base=126.0", "base", 100.8}, Slip{"base=1041", "base", 100.8},
        Slip{"dough.box=104.2", "dough.box", 780}, Slip{"oven.box=7000", "oven.box", 870.3},
        Slip{"dough.substrate.thick=366", "dough.substrate.thick", 36.6}}) {
    INFO(slip.text);
    c.frame.as_built = slip.text;
    const Evaluation e = evaluate_all(c);
    REQUIRE(e.build->frame.made());
    CHECK(std::equal(e.build->frame.pieces.begin(), e.build->frame.pieces.end(),
                     drawn.build->frame.pieces.begin(), drawn.build->frame.pieces.end(),
                     [](const Piece& a, const Piece& b) { return a.place == b.place; }));
    const Finding* finding = found(e, "frame.as_built");
    REQUIRE(finding != nullptr);
    CHECK(finding->verdict == Verdict::Fail);
    CHECK(finding->where == slip.name);
    CHECK_THAT(*finding->limit, WithinAbs(slip.drawn_mm, kExact_mm));
  }
  c.frame.as_built = "base=1041";
  const Evaluation e = evaluate_all(c);
  const std::string words =
      report::sentence(*found(e, "frame.as_built"), c, e, report::Units::Millimetre);
  CHECK(words.find("base: 1041 mm is given, and 101 mm is drawn") != std::string::npos);
}

TEST_CASE("any measured piece leaves numbers finite and sizes above nought", "[frame][law]") {
  test::Random random(9);
  const char* const names[] = {"base",
                               "dough.box",
                               "oven.box",
                               "dough.substrate.width",
                               "oven.substrate.depth",
                               "dough.substrate.thick",
                               "dough.1.opening.width",
                               "oven.1.opening.height",
                               "riser.height"};
  for (int i = 0; i < 2000; ++i) {
    config::Config c = test::two_levels();
    c.station.arrangement =
        random.one_in(2) ? config::Arrangement::TwoLevel : config::Arrangement::Riser;
    c.frame.dough_bays = static_cast<config::Holds>(random.below(5));
    for (int n = 1 + random.below(3); n > 0; --n) {
      const double most = random.one_in(3) ? 7000 : 900;
      c.frame.as_built += std::string(names[random.below(9)]) + "=" +
                          std::to_string(1 + random.below(static_cast<int>(most) - 1)) + " ";
    }
    const Frame frame = evaluate_all(c).build->frame;
    INFO(c.frame.as_built);
    for (const Piece& piece : frame.pieces) {
      for (const double mm :
           {piece.place.width_mm(), piece.place.depth_mm(), piece.place.height_mm()}) {
        REQUIRE((std::isfinite(mm) && mm > 0));
      }
    }
  }
}

TEST_CASE("a gas bay opens high and low, in front and behind, by both published forms",
          "[frame][source]") {
  config::Config c = test::two_levels();
  c.site.cylinder = config::Cylinder::OwnCabinet;
  for (const double pounds : {20.0, 30.0}) {
    c.site.cylinder_kg = pounds * 0.45359237;
    const Evaluation e = evaluate_all(c);
    const Frame& frame = e.build->frame;
    REQUIRE(frame.gas.size() == 1);
    const int bay = frame.gas[0].bay;
    const Run& run = run_of(frame, false);
    // The bay farthest from the oven.
    CHECK(bay == (frame.places.dough_right ? static_cast<int>(run.bays.size()) - 1 : 0));
    const Block& open = run.bays[static_cast<std::size_t>(bay)].opening;
    // Grills (Z21.58 through makers' manuals): each of two opposite openings, at the valve and at
    // the floor, 1/2 sq in per lb and at least 10 sq in. Fire features: 1 sq in per lb high in all,
    // half of it low: 20 lb 20 and 10 sq in, 30 lb 30 and 15. Low: within 5 in of the floor.
    const double each_cm2 = std::max(10.0, pounds / 2) * 6.4516;
    double high_cm2 = 0, low_cm2 = 0;
    int sides = 0;
    for (const Kind kind : {Kind::Back, Kind::Door}) {
      double low = 0, high = 0, valve = 0;
      for (const Piece& piece : frame.pieces) {
        if (piece.oven || piece.bay != bay || piece.kind != kind) continue;
        low += area_cm2(piece, open.bottom_mm, open.bottom_mm + 127);
        high += area_cm2(piece, open.top_mm - 127, open.top_mm);
        valve += area_cm2(piece, open.bottom_mm + 350, open.top_mm);
      }
      CHECK(low >= each_cm2 - 0.01);
      CHECK(high >= each_cm2 - 0.01);
      CHECK(valve >= each_cm2 - 0.01);
      low_cm2 += low;
      high_cm2 += high;
      ++sides;
    }
    CHECK(sides == 2);
    CHECK(high_cm2 >= pounds * 6.4516 - 0.01);
    CHECK(low_cm2 >= pounds / 2 * 6.4516 - 0.01);
    // Its floor is 2 in above the ground at least, and its walls are closed.
    CHECK(open.bottom_mm >= 50.8);
    CHECK(verdict(e, "frame.gas_bay") == Verdict::Ok);
    for (const Piece& piece : frame.pieces) {
      if (piece.oven || piece.bay != bay || piece.kind != Kind::Side) continue;
      CHECK(piece.holes.empty());
    }
  }
}

TEST_CASE("gas never stands under the oven, and a bay too small for it is told", "[frame]") {
  config::Config c = test::two_levels();
  c.frame.oven_bays = config::Holds::Gas;
  const Evaluation e = evaluate_all(c);
  CHECK_FALSE(e.build->frame.made());
  CHECK(verdict(e, "frame.gas_missing") == Verdict::Fail);
  c.frame.oven_bays = config::Holds::Open;
  c.frame.bay_mm = 380;
  c.frame.bay_2 = config::Holds::Gas;
  CHECK(verdict(evaluate_all(c), "frame.gas_room") == Verdict::Fail);
  c.frame.bay_mm = 600;
  CHECK(verdict(evaluate_all(c), "frame.gas_room") == Verdict::Ok);
}

TEST_CASE("a gas bay is judged by the cylinder that is given, one line for each way", "[frame]") {
  config::Config c = test::two_levels();
  c.site.cylinder = config::Cylinder::OwnCabinet;
  const auto told = [&c](double gas_kg) {
    c.site.cylinder_kg = gas_kg;
    const Evaluation e = evaluate_all(c);
    std::vector<std::string> out;
    for (const Finding& one : e.findings) {
      if (one.rule != "frame.gas_room") continue;
      out.push_back(report::sentence(one, c, e, report::Units::Millimetre));
    }
    return out;
  };
  // The opening is 743.4 mm high: 780 less two sheets of 18.3.
  CHECK(told(9.07) == std::vector<std::string>{"The gas bay has room for a cylinder for 9.1 kg (20 "
                                               "lb) of gas, upright."});
  CHECK(verdict(evaluate_all(c), "frame.gas_room") == Verdict::Ok);
  told(13.61);
  CHECK(verdict(evaluate_all(c), "frame.gas_room") == Verdict::Ok);
  const std::vector<std::string> tall = told(45);
  REQUIRE(tall.size() == 1);
  CHECK(tall[0] ==
        "Under the dough counter the clear height of bay 3 from the left is 743 mm, and a cylinder "
        "for 45 kg (99 lb) of gas wants 1245 mm: give it a larger bay, or choose a smaller "
        "cylinder.");
  told(46);  // more than any that we have a size for
  CHECK(verdict(evaluate_all(c), "frame.gas_room") == Verdict::Unknown);
  // Many bays of one width are one line.
  c.frame.dough_bays = config::Holds::Gas;
  c.frame.bay_mm = 280;
  const std::vector<std::string> narrow = told(9.07);
  REQUIRE(narrow.size() == 1);
  CHECK(narrow[0].find("the clear width of bay 1 from the left is") != std::string::npos);
}

TEST_CASE("ways of a gas bay have words that last for as many bays as have names", "[frame]") {
  CHECK(clear_words(Way::Height, 0) == "clear height of bay 1 from the left");
  CHECK(clear_words(Way::Depth, 9) == "clear depth of bay 10 from the left");
  CHECK(clear_words(Way::Width, 19) == "clear width of bay 20 from the left");
  CHECK(clear_words(Way::Width, 20) == "clear width of the gas bay");
}

TEST_CASE("a gas bay's upper openings are at the valve of the cylinder that is given", "[frame]") {
  config::Config c = test::two_levels();
  c.site.cylinder = config::Cylinder::OwnCabinet;
  const auto middle = [&c](double gas_kg) {
    c.site.cylinder_kg = gas_kg;
    const Evaluation e = evaluate_all(c);
    const Frame& frame = e.build->frame;
    REQUIRE(frame.gas.size() == 1);
    double top_mm = 0;
    for (const Piece& piece : frame.pieces) {
      if (piece.kind != Kind::Back || piece.oven || piece.bay != frame.gas[0].bay) continue;
      REQUIRE(piece.holes.size() >= 2);
      top_mm = piece.holes[1].v_mm + piece.holes[1].high_mm / 2 + piece.place.bottom_mm -
               run_of(frame, false).bays[static_cast<std::size_t>(piece.bay)].opening.bottom_mm;
    }
    return top_mm;
  };
  CHECK_THAT(middle(9.07), WithinAbs(457, kExact_mm));
  // 743.4 high: within 5 in of the top a second row for a 30 lb cylinder is that of the top.
  CHECK(middle(13.61) > 610);
}

TEST_CASE("a masonry oven never stands on a cabinet", "[frame]") {
  config::Config c;
  c.oven.kind = config::OvenKind::MasonryDome36;
  const Evaluation e = evaluate_all(c);
  CHECK(verdict(e, "frame.masonry") == Verdict::Warn);
  for (const Piece& piece : e.build->frame.pieces) CHECK_FALSE(piece.oven);
  REQUIRE(e.build->frame.runs.size() == 1);
  CHECK(e.build->frame.made());
}

TEST_CASE("a grill that stands in our counter is told, one beside it gets its room and its step",
          "[frame]") {
  config::Config c = test::two_levels();
  c.station.landing_right_mm = 500;
  c.station.landing_left_mm = 300;
  c.site.grill.at = config::GrillAt::Left;
  c.site.grill.listed_side_mm = 150;
  // The stand reaches 300 past the oven's body on the left.
  for (const auto& [gap_mm, expected] : {std::pair{299.0, Verdict::Fail},
                                         {300.0, Verdict::Fail},
                                         {449.0, Verdict::Fail},
                                         {450.0, Verdict::Ok}}) {
    c.site.grill.gap_mm = gap_mm;
    const Evaluation e = evaluate_all(c);
    CHECK_THAT(e.build->frame.grill->free_mm, WithinAbs(gap_mm - 300, kExact_mm));
    CHECK(verdict(e, "frame.grill") == expected);
  }
  c.frame.grill_counter_mm = 990;
  const Evaluation e = evaluate_all(c);
  CHECK_THAT(*e.build->frame.grill->step_mm, WithinAbs(990 - 1010.3, kExact_mm));
  CHECK(verdict(e, "frame.grill_step") == Verdict::Ok);
  c.frame.grill_counter_mm = 980;
  CHECK(verdict(evaluate_all(c), "frame.grill_step") == Verdict::Warn);
}

TEST_CASE("a block under the oven is a box, or one slab where it is low", "[frame]") {
  config::Config c = test::two_levels();
  c.station.arrangement = config::Arrangement::Riser;
  // 1.6 of metal, 1 of bed, 18.3 of sheet, walls of 30, 1 of bed under them.
  const double least_mm = least_riser_mm(c.build);
  CHECK_THAT(least_mm, WithinAbs(51.9, kExact_mm));
  const auto has = [](const Evaluation& e, Kind kind) {
    const auto& pieces = e.build->frame.pieces;
    return std::any_of(pieces.begin(), pieces.end(),
                       [kind](const Piece& piece) { return piece.kind == kind; });
  };
  c.station.oven_base_height_mm = 920 + 51.8;
  const Evaluation low = evaluate_all(c);
  CHECK(has(low, Kind::Slab));
  // It is thinner than its place by the bed that it lies in.
  for (const Piece& piece : low.build->frame.pieces) {
    if (piece.kind == Kind::Slab) CHECK_THAT(piece.place.height_mm(), WithinAbs(50.8, kExact_mm));
  }
  CHECK_FALSE(has(low, Kind::RiserCap));
  CHECK(verdict(low, "frame.riser") == Verdict::Warn);
  c.station.oven_base_height_mm = 920 + 51.9;
  const Evaluation box = evaluate_all(c);
  CHECK(has(box, Kind::RiserCap));
  // Its walls stand in a bed on the counter's metal, and its top is still where the oven wants it.
  for (const Piece& piece : box.build->frame.pieces) {
    if (piece.kind == Kind::RiserSide || piece.kind == Kind::RiserRib) {
      CHECK_THAT(piece.place.bottom_mm, WithinAbs(920 + c.build.bedding_mm, kExact_mm));
      CHECK_THAT(piece.place.height_mm(), WithinAbs(30, kExact_mm));
    }
    if (piece.kind == Kind::RiserCap) {
      CHECK_THAT(piece.place.top_mm, WithinAbs(920 + 51.9, kExact_mm));
    }
  }
  CHECK_FALSE(has(box, Kind::Slab));
  CHECK(found(box, "frame.riser") == nullptr);
}

TEST_CASE("what cannot be built is refused in words that name what to change", "[frame]") {
  const auto refused = [](const config::Config& c, std::string_view rule) {
    const Evaluation e = evaluate_all(c);
    CHECK_FALSE(e.build->frame.made());
    CHECK(e.build->parts.parts.empty());
    const Finding* finding = found(e, rule);
    REQUIRE(finding != nullptr);
    CHECK(finding->verdict == Verdict::Fail);
    return report::sentence(*finding, c, e, report::Units::Millimetre);
  };
  config::Config c = test::two_levels();
  c.station.overhang_mm = 6;
  CHECK(refused(c, "frame.overhang").find("'Overhang'") != std::string::npos);
  c.station.overhang_mm = 6.1;  // 1.6 + 1.5 + 3
  CHECK(evaluate_all(c).build->frame.made());
  c = test::two_levels();
  c.frame.box_mm = 790;
  CHECK(refused(c, "frame.box_given").find("'Cabinet height'") != std::string::npos);
  c.frame.box_mm = 780;
  CHECK(evaluate_all(c).build->frame.made());
  c = test::two_levels();
  c.station.counter_height_mm = 330;
  refused(c, "frame.box");
  c = test::two_levels();
  c.station.prep_depth_mm = 250;
  refused(c, "frame.depth");
  c = test::two_levels();
  c.station.toe_space_mm = 300;
  c.station.prep_depth_mm = 450;
  refused(c, "frame.depth");
  c = test::two_levels();
  c.station.prep_width_mm = 200;
  refused(c, "frame.bay");
}

TEST_CASE("the digest is that of the answer: equal where nothing changes", "[frame][law]") {
  config::Config c = test::two_levels();
  const Evaluation first = evaluate_all(c);
  c.title = "Another name";
  c.view.standoff_mm += 50;
  c.heat.glove = config::Glove::Gauntlet;
  Evaluation again = evaluate::evaluate(c);
  evaluate::add_build(c, again, first.build);
  CHECK(again.build == first.build);  // taken over, not made again
  c.build.gap_mm += 0.1;
  Evaluation other = evaluate::evaluate(c);
  evaluate::add_build(c, other, first.build);
  CHECK(other.build != first.build);
  CHECK(other.build->digest != first.build->digest);
  c = test::two_levels();
  c.station.counter_height_mm = *c.station.counter_height_mm + 0.1;
  CHECK(evaluate_all(c).build->digest != first.build->digest);
}
