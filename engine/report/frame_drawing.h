#pragma once
// What the drawings of the frame share: what a piece is drawn as, the heights beside a run, and
// numbers that keep apart.

#include <string>
#include <vector>

#include "engine/frame/frame.h"
#include "engine/report/drawing.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {

Role role_of(const frame::Piece& piece);

// What stands there already, or lies behind a cut: as light as the paper, with a thin edge.
inline constexpr Role kPale = Role::PersonLine, kPaleEdge = Role::Thing;

// Heights of a run from the ground up, beside it at edge_x_mm and farther out (way: -1 to the left,
// 1 to the right); lines lead there from from_x_mm.
// "Base 104 mm high where the ground is lowest, its top 100 mm above the cook's feet".
std::string base_words(const frame::Frame& frame, const SheetPen& pen);

void draw_ladder(Drawing& d, const SheetPen& pen, const frame::Frame& frame, const frame::Run& run,
                 double from_x_mm, double edge_x_mm, double way, Units units);

// Keeps short texts apart: one is written where none was before.
class Labels {
 public:
  explicit Labels(double line_mm) : line_mm_(line_mm) {}
  // False, and nothing is written, where another one stands already.
  bool place(Drawing& d, Spot at, const std::string& text);

 private:
  double line_mm_;
  std::vector<Box> taken_;
};

}  // namespace hs::report
