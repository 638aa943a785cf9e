// What is built on ground that was read: the cut boards, set on that ground, put the counters at
// the heights in use above the cooks' feet.

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/evaluate/set_out.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using Catch::Matchers::WithinAbs;
using evaluate::evaluate_all;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

// Uneven ground: a slope, a hump and the joints between stones, to 0.1 mm.
struct Yard {
  double across = 0, back = 0, hump_mm = 0, hump_x_mm = 0, joints_mm = 0;

  double at(double x_mm, double y_mm) const {
    const double dx = (x_mm - hump_x_mm) / 400, dy = y_mm / 500;
    const double stone = std::fmod(std::abs(x_mm), 300) / 300;
    return across * x_mm + back * y_mm + hump_mm * std::exp(-dx * dx - dy * dy) + joints_mm * stone;
  }
};

config::Config surveyed(test::Random& random, const Yard& yard) {
  config::Config c;
  c.station.arrangement = static_cast<config::Arrangement>(random.below(3));
  c.station.prep_width_mm = 800 + 10 * random.below(180);
  c.station.prep_depth_mm = 500 + 10 * random.below(40);
  c.cooks[0].stature_mm = 1550 + 5 * random.below(80);
  if (random.one_in(3)) c.station.counter_height_mm = 850 + 0.1 * random.below(1500);
  c.survey.board_mm = 184;
  c.survey.least_mm = 50;
  const Evaluation level = evaluate::evaluate_station(c);
  c.survey.points = evaluate::usual_points(c, level.used);
  const double line_mm = 1500 + random.below(200);
  for (config::SurveyPoint& point : c.survey.points) {
    point.reading_mm = std::round((line_mm - yard.at(point.x_mm, point.y_mm)) * 10) / 10;
  }
  return c;
}

}  // namespace

TEST_CASE("on any ground that was read, what is built lands at the heights in use",
          "[frame][survey][law]") {
  test::Random random(6006);
  int built = 0, refused = 0;
  for (int i = 0; i < test::sweep(600); ++i) {
    Yard yard;
    yard.across = (random.below(41) - 20) * 0.001;
    yard.back = (random.below(41) - 20) * 0.001;
    if (random.one_in(6)) yard.across *= 5;  // a hillside
    yard.hump_mm = random.below(16) - 4;
    yard.hump_x_mm = random.below(2500);
    yard.joints_mm = random.below(5);
    const config::Config c = surveyed(random, yard);
    CAPTURE(i);
    REQUIRE(evaluate::check(c).empty());
    const Evaluation e = evaluate_all(c);
    REQUIRE(e.survey);
    REQUIRE(e.survey->feet == 3);
    const frame::Frame& frame = e.build->frame;
    if (!e.survey->base || !e.survey->base->fits || !frame.made()) {
      // Refused in words: the ground is too uneven for the board, or too little is left for a box.
      const Finding* base = found(e, "survey.base");
      const Finding* board = found(e, "survey.board");
      REQUIRE((!frame.refusals.empty() || (base && base->verdict == Verdict::Fail) ||
               (board && board->verdict == Verdict::Fail)));
      ++refused;
      continue;
    }
    ++built;
    const survey::Base& base = *e.survey->base;
    // The boxes stand on what is cut.
    CHECK_THAT(frame.base_mm, WithinAbs(base.top_mm, 1e-6));
    CHECK(verdict(e, "frame.base") == Verdict::Ok);
    // Each board, cut by its ordinates and set on the ground that was read, has its top there.
    for (std::size_t panel = 0; panel < base.cuts.size(); ++panel) {
      if (!base.cuts[panel]) continue;
      for (const survey::Ordinate& o : base.cuts[panel]->ordinates) {
        const double top_mm = e.survey->grounds[panel].at(o.along_mm) + o.height_mm;
        CHECK_THAT(top_mm, WithinAbs(base.top_mm, 0.5));
        CHECK_THAT(top_mm, WithinAbs(base.top_mm, 0.0501));
      }
    }
    // So the counters are where they should be above the feet.
    for (const frame::Run& run : frame.runs) {
      const double wanted_mm = run.oven ? run.counter.top_mm : *e.used.counter_mm;
      CHECK_THAT(run.top_mm, WithinAbs(wanted_mm, 0.1));
      for (const frame::Piece& piece : frame.pieces) {
        if (piece.kind == frame::Kind::MetalTop && piece.oven == run.oven) {
          CHECK_THAT(piece.place.top_mm, WithinAbs(wanted_mm, 0.1));
        }
        // And nothing that carries is in the ground.
        if (piece.kind == frame::Kind::Carrier) {
          CHECK(piece.place.bottom_mm >= base.high_mm);
        }
      }
    }
    if (e.used.counter_mm) {
      const double slack_mm =
          std::abs(*e.used.counter_mm - e.recommended.heights.counter_mm.value_or(0));
      if (!c.station.counter_height_mm) CHECK(slack_mm <= 0.1);
    }
  }
  CHECK(built > test::sweep(600) / 3);
  CHECK(refused > 0);
}

