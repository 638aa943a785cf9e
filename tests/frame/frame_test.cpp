// Laws of what is built: nothing overlaps, every box closes, the counter lands where it should.

#include "engine/frame/frame.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/rules/rules.h"
#include "tests/report/preset.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::frame;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kExact_mm = 1e-6;   // sums of doubles
constexpr double kHeights_mm = 0.1;  // what the counter's height is held to

bool overlap(const Block& a, const Block& b) {
  return std::min(a.right_mm, b.right_mm) - std::max(a.left_mm, b.left_mm) > kExact_mm &&
         std::min(a.far_mm, b.far_mm) - std::max(a.near_mm, b.near_mm) > kExact_mm &&
         std::min(a.top_mm, b.top_mm) - std::max(a.bottom_mm, b.bottom_mm) > kExact_mm;
}

std::string name_of(const Piece& piece) {
  return std::string(kind_name(piece.kind)) + (piece.oven ? " oven " : " dough ") +
         std::to_string(piece.bay) + "/" + std::to_string(piece.nth);
}

// The first pair that fills one place; empty: none does.
std::string overlapping(const Frame& frame) {
  std::vector<std::pair<Block, const Piece*>> all;
  for (const Piece& piece : frame.pieces) {
    for (const Block& block : blocks_of(piece)) all.push_back({block, &piece});
  }
  std::sort(all.begin(), all.end(),
            [](const auto& a, const auto& b) { return a.first.left_mm < b.first.left_mm; });
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      if (all[j].first.left_mm >= all[i].first.right_mm - kExact_mm) break;
      if (overlap(all[i].first, all[j].first)) {
        return name_of(*all[i].second) + " and " + name_of(*all[j].second);
      }
    }
  }
  return {};
}

const Piece* find(const Frame& frame, Kind kind, bool oven, int bay, int nth = 0) {
  for (const Piece& piece : frame.pieces) {
    if (piece.kind == kind && piece.oven == oven && piece.bay == bay && piece.nth == nth) {
      return &piece;
    }
  }
  return nullptr;
}

bool same(double a, double b) { return std::abs(a - b) <= kExact_mm; }

// A box closes where its pieces touch all round: bottom, back and what lies on top reach from side
// to side, the back stands behind them, sides are as high as the box.
bool closes(const Frame& frame, const Run& run, int i) {
  const Bay& bay = run.bays[static_cast<std::size_t>(i)];
  const Piece* left = find(frame, Kind::Side, run.oven, i, 0);
  const Piece* right = find(frame, Kind::Side, run.oven, i, 1);
  const Piece* bottom = find(frame, Kind::Bottom, run.oven, i);
  const Piece* back = find(frame, Kind::Back, run.oven, i);
  const Piece* deck = find(frame, Kind::Deck, run.oven, i);
  const Piece* strips[] = {find(frame, Kind::Stretcher, run.oven, i, 0),
                           find(frame, Kind::Stretcher, run.oven, i, 1)};
  if (!left || !right || !bottom || !back || !(deck || (strips[0] && strips[1]))) return false;
  const Block &l = left->place, &r = right->place, &under = bottom->place, &b = back->place;
  const auto between = [&](const Block& x) {
    return same(x.left_mm, l.right_mm) && same(x.right_mm, r.left_mm);
  };
  bool ok = same(l.left_mm, bay.box.left_mm) && same(r.right_mm, bay.box.right_mm);
  for (const Block* side : {&l, &r}) {
    ok = ok && same(side->bottom_mm, bay.box.bottom_mm) && same(side->top_mm, bay.box.top_mm) &&
         same(side->near_mm, bay.box.near_mm) && same(side->far_mm, bay.box.far_mm);
  }
  ok = ok && between(under) && between(b) && same(under.far_mm, b.near_mm) &&
       same(under.near_mm, l.near_mm) && same(b.far_mm, l.far_mm) &&
       same(b.bottom_mm, l.bottom_mm) && same(b.top_mm, l.top_mm);
  if (deck) {
    return ok && between(deck->place) && same(deck->place.top_mm, l.top_mm) &&
           same(deck->place.near_mm, l.near_mm) && same(deck->place.far_mm, b.near_mm);
  }
  return ok && between(strips[0]->place) && between(strips[1]->place) &&
         same(strips[0]->place.near_mm, l.near_mm) && same(strips[1]->place.far_mm, b.near_mm) &&
         same(strips[0]->place.top_mm, l.top_mm) && same(strips[1]->place.top_mm, l.top_mm);
}

