// A finding's numbers put into its rule's sentence.
//
// Beyond the placeholders that engine/rules/rules.h names, a sentence may use:
//   {standoff} {working}       the watching and the working distance
//   {full_view} {steps}        where this cook sees it all, and how many steps back that is; no
//                              value where it is seen already or from nowhere
//   {all_of} {all_of_target}   "all of it" and "all of the pizza", by what must be seen
//   {bend}                     this cook's least stoop: "knees 12° and hips 20°"
//   {counter} {band} {table}   the dough counter in use, this cook's own band, a child's table
//   {too}                      "too high" or "too low"
//   {farther} {from_limit}     "farther" or "nearer"; "above" or "below"
//   {likely} {corrected}       the cold trial's input most likely off, and what would explain it;
//                              no value where that is beyond belief, and then {unexplained} has one
//   {asks}                     "its manual asks for", "a local rule asks for" or what else speaks
//   {spare}                    the margin, where it is more than a hand can tell
//   {limit_about}              the limit to the next whole inch or 10 mm
//   {block}                    block under the oven on the existing cabinet; no value when none
//   {seconds}                  time to severe pain at the heat measured; none beyond two minutes
//   {flame}                    how much more a rolling flame emits; no value when it is no more
//   {linger}                   nearest place where this cook's face may linger
//   {Where}                    {where} with a capital
//   {point_high} {point_low}   "Point 4", a doubtful one: the one that has a value says which way
//   {points_apart}             "Points 4 and 12", readings of one place that are too far apart
//   {feet_missing}             "1 point more": left to read where cooks stand, after the first
//   {feet_least}               "3 points": the same, before the first
//   {downhill}                 where water runs: "front", "back left"
//   {height} {above_feet}      the dough counter, or the oven's; its height above the feet, and
//   {above_base} {above_low}   above the base's top, the lowest and the highest ground under it
//   {above_high}
//   {hold}                     "tie", or "anchors" where the ground holds it
//   {cylinder}                 "a cylinder for 13 kg (29 lb) of gas", the one that is given

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/quantity.h"
#include "engine/config/fields.h"
#include "engine/evaluate/surveying.h"
#include "engine/heat/tolerance.h"
#include "engine/report/headline.h"
#include "engine/report/phrases.h"
#include "engine/report/summary.h"
#include "engine/report/survey_words.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

using Words = std::optional<std::string>;

// Shorter than this is no block, mm: what a builder cannot tell.
constexpr double kNoBlock_mm = 2.5;

// What the blanks of one sentence are filled from.
struct Context {
  const Finding& finding;
  const rules::Rule& rule;
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  Units units;

  // Page text carries fractions with their own characters.
  std::string length(double mm) const { return plain_length(mm, units, true); }
  const evaluate::CookResult* cook() const {
    return finding.cook && *finding.cook < evaluation.cooks.size()
               ? &evaluation.cooks[*finding.cook]
               : nullptr;
  }
};

enum class Part : std::uint8_t { Measured, Limit, Margin };

Words number(const Context& s, const std::optional<double>& given, Part part) {
  if (!given) return {};
  const double value = part == Part::Margin ? std::abs(*given) : *given;
  switch (s.rule.unit) {
    case rules::Unit::None:
      return {};
    case rules::Unit::Distance:
      return distance(value, s.units, part == Part::Limit ? Round::Nearest : Round::Up);
    case rules::Unit::Share:
      // What is short of its limit never reads as if it met it.
      if (part == Part::Measured && s.finding.verdict != Verdict::Ok && s.finding.limit) {
        return percent_apart(value, *s.finding.limit);
      }
      return percent(value);
    default:
      return in_unit(s.rule.unit, value, s.units);
  }
}

std::string_view all_of(config::Target target, bool named) {
  switch (target) {
    case config::Target::Pizza:
      return named ? "all of the pizza" : "all of it";
    case config::Target::FarCrust:
      return named ? "all of the pizza and its far rim" : "all of it and its far rim";
    case config::Target::WholeFloor:
      return "the oven's floor to the back";
  }
  return "";
}

