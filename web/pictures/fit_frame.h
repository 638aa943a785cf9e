#pragma once
// Where the fit map's places land on the screen.

#include <algorithm>
#include <cstddef>

#include "engine/evaluate/evaluate.h"
#include "web/app/layout.h"

namespace hs::web {

struct FitFrame {
  const evaluate::FitMap& map;
  Rect area;  // CSS px; the oven floor's height across, the distance up

  // On the edge for what lies outside.
  float x_of(double floor_mm) const {
    const double part = (floor_mm - map.floor_low_mm) / (map.floor_high_mm - map.floor_low_mm);
    return area.x + area.w * static_cast<float>(std::clamp(part, 0.0, 1.0));
  }
  float y_of(double standoff_mm) const {
    const double part =
        (standoff_mm - map.standoff_low_mm) / (map.standoff_high_mm - map.standoff_low_mm);
    return area.bottom() - area.h * static_cast<float>(std::clamp(part, 0.0, 1.0));
  }
  double floor_at(float x) const {
    return map.floor_low_mm +
           static_cast<double>((x - area.x) / area.w) * (map.floor_high_mm - map.floor_low_mm);
  }
  double standoff_at(float y) const {
    return map.standoff_low_mm + static_cast<double>((area.bottom() - y) / area.h) *
                                     (map.standoff_high_mm - map.standoff_low_mm);
  }
  // The samples stand on the corners of the grid; each is shown as the cell around it.
  Rect cells(int column, int count, int row) const {
    const float cw = area.w / static_cast<float>(map.columns);
    const float ch = area.h / static_cast<float>(map.rows);
    return {area.x + cw * static_cast<float>(column),
            area.bottom() - ch * static_cast<float>(row + 1), cw * static_cast<float>(count), ch};
  }
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(map.columns) +
           static_cast<std::size_t>(column);
  }
};

}  // namespace hs::web
