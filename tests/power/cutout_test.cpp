// Cut-outs in panels, and everything that can be in their way.
#include "engine/power/cutout.h"

#include <algorithm>
#include <array>
#include <string>

#include "catch_amalgamated.hpp"

using namespace hs;
using namespace hs::power;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;

namespace {

// A cabinet's left side: 18 thick, 600 deep, 700 high; an outlet box let in from outside.
const Panel kSide{"left side", {-500, -482, 0, 600, 100, 800}, Through::X, false};
Fitting outlet() { return {"left end", Kind::OutletBox, 0, {-500, -430, 250, 320, 500, 610}}; }

std::vector<Remark> remarks(const Fitting& fitting, const std::vector<Keepout>& keepouts) {
  const std::array panels{kSide};
  const std::array fittings{fitting};
  return cut_panels(panels, fittings, keepouts).remarks;
}

}  // namespace

TEST_CASE("an outlet box is an opening in its panel's own axes", "[power]") {
  const std::array panels{kSide};
  const std::array fittings{outlet()};
  const Cutting cutting = cut_panels(panels, fittings, {});
  CHECK(cutting.remarks.empty());
  REQUIRE(cutting.cutouts.size() == 1);
  const Cutout& cut = cutting.cutouts[0];
  CHECK(cut.u_mm == 250);  // along y
  CHECK(cut.v_mm == 400);  // up
  CHECK(cut.wide_mm == 70);
  CHECK(cut.high_mm == 110);
  CHECK(cut.rim_mm == 190);
  CHECK_FALSE(cut.round);
}

TEST_CASE("an opening needs a rim, a wire hole a wider one", "[power]") {
  Fitting box = outlet();
  // Our judgement: 20 mm.
  box.body.near_mm = 20;
  box.body.far_mm = 90;
  CHECK(remarks(box, {}).empty());
  box.body.near_mm = 19.9;
  CHECK(remarks(box, {}).size() == 1);
  // NEC 300.4(A)(1), from memory: 1 1/4 in.
  Fitting hole{"", Kind::WireHole, 0, {-501, -481, 31.75, 51.75, 300, 320}};
  CHECK(remarks(hole, {}).empty());
  hole.body.near_mm = 31;
  hole.body.far_mm = 51;
  CHECK(remarks(hole, {}).at(0).limit_mm == kHoleRim_mm);
  // It must come out at the other side.
  hole.body = {-501, -490, 100, 120, 300, 320};
  CHECK_THAT(std::string(remarks(hole, {}).at(0).what), ContainsSubstring("does not go through"));
  box.panel = 3;
  CHECK_THAT(std::string(remarks(box, {}).at(0).what), ContainsSubstring("not there"));
}

TEST_CASE("between two openings of one panel a rim stays too", "[power]") {
  const std::array panels{kSide, kSide};
  Fitting near_one = outlet(), far_one = outlet();
  const auto cut = [&] {
    const std::array fittings{near_one, far_one};
    return cut_panels(panels, fittings, {});
  };
  // Our judgement: 20 mm, whatever the edges leave.
  far_one.body.near_mm = 340;
  far_one.body.far_mm = 410;
  CHECK(cut().remarks.empty());
  REQUIRE(cut().cutouts.size() == 2);
  CHECK(cut().cutouts[0].web_mm == 20.0);
  CHECK(cut().cutouts[1].web_mm == 20.0);
  CHECK(cut().cutouts[0].rim_mm == 190);
  far_one.body.near_mm = 339.9;
  REQUIRE(cut().remarks.size() == 2);
  CHECK(cut().remarks[0].limit_mm == kRim_mm);
  // One corner to the other: 3, 4, 5.
  far_one.body = {-500, -430, 350, 420, 650, 700};
  CHECK(cut().cutouts[0].web_mm == 50.0);
  // A round hole of 20 across: its middle is 40 from the box.
  far_one = {"", Kind::WireHole, 0, {-501, -481, 350, 370, 540, 560}};
  CHECK(cut().cutouts[0].web_mm == 30.0);
  // In another panel, that is nobody's matter.
  far_one.panel = 1;
  CHECK_FALSE(cut().cutouts[0].web_mm);
}

