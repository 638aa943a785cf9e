#pragma once
// Config -> Evaluation: everything that follows from what a person chose, each module once.

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"
#include "engine/clearance/boxes.h"
#include "engine/clearance/clearance.h"
#include "engine/clearance/published.h"
#include "engine/config/config.h"
#include "engine/cook/body.h"
#include "engine/cook/percentiles.h"
#include "engine/evaluate/survey_result.h"
#include "engine/heat/mouth.h"
#include "engine/height/height.h"
#include "engine/light/lamp.h"
#include "engine/oven/oven.h"
#include "engine/reach/reach.h"
#include "engine/reach/room.h"
#include "engine/sight/lean.h"
#include "engine/sight/sight.h"
#include "engine/weather/shelter.h"
#include "engine/weather/wind.h"

namespace hs::evaluate {

using height::Band;

// What one eye sees from one place.
struct Seen {
  sight::Eye eye;  // oven frame
  double floor_share = 0, pizza_share = 0;
  double unseen_line = 0;             // hidden part of the target along the middle line, 0..1
  std::optional<double> farthest_mm;  // on the middle line, from the outer mouth plane
  double steepest_gaze_deg = 0;       // to the floor's or pizza's near edge, positive down
  double shallowest_gaze_deg = 0;     // to the target's far edge
  bool crust_seen = false;            // top of the far rim
  bool target_seen = false;           // the whole target, as the contract defines it
  bool edge_on = false;               // far point under 8 degrees to the floor
};

struct FullView {
  std::optional<double> oven_floor_height_mm;  // lowest that shows the target at this standoff
  std::optional<double> standoff_mm;           // nearest that shows the target at this height
};

struct Stoop {
  sight::Posture posture;
  double neck_deg = 0;
  double face_to_mouth_mm = 0;
  double floor_share = 0;
};

// Heat at one cook at the oven, kW/m2 that arrive on bare skin turned to the mouth's middle. At
// least: flames, sparks and hot air come on top.
struct CookHeat {
  double face_watching_kw_m2 = 0, face_working_kw_m2 = 0;
  double hand_ahead_mm = 0;  // hand in front of the mouth, blade under the pizza; negative: in it
  double hand_kw_m2 = 0;     // bare
  double hand_through_kw_m2 = 0;                     // through the glove and past the shield
  double short_peel_kw_m2 = 0, long_peel_kw_m2 = 0;  // the bare hand on a 24 in and a 48 in peel
  double linger_standoff_mm = 0;                // nearest the face may linger, at this eye's height
  std::optional<double> withdrawn_stoop_kw_m2;  // at the face in the stoop that heat forbade
};

struct CookResult {
  cook::Body body;
  cook::Standing standing;
  bool at_oven = false, at_prep = false;
  bool young_child = false;  // works at a low table of their own
  // At the oven; meaningless unless at_oven.
  Seen watching, working;
  FullView full_view;
  std::optional<Stoop> stoop;  // least one that shows the target, from the watching place
  bool bending_hides = false;
  double hand_above_elbow_mm = 0, hand_below_shoulder_mm = 0;
  double ceiling_floor_mm = 0;  // highest oven floor for these hands
  double nearest_standoff_mm = 0;
  CookHeat heat;
  double oven_cost = 0;  // unit-free, what the household search weighs
  // At prep; meaningless unless at_prep.
  double prep_offset_mm = 0;  // counter below the elbow, positive down
  Band prep_band;             // offsets that suit dough
  Band light_band;            // offsets that suit topping and other light work
  Band kitchen_rule;          // counter heights a published kitchen rule gives
  Verdict prep_verdict = Verdict::Ok;
  reach::Zones zones;
  double prep_cost = 0;
  std::optional<double> step_mm;   // platform or step this cook needs, absent: none
  std::optional<double> table_mm;  // a young child's own table
};

struct Heights {
  std::optional<double> counter_mm, oven_base_mm, oven_floor_mm, riser_mm;
};

// What a builder keeps a height to. Recommended heights are brought to it before anything follows
// from them, so that cards, drawings and cabinets have one and the same.
enum class Marks : std::uint8_t { Exact, QuarterInch, FiveMillimetres };
constexpr double mark_step_mm(Marks marks) {
  return marks == Marks::QuarterInch ? 25.4 / 4 : marks == Marks::FiveMillimetres ? 5 : 0;
}

struct Recommended {
  Heights heights;                 // as marked
  Heights searched;                // as they came out of the search, to the millimetre
  std::optional<Band> oven_band;   // oven base heights in which nobody loses
  std::optional<Band> dough_band;  // dough counter heights in which nobody loses
  double prep_depth_mm = 0;
  double standoff_mm = 0, working_standoff_mm = 0;
  // Toe tips in front of the counter's front edge, watching; negative: under the counter. For the
  // oven cook whose toes are farthest before the eye, so that everyone's eye is at the distance or
  // nearer. Meaningless with nobody at the oven.
  double feet_line_mm = 0;
  std::string_view binding;  // rule id of what limits the oven's height
};

struct ArrangementResult {
  config::Arrangement arrangement = config::Arrangement::OneLevel;
  Heights heights;
  std::optional<std::size_t> worst_cook;
  double worst_cost = 0;
  double household_cost = 0;
  // What is given up against each cook's own best: the largest losses.
  double unseen_line = 0;   // of the target, worst oven cook, upright at the watching distance
  double dough_off_mm = 0;  // outside the dough band, worst prep cook
  std::optional<std::size_t> dough_off_cook;
};

enum class Measure : std::uint8_t { Eye, Elbow, Shoulder };
struct Sensitivity {
  std::size_t cook = 0;
  Measure measure = Measure::Eye;
  double sd_mm = 0;
  double oven_moves_mm = 0;  // the larger of + and - one standard error, signed as for +
  double dough_moves_mm = 0;
};
struct WeightMove {
  std::string_view weight;  // "sight", "prep", "hands", "worst_off"
  double factor = 1;        // what the weight was multiplied by
  double oven_moves_mm = 0, dough_moves_mm = 0;
};

struct ColdTrial {
  std::size_t cook = 0;
  double measured_mm = 0;
  std::optional<double> predicted_mm;
  double difference_mm = 0;            // measured - predicted
  bool agrees = false;                 // within what the inputs' errors explain
  std::string likely_field;            // path of the input most likely off: "oven.mouth_height_mm"
  std::optional<double> corrected_mm;  // that input's value that would explain the mark
  double standard_errors = 0;          // how many of its own errors that is
};

struct ExistingCounter {
  double height_mm = 0;
  double block_mm = 0;     // under the oven; negative: the counter is too high for it
  double platform_mm = 0;  // for the cooks, where the counter is too high
};

// What is asked of a lamp head's place, each by itself.
struct LampChecks {
  light::Judged light;
  bool in_hot_zone = false;
  bool too_hot = false;  // more than the midday sun's heat
  bool neck_reaches = false;
};

// A fixed lamp at the oven. Places in the oven frame.
struct Lamp {
  Vec mount;
  std::optional<Vec> head;  // as given, or the best place found; nullopt: none, or not looked for
  light::Throw light;       // meaningless without a head, as is what follows
  double neck_needed_mm = 0;
  double heat_kw_m2 = 0;  // at the head
  LampChecks checks;
  std::string_view against;  // the first of them that fails, but for the neck; empty: none
  // evaluate() looks for places; evaluate_fit() does not.
  struct Search {
    bool done = false;
    int places = 0;           // of the grid's, that work within the neck
    std::optional<Vec> best;  // most light of these
    std::optional<double> shortest_neck_mm;
  } search;
};

struct LightResult {
  std::optional<Lamp> lamp;
  std::optional<double> prep_lux;     // at the dough counter's end, where it is darkest
  std::optional<double> landing_lux;  // in the middle of a landing beside that counter
};

// One rate of rain, in the wind that the station is judged by, straight at its front.
struct Storm {
  double rain_mm_h = 0;
  double drop_air_mm = 0, drop_landing_mm = 0;  // middle drop by volume
  double slant_deg = 0;                         // of the middle drop that lands, from the vertical
  double onto_front_mm_h = 0;                   // driven onto an upright front in the open
};

// Everything around the oven that is not the cooks. Zones in the station frame; the drawings and
// the scene show these and work out none.
struct Surroundings {
  std::vector<clearance::Zone> hot;  // free room round oven, flue and grill; none without an oven
  // No child and no pet inside it while the oven is hot, from above; empty without an oven.
  std::vector<PlanSpot> child_free;
  std::vector<reach::Zone> room;  // room to work, in plan
  // Rain on the dough counter's front, or the oven counter's where there is no other; nullopt where
  // the wind, or the reach of a cover, is not known.
  std::optional<weather::Wet> rain;
  std::vector<Storm> storms;  // from drizzle to cloudburst; none where the wind is not known
  // Wind up to which the cover keeps that counter dry, m/s; nullopt: no cover, or not known.
  std::optional<double> dry_up_to_m_s;
  std::optional<clearance::Vents> grill_vents, fire_feature_vents;  // for the cylinder, if any
};

struct Build;   // engine/evaluate/build.h
struct Packet;  // engine/evaluate/packet.h

struct Evaluation {
  Marks marks = Marks::Exact;
  oven::Geometry geometry;
  sight::Disc pizza;
  heat::Mouth mouth;
  LightResult light;
  std::vector<CookResult> cooks;
  Recommended recommended;
  Heights used;             // given where given, recommended elsewhere
  double feet_line_mm = 0;  // as the recommended one, but at the watching distance in use
  std::vector<ArrangementResult> arrangements;  // one_level, riser, two_level
  std::array<clearance::Need, 6> clearances;
  // Highest oven base that the cover and the room asked for above the oven allow; below 0: none
  // does. Absent: no cover, or nobody has said how much room.
  std::optional<double> cover_ceiling_mm;
  Surroundings surroundings;
  std::optional<ExistingCounter> existing;
  std::optional<ColdTrial> trial;
  std::vector<Finding> findings;  // ordered by harm: fail, unknown, warn, ok
  // Only after evaluate(), kept from before by evaluate_fit().
  // None: nobody has read the ground. Shared, because it never changes once it is made, and a drag
  // keeps it.
  std::shared_ptr<const SurveyResult> survey;
  std::vector<Sensitivity> sensitivity;
  std::vector<WeightMove> weight_moves;
  std::optional<double> fits_adults_share;
  // Only after add_build() (engine/evaluate/build.h); its findings are among the others then.
  std::shared_ptr<const Build> build;
  // Only after add_packet() (engine/evaluate/packet.h), and only where a frame was made.
  std::shared_ptr<const Packet> packet;
};

// Everything. Any Config that check() (engine/evaluate/check.h) finds no problem in; at most 3 ms
// native for four cooks. Every number is finite.
Evaluation evaluate(const config::Config& config, Marks marks = Marks::Exact);

// The same without the survey of the ground; add_survey() (engine/evaluate/surveying.h) adds that.
Evaluation evaluate_station(const config::Config& config, Marks marks = Marks::Exact);

// The dragged path: all but the survey, sensitivity, weight moves, guests and the search for a
// lamp's place.
Evaluation evaluate_fit(const config::Config& config, Marks marks = Marks::Exact);

// The mark nearest to a height, but the one below where that is over `highest_mm`.
double at_mark(double mm, Marks marks, const std::optional<double>& highest_mm);
// Searched heights as a builder marks them: to the nearest mark, but not over what the hands (with
// what no hand can tell) and the cover allow. A masonry oven's floor is what is marked, any other's
// base; the rest follows. Exact: as they are.
Heights marked_heights(const config::Config& config, const Heights& searched, Marks marks);
// Highest that a builder may mark the oven's base: the hands' ceiling with what no hand can tell,
// the cover's with nothing. nullopt: nothing limits it.
std::optional<double> highest_base_mm(const config::Config& config);

// What a drag keeps from before: the survey with its findings, for the heights it was made for.
void keep_survey(Evaluation& next, const Evaluation& before);

struct FitPlace {
  double floor_mm = 0, standoff_mm = 0;
};

// One cook's part of the fit map.
struct FitCook {
  std::size_t cook = 0;
  double ceiling_mm = 0;  // highest oven floor for these hands
  // The border of where this cook sees the whole target, one place for each row that it crosses,
  // from near to far: above it and to its right, up to the eye's own height, all is seen. Within
  // 1 mm. Empty where the map shows no border.
  std::vector<FitPlace> border;
  // Where the border meets the ceiling: from there back this cook sees all and has easy hands.
  // Absent: not on the map.
  std::optional<double> corner_standoff_mm;
};

// Visible share over oven floor height (across) and standoff (up) for the fit map.
struct FitMap {
  int columns = 0, rows = 0;
  double floor_low_mm = 0, floor_high_mm = 0;  // of the oven's floor
  double standoff_low_mm = 0, standoff_high_mm = 0;
  std::vector<float> share;  // worst oven cook's seen share of the pizza, row by row
  // Standoff below which a face at the worst oven cook's height gets too much heat to linger, one
  // for each column. At least.
  std::vector<float> heat_limit_mm;
  std::vector<std::uint8_t> good;  // 1 where every oven cook sees the target and has easy hands
  std::vector<FitCook> cooks;      // those whose eyes and hands the map is for
};
FitMap fit_map(const config::Config& config, int columns, int rows);

// One place of the fit map: who sees how much from there.
struct FitSpot {
  double share = 0;                   // of the pizza, that the worst placed sees
  std::size_t worst = 0;              // who that is
  std::vector<std::size_t> see_all;   // cooks who see the whole target
  std::vector<std::size_t> too_high;  // cooks for whose hands the floor is too high
  std::vector<std::size_t> too_hot;   // cooks whose face gets too much heat to linger, at the least
  std::size_t cooks = 0;              // how many were asked; 0: nobody works at the oven
};
FitSpot fit_at(const config::Config& config, double oven_floor_mm, double standoff_mm);

}  // namespace hs::evaluate
