#include "engine/power/wire.h"

namespace hs::power {
namespace {

constexpr double kCopperK = 12.9;  // ohm cmil/ft, 75 C
constexpr double kFeetPerMetre = 1 / 0.3048;
constexpr double kRho = 0.0225;  // ohm mm2/m

constexpr Wire kWires[] = {
    {14, 4110, 3.07, 3.14, 15, 20, 25, 15, 2.00},  {12, 6530, 1.93, 1.98, 20, 25, 30, 20, 2.25},
    {10, 10380, 1.21, 1.24, 30, 35, 40, 30, 2.50}, {8, 16510, 0.764, 0.778, 40, 50, 55, {}, 3.00},
    {6, 26240, {}, 0.491, 55, 65, 75, {}, 5.00},
};

}  // namespace

std::span<const Wire> wires() { return kWires; }

std::optional<Wire> wire(int awg) {
  for (const Wire& one : kWires) {
    if (one.awg == awg) return one;
  }
  return {};
}

double drop_v(double amps, double one_way_m, double ohm_kft) {
  return 2 * amps * (one_way_m / kMetresPerKft) * ohm_kft;
}

double drop_by_k_v(double amps, double one_way_m, double cmil) {
  return 2 * kCopperK * amps * one_way_m * kFeetPerMetre / cmil;
}

double drop_mm2_v(double amps, double one_way_m, double section_mm2) {
  return 2 * amps * one_way_m * kRho / section_mm2;
}

std::optional<Wire> wire_for_run(double volts, double amps, double one_way_m, double breaker_a,
                                 double share) {
  for (const Wire& one : kWires) {
    // The 60 C column and the small conductors' limit: what cables to an outbuilding go by.
    const double most_a = one.fuse_a.value_or(one.amps_60c);
    if (breaker_a > most_a) continue;
    if (drop_v(amps, one_way_m, one.stranded_ohm_kft) <= share * volts) return one;
  }
  return {};
}

std::optional<double> longest_run_m(double volts, double amps, double ohm_kft, double share) {
  const double drop = drop_v(amps, 1, ohm_kft);
  if (!(drop > 0)) return {};
  return share * volts / drop;
}

Circuit circuit_of(std::span<const Load> loads, double volts, double breaker_a) {
  Circuit circuit;
  for (const Load& load : loads) {
    const double amps = load.watts / volts;
    circuit.amps += amps;
    circuit.counted_a += load.continuous ? 1.25 * amps : amps;
  }
  circuit.left_a = breaker_a - circuit.counted_a;
  circuit.fits = circuit.left_a >= -1e-9;
  return circuit;
}

}  // namespace hs::power
