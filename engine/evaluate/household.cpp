// The heights that serve a household best, for each way of building two heights.

#include <algorithm>
#include <cmath>

#include "engine/evaluate/steps.h"
#include "engine/frame/stack.h"

namespace hs::evaluate {
namespace {

constexpr int kCoarse_mm = 8;
constexpr double kNotConcerned = -1;  // marks a member whom a height does not concern

// Nobody may lose more than this share of the target inside a band: our judgement.
constexpr double kBandLoss = 0.05;
constexpr int kBandSearch_mm = 300;

enum class Task { Oven, Prep, Both };

struct Household {
  const config::Config& config;
  const Scene& scene;
  height::Weights weights;
  std::vector<height::Member> members;
};

height::Weights weights_of(const config::Weights& w) {
  return {w.sight, w.prep, w.hands, w.worst_off};
}

Household household_of(const config::Config& config, const Scene& scene) {
  Household household{config, scene, weights_of(config.weights), {}};
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  bool grown_at_prep = false;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    grown_at_prep |=
        config::works_at_prep(config.cooks[i]) && !young_child(config.cooks[i], scene.bodies[i]);
  }
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const config::Cook& cook = config.cooks[i];
    // A young child works at a low table of its own, so it pulls the dough counter only when no one
    // else works there.
    const bool prep =
        config::works_at_prep(cook) && !(grown_at_prep && young_child(cook, scene.bodies[i]));
    household.members.push_back({cook.share, scene.bodies[i].elbow.value_mm, at_oven[i], prep,
                                 prep_band_of(config, cook, scene.bodies[i])});
  }
  return household;
}

bool anyone(const Household& h, bool height::Member::*place) {
  return std::any_of(h.members.begin(), h.members.end(),
                     [place](const height::Member& m) { return m.*place; });
}

// What this height of counter (for the oven, for dough, or for both) costs one cook.
double cost_at(const Household& h, std::size_t m, Task task, double height_mm) {
  const height::Member& member = h.members[m];
  double cost = kNotConcerned;
  if (task != Task::Prep && member.oven) {
    const double floor_mm = height_mm + h.scene.floor_above_base_mm;
    const sight::Eye eye =
        eye_of(h.scene.bodies[m], h.config.view, h.config.view.standoff_mm, floor_mm);
    cost = height::oven_cost(member, floor_mm, unseen_line(h.scene, eye), h.weights);
  }
  if (task != Task::Oven && member.prep) {
    cost = std::max(cost, 0.0) + height::prep_cost(member, height_mm, h.weights);
  }
  return cost;
}

std::optional<height::Choice> best_on(const Household& h, Task task, const height::Grid& grid) {
  std::vector<double> costs;
  costs.reserve(grid.size() * h.members.size());
  for (std::size_t i = 0; i < grid.size(); ++i) {
    for (std::size_t m = 0; m < h.members.size(); ++m) {
      costs.push_back(cost_at(h, m, task, grid.at(i)));
    }
  }
  return height::cheapest(grid, h.members, costs, h.weights.worst_off);
}

// Coarse over the whole range, then every millimetre around the best.
std::optional<height::Choice> best(const Household& h, Task task, int low_mm, int high_mm) {
  const int top_mm = std::max(low_mm, high_mm);
  const auto coarse = best_on(h, task, {low_mm, top_mm, kCoarse_mm});
  if (!coarse) return {};
  // The coarse grid may end below the top, where a ceiling usually binds.
  const auto fine = best_on(h, task,
                            {std::max(low_mm, coarse->height_mm - kCoarse_mm),
                             std::min(top_mm, coarse->height_mm + kCoarse_mm), 1});
  return fine;
}

int whole_below(double mm) { return static_cast<int>(std::floor(mm + 1e-6)); }

}  // namespace

Band prep_band_of(const config::Config& config, const config::Cook& cook, const cook::Body& body) {
  return cook.seated ? height::seated_offset(body.elbow.value_mm, frame::edge_mm(config.build))
                     : height::dough_offset(config.station.board_mm);
}

std::vector<bool> pull_the_oven(const config::Config& config, const Scene& scene) {
  std::vector<bool> grown, all;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const bool there = config::works_at_oven(config.cooks[i]);
    all.push_back(there);
    grown.push_back(there && !young_child(config.cooks[i], scene.bodies[i]));
  }
  return std::find(grown.begin(), grown.end(), true) != grown.end() ? grown : all;
}

