#pragma once
// One picture of the scene as a graphics library needs it, and the door through which it is asked
// to draw it. Behind that door is web/render; a test puts something else there.

#include <array>
#include <cstdint>
#include <string_view>

#include "web/scene/camera.h"
#include "web/scene/model.h"

namespace hs::web::scene {

using Colour = std::array<float, 4>;
using Palette = std::array<Colour, kMaterialCount>;

// The parts in the order in which they are drawn.
enum class PartName : std::uint8_t { Station, People, Sight, Lamp, Zones };
inline constexpr std::size_t kPartCount = 5;

struct Light {
  std::array<float, 3> sky, ground, sun;
  Colour fire;
};

struct Frame {
  std::array<const Part*, kPartCount> parts;
  std::array<std::uint64_t, kPartCount> digests;  // of the parts: the same, the same mesh
  Lens lens;
  Palette solids;  // fourth number: how much it glows
  Palette paints;  // fourth number: how much it covers
  std::array<float, kMaterialCount> patterns{};
  Colour backdrop, hatch_ink, dot_ink;
  Light light;
  float hearth_mm = 0;  // the oven's floor above the ground: where its fire is
  float ghost = 1;      // how solid the oven's shell and the cover are
  // The picture's place in device pixels, from the lower left corner of the surface.
  int left = 0, bottom = 0, width = 1, height = 1;
  float scale = 1;           // device pixels in one CSS px
  bool only_paint = false;   // the painted floor alone
  std::uint32_t number = 0;  // the same as before: nothing has changed
};

class Surface {
 public:
  virtual ~Surface() = default;
  virtual void draw(const Frame& frame) = 0;
};

}  // namespace hs::web::scene
