#pragma once
// A panel with what is cut out of it for boxes and wires.

#include <cstddef>
#include <string>
#include <string_view>

#include "engine/evaluate/packet.h"
#include "engine/report/sheet.h"

namespace hs::report {

// "part 4 (one of 2), left side under the oven, bay 1".
std::string panel_words(const evaluate::PanelPart& panel);
// From which of a panel's edges an opening's two lengths go: "front edge", "lower edge". Left and
// right are the cook's.
struct FromEdges {
  std::string_view along, up;
  std::string_view seen;  // "from the right"
};
FromEdges edges_of(power::Through thick);

bool has_cutouts(const evaluate::Wiring& wiring, std::size_t panel);

// `panel` is one that has_cutouts().
Sheet wiring_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                   const SheetView& view, std::size_t panel);

}  // namespace hs::report
