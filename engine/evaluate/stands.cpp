#include "engine/evaluate/stands.h"

#include <algorithm>

namespace hs::evaluate {
namespace {

constexpr double kRim_mm = 20;   // a stand's top beside the oven's body: drawn
constexpr double kBack_mm = 40;  // and behind it

// The side with more landing, then with more room, then of the hand that most peels are held in:
// our judgement, for drawing only.
bool dough_is_right(const config::Config& config) {
  const config::Station& s = config.station;
  const double landing = s.landing_right_mm.value_or(0) - s.landing_left_mm.value_or(0);
  if (landing != 0) return landing > 0;
  if (s.right_gap_mm && s.left_gap_mm && *s.right_gap_mm != *s.left_gap_mm) {
    return *s.right_gap_mm > *s.left_gap_mm;
  }
  double right = 0;
  for (const config::Cook& cook : config.cooks) {
    if (!config::works_at_oven(cook)) continue;
    right += cook.share * (cook.handed == config::Hand::Right ? 1 : -1);
  }
  return right >= 0;
}

}  // namespace

double Stands::left_mm() const {
  if (oven && dough) return std::min(oven->left_mm, dough->left_mm);
  if (oven) return oven->left_mm;
  return dough ? dough->left_mm : 0;
}

Stands stands_of(const config::Config& config, const Heights& used) {
  const config::Station& s = config.station;
  Stands out;
  out.front_mm = -s.oven_setback_mm;
  out.dough_right = dough_is_right(config);
  const double prep_far = out.front_mm + s.prep_depth_mm;
  if (!used.oven_base_mm) {
    if (used.counter_mm) {
      out.dough = clearance::Box{
          -s.prep_width_mm / 2, s.prep_width_mm / 2, out.front_mm, prep_far, 0, *used.counter_mm};
    }
    return out;
  }
  const double base = *used.oven_base_mm, half = config.oven.width_mm / 2;
  const bool one_cabinet =
      s.arrangement != config::Arrangement::TwoLevel && !config::is_masonry(config.oven.kind);
  const double under = one_cabinet && used.counter_mm ? std::min(*used.counter_mm, base) : base;
  const bool dough = used.counter_mm.has_value();
  const auto beside = [&](bool right) {
    const std::optional<double>& landing = right ? s.landing_right_mm : s.landing_left_mm;
    const bool counter_there = dough && right == out.dough_right;
    return counter_there ? kRim_mm : std::max(kRim_mm, landing.value_or(0));
  };
  const double far = std::max(config.oven.depth_mm + kBack_mm, one_cabinet ? prep_far : 0);
  out.oven =
      clearance::Box{-half - beside(false), half + beside(true), out.front_mm, far, 0, under};
  if (!dough) return out;
  const std::optional<double>& landing = out.dough_right ? s.landing_right_mm : s.landing_left_mm;
  const double wide = std::max(s.prep_width_mm, landing.value_or(0) - kRim_mm);
  const double edge = out.dough_right ? out.oven->right_mm : out.oven->left_mm - wide;
  out.dough = clearance::Box{edge, edge + wide, out.front_mm, prep_far, 0, *used.counter_mm};
  return out;
}

}  // namespace hs::evaluate
