#include "engine/report/tilt_json.h"

#include <cmath>
#include <numbers>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/cook/stature.h"
#include "engine/report/json_values.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

constexpr double kRad = std::numbers::pi / 180;
constexpr double kRun_mm = 3048;  // of site.fall_mm: 10 ft
// A tape held by hand along the ground to someone's feet: our judgement.
constexpr double kTape_mm = 5;
// Further apart than this many of their errors, two angles are not the same: one in twenty of what
// agrees is called different.
constexpr double kApart = 2;
constexpr std::string_view kNotStill =
    "It was not held still, or the phone gave too few readings: lean it on something and measure "
    "again.";
constexpr std::string_view kNotTurned =
    "The two do not belong to one line: the second time the phone's other end goes forward, along "
    "the same line.";

struct Said {
  std::string problem;
  std::vector<std::string> lines;
  std::string field, value, label;
};

Said refused(std::string_view problem) { return {std::string(problem), {}, {}, {}, {}}; }

// To a tenth, an error never to less than it is.
std::string tenth(double deg) { return fixed(deg, 1) + "\u00B0"; }
std::string error_text(double deg) { return "\u00B1 " + tenth(std::ceil(deg * 10 - 1e-6) / 10); }

std::string mm_value(double mm) { return trimmed(mm, 1) + " mm"; }

Said sight(const config::Config& config, const evaluate::Evaluation& e, const Tilted& t,
           Units units) {
  const auto first = measure::hold(t.first);
  if (!first) return refused(kNotStill);
  measure::Angle angle = measure::one_way(*first);
  if (!t.second.empty()) {
    const auto second = measure::hold(t.second);
    if (!second) return refused(kNotStill);
    const auto both = measure::both_ways(*first, *second);
    if (!both) return refused(kNotTurned);
    angle = *both;
  }
  const evaluate::CookResult& cook = e.cooks[t.cook];
  const std::string& name = config.cooks[t.cook].name;
  if (!cook.at_oven) {
    return refused(name + " does not work at the oven in this plan, so it has no line of sight.");
  }
  // Which way is down the sensor does not say; an eye over the oven's floor looks down.
  const double down_deg = std::abs(angle.deg);
  Said said;
  said.lines.push_back("Measured: " + tenth(down_deg) + " below the level, " +
                       error_text(angle.error_deg) + " (one standard error).");
  said.lines.push_back(
      angle.zero_deg
          ? "The phone's own zero, " + tenth(*angle.zero_deg) + ", is cancelled."
          : "The phone's own zero is still in it. Turn the phone round and measure again to "
            "cancel it.");
  const sight::Eye& eye = cook.watching.eye;
  const oven::Floor& floor = e.geometry.floor;
  const double far_mm = floor.far_mm;
  const double run_mm = eye.distance_mm + far_mm;
  const double plan_deg = sight::gaze_down_deg(eye, far_mm);
  const double plan_error_deg =
      cook.body.eye.sd_mm / run_mm * std::pow(std::cos(plan_deg * kRad), 2) / kRad;
  said.lines.push_back("The plan: " + tenth(plan_deg) + " for " + name + ", eye " +
                       distance(eye.distance_mm, units) +
                       " in front of the mouth, to the far edge of the oven's floor, " +
                       error_text(plan_error_deg) + " from the eye height.");
  if (cook.watching.farthest_mm.value_or(0) < far_mm - 0.5) {
    said.lines.push_back(
        "In the plan that edge cannot be seen from there: if you see it, something differs.");
  }
  const double apart_deg = down_deg - plan_deg;
  const double error_deg = std::hypot(angle.error_deg, plan_error_deg);
  if (std::abs(apart_deg) <= kApart * error_deg) {
    said.lines.push_back("They agree within their errors.");
    return said;
  }
  const double higher_mm = run_mm * std::tan(down_deg * kRad) - eye.height_mm;
  said.lines.push_back("They are " + tenth(std::abs(apart_deg)) +
                       " apart, more than their errors explain: as if the eye were " +
                       plain_length(std::abs(higher_mm), units, true) +
                       (higher_mm > 0 ? " higher" : " lower") +
                       " above the oven's floor. Check where you stood, the eye height and the "
                       "oven's height by tape.");
  return said;
}

