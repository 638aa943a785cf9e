#include "engine/report/fit_words.h"

#include "engine/report/phrases.h"

namespace hs::report {

std::string names_of(const config::Config& config, const std::vector<std::size_t>& cooks) {
  std::string text;
  for (std::size_t i = 0; i < cooks.size(); ++i) {
    if (i > 0) text += i + 1 == cooks.size() ? " and " : ", ";
    text += config.cooks[cooks[i]].name;
  }
  return text;
}

std::vector<std::string> fit_words(const config::Config& config, const evaluate::FitSpot& spot,
                                   double oven_floor_mm, double standoff_mm, Units units) {
  if (spot.cooks == 0) return {};
  std::vector<std::string> lines{"Floor " + plain_length(oven_floor_mm, units, true) + ", eye " +
                                 distance(standoff_mm, units) + " away"};
  const std::string& worst = config.cooks[spot.worst].name;
  if (spot.see_all.size() == spot.cooks) {
    lines.push_back(spot.cooks == 1 ? worst + " sees all of it" : "Everyone sees all of it");
  } else {
    lines.push_back(worst + " sees " + percent(spot.share) + " of the pizza");
    if (!spot.see_all.empty()) {
      lines.push_back(names_of(config, spot.see_all) +
                      (spot.see_all.size() == 1 ? " sees all of it" : " see all of it"));
    }
  }
  if (!spot.too_high.empty()) {
    lines.push_back("Too high for the hands of " + names_of(config, spot.too_high));
  }
  if (!spot.too_hot.empty()) {
    lines.push_back("Too hot to linger: " + names_of(config, spot.too_hot));
  }
  return lines;
}

}  // namespace hs::report
