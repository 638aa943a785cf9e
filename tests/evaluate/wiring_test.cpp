// Where outlets and wire holes are cut in, on the panels and on the parts' drawings.

#include "engine/evaluate/wiring.h"

#include <algorithm>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/packet.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::evaluate;
using Catch::Matchers::WithinAbs;

namespace {

constexpr std::int64_t kFewSteps = 2000;

}  // namespace

TEST_CASE("what is cut out names its part, and lies on the part's drawing where the panel has it",
          "[packet][power]") {
  config::Config c = test::preset("stations/open_courtyard");
  c.power.outlets = 4;
  c.power.lamp_w = 40;
  for (const config::OutletAt at :
       {config::OutletAt::DoughEnd, config::OutletAt::DoughBack, config::OutletAt::OvenEnd}) {
    c.power.outlet_at = at;
    const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
    const Wiring& wiring = *e.packet->wiring;
    // A box that finds no room on its panel is told, and is no opening.
    REQUIRE(wiring.cutting.cutouts.size() >= 5);
    REQUIRE(wiring.on_part.size() == wiring.cutting.cutouts.size());
    REQUIRE(wiring.panel_parts.size() == wiring.panels.size());
    for (std::size_t i = 0; i < wiring.on_part.size(); ++i) {
      const power::Cutout& cut = wiring.cutting.cutouts[i];
      const PanelPart& panel = wiring.panel_parts[wiring.fittings[cut.fitting].panel];
      const Block& place = wiring.panels[wiring.fittings[cut.fitting].panel].place;
      const parts::Part& part = e.build->parts.parts.at(static_cast<std::size_t>(panel.part) - 1);
      INFO(panel.place << ", part " << panel.part);
      CHECK(part.quantity() == panel.one_of);
      // Its part has a piece in that very place.
      const auto& pieces = e.build->frame.pieces;
      CHECK(std::any_of(part.pieces.begin(), part.pieces.end(),
                        [&](std::size_t piece) { return pieces[piece].place == place; }));
      // Turned or not, nothing of the rim is lost: on the part it is the panel's.
      const OnPart& on = wiring.on_part[i];
      const double rim_mm = std::min({on.along_mm - on.long_mm / 2, on.across_mm - on.wide_mm / 2,
                                      part.length_mm - on.along_mm - on.long_mm / 2,
                                      part.width_mm - on.across_mm - on.wide_mm / 2});
      CHECK_THAT(rim_mm, WithinAbs(cut.rim_mm, 0.1));
    }
  }
  // The last one: at the oven's end, 150 apart, 70 wide; the left edge of the drawing is told.
  const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
  const Wiring& wiring = *e.packet->wiring;
  CHECK(wiring.panel_parts[0].place == "left side under the oven, bay 1");
  for (std::size_t i = 0; i < 4; ++i)
    CHECK_THAT(*wiring.cutting.cutouts.at(i).web_mm, WithinAbs(80, 1e-9));
  CHECK_FALSE(wiring.cutting.cutouts[4].web_mm);
  const double up_mm = wiring.cutting.cutouts[0].v_mm + 60;
  const OnPart& on = wiring.on_part[0];
  CHECK((on.left_edge == "lower edge" || on.left_edge == "upper edge"));
  const double from_left_mm =
      on.left_edge == "lower edge" ? up_mm : wiring.panels[0].place.height_mm() - up_mm;
  CHECK_THAT(on.along_mm, WithinAbs(from_left_mm, 1e-9));
}

TEST_CASE("what nobody has said of the oven's room is told once for a box", "[packet][power]") {
  config::Config c = test::preset("stations/open_courtyard");
  c.power.outlets = 2;
  c.oven.listed_clearance = {};
  const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
  const Wiring& wiring = *e.packet->wiring;
  std::vector<std::string> told;
  for (const power::Remark& remark : wiring.cutting.remarks) {
    if (remark.verdict != Verdict::Unknown) continue;
    told.push_back(power::words(remark, wiring.fittings, wiring.keepouts, Unit::Mm));
  }
  REQUIRE(told.size() == wiring.fittings.size());
  CHECK(told.front() ==
        "outlet box, the first: has no listed distance: read the oven's manual, ask the licensed "
        "electrician, about free room round the oven (left, right, back, above, front, below).");
  std::sort(told.begin(), told.end());
  CHECK(std::adjacent_find(told.begin(), told.end()) == told.end());
}
