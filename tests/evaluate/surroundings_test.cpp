// What stands around the oven, room to work and weather: each rule passed, broken and not known.
#include "engine/evaluate/surroundings.h"

#include <algorithm>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/report/summary.h"
#include "engine/rules/rules.h"

using namespace hs;
using namespace hs::config;

namespace {

std::vector<Finding> found(const Config& config, std::string_view rule) {
  std::vector<Finding> out;
  for (const Finding& finding : evaluate::evaluate_fit(config).findings) {
    if (finding.rule == rule) out.push_back(finding);
  }
  return out;
}

// The verdict of a rule that gives one finding; Unknown where it gives none is told apart by CHECK.
Verdict verdict(const Config& config, std::string_view rule) {
  const auto all = found(config, rule);
  CAPTURE(std::string(rule));
  REQUIRE(all.size() == 1);
  return all[0].verdict;
}

Config wood() {
  Config config;
  config.oven.fuel = Fuel::Wood;
  return config;
}

}  // namespace

TEST_CASE("a station of which nobody has said anything gets unknowns, not figures to build by",
          "[evaluate][clearance]") {
  for (const Fuel fuel : {Fuel::Gas, Fuel::Wood, Fuel::Electric}) {
    Config config;
    config.oven.fuel = fuel;
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (const clearance::Zone& zone : e.surroundings.hot) {
      CHECK_FALSE(zone.need.required_mm);
      CHECK_FALSE(zone.box);
    }
    int unknown = 0;
    for (const Finding& finding : e.findings) {
      if (!finding.rule.starts_with("clearance.")) continue;
      CAPTURE(std::string(finding.rule));
      CHECK(finding.verdict == Verdict::Unknown);
      ++unknown;
      // Where the oven's own papers have the figure, not even a limit is shown.
      const rules::Rule* rule = rules::find_rule(finding.rule);
      if (rule->source == "oven_manual") {
        CHECK_FALSE(finding.limit);
        const std::string text = report::sentence(finding, config, e, report::Units::Inch);
        CHECK(text.find_first_of("0123456789") == std::string::npos);
      }
    }
    CHECK(unknown >= 10);
  }
  // Free room on a side changes nothing as long as nobody says how much is asked for.
  Config roomy;
  roomy.station.left_gap_mm = roomy.station.right_gap_mm = roomy.station.back_gap_mm = 5000;
  for (const Finding& finding : found(roomy, "clearance.side")) {
    CHECK(finding.verdict == Verdict::Unknown);
  }
  // Listed, with a manual that nobody has read: still unknown.
  roomy.oven.listed = true;
  CHECK(verdict(roomy, "clearance.back") == Verdict::Unknown);
}

TEST_CASE("an oven without a listing is held to what codes publish",
          "[evaluate][clearance][source]") {
  // NFPA 211 12.6 (second hand), IRC R1002.5: 36 in at sides and back; IFGC 623: 48 in above,
  // front.
  Config config;
  config.oven.listed = false;
  config.station.back_gap_mm = 914.4;
  CHECK(verdict(config, "clearance.back") == Verdict::Ok);
  config.station.back_gap_mm = 914.2;
  CHECK(verdict(config, "clearance.back") == Verdict::Fail);
  const auto below = found(config, "clearance.below");
  CHECK(below.at(0).verdict == Verdict::Unknown);
  const auto e = evaluate::evaluate_fit(config);
  const auto back = found(config, "clearance.back");
  CHECK(report::sentence(back[0], config, e, report::Units::Millimetre).find("without a listing") !=
        std::string::npos);
}

TEST_CASE("what does not burn may stand nearer, and is still told", "[evaluate][clearance]") {
  Config config;
  config.oven.listed_clearance.back_mm = 300;
  config.station.back_gap_mm = 100;
  CHECK(verdict(config, "clearance.back") == Verdict::Fail);
  config.station.back_combustible = true;
  CHECK(verdict(config, "clearance.back") == Verdict::Fail);
  config.station.back_combustible = false;
  CHECK(verdict(config, "clearance.back") == Verdict::Warn);
  config.station.back_gap_mm = 300;
  CHECK(verdict(config, "clearance.back") == Verdict::Ok);
}

