// What the page's script may call for the document: everything that is typed, and everything that
// is only read. All of it comes after the first picture, in the program's second file
// (web/later.txt): the page calls none of it before. Text goes in as UTF-8; text that comes out
// holds until the next call that gives one back.

#include <emscripten.h>

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/setting.h"
#include "engine/config/stock_csv.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/packet.h"
#include "engine/report/base_template.h"
#include "engine/report/compare.h"
#include "engine/report/html_report.h"
#include "engine/report/packet.h"
#include "engine/report/page_json.h"
#include "engine/report/report_json.h"
#include "engine/report/safety_sheet.h"
#include "engine/report/sheet_json.h"
#include "engine/report/tilt_json.h"
#include "engine/share/link.h"
#include "engine/share/qr.h"
#include "web/app/app.h"
#include "web/desk/page_fields.h"
#include "web/desk/readings.h"
#include "web/desk/reply_json.h"
#include "web/session/presets.h"
#include "web/session/problems_json.h"

using hs::web::answer;
using hs::web::App;
using hs::web::app;
using hs::web::done;

namespace {

// The packet that was made last: its files are fetched one by one.
std::vector<hs::report::PacketFile>& packet() {
  static std::vector<hs::report::PacketFile> files;
  return files;
}

// The one that is being made.
std::unique_ptr<hs::evaluate::PacketRun>& packet_run() {
  static std::unique_ptr<hs::evaluate::PacketRun> run;
  return run;
}

hs::report::Paper paper_of(int letter) {
  return letter != 0 ? hs::report::Paper::Letter : hs::report::Paper::A4;
}

}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE const char* dk_set_field(const char* path, const char* text) {
  return done(app().session.set_field(path, text, app().view.units));
}
EMSCRIPTEN_KEEPALIVE const char* dk_add_cook() { return done(app().session.add_cook()); }
EMSCRIPTEN_KEEPALIVE const char* dk_remove_cook(int index) {
  return done(app().session.remove_cook(static_cast<std::size_t>(index)));
}
// `kind` and `setup` as the field table counts their choices.
EMSCRIPTEN_KEEPALIVE const char* dk_add_point(double x_mm, double y_mm, int kind, int setup) {
  return done(app().session.add_point({hs::quantised(hs::Quantity::Length, x_mm),
                                       hs::quantised(hs::Quantity::Length, y_mm),
                                       {},
                                       static_cast<hs::config::Setup>(setup),
                                       static_cast<hs::config::PointKind>(kind)}));
}
EMSCRIPTEN_KEEPALIVE const char* dk_remove_point(int index) {
  return done(app().session.remove_point(static_cast<std::size_t>(index)));
}
EMSCRIPTEN_KEEPALIVE const char* dk_set_out_points() {
  return done(app().session.set_out_points());
}
EMSCRIPTEN_KEEPALIVE const char* dk_set_built(const char* name, const char* size) {
  return done(app().session.set_built(name, size, app().view.units));
}
EMSCRIPTEN_KEEPALIVE const char* dk_add_stock() { return done(app().session.add_stock()); }
EMSCRIPTEN_KEEPALIVE const char* dk_remove_stock(int index) {
  return done(app().session.remove_stock(static_cast<std::size_t>(index)));
}
EMSCRIPTEN_KEEPALIVE const char* dk_open_stock(const char* csv) {
  return done(app().session.open_stock(csv));
}
EMSCRIPTEN_KEEPALIVE const char* dk_stock_csv() {
  return answer(hs::config::stock_csv(app().session.config()));
}
EMSCRIPTEN_KEEPALIVE const char* dk_open_json(const char* text) {
  return done(app().session.open_json(text));
}
EMSCRIPTEN_KEEPALIVE const char* dk_accept_trial() { return done(app().session.accept_trial()); }
EMSCRIPTEN_KEEPALIVE const char* dk_add_person(const char* name, const char* stature,
                                               const char* eye, const char* elbow, int place) {
  std::optional<std::size_t> row;
  if (place >= 0) row = static_cast<std::size_t>(place);
  return done(app().session.add_person({name, stature, eye, elbow, row}, app().view.units));
}
EMSCRIPTEN_KEEPALIVE const char* dk_start_own(const char* tallest, const char* shortest,
                                              const char* kind) {
  return done(app().session.start_own(tallest, shortest, kind, app().view.units));
}
// What the second link's station asks the first one's household; null where it is no reply to it,
// or where one of them cannot be read.
EMSCRIPTEN_KEEPALIVE const char* dk_reply_json(const char* ours, const char* theirs) {
  const hs::Result<hs::config::Config> kept = hs::share::from_link(ours);
  const hs::Result<hs::config::Config> sent = hs::share::from_link(theirs);
  if (!sent || !kept) return answer("null");
  return answer(hs::web::reply_json(*kept, *sent, app().view.units));
}
// The first link's station with what was said to that, a letter for each question: its link as JSON
// text, or the problems. The station on the screen stays as it is.
EMSCRIPTEN_KEEPALIVE const char* dk_merged(const char* ours, const char* theirs, const char* said) {
  const hs::Result<hs::config::Config> kept = hs::share::from_link(ours);
  if (!kept) return answer(hs::web::problems_json(kept.error()));
  const hs::Result<hs::config::Config> sent = hs::share::from_link(theirs);
  if (!sent) return answer(hs::web::problems_json(sent.error()));
  const hs::Result<hs::config::Config> next = hs::web::merged_by_letters(*kept, *sent, said);
  return answer(next ? hs::json_string(hs::share::to_link(*next))
                     : hs::web::problems_json(next.error()));
}

