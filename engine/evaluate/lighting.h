#pragma once
// A fixed lamp's place and light, and the general light: what evaluate() finds and says of them.

#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {

// FDA Food Code 6-303.11(C), read: 540 lx (50 fc) where people work with food and knives. 300 lx
// on a home worktop: Czech practice as tabulated beside EN limits, second hand.
inline constexpr double kFoodWork_lx = 540, kHomeWorktop_lx = 300;
// What midday sun gives, 1 kW/m2: a lamp head stands that and no more. Our judgement.
inline constexpr double kLampHeat_kw_m2 = 1;

// What the station's lamp is judged by; a lamp's neck is fixed somewhere even where there is none.
light::Setup lamp_setup(const config::Config& config, const Evaluation& e);

// The lamp with its head at a place, aimed as well as it can be there; nullopt: only where its neck
// is fixed. Needs cooks and heights.
Lamp lamp_at(const config::Config& config, const Evaluation& e, const std::optional<Vec>& head);

// `search`: look for the best place where the head's place is not given. Needs cooks and heights.
LightResult lighting(const config::Config& config, const Evaluation& e, bool search);

void add_light(Findings& out, const config::Config& config, const Evaluation& e);

}  // namespace hs::evaluate
