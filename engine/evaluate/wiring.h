#pragma once
// Outlets and lamp of the station: circuit, drop, box, covers, cut-outs: values of the packet. For
// a talk with the licensed electrician, who decides.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/frame.h"
#include "engine/power/box.h"
#include "engine/power/cutout.h"
#include "engine/power/outdoors.h"
#include "engine/power/wire.h"

namespace hs::evaluate {

struct Evaluation;

// One question and its answer by a published clause, or "ask the licensed electrician".
struct WiringAnswer {
  std::string_view about;  // "cover over the buried wire"
  power::Answer answer;
};

struct Wiring {
  power::Code code = power::Code::Nec;
  double volts = 120, breaker_a = 20;
  power::Circuit circuit;
  double advised_share = 0.03;  // of the voltage, that the run may lose
  // Absent: run or wire is not known.
  std::optional<double> drop_v, drop_share;
  std::optional<double> longest_run_mm;    // that keeps the advice with this wire
  std::optional<power::Wire> thinnest;     // that keeps the advice over this run; AWG only
  std::optional<power::BoxByEdition> box;  // of one outlet box; absent: the metric world
  std::vector<WiringAnswer> answers;
  std::vector<power::Panel> panels;
  std::vector<power::Fitting> fittings;
  std::vector<power::Keepout> keepouts;
  power::Cutting cutting;  // remarks name fittings and keepouts by index
};

// nullopt where no outlet and no lamp is asked for.
std::optional<Wiring> wiring_of(const config::Config& config, const Evaluation& evaluation,
                                const frame::Frame& frame);

}  // namespace hs::evaluate
