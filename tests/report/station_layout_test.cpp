#include "engine/report/station_layout.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::WithinAbs;
using hs::test::kPresets;
using hs::test::preset;

namespace {

constexpr double kCopied_mm = 1e-9;  // sums of a few doubles

struct Made {
  config::Config config;
  evaluate::Evaluation e;
  StationLayout layout;
};

Made made(config::Config config) {
  Made m{std::move(config), {}, {}};
  m.e = evaluate::evaluate_fit(m.config);
  m.layout = station_layout(m.config, m.e);
  return m;
}

bool sound(const Block& b) {
  return b.left_mm <= b.right_mm && b.near_mm <= b.far_mm && b.bottom_mm <= b.top_mm;
}

// Level distance from a point to a box.
double away(const Block& box, double x_mm, double y_mm) {
  return std::hypot(std::max({box.left_mm - x_mm, x_mm - box.right_mm, 0.0}),
                    std::max({box.near_mm - y_mm, y_mm - box.far_mm, 0.0}));
}

}  // namespace

TEST_CASE("every preset's station has sound boxes at the heights in use", "[report][layout]") {
  for (const char* name : kPresets) {
    INFO(name);
    const Made m = made(preset(name));
    const StationLayout& s = m.layout;
    REQUIRE(s.oven_body.has_value() == m.e.used.oven_base_mm.has_value());
    REQUIRE(s.dough_counter.has_value() == m.e.used.counter_mm.has_value());
    for (const auto& part : {s.oven_stand, s.riser, s.dough_counter, s.oven_body, s.brow}) {
      if (part) CHECK(sound(*part));
    }
    for (const ClearZone& zone : s.clear) CHECK(sound(zone.box));
    if (s.dough_counter) {
      CHECK_THAT(s.dough_counter->top_mm, WithinAbs(*m.e.used.counter_mm, kCopied_mm));
      CHECK(s.dough_counter->width_mm() >= m.config.station.prep_width_mm - kCopied_mm);
      CHECK_THAT(s.dough_counter->depth_mm(),
                 WithinAbs(m.config.station.prep_depth_mm, kCopied_mm));
    }
    if (!s.oven_body) continue;
    CHECK_THAT(s.oven_body->bottom_mm, WithinAbs(*m.e.used.oven_base_mm, kCopied_mm));
    CHECK_THAT(s.floor_mm, WithinAbs(*m.e.used.oven_floor_mm, kCopied_mm));
    // What the oven stands on reaches up to it.
    const double under = s.riser ? s.riser->top_mm : s.oven_stand->top_mm;
    CHECK_THAT(under, WithinAbs(s.oven_body->bottom_mm, 1));
    // The stand and the dough counter do not share room.
    if (s.dough_counter) {
      CHECK((s.dough_counter->left_mm >= s.oven_stand->right_mm - kCopied_mm ||
             s.dough_counter->right_mm <= s.oven_stand->left_mm + kCopied_mm));
    }
  }
}

TEST_CASE("the mouth's outline is as wide and high as the mouth", "[report][layout]") {
  for (const config::MouthShape shape :
       {config::MouthShape::Rectangle, config::MouthShape::Arch, config::MouthShape::HalfRound}) {
    config::Config config;
    config.oven.mouth_shape = shape;
    const Made m = made(config);
    double left = 0, right = 0, top = 0;
    for (const Spot& p : m.layout.inner_mouth) {
      left = std::min(left, p.x_mm);
      right = std::max(right, p.x_mm);
      top = std::max(top, p.y_mm);
      // On or inside the outline that the sight lines go by.
      const double z = std::min(p.y_mm - m.layout.floor_mm, m.e.geometry.inner.height_mm);
      CHECK(std::abs(p.x_mm) <= m.e.geometry.inner.half_width_at(z) + 1e-3);
    }
    CHECK_THAT(right - left, WithinAbs(config.oven.mouth_width_mm, kCopied_mm));
    CHECK_THAT(top - m.layout.floor_mm, WithinAbs(config.oven.mouth_height_mm, kCopied_mm));
  }
}

TEST_CASE("an unknown free room is drawn with its own depth and says that it is unknown",
          "[report][layout]") {
  config::Config config;
  config.oven.listed_clearance.side_mm = 300;
  config.site.local_clearance.side_mm = 450;
  const Made m = made(config);
  REQUIRE(m.layout.clear.size() == 6);
  const ClearZone& left = m.layout.clear[0];
  CHECK(left.known());
  CHECK(left.need.from == clearance::From::Local);  // the larger holds
  CHECK_THAT(left.box.width_mm(), WithinAbs(450, kCopied_mm));
  CHECK_THAT(left.box.right_mm, WithinAbs(-config.oven.width_mm / 2, kCopied_mm));
  const ClearZone& back = m.layout.clear[2];
  CHECK_FALSE(back.known());
  CHECK_THAT(back.box.depth_mm(), WithinAbs(kUnknownRoom_mm, kCopied_mm));
}

