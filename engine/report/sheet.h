#pragma once
// The large drawings that are read at leisure, saved and printed: side section, front elevation and
// plan, each with its dimensions, its key and a line of known length; and the plots (plots.h).
//
// One list serves page, file and print. Lengths are true; text has one height, laid out for a sheet
// some sixty lines of text wide. What the letters mean stands in the key under the drawing, each
// entry with the source of its figure.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/drawing.h"
#include "engine/report/summary.h"
#include "engine/report/table.h"

namespace hs::report {

struct SheetView {
  Units units = Units::Inch;
  std::size_t cook = 0;  // who is at the oven; past the last one: the last
  // Height of a line of text that is asked for, in the drawing: what is readable on some paper.
  // 0: the sheet's own.
  double line_mm = 0;
};

struct Sheet {
  Drawing drawing;
  double text_mm = 60;      // height of a line of text
  std::string title;        // "Plan: Example (invented)"
  std::string description;  // what it shows, in a few sentences, for who does not see it
  Table table{};            // of a plot: its values; without rows where the page has them already
};

Sheet section_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                    const SheetView& view);
Sheet elevation_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                      const SheetView& view);
Sheet plan_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view);

// What there is to draw. Names are the command line's and the page's; they stay.
struct SheetKind {
  std::string_view name;     // "section"
  std::string_view title;    // "Side section"
  std::string_view caption;  // what one looks for in it
  // The page's section that a plot belongs to. Empty: a drawing of the station, true to scale.
  std::string_view section;
  Sheet (*draw)(const config::Config&, const evaluate::Evaluation&, const SheetView&);
};
std::span<const SheetKind> sheet_kinds();

// nullptr when there is none of that name.
const SheetKind* find_sheet(std::string_view name);

}  // namespace hs::report
