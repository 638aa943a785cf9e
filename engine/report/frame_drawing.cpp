#include "engine/report/frame_drawing.h"

#include <cmath>

#include "engine/report/phrases.h"

namespace hs::report {

Role role_of(const frame::Piece& piece) {
  switch (piece.material) {
    case frame::Material::Metal:
      return Role::Counter;
    case frame::Material::Carrier:
    case frame::Material::Slab:
      return Role::Riser;
    case frame::Material::Sheet:
    case frame::Material::DrawerSheet:
    case frame::Material::Front:
    case frame::Material::FaceBoard:
    case frame::Material::BaseBoard:
      return Role::Cabinet;
  }
  return Role::Cabinet;
}

std::string base_words(const frame::Frame& frame, const SheetPen& pen) {
  const std::string high = "Base " + pen.length(frame.base_mm - frame.low_mm) + " high";
  if (frame.low_mm == 0) return high + " at the ground where the cook's feet are";
  return high + " where the ground is lowest, its top " + pen.length(std::abs(frame.base_mm)) +
         (frame.base_mm < 0 ? " below" : " above") + " the cook's feet";
}

void draw_ladder(Drawing& d, const SheetPen& pen, const frame::Frame& frame, const frame::Run& run,
                 double from_x_mm, double edge_x_mm, double way, Units units) {
  const double line = pen.line_mm();
  const double stops[] = {frame.low_mm, run.boxes.bottom_mm, run.boxes.top_mm, run.top_mm};
  for (std::size_t i = 0; i + 1 < std::size(stops); ++i) {
    const double x = edge_x_mm + way * 2.2 * line * static_cast<double>(i % 2);
    d.dimension({x, stops[i]}, {x, stops[i + 1]}, "");
    // Outside of both rows, where no line leads to.
    d.length({edge_x_mm + way * 2.6 * line, (stops[i] + stops[i + 1]) / 2},
             pen.length(stops[i + 1] - stops[i]), way < 0 ? Align::Right : Align::Left);
    d.line(Role::Dimension, {from_x_mm, stops[i + 1]}, {x, stops[i + 1]}, Weight::Thin);
  }
  const double x = edge_x_mm + way * 11.5 * line;
  // Written as on the cards, not to what a part is cut to.
  d.dimension({x, 0}, {x, run.top_mm}, plain_length(run.top_mm, units, true));
  // The block on it carries the oven: its top is the oven counter.
  if (run.oven && frame.places.riser) {
    const double top = frame.places.riser->top_mm;
    const double beyond = edge_x_mm + way * 20 * line;
    d.dimension({beyond, 0}, {beyond, top}, plain_length(top, units, true));
    d.line(Role::Dimension, {from_x_mm, top}, {beyond, top}, Weight::Thin);
  }
}

bool Labels::place(Drawing& d, Spot at, const std::string& text) {
  const double wide = text_width_mm(text, line_mm_) + 0.2 * line_mm_;
  const Box box{at.x_mm - wide / 2, at.y_mm - 0.5 * line_mm_, at.x_mm + wide / 2,
                at.y_mm + 0.5 * line_mm_};
  for (const Box& other : taken_) {
    if (box.left_mm < other.right_mm && other.left_mm < box.right_mm &&
        box.bottom_mm < other.top_mm && other.bottom_mm < box.top_mm) {
      return false;
    }
  }
  taken_.push_back(box);
  d.text(Role::Key, at, text, Align::Centre);
  return true;
}

}  // namespace hs::report