TEST_CASE("a drawer that runs into the box is told with how far", "[power]") {
  Keepout drawer{"drawer 2", Zone::Drawer, {-444, 0, 20, 500, 550, 700}, {}};
  const Fitting box = outlet();
  const auto found = remarks(box, {drawer});
  REQUIRE(found.size() == 1);
  CHECK(found[0].verdict == Verdict::Fail);
  CHECK_THAT(found[0].measured_mm, WithinAbs(-14, 1e-9));
  const std::array fittings{box};
  const std::array keepouts{drawer};
  CHECK(words(found[0], fittings, keepouts, Unit::Mm) ==
        "outlet box, left end: stands in the way of drawer 2 (overlap 14 mm).");
  // One that only touches is clear; a maker's room is kept where one is given.
  drawer.place.left_mm = -430;
  CHECK(remarks(box, {drawer}).empty());
  drawer.clear_mm = 5;
  CHECK(remarks(box, {drawer}).at(0).verdict == Verdict::Warn);
  drawer.place.left_mm = -425;
  CHECK(remarks(box, {drawer}).empty());
}

TEST_CASE("nothing that sparks is in the gas bay or within five feet of its valve",
          "[power][source]") {
  // NFPA 58 (2017) 6.3.4.3, figure I.1(a) (read): 5 ft in any direction.
  Keepout bay{"the cylinder's bay", Zone::GasBay, {-482, 0, 0, 600, 100, 800}, {}};
  CHECK(remarks(outlet(), {bay}).at(0).verdict == Verdict::Fail);
  bay.place = {-430, 0, 0, 600, 100, 800};
  CHECK(remarks(outlet(), {bay}).empty());
  Keepout valve{"the valve", Zone::GasValve, {}, {}};
  valve.place = {-430 + 1524 - 0.2, 1200, 250, 320, 500, 610};
  CHECK(remarks(outlet(), {valve}).at(0).limit_mm == kSpark_mm);
  valve.place.left_mm = -430 + 1524;
  CHECK(remarks(outlet(), {valve}).empty());
  const Fitting hole{"", Kind::WireHole, 0, {-501, -481, 100, 120, 300, 320}};
  valve.place.left_mm = 0;
  CHECK(remarks(hole, {valve}).empty());
  // No clause was found for a wire that only passes: not known.
  bay.place.left_mm = -495;
  CHECK(remarks(hole, {bay}).at(0).verdict == Verdict::Unknown);
}

TEST_CASE("near what is hot only a listing says how near", "[power]") {
  Keepout mouth{"the mouth", Zone::Mouth, {-200, 200, -400, 0, 900, 1300}, {}};
  const auto unknown = remarks(outlet(), {mouth});
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].verdict == Verdict::Unknown);
  mouth.clear_mm = 100;
  CHECK(remarks(outlet(), {mouth}).empty());
  mouth.clear_mm = 2000;
  CHECK(remarks(outlet(), {mouth}).at(0).verdict == Verdict::Fail);
  mouth.place = outlet().body;
  mouth.clear_mm = {};
  CHECK(remarks(outlet(), {mouth}).at(0).verdict == Verdict::Fail);
}

TEST_CASE("the gap between two blocks is the straight line", "[power]") {
  const Block unit{0, 1, 0, 1, 0, 1};
  CHECK(gap_mm(unit, {4, 5, 5, 6, 0, 1}) == 5);  // 3, 4, 5
  CHECK(gap_mm(unit, {1, 2, 0, 1, 0, 1}) == 0);
  CHECK_THAT(gap_mm(unit, {0.25, 2, 0, 1, 0, 1}), WithinAbs(-0.75, 1e-12));
}

TEST_CASE("two fittings do not share a place, and a forgotten cut has its repair", "[power]") {
  const std::array panels{kSide};
  const std::array fittings{outlet(), outlet()};
  CHECK(cut_panels(panels, fittings, {}).remarks.size() == 1);
  CHECK(cutting_steps(true).size() > cutting_steps(false).size());
  std::array late{kSide};
  late[0].painted = true;
  const std::array one{outlet()};
  CHECK(cut_panels(late, one, {}).remarks.at(0).verdict == Verdict::Warn);
  CHECK(cut_panels(panels, one, {}).remarks.empty());
  bool seals = false;
  for (const auto step : cutting_steps(true)) seals |= step.find("Seal") != std::string_view::npos;
  CHECK(seals);
}
