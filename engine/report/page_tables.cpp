// The tables behind one tap: each cell already in words.

#include <algorithm>
#include <cmath>

#include "engine/config/fields.h"
#include "engine/report/cited.h"
#include "engine/report/headline.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/rules_json.h"
#include "engine/rules/sources.h"

namespace hs::report {
namespace {

constexpr const char* kNone = "\u2014";

std::string or_none(const Page& page, const std::optional<double>& mm) {
  return mm ? page.length(*mm) : kNone;
}

std::string with_error(const Page& page, const cook::Estimate& estimate) {
  std::string text = page.length(estimate.value_mm);
  if (estimate.basis != cook::Basis::Measured && estimate.sd_mm > 0) {
    text += " \u00B1 " + page.length(estimate.sd_mm);
  }
  return text;
}

std::string_view basis_of(cook::Basis basis) {
  switch (basis) {
    case cook::Basis::Measured:
      return "measured";
    case cook::Basis::SurveyAdult:
      return "estimated, adult survey";
    case cook::Basis::SurveyChild:
      return "estimated, child survey";
    case cook::Basis::SurveySeated:
      return "estimated, seated";
  }
  return "";
}

// "measured", "estimated, adult survey", or both where they differ.
std::string known_by(const cook::Body& body) {
  const std::string_view eye = basis_of(body.eye.basis), elbow = basis_of(body.elbow.basis);
  if (eye == elbow) return std::string(eye);
  return "eye " + std::string(eye) + "; elbow " + std::string(elbow);
}

std::string bending(const evaluate::Stoop& stoop) {
  const sight::Posture& posture = stoop.posture;
  if (posture.knee_deg <= 0 && posture.trunk_deg <= 0) return "none";
  std::string text;
  if (posture.knee_deg > 0) text = "knees " + degrees(posture.knee_deg);
  if (posture.trunk_deg > 0) {
    text += (text.empty() ? "hips " : ", hips ") + degrees(posture.trunk_deg);
  }
  return text;
}

std::string_view arrangement_words(config::Arrangement arrangement) {
  switch (arrangement) {
    case config::Arrangement::OneLevel:
      return "One level";
    case config::Arrangement::Riser:
      return "Block under the oven";
    case config::Arrangement::TwoLevel:
      return "Two cabinet heights";
  }
  return "";
}

std::string_view weight_words(std::string_view weight) {
  if (weight == "sight") return "Seeing";
  if (weight == "prep") return "Dough";
  if (weight == "hands") return "Easy hands";
  return "The worst-off cook";
}

Table sight_table(const Page& page) {
  Table table{"What each sees",
              {"Cook", "Pizza, watching", "Pizza, peel in hand", "Oven floor, watching",
               "Farthest seen", "Sees all of it from", "Looks down"},
              {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const evaluate::CookResult& cook = page.evaluation.cooks[i];
    if (!cook.at_oven) continue;
    table.rows.push_back({page.cook_name(i), percent(cook.watching.pizza_share),
                          percent(cook.working.pizza_share), percent(cook.watching.floor_share),
                          or_none(page, cook.watching.farthest_mm),
                          all_seen_from(page.config.view, cook, page.units).value_or("nowhere"),
                          degrees(cook.watching.shallowest_gaze_deg) + " to " +
                              degrees(cook.watching.steepest_gaze_deg)});
  }
  return table;
}

Table hands_table(const Page& page) {
  Table table{"Hands and bending at the oven",
              {"Cook", "Hand against elbow", "Highest oven floor", "Bending to see it all",
               "Face to mouth then"},
              {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const evaluate::CookResult& cook = page.evaluation.cooks[i];
    if (!cook.at_oven) continue;
    const double above_mm = cook.hand_above_elbow_mm;
    table.rows.push_back(
        {page.cook_name(i), page.length(std::abs(above_mm)) + (above_mm >= 0 ? " above" : " below"),
         page.length(cook.ceiling_floor_mm), cook.stoop ? bending(*cook.stoop) : "does not help",
         cook.stoop ? page.length(cook.stoop->face_to_mouth_mm) : kNone});
  }
  return table;
}

Table dough_table(const Page& page) {
  Table table{"Dough",
              {"Cook", "Counter against elbow", "Counter that suits", "For topping",
               "A kitchen rule says", "Own table", "Step"},
              {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const evaluate::CookResult& cook = page.evaluation.cooks[i];
    if (!cook.at_prep) continue;
    const double below_mm = cook.prep_offset_mm;
    const double elbow_mm = cook.body.elbow.value_mm;
    const height::Band suits{elbow_mm - cook.prep_band.high_mm, elbow_mm - cook.prep_band.low_mm};
    const height::Band topping{elbow_mm - cook.light_band.high_mm,
                               elbow_mm - cook.light_band.low_mm};
    table.rows.push_back(
        {page.cook_name(i), page.length(std::abs(below_mm)) + (below_mm >= 0 ? " below" : " above"),
         plain_band(suits, page.units, true),
         cook.body.seated ? kNone : plain_band(topping, page.units, true),
         cook.body.seated || cook.body.child ? kNone
                                             : plain_band(cook.kitchen_rule, page.units, true),
         or_none(page, cook.table_mm), cook.young_child ? or_none(page, cook.step_mm) : kNone});
  }
  return table;
}

// "62 in 100 of the survey's men"; with a measured eye also "eye above 55". Never 0 or 100: nobody
// is taller than nobody or everybody by a bell curve.
std::string taller_than(const config::Cook& cook, const cook::Standing& standing) {
  if (!standing.stature_percent) return kNone;
  const auto whole = [](double percent) {
    return trimmed(std::clamp(std::round(percent), 1.0, 99.0), 0);
  };
  std::string text = whole(*standing.stature_percent) + " in 100 ";
  switch (cook.build) {
    case config::Build::Adult:
      text += "adults of the survey";
      break;
    case config::Build::AdultA:
      text += "of the survey's men";
      break;
    case config::Build::AdultB:
      text += "of the survey's women";
      break;
    case config::Build::Child:
      text += "children of this age";
      break;
  }
  if (standing.eye_percent) text += "; eye above " + whole(*standing.eye_percent) + " in 100";
  return text;
}

}  // namespace

std::string_view measure_words(evaluate::Measure measure) {
  switch (measure) {
    case evaluate::Measure::Eye:
      return "eye height";
    case evaluate::Measure::Elbow:
      return "elbow height";
    case evaluate::Measure::Shoulder:
      return "shoulder height";
  }
  return "";
}

std::string moves(const Page& page, double mm) {
  if (std::abs(mm) < 1) return "none";
  return (mm > 0 ? "+" : "\u2212") + page.length(std::abs(mm));
}

std::vector<Table> people_tables(const Page& page) {
  Table heights{"Heights in shoes, with one standard error",
                {"Cook", "Eye", "Elbow", "Shoulder", "Known by", "Taller than"},
                {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const cook::Body& body = page.evaluation.cooks[i].body;
    heights.rows.push_back({page.cook_name(i), with_error(page, body.eye),
                            with_error(page, body.elbow), with_error(page, body.shoulder),
                            known_by(body),
                            taller_than(page.config.cooks[i], page.evaluation.cooks[i].standing)});
  }
  return {heights, sight_table(page), hands_table(page), dough_table(page)};
}

std::vector<Table> arrangement_tables(const Page& page) {
  const bool masonry = config::is_masonry(page.config.oven.kind);
  Table table{"Three ways to build two heights",
              {"Way", masonry ? "Oven floor" : "Oven counter", "Dough counter",
               "Oven over dough counter", "Hidden along the middle, from the worst placed",
               "Dough counter off by", "Worst off in all"},
              {}};
  for (const evaluate::ArrangementResult& a : page.evaluation.arrangements) {
    const auto& oven_mm = masonry ? a.heights.oven_floor_mm : a.heights.oven_base_mm;
    const auto height = [&page](const std::optional<double>& mm) {
      return mm ? plain_length(*mm, page.units, true) : std::string(kNone);
    };
    std::string way(arrangement_words(a.arrangement));
    if (a.arrangement == page.config.station.arrangement) way += " (chosen)";
    table.rows.push_back(
        {std::move(way), height(oven_mm), height(a.heights.counter_mm), height(a.heights.riser_mm),
         oven_mm ? (a.unseen_line > 0 ? percent(a.unseen_line) : "nothing") : kNone,
         a.dough_off_cook ? plain_length(a.dough_off_mm, page.units, true) + ", " +
                                page.cook_name(*a.dough_off_cook)
                          : "nothing",
         a.worst_cook ? page.cook_name(*a.worst_cook) : kNone});
  }
  return {table};
}

std::vector<Table> sensitivity_tables(const Page& page) {
  Table measures{"If an estimate is off by one standard error",
                 {"Cook", "Estimate", "Off by", "Oven moves", "Dough counter moves"},
                 {}};
  for (const evaluate::Sensitivity& s : page.evaluation.sensitivity) {
    measures.rows.push_back({page.cook_name(s.cook), std::string(measure_words(s.measure)),
                             page.length(s.sd_mm), moves(page, s.oven_moves_mm),
                             moves(page, s.dough_moves_mm)});
  }
  Table weights{
      "If a weight were other", {"Weight", "Times", "Oven moves", "Dough counter moves"}, {}};
  for (const evaluate::WeightMove& move : page.evaluation.weight_moves) {
    weights.rows.push_back({std::string(weight_words(move.weight)), trimmed(move.factor, 2),
                            moves(page, move.oven_moves_mm), moves(page, move.dough_moves_mm)});
  }
  return {measures, weights};
}

std::string sharpest_measurement(const Page& page) {
  const auto size = [](const evaluate::Sensitivity& s) {
    return std::max(std::abs(s.oven_moves_mm), std::abs(s.dough_moves_mm));
  };
  const auto& all = page.evaluation.sensitivity;
  const auto it = std::max_element(all.begin(), all.end(), [&size](const auto& a, const auto& b) {
    return size(a) < size(b) - 1e-6;
  });
  if (it == all.end() || size(*it) < 1) return {};
  const bool oven = std::abs(it->oven_moves_mm) >= std::abs(it->dough_moves_mm);
  return page.cook_name(it->cook) + "'s " + std::string(measure_words(it->measure)) +
         " moves the answer most: " + (oven ? "the oven" : "the dough counter") + " by " +
         page.length(size(*it)) + ". Measure it first.";
}

std::vector<Table> reach_tables(const Page& page) {
  Table table{"Arms and bodies",
              {"Cook", "Easy reach over the dough", "Farthest reach", "Nearest to the mouth"},
              {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const evaluate::CookResult& cook = page.evaluation.cooks[i];
    const bool dough = cook.at_prep && !cook.young_child;
    table.rows.push_back({page.cook_name(i), dough ? page.length(cook.zones.near_mm) : kNone,
                          dough ? page.length(cook.zones.far_mm) : kNone,
                          cook.at_oven ? page.length(cook.nearest_standoff_mm) : kNone});
  }
  // For whoever cooks seated: how deep the room for knees is, from the counter's front edge.
  Table knees{"Room for knees under the counter (ADA 2010, 306.3)",
              {"At this height", "Clear from the front edge"},
              {}};
  const bool seated = std::any_of(page.config.cooks.begin(), page.config.cooks.end(),
                                  [](const config::Cook& cook) { return cook.seated; });
  for (const double height_mm : {230.0, 460.0, 685.0}) {
    const auto depth_mm = reach::knee_depth_mm(height_mm);
    if (seated && depth_mm) knees.rows.push_back({page.length(height_mm), page.length(*depth_mm)});
  }
  return {std::move(table), std::move(knees)};
}

std::vector<Table> trial_tables(const Page& page) {
  if (!page.evaluation.trial) return {};
  const evaluate::ColdTrial& trial = *page.evaluation.trial;
  Table table{
      "The trial", {"Who looked", "Mark seen", "Expected", "Most likely off", "Then it is"}, {}};
  const config::Field* field =
      trial.likely_field.empty() ? nullptr : config::find_field(trial.likely_field);
  table.rows.push_back({page.cook_name(trial.cook), page.length(trial.measured_mm),
                        or_none(page, trial.predicted_mm),
                        field ? std::string(field->label) : std::string(kNone),
                        or_none(page, trial.corrected_mm)});
  return {table};
}

std::vector<Table> source_tables(const Page& page) {
  Table table{"What the figures rest on", {"Source", "Clause", "How it is known", "Note"}, {}};
  for (const Cited& cited : cited_sources(page.config, page.evaluation)) {
    const rules::Source* source = rules::find_source(cited.source);
    table.rows.push_back({citation(cited.source), cited.clauses,
                          std::string(rules::basis_words(cited.basis)),
                          source ? std::string(source->note) : std::string()});
  }
  return {table};
}

}  // namespace hs::report
