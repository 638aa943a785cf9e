#pragma once
// A folded top's flat blank as the fabricator draws it out: outline, bend lines, holes, sizes.

#include <cstddef>

#include "engine/evaluate/packet.h"
#include "engine/report/sheet.h"

namespace hs::report {

// `index` below the number of orders, whose blank is possible.
Sheet metal_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                  const SheetView& view, std::size_t index);

// The notch where two of its flanges meet, large; the blank has one.
Sheet metal_corner_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const SheetView& view, std::size_t index);

// A length as a fabricator reads it: "1.588 mm", "0.0625 in".
std::string metal_length(double mm, Units units);

// How thick, and how to order it: "0.0630 in thick: order by this thickness, not by a gauge; ...".
std::string metal_thickness(double mm, Units units);

// What is done to bare edges, by the hem that was chosen: "Every bare edge is deburred, ...".
std::string metal_edges(const config::Config& config);

}  // namespace hs::report
