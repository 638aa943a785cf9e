#include "engine/report/headline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string_view>

#include "engine/report/phrases.h"

namespace hs::report {
namespace {

constexpr double kNothing_mm = 2.5;  // half of what a builder can keep
constexpr std::string_view kAsGood = "about as good: ";

// The worst among the findings of these rules; null: all are fine.
const Finding* worst_of(const evaluate::Evaluation& e, std::span<const std::string_view> rules) {
  const Finding* worst = nullptr;
  for (const Finding& finding : e.findings) {
    if (finding.verdict == Verdict::Ok) continue;
    if (std::find(rules.begin(), rules.end(), finding.rule) == rules.end()) continue;
    const int more = worst ? badness(finding.verdict) - badness(worst->verdict) : 1;
    if (more > 0 || (more == 0 && finding.margin.value_or(0) < worst->margin.value_or(0))) {
      worst = &finding;
    }
  }
  return worst;
}

// How far off a height is for one cook: "2 in too low for Ana"; empty where all is fine.
std::string trouble(const config::Config& config, const Finding* f, Units units) {
  if (f == nullptr || !f->measured || !f->limit || !f->margin) return {};
  const bool down = f->rule == "height.dough_band";  // counts from the elbow down
  const bool high = (*f->measured > *f->limit) != down;
  const double off_mm = std::abs(*f->margin);
  const std::string text =
      plain_length(off_mm, units, true) + (high ? " too high for " : " too low for ");
  if (!f->cook) return text + "the cover";
  return text + config.cooks[*f->cook].name + (f->rule == "height.hand_ceiling" ? "'s hands" : "");
}

// A counter between two people is too low for the one and too high for the other: both are told.
std::string dough_trouble(const config::Config& config, const evaluate::Evaluation& e,
                          const Finding* worst, Units units) {
  std::string text = trouble(config, worst, units);
  if (text.empty() || worst->rule != "height.dough_band") return text;
  const auto low = [](const Finding& f) { return *f.measured > *f.limit; };
  const Finding* other = nullptr;
  for (const Finding& f : e.findings) {
    if (f.rule != worst->rule || f.verdict == Verdict::Ok || !f.measured || !f.limit) continue;
    if (low(f) == low(*worst)) continue;
    if (other == nullptr || f.margin.value_or(0) < other->margin.value_or(0)) other = &f;
  }
  const std::string more = trouble(config, other, units);
  return more.empty() ? text : text + ", " + more;
}

// The oven cook who sees too little from where they watch to bake by, and what helps.
struct Blind {
  Verdict verdict = Verdict::Ok;  // stepping back is only to be minded
  std::string words;
};
Blind who_sees_too_little(const config::Config& config, const evaluate::Evaluation& e,
                          Units units) {
  const Finding* worst = nullptr;
  for (const Finding& f : e.findings) {
    if (f.rule != "sight.pizza_share" || f.verdict != Verdict::Fail || !f.cook) continue;
    const auto rank = [&e](const Finding& one) {  // whom no step back helps comes first
      const bool helped = e.cooks[*one.cook].full_view.standoff_mm.has_value();
      return one.measured.value_or(0) + (helped ? 1 : 0);
    };
    if (worst == nullptr || rank(f) < rank(*worst)) worst = &f;
  }
  if (worst == nullptr) return {};
  const auto from = all_seen_from(config.view, e.cooks[*worst->cook], units);
  return {
      from ? Verdict::Warn : Verdict::Fail,
      config.cooks[*worst->cook].name + (from ? " sees it all from " + *from : " sees too little")};
}

std::string why_this_high(const config::Config& config, const evaluate::Evaluation& e) {
  const std::string_view binding = e.recommended.binding;
  if (binding == "height.hand_ceiling") {
    const auto who = lowest_hands(config, e);
    if (who && config.cooks.size() > 1) {
      return "as high as " + config.cooks[*who].name + "'s hands allow";
    }
    return "as high as the hands allow";
  }
  if (binding == "height.cover_ceiling") return "as high as the cover allows";
  if (binding == "height.full_view") return "high enough to see it all";
  return config.cooks.size() > 1 ? "the household's best balance" : "the best balance";
}

// "yours: 47 1/4 in, 4 3/4 in above" (the recommended one); empty where nobody could tell the two
// apart, or nothing is recommended.
std::string yours(double mine_mm, const std::optional<double>& best_mm, double lift_mm,
                  Units units) {
  if (!best_mm || std::abs(mine_mm - *best_mm) < kNothing_mm) return {};
  return "yours: " + plain_length(mine_mm + lift_mm, units, true) + ", " +
         plain_length(std::abs(mine_mm - *best_mm), units, true) +
         (mine_mm > *best_mm ? " above" : " below");
}

// The recommended dough band as far as it suits every cook there. Where their own bands do not meet
// at the recommended counter that is only the best of compromises, and no other height is as good.
std::optional<height::Band> suiting_all(const evaluate::Evaluation& e) {
  const auto& counter_mm = e.recommended.heights.counter_mm;
  std::optional<height::Band> band = e.recommended.dough_band;
  if (!band || !counter_mm) return band;
  for (const evaluate::CookResult& cook : e.cooks) {
    if (!cook.at_prep || cook.young_child) continue;
    const double elbow_mm = cook.body.elbow.value_mm;
    const double low_mm = elbow_mm - cook.prep_band.high_mm - height::kHandTolerance_mm;
    const double high_mm = elbow_mm - cook.prep_band.low_mm + height::kHandTolerance_mm;
    if (*counter_mm < low_mm || *counter_mm > high_mm) return {};
    band = {std::max(band->low_mm, low_mm), std::min(band->high_mm, high_mm)};
  }
  return band;
}

std::string band_text(const std::optional<height::Band>& band, double shown_mm, double lift_mm,
                      Units units, std::string_view does) {
  if (!band) return {};
  const height::Band lifted{band->low_mm + lift_mm, band->high_mm + lift_mm};
  const std::string text = build_band(lifted, shown_mm, units, true);
  // One height alone is no band.
  if (text.find(" to ") == std::string::npos) return "no room to spare either way";
  return std::string(does) + text;
}

}  // namespace

std::optional<std::size_t> lowest_hands(const config::Config& config,
                                        const evaluate::Evaluation& e) {
  std::optional<std::size_t> lowest;
  bool grown = false;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = e.cooks[i];
    if (!cook.at_oven || !config::works_at_oven(config.cooks[i])) continue;
    const bool first_grown = !cook.young_child && !grown;
    if (cook.young_child && grown) continue;
    grown = grown || !cook.young_child;
    if (!lowest || first_grown || cook.ceiling_floor_mm < e.cooks[*lowest].ceiling_floor_mm) {
      lowest = i;
    }
  }
  return lowest;
}

