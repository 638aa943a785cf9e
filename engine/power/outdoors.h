#pragma once
// Power outdoors: how deep a wire lies, which cover an outlet wants, what trips when somebody
// is in the circuit. Published clauses as answers with their source; where there is none the answer
// says so.

#include <cstdint>
#include <optional>
#include <string_view>

#include "engine/rules/sources.h"

namespace hs::power {

// An answer that a person acts on. `known` false: `words` is to ask the licensed electrician.
struct Answer {
  bool known = false;
  std::string_view words;
  std::string_view clause;  // with its standard and edition; empty: none
  rules::Basis basis = rules::Basis::SecondHand;
  std::optional<double> mm{};  // a depth or height, where the answer is one
};

enum class Code : std::uint8_t { Nec, Iec };  // North America; 230 V countries

enum class Buried : std::uint8_t {
  Cable,        // UF, in the soil itself
  MetalPipe,    // rigid or intermediate metal conduit
  PlasticPipe,  // PVC conduit
  Gfci20A,      // a home's 120 V circuit of at most 20 A behind a GFCI
  LowVoltage,   // lighting of at most 30 V
};

// Least cover over a buried wire: from the ground's surface to the top of cable or pipe. NEC table
// 300.5 (2023: 300.5(A)), second hand. `slab`: under at least 4 in of exterior concrete without
// vehicles that reaches 6 in beyond: from memory. Not for drives, roads or under buildings. No
// source was found for the metric world: not known.
Answer cover_depth(Code code, Buried how, bool slab);

enum class Wetness : std::uint8_t {
  Unknown,
  Dry,   // indoors
  Damp,  // under a roof, where no rain is blown and no water runs
  Wet,   // anything else outdoors
};
// Damp only where a cover is over it and rain does not reach it in the wind that brings rain; no
// answer given counts as wet. NEC article 100 and 406.9(A), read.
Wetness wetness(bool outdoors, std::optional<bool> covered, std::optional<bool> rain_reaches);

// What cover and kind of outlet such a place wants. NEC 406.9(A) and (B)(1), second hand; metric
// world IPX4, IPX5 where it is hosed (IEC 60364-5-51 and -7-714, from memory).
Answer outlet_cover(Code code, Wetness where);
// What mark a lamp wants: NEC 410.10(A), read.
Answer lamp_mark(Code code, Wetness where);

struct Outlet {
  bool receptacle = true;  // false: wired in for good
  bool outdoors = true;
  double volts_to_ground = 120;
  double breaker_a = 20;
  int edition = 2020;  // of the NEC: 2017, 2020, 2023, 2026
};
// Does it need a GFCI (in the metric world a 30 mA RCD)? NEC 210.8(A)(3) for receptacles: to
// 2017 of 15 and 20 A, from 2020 all to 150 V to ground; from 2020 also 210.8(F) for outlets that
// are wired in: to 50 A, in 2026 to 60 A; second hand. IEC 60364-4-41,
// 411.3.3: socket-outlets to 32 A, second hand. `known` false where none of them speaks; the words
// of a known answer begin with "yes" or "not asked for".
Answer shock_protection(Code code, const Outlet& outlet);

// How long does a class A GFCI take, s? (20 / mA)^1.43, UL 943, second hand; trips from 6 mA, must
// not below 4. nullopt below 6 mA: it need not trip.
std::optional<double> gfci_trip_s(double milliamps);
inline constexpr double kGfciTrips_ma = 6, kGfciHolds_ma = 4;

// Highest place of the outlets a home must have front and back: 6 ft 6 in (2.0 m) above the ground,
// NEC 210.52(E), read.
inline constexpr double kOutletHighest_mm = 1981.2;

}  // namespace hs::power
