// The order for the folded tops: its sizes against the sheets below, and what a fabricator is
// asked.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/base/quantity.h"
#include "engine/evaluate/packet.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"

using namespace hs;
using namespace hs::evaluate;
using Catch::Matchers::WithinAbs;
using test::found;
using test::verdict;

namespace {

constexpr std::int64_t kFewSteps = 2000;

config::Config demo() { return test::preset("demo"); }

}  // namespace

TEST_CASE("an order's outside sizes are the sheets below, fit and metal, and nothing twice",
          "[packet][metal]") {
  config::Config c = demo();
  const Evaluation e = evaluate_packet(c);
  REQUIRE(e.packet != nullptr);
  REQUIRE_FALSE(e.packet->metal.orders.empty());
  for (const MetalOrder& order : e.packet->metal.orders) {
    INFO(order.name);
    REQUIRE(order.blank.possible());
    // engine/sheet's own way from the substrate to the top, with paint inside the fit.
    sheet::Substrate under;
    under.width_mm = order.under_width_mm;
    under.depth_mm = order.under_depth_mm;
    under.thick_mm = order.under_thick_mm;
    under.paint_mm = 0;
    under.bedding_mm = c.build.bedding_mm;
    under.fit_mm = c.build.fit_mm;
    under.drip_mm = c.build.drip_mm;
    for (std::size_t i = 0; i < 4; ++i) under.flanged[i] = order.top.flanges[i].down_mm > 0;
    const sheet::Top top = sheet::top_over(under, order.top.metal);
    CHECK_THAT(order.top.width_mm, WithinAbs(top.width_mm, 1e-6));
    CHECK_THAT(order.top.depth_mm, WithinAbs(top.depth_mm, 1e-6));
    for (std::size_t i = 0; i < 4; ++i) {
      CHECK_THAT(order.top.flanges[i].down_mm, WithinAbs(top.flanges[i].down_mm, 1e-6));
    }
    // Flat by hand: outside lengths less a deduction a bend, 2 (R + T) - pi/2 (R + K T) with R
    // = 1.25 T and K 0.45 (bend allowance, general practice).
    const double t = c.build.metal_mm, each = 4.5 * t - std::acos(-1.0) / 2 * 1.7 * t;
    const auto down = [&](sheet::Side side) {
      return order.top.flanges[sheet::index_of(side)].down_mm;
    };
    const double front = down(sheet::Side::Front), back = down(sheet::Side::Back);
    CHECK_THAT(order.blank.depth_mm, WithinAbs(order.top.depth_mm + front + back - 2 * each, 1e-6));
  }
  CHECK(verdict(e, "metal.measure") == Verdict::Unknown);
  // Measured 2 mm wider than drawn: the order follows, and says that it is measured.
  const MetalOrder& first = e.packet->metal.orders.front();
  const bool oven = first.name.find("oven") != std::string::npos;
  const std::string run = oven ? "oven" : "dough";
  c.frame.as_built =
      run + ".substrate.width=" + std::to_string(std::lround(first.under_width_mm) + 2) + " " +
      run + ".substrate.depth=" + std::to_string(std::lround(first.under_depth_mm));
  const Evaluation measured = evaluate_packet(c);
  REQUIRE(measured.packet != nullptr);
  const MetalOrder& follows = measured.packet->metal.orders.front();
  CHECK(follows.measured);
  CHECK_THAT(follows.under_width_mm, WithinAbs(std::round(first.under_width_mm) + 2, 0.05));
}

TEST_CASE("the parts list and the metal order tell one outside size and the same sides",
          "[packet][metal][law]") {
  const Evaluation e = evaluate_packet(demo(), Marks::Exact, kFewSteps);
  REQUIRE(e.packet != nullptr);
  REQUIRE_FALSE(e.packet->metal.orders.empty());
  for (const MetalOrder& order : e.packet->metal.orders) {
    INFO(order.name);
    const parts::Part& part = e.build->parts.parts[static_cast<std::size_t>(order.part - 1)];
    CHECK_THAT(part.length_mm, WithinAbs(order.top.width_mm, 0.051));
    CHECK_THAT(part.width_mm, WithinAbs(order.top.depth_mm, 0.051));
    constexpr sheet::Side kSides[] = {sheet::Side::Left, sheet::Side::Right, sheet::Side::Front,
                                      sheet::Side::Back};
    for (std::size_t i = 0; i < part.folds_mm.size(); ++i) {
      const sheet::Flange& flange = order.top.flanges[sheet::index_of(kSides[i])];
      const double down_mm = flange.long_mm > 0 ? 0 : flange.down_mm;  // tails are told apart
      CHECK_THAT(part.folds_mm[i], WithinAbs(down_mm, 0.051));
    }
  }
}

