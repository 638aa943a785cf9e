// What the page's script may call for the document: everything that is typed, and everything that
// is only read. All of it comes after the first picture, in the program's second file
// (web/later.txt): the page calls none of it before. Text goes in as UTF-8; text that comes out
// holds until the next call that gives one back.

#include <emscripten.h>

#include <cstddef>
#include <string>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/config/fields.h"
#include "engine/config/setting.h"
#include "engine/report/html_report.h"
#include "engine/report/page_json.h"
#include "engine/report/safety_sheet.h"
#include "engine/report/sheet_json.h"
#include "engine/share/link.h"
#include "engine/share/qr.h"
#include "web/app/app.h"
#include "web/desk/page_fields.h"
#include "web/session/presets.h"
#include "web/session/problems_json.h"

using hs::web::answer;
using hs::web::App;
using hs::web::app;
using hs::web::done;

extern "C" {

EMSCRIPTEN_KEEPALIVE const char* dk_set_field(const char* path, const char* text) {
  return done(app().session.set_field(path, text, app().view.units));
}
EMSCRIPTEN_KEEPALIVE const char* dk_add_cook() { return done(app().session.add_cook()); }
EMSCRIPTEN_KEEPALIVE const char* dk_remove_cook(int index) {
  return done(app().session.remove_cook(static_cast<std::size_t>(index)));
}
EMSCRIPTEN_KEEPALIVE const char* dk_open_json(const char* text) {
  return done(app().session.open_json(text));
}
EMSCRIPTEN_KEEPALIVE const char* dk_accept_trial() { return done(app().session.accept_trial()); }

EMSCRIPTEN_KEEPALIVE const char* dk_page_json() {
  const App& a = app();
  return answer(hs::report::page_json(a.session.config(), a.session.evaluation(), a.view.units));
}
// use: 0 sun, 1 dusk, 2 a file to save.
EMSCRIPTEN_KEEPALIVE const char* dk_drawing_json(const char* name, int cook, int use) {
  const App& a = app();
  return answer(hs::report::sheet_json(
      name, a.session.config(), a.session.evaluation(),
      {a.view.units, static_cast<std::size_t>(cook)},
      use == 2 ? hs::report::SheetUse::File
               : (use == 1 ? hs::report::SheetUse::Dusk : hs::report::SheetUse::Sun)));
}
// `style`: markup for the head, the page's own style sheets.
EMSCRIPTEN_KEEPALIVE const char* dk_report_html(const char* style) {
  const App& a = app();
  return answer(
      hs::report::report_html(a.session.config(), a.session.evaluation(), a.view.units, style));
}
EMSCRIPTEN_KEEPALIVE const char* dk_safety_html(const char* style) {
  const App& a = app();
  return answer(
      hs::report::safety_html(a.session.config(), a.session.evaluation(), a.view.units, style));
}
EMSCRIPTEN_KEEPALIVE const char* dk_fields_json() {
  return answer(hs::web::page_fields_json(app().session.config(), app().view.units));
}
// The household that the page opens with where nothing else is asked for: {"link", "title"}.
EMSCRIPTEN_KEEPALIVE const char* dk_example_json() {
  const std::string link(hs::preset_link("demo"));
  const hs::Result<hs::config::Config> example = hs::share::from_link(link);
  return answer("{\"link\":" + hs::json_string(link) +
                ",\"title\":" + hs::json_string(example ? example->title : "") + "}");
}
// A link's station under another title: its link as JSON text, or the problems. The station on the
// screen stays as it is.
EMSCRIPTEN_KEEPALIVE const char* dk_retitled(const char* link, const char* title) {
  hs::Result<hs::config::Config> other = hs::share::from_link(link);
  if (!other) return answer(hs::web::problems_json(other.error()));
  const std::vector<hs::Problem> problems = hs::config::set_field(
      other.value(), *hs::config::find_field("title"), 0, title, hs::Unit::Mm);
  return answer(problems.empty() ? hs::json_string(hs::share::to_link(*other))
                                 : hs::web::problems_json(problems));
}
// The square that a camera reads, as SVG text; empty where the text is too long for one.
EMSCRIPTEN_KEEPALIVE const char* dk_qr_svg(const char* text) {
  return answer(hs::share::qr_svg(text));
}

}  // extern "C"
