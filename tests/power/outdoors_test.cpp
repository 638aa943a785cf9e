// Covers, depths, protection: each published value, and "unknown" where there is none.
#include "engine/power/outdoors.h"

#include "catch_amalgamated.hpp"
#include "engine/power/wire.h"

using namespace hs::power;
using Catch::Matchers::StartsWith;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using hs::rules::Basis;

TEST_CASE("wires lie as deep as the table says", "[power][source]") {
  // NEC table 300.5, columns 1 to 5 (second hand): 24, 6, 18, 12, 6 in. A page that gives 18 for
  // cable in the soil is wrong. Slab row from memory: 18, 4, 4, 6, 6.
  const Buried how[] = {Buried::Cable, Buried::MetalPipe, Buried::PlasticPipe, Buried::Gfci20A,
                        Buried::LowVoltage};
  const double soil[] = {24, 6, 18, 12, 6}, slab[] = {18, 4, 4, 6, 6};
  for (int i = 0; i < 5; ++i) {
    const Answer open = cover_depth(Code::Nec, how[i], false);
    CHECK(open.known);
    CHECK_THAT(open.mm.value_or(0), WithinAbs(soil[i] * 25.4, 1e-9));
    CHECK(open.basis == Basis::SecondHand);
    CHECK_FALSE(open.clause.empty());
    const Answer under = cover_depth(Code::Nec, how[i], true);
    CHECK_THAT(under.mm.value_or(0), WithinAbs(slab[i] * 25.4, 1e-9));
    CHECK(under.basis == Basis::Memory);
    const Answer metric = cover_depth(Code::Iec, how[i], false);
    CHECK_FALSE(metric.known);
    CHECK(metric.words == kAsk);
  }
}

TEST_CASE("a place is damp only under a cover that rain does not get under", "[power][source]") {
  // NEC article 100: damp is under canopies and roofed open porches, without beating rain (read).
  CHECK(wetness(false, {}, {}) == Wetness::Dry);
  CHECK(wetness(true, true, false) == Wetness::Damp);
  CHECK(wetness(true, true, true) == Wetness::Wet);
  CHECK(wetness(true, false, false) == Wetness::Wet);
  CHECK(wetness(true, {}, false) == Wetness::Unknown);
  CHECK(wetness(true, true, {}) == Wetness::Unknown);
}

TEST_CASE("covers follow the place, and what is not known is taken as wet", "[power][source]") {
  // NEC 406.9(A): closed cover where damp; 406.9(B)(1): extra duty, with the plug in, where wet.
  CHECK(outlet_cover(Code::Nec, Wetness::Damp).clause == "NEC 406.9(A)");
  CHECK(outlet_cover(Code::Nec, Wetness::Wet).clause == "NEC 406.9(B)(1)");
  CHECK(outlet_cover(Code::Nec, Wetness::Unknown).words ==
        outlet_cover(Code::Nec, Wetness::Wet).words);
  CHECK(outlet_cover(Code::Iec, Wetness::Wet).basis == Basis::Memory);
  CHECK_FALSE(outlet_cover(Code::Nec, Wetness::Dry).known);
  CHECK(lamp_mark(Code::Nec, Wetness::Damp).words != lamp_mark(Code::Nec, Wetness::Wet).words);
  CHECK(lamp_mark(Code::Nec, Wetness::Unknown).words == lamp_mark(Code::Nec, Wetness::Wet).words);
}

TEST_CASE("shock protection goes by edition and current", "[power][source]") {
  // NEC 210.8(F): all outlets outdoors to 50 A in 2020 and 2023, to 60 A in 2026 (second hand).
  Outlet wired{.receptacle = false, .breaker_a = 50, .edition = 2020};
  CHECK_THAT(std::string(shock_protection(Code::Nec, wired).words), StartsWith("yes"));
  wired.breaker_a = 60;
  CHECK_THAT(std::string(shock_protection(Code::Nec, wired).words), StartsWith("not asked for"));
  wired.edition = 2026;
  CHECK_THAT(std::string(shock_protection(Code::Nec, wired).words), StartsWith("yes"));
  wired.edition = 2017;
  CHECK(shock_protection(Code::Nec, wired).words == kAsk);
  // 210.8(A)(3) to 2017: receptacles of 15 and 20 A.
  Outlet plug{.breaker_a = 20, .edition = 2017};
  CHECK_THAT(std::string(shock_protection(Code::Nec, plug).words), StartsWith("yes"));
  plug.breaker_a = 30;
  CHECK_FALSE(shock_protection(Code::Nec, plug).known);
  plug.edition = 2020;
  CHECK_THAT(std::string(shock_protection(Code::Nec, plug).words), StartsWith("yes"));
  plug.breaker_a = 60;  // from 2020 on no current is named for receptacles
  CHECK_THAT(std::string(shock_protection(Code::Nec, plug).words), StartsWith("yes"));
  plug.volts_to_ground = 151;
  CHECK_FALSE(shock_protection(Code::Nec, plug).known);
  // IEC 60364-4-41, 411.3.3: sockets to 32 A, at most 30 mA.
  Outlet socket{.volts_to_ground = 230, .breaker_a = 32};
  CHECK_THAT(std::string(shock_protection(Code::Iec, socket).words), StartsWith("yes"));
  socket.breaker_a = 33;
  CHECK_FALSE(shock_protection(Code::Iec, socket).known);
}

TEST_CASE("a GFCI trips as its curve says", "[power][source]") {
  // UL 943 (second hand): (20/I)^1.43: 5.59 s at 6 mA, 0.0250 s at 264 mA.
  CHECK_THAT(gfci_trip_s(6).value_or(0), WithinRel(5.59, 0.005));
  CHECK_THAT(gfci_trip_s(264).value_or(0), WithinRel(0.0250, 0.005));
  CHECK_FALSE(gfci_trip_s(5.99).has_value());
  CHECK_THAT(kOutletHighest_mm, WithinAbs(6.5 * 304.8, 1e-9));
}
