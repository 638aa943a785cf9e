#include "engine/finish/times.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace hs::finish {
namespace {

constexpr double kLabelHumid = 50, kTooHumid = 90;
constexpr double kTiny = 1e-9;

constexpr double from_f(double f) { return (f - 32) / 1.8; }

}  // namespace

std::optional<Wait> wait_for(const PaintLabel& label, double air_c, double humidity_percent) {
  if (!(air_c >= label.cold_c - kTiny) || !std::isfinite(air_c)) return {};
  if (!(humidity_percent >= 0 && humidity_percent <= kTooHumid)) return {};
  const double span = label.warm_c - label.cold_c;
  if (!(span > 0)) return {};
  const double cold = std::clamp((label.warm_c - air_c) / span, 0.0, 1.0);
  Wait wait{label.touch_warm_h + cold * (label.touch_cold_h - label.touch_warm_h),
            label.recoat_warm_h + cold * (label.recoat_cold_h - label.recoat_warm_h)};
  if (humidity_percent > kLabelHumid) wait.recoat_h = std::max(wait.recoat_h, label.damp_h);
  return wait;
}

std::optional<Cement> cement_times(double air_c, double humidity_percent) {
  if (!(air_c >= from_f(0) - kTiny && air_c <= from_f(100) + kTiny)) return {};
  if (!(humidity_percent >= 0 && humidity_percent <= 100)) return {};
  Cement times{3, 8};
  if (air_c >= from_f(60) - kTiny) {
    times = {0.25, 1};
  } else if (air_c >= from_f(40) - kTiny) {
    times = {1, 2};
  }
  if (humidity_percent > 60) times.handle_h *= 1.5;
  return times;
}

Adhesive trim_adhesive() { return {"trim adhesive", 5.0 / 60, 1, 24, rules::Basis::Memory}; }
Adhesive bedding_adhesive() { return {"bed of the metal top", {}, {}, 72, rules::Basis::Memory}; }

Joint joint_after(const Adhesive& adhesive, double hours) {
  if (!(hours >= 0)) return Joint::Unknown;
  if (adhesive.full_h && hours >= *adhesive.full_h) return Joint::Load;
  if (!adhesive.full_h || !adhesive.fixture_h || !adhesive.working_h) return Joint::Unknown;
  if (hours >= *adhesive.fixture_h) return Joint::Handle;
  return hours < *adhesive.working_h ? Joint::Move : Joint::Leave;
}

std::string_view joint_words(Joint joint) {
  constexpr std::string_view kWords[] = {
      "can still be moved", "leave it clamped: moving it now breaks what has set",
      "holds itself and no more: early grab is not strength; take the clamps off, load nothing",
      "cured by its label: may be loaded",
      "read the adhesive's label: nothing is to be loaded until its full cure"};
  return kWords[static_cast<std::size_t>(joint)];
}

std::optional<double> waiting_h(const Adhesive& adhesive) { return adhesive.full_h; }

}  // namespace hs::finish
