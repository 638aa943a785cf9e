// How one height serves several people, and what is said to each.

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using Catch::Matchers::WithinAbs;
using namespace hs;
using config::Build;
using test::found_for;

namespace {

config::Cook person(const char* name, double stature_mm, Build build) {
  config::Cook c;
  c.name = name;
  c.stature_mm = stature_mm;
  c.build = build;
  return c;
}

config::Config two_adults() {
  config::Config c;
  c.cooks = {person("Tall", 1830, Build::AdultA), person("Short", 1600, Build::AdultB)};
  return c;
}

}  // namespace

TEST_CASE("no weight lifts the oven past the shortest oven cook's hands", "[evaluate][law]") {
  for (const double share : {0.0, 0.1, 1.0}) {
    for (const double worst_off : {0.0, 0.5, 1.0}) {
      for (const double hands : {0.0, 0.1, 5.0}) {
        config::Config c = two_adults();
        c.cooks[1].share = share;
        c.weights.worst_off = worst_off;
        c.weights.hands = hands;
        const auto e = evaluate::evaluate(c);
        const double lowest_mm = std::min(e.cooks[0].ceiling_floor_mm, e.cooks[1].ceiling_floor_mm);
        CHECK(*e.recommended.heights.oven_floor_mm <= lowest_mm + 0.05);
      }
    }
  }
}

TEST_CASE("weights of nothing still give a sensible station", "[evaluate]") {
  config::Config c = two_adults();
  c.weights = {0, 0, 0, 0};
  const auto e = evaluate::evaluate(c);
  CHECK(*e.recommended.heights.oven_base_mm > 700);
  CHECK(*e.recommended.heights.counter_mm > 700);
}

TEST_CASE("only those at the oven pull its height", "[evaluate][law]") {
  config::Config c = two_adults();
  c.cooks[1].at = config::At::Prep;
  const auto alone = [&] {
    config::Config one = c;
    one.cooks.resize(1);
    return evaluate::evaluate(one);
  }();
  const auto e = evaluate::evaluate(c);
  CHECK(*e.recommended.heights.oven_base_mm == *alone.recommended.heights.oven_base_mm);
  CHECK(*e.recommended.heights.counter_mm < *alone.recommended.heights.counter_mm);
}

TEST_CASE("two heights never serve worse than one", "[evaluate][law]") {
  const auto e = evaluate::evaluate(two_adults());
  REQUIRE(e.arrangements.size() == 3);
  // A millimetre grid and the tie-breaks leave less than this between equals.
  constexpr double kGrid = 1e-3;
  CHECK(e.arrangements[1].household_cost <= e.arrangements[0].household_cost + kGrid);
  CHECK(e.arrangements[2].household_cost <= e.arrangements[1].household_cost + kGrid);
  CHECK(e.arrangements[0].heights.riser_mm == 0.0);
  CHECK(*e.arrangements[1].heights.riser_mm >= 0);
  CHECK(e.arrangements[0].dough_off_mm > e.arrangements[2].dough_off_mm);
}

TEST_CASE("a cover with a known clearance is a ceiling too", "[evaluate]") {
  config::Config c = two_adults();
  c.site.cover_height_mm = 2000;
  c.oven.listed_clearance.above_mm = 800;
  const auto e = evaluate::evaluate(c);
  CHECK_THAT(*e.recommended.heights.oven_base_mm, WithinAbs(2000 - 800 - c.oven.height_mm, 1));
  CHECK(e.recommended.binding == "height.cover_ceiling");
  CHECK(e.cover_ceiling_mm == 2000 - 800 - c.oven.height_mm);

  c.oven.listed_clearance.above_mm.reset();
  const auto unknown = evaluate::evaluate(c);
  CHECK(unknown.recommended.binding == "height.hand_ceiling");
  CHECK_FALSE(unknown.cover_ceiling_mm);
  const Finding* above = found_for(0, unknown, "clearance.above");
  REQUIRE(above);
  CHECK(above->verdict == Verdict::Unknown);
}

TEST_CASE("nobody at the oven leaves its heights open", "[evaluate]") {
  config::Config c = two_adults();
  c.cooks[0].at = c.cooks[1].at = config::At::Prep;
  const auto e = evaluate::evaluate(c);
  CHECK_FALSE(e.recommended.heights.oven_base_mm);
  CHECK_FALSE(e.recommended.heights.oven_floor_mm);
  CHECK_FALSE(e.recommended.oven_band);
  CHECK(e.recommended.heights.counter_mm);
}