TEST_CASE("a cover over an oven whose papers are silent is a plain warning",
          "[evaluate][clearance]") {
  Config config;
  CHECK(verdict(config, "clearance.cover") == Verdict::Unknown);
  config.site.cover.kind = CoverKind::None;
  CHECK(verdict(config, "clearance.cover") == Verdict::Ok);
  for (const CoverKind kind : {CoverKind::Roof, CoverKind::Slats, CoverKind::Fabric}) {
    config.site.cover.kind = kind;
    CHECK(verdict(config, "clearance.cover") == Verdict::Warn);
  }
  // However high it is, and whether or not it burns.
  config.site.cover_height_mm = 6000;
  config.site.cover.combustible = false;
  config.oven.listed_clearance.above_mm = 900;
  CHECK(verdict(config, "clearance.cover") == Verdict::Warn);
  config.oven.listed_clearance.under_cover = true;
  CHECK(verdict(config, "clearance.cover") == Verdict::Ok);
  config.site.local_clearance.under_cover = false;
  CHECK(verdict(config, "clearance.cover") == Verdict::Fail);
  // A height alone says that there is a cover.
  Config high;
  high.site.cover_height_mm = 2500;
  CHECK(verdict(high, "clearance.cover") == Verdict::Warn);
}

TEST_CASE("a grill under the cover needs its own manual's word", "[evaluate][clearance]") {
  Config config;
  config.site.cover.kind = CoverKind::Roof;
  CHECK(found(config, "clearance.grill_cover").empty());
  config.site.grill.at = GrillAt::Left;
  CHECK(verdict(config, "clearance.grill_cover") == Verdict::Warn);
  config.site.grill.under_cover = true;
  CHECK(verdict(config, "clearance.grill_cover") == Verdict::Ok);
  config.site.grill.under_cover = false;
  CHECK(verdict(config, "clearance.grill_cover") == Verdict::Fail);
}

TEST_CASE("four closed sides are indoors, three gather smoke", "[evaluate][clearance]") {
  Config config;
  config.site.cover.kind = CoverKind::Roof;
  CHECK(verdict(config, "clearance.open_sides") == Verdict::Unknown);
  const Verdict expected[] = {Verdict::Ok, Verdict::Ok, Verdict::Ok, Verdict::Warn, Verdict::Fail};
  for (int walls = 0; walls <= 4; ++walls) {
    config.site.cover.walls = static_cast<Walls>(walls);
    CHECK(verdict(config, "clearance.open_sides") == expected[walls]);
  }
  config.site.cover.kind = CoverKind::None;
  CHECK(verdict(config, "clearance.open_sides") == Verdict::Ok);
}

TEST_CASE("a post is far enough only when both figures are known", "[evaluate][clearance]") {
  Config config;
  CHECK(found(config, "clearance.post").empty());
  config.site.cover.kind = CoverKind::Roof;
  config.site.cover.post_gap_mm = 400;
  CHECK(verdict(config, "clearance.post") == Verdict::Unknown);
  config.oven.listed_clearance.side_mm = 300;
  CHECK(verdict(config, "clearance.post") == Verdict::Unknown);  // the back has not spoken
  config.oven.listed_clearance.back_mm = 400;
  CHECK(verdict(config, "clearance.post") == Verdict::Ok);
  config.oven.listed_clearance.back_mm = 401;
  CHECK(verdict(config, "clearance.post") == Verdict::Unknown);  // does it burn?
  config.site.cover.post_combustible = true;
  CHECK(verdict(config, "clearance.post") == Verdict::Fail);
  config.site.cover.post_combustible = false;
  CHECK(verdict(config, "clearance.post") == Verdict::Ok);
}

TEST_CASE("what burns stays 3 ft away", "[evaluate][clearance][source]") {
  // NFPA and USFA tips, second hand.
  Config config;
  CHECK(verdict(config, "clearance.railing") == Verdict::Unknown);
  config.site.railing_gap_mm = 914;
  CHECK(verdict(config, "clearance.railing") == Verdict::Ok);
  config.site.railing_gap_mm = 913;
  CHECK(verdict(config, "clearance.railing") == Verdict::Fail);
}

TEST_CASE("less than 10 ft from a building depends on what it is",
          "[evaluate][clearance][source]") {
  // IFC 308.1.4, second hand: one- and two-family dwellings are left out.
  Config config;
  CHECK(verdict(config, "clearance.house") == Verdict::Unknown);
  config.site.house_gap_mm = 3048;
  CHECK(verdict(config, "clearance.house") == Verdict::Ok);
  config.site.house_gap_mm = 3000;
  CHECK(verdict(config, "clearance.house") == Verdict::Unknown);
  config.site.dwelling = Dwelling::OneOrTwoFamily;
  CHECK(verdict(config, "clearance.house") == Verdict::Warn);
  config.site.dwelling = Dwelling::Other;
  CHECK(verdict(config, "clearance.house") == Verdict::Fail);
  config.oven.fuel = Fuel::Electric;  // no open flame
  CHECK(found(config, "clearance.house").empty());
}

TEST_CASE("oven and grill keep the larger of their two figures", "[evaluate][clearance]") {
  Config config;
  CHECK(found(config, "clearance.grill").empty());
  config.site.grill.at = GrillAt::Left;
  config.site.grill.gap_mm = 450;
  config.oven.listed_clearance.side_mm = 300;
  CHECK(verdict(config, "clearance.grill") == Verdict::Unknown);
  config.site.grill.listed_side_mm = 450;
  CHECK(verdict(config, "clearance.grill") == Verdict::Ok);
  config.site.grill.gap_mm = 440;
  CHECK(verdict(config, "clearance.grill") == Verdict::Fail);
}

