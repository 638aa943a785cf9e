// How the answer moves when an estimate is off by its standard error or a weight is doubled, and
// for what share of adults the station works.

#include <cmath>

#include "engine/cook/population.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

struct Moves {
  double oven_mm = 0, dough_mm = 0;
};

Moves moved(const Heights& from, const Heights& to) {
  const auto change = [](const std::optional<double>& a, const std::optional<double>& b) {
    return a && b ? *b - *a : 0.0;
  };
  return {change(from.oven_base_mm, to.oven_base_mm), change(from.counter_mm, to.counter_mm)};
}

// The larger of the moves for plus and minus, with the sign it has for plus.
double larger(double plus, double minus) {
  return std::abs(plus) >= std::abs(minus) ? plus : -minus;
}

cook::Estimate& estimate_of(cook::Body& body, Measure measure) {
  switch (measure) {
    case Measure::Eye:
      return body.eye;
    case Measure::Elbow:
      return body.elbow;
    case Measure::Shoulder:
      return body.shoulder;
  }
  return body.eye;
}

}  // namespace

void add_sensitivity(const config::Config& config, const Scene& scene, Evaluation& evaluation) {
  const config::Arrangement arrangement = config.station.arrangement;
  const Heights& answer = evaluation.recommended.searched;
  Scene varied = scene;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    for (const Measure measure : {Measure::Eye, Measure::Elbow}) {
      const double sd_mm = estimate_of(varied.bodies[i], measure).sd_mm;
      if (sd_mm <= 0) continue;  // measured
      cook::Estimate& estimate = estimate_of(varied.bodies[i], measure);
      const double value_mm = estimate.value_mm;
      estimate.value_mm = value_mm + sd_mm;
      const Moves up = moved(answer, plan_heights(config, varied, arrangement).heights);
      estimate.value_mm = value_mm - sd_mm;
      const Moves down = moved(answer, plan_heights(config, varied, arrangement).heights);
      estimate.value_mm = value_mm;
      evaluation.sensitivity.push_back({i, measure, sd_mm, larger(up.oven_mm, down.oven_mm),
                                        larger(up.dough_mm, down.dough_mm)});
    }
  }

  struct Weight {
    std::string_view name;
    double config::Weights::*member;
  };
  constexpr Weight kWeights[] = {{"sight", &config::Weights::sight},
                                 {"prep", &config::Weights::prep},
                                 {"hands", &config::Weights::hands}};
  const auto try_weights = [&](std::string_view name, double factor, const config::Weights& w) {
    config::Config changed = config;
    changed.weights = w;
    const Moves m = moved(answer, plan_heights(changed, scene, arrangement).heights);
    evaluation.weight_moves.push_back({name, factor, m.oven_mm, m.dough_mm});
  };
  for (const Weight& weight : kWeights) {
    for (const double factor : {0.5, 2.0}) {
      config::Weights w = config.weights;
      w.*weight.member *= factor;
      try_weights(weight.name, factor, w);
    }
  }
  for (const double worst_off : {0.0, 1.0}) {
    config::Weights w = config.weights;
    w.worst_off = worst_off;
    try_weights("worst_off", worst_off, w);
  }
}

double guests_share(const config::Config& config, const Scene& scene, const Heights& used,
                    double standoff_mm) {
  // Works: hands below their ceiling, the whole target on the middle line seen upright from at most
  // two steps behind the watching distance, and the dough counter between light and heavy work.
  const double board_mm = config.station.board_mm;
  const double light_mm = height::light_offset(board_mm).low_mm;
  const double heavy_mm = height::dough_offset(board_mm).high_mm;
  constexpr double kGuestShoes_mm = 25;
  constexpr double kTwoSteps_mm = 800;  // a guest may watch from this much further back
  return cook::share_of_adults(
      [&](const cook::Body& body) {
        if (used.oven_floor_mm) {
          if (*used.oven_floor_mm >
              height::floor_ceiling_mm(body.elbow.value_mm) + height::kHandTolerance_mm) {
            return false;
          }
          const sight::Eye eye =
              eye_of(body, config.view, standoff_mm + kTwoSteps_mm, *used.oven_floor_mm);
          if (unseen_line(scene, eye) > 0) return false;
        }
        if (!used.counter_mm) return true;
        const double offset_mm = body.elbow.value_mm - *used.counter_mm;
        return offset_mm >= light_mm && offset_mm <= heavy_mm;
      },
      kGuestShoes_mm);
}

}  // namespace hs::evaluate