TEST_CASE("a young child gets a low table and does not pull the counter", "[evaluate]") {
  config::Config c = two_adults();
  const auto before = evaluate::evaluate(c);
  config::Cook child = person("Child", 1160, Build::Child);
  child.age_years = 6;
  c.cooks.push_back(child);
  c.station.prep_width_mm = 900;
  const auto e = evaluate::evaluate(c);
  CHECK(*e.recommended.heights.counter_mm == *before.recommended.heights.counter_mm);
  REQUIRE(e.cooks[2].table_mm);
  CHECK(*e.cooks[2].table_mm < 700);
  // No step beside a short counter: it could not clear the child-free zone of 3 ft.
  CHECK_FALSE(e.cooks[2].step_mm);
  c.station.prep_width_mm = 1500;
  CHECK(evaluate::evaluate(c).cooks[2].step_mm);
}

TEST_CASE("a child named at the oven carries a caution by age", "[evaluate]") {
  for (const double age : {8.0, 15.0}) {
    config::Config c = two_adults();
    config::Cook child = person("Child", age < 13 ? 1280 : 1660, Build::Child);
    child.age_years = age;
    child.at = config::At::Both;
    c.cooks.push_back(child);
    const auto e = evaluate::evaluate(c);
    const Finding* f = found_for(2, e, "cook.child_at_oven");
    REQUIRE(f);
    CHECK(f->verdict == (age < 13 ? Verdict::Fail : Verdict::Warn));
  }
}

TEST_CASE("a young child at the oven does not lower it for the grown", "[evaluate]") {
  config::Config c = two_adults();
  const auto before = evaluate::evaluate(c);
  config::Cook child = person("Child", 1220, Build::Child);
  child.age_years = 7;
  child.at = config::At::Both;
  c.cooks.push_back(child);
  const auto e = evaluate::evaluate(c);
  CHECK(*e.recommended.heights.oven_base_mm == *before.recommended.heights.oven_base_mm);
  CHECK(found_for(2, e, "cook.child_at_oven")->verdict == Verdict::Fail);
}

TEST_CASE("a seated cook's dough counter leaves room for knees", "[evaluate]") {
  config::Config c = two_adults();
  c.cooks.resize(1);
  c.cooks[0].seated = true;
  c.station.arrangement = config::Arrangement::TwoLevel;
  const auto e = evaluate::evaluate(c);
  // 685 mm for knees under two sheets of 18.3, a bed of 1, metal of 1.6 and its drip of 12.
  CHECK(*e.recommended.heights.counter_mm >= 736.2);
  CHECK(*e.recommended.heights.counter_mm <= 865);
  CHECK(found_for(0, e, "reach.seated_counter")->verdict == Verdict::Ok);
  // That there is room under it nobody has said.
  CHECK(found_for(0, e, "reach.knee_room")->verdict == Verdict::Unknown);
}

TEST_CASE("knees have what is left under the counter's top as it is built", "[evaluate]") {
  config::Config c = two_adults();
  c.cooks.resize(1);
  c.cooks[0].seated = true;
  c.station.arrangement = config::Arrangement::TwoLevel;
  c.station.counter_height_mm = 735;
  const auto room = [&c] { return *found_for(0, evaluate::evaluate(c), "reach.knee_room"); };
  // 735 less 36.6, 1, 1.6 and 12 is 683.8: too little, whatever else is said of it.
  for (const std::optional<double>& said : {std::optional<double>{}, {700.0}}) {
    c.station.knee_height_mm = said;
    CHECK(room().verdict == Verdict::Fail);
    CHECK_THAT(*room().measured, WithinAbs(683.8, 1e-6));
    CHECK(room().where == "the metal's turned-down edge");
  }
  c.station.counter_height_mm = 737;
  c.station.knee_height_mm = 690;  // 685.8 is left
  CHECK(room().verdict == Verdict::Ok);
  CHECK_THAT(*room().measured, WithinAbs(685.8, 1e-6));
  c.station.knee_height_mm = 600;
  CHECK(room().verdict == Verdict::Fail);
  CHECK_THAT(*room().measured, WithinAbs(600, 1e-6));
}

