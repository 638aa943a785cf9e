#include "engine/frame/places.h"

#include <algorithm>

namespace hs::frame {
namespace {

constexpr double kRim_mm = 20;   // a stand's top beside the oven's body
constexpr double kBack_mm = 40;  // and behind it
constexpr double kSame_mm = 1;   // heights closer than this are one level

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

Places places(const config::Config& config, const Levels& levels) {
  Places out;
  const config::Station& s = config.station;
  out.front_mm = -s.oven_setback_mm;
  out.dough_right = dough_is_right(config);
  const double prep_far = out.front_mm + s.prep_depth_mm;
  if (!levels.oven_base_mm) {
    if (levels.counter_mm) {
      out.dough_counter = Block{
          -s.prep_width_mm / 2, s.prep_width_mm / 2, out.front_mm, prep_far, 0, *levels.counter_mm};
    }
    return out;
  }
  const double base = *levels.oven_base_mm, half = config.oven.width_mm / 2;
  const bool one_cabinet =
      s.arrangement != config::Arrangement::TwoLevel && !config::is_masonry(config.oven.kind);
  const double under = one_cabinet && levels.counter_mm ? std::min(*levels.counter_mm, base) : base;
  const bool dough = levels.counter_mm.has_value();
  const auto beside = [&](bool right) {
    const std::optional<double>& landing = right ? s.landing_right_mm : s.landing_left_mm;
    const bool counter_there = dough && right == out.dough_right;
    return counter_there ? kRim_mm : std::max(kRim_mm, landing.value_or(0));
  };
  const double far = std::max(config.oven.depth_mm + kBack_mm, one_cabinet ? prep_far : 0);
  out.masonry_base = config::is_masonry(config.oven.kind);
  out.oven_stand = Block{-half - beside(false), half + beside(true), out.front_mm, far, 0, under};
  if (base - under > kSame_mm) {
    out.riser = Block{-half, half, -0.2 * s.oven_setback_mm, config.oven.depth_mm, under, base};
  }
  if (!dough) return out;
  const std::optional<double>& landing = out.dough_right ? s.landing_right_mm : s.landing_left_mm;
  const double wide = std::max(s.prep_width_mm, landing.value_or(0) - kRim_mm);
  const double edge = out.dough_right ? out.oven_stand->right_mm : out.oven_stand->left_mm - wide;
  out.dough_counter = Block{edge, edge + wide, out.front_mm, prep_far, 0, *levels.counter_mm};
  return out;
}

double left_mm(const Places& places) {
  if (places.oven_stand && places.dough_counter) {
    return std::min(places.oven_stand->left_mm, places.dough_counter->left_mm);
  }
  if (places.oven_stand) return places.oven_stand->left_mm;
  return places.dough_counter ? places.dough_counter->left_mm : 0;
}

}  // namespace hs::frame
