// Masses against the parts list, and what is said of stations under their loads.

#include "engine/loads/loads.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/report/phrases.h"
#include "engine/report/report_json.h"
#include "engine/report/summary.h"
#include "engine/rules/rules.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::loads;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using evaluate::evaluate_all;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

config::Config station() {
  config::Config c;
  c.station.arrangement = config::Arrangement::TwoLevel;
  c.station.counter_height_mm = 920;
  c.station.oven_base_height_mm = 1010;
  c.station.prep_width_mm = 1500;
  return c;
}

const RunLoads& run_of(const Evaluation& e, bool oven) {
  const auto& runs = e.build->loads.runs;
  return *std::find_if(runs.begin(), runs.end(),
                       [oven](const RunLoads& run) { return run.oven == oven; });
}

const TipCase& case_of(const RunLoads& run, Case what) {
  return *std::find_if(run.cases.begin(), run.cases.end(),
                       [what](const TipCase& one) { return one.what == what; });
}

}  // namespace

TEST_CASE("boards and sheets weigh what their sheets say", "[loads][source]") {
  // Cellular PVC 1x6 of 12 ft at 0.55 g/cm3: 5.354 kg (computed, shop sizes by PS 20).
  CHECK_THAT(
      lump_of(Block{0, 3657.6, 0, 139.7, 0, 19.05}, density_kg_m3(frame::Material::BaseBoard))
          .mass_kg,
      WithinRel(5.354, 0.001));
  // Stainless of 16 gauge, 1.588 mm: 12.7 kg/m2 at 8.0 (chart: 2.601 lb/ft2 at 0.289 lb/in3).
  CHECK_THAT(
      lump_of(Block{0, 1000, 0, 1000, 0, 1.588}, density_kg_m3(frame::Material::Metal)).mass_kg,
      WithinRel(12.7, 0.002));
  // 3/4 in plywood: 2.2 to 2.3 lb/ft2 (APA's rule of thumb).
  const double ply =
      lump_of(Block{0, 304.8, 0, 304.8, 0, 19.05}, density_kg_m3(frame::Material::Sheet)).mass_kg /
      0.45359237;
  CHECK((ply >= 2.2 && ply <= 2.3));
}

TEST_CASE("the whole weighs what its parts weigh, oven and drawers added", "[loads][law]") {
  for (const char* name : test::kPresets) {
    CAPTURE(name);
    const config::Config config = test::preset(name);
    const Evaluation e = evaluate_all(config);
    const Loads& loads = e.build->loads;
    if (!loads.made) continue;
    double kg = 0;
    int drawers = 0;
    for (const parts::Part& part : e.build->parts.parts) {
      double mm3 = part.length_mm * part.width_mm * part.thick_mm;
      if (part.kind == frame::Kind::DrawerFront) drawers += part.quantity();
      // Turned-down edges: start and end as wide as the part less two folds, low and high as long.
      if (part.material == frame::Material::Metal) {
        for (std::size_t i = 0; i < 4; ++i) {
          const double along = i < 2 ? part.width_mm - 2 * part.thick_mm : part.length_mm;
          const double below = std::max(0.0, part.folds_mm[i] - part.thick_mm);
          mm3 += below * part.thick_mm * along;
        }
      }
      kg += mm3 / 1e9 * density_kg_m3(part.material) * part.quantity();
    }
    const bool on_it = e.used.oven_base_mm && !e.build->frame.places.masonry_base;
    const bool oven_run = std::any_of(loads.runs.begin(), loads.runs.end(),
                                      [](const RunLoads& run) { return run.oven; });
    if (on_it && oven_run) kg += config.oven.mass_kg;
    kg += drawers * config.loads.drawer_kg;
    // Parts are rounded to 0.1 mm.
    CHECK_THAT(loads.whole.mass_kg, WithinRel(kg, 0.01));
  }
}

