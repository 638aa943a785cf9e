#pragma once
// The ground of the fit map: how much of the pizza the worst placed sees, as shade and hatch, and
// the places that suit everyone.

#include <string_view>

#include "web/app/ui.h"
#include "web/pictures/fit_frame.h"

namespace hs::web {

void draw_shades(const Ui& ui, const FitFrame& frame);

// Outlines the good places. Returns their right edge, 0 where there are none.
float draw_good(const Ui& ui, const FitFrame& frame);

// What the shades mean, on one line with its middle at y, at least 14 px for each shade. Where
// there is less room, the caption, whose view they are, comes on a line of their own before it.
inline constexpr float kShadeKeyLine = 18;
bool shade_key_fits(const Ui& ui, std::string_view caption, float room);
void draw_shade_key(const Ui& ui, std::string_view caption, float x, float y, float room);

}  // namespace hs::web
