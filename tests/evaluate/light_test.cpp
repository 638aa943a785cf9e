#include <algorithm>
#include <cmath>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/lighting.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

config::Config with_lamp() {
  config::Config c;
  c.light.mount = config::Mount::Right;
  return c;
}

config::Config with_head(double across_mm, double ahead_mm, double up_mm) {
  config::Config c = with_lamp();
  c.light.head = {across_mm, ahead_mm, up_mm};
  return c;
}

}  // namespace

TEST_CASE("without a lamp nobody knows what lights the pizza", "[evaluate][light]") {
  const Evaluation e = evaluate::evaluate(config::Config{});
  CHECK(verdict(e, "light.pizza") == Verdict::Unknown);
  CHECK(found(e, "light.neck") == nullptr);
  CHECK(verdict(e, "light.prep") == Verdict::Unknown);
  CHECK(verdict(e, "light.landing") == Verdict::Unknown);
}

TEST_CASE("the best place is cool, out of the way and within the neck", "[evaluate][light]") {
  const config::Config c = with_lamp();
  const Evaluation e = evaluate::evaluate(c);
  REQUIRE(e.light.lamp.has_value());
  REQUIRE(e.light.lamp->head.has_value());
  const Vec head = *e.light.lamp->head;
  CHECK(e.light.lamp->neck_needed_mm <= c.light.neck_mm);
  CHECK(e.light.lamp->heat_kw_m2 <= evaluate::kLampHeat_kw_m2);
  CHECK_FALSE(heat::in_hot_zone(e.mouth, head));
  CHECK(e.light.lamp->light.lit_share >= light::kLitShare);
  CHECK(*e.light.lamp->search.shortest_neck_mm <= e.light.lamp->neck_needed_mm);
  CHECK(verdict(e, "light.neck") == Verdict::Ok);
  // Left is the mirror of right for a symmetrical station.
  config::Config left = c;
  left.light.mount = config::Mount::Left;
  const Evaluation mirrored = evaluate::evaluate(left);
  CHECK(mirrored.light.lamp->light.lux == Catch::Approx(e.light.lamp->light.lux).epsilon(1e-9));
  CHECK(mirrored.light.lamp->head->x == -head.x);
  // A head given at the place found is as good, and needs no search.
  const Evaluation given = evaluate::evaluate_fit(with_head(head.x, -head.y, head.z));
  CHECK(verdict(given, "light.head") == Verdict::Ok);
  CHECK(given.light.lamp->light.lux == e.light.lamp->light.lux);
}

TEST_CASE("light on the pizza is held against work with food", "[evaluate][light][source]") {
  // FDA Food Code 6-303.11(C): 540 lx; 300 lx on a home worktop (reference/ergonomics.md 5). Lux go
  // with the lumens, so the limits are met to a lumen.
  config::Config c = with_lamp();
  const double per_lumen = evaluate::evaluate(c).light.lamp->light.lux / c.light.lumens;
  const auto at = [&](double lux, int off) {
    c.light.lumens = std::ceil(lux / per_lumen) + off;
    return verdict(evaluate::evaluate(c), "light.pizza");
  };
  CHECK(at(540, 0) == Verdict::Ok);
  CHECK(at(540, -1) == Verdict::Warn);
  CHECK(at(300, 0) == Verdict::Warn);
  CHECK(at(300, -1) == Verdict::Fail);
}

TEST_CASE("a neck too short for every place fails and says what it needs", "[evaluate][light]") {
  config::Config c = with_lamp();
  c.light.neck_mm = 100;
  const Evaluation e = evaluate::evaluate(c);
  CHECK_FALSE(e.light.lamp->head.has_value());
  REQUIRE(e.light.lamp->search.shortest_neck_mm.has_value());
  CHECK(verdict(e, "light.neck") == Verdict::Fail);
  CHECK(found(e, "light.neck")->measured == e.light.lamp->search.shortest_neck_mm);
  // With that much neck it works.
  c.light.neck_mm = *e.light.lamp->search.shortest_neck_mm;
  CHECK(evaluate::evaluate(c).light.lamp->search.places >= 1);
  c.light.neck_mm -= 0.1;
  CHECK(evaluate::evaluate(c).light.lamp->search.places == 0);
}