TEST_CASE("tipping by hand: a pull at the top of the dough counter", "[loads]") {
  const Evaluation e = evaluate_all(station());
  const RunLoads& run = run_of(e, false);
  // The front edge of what stands is the carrying board's: counter edge, overhang 25, toe space 75,
  // base board 19.1 and 5 of air behind it.
  const double edge_mm = -80 + 25 + 75 + 19.1 + 5;
  const double arm_m = (run.whole.y_mm - edge_mm) / 1000;
  const double weight_n = run.whole.mass_kg * kGravity_m_s2;
  CHECK_THAT(run.pull_n, WithinRel(weight_n * arm_m / 0.920, 1e-9));
  const TipCase& pull = case_of(run, Case::Pull);
  CHECK(pull.tip.side == Side::Front);
  // A tie at the top takes what is lacking to 1.5.
  if (pull.tip.factor < kEnough) {
    CHECK_THAT(pull.tie_n * 0.920, WithinRel(1.5 * pull.tip.turns_n_m - pull.tip.holds_n_m, 1e-9));
  }
}

TEST_CASE("what opens and who climbs never makes it steadier", "[loads][law]") {
  test::Random random(404);
  for (const auto holds : {config::Holds::Doors, config::Holds::Drawers,
                           config::Holds::DrawerAndDoors, config::Holds::Open}) {
    for (int i = 0; i < test::sweep(40); ++i) {
      config::Config c = station();
      c.frame.dough_bays = holds;
      c.frame.oven_bays = holds;
      c.station.prep_width_mm = 600 + random.below(2000);
      c.station.prep_depth_mm = 500 + random.below(500);
      c.oven.mass_kg = 10 + random.below(100);
      const Evaluation e = evaluate_all(c);
      if (!e.build->loads.made) continue;
      for (const RunLoads& run : e.build->loads.runs) {
        const double shut = case_of(run, Case::Shut).tip.factor;
        const double open = case_of(run, Case::Open).tip.factor;
        const double child = case_of(run, Case::Child).tip.factor;
        CHECK(open <= shut + 1e-9);
        CHECK(child <= open + 1e-9);
        CHECK(std::isfinite(run.gust_m_s));
      }
    }
  }
}

TEST_CASE("wind that tips it has a factor of one, and twice that a quarter", "[loads][law]") {
  config::Config c = station();
  const double gust = run_of(evaluate_all(c), true).gust_m_s;
  REQUIRE((gust > 10 && gust < 90));
  // Read to 0.1 m/s when typed, not here.
  c.loads.gust_m_s = gust;
  const Evaluation there = evaluate_all(c);
  const TipCase& at = case_of(run_of(there, true), Case::Wind);
  CHECK_THAT(at.tip.factor, WithinAbs(1, 1e-6));
  c.loads.gust_m_s = gust * 1.2;
  const Evaluation harder = evaluate_all(c);
  CHECK(case_of(run_of(harder, true), Case::Wind).tip.factor < 1);
  CHECK(verdict(harder, "load.wind", "oven's counter") == Verdict::Fail);
}

TEST_CASE("anchors count in a slab, not in loose pavers; a wall's tie to the front only",
          "[loads]") {
  config::Config c = station();
  c.frame.dough_bays = config::Holds::Drawers;
  c.loads.drawer_kg = 40;
  const auto child = [&c] { return verdict(evaluate_all(c), "load.child", "dough counter"); };
  REQUIRE(case_of(run_of(evaluate_all(c), false), Case::Child).tip.factor < kEnough);
  CHECK(child() == Verdict::Unknown);
  c.loads.held = config::Held::Free;
  CHECK(child() == Verdict::Fail);
  c.loads.held = config::Held::Ground;
  CHECK(child() == Verdict::Fail);  // nobody has said in what
  c.survey.footing = config::Footing::LoosePavers;
  CHECK(child() == Verdict::Fail);
  c.survey.footing = config::Footing::Slab;
  CHECK(child() == Verdict::Warn);
  c.loads.held = config::Held::Wall;
  CHECK(child() == Verdict::Warn);
  const Loads loads = evaluate_all(c).build->loads;
  CHECK(loads.screws >= 2);
  CHECK(loads.washer_mm > 4.8);
}

