// The cold trial: what the tape in the blocked-up oven says about the inputs.

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "engine/base/quantity.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

// How well a careful builder measures each input, mm: our judgement.
constexpr double kTapeError_mm = 5;
constexpr double kMouthError_mm = 4;
constexpr double kHeightError_mm = 6;
constexpr double kStandoffError_mm = 25;
constexpr double kMeasuredEyeError_mm = 10;
// An input that would have to be off by more of its own errors than this explains nothing.
constexpr double kMostErrors = 4;

struct Place {
  std::size_t cook = 0;
  double oven_base_mm = 0;
  double standoff_mm = 0;
};

// One input that may be off: its path, value, error, range, and the mark it would give.
struct Suspect {
  std::string path;
  double value_mm = 0, error_mm = 0;
  double low_mm = 0, high_mm = 0;
  enum class What { Eye, Standoff, MouthHeight, FloorAboveBase, Throat, Base } what = What::Eye;
};

double mark_with(const config::Config& config, const cook::Body& body, Place place,
                 Suspect::What what, double value_mm) {
  config::Oven oven = config.oven;
  double eye_mm = body.eye.value_mm;
  switch (what) {
    case Suspect::What::Eye:
      eye_mm = value_mm;
      break;
    case Suspect::What::Standoff:
      place.standoff_mm = value_mm;
      break;
    case Suspect::What::MouthHeight:
      oven.mouth_height_mm = value_mm;
      break;
    case Suspect::What::FloorAboveBase:
      oven.floor_above_base_mm = value_mm;
      break;
    case Suspect::What::Throat:
      oven.throat_mm = value_mm;
      break;
    case Suspect::What::Base:
      place.oven_base_mm = value_mm;
      break;
  }
  const oven::Geometry geometry = oven::geometry_of(oven);
  const double height_mm = eye_mm - place.oven_base_mm - oven.floor_above_base_mm;
  if (height_mm <= 0) return -1;
  return std::min(1e6, sight::reach_on_middle(
                           geometry, {config.view.lateral_mm, place.standoff_mm, height_mm}));
}

std::vector<Suspect> suspects(const config::Config& config, const cook::Body& body,
                              const Place& place) {
  using What = Suspect::What;
  const config::Oven& oven = config.oven;
  const double eye_mm = body.eye.value_mm;
  const double eye_error_mm = std::max(body.eye.sd_mm, kMeasuredEyeError_mm);
  std::vector<Suspect> all;
  all.push_back({"cooks." + std::to_string(place.cook) + ".eye_height_mm", eye_mm, eye_error_mm,
                 eye_mm - 150, eye_mm + 150, What::Eye});
  all.push_back({"trial.at.standoff_mm", place.standoff_mm, kStandoffError_mm,
                 std::max(100.0, place.standoff_mm - 500), place.standoff_mm + 500,
                 What::Standoff});
  all.push_back({"oven.mouth_height_mm", oven.mouth_height_mm, kMouthError_mm,
                 std::max(40.0, oven.mouth_height_mm - 60), oven.mouth_height_mm + 60,
                 What::MouthHeight});
  all.push_back({"oven.floor_above_base_mm", oven.floor_above_base_mm, kHeightError_mm,
                 std::max(0.0, oven.floor_above_base_mm - 100), oven.floor_above_base_mm + 100,
                 What::FloorAboveBase});
  all.push_back({"trial.at.oven_base_height_mm", place.oven_base_mm, kHeightError_mm,
                 std::max(0.0, place.oven_base_mm - 100), place.oven_base_mm + 100, What::Base});
  if (oven.throat_mm > 0) {
    all.push_back({"oven.throat_mm", oven.throat_mm, kHeightError_mm,
                   std::max(0.0, oven.throat_mm - 100), oven.throat_mm + 100, What::Throat});
  }
  return all;
}

// The value in low..high that gives the measured mark; the mark is monotone in each input.
std::optional<double> value_for(const config::Config& config, const cook::Body& body,
                                const Place& place, const Suspect& s, double measured_mm) {
  const auto excess = [&](double v) {
    return mark_with(config, body, place, s.what, v) - measured_mm;
  };
  double low = s.low_mm, high = s.high_mm;
  const double at_low = excess(low), at_high = excess(high);
  if ((at_low < 0) == (at_high < 0)) return {};
  const bool rising = at_high > at_low;
  while (high - low > 0.01) {
    const double middle = (low + high) / 2;
    ((excess(middle) > 0) == rising ? high : low) = middle;
  }
  return quantised(Quantity::Length, (low + high) / 2);
}

std::size_t cook_named(const config::Config& config, const std::optional<std::string>& name) {
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (name ? config.cooks[i].name == *name : config::works_at_oven(config.cooks[i])) return i;
  }
  return 0;
}

}  // namespace

std::optional<ColdTrial> cold_trial(const config::Config& config, const Scene& scene,
                                    const Heights& used) {
  const config::Trial& given = config.trial;
  if (!given.cold_farthest_seen_mm) return {};
  const std::optional<double> base_mm =
      given.oven_base_height_mm ? given.oven_base_height_mm : used.oven_base_mm;
  if (!base_mm) return {};
  const Place place{cook_named(config, given.cook), *base_mm,
                    given.standoff_mm.value_or(config.view.standoff_mm)};
  const cook::Body& body = scene.bodies[place.cook];

  ColdTrial trial;
  trial.cook = place.cook;
  trial.measured_mm = *given.cold_farthest_seen_mm;
  const sight::Eye eye = eye_of(body, config.view, place.standoff_mm,
                                place.oven_base_mm + config.oven.floor_above_base_mm);
  trial.predicted_mm = sight::farthest_on_middle(scene.geometry, eye);
  if (!trial.predicted_mm) return trial;
  trial.difference_mm = trial.measured_mm - *trial.predicted_mm;

  // What the errors of all inputs together explain, by first-order propagation.
  const std::vector<Suspect> all = suspects(config, body, place);
  double variance = kTapeError_mm * kTapeError_mm;
  for (const Suspect& s : all) {
    const double up = mark_with(config, body, place, s.what, s.value_mm + 1);
    const double down = mark_with(config, body, place, s.what, s.value_mm - 1);
    const double slope = (up - down) / 2;
    variance += slope * slope * s.error_mm * s.error_mm;
  }
  // Both at the floor's far end: the tape cannot tell more.
  const double far_mm = scene.geometry.floor.far_mm;
  const bool both_at_end =
      *trial.predicted_mm >= far_mm - kTapeError_mm && trial.measured_mm >= far_mm - kTapeError_mm;
  trial.agrees = both_at_end || std::abs(trial.difference_mm) <= std::sqrt(variance);
  if (trial.agrees) return trial;

  for (const Suspect& s : all) {
    const auto value = value_for(config, body, place, s, trial.measured_mm);
    if (!value) continue;
    const double errors = std::abs(*value - s.value_mm) / s.error_mm;
    if (errors > kMostErrors || (trial.corrected_mm && errors >= trial.standard_errors)) continue;
    trial.corrected_mm = value;
    trial.likely_field = s.path;
    trial.standard_errors = errors;
  }
  return trial;
}

}  // namespace hs::evaluate
