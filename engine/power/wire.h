#pragma once
// Copper wire by its gauge or section: what it carries, what it loses over a run.
//
// For a talk with the licensed electrician, who decides. Codes are adopted late and amended; the
// editions named are of NFPA 70 (NEC), read at second hand where nothing else is said.

#include <optional>
#include <span>
#include <string_view>

namespace hs::power {

// What to say where no source was found.
inline constexpr std::string_view kAsk = "unknown: ask the licensed electrician";

// Copper, AWG 14, 12, 10, 8, 6.
struct Wire {
  int awg = 14;
  double cmil = 0;                      // circular mils: NEC chapter 9, table 8
  std::optional<double> solid_ohm_kft;  // DC resistance at 75 C, uncoated: the same table
  double stranded_ohm_kft = 0;
  // Amperes by the insulation's temperature: table 310.16 (2017 and before: 310.15(B)(16)).
  double amps_60c = 0, amps_75c = 0, amps_90c = 0;
  std::optional<double> fuse_a;  // most that may protect it: 240.4(D), small conductors
  double box_in3 = 0;            // room that one takes in a box: table 314.16(B)
};

// The row of a gauge; nullopt for any other than 14, 12, 10, 8, 6: kAsk. 6 has no solid resistance
// and its circular mils are from memory.
std::optional<Wire> wire(int awg);
std::span<const Wire> wires();  // from the thinnest

inline constexpr double kMetresPerKft = 304.8;

// Voltage lost over a run, V, there and back: 2 x I x L x R. One-way length in m, amperes 0 or
// more, ohms in a thousand feet. Resistive, one phase; at 20 C the drop is a fifth less than by
// the table's 75 C.
double drop_v(double amps, double one_way_m, double ohm_kft);

// The same by the pocket formula, 2 K I L / cmil with K 12.9 for copper at 75 C (second hand).
// Within 1 % of the table for 14 to 8 AWG.
double drop_by_k_v(double amps, double one_way_m, double cmil);

// The same for a section in mm2: 2 I L rho / S with rho 0.0225 ohm mm2/m, copper at its working
// temperature (IEC 60364-5-52 annex G, from memory). Section above 0.
double drop_mm2_v(double amps, double one_way_m, double section_mm2);

// Advice, not a rule: 3 % in a branch circuit, 5 % with the feeder (NEC 210.19 and 215.2,
// informational notes; 90.5(C)). Metric world: 3 % for lighting, 5 % for other uses (IEC 60364-5-52
// table G.52.1, from memory).
inline constexpr double kBranchDrop = 0.03, kTotalDrop = 0.05;

// Does the run keep within a share of its voltage, stranded copper? The thinnest wire that does and
// that the breaker may protect; nullopt: none of wires() does, ask the licensed electrician.
// Volts above 0; share 0 to 1.
std::optional<Wire> wire_for_run(double volts, double amps, double one_way_m, double breaker_a,
                                 double share = kBranchDrop);

// Longest one-way run, m, that loses no more than the share; nullopt where no current flows.
std::optional<double> longest_run_m(double volts, double amps, double ohm_kft,
                                    double share = kBranchDrop);

// One thing on the circuit.
struct Load {
  double watts = 0;
  bool continuous = false;  // 3 hours or more on end
};
struct Circuit {
  double amps = 0;       // all at once
  double counted_a = 0;  // continuous loads 1.25 times: NEC 210.20(A), from memory
  bool fits = false;     // counted_a within the breaker
  double left_a = 0;     // of the breaker; negative: too much
};
// Do these loads fit on one circuit? Unity power factor. Volts above 0.
Circuit circuit_of(std::span<const Load> loads, double volts, double breaker_a);

}  // namespace hs::power
