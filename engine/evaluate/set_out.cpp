#include "engine/evaluate/set_out.h"

#include <algorithm>
#include <cmath>

#include "engine/base/quantity.h"
#include "engine/evaluate/surveying.h"

namespace hs::evaluate {
namespace {

constexpr double kApart_mm = 600;       // as survey.readings asks: our judgement
constexpr double kBeforeEdge_mm = 300;  // where toes stand: our judgement
constexpr double kSame_mm = 60;         // panels that share a corner share its point

}  // namespace

std::vector<config::SurveyPoint> usual_points(const config::Config& config, const Heights& used) {
  SurveyResult plan;
  base_panels(config, used, plan);
  std::vector<config::SurveyPoint> points;
  double right_mm = 0;
  const auto add = [&points](double x_mm, double y_mm, config::PointKind kind) {
    const bool there =
        std::any_of(points.begin(), points.end(), [&](const config::SurveyPoint& one) {
          return one.kind == kind && std::abs(one.x_mm - x_mm) <= kSame_mm &&
                 std::abs(one.y_mm - y_mm) <= kSame_mm;
        });
    if (there || points.size() >= config::kMaxPoints) return;
    points.push_back({round_to(x_mm, 10), round_to(y_mm, 10), {}, config::Setup::A, kind});
  };
  for (std::size_t i = 0; i < plan.panels.size(); ++i) {
    const survey::PanelLine& panel = plan.panels[i];
    right_mm = std::max(right_mm, panel.to_x_mm);
    if (!shows(plan.places[i])) continue;
    const int steps =
        std::max(1, static_cast<int>(std::ceil(panel.length_mm() / kApart_mm - 1e-6)));
    for (int step = 0; step <= steps; ++step) {
      const double share = static_cast<double>(step) / steps;
      add(panel.from_x_mm + share * (panel.to_x_mm - panel.from_x_mm),
          panel.from_y_mm + share * (panel.to_y_mm - panel.from_y_mm), config::PointKind::Panel);
    }
  }
  if (points.empty()) return points;
  for (const double share : {0.2, 0.5, 0.8}) {
    add(share * right_mm, -kBeforeEdge_mm, config::PointKind::Feet);
  }
  return points;
}

}  // namespace hs::evaluate
