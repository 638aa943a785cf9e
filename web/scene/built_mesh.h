#pragma once
// Pieces of mesh that the station as it stands and the cabinets pulled apart share.

#include "web/scene/model.h"

namespace hs::web::scene {

// A slab under everything that thins out at its edge.
void add_ground(Part& part, const Block& extent);
void add_shadow(Part& part, const Block& block, double fade_mm);
void add_block(Part& part, const Block& block, Material material, bool edges = true);
// Courses of blocks on the faces that a cook sees.
void add_courses(Part& part, const Block& block);
// Of this body, its mouth at the oven's own place.
void add_oven(Part& part, const config::Config& config, const evaluate::Evaluation& evaluation,
              const Block& body);
void add_corners(std::vector<Vec>& points, const Block& block);

}  // namespace hs::web::scene
