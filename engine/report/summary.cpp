#include "engine/report/summary.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "engine/report/headline.h"
#include "engine/report/phrases.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

// The findings that a cook's one line stands for; the others are one tap away.
constexpr std::array<std::string_view, 8> kLineRules{
    "height.hand_ceiling", "sight.floor_above_eye", "sight.pizza_share",    "height.dough_band",
    "cook.child_place",    "cook.child_at_oven",    "reach.seated_counter", "reach.seated_reach"};

Verdict line_verdict(const evaluate::Evaluation& e, std::size_t cook) {
  Verdict worst = Verdict::Ok;
  for (const Finding& finding : e.findings) {
    if (finding.cook != cook) continue;
    if (std::find(kLineRules.begin(), kLineRules.end(), finding.rule) == kLineRules.end()) continue;
    if (badness(finding.verdict) > badness(worst)) worst = finding.verdict;
  }
  return worst;
}

// "step back 7 in to see it all"; rounded so that the whole steps do show it.
std::string step_back(const config::View& view, const evaluate::CookResult& cook, Units units) {
  if (!cook.full_view.standoff_mm) return "no step back shows it all";
  const double further_mm = *cook.full_view.standoff_mm - view.standoff_mm;
  const double least_mm = units == Units::Inch ? 25.4 : 10;
  return "step back " + distance(std::max(further_mm, least_mm), units, Round::Up) +
         " to see it all";
}

std::string sees(const config::View& view, const evaluate::CookResult& cook, Units units) {
  const evaluate::Seen& seen = cook.watching;
  if (seen.eye.height_mm <= 0) return "sees nothing: the oven's floor is not below the eye";
  if (seen.target_seen) {
    switch (view.target) {
      case config::Target::Pizza:
        return "sees all of the pizza";
      case config::Target::FarCrust:
        return "sees all of the pizza and its far rim";
      case config::Target::WholeFloor:
        return "sees the oven's floor to the back";
    }
  }
  std::string text;
  if (view.target == config::Target::WholeFloor) {
    text = "sees " + percent(seen.floor_share) + " of the oven's floor";
  } else if (seen.pizza_share >= sight::kAllSeen) {
    text = "sees all of the pizza but not its far rim";
  } else {
    text = "sees " + percent(seen.pizza_share) + " of the pizza";
  }
  return text + "; " + step_back(view, cook, units);
}

// What is wrong at the dough counter; empty when it suits.
std::string dough_trouble(const evaluate::CookResult& cook, Units units) {
  const height::Band& band = cook.prep_band;
  const double high_by_mm = band.low_mm - cook.prep_offset_mm;
  const double low_by_mm = cook.prep_offset_mm - band.high_mm;
  if (cook.prep_verdict == Verdict::Ok) return {};
  const bool high = high_by_mm > 0;
  return "dough " + build_height(high ? high_by_mm : low_by_mm, units, true) +
         (high ? " too high" : " too low");
}

std::string cook_line(const config::Config& config, const evaluate::CookResult& cook, Units units) {
  std::string text;
  const auto add = [&text](const std::string& part) {
    if (part.empty()) return;
    if (!text.empty()) text += "; ";
    text += part;
  };
  if (cook.at_oven) {
    const double over_mm = cook.hand_above_elbow_mm - height::kHandAboveElbow_mm;
    // Nearer than a builder can keep is at the ceiling, not over it, as the rule itself has it.
    if (over_mm > height::kHandTolerance_mm) {
      add("oven " + plain_length(over_mm, units, true) + " too high for the hands");
    }
    add(sees(config.view, cook, units));
    const double linger_mm = cook.heat.linger_standoff_mm;
    if (config.view.standoff_mm < linger_mm) {
      add("too hot to linger nearer than " + distance(linger_mm, units, Round::Up));
    }
  }
  if (cook.young_child) {
    if (cook.table_mm) {
      add("own table " + build_height(*cook.table_mm, units, true) +
          (units == Units::Inch ? " high, 3 ft from the oven" : " high, 0.9 m from the oven"));
    } else {
      add("keep 3 ft (0.9 m) from the hot oven");
    }
  } else if (cook.at_prep) {
    const std::string trouble = dough_trouble(cook, units);
    add(trouble.empty() && !cook.at_oven ? "the dough counter suits" : trouble);
  }
  return text.empty() ? "has no place to work yet" : text;
}

bool about_clearance(const Finding& finding) {
  return finding.rule.starts_with("clearance.") && finding.rule != "clearance.on_combustible";
}

// The sides whose clearance nobody has said, as one sentence; empty when fewer than two.
std::string unknown_clearances(const evaluate::Evaluation& e) {
  int count = 0;
  for (const Finding& finding : e.findings) {
    const bool open = finding.verdict == Verdict::Unknown && !finding.limit;
    if (open && about_clearance(finding)) ++count;
  }
  if (count < 2) return {};
  return "Nobody has said how much free room this oven needs around it: find it in its manual "
         "before you build.";
}

