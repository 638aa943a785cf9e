// Heat at each cook's face and hand, and the stoops that it forbids.

#include <algorithm>

#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"
#include "engine/heat/tolerance.h"
#include "engine/height/height.h"

namespace hs::evaluate {
namespace {

// A stoop keeps the same distance from the mouth as the zone that no face is put in.
static_assert(heat::kHotZoneReach_mm == sight::kFaceLimit_mm);

constexpr double kGrip_mm = 60;  // middle of the hand to the handle's end: our judgement
// A peel of 24 in and one of 48 in: handles as pizza pages give them (second hand, weak).
constexpr double kShortPeel_mm = 610, kLongPeel_mm = 1219;

Vec face_at(const sight::Eye& eye) { return {eye.x_mm, -eye.distance_mm, eye.height_mm}; }

// How far in front of the mouth the hand is when the blade's tip is under the pizza's far rim;
// negative: inside. With a long peel the hand stops where the eye is: the handle goes on past it.
double hand_ahead_mm(const config::Config& config, const Scene& scene, double peel_mm) {
  const double tip_mm =
      std::min(scene.geometry.floor.far_mm, scene.pizza.y_mm + scene.pizza.radius_mm);
  return std::min(peel_mm - tip_mm - kGrip_mm, config.view.working_standoff_mm);
}

double hand_flux(const heat::Mouth& mouth, double ahead_mm) {
  return heat::irradiance_facing_kw_m2(mouth, {0, -ahead_mm, height::kHandOverFloor_mm});
}

int layers(const config::Heat& guard) {
  return (guard.glove == config::Glove::Gauntlet ? 1 : 0) +
         (guard.shield == config::Shield::Plate ? 1 : 0);
}

void add_zone(Findings& out, const heat::Mouth& mouth, const sight::Eye& eye, std::size_t i,
              std::string_view where) {
  const bool inside = heat::in_hot_zone(mouth, face_at(eye));
  out.add({"heat.hot_zone", inside ? Verdict::Fail : Verdict::Ok, i, eye.distance_mm,
           heat::kHotZoneReach_mm, eye.distance_mm - heat::kHotZoneReach_mm, where});
}

}  // namespace

void fill_heat(const config::Config& config, const Scene& scene, const heat::Mouth& mouth,
               CookResult& cook) {
  CookHeat& heat = cook.heat;
  heat.face_watching_kw_m2 = heat::irradiance_facing_kw_m2(mouth, face_at(cook.watching.eye));
  heat.face_working_kw_m2 = heat::irradiance_facing_kw_m2(mouth, face_at(cook.working.eye));
  heat.hand_ahead_mm = hand_ahead_mm(config, scene, config.peel.length_mm);
  heat.hand_kw_m2 = hand_flux(mouth, heat.hand_ahead_mm);
  heat.hand_through_kw_m2 = heat.hand_kw_m2 * heat::through_layers(layers(config.heat));
  heat.short_peel_kw_m2 = hand_flux(mouth, hand_ahead_mm(config, scene, kShortPeel_mm));
  heat.long_peel_kw_m2 = hand_flux(mouth, hand_ahead_mm(config, scene, kLongPeel_mm));
  heat.linger_standoff_mm =
      heat::linger_standoff_mm(mouth, config.view.lateral_mm, cook.watching.eye.height_mm);
  if (!cook.stoop || cook.stoop->posture == sight::Posture{}) return;
  const sight::Eye stooped = sight::bent(
      cook.watching.eye, {cook.body.eye_lever_mm, cook.body.leg_mm}, cook.stoop->posture);
  const double flux_kw_m2 = heat::irradiance_facing_kw_m2(mouth, face_at(stooped));
  if (heat::band_of(flux_kw_m2) == heat::Band::Linger) return;
  heat.withdrawn_stoop_kw_m2 = flux_kw_m2;
  cook.stoop.reset();
}

void add_heat(Findings& out, const Evaluation& e, std::size_t i) {
  using heat::Band;
  const CookResult& cook = e.cooks[i];
  const CookHeat& heat = cook.heat;
  const auto margin = [](double flux_kw_m2, double limit) { return limit - flux_kw_m2; };

  add_zone(out, e.mouth, cook.watching.eye, i, "watching");
  add_zone(out, e.mouth, cook.working.eye, i, "working");

  const Band watching = heat::band_of(heat.face_watching_kw_m2);
  out.add({"heat.face",
           watching == Band::Linger  ? Verdict::Ok
           : watching == Band::Brief ? Verdict::Warn
                                     : Verdict::Fail,
           i,
           heat.face_watching_kw_m2,
           heat::kLinger_kw_m2,
           margin(heat.face_watching_kw_m2, heat::kLinger_kw_m2),
           {}});
  const Band working = heat::band_of(heat.face_working_kw_m2);
  out.add({"heat.face_working",
           working == Band::Hot ? Verdict::Warn : Verdict::Ok,
           i,
           heat.face_working_kw_m2,
           heat::kBrief_kw_m2,
           margin(heat.face_working_kw_m2, heat::kBrief_kw_m2),
           {}});
  const double hand_kw_m2 = heat.hand_through_kw_m2;
  const bool snatched = hand_kw_m2 > heat::kSnatch_kw_m2;
  const double hand_limit = snatched ? heat::kSnatch_kw_m2 : heat::kBrief_kw_m2;
  out.add({"heat.hand",
           snatched                                 ? Verdict::Fail
           : heat::band_of(hand_kw_m2) == Band::Hot ? Verdict::Warn
                                                    : Verdict::Ok,
           i,
           hand_kw_m2,
           hand_limit,
           margin(hand_kw_m2, hand_limit),
           {}});
  if (heat.withdrawn_stoop_kw_m2) {
    out.add({"heat.stoop",
             Verdict::Warn,
             i,
             *heat.withdrawn_stoop_kw_m2,
             heat::kLinger_kw_m2,
             margin(*heat.withdrawn_stoop_kw_m2, heat::kLinger_kw_m2),
             {}});
  }
}

}  // namespace hs::evaluate