TEST_CASE("a box that is given, or stands, is not moved by the ground: it is said",
          "[frame][survey]") {
  test::Random random(1);
  config::Config c = surveyed(random, {0.004, 0.003, 5, 600, 2});
  REQUIRE(verdict(evaluate_all(c), "frame.base") == Verdict::Ok);
  c.frame.box_mm = 700;
  const Evaluation e = evaluate_all(c);
  if (e.build->frame.made()) {
    CHECK(verdict(e, "frame.base") == Verdict::Warn);
  } else {
    CHECK_FALSE(e.build->frame.refusals.empty());
  }
}

TEST_CASE("the usual points are enough to cut every panel that shows", "[survey]") {
  for (const char* name : test::kPresets) {
    CAPTURE(name);
    config::Config c = test::preset(name);
    const Evaluation before = evaluate::evaluate_station(c);
    c.survey = {};
    c.survey.points = evaluate::usual_points(c, before.used);
    CHECK(c.survey.points.size() <= config::kMaxPoints);
    if (c.survey.points.empty()) continue;
    // Nothing is read yet.
    const Evaluation unread = evaluate::evaluate(c);
    CHECK_FALSE(unread.survey->base);
    for (config::SurveyPoint& point : c.survey.points) point.reading_mm = 1500;
    const Evaluation e = evaluate::evaluate(c);
    REQUIRE(e.survey->base);
    for (std::size_t i = 0; i < e.survey->panels.size(); ++i) {
      if (evaluate::shows(e.survey->places[i])) CHECK(e.survey->base->cuts[i].has_value());
    }
    CHECK(verdict(e, "survey.readings") == Verdict::Ok);
  }
}

TEST_CASE("a base that is built has its boards cut to where it stands", "[frame][survey]") {
  config::Config c = test::preset("stations/garden_shelter");
  const Evaluation drawn = evaluate_all(c);
  REQUIRE(drawn.survey->base.has_value());
  REQUIRE(drawn.survey->base->fits);
  CHECK_FALSE(drawn.survey->built);
  const double top_mm = drawn.survey->base->top_mm;
  c.frame.as_built = "base=" + std::to_string(top_mm + 4);
  const Evaluation e = evaluate_all(c);
  REQUIRE(e.survey->base.has_value());
  CHECK(e.survey->built);
  CHECK(e.survey->digest != drawn.survey->digest);
  CHECK_THAT(e.survey->base->top_mm, WithinAbs(top_mm + 4, 1e-6));
  CHECK_THAT(e.build->frame.base_mm, WithinAbs(top_mm + 4, 1e-6));
  CHECK(verdict(e, "frame.base") == Verdict::Ok);
  for (std::size_t i = 0; i < e.survey->panels.size(); ++i) {
    const auto& cut = e.survey->base->cuts[i];
    if (!cut) continue;
    const survey::Cut& before = *drawn.survey->base->cuts[i];
    CHECK_THAT(cut->rip_mm, WithinAbs(before.rip_mm + 4, 1e-6));
    CHECK_THAT(cut->least_mm, WithinAbs(before.least_mm + 4, 1e-6));
    CHECK_THAT(cut->compass_unripped_mm, WithinAbs(before.compass_unripped_mm - 4, 1e-6));
  }
  // A slip of the tape moves neither.
  c.frame.as_built = "base=" + std::to_string(top_mm + 40);
  const Evaluation slip = evaluate_all(c);
  CHECK_FALSE(slip.survey->built);
  CHECK(slip.survey->base->top_mm == top_mm);
  CHECK(verdict(slip, "frame.as_built") == Verdict::Fail);
}