// Harm below this is worth a caution before anything that is only not good.
bool grave(const Finding& finding) {
  const rules::Rule* rule = rules::find_rule(finding.rule);
  return rule != nullptr && rule->harm <= rules::Harm::Fall;
}

// What fails and could hurt, what nobody knows and could hurt, then the rest in the order of harm:
// a clearance nobody has read up stands before a counter that strains a back.
const Finding* worst_finding(const evaluate::Evaluation& e) {
  const auto first = [&e](auto&& is) -> const Finding* {
    const auto it = std::find_if(e.findings.begin(), e.findings.end(), is);
    return it == e.findings.end() ? nullptr : &*it;
  };
  for (const Verdict verdict : {Verdict::Fail, Verdict::Unknown}) {
    const Finding* f =
        first([verdict](const Finding& x) { return x.verdict == verdict && grave(x); });
    if (f != nullptr) return f;
  }
  if (const Finding* f = first([](const Finding& x) { return x.verdict == Verdict::Fail; })) {
    return f;
  }
  if (const Finding* f = first([](const Finding& x) { return x.verdict == Verdict::Warn; })) {
    return f;
  }
  return first([](const Finding& x) { return x.verdict == Verdict::Unknown; });
}

void add_worst(const config::Config& config, const evaluate::Evaluation& e, Units units,
               Summary& summary) {
  const Finding* worst = worst_finding(e);
  if (worst == nullptr) {
    summary.worst = "Nothing stands out: the oven's manual and local rules still come first.";
    return;
  }
  summary.worst_verdict = worst->verdict;
  summary.worst_rule = worst->rule;
  if (worst->verdict == Verdict::Unknown && about_clearance(*worst) && !worst->limit) {
    summary.worst = unknown_clearances(e);
  }
  if (summary.worst.empty()) summary.worst = sentence(*worst, config, e, units);
}

// "20 in from the counter's edge".
std::string from_edge(double mm, Units units) {
  if (std::abs(mm) < 5) return "at the counter's edge";
  return distance(std::abs(mm), units) +
         (mm > 0 ? " from the counter's edge" : " under the counter's edge");
}

// Where the toes are at the distance in use, which is what the section draws, and the line that is
// recommended where that is another one.
std::string feet_line(const evaluate::Evaluation& e, Units units) {
  if (!e.recommended.heights.oven_base_mm) return {};
  const std::string used = from_edge(e.feet_line_mm, units);
  const std::string recommended = from_edge(e.recommended.feet_line_mm, units);
  if (used == recommended) return "Toes " + used;
  return "Toes " + used + " as you stand now; the recommended line is " + recommended;
}

// Two sentences without typographic marks, for a screen reader.
std::string live(const config::Config& config, const evaluate::Evaluation& e, Units units,
                 const Summary& summary) {
  const evaluate::Heights marked = marked_heights(config, e, build_step_mm(units));
  const bool masonry = config::is_masonry(config.oven.kind);
  const auto spoken = [&](bool as_given, const std::optional<double>& used_mm,
                          const std::optional<double>& marked_at_mm) {
    if (!used_mm) return std::string("none");
    return as_given || !marked_at_mm ? plain_length(*used_mm, units, false)
                                     : build_height(*marked_at_mm, units, false);
  };
  const Given given = given_heights(config.station);
  const auto& used_mm = masonry ? e.used.oven_floor_mm : e.used.oven_base_mm;
  const auto& at_mm = masonry ? marked.oven_floor_mm : marked.oven_base_mm;
  std::string text = masonry ? "Oven floor " : "Oven counter ";
  text += spoken(given.oven_base, used_mm, at_mm);
  text += ", dough counter ";
  text += spoken(given.counter, e.used.counter_mm, marked.counter_mm);
  text += ". ";
  for (std::size_t i = 0; i < summary.cooks.size(); ++i) {
    const std::string line = plain_marks(summary.cooks[i].line);
    text += (i == 0 ? "" : "; ") + summary.cooks[i].name;
    text += (line.starts_with("sees") ? " " : ": ") + line;
  }
  return text + ".";
}

}  // namespace

Summary summary(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  Summary s;
  s.headlines = {oven_headline(config, e, units), dough_headline(config, e, units)};
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    s.cooks.push_back(
        {config.cooks[i].name, cook_line(config, e.cooks[i], units), line_verdict(e, i)});
  }
  add_worst(config, e, units, s);
  s.feet_line = feet_line(e, units);
  s.live = live(config, e, units, s);
  return s;
}

}  // namespace hs::report
