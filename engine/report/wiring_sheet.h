#pragma once
// A panel with what is cut out of it for boxes and wires.

#include <cstddef>

#include "engine/evaluate/packet.h"
#include "engine/report/sheet.h"

namespace hs::report {

bool has_cutouts(const evaluate::Wiring& wiring, std::size_t panel);

// `panel` is one that has_cutouts().
Sheet wiring_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                   const SheetView& view, std::size_t panel);

}  // namespace hs::report
