#pragma once
// The station from the side, as a display list: who stands where, what the eye sees under the
// mouth's top edge, what it does not, and the heights to build to.
//
// Frame: x = 0 at the outer mouth plane, to the right into the oven; y above the ground at the
// cook's feet. Everything comes from Config and Evaluation; nothing is computed but its place.

#include <cstddef>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/drawing.h"
#include "engine/report/summary.h"

namespace hs::report {

struct SectionView {
  std::size_t person = 0;  // who is drawn; one who does not work at the oven sees no ray
  Units units = Units::Inch;
  double text_mm = 60;        // height of a line of text in the drawing; keeps labels apart
  bool stacked = false;       // each height's name under its number instead of behind it
  double label_top_mm = 1e6;  // where the heights' labels end at the latest
  bool keyed = false;         // a sheet whose key says what the marks are
};

// Room that the drawing takes. Heights and their names are written from label_x_mm on, outside the
// box.
struct SectionFrame {
  Box box;
  double label_x_mm = 0;
};
SectionFrame section_frame(const config::Config& config, const evaluate::Evaluation& evaluation,
                           std::size_t person);

Drawing section(const config::Config& config, const evaluate::Evaluation& evaluation,
                const SectionView& view);

// The oven's floor from above, as far as the eye sees it: x to the cook's right, y into the oven,
// origin as the oven's. The unseen part of the pizza is hatched. Empty for a cook not at the oven.
Drawing floor_plan(const config::Config& config, const evaluate::Evaluation& evaluation,
                   std::size_t person);

}  // namespace hs::report