Given given_heights(const config::Station& station) {
  const bool base = station.oven_base_height_mm.has_value();
  const bool counter = station.counter_height_mm.has_value();
  const bool either = station.arrangement == config::Arrangement::OneLevel && (base || counter);
  return {base || either, counter || either};
}

Headline oven_headline(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  constexpr std::array<std::string_view, 3> kRules{"height.hand_ceiling", "height.cover_ceiling",
                                                   "sight.floor_above_eye"};
  const bool masonry = config::is_masonry(config.oven.kind);
  Headline h;
  h.id = "oven_counter";
  h.label = masonry ? "Oven floor" : "Oven counter";
  const Finding* worst = worst_of(e, kRules);
  if (worst) h.verdict = worst->verdict;
  if (!e.used.oven_base_mm || !e.used.oven_floor_mm) {
    h.value = kNoHeight;
    h.note = "nobody works at the oven";
    h.why = "cook.nobody_at_oven";
    h.verdict = Verdict::Unknown;
    return h;
  }
  const evaluate::Heights& best = e.recommended.heights;
  const double lift_mm = masonry ? config.oven.floor_above_base_mm : 0;
  const auto& best_mm = best.oven_base_mm;
  const double mine_mm = *e.used.oven_base_mm;
  const bool given = given_heights(config.station).oven_base;
  if (given) h.yours = yours(mine_mm, best_mm, lift_mm, units);
  const bool own = !h.yours.empty();
  double slab_mm = mine_mm;
  if (!best.oven_base_mm || (given && !own)) {
    h.value = plain_length(slab_mm + lift_mm, units, true);
    h.note = best.oven_base_mm ? "yours, as recommended" : "yours";
    h.why = "height.given";
  } else {
    slab_mm = *best.oven_base_mm;
    h.value = plain_length(slab_mm + lift_mm, units, true);
    h.note = "recommended";
    h.why = e.recommended.binding.empty() ? "height.compromise" : e.recommended.binding;
  }
  if (own) {
    h.why = "height.given";
    // Too low breaks no rule of the hands, and is still no height to build.
    const auto& band = e.recommended.oven_band;
    const bool outside =
        band && (mine_mm < band->low_mm - kNothing_mm || mine_mm > band->high_mm + kNothing_mm);
    if (outside && badness(h.verdict) < badness(Verdict::Warn)) h.verdict = Verdict::Warn;
  }
  const std::string wrong = trouble(config, worst, units);
  const Blind blind = who_sees_too_little(config, e, units);
  if (badness(blind.verdict) > badness(h.verdict)) h.verdict = blind.verdict;
  if (!wrong.empty()) {
    h.note += (own ? "; yours " : "; ") + wrong;
  } else if (!blind.words.empty()) {
    h.note += (own ? "; at yours " : "; ") + blind.words;
  } else if (own || !given) {
    h.note += ": " + why_this_high(config, e);
  }
  // A narrow card has no room for the slab of a height that is not built.
  if (masonry && !(own && worst))
    h.note = "slab at " + plain_length(slab_mm, units, true) + "; " + h.note;
  if (e.existing && e.existing->block_mm >= kNothing_mm) {
    // First, because it is what the builder came for and a narrow card may cut the end.
    h.note = (own ? "yours on a block of " : "block of ") +
             plain_length((own ? mine_mm : slab_mm) - e.existing->height_mm, units, true) +
             (own ? "; " : " on your cabinet; ") + h.note;
  }
  // A band belongs to the recommendation; beside another height it would be about nothing shown.
  const double best_shown_mm = (best.oven_base_mm ? *best.oven_base_mm : slab_mm) + lift_mm;
  h.band = band_text(e.recommended.oven_band, best_shown_mm, lift_mm, units, kAsGood);
  return h;
}