TEST_CASE("a base of cellular PVC that carries is refused; masonry ovens stand on no cabinet",
          "[loads]") {
  config::Config c = station();
  CHECK(verdict(evaluate_all(c), "load.path") == Verdict::Ok);
  c.loads.carries = config::Carries::BaseBoards;
  CHECK(verdict(evaluate_all(c), "load.path") == Verdict::Fail);
  c.loads.carries = config::Carries::Masonry;
  CHECK(found(evaluate_all(c), "load.path")->where == "masonry");

  c = station();
  c.oven.kind = config::OvenKind::MasonryDome36;
  c.oven.mass_kg = 900;
  const Evaluation e = evaluate_all(c);
  CHECK(e.build->loads.decks.empty());
  REQUIRE(e.build->loads.pier_kpa);
  // By hand: brickwork as high as the oven's base, 1900 kg/m3, and 900 kg over its plan.
  const Block& pier = *e.build->frame.places.oven_stand;
  const double area_m2 = pier.width_mm() * pier.depth_mm() / 1e6;
  CHECK_THAT(*e.build->loads.pier_kpa,
             WithinRel((1900 * 1.010 + 900 / area_m2) * 9.80665 / 1000, 1e-9));
  CHECK(verdict(e, "load.pressure") == Verdict::Ok);
  CHECK(verdict(e, "load.lift") == Verdict::Warn);
  CHECK(found(e, "frame.masonry"));
}

TEST_CASE("the deck by hand: moist, under a load that stays", "[loads]") {
  // 48/24 plywood, AWC manual, table M9.2-1: EI 440 000 lb in2 (and 845 lb in) for each foot. 400
  // mm of span, so a strip of 200 mm; 500 N in its middle: P L^3 / 48 EI and P L / 4. Out of doors
  // 0.85 of the stiffness; 0.75 and 0.9 of the strength; twice the sag in years.
  const double ei = 440000 * 4.4482216 * 25.4 * 25.4 / 304.8 * 200;
  const double sag_mm = 500.0 * 400 * 400 * 400 / (48 * 0.85 * ei);
  const Deck deck = deck_of(500, 50, 400, {}, 18.3, 1, 600);
  CHECK_THAT(deck.strip_mm, WithinRel(200, 1e-12));
  CHECK_THAT(deck.bend.sag_mm, WithinRel(sag_mm, 1e-9));
  CHECK_THAT(deck.limit_mm, WithinRel(400 / 360.0, 1e-12));
  CHECK_THAT(deck.years_mm(), WithinRel(2 * sag_mm, 1e-9));
  CHECK_THAT(deck.years_limit_mm(), WithinRel(400 / 240.0, 1e-12));
  const double may_n_mm = 0.675 * 4.4482216 * 25.4 / 304.8 * 200;  // for each lb in of a foot
  CHECK_THAT(deck.strength * strip_of(18.3)->moment_n / kMomentFoot_n,
             WithinRel(500.0 * 400 / 4 / may_n_mm, 1e-9));
  // What bends just enough at first bends too much in years: 2 x 240 / 360 is more than one.
  const double just_n = 500 * deck.limit_mm / deck.bend.sag_mm;
  const Deck at_limit = deck_of(0.999 * just_n, 50, 400, {}, 18.3, 1, 600);
  CHECK(at_limit.bend.sag_mm <= at_limit.limit_mm);
  CHECK(at_limit.years_mm() > at_limit.years_limit_mm());
  CHECK_FALSE(at_limit.holds());
  const Deck well = deck_of(0.749 * just_n, 50, 400, {}, 18.3, 1, 600);
  CHECK(well.years_mm() <= well.years_limit_mm());
}

TEST_CASE("a heavy oven on thin sheets over a wide bay gets stiffeners", "[loads]") {
  config::Config c = station();
  c.oven.mass_kg = 250;
  c.build.layers = config::Layers::One;
  c.build.sheet_mm = 12;
  c.frame.oven_bay_mm = 1200;
  const Evaluation e = evaluate_all(c);
  REQUIRE(e.build->loads.decks.size() == 1);
  const Deck& deck = e.build->loads.decks[0];
  CHECK(verdict(e, "load.deck") == Verdict::Warn);
  CHECK(deck.stiffeners >= 1);
  CHECK(deck.stiffened_mm < deck.bend.sag_mm);
  // Feet beside the bay's sides bend it less.
  config::Config wide = c;
  wide.loads.feet_across_mm = 580;
  CHECK(evaluate_all(wide).build->loads.decks[0].bend.sag_mm < deck.bend.sag_mm);
  // On a block the feet stand on its own top, whose ribs are near.
  c.station.arrangement = config::Arrangement::Riser;
  const Evaluation block = evaluate_all(c);
  REQUIRE(block.build->loads.decks.size() == 2);
  CHECK(block.build->loads.decks[0].what == Under::Block);
  CHECK(block.build->loads.decks[0].span_mm <= 300);
}

