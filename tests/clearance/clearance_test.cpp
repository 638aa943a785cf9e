#include "engine/clearance/clearance.h"

#include "catch_amalgamated.hpp"

namespace {

using namespace hs::clearance;
using hs::config::Config;

const Need& side(const std::array<Need, 6>& all, Side which) {
  return all[static_cast<std::size_t>(which)];
}

}  // namespace

TEST_CASE("what nobody has said is unknown on every side", "[clearance]") {
  const auto all = needs(Config{}, 1000);
  for (const Need& need : all) {
    CHECK_FALSE(need.required_mm);
    CHECK(need.from == From::Unknown);
    CHECK_FALSE(need.available_mm);
  }
}

TEST_CASE("the six needs come in the order of their sides", "[clearance]") {
  const auto all = needs(Config{}, 1000);
  for (std::size_t i = 0; i < all.size(); ++i) CHECK(static_cast<std::size_t>(all[i].side) == i);
}

TEST_CASE("the larger of manual and local rule holds and says whose it is", "[clearance]") {
  Config config;
  config.oven.listed_clearance.side_mm = 300;
  config.site.local_clearance.side_mm = 450;
  config.oven.listed_clearance.back_mm = 200;
  config.site.local_clearance.back_mm = 100;
  config.site.local_clearance.above_mm = 900;
  config.oven.listed_clearance.front_mm = 600;
  config.site.local_clearance.front_mm = 600;
  const auto all = needs(config, 1000);
  CHECK(side(all, Side::Left).required_mm == 450);
  CHECK(side(all, Side::Left).from == From::Local);
  CHECK(side(all, Side::Right).required_mm == 450);
  CHECK(side(all, Side::Back).required_mm == 200);
  CHECK(side(all, Side::Back).from == From::Listed);
  CHECK(side(all, Side::Above).required_mm == 900);
  CHECK(side(all, Side::Above).from == From::Local);
  CHECK(side(all, Side::Front).from == From::Listed);  // equal: the manual's
}

TEST_CASE("a raised oven has less room under its cover", "[clearance]") {
  Config config;
  config.oven.height_mm = 400;
  config.site.cover_height_mm = 2200;
  CHECK(side(needs(config, 1000), Side::Above).available_mm == 800);
  CHECK(side(needs(config, 1100), Side::Above).available_mm == 700);
  // An oven that would stand through the cover has no room, not less than none.
  CHECK(side(needs(config, 1900), Side::Above).available_mm == 0);
  config.site.cover_height_mm.reset();
  CHECK_FALSE(side(needs(config, 1000), Side::Above).available_mm);
}

TEST_CASE("a cover holds the oven down by the room asked for above it", "[clearance]") {
  Config config;
  config.oven.height_mm = 400;
  config.site.cover_height_mm = 2200;
  CHECK_FALSE(highest_base_under_cover_mm(config));  // nobody has said how much room
  config.oven.listed_clearance.above_mm = 750;
  CHECK(highest_base_under_cover_mm(config) == 2200 - 750 - 400);
  config.site.local_clearance.above_mm = 900;  // the larger holds
  CHECK(highest_base_under_cover_mm(config) == 2200 - 900 - 400);
  config.site.cover_height_mm = 1200;
  CHECK(highest_base_under_cover_mm(config) == 1200 - 900 - 400);  // fits nowhere
  config.site.cover_height_mm.reset();
  CHECK_FALSE(highest_base_under_cover_mm(config));
}

TEST_CASE("room at the sides is what was measured there", "[clearance]") {
  Config config;
  config.station.left_gap_mm = 150;
  config.station.right_gap_mm = 900;
  config.station.back_gap_mm = 40;
  config.station.aisle_mm = 1100;
  config.station.oven_setback_mm = 80;
  const auto all = needs(config, 1000);
  CHECK(side(all, Side::Left).available_mm == 150);
  CHECK(side(all, Side::Right).available_mm == 900);
  CHECK(side(all, Side::Back).available_mm == 40);
  CHECK(side(all, Side::Front).available_mm == 1180);  // from the mouth, not the counter's edge
}

TEST_CASE("below the oven only a top that burns, or nothing asked, can be told", "[clearance]") {
  Config config;
  config.oven.listed_clearance.below_mm = 50;
  CHECK_FALSE(side(needs(config, 1000), Side::Below).available_mm);
  config.station.top_combustible = false;
  CHECK_FALSE(side(needs(config, 1000), Side::Below).available_mm);
  config.station.top_combustible = true;
  CHECK(side(needs(config, 1000), Side::Below).available_mm == 0);
  config.station.top_combustible.reset();
  config.oven.listed_clearance.below_mm = 0;
  CHECK(side(needs(config, 1000), Side::Below).available_mm == 0);
}

TEST_CASE("either the manual or a local rule may forbid a combustible top", "[clearance]") {
  const auto said = [](std::optional<bool> manual, std::optional<bool> local) {
    Config config;
    config.oven.listed_clearance.on_combustible = manual;
    config.site.local_clearance.on_combustible = local;
    return standing(config);
  };
  CHECK_FALSE(said({}, {}).allowed_on_combustible);
  CHECK(said({}, {}).from == From::Unknown);
  CHECK(said(true, {}).allowed_on_combustible == true);
  CHECK(said(true, {}).from == From::Listed);
  CHECK(said(false, true).allowed_on_combustible == false);
  CHECK(said(false, true).from == From::Listed);
  CHECK(said(true, false).allowed_on_combustible == false);
  CHECK(said(true, false).from == From::Local);
  CHECK(said(true, true).from == From::Listed);
  CHECK(said({}, true).allowed_on_combustible == true);
  CHECK(said({}, false).from == From::Local);
}

TEST_CASE("what the oven stands on is passed on as it was said", "[clearance]") {
  Config config;
  CHECK_FALSE(standing(config).top_combustible);
  config.station.top_combustible = true;
  CHECK(standing(config).top_combustible == true);
}
