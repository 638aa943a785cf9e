// How the two heights come about, with their numbers: what a person asks for first under "why".

#include <algorithm>

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

// "39 in, and 5 7/8 in from there to the oven's floor, puts that floor at 44 7/8 in."
std::string floor_sum(const Page& page, double base_mm) {
  const double lift_mm = page.config.oven.floor_above_base_mm;
  return page.length(base_mm) + ", and " + page.length(lift_mm) +
         " from there to the oven's floor, puts that floor at " + page.length(base_mm + lift_mm) +
         ".";
}

std::string what_binds(const Page& page) {
  const evaluate::Evaluation& e = page.evaluation;
  const std::string_view binding = e.recommended.binding;
  if (binding == "height.hand_ceiling") {
    const auto who = lowest_hands(page.config, e);
    if (!who) return {};
    return " Hands set it, and " + page.cook_name(*who) + "'s are the lowest: with the elbow at " +
           page.length(e.cooks[*who].body.elbow.value_mm) + " that floor may be at most " +
           page.length(e.cooks[*who].ceiling_floor_mm) + ", 100 mm (4 in) above it.";
  }
  if (binding == "height.cover_ceiling" && e.cover_ceiling_mm) {
    return " The cover sets it: it allows at most " + page.length(*e.cover_ceiling_mm) +
           " under the oven.";
  }
  if (binding == "height.full_view") return " Everyone at the oven sees it all from there.";
  return " Seeing asks for more, hands for less: the household's best balance.";
}

std::string oven_reason(const Page& page) {
  const auto& base_mm = page.evaluation.recommended.heights.oven_base_mm;
  if (!base_mm) return {};
  return floor_sum(page, *base_mm) + what_binds(page) + marked_to(page);
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
    const std::string band = plain_band(cook.prep_band, page.units, true) +
                             (cook.body.seated ? " suits a seat" : " suits dough");
    auto place = std::find_if(told.begin(), told.end(),
                              [&band](const auto& one) { return one.first == band; });
    if (place == told.end()) place = told.insert(told.end(), {band, {}});
    const double below_mm = cook.body.elbow.value_mm - *counter_mm;
    std::string& whom = place->second;
    whom += (whom.empty() ? "" : ", ") + page.length(std::abs(below_mm)) +
            (below_mm < 0 ? " above " : " below ") + page.cook_name(i) + "'s elbow";
  }
  std::string text;
  for (const auto& [band, whom] : told) {
    text += (text.empty() ? page.length(*counter_mm) + " is " : std::string("; ")) + whom +
            ", where " + band;
  }
  return text + (text.empty() ? "" : ".") + marked_to(page);
}

}  // namespace

std::string height_reason(const Page& page, std::string_view headline) {
  return headline == "oven_counter" ? oven_reason(page) : dough_reason(page);
}

std::vector<Item> height_items(const Page& page) {
  std::vector<Item> items;
  for (const Headline& h : {oven_headline(page.config, page.evaluation, page.units),
                            dough_headline(page.config, page.evaluation, page.units)}) {
    if (h.value == kNoHeight) continue;
    const std::string reason = height_reason(page, h.id);
    if (reason.empty()) continue;
    items.push_back({"why." + std::string(h.id), {}, h.label + " " + h.value, reason, h.why});
  }
  return items;
}

}  // namespace hs::report