// Where this cook sees it all, where that is further than the watching distance.
std::optional<double> further_back_mm(const Context& s) {
  const evaluate::CookResult* cook = s.cook();
  if (cook == nullptr || !cook->full_view.standoff_mm) return {};
  const double at_mm = *cook->full_view.standoff_mm;
  if (at_mm <= s.config.view.standoff_mm + 0.05) return {};
  return at_mm;
}

Words full_view(const Context& s) {
  return further_back_mm(s) ? all_seen_from(s.config.view, *s.cook(), s.units) : Words{};
}

Words bend(const Context& s) {
  const evaluate::CookResult* cook = s.cook();
  if (cook == nullptr || !cook->stoop) return {};
  const sight::Posture& posture = cook->stoop->posture;
  if (posture.knee_deg <= 0 && posture.trunk_deg <= 0) return "no bending";
  std::string text;
  if (posture.knee_deg > 0) text += "knees bent " + degrees(posture.knee_deg);
  if (posture.trunk_deg > 0) {
    text += std::string(text.empty() ? "" : " and ") + "hips bent " + degrees(posture.trunk_deg);
  }
  return text;
}

bool below_elbow(const Context& s) {
  return s.rule.id == "height.dough_band" || s.rule.id == "height.light_band";
}

// A counter that is too little below the elbow is too high.
Words too(const Context& s) {
  if (!s.finding.measured || !s.finding.limit) return {};
  const bool above = *s.finding.measured > *s.finding.limit;
  return above != below_elbow(s) ? "too high" : "too low";
}

Words band(const Context& s) {
  const evaluate::CookResult* cook = s.cook();
  if (cook == nullptr || !cook->at_prep) return {};
  const double elbow_mm = cook->body.elbow.value_mm;
  height::Band heights{elbow_mm - cook->prep_band.high_mm, elbow_mm - cook->prep_band.low_mm};
  // The end that the counter is past is told as far from the counter as the margin says: whoever
  // adds the two up must find them right.
  const auto& counter_mm = s.evaluation.used.counter_mm;
  if (counter_mm && s.rule.id == "height.dough_band" && s.finding.verdict != Verdict::Ok &&
      s.finding.margin) {
    const double step_mm = plain_step_mm(s.units);
    const double off_mm = std::round(std::abs(*s.finding.margin) / step_mm) * step_mm;
    const bool high = too(s) == "too high";
    if (high && *counter_mm > heights.high_mm) heights.high_mm = *counter_mm - off_mm;
    if (!high && *counter_mm < heights.low_mm) heights.low_mm = *counter_mm + off_mm;
  }
  return plain_band(heights, s.units, true);
}

bool trial_explained(const Context& s) {
  const auto& trial = s.evaluation.trial;
  return trial && !trial->likely_field.empty();
}

Words likely(const Context& s) {
  if (!trial_explained(s)) return {};
  const auto& trial = s.evaluation.trial;
  const config::Field* field = config::find_field(trial->likely_field);
  if (field == nullptr) return {};
  std::string label = lower_first(std::string(field->label));
  if (field->group == config::Group::Cook && trial->cook < s.config.cooks.size()) {
    return s.config.cooks[trial->cook].name + "'s " + label;
  }
  return label;
}

Words corrected(const Context& s) {
  if (!trial_explained(s) || !s.evaluation.trial->corrected_mm) return {};
  return s.length(*s.evaluation.trial->corrected_mm);
}

// Whose figure a clearance finding is held against.
Words asks(const Context& s) {
  for (const clearance::Need& need : s.evaluation.clearances) {
    const std::string_view side = clearance::side_name(need.side);
    const bool same_rule = s.rule.id.ends_with(side) ||
                           (s.rule.id == "clearance.side" && s.finding.where.ends_with(side));
    if (!same_rule) continue;
    switch (need.from) {
      case clearance::From::Unknown:
        return {};
      case clearance::From::Listed:
        return "its manual asks for";
      case clearance::From::Local:
        return "a local rule asks for";
      case clearance::From::Published:
        return "published codes for ovens without a listing ask for";
    }
  }
  return {};
}

Words direction(const Context& s, const char* more, const char* less) {
  if (!s.finding.measured || !s.finding.limit) return {};
  return *s.finding.measured > *s.finding.limit ? more : less;
}

