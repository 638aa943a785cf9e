#pragma once
// Drawings of what is built: the cabinets from the front, pulled apart, and every panel of the
// parts list. All from the pieces and parts of the build stage.

#include <optional>
#include <string>
#include <string_view>

#include "engine/report/sheet.h"

namespace hs::report {

// "frame_front", "frame_pulled_apart", "panel_1" and so on, as many as there are parts. Absent:
// none of that name, no build stage, or nothing was built.
std::optional<Sheet> build_sheet(std::string_view name, const config::Config& config,
                                 const evaluate::Evaluation& evaluation, const SheetView& view);

// What build_sheet() draws for this evaluation: "frame_front, frame_pulled_apart, panel_1 to
// panel_24". Empty where nothing was built.
std::string build_sheet_names(const evaluate::Evaluation& evaluation);

Sheet frame_front_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view);
Sheet pulled_apart_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const SheetView& view);
// `index` below the number of parts.
Sheet panel_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                  const SheetView& view, std::size_t index);

}  // namespace hs::report
