// The build stage: cabinets for the heights in use, and what they mean against their rules.

#include "engine/evaluate/build.h"

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/loading.h"
#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"
#include "engine/evaluate/surveying.h"
#include "engine/frame/as_built.h"
#include "engine/frame/cylinder.h"

namespace hs::evaluate {
namespace {

constexpr double kShims_mm = 25;        // that are not packed: judgement
constexpr double kLevel_mm = 25;        // a step that nobody minds: judgement
constexpr double kThinnestSlab_mm = 6;  // cement board of 1/4 in: common practice

bool heavy(const config::Config& config) { return config::is_masonry(config.oven.kind); }

// Both published forms at once. The grill's names each opening, the fire feature's all together:
// here there are two, in front and behind.
frame::Asked asked_of(const config::Config& config, const Evaluation& e) {
  const double gas_kg = config.site.cylinder_kg.value_or(frame::kUsualGas_kg);
  const clearance::Vents grill = clearance::grill_vents(gas_kg);
  const clearance::Vents fire = clearance::fire_feature_vents(gas_kg);
  frame::Asked asked{{e.used.counter_mm, e.used.oven_base_mm},
                     std::max(grill.high_cm2, fire.high_cm2 / 2),
                     std::max(grill.low_cm2, fire.low_cm2 / 2),
                     {},
                     0,
                     0};
  // One base for its boards and for what carries, whether the boards that hide it reach or not.
  if (e.survey && e.survey->base) stand_on(*e.survey->base, asked);
  return asked;
}

void add_refusals(Findings& out, const frame::Frame& frame) {
  for (const frame::Refusal& one : frame.refusals) {
    if (one.measured_mm == 0 && one.limit_mm == 0) {
      out.add({one.rule, Verdict::Fail, {}, {}, {}, {}, one.where});
      continue;
    }
    const double margin_mm = -std::abs(one.measured_mm - one.limit_mm);
    out.add({one.rule, Verdict::Fail, {}, one.measured_mm, one.limit_mm, margin_mm, one.where});
  }
}

void add_gas(Findings& out, const config::Config& config, const frame::Frame& frame) {
  if (frame.gas.empty()) {
    if (config.site.cylinder == config::Cylinder::OwnCabinet) {
      out.add({"frame.gas_missing", Verdict::Warn, {}, {}, {}, {}, {}});
    }
    return;
  }
  out.add({"frame.gas_bay",
           config.site.cylinder_kg ? Verdict::Ok : Verdict::Unknown,
           {},
           {},
           {},
           {},
           {}});
  const auto cylinder = frame::cylinder_of(config);
  if (!cylinder) {
    out.add({"frame.gas_room", Verdict::Unknown, {}, {}, {}, {}, {}});
    return;
  }
  // One line for each way that is too small: the smallest bay speaks for the others.
  struct Size {
    frame::Way way;
    double frame::GasBay::*is_mm;
    double wanted_mm;
  };
  const Size sizes[] = {{frame::Way::Width, &frame::GasBay::clear_width_mm, cylinder->across_mm},
                        {frame::Way::Depth, &frame::GasBay::clear_depth_mm, cylinder->across_mm},
                        {frame::Way::Height, &frame::GasBay::clear_height_mm, cylinder->high_mm}};
  bool room = true;
  for (const Size& size : sizes) {
    const frame::GasBay& least =
        *std::min_element(frame.gas.begin(), frame.gas.end(),
                          [&size](const frame::GasBay& a, const frame::GasBay& b) {
                            return a.*size.is_mm < b.*size.is_mm - kTolerance;
                          });
    if (least.*size.is_mm >= size.wanted_mm - kTolerance) continue;
    room = false;
    out.at_least("frame.gas_room", least.*size.is_mm, size.wanted_mm, Verdict::Fail, {},
                 frame::clear_words(size.way, least.bay));
  }
  if (room) out.add({"frame.gas_room", Verdict::Ok, {}, {}, {}, {}, {}});
}

// How far the oven stands above the counter that is under it: a block's or slab's height.
double step_up_mm(const config::Config& config, const Evaluation& e, const frame::Frame& frame) {
  if (frame.slab_mm) return *frame.slab_mm;
  const bool one_cabinet =
      config.station.arrangement != config::Arrangement::TwoLevel && !heavy(config);
  if (!one_cabinet || frame.places.riser || !e.used.oven_base_mm || !e.used.counter_mm) return 0;
  return *e.used.oven_base_mm - *e.used.counter_mm;
}

// The widest slot of each run over what closes a bay.
void add_slots(Findings& out, const config::Config& config, const frame::Frame& frame) {
  const bool inset = config.frame.fronts == config::FrontKind::Inset;
  const double usual_mm = inset ? config.build.gap_mm : 0;
  for (const frame::Run& run : frame.runs) {
    std::vector<double> tops_mm(run.bays.size(), 0);
    for (const frame::Piece& piece : frame.pieces) {
      const bool front = piece.kind == frame::Kind::Door || piece.kind == frame::Kind::DrawerFront;
      if (!front || piece.oven != run.oven || piece.bay < 0) continue;
      double& top_mm = tops_mm[static_cast<std::size_t>(piece.bay)];
      top_mm = std::max(top_mm, piece.place.top_mm);
    }
    double slot_mm = 0;
    for (std::size_t i = 0; i < tops_mm.size(); ++i) {
      if (tops_mm[i] <= 0) continue;
      slot_mm = std::max(slot_mm, run.bays[i].opening.top_mm - tops_mm[i]);
    }
    if (slot_mm <= usual_mm + kTolerance) continue;
    out.add({"frame.door_slot",
             Verdict::Warn,
             {},
             slot_mm,
             usual_mm,
             usual_mm - slot_mm,
             run.oven ? "under the oven" : "under the dough counter"});
  }
}

void add_missing_bays(Findings& out, const config::Config& config, const frame::Frame& frame) {
  const std::optional<config::Holds>* given[] = {&config.frame.bay_1, &config.frame.bay_2,
                                                 &config.frame.bay_3};
  constexpr std::string_view kNames[] = {"first bay", "second bay", "third bay"};
  for (const frame::Run& run : frame.runs) {
    if (run.oven) continue;
    for (std::size_t i = run.bays.size(); i < std::size(given); ++i) {
      if (*given[i]) out.add({"frame.bay_missing", Verdict::Warn, {}, {}, {}, {}, kNames[i]});
    }
  }
}

void add_grill(Findings& out, const frame::Frame& frame) {
  if (!frame.grill) return;
  const frame::GrillGap& gap = *frame.grill;
  if (gap.free_mm < 0) {
    out.add({"frame.grill", Verdict::Fail, {}, gap.free_mm, gap.listed_mm, gap.free_mm, {}});
  } else if (!gap.listed_mm) {
    out.add({"frame.grill", Verdict::Unknown, {}, gap.free_mm, {}, {}, {}});
  } else {
    out.at_least("frame.grill", gap.free_mm, *gap.listed_mm, Verdict::Fail, {});
  }
  if (gap.step_mm) {
    const double off_mm = std::abs(*gap.step_mm);
    out.at_most("frame.grill_step", off_mm, kLevel_mm, Verdict::Warn, {});
  }
}

std::vector<Finding> findings_of_build(const config::Config& config, const Evaluation& e,
                                       const Build& build, const frame::Asked& asked) {
  Findings out;
  const frame::Frame& frame = build.frame;
  add_refusals(out, frame);
  if (heavy(config) && e.used.oven_base_mm) {
    out.add({"frame.masonry", Verdict::Warn, {}, {}, {}, {}, {}});
  }
  add_grill(out, frame);
  if (frame.built_unknown > 0) {
    out.add({"frame.as_built", Verdict::Warn, {}, {}, {}, {}, "a piece is not in this station"});
  }
  for (const frame::Measure& one : frame.measures) {
    if (!one.ignored_mm) continue;
    const double off_mm = std::abs(*one.ignored_mm - one.planned_mm);
    const bool slip = off_mm > frame::kFarOff_mm + kTolerance;
    out.add({slip ? "frame.as_built" : "frame.as_built_fits",
             Verdict::Fail,
             {},
             one.ignored_mm,
             one.planned_mm,
             slip ? std::optional(frame::kFarOff_mm - off_mm) : std::nullopt,
             frame::lasting_name(one.name)});
  }
  add_load_findings(out, config, build.loads);
  if (!frame.made()) return out.list;
  // Boards cut to one height and boxes that stand at another.
  const auto& cut = asked.base_mm;
  const double high_mm = frame.base_mm - asked.ground_low_mm;
  if (cut && std::abs(*cut - frame.base_mm) > kTolerance) {
    out.add({"frame.base", Verdict::Warn, {}, high_mm, *cut - asked.ground_low_mm, {}, {}});
  } else {
    out.add({"frame.base", Verdict::Ok, {}, high_mm, {}, {}, {}});
  }
  const auto carrier =
      std::find_if(frame.pieces.begin(), frame.pieces.end(),
                   [](const frame::Piece& piece) { return piece.kind == frame::Kind::Carrier; });
  if (cut && carrier != frame.pieces.end()) {
    const double under_mm = carrier->place.bottom_mm - asked.ground_low_mm;
    out.at_most("frame.packing", under_mm, kShims_mm, Verdict::Warn, {});
  }
  for (const frame::Run& run : frame.runs) {
    const double wanted_mm = run.counter.top_mm, off_mm = run.top_mm - wanted_mm;
    out.add({"frame.top_height",
             std::abs(off_mm) <= kTolerance ? Verdict::Ok : Verdict::Warn,
             {},
             run.top_mm,
             wanted_mm,
             off_mm,
             run.oven ? "under the oven" : "for dough"});
  }
  const double step_mm = step_up_mm(config, e, frame);
  if (step_mm > kTolerance && step_mm < kThinnestSlab_mm - kTolerance) {
    out.add({"frame.riser_thin",
             Verdict::Warn,
             {},
             step_mm,
             kThinnestSlab_mm,
             step_mm - kThinnestSlab_mm,
             {}});
  } else if (frame.slab_mm) {
    const double least_mm = frame::least_riser_mm(config.build);
    out.add({"frame.riser", Verdict::Warn, {}, *frame.slab_mm, least_mm, {}, {}});
  }
  add_slots(out, config, frame);
  add_missing_bays(out, config, frame);
  add_gas(out, config, frame);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (config.cooks[i].seated && e.cooks[i].at_prep && e.used.counter_mm) {
      out.add({"frame.knee_bay", Verdict::Warn, i, {}, {}, {}, {}});
    }
  }
  return out.list;
}

// What the loads ask for where it stands at a wall: known only once the pieces are weighed.
void add_tie(const config::Config& config, Build& build) {
  if (config.loads.held != config::Held::Wall || build.loads.screws == 0) return;
  double count = 0;
  for (const loads::RunLoads& run : build.loads.runs) {
    const bool tied = std::any_of(run.cases.begin(), run.cases.end(),
                                  [](const loads::TipCase& one) { return one.tie_n > 0; });
    if (tied) count += build.loads.screws;
  }
  build.parts.hardware.push_back(
      {"screw of the tie, #10 with 1 1/2 in of thread", count, "",
       "what the worst case of tipping asks for, in each cabinet that needs it; into the wall's "
       "framing, never into its face alone"});
  build.parts.hardware.push_back(
      {"washer of the tie, at least " + trimmed(std::ceil(build.loads.washer_mm), 0) + " mm across",
       count, "", "one under each screw of the tie"});
}

}  // namespace

