#pragma once
// The theme's colours as the scene's materials and light.

#include "web/app/theme.h"
#include "web/scene/frame.h"

namespace hs::web {

// Sets the colours, patterns and light of a frame. `inside`: through a cook's eyes, where the fire
// lights the oven. `plain`: the painted floor in two flat colours, for a measure.
void scene_colours(Theme theme, bool inside, bool plain, scene::Frame& frame);

// What the key under the scene and a test need by itself, 0xRRGGBB.
std::uint32_t paint_colour(Theme theme, scene::Material material);

}  // namespace hs::web
