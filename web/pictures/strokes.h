#pragma once
// Lines on the screen: plain, or broken into dashes of a pattern.

#include <span>
#include <vector>

#include "imgui.h"

namespace hs::web {

// ImDrawList's own AddLine shifts both ends by half a pixel.
void straight(ImDrawList* draw, ImVec2 a, ImVec2 b, ImU32 colour, float thickness);

// Along the points, back to the first where closed. `runs` is drawn and left out in turn, CSS px;
// empty: one plain line.
void stroke(ImDrawList* draw, const std::vector<ImVec2>& points, bool closed, ImU32 colour,
            float thickness, std::span<const float> runs);

}  // namespace hs::web