void add_build(const config::Config& config, Evaluation& e,
               const std::shared_ptr<const Build>& before) {
  const frame::Asked asked = asked_of(config, e);
  const std::uint64_t digest = loads_digest(config, e, frame::digest_of(config, asked));
  if (before && before->digest == digest) {
    e.build = before;
  } else {
    Build build;
    build.digest = digest;
    build.frame = frame::frame_of(config, asked);
    build.parts =
        parts::list_of(build.frame.pieces, {config.build.rough_mm, config.build.bedding_mm});
    build.loads = loads_of_build(config, e, build.frame, build.frame.pieces);
    add_tie(config, build);
    e.build = std::make_shared<const Build>(std::move(build));
  }
  for (const Finding& finding : findings_of_build(config, e, *e.build, asked)) {
    e.findings.push_back(finding);
  }
  order_by_harm(e.findings);
}

void keep_build(Evaluation& e, const Evaluation& before) {
  e.build = before.build;
  for (const Finding& finding : before.findings) {
    if (finding.rule.starts_with("frame.") || finding.rule.starts_with("load.")) {
      e.findings.push_back(finding);
    }
  }
  order_by_harm(e.findings);
}

Evaluation evaluate_all(const config::Config& config, Marks marks) {
  Evaluation e = evaluate(config, marks);
  add_build(config, e);
  return e;
}

}  // namespace hs::evaluate
