#pragma once
// The cabinets pulled apart: how far each piece is shown from its place. Of the drawing and of the
// scene.

#include "engine/frame/frame.h"

namespace hs::report {

struct Pull {
  double x_mm = 0, y_mm = 0, z_mm = 0;
};

// Tops go up, the base down, fronts towards the cook; boxes and runs go away from each other, to
// the right. `bays_apart`: without it the boxes of a run stay side by side.
Pull pull_of(const frame::Frame& frame, const frame::Piece& piece, bool bays_apart = true);

// Of the oven, over everything it stands on; on a pier of masonry it stays.
Pull pull_of_oven(const frame::Frame& frame);

Block moved(const Block& block, const Pull& by);

}  // namespace hs::report
