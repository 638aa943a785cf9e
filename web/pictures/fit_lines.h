#pragma once
// Each cook's own part of the fit map: the border of where this cook sees the whole target, as far
// as the hands reach, told apart by the pattern of the line and the name at its end.

#include "engine/config/config.h"
#include "web/app/ui.h"
#include "web/pictures/fit_frame.h"

namespace hs::web {

// Nothing for a single cook: the good places' own outline says the same.
void draw_cooks(const Ui& ui, const FitFrame& frame, const config::Config& config);

// Below this line, on the side of its barbs, it is too hot for a face to linger, at the least.
void draw_heat(const Ui& ui, const FitFrame& frame);

}  // namespace hs::web
