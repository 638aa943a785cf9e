#include "engine/report/lamp_drawing.h"

#include <algorithm>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/lamp_map.h"
#include "engine/report/lamp_words.h"

using namespace hs;
using namespace hs::report;

namespace {

struct Drawn {
  config::Config config;
  evaluate::Evaluation e;
  Drawing drawing;
};
Drawn drawn(config::Config c) {
  Drawn out{c, evaluate::evaluate(c), {}};
  const double across = out.e.light.lamp && out.e.light.lamp->head ? out.e.light.lamp->head->x : 0;
  out.drawing = lamp_drawing(c, out.e, evaluate::lamp_map(c, out.e, across, 25), {});
  return out;
}

config::Config with_lamp() {
  config::Config c;
  c.light.mount = config::Mount::Right;
  return c;
}

Box room_of(const Drawing& d, Shape shape, Role role) {
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const Mark& mark : d.marks()) {
    if (mark.shape != shape || mark.role != role) continue;
    for (const Spot& p : d.points(mark)) {
      box = {std::min(box.left_mm, p.x_mm), std::min(box.bottom_mm, p.y_mm),
             std::max(box.right_mm, p.x_mm), std::max(box.top_mm, p.y_mm)};
    }
  }
  return box;
}

bool has(const Drawing& d, Shape shape, Role role) {
  return std::any_of(d.marks().begin(), d.marks().end(),
                     [&](const Mark& mark) { return mark.shape == shape && mark.role == role; });
}

}  // namespace

TEST_CASE("the lamp's picture hatches good places and forbidden ones, each its own way",
          "[report][lamp]") {
  config::Config c = with_lamp();
  c.light.head = {250, 500, 150};
  const Drawn d = drawn(c);
  const double floor = *d.e.used.oven_floor_mm;
  REQUIRE(has(d.drawing, Shape::Hatch, Role::GoodBand));
  REQUIRE(has(d.drawing, Shape::Hatch, Role::HeatLimit));
  const Box good = room_of(d.drawing, Shape::Hatch, Role::GoodBand);
  CHECK(good.right_mm <= 0);
  CHECK(good.bottom_mm >= floor);
  // The zone in the engine's own numbers, to the mouth's plane.
  const Box hot = room_of(d.drawing, Shape::Hatch, Role::HeatLimit);
  CHECK(hot.left_mm == -heat::kHotZoneReach_mm);
  CHECK(hot.right_mm == 0);
  CHECK(hot.bottom_mm == Catch::Approx(floor + d.e.mouth.height_mm / 2));
  std::set<std::pair<double, bool>> hatches;
  for (const Role role : {Role::GoodBand, Role::HeatLimit, Role::Peel}) {
    hatches.insert({hatch_style(role).angle_deg, hatch_style(role).crossed});
  }
  CHECK(hatches.size() == 3);
  // Nothing but labels outside the frame that the screen is scaled by.
  const Box frame = lamp_frame(d.config, d.e);
  CHECK(hot.top_mm <= frame.top_mm);
  CHECK(good.left_mm >= frame.left_mm);
}

TEST_CASE("beside the mouth there is neither hot zone nor peel", "[report][lamp]") {
  config::Config c = with_lamp();
  c.light.head = {600, 500, 150};
  const Drawn d = drawn(c);
  CHECK_FALSE(has(d.drawing, Shape::Hatch, Role::HeatLimit));
  CHECK_FALSE(has(d.drawing, Shape::Hatch, Role::Peel));
  c.light.head = {0, 500, 150};
  CHECK(has(drawn(c).drawing, Shape::Hatch, Role::Peel));
}

TEST_CASE("without a lamp the forbidden places are drawn and no good ones", "[report][lamp]") {
  const Drawn d = drawn(config::Config{});
  CHECK(has(d.drawing, Shape::Hatch, Role::HeatLimit));
  CHECK_FALSE(has(d.drawing, Shape::Hatch, Role::GoodBand));
  config::Config nobody;
  nobody.cooks[0].at = config::At::Prep;
  CHECK(drawn(nobody).drawing.marks().empty());
}

TEST_CASE("a lamp's words tell each fault and its light", "[report][lamp]") {
  const config::Config c = with_lamp();
  const Drawn best = drawn(c);
  const evaluate::Lamp& lamp = *best.e.light.lamp;
  for (const LampWord& word : lamp_words(lamp.checks)) CHECK(word.verdict == Verdict::Ok);
  CHECK(lamp_words(lamp.checks).size() == 5);
  CHECK(lamp_light(lamp).ends_with("lx on the pizza; 540 lx is asked"));
  CHECK(lamp_neck(c, lamp, Units::Millimetre).find(" of 800 mm; ") != std::string::npos);
  evaluate::LampChecks bad;
  bad.in_hot_zone = true;
  bad.light.too_near = true;
  const auto words = lamp_words(bad);
  REQUIRE(words.size() == 6);
  CHECK(words[2].word == "heat");
  CHECK(words[2].verdict == Verdict::Fail);
  CHECK(words[4].verdict == Verdict::Fail);  // nor does its neck reach
  // What is said first is the worst, with the rule that its reason opens by.
  config::Config hot = c;
  hot.light.head = {0, 300, 300};
  const evaluate::Evaluation e = evaluate::evaluate(hot);
  const LampSaying saying = lamp_saying(hot, e, Units::Inch);
  CHECK(saying.rule == "light.head");
  CHECK(saying.verdict == Verdict::Fail);
  CHECK(saying.text.find("hot zone") != std::string::npos);
  CHECK(lamp_saying(config::Config{}, evaluate::evaluate(config::Config{}), Units::Inch).rule ==
        "light.pizza");
}