TEST_CASE("no bend brings a face nearer than its limit", "[evaluate]") {
  config::Config c = two_adults();
  c.view.standoff_mm = 350;
  c.station.oven_base_height_mm = 1150;
  const auto e = evaluate::evaluate(c);
  for (const auto& cook : e.cooks) {
    if (!cook.stoop || cook.stoop->posture == sight::Posture{}) continue;
    CHECK(cook.stoop->face_to_mouth_mm >= sight::kFaceLimit_mm);
  }
  CHECK_FALSE(e.cooks[0].stoop);
}

TEST_CASE("what is seen, where it is seen from and the stoop agree from the side", "[evaluate]") {
  config::Config c = two_adults();
  c.view.lateral_mm = 300;
  c.oven.mouth_width_mm = 330;
  c.station.oven_base_height_mm = 1000;
  for (const double standoff_mm : {500.0, 700.0, 1100.0}) {
    c.view.standoff_mm = standoff_mm;
    for (const auto& cook : evaluate::evaluate(c).cooks) {
      if (cook.watching.target_seen) {
        REQUIRE(cook.full_view.standoff_mm);
        CHECK(*cook.full_view.standoff_mm <= standoff_mm + 0.05);
      }
      const bool upright = cook.stoop && cook.stoop->posture == sight::Posture{};
      CHECK(upright == cook.watching.target_seen);
    }
  }
}

TEST_CASE("a riser never lowers the oven", "[evaluate]") {
  config::Config c = two_adults();
  c.station.counter_height_mm = 1100;
  CHECK(*evaluate::evaluate(c).used.riser_mm == 0);
  c.station.oven_base_height_mm = 1000;
  CHECK(found_for(0, evaluate::evaluate(c), "height.riser")->verdict == Verdict::Fail);
}

TEST_CASE("a riser's plan is that of two heights where it can be, else that of one",
          "[evaluate][law]") {
  test::Random random(77);
  int as_two = 0, as_one = 0;
  for (int i = 0; i < test::sweep(400); ++i) {
    const config::Config c = test::random_config(random);
    if (!evaluate::check(c).empty()) continue;
    const auto e = evaluate::evaluate_fit(c);
    const auto& one = e.arrangements[0].heights;
    const auto& riser = e.arrangements[1].heights;
    const auto& two = e.arrangements[2].heights;
    const bool can = !two.riser_mm || *two.riser_mm >= 0;
    CHECK(riser.oven_base_mm == (can ? two : one).oven_base_mm);
    CHECK(riser.counter_mm == (can ? two : one).counter_mm);
    if (riser.riser_mm) CHECK(*riser.riser_mm >= 0);
    (can ? as_two : as_one) += 1;
  }
  CHECK(as_two > 0);
  CHECK(as_one > 0);
}

TEST_CASE("an existing cabinet is answered by a block or a platform", "[evaluate]") {
  config::Config c = two_adults();
  c.station.existing_counter_mm = 914;
  const auto low = evaluate::evaluate(c);
  REQUIRE(low.existing);
  CHECK(low.existing->block_mm == *low.recommended.heights.oven_base_mm - 914);
  CHECK(low.existing->platform_mm == 0);
  c.station.existing_counter_mm = 1100;
  const auto high = evaluate::evaluate(c);
  CHECK(high.existing->block_mm < 0);
  CHECK(high.existing->platform_mm == -high.existing->block_mm);
}

TEST_CASE("given heights are used and the recommendation stays", "[evaluate]") {
  config::Config c = two_adults();
  const auto free = evaluate::evaluate(c);
  c.station.oven_base_height_mm = 1200;
  const auto e = evaluate::evaluate(c);
  CHECK(*e.used.oven_base_mm == 1200);
  CHECK(*e.used.oven_floor_mm == 1200 + c.oven.floor_above_base_mm);
  CHECK(*e.recommended.heights.oven_base_mm == *free.recommended.heights.oven_base_mm);
  CHECK(e.cooks[1].step_mm.has_value());
  CHECK(found_for(0, e, "height.given")->verdict == Verdict::Warn);
  // So does the watching distance: it belongs to the heights recommended, not to those in use.
  CHECK(e.recommended.standoff_mm == free.recommended.standoff_mm);
  CHECK(*e.cooks[1].full_view.standoff_mm < free.recommended.standoff_mm);

  c = two_adults();
  c.station.arrangement = config::Arrangement::OneLevel;
  c.station.counter_height_mm = 1000;
  const auto one = evaluate::evaluate(c);
  CHECK(*one.used.oven_base_mm == 1000);
  CHECK(*one.used.riser_mm == 0);
}

