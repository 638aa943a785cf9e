#include "engine/evaluate/curves.h"

#include <algorithm>
#include <cmath>

#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

// How far the heights go beyond the lowest and the highest good one: to where the household search
// counts a whole unit.
constexpr double kMargin_mm = 150;

// Fills heights and values. The cooks are there, with their good bands; `value` is asked for each
// cook and height.
template <typename Value>
void fill(Curves& curves, double step_mm, Value value) {
  if (curves.cooks.empty()) return;
  double low_mm = 1e9, high_mm = 0;
  const auto cover = [&](double low, double high) {
    low_mm = std::min(low_mm, low);
    high_mm = std::max(high_mm, high);
  };
  for (const Curve& curve : curves.cooks) cover(curve.good.low_mm, curve.good.high_mm);
  if (curves.used_mm) cover(*curves.used_mm, *curves.used_mm);
  const int first = std::max(0, static_cast<int>(std::floor((low_mm - kMargin_mm) / step_mm)));
  const int last = static_cast<int>(std::ceil((high_mm + kMargin_mm) / step_mm));
  for (int i = first; i <= last; ++i) curves.heights_mm.push_back(i * step_mm);
  for (Curve& curve : curves.cooks) {
    curve.values.reserve(curves.heights_mm.size());
    for (const double height_mm : curves.heights_mm) {
      curve.values.push_back(value(curve, height_mm));
    }
    if (curves.used_mm) curve.at_used = value(curve, *curves.used_mm);
  }
}

}  // namespace

Curves dough_hands(const config::Config& config, const Evaluation& evaluation, double step_mm) {
  Curves curves;
  curves.good = evaluation.recommended.dough_band;
  curves.used_mm = evaluation.used.counter_mm;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const CookResult& cook = evaluation.cooks[i];
    if (!cook.at_prep || cook.young_child) continue;
    const double elbow_mm = cook.body.elbow.value_mm;
    Curve curve;
    curve.cook = i;
    curve.good = {elbow_mm - cook.prep_band.high_mm, elbow_mm - cook.prep_band.low_mm};
    curves.cooks.push_back(std::move(curve));
  }
  fill(curves, step_mm, [](const Curve& curve, double height_mm) {
    return height::outside_mm(height_mm, curve.good);
  });
  return curves;
}

Curves oven_hands(const config::Config& config, const Evaluation& evaluation, double step_mm) {
  Curves curves;
  curves.good = evaluation.recommended.oven_band;
  curves.used_mm = evaluation.used.oven_base_mm;
  const double above_mm = config.oven.floor_above_base_mm;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const CookResult& cook = evaluation.cooks[i];
    if (!cook.at_oven) continue;
    const Band floors = height::easy_floors(cook.body.elbow.value_mm);
    Curve curve;
    curve.cook = i;
    curve.good = {floors.low_mm - above_mm, floors.high_mm - above_mm};
    curve.ceiling_mm = cook.ceiling_floor_mm - above_mm;
    curves.cooks.push_back(std::move(curve));
  }
  fill(curves, step_mm, [](const Curve& curve, double height_mm) {
    return height::outside_mm(height_mm, curve.good);
  });
  return curves;
}

Curves seen_shares(const config::Config& config, const Evaluation& evaluation, double step_mm) {
  // The heights are those of the hands: where nobody can work there is nothing to weigh.
  Curves curves = oven_hands(config, evaluation, step_mm);
  const auto share = [&](const Curve& curve, double base_mm) {
    const sight::Eye eye =
        eye_of(evaluation.cooks[curve.cook].body, config.view, config.view.standoff_mm,
               base_mm + config.oven.floor_above_base_mm);
    if (eye.height_mm <= 0) return 0.0;
    return sight::seen_share_of_disc(evaluation.geometry, eye, evaluation.pizza);
  };
  for (Curve& curve : curves.cooks) {
    curve.good = {*curve.ceiling_mm + 1, *curve.ceiling_mm};
    bool found = false;
    for (std::size_t i = 0; i < curves.heights_mm.size(); ++i) {
      curve.values[i] = share(curve, curves.heights_mm[i]);
      if (found || curve.values[i] < sight::kAllSeen) continue;
      curve.good.low_mm = curves.heights_mm[i];
      found = true;
    }
    if (curves.used_mm) curve.at_used = share(curve, *curves.used_mm);
  }
  return curves;
}

}  // namespace hs::evaluate
