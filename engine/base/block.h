#pragma once
// A box along the axes of the station frame: x to the cook's right, 0 at the middle of the mouth; y
// into the oven, 0 at the outer mouth plane; z up from the ground at the cook's feet.

namespace hs {

// Near is towards the cook.
struct Block {
  double left_mm = 0, right_mm = 0;
  double near_mm = 0, far_mm = 0;
  double bottom_mm = 0, top_mm = 0;

  double width_mm() const { return right_mm - left_mm; }
  double depth_mm() const { return far_mm - near_mm; }
  double height_mm() const { return top_mm - bottom_mm; }

  bool operator==(const Block&) const = default;
};

}  // namespace hs