TEST_CASE("a young child stands outside the child-free zone", "[report][layout]") {
  for (const char* name : {"demo", "stations/prep_only"}) {
    INFO(name);
    const Made m = made(preset(name));
    std::size_t children = 0;
    for (std::size_t i = 0; i < m.e.cooks.size(); ++i) {
      if (!m.e.cooks[i].young_child) continue;
      ++children;
      const CookPlace& place = m.layout.cooks[i];
      REQUIRE(place.table);
      if (!m.layout.oven_body) continue;
      CHECK(away(*m.layout.oven_body, place.table->x_mm, place.table->y_mm) >=
            clearance::kChildFree_mm);
      if (place.prep) {
        CHECK(away(*m.layout.oven_body, place.prep->x_mm, place.prep->y_mm) >=
              clearance::kChildFree_mm);
      }
    }
    CHECK(children == 1);
  }
}

TEST_CASE("the child-free zone is three feet round the oven's body, corners and all",
          "[report][layout]") {
  // NFPA and US Fire Administration, outdoor cooking safety tips, second hand: 3 ft.
  const Made m = made(config::Config{});
  REQUIRE(m.layout.child_free.size() > 8);
  for (const Spot& p : m.layout.child_free) {
    CHECK_THAT(away(*m.layout.oven_body, p.x_mm, p.y_mm), WithinAbs(3 * 304.8, 0.5));
  }
}

TEST_CASE("standing places do not overlap, whoever is at the oven", "[report][layout]") {
  for (const char* name : kPresets) {
    const Made m = made(preset(name));
    for (std::size_t person = 0; person < m.e.cooks.size(); ++person) {
      for (std::size_t i = 0; i < m.e.cooks.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
          INFO(name << " " << person << " " << i << " " << k);
          const Stand& a = stand_of(m.layout, i, person);
          const Stand& b = stand_of(m.layout, k, person);
          CHECK(std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) >= 400);  // a body's breadth
        }
      }
    }
  }
}

TEST_CASE("every zone that is drawn is the evaluation's own", "[report][layout]") {
  for (const char* name : kPresets) {
    INFO(name);
    const Made m = made(preset(name));
    const evaluate::Surroundings& around = m.e.surroundings;
    REQUIRE(m.layout.clear.size() == around.hot.size());
    for (std::size_t i = 0; i < around.hot.size(); ++i) {
      const ClearZone& drawn = m.layout.clear[i];
      CHECK(drawn.hot == around.hot[i].hot);
      CHECK(drawn.known() == around.hot[i].box.has_value());
      if (!around.hot[i].box) continue;
      CHECK(drawn.box.left_mm == around.hot[i].box->left_mm);
      CHECK(drawn.box.near_mm == around.hot[i].box->near_mm);
      CHECK(drawn.box.top_mm == around.hot[i].box->top_mm);
    }
    CHECK(m.layout.child_free.size() == around.child_free.size());
    REQUIRE(m.layout.room.size() == around.room.size());
    for (std::size_t i = 0; i < around.room.size(); ++i) {
      const RoomZone& drawn = m.layout.room[i];
      CHECK(drawn.rule == around.room[i].rule);
      CHECK(drawn.required_mm == around.room[i].required_mm);
      REQUIRE(drawn.outline.size() == around.room[i].outline.size());
      CHECK(drawn.outline.back().x_mm == around.room[i].outline.back().x_mm);
    }
  }
}

TEST_CASE("flue and grill stand where the evaluation has them", "[report][layout]") {
  const Made m = made(preset("stations/crowded_porch"));
  REQUIRE(m.layout.grill);
  const double gap = m.config.site.grill.at == config::GrillAt::Right
                         ? m.layout.grill->left_mm - m.layout.oven_body->right_mm
                         : m.layout.oven_body->left_mm - m.layout.grill->right_mm;
  CHECK_THAT(gap, WithinAbs(*m.config.site.grill.gap_mm, kCopied_mm));
}

TEST_CASE("a cover's front edge is where it was given, and says so where it is not",
          "[report][layout]") {
  config::Config config;
  config.site.cover_height_mm = 2400;
  CHECK_FALSE(made(config).layout.cover->front_given);
  for (const double out_mm : {600.0, 0.0, -300.0}) {
    config.site.cover.out_mm = out_mm;
    const Made m = made(config);
    CHECK(m.layout.cover->front_given);
    CHECK_THAT(m.layout.cover->roof.near_mm, WithinAbs(m.layout.front_mm - out_mm, kCopied_mm));
    CHECK(sound(m.layout.cover->roof));
  }
}

TEST_CASE("the feet line keeps everyone's eye at the watching distance or nearer",
          "[report][layout]") {
  const Made m = made(preset("stations/four_cooks"));
  REQUIRE(m.layout.feet_line_y_mm);
  for (const evaluate::CookResult& cook : m.e.cooks) {
    if (!cook.at_oven) continue;
    CHECK(*m.layout.feet_line_y_mm - cook.body.toes_mm >= -m.config.view.standoff_mm - kCopied_mm);
  }
}
