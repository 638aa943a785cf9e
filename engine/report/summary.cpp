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
  const auto from = all_seen_from(view, cook, units);
  return text + (from ? "; all of it from " + *from + " away" : "; no step back shows it all");
}

// How much the dough counter is too high, or with a minus too low; 0 where it suits.
double dough_off_mm(const evaluate::CookResult& cook) {
  if (cook.prep_verdict == Verdict::Ok) return 0;
  const double offset_mm = cook.prep_offset_mm;
  return std::clamp(offset_mm, cook.prep_band.low_mm, cook.prep_band.high_mm) - offset_mm;
}

// The parts with the worst first, because a narrow screen shows the first ones only.
std::string cook_line(const config::Config& config, const evaluate::Evaluation& e,
                      const evaluate::CookResult& cook, Units units) {
  std::string all[4];  // by verdict
  const auto add = [&all](Verdict verdict, const std::string& part) {
    std::string& text = all[badness(verdict)];
    if (part.empty()) return;
    if (!text.empty()) text += "; ";
    text += part;
  };
  if (cook.at_oven) {
    const double over_mm = cook.hand_above_elbow_mm - height::kHandAboveElbow_mm;
    // Nearer than a builder can keep is at the ceiling, not over it, as the rule itself has it.
    if (over_mm > height::kHandTolerance_mm) {
      add(Verdict::Fail, "oven " + plain_length(over_mm, units, true) + " too high for the hands");
    }
    // As the rule has it: less than half is too little to bake by.
    add(cook.watching.target_seen          ? Verdict::Ok
        : cook.watching.pizza_share >= 0.5 ? Verdict::Warn
                                           : Verdict::Fail,
        sees(config.view, cook, units));
    const double linger_mm = cook.heat.linger_standoff_mm;
    if (config.view.standoff_mm < linger_mm) {
      add(Verdict::Warn, "too hot to linger nearer than " + distance(linger_mm, units, Round::Up));
    }
  }
  if (cook.young_child) {
    if (cook.table_mm) {
      std::string table = "own table " + plain_length(*cook.table_mm, units, true) + " high";
      if (e.used.oven_base_mm) {
        table += units == Units::Inch ? ", 3 ft from the oven" : ", 0.9 m from the oven";
      }
      add(Verdict::Ok, table);
    } else {
      add(Verdict::Warn, "keep 3 ft (0.9 m) from the hot oven");
    }
  } else if (cook.at_prep) {
    const double off_mm = dough_off_mm(cook);
    if (off_mm != 0) {
      // In a chair it is where the knees fit that counts, and there is nothing between.
      add(cook.body.seated ? Verdict::Fail : cook.prep_verdict,
          "dough " + plain_length(std::abs(off_mm), units, true) +
              (off_mm > 0 ? " too high" : " too low"));
    } else if (!cook.at_oven) {
      add(Verdict::Ok, "the dough counter suits");
    }
  }
  std::string text;
  for (int n = 3; n >= 0; --n) {
    if (!text.empty() && !all[n].empty()) text += "; ";
    text += all[n];
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
// a clearance nobody has read up stands before a counter that strains a back. Where no oven stands
// only what is about somebody counts: nobody bakes beside its clearances.
const Finding* worst_finding(const evaluate::Evaluation& e) {
  const auto first = [&e](auto&& is) -> const Finding* {
    const bool oven = e.used.oven_base_mm.has_value();
    const auto it = std::find_if(e.findings.begin(), e.findings.end(), [&](const Finding& finding) {
      return (oven || finding.cook) && is(finding);
    });
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

}  // namespace

Summary summary(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  Summary s;
  s.headlines = {oven_headline(config, e, units), dough_headline(config, e, units)};
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    s.cooks.push_back(
        {config.cooks[i].name, cook_line(config, e, e.cooks[i], units), line_verdict(e, i)});
  }
  add_worst(config, e, units, s);
  return s;
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

std::string spoken(const Summary& summary) {
  std::string text;
  for (const Headline& h : summary.headlines) {
    text += text.empty() ? h.label : ", " + lower_first(h.label);
    text += " " + (h.value == kNoHeight ? "none" : plain_marks(h.value));
    if (!h.yours.empty()) text += ", " + plain_marks(h.yours);
  }
  text += ". ";
  for (std::size_t i = 0; i < summary.cooks.size(); ++i) {
    const std::string line = plain_marks(summary.cooks[i].line);
    text += (i == 0 ? "" : "; ") + summary.cooks[i].name;
    text += (line.starts_with("sees") ? " " : ": ") + line;
  }
  return text + ".";
}

}  // namespace hs::report
