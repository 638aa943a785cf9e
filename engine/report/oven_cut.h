#pragma once
// The oven cut open along its middle, as outlines for a drawing.
//
// The mouth, throat, brow, floor and body box are the oven's own sizes. The curve of the cavity and
// of the shell between them is drawn: nobody entered it and nothing is computed from it.

#include <vector>

#include "engine/config/config.h"
#include "engine/oven/oven.h"
#include "engine/report/drawing.h"

namespace hs::report {

// In the section's frame: x = 0 at the outer mouth plane, y above the ground.
struct OvenCut {
  std::vector<Spot> shell;    // the whole body with its hollow filled, closed
  std::vector<Spot> hollow;   // mouth, throat and cavity, closed; begins at the floor's front end
  std::vector<Spot> brow;     // what sticks out above the mouth, closed; empty: none
  std::vector<Spot> flue;     // closed; empty: none drawn
  std::vector<Spot> legs[2];  // closed; empty: the body stands flat
  double floor_mm = 0;        // the oven floor above the ground
  double floor_near_mm = 0, floor_far_mm = 0;
  double top_mm = 0;
};

OvenCut oven_cut(const config::Oven& oven, const oven::Geometry& geometry, double base_mm);

// The edge that the highest ray from the eye to `landing` on the floor passes closest under: the
// brow's, the outer opening's or the inner opening's top.
Spot limiting_edge(const OvenCut& cut, const oven::Geometry& geometry, Spot eye, Spot landing);

// The part of the hollow that lies above the ray from `edge` to `landing`, and behind the edge.
std::vector<Spot> unseen_hollow(const OvenCut& cut, Spot edge, Spot landing);

}  // namespace hs::report
