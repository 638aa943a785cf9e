// How the two heights come about, with their numbers: what a person asks for first under "why".

#include <algorithm>
#include <cmath>

#include "engine/evaluate/evaluate.h"
#include "engine/report/headline.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

std::string marked_to(const Page& page) {
  return page.evaluation.marks == evaluate::Marks::Exact
             ? std::string()
             : " Recommended heights are brought to the nearest " +
                   page.length(evaluate::mark_step_mm(page.evaluation.marks)) + ".";
}

// What is between two lengths as they are written, so that the sum is right to whoever adds it up.
std::string between(const Page& page, double low_mm, double high_mm) {
  const double step_mm = plain_step_mm(page.units);
  return page.length((std::round(high_mm / step_mm) - std::round(low_mm / step_mm)) * step_mm);
}

// "39 in, and 5 7/8 in from there to the oven's floor, puts that floor at 44 7/8 in."
std::string floor_sum(const Page& page, double base_mm) {
  const double floor_mm = base_mm + page.config.oven.floor_above_base_mm;
  return page.length(base_mm) + ", and " + between(page, base_mm, floor_mm) +
         " from there to the oven's floor, puts that floor at " + page.length(floor_mm) + ".";
}

std::string what_binds(const Page& page) {
  const evaluate::Evaluation& e = page.evaluation;
  const std::string_view binding = e.recommended.binding;
  if (binding == "height.hand_ceiling") {
    const auto who = lowest_hands(page.config, e);
    if (!who) return {};
    const double elbow_mm = e.cooks[*who].body.elbow.value_mm;
    const double most_mm = e.cooks[*who].ceiling_floor_mm;
    const double over_mm = e.recommended.heights.oven_floor_mm.value_or(0) - most_mm;
    std::string text = " Hands set it, and " + page.cook_name(*who) +
                       "'s are the lowest: with the elbow at " + page.length(elbow_mm) +
                       " that floor may be at most " + page.length(most_mm) + ", " +
                       between(page, elbow_mm, most_mm) + " above it.";
    if (over_mm > plain_step_mm(page.units) / 2) {
      text += " The nearest mark is " + between(page, most_mm, most_mm + over_mm) +
              " more, which no hand can tell.";
    }
    return text;
  }
  if (binding == "height.cover_ceiling" && e.cover_ceiling_mm) {
    return " The cover sets it: it allows at most " + page.length(*e.cover_ceiling_mm) +
           " under the oven.";
  }
  if (binding == "height.full_view") return " Everyone at the oven sees it all from there.";
  return " Seeing asks for more, hands for less: the household's best balance.";
}

// One level is one height for two tasks: neither alone explains it.
std::string of_both(const Page& page) {
  const evaluate::Heights& best = page.evaluation.recommended.heights;
  const bool both = best.counter_mm && best.oven_base_mm;
  return both && page.config.station.arrangement == config::Arrangement::OneLevel
             ? " Oven and dough share this one level, and each pulls it its way."
             : std::string();
}

std::string oven_reason(const Page& page) {
  const auto& base_mm = page.evaluation.recommended.heights.oven_base_mm;
  if (!base_mm) return {};
  return floor_sum(page, *base_mm) + what_binds(page) + of_both(page) + marked_to(page);
}

std::string dough_reason(const Page& page) {
  const evaluate::Evaluation& e = page.evaluation;
  const auto& counter_mm = e.recommended.heights.counter_mm;
  if (!counter_mm) return {};
  // "12 in below Ana's elbow and 6 in below Bela's; 7 to 10 in suits dough": who have the same band
  // are told together.
  std::vector<std::pair<std::string, std::string>> told;  // the band, and who has it
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = e.cooks[i];
    if (!cook.at_prep || cook.young_child) continue;
    const double elbow_mm = cook.body.elbow.value_mm;
    // In a chair it is the counter's own height that must suit, not how far below the elbow.
    const std::string band =
        cook.body.seated
            ? "a counter at " +
                  plain_band({elbow_mm - cook.prep_band.high_mm, elbow_mm - cook.prep_band.low_mm},
                             page.units, true) +
                  " suits that seat"
            : plain_band(cook.prep_band, page.units, true) + " suits dough";
    auto place = std::find_if(told.begin(), told.end(),
                              [&band](const auto& one) { return one.first == band; });
    if (place == told.end()) place = told.insert(told.end(), {band, {}});
    const double below_mm = elbow_mm - *counter_mm;
    std::string& whom = place->second;
    whom += (whom.empty() ? "" : ", ") + page.length(std::abs(below_mm)) +
            (below_mm < 0 ? " above " : " below ") + page.cook_name(i) + "'s elbow";
  }
  std::string text;
  for (const auto& [band, whom] : told) {
    text += (text.empty() ? page.length(*counter_mm) + " is " : std::string("; ")) + whom +
            ", where " + band;
  }
  return text.empty() ? text : text + "." + of_both(page) + marked_to(page);
}

}  // namespace

std::string height_reason(const Page& page, std::string_view headline) {
  return headline == "oven_counter" ? oven_reason(page) : dough_reason(page);
}

std::vector<Item> height_items(const Page& page) {
  std::vector<Item> items;
  for (const Headline& h : {oven_headline(page.config, page.evaluation, page.units),
                            dough_headline(page.config, page.evaluation, page.units)}) {
    // A given height that is the recommended one, but for what nobody could tell, needs no reason.
    if (h.value == kNoHeight || (h.why == "height.given" && h.yours.empty())) continue;
    const std::string reason = height_reason(page, h.id);
    if (reason.empty()) continue;
    items.push_back({"why." + std::string(h.id), {}, h.label + " " + h.value, reason, h.why});
  }
  return items;
}

}  // namespace hs::report