TEST_CASE("a flue keeps its maker's room, and nothing stands in for it", "[evaluate][clearance]") {
  Config config = wood();
  CHECK(found(config, "clearance.flue").empty());
  CHECK(verdict(config, "clearance.flue_top") == Verdict::Unknown);
  config.site.flue.kind = FlueKind::None;
  CHECK(found(config, "clearance.flue_top").empty());
  config.site.flue.kind = FlueKind::Open;
  config.site.flue.gap_mm = 150;
  CHECK(verdict(config, "clearance.flue") == Verdict::Unknown);
  config.oven.listed = false;  // the oven's fallback is not the flue's
  CHECK(verdict(config, "clearance.flue") == Verdict::Unknown);
  config.site.flue.listed_gap_mm = 150;
  CHECK(verdict(config, "clearance.flue") == Verdict::Ok);
  config.site.flue.listed_gap_mm = 200;
  CHECK(verdict(config, "clearance.flue") == Verdict::Fail);
}

TEST_CASE("a flue's top is held against roof, neighbours and cover",
          "[evaluate][clearance][source]") {
  // IRC R1003.9: penetration at 8 ft, ridge 9.5 ft within 10 ft: 11.5 ft (check value 13).
  constexpr double kFoot_mm = 304.8;
  Config config = wood();
  config.site.flue.kind = FlueKind::ThroughRoof;
  config.site.flue.roof_mm = 8 * kFoot_mm;
  config.site.flue.top_mm = 11.5 * kFoot_mm;
  CHECK(verdict(config, "clearance.flue_top") == Verdict::Unknown);
  config.site.flue.near_top_mm = 9.5 * kFoot_mm;
  CHECK(verdict(config, "clearance.flue_top") == Verdict::Ok);
  config.site.flue.top_mm = 11.5 * kFoot_mm - 1;
  CHECK(verdict(config, "clearance.flue_top") == Verdict::Fail);
  // Ending under a cover it fails whatever is near.
  Config under = wood();
  under.site.flue = {FlueKind::Open, 2000, {}, 0, {}, {}};
  CHECK(verdict(under, "clearance.flue_top") == Verdict::Ok);
  under.site.cover_height_mm = 2400;
  CHECK(verdict(under, "clearance.flue_top") == Verdict::Fail);
}

TEST_CASE("embers fall on what does not burn, or it is said", "[evaluate][clearance][source]") {
  // IRC R1001.10: 16 in before an opening under 6 sq ft, borrowed from fireplaces.
  Config config = wood();
  CHECK(verdict(config, "clearance.apron") == Verdict::Unknown);
  config.station.top_combustible = true;
  CHECK(verdict(config, "clearance.apron") == Verdict::Fail);
  config.station.top_combustible = false;
  CHECK(verdict(config, "clearance.apron") == Verdict::Unknown);
  config.site.ground = Ground::Deck;
  CHECK(verdict(config, "clearance.apron") == Verdict::Warn);
  config.site.ground = Ground::Paving;
  CHECK(verdict(config, "clearance.apron") == Verdict::Ok);
  config.site.ground = Ground::Deck;
  config.station.oven_setback_mm = 406.4;
  CHECK(verdict(config, "clearance.apron") == Verdict::Ok);
  CHECK(found(Config{}, "clearance.apron").empty());  // a gas flame drops no embers
}

TEST_CASE("extinguisher and cylinder have their places", "[evaluate][clearance]") {
  Config config;
  CHECK(verdict(config, "clearance.extinguisher") == Verdict::Unknown);
  CHECK(verdict(config, "clearance.cylinder") == Verdict::Unknown);
  const Verdict hangs[] = {Verdict::Ok, Verdict::Fail, Verdict::Warn, Verdict::Fail};
  const Verdict stands[] = {Verdict::Ok, Verdict::Ok, Verdict::Unknown, Verdict::Fail};
  for (int i = 0; i < 4; ++i) {
    config.site.extinguisher = static_cast<Extinguisher>(i);
    config.site.cylinder = static_cast<Cylinder>(i);
    CHECK(verdict(config, "clearance.extinguisher") == hangs[i]);
    CHECK(verdict(config, "clearance.cylinder") == stands[i]);
  }
  config.site.cylinder_kg = 9;
  CHECK(evaluate::evaluate_fit(config).surroundings.grill_vents);
  config.oven.fuel = Fuel::Wood;
  CHECK(found(config, "clearance.cylinder").empty());
  CHECK_FALSE(evaluate::evaluate_fit(config).surroundings.grill_vents);
}

