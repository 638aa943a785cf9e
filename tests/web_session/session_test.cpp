#include "web/session/session.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include "catch_amalgamated.hpp"
#include "tests/support/read_config.h"
#include "web/session/presets.h"

using namespace hs;
using hs::web::Session;
using report::Units;

namespace {

constexpr const char* kBase = "station.oven_base_height_mm";
constexpr const char* kCounter = "station.counter_height_mm";

std::string file_of(const Preset& preset) {
  std::ifstream in(HEARTHSIGHT_SOURCE_DIR "/presets/" + std::string(preset.name) + ".json");
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

}  // namespace

TEST_CASE("a new session is the default station, evaluated, with nothing to undo", "[session]") {
  const Session s;
  CHECK(s.config() == config::Config{});
  CHECK(s.evaluation().cooks.size() == 1);
  CHECK(s.evaluation().fits_adults_share.has_value());
  CHECK_FALSE(s.can_undo());
  CHECK_FALSE(s.can_redo());
}

TEST_CASE("a field set by text is one step back and forth", "[session]") {
  Session s;
  const std::uint32_t before = s.revision();
  CHECK(s.set_field("cooks.0.stature_mm", "5' 10\"", Units::Inch).empty());
  CHECK(s.config().cooks[0].stature_mm == 1778);
  CHECK(s.revision() > before);
  CHECK(s.evaluation().cooks[0].body.stature_mm == 1778 + s.config().cooks[0].shoe_mm);
  REQUIRE(s.can_undo());
  s.undo();
  CHECK(s.config() == config::Config{});
  CHECK(s.evaluation().cooks[0].body.stature_mm == 1700 + s.config().cooks[0].shoe_mm);
  s.redo();
  CHECK(s.config().cooks[0].stature_mm == 1778);
  CHECK_FALSE(s.can_redo());
}

TEST_CASE("a bare number is in the person's unit", "[session]") {
  Session s;
  CHECK(s.set_field(kBase, "42", Units::Inch).empty());
  CHECK(s.config().station.oven_base_height_mm == 1066.8);
  CHECK(s.set_field(kBase, "1070", Units::Millimetre).empty());
  CHECK(s.config().station.oven_base_height_mm == 1070);
}

TEST_CASE("what is refused changes nothing and says why", "[session]") {
  Session s;
  s.set_field("title", "Patio", Units::Inch);
  const config::Config before = s.config();
  const std::uint32_t revision = s.revision();
  struct Bad {
    const char* path;
    const char* text;
  };
  constexpr Bad kBad[] = {{"cooks.0.stature_mm", "9000 mm"},
                          {"cooks.0.stature_mm", "tall"},
                          {"cooks.7.stature_mm", "1700"},
                          {"cooks.99999999999999999999.stature_mm", "1700"},
                          {"no.such.field", "1"},
                          {"oven.kind", "microwave"},
                          // Wider than the body: only the oven's geometry shows it.
                          {"oven.mouth_width_mm", "1900 mm"}};
  for (const Bad& bad : kBad) {
    const std::vector<Problem> problems = s.set_field(bad.path, bad.text, Units::Millimetre);
    INFO(bad.path << " = " << bad.text);
    REQUIRE(problems.size() >= 1);
    CHECK_FALSE(sentence(problems[0]).empty());
    CHECK(s.config() == before);
    CHECK(s.revision() == revision);
  }
  CHECK_FALSE(s.last_error.empty());
  CHECK(s.set_field("title", "Shelter", Units::Inch).empty());
  CHECK(s.last_error.empty());
}

TEST_CASE("a drag is one step however many values it passes", "[session]") {
  Session s;
  for (int mm = 1000; mm <= 1100; mm += 5) s.drag_field(kBase, mm);
  CHECK(s.dragging());
  CHECK(s.config().station.oven_base_height_mm == 1100);
  // The dragged path keeps what only a full evaluation computes.
  CHECK(s.evaluation().fits_adults_share.has_value());
  s.end_drag();
  CHECK_FALSE(s.dragging());
  s.undo();
  CHECK_FALSE(s.config().station.oven_base_height_mm.has_value());
  CHECK_FALSE(s.can_undo());
}

TEST_CASE("a drag there and back is no step", "[session]") {
  Session s;
  s.drag_field("view.standoff_mm", 900);
  s.drag_field("view.standoff_mm", s.config().view.standoff_mm + 10);
  s.drag_field("view.standoff_mm", 700);
  s.end_drag();
  CHECK(s.config() == config::Config{});
  CHECK_FALSE(s.can_undo());
}

TEST_CASE("a drag stays inside the field's range and on its quantum", "[session]") {
  Session s;
  s.drag_field("view.standoff_mm", -1e9);
  CHECK(s.config().view.standoff_mm == 100);
  s.drag_field("view.standoff_mm", 1e9);
  CHECK(s.config().view.standoff_mm == 4000);
  s.drag_field("view.standoff_mm", 811.27);
  CHECK(s.config().view.standoff_mm == 811.3);
  s.drag_field("view.standoff_mm", std::nan(""));
  CHECK(s.config().view.standoff_mm == 811.3);
  s.drag_field("title", 3);
  s.drag_field("no.such", 3);
  s.end_drag();
  CHECK(s.config().title.empty());
}

TEST_CASE("a dragged evaluation is the full one but for what takes long", "[session]") {
  Session s;
  s.drag_field(kBase, 1040);
  const double dragged = s.evaluation().cooks[0].watching.pizza_share;
  s.end_drag();
  CHECK(s.evaluation().cooks[0].watching.pizza_share == dragged);
  CHECK(s.evaluation().used.oven_base_mm == 1040);
}

TEST_CASE("undo goes back two hundred steps and no further", "[session]") {
  Session s;
  for (int i = 0; i < 230; ++i) {
    s.set_field("view.standoff_mm", std::to_string(500 + i), Units::Millimetre);
  }
  int steps = 0;
  while (s.can_undo()) {
    s.undo();
    ++steps;
  }
  CHECK(steps == 199);  // 200 states are kept, the present one among them
  CHECK(s.config().view.standoff_mm == 500 + 230 - 200);
}

TEST_CASE("a change after undo ends what could be redone", "[session]") {
  Session s;
  s.set_field("title", "A", Units::Inch);
  s.set_field("title", "B", Units::Inch);
  s.undo();
  s.set_field("title", "C", Units::Inch);
  CHECK_FALSE(s.can_redo());
  s.undo();
  CHECK(s.config().title == "A");
}

TEST_CASE("setting what is already so is no step", "[session]") {
  Session s;
  CHECK(s.set_field("view.standoff_mm", "700 mm", Units::Inch).empty());
  CHECK_FALSE(s.can_undo());
}

TEST_CASE("a cleared height is the recommended one again", "[session]") {
  Session s;
  s.set_field(kBase, "1200 mm", Units::Inch);
  CHECK(s.evaluation().used.oven_base_mm == 1200);
  CHECK(s.clear_field(kBase).empty());
  CHECK(s.evaluation().used.oven_base_mm == s.evaluation().recommended.heights.oven_base_mm);
  s.set_field("station.prep_depth_mm", "700 mm", Units::Inch);
  s.clear_field("station.prep_depth_mm");
  CHECK(s.config().station.prep_depth_mm == config::Config{}.station.prep_depth_mm);
  CHECK_FALSE(s.clear_field("no.such").empty());
}

TEST_CASE("one level keeps one height whichever is changed", "[session]") {
  Session s;
  s.set_field(kBase, "1060 mm", Units::Inch);
  s.set_field(kCounter, "900 mm", Units::Inch);
  CHECK(s.set_field("station.arrangement", "one_level", Units::Inch).empty());
  CHECK(s.config().station.counter_height_mm == 1060);
  s.drag_field(kCounter, 980);
  s.end_drag();
  CHECK(s.config().station.oven_base_height_mm == 980);
  CHECK(s.set_field(kBase, "1000 mm", Units::Inch).empty());
  CHECK(s.config().station.counter_height_mm == 1000);
  s.clear_field(kBase);
  CHECK_FALSE(s.config().station.counter_height_mm.has_value());
  CHECK_FALSE(s.config().station.oven_base_height_mm.has_value());
}

TEST_CASE("every oven kind loads its own sizes and drops the other oven's height", "[session]") {
  int kinds = 0;
  for (const Preset& preset : presets()) {
    if (!preset.name.starts_with("ovens/")) continue;
    ++kinds;
    const std::string kind(preset.name.substr(6));
    INFO(kind);
    Session s;
    s.set_field(kBase, "1300 mm", Units::Inch);
    s.set_field("cooks.0.name", "Ana", Units::Inch);
    REQUIRE(s.load_oven(kind).empty());
    const Result<config::Config> typical = test::read_config(file_of(preset));
    REQUIRE(typical.has_value());
    CHECK(s.config().oven == typical->oven);
    CHECK(s.config().cooks[0].name == "Ana");
    CHECK_FALSE(s.config().station.oven_base_height_mm.has_value());
  }
  CHECK(kinds == 7);
  Session s;
  CHECK(s.load_oven("other").empty());
  CHECK(s.config().oven.kind == config::OvenKind::Other);
  CHECK_FALSE(s.load_oven("toaster").empty());
}

TEST_CASE("a preset's link opens to what its file says", "[session][brute]") {
  for (const Preset& preset : presets()) {
    INFO(preset.name);
    const Result<config::Config> read = test::read_config(file_of(preset));
    REQUIRE(read.has_value());
    Session s;
    REQUIRE(s.open_link(preset.link).empty());
    CHECK(s.config() == *read);
  }
}

TEST_CASE("cooks come and go within their number", "[session]") {
  Session s;
  CHECK_FALSE(s.remove_cook(0).empty());
  for (std::size_t i = 1; i < config::kMaxCooks; ++i) REQUIRE(s.add_cook().empty());
  CHECK_FALSE(s.add_cook().empty());
  CHECK(s.config().cooks.size() == config::kMaxCooks);
  CHECK(s.evaluation().cooks.size() == config::kMaxCooks);
  CHECK(s.remove_cook(3).empty());
  CHECK(s.config().cooks.size() == config::kMaxCooks - 1);
  CHECK_FALSE(s.remove_cook(40).empty());
}

TEST_CASE("a link opens the station it was made from", "[session]") {
  Session a;
  REQUIRE(a.open_link(preset_link("demo")).empty());
  a.set_field(kBase, "1010 mm", Units::Inch);
  Session b;
  REQUIRE(b.open_link(a.link()).empty());
  CHECK(b.config() == a.config());
  CHECK(b.link() == a.link());
  b.undo();
  CHECK(b.config() == config::Config{});
}

TEST_CASE("a damaged link or file leaves the last good state", "[session]") {
  Session s;
  REQUIRE(s.open_link(preset_link("demo")).empty());
  const config::Config before = s.config();
  const std::string link = s.link();
  for (const std::string& bad :
       {std::string(), std::string("zzz"), link.substr(0, link.size() / 2), "b" + link.substr(1)}) {
    INFO(bad);
    CHECK_FALSE(s.open_link(bad).empty());
    CHECK(s.config() == before);
    CHECK_FALSE(s.last_error.empty());
  }
  CHECK_FALSE(s.open_json("{\"format\": \"hearthsight/1\", \"oven\": {\"hue\": 3}}").empty());
  CHECK(s.config() == before);
}

TEST_CASE("the cold trial's correction is taken over once it is asked for", "[session]") {
  Session s;
  CHECK_FALSE(s.accept_trial().empty());  // no trial was made
  REQUIRE(s.evaluation().cooks[0].watching.farthest_mm.has_value());
  const double predicted = *s.evaluation().cooks[0].watching.farthest_mm;
  s.set_field("trial.cold_farthest_seen_mm", std::to_string(predicted - 30) + " mm", Units::Inch);
  REQUIRE(s.evaluation().trial.has_value());
  REQUIRE_FALSE(s.evaluation().trial->agrees);
  const std::string field(s.evaluation().trial->likely_field);
  REQUIRE(s.evaluation().trial->corrected_mm.has_value());
  REQUIRE(s.accept_trial().empty());
  INFO(field);
  REQUIRE(s.evaluation().trial.has_value());
  CHECK(s.evaluation().trial->agrees);
  s.undo();
  CHECK_FALSE(s.evaluation().trial->agrees);
}

TEST_CASE("numbers dragged together are one change", "[session]") {
  Session session;
  session.set_field("light.mount", "right", report::Units::Inch);
  const config::Config before = session.config();
  const std::uint32_t revision = session.revision();
  const web::FieldNumber head[] = {
      {"light.head.across_mm", 200}, {"light.head.ahead_mm", 500}, {"light.head.up_mm", 1e9}};
  session.drag_fields(head);
  CHECK(session.revision() == revision + 1);
  CHECK(session.config().light.head.given());
  CHECK(session.config().light.head.up_mm == 2000);  // clamped to its range
  // Places are looked for on release, and those of before are kept meanwhile.
  CHECK(session.evaluation().light.lamp->search.done);
  session.end_drag();
  session.undo();
  CHECK(session.config() == before);
  // One unknown path refuses all of them.
  const web::FieldNumber wrong[] = {{"light.head.across_mm", 200}, {"light.head.nowhere_mm", 5}};
  session.drag_fields(wrong);
  CHECK(session.config() == before);
  // And cleared together they are one step too.
  session.drag_fields(head);
  session.end_drag();
  const std::string_view paths[] = {"light.head.across_mm", "light.head.ahead_mm",
                                    "light.head.up_mm"};
  CHECK(session.clear_fields(paths).empty());
  CHECK(session.config() == before);
  session.undo();
  CHECK(session.config().light.head.given());
}

TEST_CASE("history can be forgotten", "[session]") {
  Session s;
  s.set_field("title", "A", Units::Inch);
  s.forget_history();
  CHECK_FALSE(s.can_undo());
  CHECK(s.config().title == "A");
}

TEST_CASE("the survey waits until the later part of the program is there", "[session][survey]") {
  std::ifstream in(HEARTHSIGHT_SOURCE_DIR "/presets/stations/garden_shelter.json");
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  Session s;
  s.wait_for_survey();
  REQUIRE(s.open_json(text).empty());
  CHECK(s.evaluation().survey == nullptr);
  const std::uint32_t before = s.revision();
  s.survey_here();
  REQUIRE(s.evaluation().survey != nullptr);
  CHECK(s.revision() > before);
  // A drag keeps it, and what was found; so does a change of one reading, worked out again.
  const std::uint64_t digest = s.evaluation().survey->digest;
  const auto of_ground = [&s] {
    const auto& all = s.evaluation().findings;
    return std::count_if(all.begin(), all.end(), [](const Finding& finding) {
      return finding.rule.starts_with("survey.");
    });
  };
  const auto findings = of_ground();
  CHECK(findings > 8);
  s.drag_field(kBase, 1000);
  REQUIRE(s.evaluation().survey != nullptr);
  CHECK(s.evaluation().survey->digest == digest);
  CHECK(of_ground() == findings);
  s.end_drag();
  CHECK(s.evaluation().survey->digest != digest);
  CHECK(s.evaluation().survey->oven->feet_mm == 1000);
  CHECK(s.set_field("survey.points.3.reading_mm", "35 1/4", Units::Inch).empty());
  CHECK(s.config().survey.points[3].reading_mm == 895.4);
  CHECK_FALSE(s.set_field("survey.points.24.reading_mm", "35", Units::Inch).empty());
}

TEST_CASE("what is built comes with its part of the program, and follows the hand's release",
          "[session]") {
  Session s;
  CHECK_FALSE(s.evaluation().build);
  s.bring_build();
  REQUIRE(s.evaluation().build);
  const auto first = s.evaluation().build;
  s.drag_field(kBase, 1000);
  CHECK(s.evaluation().build == first);  // not made again under a finger
  const auto says = [&s] {
    const auto& all = s.evaluation().findings;
    return std::count_if(all.begin(), all.end(),
                         [](const Finding& f) { return f.rule.starts_with("frame."); });
  };
  const auto count = says();
  CHECK(count > 0);
  s.end_drag();
  CHECK(s.evaluation().build != first);
  CHECK(says() > 0);
  s.set_field("title", "Another", Units::Inch);
  const auto same = s.evaluation().build;
  s.set_field("title", "And another", Units::Inch);
  CHECK(s.evaluation().build == same);
}
