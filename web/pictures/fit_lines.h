#pragma once
// Each cook's own part of the fit map: the border of where this cook sees the whole target, as far
// as the hands reach, told apart by the pattern of the line and the name at its end.

#include <optional>
#include <vector>

#include "engine/config/config.h"
#include "web/app/ui.h"
#include "web/pictures/fit_frame.h"

namespace hs::web {

// The present place on the screen: a knob with a line across the map each way; absent: there is
// none.
using Knob = std::optional<ImVec2>;
inline constexpr float kKnob = 13;  // its radius

// Nothing for a single cook: the good places' own outline says the same. Names keep
// clear of the knob, of its lines and of the heat's words. Returns their cards.
std::vector<Rect> draw_cooks(const Ui& ui, const FitFrame& frame, const config::Config& config,
                             const Knob& knob, const Rect& heat);

// Below this line, on the side of its barbs, it is too hot for a face to linger, at the least.
// Returns the card of the words, empty where there is none.
Rect draw_heat(const Ui& ui, const FitFrame& frame);

}  // namespace hs::web