Headline dough_headline(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  constexpr std::array<std::string_view, 2> kRules{"height.dough_band", "reach.seated_counter"};
  Headline h;
  h.id = "dough_counter";
  h.label = "Dough counter";
  const Finding* worst = worst_of(e, kRules);
  if (worst) h.verdict = worst->verdict;
  h.why = "height.dough_band";
  if (!e.used.counter_mm) {
    h.value = kNoHeight;
    h.note = "nobody works at the dough";
    h.verdict = Verdict::Unknown;
    return h;
  }
  const evaluate::Heights& best = e.recommended.heights;
  double shown_mm = *e.used.counter_mm;
  const bool given = given_heights(config.station).counter;
  if (given) {
    h.yours = yours(shown_mm, best.counter_mm, 0, units);
    h.why = "height.given";
  }
  const bool own = !h.yours.empty();
  if (!best.counter_mm || (given && !own)) {
    h.value = plain_length(shown_mm, units, true);
    h.note = best.counter_mm ? "yours, as recommended" : "yours";
  } else {
    shown_mm = *best.counter_mm;
    h.value = plain_length(shown_mm, units, true);
    h.note = "recommended";
    if (config.station.arrangement == config::Arrangement::OneLevel) h.note += ", one for both";
  }
  const std::string wrong = dough_trouble(config, e, worst, units);
  if (!wrong.empty()) h.note += (own ? "; yours " : "; ") + wrong;
  h.band = band_text(suiting_all(e), best.counter_mm.value_or(shown_mm), 0, units, kAsGood);
  return h;
}

}  // namespace hs::report