Said fall(const config::Config&, const evaluate::Evaluation&, const Tilted& t, Units units) {
  const auto away = measure::hold(t.first), turned = measure::hold(t.second);
  if (!away || !turned) return refused(kNotStill);
  const auto found = measure::fall(*away, *turned, kRun_mm);
  if (!found) {
    return refused(
        "The two do not belong to one line: lay the phone on its back on a straight board, the "
        "second time turned end for end on the same place.");
  }
  Said said;
  said.lines.push_back("The ground " + std::string(found->mm < 0 ? "rises " : "falls ") +
                       plain_length(std::abs(found->mm), units, true) +
                       " in 10 ft (3.05 m) away from the house, \u00B1 " +
                       plain_length(found->error_mm, units, true) + " (one standard error).");
  said.lines.push_back("A board of that length with a level on it is surer.");
  const config::Field* field = config::find_field("site.fall_mm");
  if (found->mm >= field->min && found->mm <= field->max) {
    said.field = field->path;
    said.value = mm_value(found->mm);
    said.label = "Put " + plain_length(found->mm, units, true) + " into the plan";
  }
  return said;
}

Said eye(const config::Config& config, const evaluate::Evaluation& e, const Tilted& t,
         Units units) {
  if (!t.distance_mm || *t.distance_mm < 1000 || *t.distance_mm > 8000) {
    return refused("Give the distance from the phone to the feet, " +
                   length_range_text(1000, 8000, unit_of(units)) + ".");
  }
  const auto feet = measure::hold(t.first), up = measure::hold(t.second);
  if (!feet || !up) return refused(kNotStill);
  const auto found = measure::eye_height(*feet, *up, *t.distance_mm, kTape_mm);
  if (!found) {
    return refused(
        "No height comes out of these: first along the edge at the feet, then at the "
        "eye, by the same end of the phone and from the same place.");
  }
  const config::Cook& cook = config.cooks[t.cook];
  const cook::Estimate& known = e.cooks[t.cook].body.eye;
  Said said;
  said.lines.push_back(cook.name + "'s eye is " + plain_length(found->mm, units, true) +
                       " above the ground, \u00B1 " + plain_length(found->error_mm, units, true) +
                       " (one standard error).");
  const bool measured = known.basis == cook::Basis::Measured;
  said.lines.push_back(
      "The plan has " + plain_length(known.value_mm, units, true) +
      (measured ? ", measured by tape."
                : " \u00B1 " + plain_length(known.sd_mm, units, true) + ", from the body height."));
  said.lines.push_back(
      "A mark on a door frame and a tape are surer than either; help stands at the question.");
  if (!measured && found->error_mm <= known.sd_mm) {
    said.field = config::path_of(*config::find_field("cooks[].eye_height_mm"), t.cook);
    said.value = mm_value(found->mm);
    said.label = "Put this eye height into the plan";
    return said;
  }
  const auto stature_mm = cook::stature_for_eye(cook, found->mm);
  if (measured || !stature_mm) return said;
  said.lines.push_back(
      "As an eye height it is less sure than the estimate, so it is not offered as one. Where "
      "nobody knows how tall " +
      cook.name + " is, it stands for a body height of " + plain_length(*stature_mm, units, true) +
      ".");
  said.field = config::path_of(*config::find_field("cooks[].stature_mm"), t.cook);
  said.value = mm_value(*stature_mm);
  said.label = "Use that body height";
  return said;
}

}  // namespace

std::string tilt_json(const config::Config& config, const evaluate::Evaluation& evaluation,
                      const Tilted& tilted, Units units) {
  Said said;
  if (tilted.cook >= config.cooks.size()) {
    said = refused("Say who it is about.");
  } else {
    switch (tilted.use) {
      case TiltUse::Sight:
        said = sight(config, evaluation, tilted, units);
        break;
      case TiltUse::Fall:
        said = fall(config, evaluation, tilted, units);
        break;
      case TiltUse::Eye:
        said = eye(config, evaluation, tilted, units);
        break;
    }
  }
  JsonWriter out;
  out.begin_object();
  put_text(out, "problem", said.problem);
  out.key("said");
  out.begin_list();
  for (const std::string& line : said.lines) out.string(line);
  out.end_list();
  out.key("offer");
  if (said.field.empty()) {
    out.null();
  } else {
    out.begin_object();
    put_text(out, "field", said.field);
    put_text(out, "value", said.value);
    put_text(out, "label", said.label);
    out.end_object();
  }
  out.end_object();
  return out.take();
}

}  // namespace hs::report
