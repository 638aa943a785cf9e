// What the page's script may call of the program for the document: everything that is typed, and
// everything that is only read. It is the same engine without a canvas, loaded after the first
// screen. The station itself is the drawing program's (web/app/exports.cpp); the link, which is
// exact, carries it here and what was changed back. Text goes in as UTF-8; text that comes out
// holds until the next call that gives one back.

#include <emscripten.h>

#include <string>

#include "engine/report/page_json.h"
#include "engine/report/sheet_json.h"
#include "web/desk/page_fields.h"
#include "web/session/problems_json.h"
#include "web/session/session.h"

namespace {

struct Desk {
  hs::web::Session session;
  hs::report::Units units = hs::report::Units::Inch;
  std::string answer;
};

Desk& desk() {
  static Desk the_desk;
  return the_desk;
}

const char* answer(std::string text) {
  desk().answer = std::move(text);
  return desk().answer.c_str();
}

// Undo is the drawing program's; a history here would only grow.
const char* done(const std::vector<hs::Problem>& problems) {
  desk().session.forget_history();
  return answer(hs::web::problems_json(problems));
}

}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE void dk_set_units(int units) {
  desk().units = units == 1 ? hs::report::Units::Millimetre : hs::report::Units::Inch;
}

EMSCRIPTEN_KEEPALIVE const char* dk_open_link(const char* text) {
  return done(desk().session.open_link(text));
}
EMSCRIPTEN_KEEPALIVE const char* dk_link() { return answer(desk().session.link()); }

EMSCRIPTEN_KEEPALIVE const char* dk_set_field(const char* path, const char* text) {
  return done(desk().session.set_field(path, text, desk().units));
}
EMSCRIPTEN_KEEPALIVE const char* dk_add_cook() { return done(desk().session.add_cook()); }
EMSCRIPTEN_KEEPALIVE const char* dk_remove_cook(int index) {
  return done(desk().session.remove_cook(static_cast<std::size_t>(index)));
}
EMSCRIPTEN_KEEPALIVE const char* dk_open_json(const char* text) {
  return done(desk().session.open_json(text));
}
EMSCRIPTEN_KEEPALIVE const char* dk_accept_trial() { return done(desk().session.accept_trial()); }

EMSCRIPTEN_KEEPALIVE const char* dk_page_json() {
  const Desk& d = desk();
  return answer(hs::report::page_json(d.session.config(), d.session.evaluation(), d.units));
}
// use: 0 sun, 1 dusk, 2 a file to save.
EMSCRIPTEN_KEEPALIVE const char* dk_drawing_json(const char* name, int cook, int use) {
  const Desk& d = desk();
  return answer(hs::report::sheet_json(
      name, d.session.config(), d.session.evaluation(), {d.units, static_cast<std::size_t>(cook)},
      use == 2 ? hs::report::SheetUse::File
               : (use == 1 ? hs::report::SheetUse::Dusk : hs::report::SheetUse::Sun)));
}
EMSCRIPTEN_KEEPALIVE const char* dk_fields_json() {
  return answer(hs::web::page_fields_json(desk().session.config(), desk().units));
}

}  // extern "C"