// What this page shows, as numbers: with the heights as marked here.
EMSCRIPTEN_KEEPALIVE const char* dk_report_json() {
  const App& a = app();
  return answer(hs::report::report_json(a.session.config(), a.session.evaluation()));
}
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
// Full-size strips of the base's cuts as one document to print; empty where there is no cut.
EMSCRIPTEN_KEEPALIVE const char* dk_strips_html(int letter) {
  const App& a = app();
  const hs::report::Paper paper = paper_of(letter);
  const auto sheets = hs::report::base_template(a.session.evaluation(), paper, a.view.units);
  return answer(sheets.empty()
                    ? std::string()
                    : hs::report::template_html(sheets, paper, "Strips of the base's cuts"));
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
// use: 0 sight, 1 fall, 2 eye. Readings as web/desk/readings.h takes them; `distance` may be empty.
EMSCRIPTEN_KEEPALIVE const char* dk_tilt_json(int use, int cook, const char* first,
                                              const char* second, const char* distance) {
  const App& a = app();
  const std::vector<hs::measure::Gravity> one = hs::web::readings(first);
  const std::vector<hs::measure::Gravity> two = hs::web::readings(second);
  const hs::Unit bare = hs::report::unit_of(a.view.units);
  return answer(hs::report::tilt_json(
      a.session.config(), a.session.evaluation(),
      {use == 2   ? hs::report::TiltUse::Eye
       : use == 1 ? hs::report::TiltUse::Fall
                  : hs::report::TiltUse::Sight,
       static_cast<std::size_t>(cook), one, two, hs::parse_length_mm(distance, bare)},
      a.view.units));
}
// Stations side by side: a line for each, its link, a space and its name. Those that cannot be read
// are left out.
EMSCRIPTEN_KEEPALIVE const char* dk_compare_json(const char* lines) {
  struct One {
    std::string name;
    hs::config::Config config;
    hs::evaluate::Evaluation evaluation;
  };
  std::vector<One> all;
  for (std::string_view rest = lines; !rest.empty();) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(line.size() < rest.size() ? line.size() + 1 : line.size());
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) continue;
    const hs::Result<hs::config::Config> config = hs::share::from_link(line.substr(0, space));
    if (!config) continue;
    all.push_back({std::string(line.substr(space + 1)), *config,
                   hs::evaluate::evaluate_all(*config, hs::report::marks_of(app().view.units))});
  }
  std::vector<hs::report::Compared> compared;
  for (const One& one : all) compared.push_back({one.name, &one.config, &one.evaluation});
  return answer(hs::report::compare_json(compared, app().view.units));
}
// The packet in goes, so that a page shows how far it is and may stop it: begin, advance until
// nothing is "more", then the files.
EMSCRIPTEN_KEEPALIVE void dk_packet_begin() {
  packet_run() = std::make_unique<hs::evaluate::PacketRun>(app().session.config(),
                                                           hs::report::marks_of(app().view.units));
}
// About so many steps of a search: {"more", "done", "all", "inches"}.
EMSCRIPTEN_KEEPALIVE const char* dk_packet_advance(int steps) {
  const bool more = packet_run() && packet_run()->advance(steps);
  const auto progress =
      packet_run() ? packet_run()->progress() : hs::evaluate::PacketRun::Progress{};
  hs::JsonWriter out;
  out.begin_object();
  out.key("more");
  out.boolean(more);
  out.key("done");
  out.number(std::to_string(progress.done));
  out.key("all");
  out.number(std::to_string(progress.all));
  out.key("inches");
  out.boolean(progress.inches);
  out.end_object();
  return answer(out.take());
}
// The same bytes as the command's, where nothing was stopped: [{"name", "size"}].
EMSCRIPTEN_KEEPALIVE const char* dk_packet_json(const char* address, int letter) {
  if (!packet_run()) dk_packet_begin();
  const hs::config::Config config = packet_run()->config();
  const hs::evaluate::Evaluation whole = packet_run()->take();
  // The units of its heights' marks: whoever waits may have changed theirs.
  const bool metric = whole.marks == hs::evaluate::Marks::FiveMillimetres;
  hs::report::PacketChoice choice{
      paper_of(letter), metric ? hs::report::Units::Millimetre : hs::report::Units::Inch, {}};
  if (const auto good = hs::report::packet_address(address)) choice.address = *good;
  packet() = hs::report::packet_files(config, whole, choice);
  packet_run().reset();
  hs::JsonWriter out;
  out.begin_list();
  for (const hs::report::PacketFile& file : packet()) {
    out.begin_object();
    out.key("name");
    out.string(file.name);
    out.key("size");
    out.number(std::to_string(file.bytes.size()));
    out.end_object();
  }
  out.end_list();
  return answer(out.take());
}
// Where a file's bytes begin; they hold until the next packet.
EMSCRIPTEN_KEEPALIVE const char* dk_packet_bytes(int index) {
  return packet()[static_cast<std::size_t>(index)].bytes.data();
}
// The square that a camera reads, as SVG text; empty where the text is too long for one.
EMSCRIPTEN_KEEPALIVE const char* dk_qr_svg(const char* text) {
  return answer(hs::share::qr_svg(text));
}

}  // extern "C"