// Under a masonry oven there is a slab, not a counter.
Words where(const Context& s) {
  if (s.finding.where.empty()) return {};
  const bool slab = s.finding.where == "oven counter" && config::is_masonry(s.config.oven.kind);
  return std::string(slab ? "oven's slab" : s.finding.where);
}

Words counter(const Context& s) {
  const auto& counter_mm = s.evaluation.used.counter_mm;
  return counter_mm ? Words(s.length(*counter_mm)) : Words{};
}

Words seconds(const Context& s) {
  if (!s.finding.measured) return {};
  const auto time_s = heat::tolerance_s(*s.finding.measured);
  constexpr double kLongest_s = 120;
  if (!time_s || *time_s > kLongest_s) return {};
  return trimmed(*time_s, *time_s < 10 ? 1 : 0) + " s";
}

Words flame(const Context& s) {
  const double factor = round_to(s.evaluation.mouth.flame_factor, 10);
  return factor > 1 ? Words(trimmed(factor, 1)) : Words{};
}

Words doubtful_point(const Context& s, const evaluate::SurveyResult& survey,
                     std::string_view name) {
  for (const std::size_t i : survey.doubts) {
    const survey::Point& point = survey.levels.points[i];
    if (evaluate::point_name(point.first) != s.finding.where) continue;
    if (point.readings == 1) {
      const bool high = point.off_mm > 0;
      if (name != (high ? "point_high" : "point_low")) return {};
      return capitalised(std::string(s.finding.where));
    }
    if (name != "points_apart") return {};
    std::vector<std::size_t> all;
    for (std::size_t k = 0; k < s.config.survey.points.size(); ++k) {
      const config::SurveyPoint& one = s.config.survey.points[k];
      const double dx = one.x_mm - point.x_mm, dy = one.y_mm - point.y_mm;
      const double apart = survey::kSamePlace_mm;
      if (one.reading_mm && dx * dx + dy * dy <= apart * apart) all.push_back(k);
    }
    return capitalised(point_list(all));
  }
  return {};
}

Words of_survey(const Context& s, std::string_view name) {
  const auto& survey = s.evaluation.survey;
  if (!survey) return {};
  if (name.starts_with("point")) return doubtful_point(s, *survey, name);
  if (name == "feet_missing" || name == "feet_least") {
    const int left = survey->feet_missing;
    if ((survey->feet > 0) != (name == "feet_missing") || left <= 0) return {};
    return trimmed(left, 0) + (left == 1 ? " point" : " points") +
           (survey->feet > 0 ? " more" : "");
  }
  if (name == "downhill") {
    if (!survey->slope) return {};
    const std::string_view words = downhill(*survey->slope);
    return words.empty() ? Words{} : Words(words);
  }
  const auto& above = survey->counter ? survey->counter : survey->oven;
  if (!above) return {};
  if (name == "height") return survey->counter ? "dough counter's top" : "oven counter's top";
  if (name == "above_feet") return s.length(above->feet_mm);
  if (name == "above_base") return s.length(above->base_mm);
  if (name == "above_low") return s.length(above->low_mm);
  if (name == "above_high") return s.length(above->high_mm);
  return {};
}

