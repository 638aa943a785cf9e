#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "engine/evaluate/surveying.h"
#include "engine/frame/places.h"

namespace hs::evaluate {
namespace {

constexpr double kSame_mm = 1;  // two counters that stand side by side

}  // namespace

void base_panels(const config::Config& config, const Heights& used, SurveyResult& out) {
  const frame::Places stands = frame::places(config, {used.counter_mm, used.oven_base_mm});
  const double left = frame::left_mm(stands);
  const double back_from_edge = config.station.overhang_mm + config.station.toe_space_mm;
  struct Foot {
    double left_mm, right_mm, far_mm;
    PanelPlace front, back;
  };
  std::vector<Foot> plans;
  const auto stand = [&](const auto& counter, PanelPlace front, PanelPlace back) {
    plans.push_back({counter.left_mm - left, counter.right_mm - left,
                     counter.far_mm - stands.front_mm, front, back});
  };
  if (stands.oven_stand && !config::is_masonry(config.oven.kind)) {
    stand(*stands.oven_stand, PanelPlace::OvenFront, PanelPlace::OvenBack);
  }
  if (stands.dough_counter) {
    stand(*stands.dough_counter, PanelPlace::DoughFront, PanelPlace::DoughBack);
  }
  if (plans.size() == 2 && plans[1].left_mm < plans[0].left_mm) std::swap(plans[0], plans[1]);
  const auto add = [&](PanelPlace place, double fx, double fy, double tx, double ty) {
    out.panels.push_back({panel_name(place), fx, fy, tx, ty});
    out.places.push_back(place);
  };
  const double near = back_from_edge;
  for (const Foot& p : plans) add(p.front, p.left_mm, near, p.right_mm, near);
  if (!plans.empty()) {
    const Foot& first = plans.front();
    const Foot& last = plans.back();
    add(PanelPlace::LeftEnd, first.left_mm, std::max(first.far_mm, near), first.left_mm, near);
    add(PanelPlace::RightEnd, last.right_mm, near, last.right_mm, std::max(last.far_mm, near));
  }
  if (plans.size() == 2 && std::abs(plans[0].right_mm - plans[1].left_mm) <= kSame_mm) {
    add(PanelPlace::Between, plans[0].right_mm, near, plans[0].right_mm,
        std::max({plans[0].far_mm, plans[1].far_mm, near}));
  }
  for (const Foot& p : plans) add(p.back, p.right_mm, p.far_mm, p.left_mm, p.far_mm);
}

std::string_view panel_name(PanelPlace place) {
  constexpr std::string_view kNames[] = {"front of the oven's counter",
                                         "front of the dough counter",
                                         "left end",
                                         "right end",
                                         "panel between the counters",
                                         "back of the oven's counter",
                                         "back of the dough counter"};
  return kNames[static_cast<std::size_t>(place)];
}

}  // namespace hs::evaluate
