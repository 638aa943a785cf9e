#include "engine/report/sheet_json.h"

#include "engine/report/build_sheets.h"
#include "engine/report/json_values.h"
#include "engine/report/svg.h"

namespace hs::report {

std::string sheet_json(std::string_view name, const config::Config& config,
                       const evaluate::Evaluation& evaluation, const SheetView& view,
                       SheetUse use) {
  const SheetKind* kind = find_sheet(name);
  std::optional<Sheet> drawn;
  if (kind != nullptr) {
    drawn = kind->draw(config, evaluation, view);
  } else {
    drawn = build_sheet(name, config, evaluation, view);
  }
  if (!drawn) return "{}";
  const Sheet& sheet = *drawn;
  SvgStyle style{.title = sheet.title, .description = sheet.description, .text_mm = sheet.text_mm};
  if (use != SheetUse::File) {
    style.colours = use == SheetUse::Dusk ? SvgColours::Dusk : SvgColours::Sun;
    style.size = SvgSize::Fitted;
  }
  JsonWriter out;
  out.begin_object();
  put_text(out, "title", sheet.title);
  put_text(out, "description", sheet.description);
  put_text(out, "svg", svg(sheet.drawing, style));
  if (!sheet.table.rows.empty()) {
    out.key("table");
    put_table(out, sheet.table);
  }
  out.end_object();
  return out.take();
}

}  // namespace hs::report
