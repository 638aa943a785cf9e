#pragma once
// Outlets and lamp of the station: circuit, drop, box, covers, cut-outs: values of the packet. For
// a talk with the licensed electrician, who decides.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/frame.h"
#include "engine/power/box.h"
#include "engine/power/cutout.h"
#include "engine/power/outdoors.h"
#include "engine/power/wire.h"

namespace hs::evaluate {

struct Build;
struct Evaluation;

// One question and its answer by a published clause, or "ask the licensed electrician".
struct WiringAnswer {
  std::string_view about;  // "cover over the buried wire"
  power::Answer answer;
};

// Which part of the list a panel is, and which of its pieces.
struct PanelPart {
  int part = 0;       // its number, from 1
  int one_of = 1;     // how many of it are made: only this one is cut
  std::string place;  // "left side under the oven, bay 1"
};

// An opening as it lies on its part's drawing: its middle from the left and from below.
struct OnPart {
  double along_mm = 0, across_mm = 0;
  double long_mm = 0, wide_mm = 0;  // along and across; round: both the diameter
  std::string_view left_edge;  // of the one piece that is cut, as its drawing lies: "lower edge"
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
  std::vector<PanelPart> panel_parts;  // of each panel
  std::vector<power::Fitting> fittings;
  std::vector<power::Keepout> keepouts;
  power::Cutting cutting;       // remarks name fittings and keepouts by index
  std::vector<OnPart> on_part;  // of each of its cut-outs
};

// nullopt where no outlet and no lamp is asked for.
std::optional<Wiring> wiring_of(const config::Config& config, const Evaluation& evaluation,
                                const Build& build);

}  // namespace hs::evaluate
