#pragma once
// A drawing in millimetres put on the screen: colours for roles, pixels for weights.

#include <cstdint>
#include <optional>
#include <vector>

#include "engine/report/drawing.h"
#include "web/app/ui.h"

namespace hs::web {

// Where millimetres land: x to the right, y up.
struct Projection {
  float x = 0, y = 0;  // CSS px of the drawing's origin
  float per_mm = 1;    // CSS px
  ImVec2 of(const report::Spot& p) const {
    return ImVec2(x + static_cast<float>(p.x_mm) * per_mm, y - static_cast<float>(p.y_mm) * per_mm);
  }
};

class Painter {
 public:
  void paint(const Ui& ui, const report::Drawing& drawing, const Projection& to, float text_size);

 private:
  void paint_mark(const Ui& ui, const report::Drawing& drawing, const report::Mark& mark,
                  const Projection& to, float text_size);
  void paint_dimension(const Ui& ui, const report::Mark& mark, std::string_view text,
                       float text_size);
  void place(std::span<const report::Spot> points, const Projection& to);

  std::vector<ImVec2> placed_;  // kept between frames, so that drawing allocates nothing
  std::vector<report::Spot> hatch_;
};

}  // namespace hs::web
