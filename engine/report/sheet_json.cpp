#include "engine/report/sheet_json.h"

#include "engine/report/json_values.h"
#include "engine/report/svg.h"

namespace hs::report {

std::string sheet_json(std::string_view name, const config::Config& config,
                       const evaluate::Evaluation& evaluation, const SheetView& view,
                       SheetUse use) {
  const SheetKind* kind = find_sheet(name);
  if (kind == nullptr) return "{}";
  const Sheet sheet = kind->draw(config, evaluation, view);
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