TEST_CASE("the feet line goes by the oven cook whose toes are farthest forward", "[evaluate]") {
  config::Config c = two_adults();
  c.view.standoff_mm = 600;
  const auto e = evaluate::evaluate(c);
  const double toes_mm = e.cooks[0].body.toes_mm;
  REQUIRE(toes_mm > e.cooks[1].body.toes_mm);
  CHECK(e.feet_line_mm == 600 - c.station.oven_setback_mm - toes_mm);
  CHECK(e.recommended.feet_line_mm ==
        e.recommended.standoff_mm - c.station.oven_setback_mm - toes_mm);
  c.cooks[0].at = config::At::Prep;
  const auto short_only = evaluate::evaluate(c);
  CHECK(short_only.feet_line_mm ==
        600 - c.station.oven_setback_mm - short_only.cooks[1].body.toes_mm);
}

TEST_CASE("bands hold the answer and nobody's hands pass their ceiling in them",
          "[evaluate][law]") {
  const auto e = evaluate::evaluate(two_adults());
  REQUIRE(e.recommended.oven_band);
  CHECK(e.recommended.oven_band->low_mm <= *e.recommended.heights.oven_base_mm);
  CHECK(e.recommended.oven_band->high_mm >= *e.recommended.heights.oven_base_mm);
  const double lowest_mm = std::min(e.cooks[0].ceiling_floor_mm, e.cooks[1].ceiling_floor_mm);
  CHECK(e.recommended.oven_band->high_mm + 150 <= lowest_mm + 0.05);
}

TEST_CASE("an elbow off by its error moves the answer by as much when hands bind", "[evaluate]") {
  const auto e = evaluate::evaluate(two_adults());
  double elbow_moves = 0, tall_elbow_moves = 1e9;
  for (const auto& s : e.sensitivity) {
    if (s.measure != evaluate::Measure::Elbow) continue;
    (s.cook == 1 ? elbow_moves : tall_elbow_moves) = s.oven_moves_mm;
  }
  CHECK_THAT(elbow_moves, WithinAbs(e.cooks[1].body.elbow.sd_mm, 1.5));
  CHECK(std::abs(tall_elbow_moves) < 2);
  SECTION("and a measured one has no error left to tell") {
    config::Config c = two_adults();
    c.cooks[1].elbow_height_mm = 1030;
    for (const auto& s : evaluate::evaluate(c).sensitivity) {
      CHECK_FALSE((s.cook == 1 && s.measure == evaluate::Measure::Elbow));
    }
  }
}

TEST_CASE("the dragged path gives the numbers of the full one", "[evaluate]") {
  config::Config c = two_adults();
  const auto full = evaluate::evaluate(c), fit = evaluate::evaluate_fit(c);
  CHECK(full.recommended.heights.oven_base_mm == fit.recommended.heights.oven_base_mm);
  CHECK(full.findings.size() == fit.findings.size());
  CHECK(fit.sensitivity.empty());
  CHECK_FALSE(fit.fits_adults_share);
  REQUIRE(full.fits_adults_share);
  // Half of the adults' elbows are above the ceiling that the shorter cook sets; most who are tall
  // enough see all from two steps back.
  CHECK(*full.fits_adults_share > 0.3);
  CHECK(*full.fits_adults_share < 0.8);
}

TEST_CASE("findings come worst first, unknown as loud as failing", "[evaluate]") {
  const auto e = evaluate::evaluate(two_adults());
  const auto order = [](Verdict v) {
    return v == Verdict::Fail ? 0 : v == Verdict::Unknown ? 1 : v == Verdict::Warn ? 2 : 3;
  };
  CHECK(std::is_sorted(
      e.findings.begin(), e.findings.end(),
      [&](const Finding& a, const Finding& b) { return order(a.verdict) < order(b.verdict); }));
}

TEST_CASE("an oven floor above the eye is no answer", "[evaluate]") {
  config::Config c = two_adults();
  c.station.oven_base_height_mm = 1500;
  const auto e = evaluate::evaluate(c);
  const Finding* f = found_for(1, e, "sight.floor_above_eye");
  REQUIRE(f);
  CHECK(f->verdict == Verdict::Fail);
  CHECK(e.cooks[1].watching.pizza_share == 0);
  CHECK_FALSE(e.cooks[1].full_view.standoff_mm);
}
