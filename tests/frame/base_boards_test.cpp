// The boards round the base: each has the profile of its own line, and one height holds for them
// and for what carries, on whatever ground was read.

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/set_out.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using Catch::Matchers::WithinAbs;
using evaluate::evaluate_all;
using evaluate::Evaluation;
using frame::Kind;
using frame::Piece;
using test::found;
using test::verdict;

namespace {

// The usual points of a plain station, the ground at each as `at` says, above the feet.
template <typename At>
config::Config on(config::Config c, At at) {
  c.survey.points = evaluate::usual_points(c, evaluate::evaluate_station(c).used);
  for (config::SurveyPoint& point : c.survey.points) {
    point.reading_mm = 1500 - at(point.x_mm, point.y_mm);
  }
  return c;
}

config::Config plain() {
  config::Config c;
  c.station.arrangement = config::Arrangement::OneLevel;
  c.station.prep_width_mm = 1500;
  return c;
}

void read_at(config::Config& c, double x_mm, double y_mm, double ground_mm) {
  config::SurveyPoint point;
  point.x_mm = x_mm;
  point.y_mm = y_mm;
  point.reading_mm = 1500 - ground_mm;
  point.kind = config::PointKind::Other;
  c.survey.points.push_back(point);
}

bool round_the_base(const Piece& piece) {
  return piece.kind == Kind::BaseFront || piece.kind == Kind::BaseBack ||
         piece.kind == Kind::BaseEnd;
}

const Piece& carrier(const Evaluation& e) {
  const auto& pieces = e.build->frame.pieces;
  return *std::find_if(pieces.begin(), pieces.end(),
                       [](const Piece& piece) { return piece.kind == Kind::Carrier; });
}

}  // namespace

TEST_CASE("every board of the base is as long as its profile, and lies on its line",
          "[frame][survey][law]") {
  test::Random random(77);
  int boards = 0;
  for (int i = 0; i < test::sweep(200); ++i) {
    config::Config c;
    c.station.arrangement = static_cast<config::Arrangement>(random.below(3));
    c.station.prep_width_mm = 800 + 10 * random.below(180);
    c.station.prep_depth_mm = 500 + 10 * random.below(40);
    c = on(c, [](double x_mm, double y_mm) { return 0.002 * x_mm + 0.003 * y_mm; });
    const Evaluation e = evaluate_all(c);
    const frame::Frame& frame = e.build->frame;
    if (!frame.made()) continue;
    const double left_mm = frame::left_mm(frame.places), front_mm = frame.places.front_mm;
    CAPTURE(i);
    for (const Piece& piece : frame.pieces) {
      if (!round_the_base(piece)) continue;
      ++boards;
      const double long_mm = frame::size_of(piece.place, piece.grain);
      const auto same = [&](const survey::PanelLine& line) {
        const double x_mm = (line.from_x_mm + line.to_x_mm) / 2 + left_mm;
        const double y_mm = (line.from_y_mm + line.to_y_mm) / 2 + front_mm;
        return x_mm >= piece.place.left_mm - 1e-6 && x_mm <= piece.place.right_mm + 1e-6 &&
               y_mm >= piece.place.near_mm - 1e-6 && y_mm <= piece.place.far_mm + 1e-6 &&
               std::abs(line.length_mm() - long_mm) < 1e-6;
      };
      CHECK(std::count_if(e.survey->panels.begin(), e.survey->panels.end(), same) == 1);
    }
  }
  CHECK(boards > test::sweep(200) * 3);
}

TEST_CASE("boards that do not reach are not built another way: one base height",
          "[frame][survey]") {
  const Evaluation e = evaluate_all(test::preset("stations/settled_yard"));
  REQUIRE(e.survey->base.has_value());
  REQUIRE_FALSE(e.survey->base->fits);
  CHECK_THAT(e.build->frame.base_mm, WithinAbs(e.survey->base->top_mm, 1e-6));
  // No height of this base suits its boards: that is said once, and no other height is advised.
  CHECK(verdict(e, "survey.board") == Verdict::Fail);
  CHECK(found(e, "survey.base") == nullptr);
  CHECK(found(e, "survey.least") == nullptr);

  config::Config high = on(plain(), [](double, double) { return 0.0; });
  high.survey.base_mm = 200;
  const Evaluation given = evaluate_all(high);
  CHECK(verdict(given, "survey.base") == Verdict::Fail);
  CHECK_THAT(given.build->frame.base_mm, WithinAbs(200, 1e-6));
}