// Every law that a frame keeps; empty: kept.
std::string broken_law(const Frame& frame, double ground_mm = 0) {
  if (!frame.made()) return {};
  for (const Piece& piece : frame.pieces) {
    for (const Block& block : blocks_of(piece)) {
      for (const double mm : {block.width_mm(), block.depth_mm(), block.height_mm()}) {
        if (!std::isfinite(mm) || mm <= 0) return name_of(piece) + " has a side of nought";
      }
      if (block.bottom_mm < ground_mm - kExact_mm) return name_of(piece) + " is under the ground";
    }
    for (const Hole& hole : piece.holes) {
      const double u = size_of(piece.place, u_of(piece.thick));
      const double v = size_of(piece.place, v_of(piece.thick));
      const double du = hole.along_u ? (hole.count - 1) * hole.pitch_mm : 0;
      const double dv = hole.along_u ? 0 : (hole.count - 1) * hole.pitch_mm;
      const bool in = hole.u_mm - hole.wide_mm / 2 >= -kExact_mm &&
                      hole.v_mm - hole.high_mm / 2 >= -kExact_mm &&
                      hole.u_mm + du + hole.wide_mm / 2 <= u + kExact_mm &&
                      hole.v_mm + dv + hole.high_mm / 2 <= v + kExact_mm;
      if (!in || axis_of(hole.face) != piece.thick) return name_of(piece) + " has a hole outside";
      if (hole.deep_mm >= size_of(piece.place, piece.thick)) {
        return name_of(piece) + " has a hole deeper than itself";
      }
    }
  }
  for (const Run& run : frame.runs) {
    for (std::size_t i = 0; i < run.bays.size(); ++i) {
      if (!closes(frame, run, static_cast<int>(i))) return "a box is open";
    }
  }
  return overlapping(frame);
}

void check_heights(const Frame& frame, const config::Config& config) {
  for (const Run& run : frame.runs) {
    CHECK_THAT(run.top_mm, WithinAbs(run.counter.top_mm, kHeights_mm));
    // And so does the metal itself, whatever the sums say.
    const Piece* top = find(frame, Kind::MetalTop, run.oven, kWholeRun);
    REQUIRE(top != nullptr);
    CHECK_THAT(top->place.top_mm, WithinAbs(run.counter.top_mm, kHeights_mm));
    // As large as the plan says the counter is.
    CHECK(top->place.left_mm >= run.counter.left_mm - kExact_mm);
    CHECK_THAT(top->place.near_mm, WithinAbs(run.counter.near_mm, kExact_mm));
    CHECK_THAT(top->place.far_mm, WithinAbs(run.counter.far_mm, kExact_mm));
    CHECK_THAT(run.face_mm - top->place.near_mm, WithinAbs(config.station.overhang_mm, kExact_mm));
  }
  if (frame.places.riser && !frame.places.masonry_base) {
    const Piece* cap = find(frame, Kind::RiserCap, true, kWholeRun);
    const Piece* slab = find(frame, Kind::Slab, true, kWholeRun);
    REQUIRE((cap != nullptr) != (slab != nullptr));
    CHECK_THAT((cap ? cap : slab)->place.top_mm,
               WithinAbs(frame.places.riser->top_mm, kHeights_mm));
  }
}

Frame frame_for(const config::Config& config) {
  return evaluate::evaluate_all(config).build->frame;
}

// A station as people have them, in every style, so that most can be built.
config::Config likely(test::Random& random) {
  config::Config c;
  const auto pick = [&](double low, double high, double step) {
    return low + step * random.below(static_cast<int>((high - low) / step) + 1);
  };
  for (int i = random.below(3); i > 0; --i) {
    c.cooks.push_back(c.cooks[0]);
    c.cooks.back().name = config::default_cook_name(c.cooks.size() - 1);
  }
  for (config::Cook& cook : c.cooks) cook.stature_mm = pick(1450, 2000, 5);
  c.station.arrangement = static_cast<config::Arrangement>(random.below(3));
  c.station.prep_width_mm = pick(400, 4000, 10);
  c.station.prep_depth_mm = pick(450, 1200, 10);
  c.station.oven_setback_mm = pick(0, 200, 5);
  c.station.overhang_mm = pick(5, 120, 0.5);
  c.station.toe_space_mm = pick(0, 120, 5);
  if (random.one_in(3)) c.station.landing_left_mm = pick(0, 900, 10);
  if (random.one_in(3)) c.station.landing_right_mm = pick(0, 900, 10);
  if (random.one_in(4)) c.oven.kind = static_cast<config::OvenKind>(random.below(8));
  c.oven.width_mm = pick(400, 1100, 10);
  c.oven.depth_mm = pick(450, 1100, 10);
  if (random.one_in(3)) c.station.counter_height_mm = pick(700, 1100, 0.1);
  if (random.one_in(3) && c.station.arrangement != config::Arrangement::OneLevel) {
    c.station.oven_base_height_mm = pick(500, 1300, 0.1);
  }
  config::Frame& f = c.frame;
  f.face = static_cast<config::FaceKind>(random.below(2));
  f.fronts = static_cast<config::FrontKind>(random.below(2));
  f.dough_bays = static_cast<config::Holds>(random.below(4));
  f.oven_bays = static_cast<config::Holds>(random.below(4));
  if (random.one_in(3)) f.bay_1 = static_cast<config::Holds>(random.below(5));
  if (random.one_in(3)) f.bay_2 = static_cast<config::Holds>(random.below(5));
  if (random.one_in(3)) f.bay_3 = static_cast<config::Holds>(random.below(5));
  f.bay_mm = pick(350, 900, 10);
  f.oven_bay_mm = pick(300, 700, 10);
  f.base_mm = pick(60, 200, 5);
  f.rail_mm = pick(25, 100, 0.1);
  f.overlay_mm = pick(3, 40, 0.1);
  if (random.one_in(4)) f.box_mm = pick(500, 800, 10);
  config::Materials& b = c.build;
  b.sheet_mm = pick(12, 30, 0.1);
  b.drawer_sheet_mm = pick(9, 20, 0.1);
  b.front_mm = pick(12, 30, 0.1);
  b.base_board_mm = pick(12, 40, 0.1);
  b.metal_mm = pick(0.8, 3, 0.1);
  b.layers = static_cast<config::Layers>(random.below(2));
  b.bedding_mm = pick(0, 4, 0.1);
  b.fit_mm = pick(0.5, 5, 0.1);
  b.drip_mm = pick(3, 40, 1);
  b.gap_mm = pick(1, 6, 0.1);
  b.slide_mm = pick(5, 20, 0.1);
  b.shim_mm = pick(0, 25, 1);
  if (random.one_in(2)) c.site.cylinder = static_cast<config::Cylinder>(random.below(4));
  if (random.one_in(2)) c.site.cylinder_kg = pick(5, 15, 0.1);
  return c;
}

}  // namespace

