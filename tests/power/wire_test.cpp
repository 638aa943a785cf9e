// Voltage drop, circuits and box fill against worked examples on trade pages.
#include "engine/power/wire.h"

#include <array>
#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/power/box.h"

using namespace hs::power;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double k100ft_m = 30.48;

}  // namespace

TEST_CASE("the wire table is the code's", "[power][source]") {
  // NEC chapter 9 table 8 (second hand, six code files agree on the stranded column).
  const double stranded[] = {3.14, 1.98, 1.24, 0.778, 0.491};
  const double solid[] = {3.07, 1.93, 1.21, 0.764};
  // Table 310.16, copper at 60, 75 and 90 C; 240.4(D); table 314.16(B).
  const double amps[][3] = {{15, 20, 25}, {20, 25, 30}, {30, 35, 40}, {40, 50, 55}, {55, 65, 75}};
  const double fuses[] = {15, 20, 30};
  const double boxes[] = {2.00, 2.25, 2.50, 3.00, 5.00};
  const int gauges[] = {14, 12, 10, 8, 6};
  REQUIRE(wires().size() == 5);
  for (std::size_t i = 0; i < 5; ++i) {
    const auto row = wire(gauges[i]);
    REQUIRE(row.has_value());
    CHECK(row->stranded_ohm_kft == stranded[i]);
    CHECK(row->amps_60c == amps[i][0]);
    CHECK(row->amps_75c == amps[i][1]);
    CHECK(row->amps_90c == amps[i][2]);
    CHECK(row->box_in3 == boxes[i]);
    if (i < 4) CHECK(row->solid_ohm_kft.value_or(0) == solid[i]);
    if (i < 3) CHECK(row->fuse_a.value_or(0) == fuses[i]);
  }
  CHECK_FALSE(wire(6)->solid_ohm_kft.has_value());
  CHECK_FALSE(wire(11).has_value());
}

TEST_CASE("a hundred feet of twelve gauge lose what three worked examples say", "[power][source]") {
  // 120 V, 20 A, 100 ft one way (three trade pages, read): 7.72 V by the solid wire's resistance,
  // 7.92 by the stranded one's, 7.90 by K 12.9; 8 AWG by K 3.13 V, 2.6 %.
  CHECK_THAT(drop_v(20, k100ft_m, 1.93), WithinAbs(7.72, 1e-9));
  CHECK_THAT(drop_v(20, k100ft_m, 1.98), WithinAbs(7.92, 1e-9));
  CHECK_THAT(drop_v(20, k100ft_m, 1.93) / 120, WithinAbs(0.064, 5e-4));
  CHECK_THAT(drop_v(20, k100ft_m, 1.98) / 120, WithinAbs(0.066, 5e-4));
  CHECK_THAT(drop_by_k_v(20, k100ft_m, 6530), WithinAbs(7.90, 0.005));
  CHECK_THAT(drop_by_k_v(20, k100ft_m, 16510), WithinAbs(3.13, 0.005));
  CHECK_THAT(drop_by_k_v(20, k100ft_m, 16510) / 120, WithinAbs(0.026, 5e-4));
  // The pocket formula and the table agree to 1 %, as the comment says; 6 AWG's circular mils, from
  // memory, too.
  for (const Wire& one : wires()) {
    CHECK_THAT(drop_by_k_v(10, 20, one.cmil),
               WithinRel(drop_v(10, 20, one.stranded_ohm_kft), 0.01));
  }
}

TEST_CASE("the wire for a run is the thinnest that keeps within the share", "[power]") {
  // 20 A over 100 ft at 120 V, 3 %: 3.6 V. 8 AWG loses 3.11, 10 AWG 4.96.
  const auto found = wire_for_run(120, 20, k100ft_m, 20);
  REQUIRE(found.has_value());
  CHECK(found->awg == 8);
  // Just inside and just outside 10 AWG's longest run.
  const double longest = longest_run_m(120, 20, 1.24).value_or(0);
  CHECK(wire_for_run(120, 20, longest - 0.001, 20)->awg == 10);
  CHECK(wire_for_run(120, 20, longest + 0.001, 20)->awg == 8);
  // A short run is held by the breaker: 14 AWG may not stand behind 20 A (240.4(D)).
  CHECK(wire_for_run(120, 1, 1, 20)->awg == 12);
  CHECK(wire_for_run(120, 1, 1, 15)->awg == 14);
  CHECK_FALSE(wire_for_run(120, 50, 500, 50).has_value());
  CHECK_FALSE(longest_run_m(120, 0, 1.24).has_value());
}

