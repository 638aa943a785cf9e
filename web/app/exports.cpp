// What the page's script may call from the start. What is typed and what is only read is
// web/desk's, which is in the part of the program that comes after the first picture
// (web/later.txt). Text goes in as UTF-8; text that comes out holds until the next call that gives
// one back. Without hs_canvas_start everything but the canvas works.

#include <emscripten.h>

#include <memory>
#include <string>
#include <utility>

#include "engine/config/read.h"
#include "engine/evaluate/packet.h"
#include "engine/report/report_json.h"
#include "font_sans.h"
#include "font_sans_bold.h"
#include "web/app/app.h"
#include "web/app/host.h"
#include "web/session/presets.h"
#include "web/session/problems_json.h"

namespace hs::web {

App& app() {
  static App the_app;
  return the_app;
}

const char* answer(std::string text) {
  app().answer = std::move(text);
  return app().answer.c_str();
}

namespace {

void wake() {
  if (app().canvas) app().canvas->wake();
  host::wake();
}

// Tells the page once for each new state.
void tell_changes() {
  App& a = app();
  if (a.told_revision == a.session.revision()) return;
  a.told_revision = a.session.revision();
  host::changed(a.told_revision, a.session.dragging());
  wake();
}

}  // namespace

const char* done(const std::vector<Problem>& problems) {
  if (!problems.empty()) app().session.last_error = sentence(problems.front());
  tell_changes();
  return answer(problems_json(problems));
}

}  // namespace hs::web

using hs::Problem;
using hs::web::answer;
using hs::web::App;
using hs::web::app;
using hs::web::done;
using hs::web::PointerKind;
using hs::web::tell_changes;
using hs::web::wake;

