#pragma once
// What a fabricator is asked for: each folded top with its flat blank, its fit over the sheets
// below it, and what is open: values of the packet.

#include <optional>
#include <string>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/frame.h"
#include "engine/parts/parts.h"
#include "engine/sheet/top.h"

namespace hs::evaluate {

// An end without a flange, and the top that it meets.
struct Joint {
  sheet::Side side = sheet::Side::Left;
  int part = 0;         // that top's number in the parts list; 0: none is near
  double gap_mm = 0;    // between the two
  double alone_mm = 0;  // of this one's end, at the back: meets nothing
  double tail_mm = 0;   // and is turned down
  double step_mm = 0;   // how much higher this one is
};

struct MetalOrder {
  int part = 0;  // its number in the parts list
  int quantity = 1;
  std::string name;  // "metal top, under the dough counter"
  sheet::Top top;
  sheet::Blank blank;
  // What it lies over, bare: as measured where it was measured.
  double under_width_mm = 0, under_depth_mm = 0, under_thick_mm = 0;
  bool measured = false;  // width and depth, both
  // Room beside the substrate on each turned-down side: as cut, what paint takes of it, what the
  // bend's own error (1 degree over the flange) may take, what stays at the least.
  double fit_mm = 0, paint_mm = 0, bend_error_mm = 0, least_left_mm = 0;
  double bedding_mm = 0, drip_mm = 0;
  double hem_mm = 0;            // its return; 0: none
  double hem_needs_mm = 0;      // of fit, so that the sheets pass it
  double ease_mm = 0;           // round the substrate's corner to this; 0: not needed
  bool rests_on_joint = false;  // an end without a flange meets another top
  std::vector<Joint> joints;
};

struct MetalSheets {
  std::vector<MetalOrder> orders;
  double mass_kg = 0;  // of all
};

// One order for each part of metal, in the parts list's order. Lengths in the order are rounded to
// nothing: words round them.
MetalSheets metal_orders(const config::Config& config, const frame::Frame& frame,
                         const parts::List& parts);

}  // namespace hs::evaluate
