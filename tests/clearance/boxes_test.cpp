#include "engine/clearance/boxes.h"

#include <algorithm>

#include "catch_amalgamated.hpp"

namespace {

using namespace hs::clearance;
using namespace hs::config;

const Zone* find(const std::vector<Zone>& all, Hot hot, Side side) {
  const auto it = std::find_if(all.begin(), all.end(), [&](const Zone& zone) {
    return zone.hot == hot && zone.need.side == side;
  });
  return it == all.end() ? nullptr : &*it;
}

}  // namespace

TEST_CASE("a side nobody speaks of has no box to build up to", "[clearance]") {
  const auto all = zones(Config{}, 900);
  CHECK(all.size() == 6);
  for (const Zone& zone : all) CHECK_FALSE(zone.box);
}

TEST_CASE("each box lies against its own side of the oven, as deep as was asked for",
          "[clearance]") {
  Config config;
  config.oven.width_mm = 600;
  config.oven.depth_mm = 700;
  config.oven.height_mm = 400;
  config.oven.listed_clearance = {.side_mm = 300,
                                  .back_mm = 200,
                                  .above_mm = 900,
                                  .front_mm = 1000,
                                  .below_mm = 50,
                                  .on_combustible = {},
                                  .under_cover = {}};
  const auto all = zones(config, 900);
  const Box left = *find(all, Hot::Oven, Side::Left)->box;
  CHECK(left.left_mm == -600);
  CHECK(left.right_mm == -300);
  CHECK(left.near_mm == 0);
  CHECK(left.far_mm == 700);
  const Box right = *find(all, Hot::Oven, Side::Right)->box;
  CHECK(right.left_mm == 300);
  CHECK(right.right_mm == 600);
  const Box back = *find(all, Hot::Oven, Side::Back)->box;
  CHECK(back.near_mm == 700);
  CHECK(back.far_mm == 900);
  const Box above = *find(all, Hot::Oven, Side::Above)->box;
  CHECK(above.bottom_mm == 1300);
  CHECK(above.top_mm == 2200);
  const Box front = *find(all, Hot::Oven, Side::Front)->box;
  CHECK(front.near_mm == -1000);
  CHECK(front.far_mm == 0);
  const Box below = *find(all, Hot::Oven, Side::Below)->box;
  CHECK(below.bottom_mm == 850);
  CHECK(below.top_mm == 900);
  for (const Zone& zone : all) CHECK_FALSE(zone.drawn);
}

TEST_CASE("an oven said to have no listing falls back; one not spoken of does not", "[clearance]") {
  Config config;
  CHECK_FALSE(find(zones(config, 900), Hot::Oven, Side::Left)->need.required_mm);
  config.oven.listed = true;  // listed, but nobody has read its manual
  CHECK_FALSE(find(zones(config, 900), Hot::Oven, Side::Left)->need.required_mm);
  config.oven.listed = false;
  const auto all = zones(config, 900);
  CHECK(find(all, Hot::Oven, Side::Left)->need.from == From::Published);
  CHECK_FALSE(find(all, Hot::Oven, Side::Below)->need.required_mm);
  CHECK(find(all, Hot::Oven, Side::Below)->need.from == From::Unknown);
  // What the maker or the place says still comes first, even where it is less.
  config.oven.listed_clearance.back_mm = 100;
  config.site.local_clearance.side_mm = 450;
  const auto told = zones(config, 900);
  CHECK(find(told, Hot::Oven, Side::Back)->need.required_mm == 100);
  CHECK(find(told, Hot::Oven, Side::Back)->need.from == From::Listed);
  CHECK(find(told, Hot::Oven, Side::Left)->need.from == From::Local);
}

TEST_CASE("a flue has boxes only where there is one, and its figure is never the oven's",
          "[clearance]") {
  Config config;
  config.oven.listed_clearance.side_mm = 300;
  CHECK(find(zones(config, 900), Hot::Flue, Side::Left) == nullptr);
  config.site.flue.kind = FlueKind::Open;
  CHECK_FALSE(find(zones(config, 900), Hot::Flue, Side::Left)->box);
  config.site.flue.listed_gap_mm = 150;
  const auto all = zones(config, 900);
  const Zone& back = *find(all, Hot::Flue, Side::Back);
  CHECK(back.need.from == From::Listed);
  CHECK(back.drawn);
  CHECK(back.box->far_mm - back.box->near_mm == 150);
  config.site.flue.listed_gap_mm.reset();
  config.oven.kind = OvenKind::MasonryDome36;
  const Need masonry = flue_need(config);
  CHECK(masonry.from == From::Published);
  CHECK(masonry.required_mm == Catch::Approx(50.8));  // 2 in, IRC R1003.18
}

TEST_CASE("a grill beside the oven asks for the larger of the two, once both have spoken",
          "[clearance]") {
  Config config;
  config.site.grill.at = GrillAt::Right;
  config.site.grill.gap_mm = 400;
  CHECK_FALSE(grill_need(config).required_mm);
  config.oven.listed_clearance.side_mm = 300;
  CHECK_FALSE(grill_need(config).required_mm);
  config.site.grill.listed_side_mm = 450;
  CHECK(grill_need(config).required_mm == 450);
  CHECK(grill_need(config).available_mm == 400);
  config.site.grill.listed_side_mm = 152;
  CHECK(grill_need(config).required_mm == 300);
  const auto all = zones(config, 900);
  const Zone& left = *find(all, Hot::Grill, Side::Left);
  CHECK(left.box->right_mm == config.oven.width_mm / 2 + 400);
  CHECK(left.box->left_mm == config.oven.width_mm / 2 + 400 - 152);
  config.site.grill.at = GrillAt::None;
  CHECK(find(zones(config, 900), Hot::Grill, Side::Left) == nullptr);
}

TEST_CASE("a cover is allowed only where the manual or the place says so, and either may forbid",
          "[clearance]") {
  const auto said = [](std::optional<bool> manual, std::optional<bool> local) {
    Config config;
    config.oven.listed_clearance.under_cover = manual;
    config.site.local_clearance.under_cover = local;
    return under_cover(config);
  };
  CHECK_FALSE(said({}, {}).yes);
  CHECK(said({}, {}).from == From::Unknown);
  CHECK(said(true, {}).yes == true);
  CHECK(said(true, false).yes == false);
  CHECK(said(true, false).from == From::Local);
  CHECK(said(false, true).yes == false);
  CHECK(said(false, true).from == From::Listed);
  CHECK(said({}, true).from == From::Local);
}
