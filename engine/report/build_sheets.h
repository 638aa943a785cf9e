#pragma once
// Drawings of what is built: the cabinets from the front, cut from front to back, pulled apart,
// what each step of the build puts on, every panel of the parts list, and every board of the base
// as it is cut to the ground. All from the pieces and parts of the build stage, and from the
// survey.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "engine/report/sheet.h"

namespace hs::report {

// "frame_front", "frame_side", "frame_pulled_apart", "step_base" and its like, "panel_1" and so on,
// as many as there are parts, "base_1" and so on, as many as there are boards cut to read ground.
// Absent: none of that name, no build stage, or nothing was built or read.
std::optional<Sheet> build_sheet(std::string_view name, const config::Config& config,
                                 const evaluate::Evaluation& evaluation, const SheetView& view);

// What build_sheet() draws for this evaluation: "frame_front, frame_side, frame_pulled_apart,
// step_base, ... panel_1 to panel_24, base_1 to base_4". Empty where nothing was built and no
// ground was read.
std::string build_sheet_names(const evaluate::Evaluation& evaluation);

// The names of frame_sheets() and of the steps, whatever the station: "frame_front, ...
// step_fronts".
std::string frame_sheet_names();

// Whether some station has a drawing of this name.
bool is_build_sheet_name(std::string_view name);

// A drawing of the whole frame.
struct FrameSheet {
  std::string_view name;     // "frame_front"
  std::string_view title;    // "Cabinets from the front"
  std::string_view caption;  // what one looks for in it, on the page
  std::string_view printed;  // and in the packet
  bool to_scale;             // true both ways by its line of known length
  Sheet (*draw)(const config::Config&, const evaluate::Evaluation&, const SheetView&);
};
std::span<const FrameSheet> frame_sheets();

Sheet frame_front_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view);
// Each run cut from front to back through one bay, seen from its left.
Sheet frame_side_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                       const SheetView& view);
Sheet pulled_apart_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const SheetView& view);
// What one step of the build puts on, and where. Absent: no such name, or nothing of it in this
// station.
std::optional<Sheet> step_sheet(std::string_view name, const config::Config& config,
                                const evaluate::Evaluation& evaluation, const SheetView& view);
std::span<const std::string_view> step_sheet_names();
// `index` below the number of parts.
Sheet panel_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                  const SheetView& view, std::size_t index);

// Boards of the base that are cut; `index` below their number.
std::size_t base_cut_count(const evaluate::Evaluation& evaluation);
std::string base_cut_title(const evaluate::Evaluation& evaluation, std::size_t index);
Sheet base_cut_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                     const SheetView& view, std::size_t index);

}  // namespace hs::report