Ceiling ceiling_of(const config::Config& config, const Scene& scene) {
  Ceiling ceiling{scene.bases.high_mm, {}};
  const auto lower_to = [&](double base_mm, std::string_view rule) {
    if (base_mm < ceiling.oven_base_mm) ceiling = {std::max(0.0, base_mm), rule};
  };
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    lower_to(height::floor_ceiling_mm(scene.bodies[i].elbow.value_mm) - scene.floor_above_base_mm,
             "height.hand_ceiling");
  }
  if (scene.cover_ceiling_mm) lower_to(*scene.cover_ceiling_mm, "height.cover_ceiling");
  return ceiling;
}

namespace {

// The plan of these two heights, with what it costs.
Plan plan_of(const Household& h, std::optional<double> base_mm, std::optional<double> counter_mm) {
  Plan plan;
  plan.heights.counter_mm = counter_mm;
  plan.heights.oven_base_mm = base_mm;
  follow_heights(plan.heights, h.scene);

  std::vector<double> row;
  for (std::size_t m = 0; m < h.members.size(); ++m) {
    double cost = kNotConcerned;
    if (base_mm && h.members[m].oven) cost = cost_at(h, m, Task::Oven, *base_mm);
    if (counter_mm && h.members[m].prep) {
      cost = std::max(cost, 0.0) + cost_at(h, m, Task::Prep, *counter_mm);
    }
    row.push_back(cost);
  }
  if (base_mm || counter_mm) {
    const height::Choice choice = height::household(h.members, row, h.weights.worst_off);
    plan.household_cost = choice.cost;
    plan.worst_cost = choice.worst_cost;
    plan.worst_cook = choice.worst;
  }
  return plan;
}

std::optional<double> height_of(const std::optional<height::Choice>& choice) {
  return choice ? std::optional<double>(choice->height_mm) : std::nullopt;
}

}  // namespace

Plan plan_heights(const config::Config& config, const Scene& scene,
                  config::Arrangement arrangement) {
  const Household h = household_of(config, scene);
  const bool oven = anyone(h, &height::Member::oven), prep = anyone(h, &height::Member::prep);
  const int highest_mm = whole_below(ceiling_of(config, scene).oven_base_mm);
  const int lowest_mm = whole_below(scene.bases.low_mm);
  const int highest_counter_mm = whole_below(scene.counters.high_mm);
  if (arrangement == config::Arrangement::OneLevel) {
    const auto both =
        height_of(best(h, Task::Both, lowest_mm, oven ? highest_mm : highest_counter_mm));
    return plan_of(h, oven ? both : std::nullopt, both);
  }
  std::optional<double> base_mm, counter_mm;
  if (oven) base_mm = height_of(best(h, Task::Oven, lowest_mm, highest_mm));
  if (prep) {
    counter_mm =
        height_of(best(h, Task::Prep, whole_below(scene.counters.low_mm), highest_counter_mm));
  }
  const Plan apart = plan_of(h, base_mm, counter_mm);
  return arrangement == config::Arrangement::Riser && !riser_serves(apart)
             ? plan_heights(config, scene, config::Arrangement::OneLevel)
             : apart;
}

bool riser_serves(const Plan& apart) { return apart.heights.riser_mm.value_or(0) >= 0; }

double at_mark(double mm, Marks marks, const std::optional<double>& highest_mm) {
  // Below what any input is known to, and above what adding binary fractions of an inch leaves.
  constexpr double kSlack_mm = 0.01;
  const double step_mm = mark_step_mm(marks);
  if (step_mm <= 0) return mm;
  const double nearest_mm = std::round(mm / step_mm) * step_mm;
  if (!highest_mm || nearest_mm <= *highest_mm + kSlack_mm) return nearest_mm;
  return std::floor((*highest_mm + kSlack_mm) / step_mm) * step_mm;
}

namespace {

std::optional<double> highest_base_in(const config::Config& config, const Scene& scene) {
  std::optional<double> highest_mm = scene.cover_ceiling_mm;
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    const double hands_mm = height::floor_ceiling_mm(scene.bodies[i].elbow.value_mm) -
                            scene.floor_above_base_mm + height::kOverHands_mm;
    highest_mm = std::min(highest_mm.value_or(hands_mm), hands_mm);
  }
  // Where nothing fits the cover's own finding says so; nothing is built below the ground.
  if (highest_mm) highest_mm = std::max(0.0, *highest_mm);
  return highest_mm;
}