TEST_CASE("growth is held against gap and fit", "[loads]") {
  config::Config c = station();
  c.loads.build_c = 20;
  c.loads.high_c = 60;
  const Evaluation e = evaluate_all(c);
  const auto growth = e.build->loads.growth;
  REQUIRE(growth.size() == 3);
  CHECK_THAT(growth[0].longer_mm, WithinRel(growth[0].length_mm * kPvcGrowth * 40, 1e-12));
  CHECK(verdict(e, "load.growth_fronts") == Verdict::Ok);
  c.build.gap_mm = 1;
  CHECK(verdict(evaluate_all(c), "load.growth_fronts") == Verdict::Warn);
  c.build.fit_mm = 0.5;
  c.loads.high_c = 90;
  CHECK(verdict(evaluate_all(c), "load.growth_metal") == Verdict::Warn);
  // No hotter than when it was built: nothing grows.
  c.loads.high_c = 20;
  CHECK(evaluate_all(c).build->loads.growth[0].longer_mm == 0);
}

TEST_CASE("any station gives finite loads, findings of rules that exist, and says so in the report",
          "[loads][law]") {
  test::Random random(31337);
  std::set<std::string_view> told;
  int made = 0;
  for (int i = 0; i < test::sweep(1000); ++i) {
    config::Config c = test::random_config(random);
    c.frame.as_built.clear();
    if (!evaluate::check(c).empty()) continue;
    const Evaluation e = evaluate_all(c);
    const Loads& loads = e.build->loads;
    made += loads.made ? 1 : 0;
    for (const Finding& finding : e.findings) {
      if (!finding.rule.starts_with("load.")) continue;
      told.insert(finding.rule);
      REQUIRE(rules::find_rule(finding.rule) != nullptr);
      for (const auto& value : {finding.measured, finding.limit, finding.margin}) {
        REQUIRE((!value || std::isfinite(*value)));
      }
    }
    for (const RunLoads& run : loads.runs) {
      REQUIRE((run.whole.mass_kg > 0 && std::isfinite(run.gust_m_s) && std::isfinite(run.pull_n)));
      for (const TipCase& one : run.cases) {
        REQUIRE((one.tip.factor >= 0 && one.tip.factor <= kMost && one.tie_n >= 0));
      }
    }
    const std::string report = report::report_json(c, e);
    REQUIRE(report.find("nan,") == std::string::npos);
    REQUIRE(report.find("inf,") == std::string::npos);
    REQUIRE(report.find("\"loads\"") != std::string::npos);
  }
  CHECK(made > 0);
  for (const char* name : test::kPresets) {
    for (const Finding& finding : evaluate_all(test::preset(name)).findings) {
      told.insert(finding.rule);
    }
  }
  for (const rules::Rule& rule : rules::rules()) {
    if (rules::module_of(rule) != "load" || !rule.finding) continue;
    CAPTURE(rule.id);
    CHECK(told.count(rule.id) == 1);
  }
}

TEST_CASE("feet that stand beside what carries them are told, and no share is worked out",
          "[loads]") {
  config::Config c = station();
  c.station.arrangement = config::Arrangement::Riser;
  c.station.oven_base_height_mm = 1089;  // on a block
  const double body_mm = c.oven.width_mm;
  // The sheet under the block's metal: the oven's width less metal of 1.6 and a fit of 1.5 twice.
  c.loads.feet_across_mm = body_mm - 6.2 - c.loads.foot_mm;
  CHECK(found(evaluate_all(c), "load.feet") == nullptr);
  CHECK(evaluate_all(c).build->loads.decks.size() == 2);
  *c.loads.feet_across_mm += 1;
  for (const double across_mm : {*c.loads.feet_across_mm, body_mm + 100, 3000.0}) {
    c.loads.feet_across_mm = across_mm;
    const Evaluation e = evaluate_all(c);
    const Finding* finding = found(e, "load.feet");
    REQUIRE(finding != nullptr);
    CHECK(finding->verdict == Verdict::Fail);
    CHECK_THAT(*finding->measured, WithinAbs(across_mm + c.loads.foot_mm, 1e-6));
    CHECK_THAT(*finding->limit, WithinAbs(body_mm - 6.2, 1e-6));
    CHECK(found(e, "load.deck_strength") == nullptr);
  }
  c.loads.feet_across_mm = {};
  c.loads.feet_deep_mm = 2000;
  const Evaluation deep = evaluate_all(c);
  REQUIRE(found(deep, "load.feet") != nullptr);
  CHECK(found(deep, "load.feet")->where == "from front to back");
}