TEST_CASE("a stone between the boards of the base lifts what stands over it", "[frame][survey]") {
  config::Config c = on(plain(), [](double, double) { return 0.0; });
  const Evaluation level = evaluate_all(c);
  CHECK(found(level, "survey.inside") == nullptr);
  read_at(c, 1250, 360, 80);
  read_at(c, 1250, 360, 80);
  const Evaluation e = evaluate_all(c);
  REQUIRE(e.survey->base.has_value());
  CHECK_THAT(e.survey->base->highest_mm, WithinAbs(80, 1e-6));
  CHECK_THAT(e.survey->base->high_mm, WithinAbs(0, 1e-6));
  CHECK(e.survey->base->top_mm >= 130);
  CHECK(verdict(e, "survey.inside") == Verdict::Ok);
  REQUIRE(e.build->frame.made());
  CHECK(carrier(e).place.bottom_mm >= 80 + 3);
  // Where it must stay lower there is no room: said, not built into the stone.
  c.survey.base_mm = 100;
  const Evaluation low = evaluate_all(c);
  CHECK(verdict(low, "survey.inside") == Verdict::Fail);
  CHECK_FALSE(low.build->frame.made());
}

TEST_CASE("ground that lies lower than the feet carries a base like any other", "[frame][survey]") {
  const Evaluation level = evaluate_all(on(plain(), [](double, double) { return 0.0; }));
  const Evaluation low =
      evaluate_all(on(plain(), [](double, double y_mm) { return y_mm < 0 ? 0.0 : -150.0; }));
  REQUIRE(low.build->frame.made());
  CHECK(low.survey->doubts.empty());
  const Piece& board = carrier(low);
  // As much room for shims as on level ground, and the boards reach the ground.
  CHECK_THAT(board.place.bottom_mm + 150, WithinAbs(carrier(level).place.bottom_mm, 1e-6));
  for (const Piece& piece : low.build->frame.pieces) {
    if (round_the_base(piece)) CHECK_THAT(piece.place.bottom_mm, WithinAbs(-150, 1e-6));
  }
  for (const frame::Run& run : low.build->frame.runs) {
    CHECK_THAT(run.top_mm, WithinAbs(run.counter.top_mm, 1e-6));
  }
  CHECK(verdict(low, "frame.packing") == Verdict::Ok);
  // On a fall, what shims alone should not fill is packed.
  const Evaluation steep =
      evaluate_all(on(plain(), [](double, double y_mm) { return -0.05 * std::max(y_mm, 0.0); }));
  REQUIRE(steep.build->frame.made());
  const Finding* packing = found(steep, "frame.packing");
  REQUIRE(packing != nullptr);
  CHECK(packing->verdict == Verdict::Warn);
  CHECK_THAT(*packing->measured,
             WithinAbs(carrier(steep).place.bottom_mm - steep.survey->base->lowest_mm, 1e-6));
}

TEST_CASE("feet that are off alike stand by a step, and one among them that is not is doubtful",
          "[survey]") {
  const auto kerb = [](double x_mm, double y_mm) { return (y_mm < 0 ? 0.0 : 60.0) - 0.01 * x_mm; };
  const Evaluation e = evaluate_all(on(plain(), kerb));
  CHECK(e.survey->doubts.empty());
  REQUIRE(e.survey->plane.has_value());
  CHECK_THAT(e.survey->plane->across, WithinAbs(-0.01, 1e-6));
  CHECK_THAT(e.survey->plane->back, WithinAbs(0, 1e-6));
  config::Config slip = on(plain(), kerb);
  for (config::SurveyPoint& point : slip.survey.points) {
    if (point.kind != config::PointKind::Feet) continue;
    *point.reading_mm += 30;
    break;
  }
  const Evaluation doubted = evaluate_all(slip);
  REQUIRE(doubted.survey->doubts.size() == 1);
  CHECK(doubted.survey->levels.points[doubted.survey->doubts[0]].kind == survey::Kind::Feet);
}
