#include "web/session/session.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include "catch_amalgamated.hpp"
#include "nlohmann/json.hpp"
#include "tests/support/read_config.h"
#include "web/desk/reply_json.h"
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

TEST_CASE("who adds themselves is one step of undo, with what they gave", "[session][family]") {
  Session s;
  CHECK(s.add_person({"Mia", "5' 2\"", "", ""}, Units::Inch).empty());
  REQUIRE(s.config().cooks.size() == 2);
  CHECK(s.config().cooks[1].name == "Mia");
  CHECK(s.config().cooks[1].stature_mm == 1574.8);
  CHECK(s.evaluation().cooks.size() == 2);
  s.undo();
  CHECK(s.config() == config::Config{});
  CHECK(s.add_person({"Mia", "1580", "1490", "980"}, Units::Millimetre).empty());
  CHECK(s.config().cooks[1].eye_height_mm == 1490);
  CHECK(s.config().cooks[1].elbow_height_mm == 980);
}

TEST_CASE("a height is read as people say it, in whatever unit", "[session][family]") {
  const auto height_mm = [](std::string_view text, Units bare) {
    Session s;
    CHECK(s.add_person({"Mia", text, "", ""}, bare).empty());
    return s.config().cooks.back().stature_mm;
  };
  // 1 in = 25.4 mm exactly.
  for (const Units units : {Units::Inch, Units::Millimetre}) {
    CHECK(height_mm("168", units) == 1680);
    CHECK(height_mm("1.68", units) == 1680);
    CHECK(height_mm("1,68", units) == 1680);
    CHECK(height_mm(" 168 cm ", units) == 1680);
    CHECK(height_mm("5' 6\"", units) == 1676.4);
    CHECK(height_mm("5 ft 6 1/2 in", units) == 1689.1);
  }
  CHECK(height_mm("66", Units::Inch) == 1676.4);
  CHECK(height_mm("1680", Units::Millimetre) == 1680);
  CHECK(height_mm("90", Units::Inch) == 2286);
  CHECK(height_mm("90", Units::Millimetre) == 900);
}

TEST_CASE("a measured eye level stands for the height", "[session][family]") {
  Session s;
  CHECK(s.add_person({"Mia", "", "1600", ""}, Units::Millimetre).empty());
  // Eye to vertex is 100 to 125 mm for adults (ANSUR II, stature less eye height, sitting or
  // standing), and 25 mm of shoe are in the eye level.
  CHECK(s.config().cooks[1].stature_mm > 1600 - 25 + 95);
  CHECK(s.config().cooks[1].stature_mm < 1600 - 25 + 130);
  CHECK(s.config().cooks[1].eye_height_mm == 1600);
}

TEST_CASE("who adds themselves is told all that is missing or wrong, and nothing changes",
          "[session][family]") {
  Session s;
  const auto path = [&s](const Session::Person& person) {
    const auto problems = s.add_person(person, Units::Millimetre);
    CHECK(s.config() == config::Config{});
    return problems.empty() ? "" : problems.front().path;
  };
  CHECK(path({" ", "1700", "", ""}) == "cooks.1.name");
  CHECK(path({"Mia", "", "", ""}) == "cooks.1.stature_mm");
  CHECK(path({"Mia", "", "", "1000"}) == "cooks.1.stature_mm");
  CHECK(path({"Mia", "17", "", ""}) == "cooks.1.stature_mm");
  CHECK(path({"Mia", "", "2400", ""}) != "");
  CHECK(path({"Cook 1", "1700", "", ""}) == "cooks.1.name");  // there is one
  for (int i = 2; i <= 12; ++i) {
    CHECK(s.add_person({"Mia " + std::to_string(i), "1700", "", ""}, Units::Millimetre).empty());
  }
  CHECK(s.add_person({"Tom", "1700", "", ""}, Units::Millimetre).front().path == "cooks");
}

TEST_CASE("who was entered by height alone adds themselves in that place", "[session][family]") {
  Session s;
  CHECK(s.start_own("1880", "1620", "tabletop_gas_large", Units::Millimetre).empty());
  REQUIRE(s.config().cooks.size() == 2);
  CHECK(config::is_stand_in(s.config().cooks[0].name));
  CHECK(config::is_stand_in(s.config().cooks[1].name));
  config::Config expected = s.config();
  expected.cooks[0].name = "Bela";
  // Their height is known already; what they say of it counts.
  CHECK(s.add_person({"Bela", "", "", "", 0}, Units::Millimetre).empty());
  CHECK(s.config() == expected);
  expected.cooks[1].name = "Ana";
  expected.cooks[1].stature_mm = 1630;
  expected.cooks[1].elbow_height_mm = 1040;
  CHECK(s.add_person({"Ana", "163", "", "1040", 1}, Units::Millimetre).empty());
  CHECK(s.config() == expected);
  CHECK_FALSE(config::is_stand_in("Ana"));
  CHECK_FALSE(config::is_stand_in("Cook 0"));
  CHECK(config::is_stand_in("Cook 12"));
  // An eye level alone still makes a height; a place that is not there is a new one.
  CHECK(s.add_person({"Ana", "", "1600", "", 1}, Units::Millimetre).empty());
  CHECK(s.config().cooks[1].stature_mm > 1650);
  CHECK(s.add_person({"Mia", "1700", "", "", 7}, Units::Millimetre).empty());
  CHECK(s.config().cooks.size() == 3);
}

