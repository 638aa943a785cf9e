#pragma once
// The parts of evaluate(), for evaluate's own files and its tests.

#include <optional>
#include <vector>

#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

// What must be seen: the middle line to far_mm, there at height z above the floor.
struct Need {
  double far_mm = 0;
  double z_mm = 0;
};

// What is the same for every height tried: shapes, bodies, what must be seen.
struct Scene {
  oven::Geometry geometry;
  sight::Disc pizza;
  Need need;                  // far end of the target on the middle line, height of its top
  double target_near_mm = 0;  // near end of the target on the middle line
  double floor_above_base_mm = 0;
  std::optional<double> cover_ceiling_mm;  // as in Evaluation
  // What a person may ask for, and so what a search may answer: the field table's own ranges.
  Band bases, counters, standoffs;
  std::vector<cook::Body> bodies;
};

Scene scene_of(const config::Config& config);

// The eye in the oven frame when this cook stands upright at a standoff.
sight::Eye eye_of(const cook::Body& body, const config::View& view, double standoff_mm,
                  double oven_floor_mm);

// Hidden part (0..1) of the target along the middle line; closed form for what lies on the floor.
double unseen_line(const Scene& scene, const sight::Eye& eye);

// The whole target is seen, as the contract defines it for each kind of target.
bool sees_target(const Scene& scene, const config::View& view, const sight::Eye& eye);

// Lowest oven floor that shows the target from a standoff, and the nearest standoff that shows it
// at an oven floor; nullopt when none does. `also`: a floor to try whatever the grid (25 mm; 50 mm
// and the watching distance for standoffs). Rounded up to 0.1 mm.
std::optional<double> lowest_floor_showing(const Scene& scene, const config::View& view,
                                           const cook::Body& body, double standoff_mm,
                                           double also_floor_mm);
std::optional<double> nearest_standoff_showing(const Scene& scene, const config::View& view,
                                               const cook::Body& body, double oven_floor_mm);

// A young child: too young to count as a small adult at a counter. Our judgement: under 13.
bool young_child(const config::Cook& cook, const cook::Body& body);

// The offsets below the elbow that suit this cook's hands in dough, seated or standing.
Band prep_band_of(const config::Config& config, const config::Cook& cook, const cook::Body& body);

// This body's arm over a counter; a seated cook does not lean.
reach::Arm reach_arm(const cook::Body& body);

// Cooks whose hands and eyes the oven's height is for: those at the oven, but a young child only
// when nobody else is there.
std::vector<bool> pull_the_oven(const config::Config& config, const Scene& scene);

// What follows from a counter and an oven's base: the oven's floor, and the riser between them.
inline void follow_heights(Heights& heights, const Scene& scene) {
  heights.oven_floor_mm.reset();
  heights.riser_mm.reset();
  const auto &base_mm = heights.oven_base_mm, &counter_mm = heights.counter_mm;
  if (base_mm) heights.oven_floor_mm = *base_mm + scene.floor_above_base_mm;
  if (base_mm && counter_mm) heights.riser_mm = *base_mm - *counter_mm;
}

// The cheapest heights of one arrangement.
struct Plan {
  Heights heights;
  double household_cost = 0;
  std::optional<std::size_t> worst_cook;
  double worst_cost = 0;
};
Plan plan_heights(const config::Config& config, const Scene& scene,
                  config::Arrangement arrangement);

// The same plan at the heights that a builder marks, with what it costs there.
Plan marked_plan(const config::Config& config, const Scene& scene, config::Arrangement arrangement,
                 const Plan& plan, Marks marks);

// Whether a riser can make these two heights: it cannot lower the oven below the counter it stands
// on. Where it cannot, the cheapest plan with a riser is the one of a single level.
bool riser_serves(const Plan& apart);

// Highest oven base that hands and cover allow, and the rule that says so (empty: the table's end).
struct Ceiling {
  double oven_base_mm = 0;
  std::string_view rule;
};
Ceiling ceiling_of(const config::Config& config, const Scene& scene);

// The heights around the plan in which nobody loses more than a twentieth of the target.
std::optional<Band> oven_band(const config::Config& config, const Scene& scene, const Plan& plan);
std::optional<Band> dough_band(const config::Config& config, const Scene& scene, const Plan& plan);

CookResult cook_result(const config::Config& config, const Scene& scene, std::size_t index,
                       const Heights& used);

// Heat at a cook at the oven; takes back a stoop that brings the face past the lingering limit.
void fill_heat(const config::Config& config, const Scene& scene, const heat::Mouth& mouth,
               CookResult& cook);

std::optional<ColdTrial> cold_trial(const config::Config& config, const Scene& scene,
                                    const Heights& used);

std::vector<Finding> findings_of(const config::Config& config, const Scene& scene,
                                 const Evaluation& evaluation);

// What fails, then what nobody knows, then what to mind, then what is well; the worst harm first.
void order_by_harm(std::vector<Finding>& findings);

void add_sensitivity(const config::Config& config, const Scene& scene, Evaluation& evaluation);
double guests_share(const config::Config& config, const Scene& scene, const Heights& used,
                    double standoff_mm);

}  // namespace hs::evaluate