Words blank(const Context& s, std::string_view name) {
  const evaluate::CookResult* cook = s.cook();
  const config::View& view = s.config.view;
  if (name == "cook") return cook ? Words(s.config.cooks[*s.finding.cook].name) : Words{};
  if (name == "measured") return number(s, s.finding.measured, Part::Measured);
  if (name == "limit") return number(s, s.finding.limit, Part::Limit);
  if (name == "margin") return number(s, s.finding.margin, Part::Margin);
  if (name == "limit_about") {
    if (!s.finding.limit) return {};
    // Published limits were rounded to whole mm: 1067 mm is 42 in, not 43.
    return distance(*s.finding.limit - 1, s.units, Round::Up);
  }
  if (name == "spare") {
    const bool some = s.finding.margin && *s.finding.margin >= height::kOverHands_mm;
    return some ? number(s, s.finding.margin, Part::Margin) : Words{};
  }
  if (name == "seconds") return seconds(s);
  if (name == "flame") return flame(s);
  if (name == "linger") {
    return cook ? Words(distance(cook->heat.linger_standoff_mm, s.units, Round::Up)) : Words{};
  }
  if (name == "where") return where(s);
  if (name == "Where") {
    const Words text = where(s);
    return text ? Words(capitalised(*text)) : Words{};
  }
  if (name == "standoff") return distance(view.standoff_mm, s.units);
  if (name == "working") return distance(view.working_standoff_mm, s.units);
  if (name == "full_view") return full_view(s);
  if (name == "steps") {
    const auto at_mm = further_back_mm(s);
    return at_mm ? Words(steps_back(*at_mm - view.standoff_mm)) : Words{};
  }
  if (name == "all_of") return Words(all_of(view.target, false));
  if (name == "all_of_target") return Words(all_of(view.target, true));
  if (name == "bend") return bend(s);
  if (name == "counter") return counter(s);
  if (name == "band") return band(s);
  if (name == "table") {
    return cook && cook->table_mm ? Words(plain_length(*cook->table_mm, s.units, true)) : Words{};
  }
  if (name == "too") return too(s);
  if (name == "farther") return direction(s, "farther", "nearer");
  if (name == "from_limit") return direction(s, "above", "below");
  if (name == "likely") return likely(s);
  if (name == "corrected") return corrected(s);
  if (name == "unexplained") {
    return trial_explained(s) ? Words{} : Words("no one input explains that much: measure again");
  }
  if (name == "asks") return asks(s);
  if (name == "hold") return s.config.loads.held == config::Held::Ground ? "anchors" : "tie";
  if (name == "cylinder") {
    const auto& gas_kg = s.config.site.cylinder_kg;
    if (!gas_kg) return "a 20 lb cylinder";
    return "a cylinder for " + mass(*gas_kg, s.units) + " of gas";
  }
  if (s.rule.id.starts_with("survey.")) return of_survey(s, name);
  if (name == "block") {
    const auto& existing = s.evaluation.existing;
    if (!existing || existing->block_mm < kNoBlock_mm) return {};
    return s.length(existing->block_mm);
  }
  return {};
}

// One alternative with its blanks filled; nullopt when one outside brackets has no value.
Words filled(const Context& s, std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t at = text.find_first_of("[{");
    out += text.substr(0, at);
    if (at == std::string_view::npos) break;
    const bool aside = text[at] == '[';
    const std::size_t end = text.find(aside ? ']' : '}', at);
    if (end == std::string_view::npos) return {};
    const std::string_view inside = text.substr(at + 1, end - at - 1);
    const Words words = aside ? filled(s, inside) : blank(s, inside);
    if (words) {
      out += *words;
    } else if (!aside) {
      return {};
    }
    text.remove_prefix(end + 1);
  }
  return out;
}

std::string_view template_of(const rules::Rule& rule, Verdict verdict) {
  const rules::Sentences says = rules::sentences_of(rule);
  switch (verdict) {
    case Verdict::Ok:
      return says.ok;
    case Verdict::Warn:
      return says.warn;
    case Verdict::Fail:
      return says.fail;
    case Verdict::Unknown:
      return says.unknown;
  }
  return {};
}

// For a verdict that the rule has no sentence for, or numbers that no alternative can be filled by.
std::string plain(const rules::Rule& rule, Verdict verdict) {
  const std::string title(rule.title);
  switch (verdict) {
    case Verdict::Ok:
      return title + ": fine.";
    case Verdict::Warn:
      return title + ": take care.";
    case Verdict::Fail:
      return title + ": not met.";
    case Verdict::Unknown:
      return title + ": not known.";
  }
  return title + ".";
}

}  // namespace

std::string sentence(const Finding& finding, const config::Config& config,
                     const evaluate::Evaluation& evaluation, Units units) {
  const rules::Rule* rule = rules::find_rule(finding.rule);
  if (rule == nullptr) return {};
  const Context context{finding, *rule, config, evaluation, units};
  std::string_view left = template_of(*rule, finding.verdict);
  while (!left.empty()) {
    const std::size_t bar = left.find('|');
    if (const Words words = filled(context, left.substr(0, bar))) return *words;
    if (bar == std::string_view::npos) break;
    left.remove_prefix(bar + 1);
  }
  return plain(*rule, finding.verdict);
}

}  // namespace hs::report
