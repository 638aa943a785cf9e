#pragma once
// Full-size paper strips of the base's cuts, for sheets that any printer takes.
//
// Each strip shows a panel's bottom against a level line a stated distance under its top edge, cut
// into sheets that overlap and meet at numbered marks. Every sheet carries a line of 100 mm each
// way: where one measures otherwise, the printer has scaled the sheet. Paper moves with damp air by
// some 0.1 mm in 100 mm (from memory), less than a tape reading is off.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "engine/report/drawing.h"
#include "engine/report/sheet.h"

namespace hs::report {

// Lying; ISO 216, and ANSI/ASME Y14.1 size A (both from memory).
enum class Paper : std::uint8_t { A4, Letter };
struct PaperSize {
  double width_mm = 0, height_mm = 0;
};
constexpr PaperSize size_of(Paper paper) {
  return paper == Paper::A4 ? PaperSize{297, 210} : PaperSize{279.4, 215.9};
}

inline constexpr double kBar_mm = 100;
inline constexpr double kTemplateText_mm = 4.2;

// One sheet: origin at the paper's lower left corner, everything inside the paper.
struct TemplateSheet {
  Drawing drawing;
  std::string title, description;
  std::size_t panel = 0;          // of evaluation.survey
  double from_mm = 0, to_mm = 0;  // along the panel, between this sheet's marks
};

// Sheets of every panel with something to cut, panel after panel, left to right. Empty without a
// base. A panel whose ground falls farther than a sheet is high has no strip: its name goes to
// `without`.
std::vector<TemplateSheet> base_template(const evaluate::Evaluation& evaluation, Paper paper,
                                         Units units, std::vector<std::string>* without = nullptr);

// One sheet as a file: as large as the paper.
std::string template_svg(const TemplateSheet& sheet, Paper paper);

// All sheets as one document to print, one a page, without a script.
std::string template_html(const std::vector<TemplateSheet>& sheets, Paper paper,
                          std::string_view title);

}  // namespace hs::report