TEST_CASE("a top deeper than its neighbour is turned down from that one's back on",
          "[packet][metal]") {
  config::Config c = demo();
  const Evaluation e = evaluate_packet(c, Marks::Exact, kFewSteps);
  const auto& orders = e.packet->metal.orders;
  const auto order = std::find_if(orders.begin(), orders.end(),
                                  [](const MetalOrder& one) { return !one.joints.empty(); });
  REQUIRE(order != orders.end());
  REQUIRE(order->joints.size() == 1);
  const Joint& joint = order->joints[0];
  const sheet::Flange& flange = order->top.flanges[sheet::index_of(joint.side)];
  // Backs at 690 and 530 (650 of oven and 40; 610 less 80 of setback), and 2 mm for the bead;
  // beyond the straight edge by metal and fit.
  CHECK_THAT(joint.gap_mm, WithinAbs(2, 1e-9));
  CHECK_THAT(joint.alone_mm, WithinAbs(160, 1e-9));
  CHECK_THAT(flange.long_mm, WithinAbs(158, 1e-9));
  CHECK_THAT(joint.tail_mm, WithinAbs(158, 1e-9));
  CHECK_THAT(flange.step_mm, WithinAbs(c.build.metal_mm + c.build.fit_mm, 1e-9));
  CHECK(flange.down_mm == order->top.flanges[0].down_mm);
  CHECK(order->blank.possible());
  const parts::Part& part = e.build->parts.parts[static_cast<std::size_t>(order->part - 1)];
  REQUIRE(part.tails.size() == 1);
  CHECK_THAT(part.tails[0].long_mm, WithinAbs(158, 0.051));
  CHECK_THAT(part.tails[0].down_mm, WithinAbs(flange.down_mm, 0.051));
  // As deep as each other there is nothing to turn down.
  c.station.prep_depth_mm = 770;
  const Evaluation level = evaluate_packet(c, Marks::Exact, kFewSteps);
  for (const MetalOrder& one : level.packet->metal.orders) {
    for (const Joint& other : one.joints) CHECK((other.alone_mm == 0 && other.tail_mm == 0));
  }
}

TEST_CASE("a hem is folded where the sheets pass it, and a fabricator's own K and radius are taken",
          "[packet][metal]") {
  config::Config c = demo();
  const Evaluation sawn = evaluate_packet(c, Marks::Exact, kFewSteps);
  REQUIRE_FALSE(sawn.packet->metal.orders.empty());
  CHECK(verdict(sawn, "metal.hem") == Verdict::Warn);
  c.build.hem = config::Hem::Closed;
  c.build.metal_mm = 1.6;
  c.build.fit_mm = 1.7;  // 1.6 of hem and 0.2 of paint are 1.8
  CHECK(verdict(evaluate_packet(c, Marks::Exact, kFewSteps), "metal.hem") == Verdict::Fail);
  c.build.fit_mm = 1.8;
  const Evaluation closed = evaluate_packet(c, Marks::Exact, kFewSteps);
  CHECK(verdict(closed, "metal.hem") == Verdict::Ok);
  const MetalOrder &before = sawn.packet->metal.orders[0], &hemmed = closed.packet->metal.orders[0];
  REQUIRE(before.top.flanges[0].down_mm > 0);
  // Six thicknesses of return on the front flange, and what the fold takes of it.
  CHECK_THAT(hemmed.hem_mm, WithinAbs(9.6, 1e-9));
  const double added_mm = sheet::hem_mm(hemmed.top.metal, 9.6, 0);
  int front = 0, hems = 0;
  for (const sheet::BendLine& bend : hemmed.blank.bends) {
    if (bend.side == sheet::Side::Front) ++front;
    if (bend.hem) ++hems;
  }
  CHECK(front == 2);
  CHECK(hems >= 1);
  CHECK(added_mm > 0);
  c.build.hem = config::Hem::None;
  const MetalOrder plain = evaluate_packet(c, Marks::Exact, kFewSteps).packet->metal.orders[0];
  int deep = 0;
  for (const auto side : {sheet::Side::Front, sheet::Side::Back}) {
    if (plain.top.flanges[sheet::index_of(side)].down_mm > 0) ++deep;
  }
  CHECK_THAT(hemmed.blank.depth_mm, WithinAbs(plain.blank.depth_mm + deep * added_mm, 0.02));

  c.build.bend_radius_mm = 3;
  c.build.bend_k = 0.4;
  const MetalOrder own = evaluate_packet(c, Marks::Exact, kFewSteps).packet->metal.orders[0];
  CHECK(own.top.metal.inside_radius_mm == 3);
  CHECK(own.top.metal.k == 0.4);
  CHECK_THAT(own.blank.bends[0].deduct_mm, WithinAbs(sheet::deduction_mm({1.6, 3, 0.4}, 90), 1e-9));
  CHECK(own.blank.depth_mm != plain.blank.depth_mm);
}
