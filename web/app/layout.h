#pragma once
// Where each part of the canvas goes, in CSS px. Decided once a frame from the size alone, so that
// nothing moves under a finger while a value changes.

#include <array>
#include <cstddef>

namespace hs::web {

struct Rect {
  float x = 0, y = 0, w = 0, h = 0;
  float right() const { return x + w; }
  float bottom() const { return y + h; }
  float middle_x() const { return x + w / 2; }
  float middle_y() const { return y + h / 2; }
  bool contains(float px, float py) const {
    return px >= x && px < right() && py >= y && py < bottom();
  }
  Rect inset(float by) const { return {x + by, y + by, w - 2 * by, h - 2 * by}; }
};

struct Insets {
  float top = 0, right = 0, bottom = 0, left = 0;
};

// Column: everything under each other (a phone held upright, a tablet, the left of a wide screen).
// Beside: picture on the left, results and controls on the right (a phone held across).
enum class Mode : unsigned char { Column, Beside };

struct Layout {
  Mode mode = Mode::Column;
  bool roomy = false;       // larger type, a row for each control
  float headline_text = 0;  // size of the two heights
  float note_text = 0;      // size of what stands under them
  std::array<Rect, 2> headlines;
  Rect picture;
  std::array<Rect, 4> tools;  // picture toggle, units, undo, redo: at the picture's edge
  Rect scene;                 // what is left of the picture for the drawing
  Rect lines;
  float line_height = 0;
  std::size_t line_count =
      0;  // cooks shown; fewer than there are: the last line says how many more
  Rect caution;
  // The controls. Where oven and dough counter share a row, `dough` is empty.
  Rect height, dough, sight, kind, prep;
};

Layout layout_of(float width, float height, const Insets& insets, std::size_t cooks);

}  // namespace hs::web
