// The packet's stage: what follows from the parts, and what it means against its rules.

#include "engine/evaluate/packet.h"

#include <algorithm>

#include "engine/base/quantity.h"
#include "engine/config/fields.h"
#include "engine/config/validate.h"
#include "engine/evaluate/metal_cutting.h"
#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"
#include "engine/evaluate/survey_result.h"

namespace hs::evaluate {
namespace {

constexpr double kInch_mm = 25.4;

void say(Findings& out, std::string_view rule, Verdict verdict) {
  out.add({rule, verdict, {}, {}, {}, {}, {}});
}

void add_cut_findings(Findings& out, const Cutting& cutting) {
  double worst = 0, longest_mm = 0;  // of a part that fits nothing: its longer side
  bool listed = true, proven = true;
  for (const CutGroup& group : cutting.groups) {
    proven = proven && group.proven;
    if (!group.proven && group.too_large.empty()) {
      worst = std::max(worst, group.at_least > 0 ? group.value / group.at_least - 1 : 1.0);
    }
    for (const std::size_t item : group.too_large) {
      const CutItem& one = group.items[item];
      longest_mm = std::max({longest_mm, one.length_mm, group.sheets ? one.width_mm : 0});
    }
    for (const CutStock& stock : group.stocks) listed = listed && stock.row.has_value();
  }
  if (longest_mm > 0) out.add({"cuts.too_large", Verdict::Fail, {}, longest_mm, {}, {}, {}});
  if (longest_mm > 0) {
    say(out, "cuts.plan", Verdict::Fail);
  } else if (proven) {
    say(out, "cuts.plan", Verdict::Ok);
  } else {
    out.add({"cuts.plan", Verdict::Warn, {}, std::min(worst, 1.0), {}, {}, {}});
  }
  if (!cutting.unused.empty()) say(out, "cuts.stock", Verdict::Warn);
  if (!listed || cutting.unused.empty()) {
    say(out, "cuts.stock", listed ? Verdict::Ok : Verdict::Unknown);
  }
}

void add_metal_findings(Findings& out, const MetalSheets& metal) {
  if (metal.orders.empty()) return;
  Verdict fold = Verdict::Ok;
  bool measured = true;
  double least_mm = metal.orders.front().least_left_mm;
  for (const MetalOrder& order : metal.orders) {
    if (!order.blank.possible()) {
      fold = Verdict::Fail;
    } else if (!order.blank.cautions.empty() && fold == Verdict::Ok) {
      fold = Verdict::Warn;
    }
    measured = measured && order.measured;
    least_mm = std::min(least_mm, order.least_left_mm);
  }
  say(out, "metal.fold", fold);
  const auto turned = std::find_if(metal.orders.begin(), metal.orders.end(),
                                   [](const MetalOrder& order) { return order.hem_mm > 0; });
  if (turned == metal.orders.end()) {
    say(out, "metal.hem", Verdict::Warn);
  } else {
    out.at_least("metal.hem", turned->fit_mm, turned->hem_needs_mm, Verdict::Fail, {});
  }
  out.at_least("metal.fit", least_mm, 0, Verdict::Warn, {});
  say(out, "metal.measure", measured ? Verdict::Ok : Verdict::Unknown);
}

void add_power_findings(Findings& out, const std::optional<Wiring>& wiring) {
  if (!wiring) return say(out, "power.none", Verdict::Ok);
  const bool answered = std::all_of(wiring->answers.begin(), wiring->answers.end(),
                                    [](const WiringAnswer& one) { return one.answer.known; });
  say(out, "power.code", answered ? Verdict::Warn : Verdict::Unknown);
  say(out, "power.circuit", wiring->circuit.fits ? Verdict::Ok : Verdict::Fail);
  if (wiring->drop_share) {
    const double share = *wiring->drop_share, most = wiring->advised_share;
    out.add({"power.drop",
             share <= most ? Verdict::Ok : Verdict::Warn,
             {},
             share,
             most,
             most - share,
             {}});
  } else {
    say(out, "power.drop", Verdict::Unknown);
  }
  Verdict worst = Verdict::Ok;
  for (const power::Remark& remark : wiring->cutting.remarks) {
    if (badness(remark.verdict) > badness(worst)) worst = remark.verdict;
  }
  say(out, "power.cutout", worst);
}

void add_finish_findings(Findings& out, const Painting& painting) {
  say(out, "finish.day", painting.air_given ? painting.day.verdict : Verdict::Unknown);
  if (painting.gap_left_mm) {
    out.at_least("finish.gap", *painting.gap_left_mm, finish::kInsetLeast_mm, Verdict::Warn, {});
  }
}

void add_plan_findings(Findings& out, const config::Config& config, const Timetable& timetable) {
  if (!timetable.plan) {
    return say(out, "plan.days", config.plan.start.empty() ? Verdict::Unknown : Verdict::Fail);
  }
  say(out, "plan.days", Verdict::Ok);
  const bool open = std::any_of(timetable.plan->tasks.begin(), timetable.plan->tasks.end(),
                                [](const schedule::Placed& one) { return one.weather_open; });
  say(out, "plan.weather", open ? Verdict::Warn : Verdict::Ok);
}

void add_money_findings(Findings& out, const Costing& costing) {
  say(out, "money.prices",
      !costing.total              ? Verdict::Unknown
      : costing.without_price > 0 ? Verdict::Warn
                                  : Verdict::Ok);
}

bool scribed(const Evaluation& e) { return e.survey && e.survey->base; }

// Everything but the inches.
std::shared_ptr<Packet> packet_of(const config::Config& config, const Evaluation& e,
                                  Cutting cutting) {
  auto packet = std::make_shared<Packet>();
  packet->cutting = std::move(cutting);
  packet->metal = metal_orders(config, e.build->frame, e.build->parts);
  add_unused_metal(config, packet->metal, packet->cutting);
  packet->wiring = wiring_of(config, e, *e.build);
  packet->painting = painting_of(config, e.build->parts, e.build->frame.pieces);
  packet->timetable = timetable_of(config, e, *packet);
  packet->costing = costing_of(config, e, *packet);
  return packet;
}

int pieces_changed(const std::vector<Change>& changes) {
  int count = 0;
  for (const Change& change : changes) {
    if (change.of == ChangeOf::Part) count += change.count;
  }
  return count;
}

double moved(const std::optional<double>& before, const std::optional<double>& after) {
  return before && after ? *after - *before : 0;
}

// One cook's eye or elbow an inch higher: another station, to be planned as this one.
struct Inch {
  std::size_t cook = 0;
  bool elbow = false;
  config::Config config;
  Evaluation after;
};

// Nothing where the field's range ends before that.
std::unique_ptr<Inch> inch_of(const config::Config& config, const Evaluation& e, std::size_t who,
                              bool elbow) {
  const config::Field* field =
      config::find_field(elbow ? "cooks[].elbow_height_mm" : "cooks[].eye_height_mm");
  const cook::Body& body = e.cooks[who].body;
  const double mm =
      quantised(Quantity::Length, (elbow ? body.elbow.value_mm : body.eye.value_mm) + kInch_mm);
  if (field == nullptr || mm < field->min || mm > field->max) return nullptr;
  auto inch = std::make_unique<Inch>();
  inch->cook = who;
  inch->elbow = elbow;
  inch->config = config;
  field->set(inch->config, who, mm);
  // A body that nobody has (an elbow above its shoulder) is no question.
  if (!config::validate(inch->config).empty()) return nullptr;
  inch->after = evaluate_all(inch->config, e.marks);
  return inch;
}

InchCost cost_of(const Inch& inch, const Evaluation& before) {
  InchCost out;
  out.cook = inch.cook;
  out.elbow = inch.elbow;
  out.counter_moves_mm = moved(before.used.counter_mm, inch.after.used.counter_mm);
  out.oven_base_moves_mm = moved(before.used.oven_base_mm, inch.after.used.oven_base_mm);
  out.changes = changes(before, inch.after);
  out.pieces_changed = pieces_changed(out.changes);
  if (!inch.after.packet) return out;
  const Costing &was = before.packet->costing, &is = inch.after.packet->costing;
  // What leaves the total because it has no price there is no saving.
  if (was.total && is.total && unpriced(was) == unpriced(is))
    out.total_moves = *is.total - *was.total;
  out.mass_moves_kg = is.built_kg - was.built_kg;
  return out;
}

}  // namespace

// The station itself, then each inch in turn: one plan at a time.
struct PacketRun::State {
  config::Config config;
  Evaluation e;
  std::int64_t steps = 0;
  std::shared_ptr<Packet> packet;  // the station's, once it is planned
  std::unique_ptr<Inch> inch;      // in work
  std::unique_ptr<CuttingRun> run;
  std::size_t next = 0;  // inch: twice the cook, the elbow one more
  std::size_t done = 0, groups = 0;
  bool over = false;