TEST_CASE("legs and masonry are the builder's: what is drawn is said, no pressure is told",
          "[loads]") {
  config::Config c = station();
  CHECK(verdict(evaluate_all(c), "load.path") == Verdict::Ok);
  CHECK(verdict(evaluate_all(c), "load.pressure") == Verdict::Ok);
  for (const config::Carries carries : {config::Carries::Legs, config::Carries::Masonry}) {
    c.loads.carries = carries;
    const Evaluation e = evaluate_all(c);
    CHECK(verdict(e, "load.path") == Verdict::Warn);
    const Finding* pressure = found(e, "load.pressure");
    REQUIRE(pressure != nullptr);
    CHECK(pressure->verdict == Verdict::Unknown);
    CHECK_FALSE(pressure->measured);
    CHECK(report::sentence(*pressure, c, e, report::Units::Millimetre).find(pressure->where) !=
          std::string::npos);
    for (const RunLoads& run : e.build->loads.runs) CHECK(run.pressure_kpa == 0);
  }
}

TEST_CASE("what is anchored to the ground is told of its anchors, what is tied of its tie",
          "[loads]") {
  config::Config c = station();
  c.survey.footing = config::Footing::Slab;
  for (const bool ground : {false, true}) {
    c.loads.held = ground ? config::Held::Ground : config::Held::Wall;
    const Evaluation e = evaluate_all(c);
    int told = 0;
    for (const Finding& finding : e.findings) {
      const bool tips = finding.rule == "load.child" || finding.rule == "load.pull";
      if (!tips || finding.verdict != Verdict::Warn) continue;
      const std::string text = report::sentence(finding, c, e, report::Units::Millimetre);
      CAPTURE(text);
      CHECK(text.find(ground ? "its anchors must bear" : "its tie must bear") != std::string::npos);
      ++told;
    }
    CHECK(told > 0);
  }
}

TEST_CASE("the report's factors are those that its sentences say", "[loads][report]") {
  config::Config c = station();
  for (double width_mm = 1200; width_mm <= 1800; width_mm += 50) {
    c.station.prep_width_mm = width_mm;
    const Evaluation e = evaluate_all(c);
    const std::string json = report::report_json(c, e);
    for (const Finding& finding : e.findings) {
      const rules::Rule* rule = rules::find_rule(finding.rule);
      if (rule == nullptr || rule->unit != rules::Unit::Factor || !finding.measured) continue;
      if (*finding.measured >= kMost) continue;
      const std::string said = report::times(*finding.measured);
      const std::string number = said.substr(0, said.find(' '));
      CAPTURE(width_mm, finding.rule, *finding.measured, number);
      CHECK(json.find("\"measured\": " + number + ",") != std::string::npos);
    }
  }
}

TEST_CASE("a masonry oven as light as one of steel is doubted", "[loads]") {
  config::Config c = station();
  CHECK(found(evaluate_all(c), "oven.masonry_mass") == nullptr);
  c.oven.kind = config::OvenKind::MasonryDome36;
  REQUIRE(found(evaluate_all(c), "oven.masonry_mass") != nullptr);
  CHECK(verdict(evaluate_all(c), "oven.masonry_mass") == Verdict::Warn);
  c.oven.mass_kg = 149.9;
  CHECK(verdict(evaluate_all(c), "oven.masonry_mass") == Verdict::Warn);
  c.oven.mass_kg = 150;
  CHECK(found(evaluate_all(c), "oven.masonry_mass") == nullptr);
}