Heights marked_in(const config::Config& config, const Scene& scene, config::Arrangement arrangement,
                  const Heights& searched, Marks marks) {
  if (marks == Marks::Exact) return searched;
  Heights marked;
  // What is below the least that may be built, goes one mark up.
  const auto at_least = [marks](double mm, double least_mm) {
    return mm < least_mm - 1e-6 ? mm + mark_step_mm(marks) : mm;
  };
  if (searched.counter_mm) {
    marked.counter_mm = at_least(at_mark(*searched.counter_mm, marks, {}), scene.counters.low_mm);
  }
  if (searched.oven_base_mm) {
    const double lift_mm = scene.floor_above_base_mm;
    const auto highest_mm = highest_base_in(config, scene);
    if (config::is_masonry(config.oven.kind)) {
      // The floor is what a mason works to; the slab is under it by the oven's own build.
      const auto top_mm = highest_mm ? std::optional(*highest_mm + lift_mm) : std::nullopt;
      marked.oven_base_mm = at_mark(*searched.oven_base_mm + lift_mm, marks, top_mm) - lift_mm;
    } else {
      marked.oven_base_mm = at_mark(*searched.oven_base_mm, marks, highest_mm);
    }
    marked.oven_base_mm = at_least(*marked.oven_base_mm, std::max(0.0, scene.bases.low_mm));
    // One level is one counter, and a riser lowers nothing.
    const bool one = arrangement == config::Arrangement::OneLevel;
    const bool riser = arrangement == config::Arrangement::Riser;
    if (marked.counter_mm && (one || (riser && *marked.counter_mm > *marked.oven_base_mm))) {
      marked.counter_mm = marked.oven_base_mm;
    }
  }
  follow_heights(marked, scene);
  return marked;
}

}  // namespace

Heights marked_heights(const config::Config& config, const Heights& searched, Marks marks) {
  return marked_in(config, scene_of(config), config.station.arrangement, searched, marks);
}

std::optional<double> highest_base_mm(const config::Config& config) {
  return highest_base_in(config, scene_of(config));
}

Plan marked_plan(const config::Config& config, const Scene& scene, config::Arrangement arrangement,
                 const Plan& plan, Marks marks) {
  if (marks == Marks::Exact) return plan;
  const Heights heights = marked_in(config, scene, arrangement, plan.heights, marks);
  return plan_of(household_of(config, scene), heights.oven_base_mm, heights.counter_mm);
}

namespace {

// Heights around `at` where each member's cost stays within an allowance of what it is there.
Band band_around(const Household& h, Task task, int at_mm, int low_mm, int high_mm,
                 double allowance) {
  const auto nobody_loses = [&](int height_mm) {
    for (std::size_t m = 0; m < h.members.size(); ++m) {
      const double cost = cost_at(h, m, task, height_mm);
      if (cost > cost_at(h, m, task, at_mm) + allowance + 1e-9) return false;
    }
    return true;
  };
  int low = at_mm, high = at_mm;
  while (low > low_mm && nobody_loses(low - 1)) --low;
  while (high < high_mm && nobody_loses(high + 1)) ++high;
  return {static_cast<double>(low), static_cast<double>(high)};
}

}  // namespace

std::optional<Band> oven_band(const config::Config& config, const Scene& scene, const Plan& plan) {
  if (!plan.heights.oven_base_mm) return {};
  const Household h = household_of(config, scene);
  const int at_mm = whole_below(*plan.heights.oven_base_mm);
  const int top_mm = whole_below(ceiling_of(config, scene).oven_base_mm);
  return band_around(h, Task::Oven, at_mm, std::max(0, at_mm - kBandSearch_mm),
                     std::min(top_mm, at_mm + kBandSearch_mm), kBandLoss * h.weights.sight);
}

std::optional<Band> dough_band(const config::Config& config, const Scene& scene, const Plan& plan) {
  if (!plan.heights.counter_mm) return {};
  const Household h = household_of(config, scene);
  if (!anyone(h, &height::Member::prep)) return {};
  const int at_mm = whole_below(*plan.heights.counter_mm);
  return band_around(h, Task::Prep, at_mm, at_mm - kBandSearch_mm, at_mm + kBandSearch_mm,
                     kBandLoss * h.weights.prep);
}

}  // namespace hs::evaluate