  bool made() const { return e.build && e.build->frame.made(); }

  void begin(const config::Config& of, const Evaluation& planned) {
    run = std::make_unique<CuttingRun>(of, planned.build->parts, scribed(planned), steps);
  }

  // What is planned becomes a packet, and the next thing to plan is found.
  void end() {
    done += run->groups();
    if (!packet) {
      packet = packet_of(config, e, run->take());
      e.packet = packet;
    } else {
      inch->after.packet = packet_of(inch->config, inch->after, run->take());
      packet->costing.inches.push_back(cost_of(*inch, e));
    }
    run.reset();
    find_next();
  }

  void find_next() {
    for (inch.reset(); next < 2 * e.cooks.size(); ++next) {
      const CookResult& cook = e.cooks[next / 2];
      const bool elbow = next % 2 != 0;
      if (!(elbow ? cook.at_prep : cook.at_oven)) continue;
      inch = inch_of(config, e, next / 2, elbow);
      if (!inch) continue;
      if (inch->after.build && inch->after.build->frame.made()) {
        ++next;
        return begin(inch->config, inch->after);
      }
      packet->costing.inches.push_back(cost_of(*inch, e));
    }
    over = true;
  }

  void say_all() {
    Findings out;
    if (packet) {
      add_cut_findings(out, packet->cutting);
      add_metal_findings(out, packet->metal);
      add_power_findings(out, packet->wiring);
      add_finish_findings(out, packet->painting);
      add_plan_findings(out, config, packet->timetable);
      add_money_findings(out, packet->costing);
    } else {
      say(out, "cuts.none", Verdict::Unknown);
    }
    e.findings.insert(e.findings.end(), out.list.begin(), out.list.end());
    order_by_harm(e.findings);
  }
};

PacketRun::PacketRun(config::Config config, Evaluation evaluation, std::int64_t steps)
    : state_(std::make_unique<State>()) {
  state_->config = std::move(config);
  state_->e = std::move(evaluation);
  state_->steps = steps;
  state_->over = !state_->made();
  if (state_->over) return;
  state_->begin(state_->config, state_->e);
  state_->groups = state_->run->groups();
}

PacketRun::PacketRun(const config::Config& config, Marks marks, std::int64_t steps)
    : PacketRun(config, evaluate_all(config, marks), steps) {}

PacketRun::~PacketRun() = default;

const config::Config& PacketRun::config() const { return state_->config; }

PacketRun::Progress PacketRun::progress() const {
  const State& s = *state_;
  std::size_t inches = 0;
  for (const CookResult& cook : s.e.cooks)
    inches += (cook.at_oven ? 1U : 0U) + (cook.at_prep ? 1U : 0U);
  const std::size_t all = std::max<std::size_t>(1, s.groups * (1 + inches));
  const std::size_t done = s.over ? all : s.done + (s.run ? s.run->planned() : 0);
  return {std::min(done, all), all, s.packet != nullptr};
}

bool PacketRun::advance(std::int64_t steps) {
  if (state_->over) return false;
  if (!state_->run->advance(steps)) state_->end();
  return !state_->over;
}

Evaluation PacketRun::take() {
  while (!state_->over) state_->end();
  state_->say_all();
  return std::move(state_->e);
}

void add_packet(const config::Config& config, Evaluation& e, std::int64_t steps) {
  PacketRun run(config, std::move(e), steps);
  while (run.advance(steps)) {
  }
  e = run.take();
}

Evaluation evaluate_packet(const config::Config& config, Marks marks, std::int64_t steps) {
  Evaluation e = evaluate_all(config, marks);
  add_packet(config, e, steps);
  return e;
}

}  // namespace hs::evaluate