TEST_CASE("room for peel, drawers and a wheelchair is held against the aisle", "[evaluate][room]") {
  Config config;
  config.cooks[0].seated = true;
  config.station.opens_mm = 500;
  config.station.opens_across_mm = 700;
  struct Row {
    const char* rule;
    double limit_mm;
    Verdict broken;
  };
  const Row rows[] = {{"room.peel_turn", 900 - 80, Verdict::Warn},
                      {"room.drawer", 1100, Verdict::Warn},
                      {"room.doors_both", 1200, Verdict::Warn},
                      {"room.wheelchair_turn", 1525, Verdict::Fail}};
  for (const Row& row : rows) {
    CAPTURE(row.rule);
    config.station.aisle_mm.reset();
    CHECK(verdict(config, row.rule) == Verdict::Unknown);
    config.station.aisle_mm = row.limit_mm;
    CHECK(verdict(config, row.rule) == Verdict::Ok);
    config.station.aisle_mm = row.limit_mm - 1;
    CHECK(verdict(config, row.rule) == row.broken);
  }
}

TEST_CASE("a landing across a narrow aisle does for one beside the oven", "[evaluate][reach]") {
  // Guideline 23: not more than 48 in across, and not a walkway.
  Config config;
  config.station.landing_right_mm = 100;
  CHECK(verdict(config, "reach.landing") == Verdict::Warn);
  config.station.landing_across = true;
  CHECK(verdict(config, "reach.landing") == Verdict::Warn);  // how wide is the aisle?
  config.station.aisle_mm = 1219;
  CHECK(verdict(config, "reach.landing") == Verdict::Ok);
  config.station.aisle_mm = 1230;
  CHECK(verdict(config, "reach.landing") == Verdict::Warn);
}

TEST_CASE("rain on counter and face needs wind and cover to be known", "[evaluate][weather]") {
  Config config;
  config.station.counter_height_mm = 900;
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Unknown);
  config.site.wind_m_s = 5;
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Unknown);
  config.site.cover.kind = CoverKind::None;
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Warn);
  CHECK(verdict(config, "weather.rain_face") == Verdict::Warn);
  config.site.cover.kind = CoverKind::Roof;
  config.site.cover_height_mm = 2900;
  // 2 m above the counter at 5 m/s rain comes in 1.54 m (check value 23).
  config.site.cover.out_mm = 1545;
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Ok);
  config.site.cover.out_mm = 1535;
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Warn);
  config.site.cover.out_mm = 2300;
  CHECK(verdict(config, "weather.rain_face") == Verdict::Ok);
  config.site.cover.kind = CoverKind::Slats;  // rain comes through
  CHECK(verdict(config, "weather.rain_counter") == Verdict::Warn);
}

TEST_CASE("drips, falls of ground and the wind are told as they were given",
          "[evaluate][weather]") {
  Config config;
  CHECK(verdict(config, "weather.drip") == Verdict::Unknown);
  config.station.drip_groove = true;
  CHECK(verdict(config, "weather.drip") == Verdict::Ok);
  config.station.overhang_mm = 24.9;
  CHECK(verdict(config, "weather.drip") == Verdict::Warn);
  config.station.overhang_mm = 40;
  config.station.drip_groove = false;
  CHECK(verdict(config, "weather.drip") == Verdict::Warn);

  // IRC R401.3: 2 % hard, 5 % bare; 2.4 and 6 in over 10 ft.
  CHECK(verdict(config, "weather.drainage") == Verdict::Unknown);
  config.site.fall_mm = 61;
  CHECK(verdict(config, "weather.drainage") == Verdict::Unknown);
  config.site.ground = Ground::Paving;
  CHECK(verdict(config, "weather.drainage") == Verdict::Ok);
  config.site.fall_mm = 60;
  CHECK(verdict(config, "weather.drainage") == Verdict::Warn);
  config.site.ground = Ground::Bare;
  config.site.fall_mm = 152.4;
  CHECK(verdict(config, "weather.drainage") == Verdict::Ok);
  config.site.fall_mm = 152;
  CHECK(verdict(config, "weather.drainage") == Verdict::Warn);
  config.site.fall_mm = -5;
  CHECK(verdict(config, "weather.drainage") == Verdict::Fail);

  CHECK(verdict(config, "weather.wind_mouth") == Verdict::Unknown);
  CHECK(verdict(config, "weather.smoke") == Verdict::Unknown);
  config.site.wind_from = WindFrom::Front;
  CHECK(verdict(config, "weather.wind_mouth") == Verdict::Warn);
  CHECK(verdict(config, "weather.smoke") == Verdict::Ok);
  config.site.wind_from = WindFrom::Back;
  CHECK(verdict(config, "weather.wind_mouth") == Verdict::Ok);
  CHECK(verdict(config, "weather.smoke") == Verdict::Warn);
}