extern "C" {

// Opens a link, or the example household where there is none. The first state is not an undo step.
EMSCRIPTEN_KEEPALIVE const char* hs_start(const char* link, int units) {
  App& a = app();
  if (!a.later_here) a.session.wait_for_survey();
  a.view.units = units == 1 ? hs::report::Units::Millimetre : hs::report::Units::Inch;
  a.session.mark_for(a.view.units);
  const std::vector<Problem> problems =
      link != nullptr ? a.session.open_link(link) : a.session.open_link(hs::preset_link("demo"));
  if (problems.empty()) {
    a.session.forget_history();
    a.told_revision = a.session.revision();
    wake();
  }
  return answer(hs::web::problems_json(problems));
}

EMSCRIPTEN_KEEPALIVE int hs_canvas_start(float css_width, float css_height, float ratio) {
  App& a = app();
  if (!a.canvas) {
    a.canvas =
        std::make_unique<hs::web::Canvas>(a.session, a.view, hearthsight::embedded::font_sans(),
                                          hearthsight::embedded::font_sans_bold());
    a.canvas->scene_picture().use(&a.scene);
    a.view.later_here = a.later_here;
  }
  const bool ready =
      a.window.started() ? a.window.restore() : a.window.start(css_width, css_height, ratio);
  // Where nothing can be drawn the canvas stays as it is: the page asks it for no frame.
  if (!ready) return 0;
  a.window.resize(css_width, css_height, ratio);
  a.canvas->resize(css_width, css_height, ratio, {});
  return 1;
}

// Called by the canvas itself (window.cpp). The page stops its frames and calls hs_canvas_start
// when the context is back.
EMSCRIPTEN_KEEPALIVE void hs_context_lost() {
  if (!app().canvas) return;
  app().window.lose();
  app().scene.lose();
}

EMSCRIPTEN_KEEPALIVE void hs_canvas_resize(float css_width, float css_height, float ratio,
                                           float top, float right, float bottom, float left) {
  App& a = app();
  if (!a.canvas) return;
  a.window.resize(css_width, css_height, ratio);
  a.canvas->resize(css_width, css_height, ratio, {top, right, bottom, left});
}

// kind: 0 down, 1 move, 2 up, 3 cancel.
EMSCRIPTEN_KEEPALIVE void hs_pointer(int kind, int id, int touch, float x, float y,
                                     double time_ms) {
  if (!app().canvas || kind < 0 || kind > 3) return;
  app().canvas->pointer(static_cast<PointerKind>(kind), id, touch != 0, x, y, time_ms);
}

EMSCRIPTEN_KEEPALIVE void hs_wheel(float dx, float dy) {
  if (app().canvas) app().canvas->wheel(dx, dy);
}

// code: KeyboardEvent.code; modifiers: 1 shift, 2 control, 4 alt, 8 meta. 1: used.
EMSCRIPTEN_KEEPALIVE int hs_key(const char* code, int down, int modifiers) {
  if (!app().canvas) return 0;
  return app().canvas->key(code, down != 0, modifiers) ? 1 : 0;
}

EMSCRIPTEN_KEEPALIVE void hs_blur() {
  if (app().canvas) app().canvas->blur();
}

EMSCRIPTEN_KEEPALIVE int hs_frame(double time_ms) {
  App& a = app();
  if (!a.canvas || !a.window.alive()) return 0;
  a.window.begin_frame();
  int wanted = a.canvas->frame(time_ms);
  a.window.end_frame(a.canvas->backdrop());
  tell_changes();
  // The document shows the same units; to it that is a change like any other.
  if (a.canvas->take_view_changed()) {
    hs::web::host::changed(a.told_revision, a.session.dragging());
  }
  if (a.canvas->cursor() != a.cursor) {
    a.cursor = a.canvas->cursor();
    hs::web::host::cursor(a.cursor);
  }
  for (const std::string& sheet : a.canvas->take_sheets()) hs::web::host::open_sheet(sheet);
  return wanted;
}

EMSCRIPTEN_KEEPALIVE const char* hs_clear_field(const char* path) {
  return done(app().session.clear_field(path));
}
EMSCRIPTEN_KEEPALIVE const char* hs_load_oven(const char* kind) {
  return done(app().session.load_oven(kind));
}
EMSCRIPTEN_KEEPALIVE const char* hs_open_link(const char* text) {
  return done(app().session.open_link(text));
}

EMSCRIPTEN_KEEPALIVE int hs_undo() {
  if (!app().session.can_undo()) return 0;
  app().session.undo();
  tell_changes();
  return 1;
}
EMSCRIPTEN_KEEPALIVE int hs_redo() {
  if (!app().session.can_redo()) return 0;
  app().session.redo();
  tell_changes();
  return 1;
}
EMSCRIPTEN_KEEPALIVE int hs_can_undo() { return app().session.can_undo() ? 1 : 0; }
EMSCRIPTEN_KEEPALIVE int hs_can_redo() { return app().session.can_redo() ? 1 : 0; }

EMSCRIPTEN_KEEPALIVE void hs_set_units(int units) {
  app().view.units = units == 1 ? hs::report::Units::Millimetre : hs::report::Units::Inch;
  app().session.mark_for(app().view.units);
  tell_changes();
  wake();
}
EMSCRIPTEN_KEEPALIVE void hs_set_theme(int theme) {
  app().view.theme = theme == 1 ? hs::web::Theme::Dusk : hs::web::Theme::Sun;
  wake();
}
EMSCRIPTEN_KEEPALIVE void hs_set_picture(int picture) {
  if (picture >= 0 && picture <= 3) app().view.picture = static_cast<hs::web::Picture>(picture);
  wake();
}
// The part of the program that came after the first picture is here.
EMSCRIPTEN_KEEPALIVE void hs_later_here() {
  app().later_here = app().view.later_here = true;
  app().session.survey_here();
  app().session.bring_build();
  wake();
}
// 1: no motion but what a finger makes.
EMSCRIPTEN_KEEPALIVE void hs_set_still(int still) {
  app().view.still = still != 0;
  wake();
}
// For a test: the oven's painted floor from straight above in the scene's place.
EMSCRIPTEN_KEEPALIVE void hs_debug_floor(int on) {
  if (app().canvas) app().canvas->scene_picture().show_plan(on != 0);
  wake();
}
// For a test: how often meshes went to the graphics card.
EMSCRIPTEN_KEEPALIVE int hs_debug_uploads() { return app().scene.uploads(); }
EMSCRIPTEN_KEEPALIVE void hs_set_person(int index) {
  if (index >= 0) app().view.person = static_cast<std::size_t>(index);
  wake();
}
EMSCRIPTEN_KEEPALIVE int hs_units() {
  return app().view.units == hs::report::Units::Millimetre ? 1 : 0;
}
// Who is looking: the one that the canvas shows.
EMSCRIPTEN_KEEPALIVE int hs_person() { return static_cast<int>(app().view.person); }

EMSCRIPTEN_KEEPALIVE const char* hs_link() { return answer(app().session.link()); }
EMSCRIPTEN_KEEPALIVE const char* hs_config_json() {
  return answer(hs::config::config_json(app().session.config()));
}
EMSCRIPTEN_KEEPALIVE const char* hs_report_json() {
  const hs::web::Session& session = app().session;
  return answer(hs::report::report_json(session.config(), session.told_evaluation()));
}
// The same with what is built and what a shop needs. Comes with the later part.
EMSCRIPTEN_KEEPALIVE const char* hs_whole_report_json() {
  const hs::config::Config& config = app().session.config();
  return answer(hs::report::report_json(config, hs::evaluate::evaluate_packet(config)));
}
EMSCRIPTEN_KEEPALIVE const char* hs_items_json() {
  return answer(app().canvas ? app().canvas->items().json() : std::string("[]"));
}
EMSCRIPTEN_KEEPALIVE int hs_revision() { return static_cast<int>(app().session.revision()); }
EMSCRIPTEN_KEEPALIVE int hs_frame_count() {
  return app().canvas ? static_cast<int>(app().canvas->frame_count()) : 0;
}
EMSCRIPTEN_KEEPALIVE const char* hs_last_error() {
  const std::string& drawing = app().scene.error();
  return answer(drawing.empty() ? app().session.last_error : drawing);
}
EMSCRIPTEN_KEEPALIVE const char* hs_focus() {
  return answer(app().canvas ? std::string(app().canvas->focus()) : std::string());
}

}  // extern "C"