TEST_CASE("every preset that has a cabinet lands at its heights, and nothing overlaps",
          "[frame][law]") {
  int made = 0;
  for (const char* name : test::kPresets) {
    INFO(name);
    const config::Config config = test::preset(name);
    const evaluate::Evaluation e = evaluate::evaluate_all(config);
    const Frame& frame = e.build->frame;
    const bool read = e.survey && e.survey->base;
    for (const Refusal& one : frame.refusals) {
      UNSCOPED_INFO(one.rule << " " << one.measured_mm << " " << one.limit_mm << one.where);
    }
    CHECK(frame.refusals.empty());
    CHECK(broken_law(frame, read ? e.survey->base->lowest_mm : 0).empty());
    if (!frame.made()) {
      // Only a masonry oven by itself has no cabinet at all.
      CHECK((config::is_masonry(config.oven.kind) && frame.runs.empty()));
      continue;
    }
    check_heights(frame, config);
    ++made;
  }
  CHECK(made >= 10);
}

TEST_CASE("a likely station is built without an overlap, or refused in words", "[frame][law]") {
  test::Random random(20260601);
  int made = 0;
  std::set<std::string_view> refused;
  for (int i = 0; i < test::sweep(5000); ++i) {
    const config::Config config = likely(random);
    const Frame frame = frame_for(config);
    INFO("case " << i);
    const std::string broken = broken_law(frame);
    REQUIRE(broken == "");
    REQUIRE((frame.made() || !frame.refusals.empty() || frame.runs.empty()));
    for (const Refusal& one : frame.refusals) {
      refused.insert(one.rule);
      const rules::Rule* rule = rules::find_rule(one.rule);
      REQUIRE(rule != nullptr);
      REQUIRE_FALSE(rules::sentences_of(*rule).fail.empty());
      REQUIRE((std::isfinite(one.measured_mm) && std::isfinite(one.limit_mm)));
    }
    if (!frame.made()) continue;
    ++made;
    check_heights(frame, config);
  }
  CHECK(made > test::sweep(5000) / 2);
  // A tenth of the sweep meets fewer kinds of refusal.
  CHECK(refused.size() >= (test::sweep(5000) == 5000 ? 5u : 3u));
}

TEST_CASE("any config at all is built without an overlap, or refused in words", "[frame][law]") {
  test::Random random(77001);
  int made = 0;
  for (int i = 0; i < test::sweep(5000); ++i) {
    config::Config config = test::random_config(random);
    config.frame.as_built.clear();
    Asked asked;
    if (!random.one_in(5)) asked.levels.counter_mm = 300 + 0.1 * random.below(13000);
    if (!random.one_in(5)) asked.levels.oven_base_mm = 0.1 * random.below(18000);
    asked.gas_high_cm2 = asked.gas_low_cm2 = 64.5 + random.below(400);
    const Frame frame = frame_of(config, asked);
    INFO("case " << i);
    const std::string broken = broken_law(frame);
    REQUIRE(broken.empty());
    REQUIRE((frame.made() || !frame.refusals.empty() || frame.runs.empty()));
    made += frame.made() ? 1 : 0;
  }
  CHECK(made > test::sweep(5000) / 100);
}
