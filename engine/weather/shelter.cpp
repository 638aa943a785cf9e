#include "engine/weather/shelter.h"

#include <algorithm>

#include "engine/weather/rain.h"

namespace hs::weather {

Wet wet_front(const Front& front, const std::optional<Edge>& edge, double wind_m_s,
              double drop_mm) {
  Wet wet;
  wet.face_mm = std::max(0.0, front.counter_mm - front.face_low_mm);
  wet.top_mm = front.depth_mm;
  if (edge) {
    const double in_mm = reach_mm(edge->height_mm - front.counter_mm, wind_m_s, drop_mm);
    wet.top_mm = std::clamp(in_mm - edge->out_mm, 0.0, front.depth_mm);
  }
  // The face is dry down to where rain past the counter's edge, or past the cover's, meets it.
  const double by_counter_mm =
      dry_face_mm(front.overhang_mm, wind_m_s, drop_mm).value_or(wet.face_mm);
  double by_cover_mm = 0;
  if (edge) {
    const double out_mm = edge->out_mm + front.overhang_mm;
    // Straight down it falls clear of a face that is behind the edge at all.
    const double still_mm = out_mm > 0 ? edge->height_mm : 0;
    const double below_edge_mm = dry_face_mm(out_mm, wind_m_s, drop_mm).value_or(still_mm);
    by_cover_mm = below_edge_mm - (edge->height_mm - front.counter_mm);
  }
  wet.cover_helps = by_cover_mm > by_counter_mm;
  wet.face_dry_mm = std::clamp(std::max(by_counter_mm, by_cover_mm), 0.0, wet.face_mm);
  return wet;
}

}  // namespace hs::weather
