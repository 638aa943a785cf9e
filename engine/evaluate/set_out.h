#pragma once
// Where the ground is to be read, before anybody has read it.

#include <vector>

#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

// Points without readings: both ends of every panel that shows, and between them so that none are
// farther apart than a survey asks for; three where the cooks' feet stand, one foot before the
// counters' edge. Joints and high spots are the builder's to add. As many as there is room for;
// empty where no base of ours stands. Survey frame; to 0.1 mm.
std::vector<config::SurveyPoint> usual_points(const config::Config& config, const Heights& used);

}  // namespace hs::evaluate