TEST_CASE("a section in mm2 and a gauge of the same copper lose about the same", "[power]") {
  // 12 AWG is 3.31 mm2 (6530 cmil x 0.0005067). rho 0.0225 (from memory) is copper at about 75 C:
  // 1.98 ohm/kft is 0.0215 ohm mm2/m.
  CHECK_THAT(drop_mm2_v(20, k100ft_m, 6530 * 0.00050671),
             WithinRel(drop_v(20, k100ft_m, 1.98), 0.06));
  // 230 V, 16 A, 25 m, 2.5 mm2: by hand 2 x 16 x 25 x 0.0225 / 2.5.
  CHECK_THAT(drop_mm2_v(16, 25, 2.5), WithinAbs(7.2, 1e-9));
}

TEST_CASE("loads fit on a circuit or not", "[power]") {
  // 1500 W for long at 120 V: 12.5 A, counted 15.625; a 20 A breaker has 4.375 A left.
  const std::array lamp_and_heater{Load{1500, true}, Load{60, false}};
  const Circuit circuit = circuit_of(lamp_and_heater, 120, 20);
  CHECK_THAT(circuit.amps, WithinAbs(13, 1e-9));
  CHECK_THAT(circuit.counted_a, WithinAbs(16.125, 1e-9));
  CHECK(circuit.fits);
  CHECK_FALSE(circuit_of(lamp_and_heater, 120, 16).fits);
  CHECK(circuit_of({}, 120, 15).fits);
}

TEST_CASE("box fill comes to what trade pages worked out", "[power][source]") {
  // Two 12/2 cables with ground, an inside clamp, one duplex outlet: 18.0 in3 (trade page, read).
  BoxContents box;
  box.conductors = {{12, 4}};
  box.grounds = {{12, 2}};
  box.devices = {{12}};
  box.inside_clamps = true;
  auto both = box_fill_by_edition(box);
  REQUIRE(both);
  CHECK_THAT(both->from2020.in3, WithinAbs(18.0, 1e-12));
  CHECK_THAT(both->to2017.in3, WithinAbs(18.0, 1e-12));
  CHECK(both->difference_in3 == 0);
  double sum = 0;
  for (const BoxLine& line : both->from2020.lines) sum += line.in3;
  CHECK_THAT(sum, WithinAbs(18.0, 1e-12));
  // 14 AWG, four conductors, one device, grounds: 14.0 in3 (trade page, read).
  box = {};
  box.conductors = {{14, 4}};
  box.grounds = {{14, 2}};
  box.devices = {{14}};
  CHECK_THAT(box_fill(box, Edition::From2020)->in3, WithinAbs(14.0, 1e-12));
  // Ten grounds of 12 AWG alone: 5.625 in3 from 2020, 2.25 before (trade forum, read).
  box = {};
  box.grounds = {{12, 10}};
  both = box_fill_by_edition(box);
  REQUIRE(both);
  CHECK_THAT(both->from2020.in3, WithinAbs(5.625, 1e-12));
  CHECK_THAT(both->to2017.in3, WithinAbs(2.25, 1e-12));
  CHECK_THAT(both->difference_in3, WithinAbs(3.375, 1e-12));
  // Four are the last that count once, a fifth counts a quarter more.
  box.grounds = {{12, 4}};
  CHECK(box_fill_by_edition(box)->difference_in3 == 0);
  box.grounds = {{12, 5}};
  CHECK_THAT(box_fill_by_edition(box)->difference_in3, WithinAbs(0.5625, 1e-12));
}

TEST_CASE("a device counts by what is connected to it, not by the largest in the box",
          "[power][source]") {
  // NEC 314.16(B)(4); two pages over-count mixed boxes. 2 of 10 AWG pass, the device is on 14.
  BoxContents box;
  box.conductors = {{10, 2}, {14, 2}};
  box.devices = {{14}};
  box.inside_clamps = true;
  // 5.0 + 4.0 + 2.5 for the clamps by the largest + 2 x 2.0.
  CHECK_THAT(box_fill(box, Edition::From2020)->in3, WithinAbs(15.5, 1e-12));
  box.support_fittings = 1;
  CHECK_THAT(box_fill(box, Edition::From2020)->in3, WithinAbs(18.0, 1e-12));
}

TEST_CASE("a gauge that the table lacks is refused in words", "[power]") {
  BoxContents box;
  box.conductors = {{11, 2}};
  const auto fill = box_fill(box, Edition::From2020);
  REQUIRE_FALSE(fill);
  CHECK_THAT(sentence(fill.error().at(0)),
             ContainsSubstring("11 AWG") && ContainsSubstring("licensed electrician"));
  box.conductors = {{12, -1}};
  CHECK_FALSE(box_fill(box, Edition::From2020));
  CHECK_FALSE(box_fill_by_edition(box));
}
