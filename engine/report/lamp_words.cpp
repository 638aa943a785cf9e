#include "engine/report/lamp_words.h"

#include <optional>

#include "engine/evaluate/lighting.h"
#include "engine/report/phrases.h"

namespace hs::report {

std::vector<LampWord> lamp_words(const evaluate::LampChecks& checks) {
  const auto word = [](bool bad, std::string_view text) {
    return LampWord{bad ? Verdict::Fail : Verdict::Ok, text};
  };
  std::vector<LampWord> words{
      word(checks.light.in_shadow, "mouth"), word(checks.light.hides_target, "eyes"),
      word(checks.in_hot_zone || checks.too_hot, "heat"), word(checks.light.in_peel_path, "peel"),
      word(!checks.neck_reaches, "neck")};
  if (checks.light.too_near) words.push_back(word(true, "too near"));
  return words;
}

std::string lamp_light(const evaluate::Lamp& lamp) {
  return lux(lamp.light.lux) + " on the pizza; " + lux(evaluate::kFoodWork_lx) + " is asked";
}

std::string lamp_neck(const config::Config& config, const evaluate::Lamp& lamp, Units units) {
  std::string text = "neck " + plain_length(lamp.neck_needed_mm, units, true) + " of " +
                     plain_length(config.light.neck_mm, units, true);
  if (lamp.search.shortest_neck_mm) {
    text += "; " + plain_length(*lamp.search.shortest_neck_mm, units, true) +
            " is the shortest that works";
  }
  return text;
}

LampSaying lamp_saying(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  // The first of a verdict is the one that a builder mends first.
  constexpr std::string_view kRules[] = {"light.head", "light.neck", "light.pizza"};
  constexpr Verdict kByHarm[] = {Verdict::Fail, Verdict::Unknown, Verdict::Warn, Verdict::Ok};
  for (const Verdict verdict : kByHarm) {
    for (const std::string_view rule : kRules) {
      for (const Finding& finding : e.findings) {
        if (finding.rule != rule || finding.verdict != verdict) continue;
        return {sentence(finding, config, e, units), rule, verdict};
      }
    }
  }
  return {};
}

}  // namespace hs::report
