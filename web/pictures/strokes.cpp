#include "web/pictures/strokes.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace hs::web {

void straight(ImDrawList* draw, ImVec2 a, ImVec2 b, ImU32 colour, float thickness) {
  const ImVec2 ends[] = {a, b};
  draw->AddPolyline(ends, 2, colour, 0, thickness);
}

void stroke(ImDrawList* draw, const std::vector<ImVec2>& points, bool closed, ImU32 colour,
            float thickness, std::span<const float> runs) {
  if (runs.empty()) {
    draw->AddPolyline(points.data(), static_cast<int>(points.size()), colour,
                      closed ? ImDrawFlags_Closed : ImDrawFlags_None, thickness);
    return;
  }
  std::size_t run = 0;   // which of the pattern
  float left = runs[0];  // of it
  const std::size_t count = points.size() + (closed ? 1 : 0);
  for (std::size_t i = 1; i < count; ++i) {
    const ImVec2 a = points[i - 1];
    const ImVec2 b = points[i % points.size()];
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    float gone = 0;
    while (gone < length) {
      const float step = std::min(left, length - gone);
      if (run % 2 == 0) {
        const float from = gone / length;
        const float to = (gone + step) / length;
        straight(draw, ImVec2(a.x + (b.x - a.x) * from, a.y + (b.y - a.y) * from),
                 ImVec2(a.x + (b.x - a.x) * to, a.y + (b.y - a.y) * to), colour, thickness);
      }
      gone += step;
      left -= step;
      if (left > 0.001F) continue;
      run = (run + 1) % runs.size();
      left = runs[run];
    }
  }
}

}  // namespace hs::web