TEST_CASE("a head in a bad place says why", "[evaluate][light]") {
  const auto why = [](double across_mm, double ahead_mm, double up_mm) {
    const Evaluation e = evaluate::evaluate_fit(with_head(across_mm, ahead_mm, up_mm));
    const Finding* finding = found(e, "light.head");
    REQUIRE(finding != nullptr);
    CHECK(finding->verdict == Verdict::Fail);
    return std::string(finding->where);
  };
  // Mouth 430 x 130: the zone goes from 65 mm up, to 450 mm before it and 365 to either side.
  CHECK(why(0, 300, 300) == "in the hot zone above and before the mouth");
  CHECK(why(364, 449, 66) == "in the hot zone above and before the mouth");
  CHECK(why(0, 600, 60) == "in the peel's way");
  CHECK(why(400, 20, 400) == "where the mouth's edge shades the pizza");
  CHECK(why(230, 150, 40) == "where more than the midday sun's heat reaches it");
  // On the middle line between eye and pizza.
  const Evaluation e = evaluate::evaluate_fit(config::Config{});
  const sight::Eye& eye = e.cooks[0].watching.eye;
  const double up_mm = eye.height_mm * 0.85;
  CHECK(why(0, eye.distance_mm - 0.15 * (eye.distance_mm + 215), up_mm).find("eye") !=
        std::string::npos);
}

TEST_CASE("a given head may be farther than the neck goes", "[evaluate][light]") {
  config::Config c = with_head(400, 500, 150);
  c.light.neck_mm = 1200;
  CHECK(verdict(evaluate::evaluate_fit(c), "light.neck") == Verdict::Ok);
  c.light.neck_mm = 300;
  CHECK(verdict(evaluate::evaluate_fit(c), "light.neck") == Verdict::Fail);
}

TEST_CASE("a lamp over the dough counter lights it and the landing", "[evaluate][light][source]") {
  config::Config c;
  c.light.general_up_mm = 1000;
  const auto at = [&](double lumens) {
    c.light.general_lumens = lumens;
    return evaluate::evaluate_fit(c);
  };
  // Even cone of 120 degrees: lumens / pi candela; 900 mm of counter, so 450 mm aside at its end
  // and 640.5 mm in the middle of the landing: I h / d^3.
  const double candela = 1000 / 3.14159265358979;
  const auto lux = [&](double aside_m) { return candela / std::pow(1 + aside_m * aside_m, 1.5); };
  const Evaluation e = at(1000);
  CHECK(std::abs(*e.light.prep_lux - lux(0.45)) < 1e-6);
  CHECK(std::abs(*e.light.landing_lux - lux(0.6405)) < 1e-6);
  CHECK(verdict(e, "light.prep") == Verdict::Fail);
  CHECK(verdict(at(1600), "light.prep") == Verdict::Warn);
  CHECK(verdict(at(2400), "light.prep") == Verdict::Ok);
  CHECK(verdict(at(1500), "light.landing") == Verdict::Fail);
  CHECK(verdict(at(2400), "light.landing") == Verdict::Warn);
  CHECK(verdict(at(3000), "light.landing") == Verdict::Ok);
}

TEST_CASE("a lamp is never put where heat or an eye forbids it", "[evaluate][light][law]") {
  test::Random random(81);
  int lamps = 0;
  for (int i = 0; i < test::sweep(250); ++i) {
    config::Config c = test::random_config(random);
    c.light.mount = random.one_in(2) ? config::Mount::Left : config::Mount::Right;
    c.light.neck_mm = random.between(400, 1500);
    c.light.head = {};
    c.oven.floor_temp_c = random.between(300, 600);
    if (!evaluate::check(c).empty()) continue;
    const Evaluation e = evaluate::evaluate(c);
    if (!e.light.lamp || !e.light.lamp->head) continue;
    ++lamps;
    const Vec head = *e.light.lamp->head;
    CHECK_FALSE(heat::in_hot_zone(e.mouth, head));
    CHECK(heat::irradiance_facing_kw_m2(e.mouth, head) <= evaluate::kLampHeat_kw_m2);
    for (const auto& cook : e.cooks) {
      if (!cook.at_oven) continue;
      // Straight lines from the eye to pizza and head: the head is not on the one to the middle.
      const Vec eye{cook.watching.eye.x_mm, -cook.watching.eye.distance_mm,
                    cook.watching.eye.height_mm};
      const Vec along = Vec{0, e.pizza.y_mm, 0} - eye;
      const double part = std::clamp(dot(head - eye, along) / dot(along, along), 0.0, 1.0);
      if (eye.z > 0) CHECK(length(head - (eye + part * along)) >= light::kHead_mm / 2);
    }
  }
  CHECK(lamps > 0);
}
