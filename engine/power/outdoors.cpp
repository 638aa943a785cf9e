#include "engine/power/outdoors.h"

#include <cmath>
#include <cstddef>

#include "engine/power/wire.h"

namespace hs::power {
namespace {

using rules::Basis;

constexpr double kInch_mm = 25.4;

Answer not_known() { return {false, kAsk, "", Basis::Judgement, {}}; }

}  // namespace

Answer cover_depth(Code code, Buried how, bool slab) {
  if (code != Code::Nec) return not_known();
  constexpr double kSoil_in[] = {24, 6, 18, 12, 6};
  constexpr double kSlab_in[] = {18, 4, 4, 6, 6};
  constexpr std::string_view kWords[] = {
      "least cover over cable laid in the soil", "least cover over rigid metal conduit",
      "least cover over plastic conduit",
      "least cover over a home's 120 V circuit of at most 20 A behind a GFCI",
      "least cover over lighting wires of at most 30 V"};
  constexpr std::string_view kClauses[] = {
      "NEC table 300.5 (2023: 300.5(A)), column 1", "NEC table 300.5 (2023: 300.5(A)), column 2",
      "NEC table 300.5 (2023: 300.5(A)), column 3", "NEC table 300.5 (2023: 300.5(A)), column 4",
      "NEC table 300.5 (2023: 300.5(A)), column 5"};
  const auto i = static_cast<std::size_t>(how);
  return {true, kWords[i], kClauses[i], slab ? Basis::Memory : Basis::SecondHand,
          (slab ? kSlab_in[i] : kSoil_in[i]) * kInch_mm};
}

Wetness wetness(bool outdoors, std::optional<bool> covered, std::optional<bool> rain_reaches) {
  if (!outdoors) return Wetness::Dry;
  if (!covered || (*covered && !rain_reaches)) return Wetness::Unknown;
  return *covered && !*rain_reaches ? Wetness::Damp : Wetness::Wet;
}

Answer outlet_cover(Code code, Wetness where) {
  if (where == Wetness::Dry) return not_known();  // no clause for indoors is kept here
  // What is not known is taken as wet: the dearer cover, and never the wrong one.
  const bool damp = where == Wetness::Damp;
  if (code == Code::Iec) {
    return {true,
            "at least IPX4 (splashed from all sides); IPX5 where it is hosed down",
            "IEC 60364-5-51 and 60364-7-714",
            Basis::Memory,
            {}};
  }
  if (damp) {
    return {true,
            "a weather-resistant (WR) outlet under a cover that is weatherproof when closed",
            "NEC 406.9(A)",
            Basis::SecondHand,
            {}};
  }
  return {true,
          "a weather-resistant (WR) outlet under an extra-duty cover that is weatherproof with the "
          "plug in",
          "NEC 406.9(B)(1)",
          Basis::SecondHand,
          {}};
}

Answer lamp_mark(Code code, Wetness where) {
  if (where == Wetness::Dry) return not_known();
  if (code == Code::Iec) {
    return {true,
            "at least IPX4; under a roof that keeps rain off IP33 may do: ask",
            "IEC 60364-5-51 and 60364-7-714",
            Basis::Memory,
            {}};
  }
  if (where == Wetness::Damp) {
    return {
        true, "marked suitable for damp or for wet locations", "NEC 410.10(A)", Basis::Seen, {}};
  }
  return {true, "marked suitable for wet locations", "NEC 410.10(A)", Basis::Seen, {}};
}

Answer shock_protection(Code code, const Outlet& outlet) {
  if (!outlet.outdoors) return not_known();
  if (code == Code::Iec) {
    if (outlet.receptacle && outlet.breaker_a <= 32) {
      return {true,
              "yes: a residual-current device of at most 30 mA (older editions: to 20 A)",
              "IEC 60364-4-41, 411.3.3 (BS 7671 411.3.3, 415.1)",
              Basis::SecondHand,
              {}};
    }
    return not_known();
  }
  if (outlet.volts_to_ground > 150) return not_known();
  if (outlet.edition < 2020) {
    if (outlet.receptacle && outlet.breaker_a <= 20) {
      return {true, "yes: a GFCI", "NEC 210.8(A)(3), 2017 and before", Basis::SecondHand, {}};
    }
    return not_known();
  }
  if (outlet.receptacle) {
    return {true, "yes: a GFCI", "NEC 210.8(A)(3), 2020 and later", Basis::SecondHand, {}};
  }
  const double most_a = outlet.edition < 2026 ? 50 : 60;
  if (outlet.breaker_a <= most_a) {
    return {true,
            "yes: a GFCI, although it is wired in for good",
            most_a > 50 ? "NEC 210.8(F), 2026: to 60 A" : "NEC 210.8(F), 2020 and 2023: to 50 A",
            Basis::SecondHand,
            {}};
  }
  return {true,
          "not asked for by this clause; ask the licensed electrician all the same",
          most_a > 50 ? "NEC 210.8(F), 2026: to 60 A" : "NEC 210.8(F), 2020 and 2023: to 50 A",
          Basis::SecondHand,
          {}};
}

std::optional<double> gfci_trip_s(double milliamps) {
  if (!(milliamps >= kGfciTrips_ma)) return {};
  return std::pow(20 / milliamps, 1.43);
}

}  // namespace hs::power