TEST_CASE("a link that came back is taken in as it was decided", "[session][family]") {
  Session ours, theirs;
  CHECK(ours.add_person({"Ana", "1650", "", ""}, Units::Millimetre).empty());
  CHECK(theirs.open_link(ours.link()).empty());
  CHECK(theirs.add_person({"Mia", "1580", "", ""}, Units::Millimetre).empty());
  CHECK(theirs.set_field("cooks.1.stature_mm", "1660", Units::Millimetre).empty());
  CHECK(theirs.set_field("view.standoff_mm", "800", Units::Millimetre).empty());
  const auto with = [&](std::string_view said) {
    const auto next = web::merged_by_letters(ours.config(), theirs.config(), said);
    REQUIRE(next.has_value());
    return *next;
  };
  // Who is new, Ana's height, the distance.
  const config::Config added = with("too");
  REQUIRE(added.cooks.size() == 3);
  CHECK(added.cooks[1].stature_mm == 1650);
  CHECK(added.cooks[2].name == "Mia");
  CHECK(added.view.standoff_mm == ours.config().view.standoff_mm);
  const config::Config changed = with("ott");
  CHECK(changed.cooks.size() == 2);
  CHECK(changed.cooks[1].stature_mm == 1660);
  CHECK(changed.view.standoff_mm == 800);
  CHECK(with("obo").cooks.back().name == "Ana 2");
  CHECK(with("") == ours.config());
  CHECK(with("xyz") == ours.config());
}

TEST_CASE("what a link that came back asks is said in words, in the person's own units",
          "[session][family]") {
  Session ours, theirs;
  CHECK(ours.add_person({"Ana", "1650", "", ""}, Units::Millimetre).empty());
  CHECK(web::reply_json(ours.config(), ours.config(), Units::Millimetre) == "null");
  CHECK(theirs.open_link(ours.link()).empty());
  CHECK(theirs.remove_cook(0).empty());
  CHECK(theirs.add_person({"Mia", "1580", "", ""}, Units::Millimetre).empty());
  CHECK(theirs.set_field("view.standoff_mm", "800", Units::Millimetre).empty());
  const auto json =
      nlohmann::json::parse(web::reply_json(ours.config(), theirs.config(), Units::Millimetre));
  REQUIRE(json["questions"].size() == 2);
  CHECK(json["questions"][0]["kind"] == "new");
  CHECK(json["questions"][0]["name"] == "Mia");
  CHECK(json["questions"][0]["rows"][0]["there"] == "1580 mm");
  CHECK(json["questions"][1]["kind"] == "station");
  CHECK(json["questions"][1]["rows"][0]["here"] == "700 mm");
  CHECK(json["questions"][1]["rows"][0]["there"] == "800 mm");
  CHECK(json["stay"] == nlohmann::json::array({"Cook 1"}));
  // Also a new cook whose height is the usual one says how tall they are.
  CHECK(theirs.open_link(ours.link()).empty());
  CHECK(theirs.add_person({"Tom", "1700", "", ""}, Units::Millimetre).empty());
  const auto tom =
      nlohmann::json::parse(web::reply_json(ours.config(), theirs.config(), Units::Millimetre));
  CHECK(tom["questions"][0]["rows"][0]["there"] == "1700 mm");
}

TEST_CASE("three answers are a station of one's own, in one step of undo", "[session][family]") {
  Session s;
  CHECK(s.open_link(preset_link("demo")).empty());
  const config::Config demo = s.config();
  CHECK(s.start_own("6 ft 1 in", "5' 4\"", "masonry_dome_28", Units::Inch).empty());
  REQUIRE(s.config().cooks.size() == 2);
  CHECK(s.config().cooks[0].stature_mm == 1854.2);
  CHECK(s.config().cooks[1].stature_mm == 1625.6);
  CHECK(s.config().oven.kind == config::OvenKind::MasonryDome28);
  // Nothing of the invented household is left in it.
  CHECK_FALSE(s.config().site.railing_gap_mm.has_value());
  CHECK(s.config().title.empty());
  s.undo();
  CHECK(s.config() == demo);
  CHECK(s.start_own("1800", "", "other", Units::Millimetre).empty());
  CHECK(s.config().cooks.size() == 1);
  CHECK(s.start_own("", "1600", "other", Units::Millimetre).front().path == "cooks.0.stature_mm");
  CHECK(s.start_own("1800", "16", "other", Units::Millimetre).front().path == "cooks.1.stature_mm");
  CHECK(s.start_own("1800", "", "campfire", Units::Millimetre).front().path == "oven.kind");
}
