#include "engine/report/page_json.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/fit_rows.h"
#include "engine/report/field_text.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet.h"
#include "engine/report/sheet_json.h"
#include "tests/report/hand_built.h"

using namespace hs;
using nlohmann::json;
using report::Units;

namespace {

json built(Units units) {
  const config::Config config = test::hand_built_config();
  return json::parse(report::page_json(config, test::hand_built_evaluation(config), units));
}

const json& section(const json& page, const char* id) {
  for (const json& each : page.at("sections")) {
    if (each.at("id") == id) return each;
  }
  FAIL("no section " << id);
  return page;
}

}  // namespace

TEST_CASE("the page names every drawing there is, with its caption", "[report][page]") {
  const json page = built(Units::Inch);
  // All but those whose section is not there: nobody has read the ground.
  const auto unread =
      std::count_if(report::sheet_kinds().begin(), report::sheet_kinds().end(),
                    [](const report::SheetKind& kind) { return kind.section == "ground"; });
  REQUIRE(unread == 1);
  REQUIRE(page.at("drawings").size() + 1 == report::sheet_kinds().size());
  const evaluate::Evaluation e = evaluate::evaluate_fit({});
  for (const json& drawing : page.at("drawings")) {
    CHECK_FALSE(drawing.at("title").get<std::string>().empty());
    CHECK_FALSE(drawing.at("caption").get<std::string>().empty());
    const auto name = drawing.at("name").get<std::string>();
    const auto sheet = [&](report::SheetUse use) {
      return json::parse(report::sheet_json(name, {}, e, {}, use));
    };
    CHECK(sheet(report::SheetUse::File).at("svg").get<std::string>().find("mm\"") !=
          std::string::npos);
    // What the page shows carries no style sheet: its policy would block it.
    CHECK(sheet(report::SheetUse::Sun).at("svg").get<std::string>().find("<style") ==
          std::string::npos);
    CHECK(sheet(report::SheetUse::Dusk) != sheet(report::SheetUse::Sun));
  }
  CHECK(report::sheet_json("map", {}, e, {}, report::SheetUse::Sun) == "{}");
}

TEST_CASE("the page has its sections in their order", "[report][page]") {
  const json page = built(Units::Inch);
  CHECK(page.at("units") == "inch");
  std::string order;
  for (const json& each : page.at("sections")) order += each.at("id").get<std::string>() + " ";
  CHECK(order ==
        "people height_reasons findings arrangements fit sensitivity clearances heat light weather "
        "reach "
        "station "
        "trial cautions sources ");
  CHECK(built(Units::Millimetre).at("units") == "mm");
}

TEST_CASE("whatever offers a why has one", "[report][page][law]") {
  const config::Config plain;
  const json pages[] = {
      built(Units::Inch),
      json::parse(report::page_json(plain, evaluate::evaluate(plain), Units::Millimetre))};
  for (const json& page : pages) {
    const json& why = page.at("why");
    const auto explained = [&why](const json& id) {
      CAPTURE(id);
      REQUIRE(why.contains(id.get<std::string>()));
      const json& answer = why.at(id.get<std::string>());
      CHECK_FALSE(answer.at("title").get<std::string>().empty());
      CHECK_FALSE(answer.at("words").get<std::string>().empty());
      CHECK_FALSE(answer.at("source").get<std::string>().empty());
      CHECK_FALSE(answer.at("basis").get<std::string>().empty());
      CHECK(answer.at("inputs").is_array());
    };
    for (const json& headline : page.at("headlines")) explained(headline.at("why"));
    explained(page.at("worst").at("rule"));
    std::set<std::string> ids;
    for (const json& each : page.at("sections")) {
      for (const json& item : each.at("items")) {
        explained(item.at("why"));
        CHECK(ids.insert(item.at("id").get<std::string>()).second);
      }
    }
  }
}

TEST_CASE("every finding stands in exactly one section", "[report][page]") {
  const config::Config config = test::hand_built_config();
  const evaluate::Evaluation e = test::hand_built_evaluation(config);
  const json page = built(Units::Inch);
  std::size_t items = 0;
  for (const json& each : page.at("sections")) {
    const std::string id = each.at("id").get<std::string>();
    if (id != "cautions" && id != "height_reasons") items += each.at("items").size();
  }
  CHECK(items == e.findings.size() + 1);  // and the guests' share
}

TEST_CASE("tables have as many cells in each row as columns", "[report][page][law]") {
  config::Config config = test::hand_built_config();
  config.trial.cold_farthest_seen_mm = 250;
  const json page = json::parse(report::page_json(config, evaluate::evaluate(config), Units::Inch));
  int tables = 0;
  for (const json& each : page.at("sections")) {
    for (const json& table : each.at("tables")) {
      ++tables;
      CAPTURE(table.at("caption"));
      CHECK_FALSE(table.at("rows").empty());
      for (const json& row : table.at("rows")) CHECK(row.size() == table.at("columns").size());
    }
  }
  CHECK(tables == 17);
}

TEST_CASE("the fit map is a table for each cook at the oven, around the floor in use",
          "[report][page][fit_map]") {
  for (const Units units : {Units::Inch, Units::Millimetre}) {
    const config::Config config = test::hand_built_config();
    const evaluate::Evaluation e = evaluate::evaluate(config);
    const json page = json::parse(report::page_json(config, e, units));
    const json& tables = section(page, "fit").at("tables");
    std::vector<std::size_t> at_oven;
    for (const auto& one : evaluate::fit_rows(config, {}, {})) at_oven.push_back(one.cook);
    REQUIRE(!at_oven.empty());
    REQUIRE(tables.size() == at_oven.size());
    for (std::size_t i = 0; i < tables.size(); ++i) {
      const json& table = tables.at(i);
      CHECK(table.at("caption").get<std::string>().starts_with(config.cooks[at_oven[i]].name));
      std::size_t watching = 0;
      for (std::size_t c = 1; c < table.at("columns").size(); ++c) {
        if (table.at("columns").at(c).get<std::string>().ends_with(", as you watch")) watching = c;
      }
      REQUIRE(watching > 0);
      int as_it_is = 0;
      for (const json& row : table.at("rows")) {
        const auto name = row.at(0).get<std::string>();
        if (name.find(", as it is") == std::string::npos) continue;
        ++as_it_is;
        const evaluate::CookResult& cook = e.cooks[at_oven[i]];
        const std::string share =
            cook.watching.target_seen ? "all" : report::percent(cook.watching.pizza_share);
        CHECK(row.at(watching).get<std::string>().starts_with(share));
      }
      CHECK(as_it_is == 1);
    }
  }
}

TEST_CASE("everything that stands somewhere has its row, and says what of it is drawn",
          "[report][page][station]") {
  const config::Config config = test::hand_built_config();
  const evaluate::Evaluation e = test::hand_built_evaluation(config);
  const json page = json::parse(report::page_json(config, e, Units::Millimetre));
  const json& tables = section(page, "station").at("tables");
  REQUIRE(tables.size() == 2);
  const auto row = [&](std::size_t table, const std::string& name, const std::string& second = {}) {
    for (const json& each : tables.at(table).at("rows")) {
      if (each.at(0) == name && (second.empty() || each.at(1) == second)) return each;
    }
    FAIL("no row " << name);
    return json();
  };
  // Heights are those in use: the oven's body stands on its base at 1075 mm.
  CHECK(row(0, "Dough counter").at(3) == "910 mm");
  CHECK(row(0, "Oven").at(3).get<std::string>().starts_with("1075 mm to "));
  // A gap of 200 mm was measured on the left: the thing there ends 200 mm from the body.
  const double left_mm = -config.oven.width_mm / 2 - 200;
  CHECK(row(0, "Nearest thing on the left")
            .at(1)
            .get<std::string>()
            .ends_with(std::to_string(std::lround(-left_mm)) + " mm left"));
  CHECK(row(0, "Nearest thing on the left").at(4) == "as measured; its size is drawn");
  // Ana's eye is 700 mm from the mouth's plane when she watches; Ben kneads only.
  CHECK(row(1, "Ana", "watching the oven").at(2) == "the middle");
  CHECK(row(1, "Ben", "making dough").at(4) == "the ground");
  for (const json& each : tables.at(1).at("rows")) {
    if (each.at(0) == "Ben") CHECK(each.at(1) == "making dough");
  }
}

TEST_CASE("what is built is listed part by part, and only where something is",
          "[report][page][parts]") {
  const config::Config config;
  const evaluate::Evaluation e = evaluate::evaluate_all(config);
  REQUIRE(e.build);
  REQUIRE(e.build->frame.made());
  const json page = json::parse(report::page_json(config, e, Units::Inch));
  const json& tables = section(page, "build").at("tables");
  REQUIRE(tables.size() == 3);
  CHECK(tables.at(0).at("rows").size() == e.build->frame.runs.size());
  const json& rows = tables.at(1).at("rows");
  REQUIRE(rows.size() == e.build->parts.parts.size());
  int pieces = 0;
  for (const json& row : rows) pieces += std::stoi(row.at(2).get<std::string>());
  CHECK(pieces == static_cast<int>(e.build->frame.pieces.size()));
  CHECK(tables.at(2).at("rows").size() == e.build->parts.hardware.size());
  const json before = built(Units::Inch);
  for (const json& each : before.at("sections")) CHECK(each.at("id") != "build");
}

TEST_CASE("estimates show their error and measured heights do not", "[report][page]") {
  const json page = built(Units::Millimetre);
  const json& heights = section(page, "people").at("tables").at(0).at("rows");
  CHECK(heights.at(0).at(1) == "1661 mm \u00B1 9 mm");
  CHECK(heights.at(0).at(4) == "estimated, adult survey");
  CHECK(heights.at(1).at(2) == "1030 mm");
  CHECK(heights.at(1).at(4) == "eye estimated, adult survey; elbow measured");
}

TEST_CASE("each cook is told how many they are taller than, among whom", "[report][page]") {
  config::Config config;
  config.cooks = {{.name = "Ana", .stature_mm = 1626, .build = config::Build::AdultB},
                  {.name = "Ben", .stature_mm = 2250, .build = config::Build::AdultA},
                  {.name = "Cleo", .stature_mm = 1150, .build = config::Build::Child},
                  {.name = "Dov", .stature_mm = 1150, .build = config::Build::Child},
                  {.name = "Eve", .stature_mm = 1750, .build = config::Build::AdultA}};
  config.cooks[3].age_years = 6;
  // The mean eye of the survey's men, 1642.4 mm, in 25 mm shoes.
  config.cooks[4].eye_height_mm = 1667.4;
  const json page =
      json::parse(report::page_json(config, evaluate::evaluate(config), Units::Millimetre));
  const json& people = section(page, "people").at("tables").at(0);
  CHECK(people.at("columns").at(5) == "Taller than");
  const json& rows = people.at("rows");
  CHECK(rows.at(0).at(5) == "48 in 100 of the survey's women");
  CHECK(rows.at(1).at(5) == "99 in 100 of the survey's men");
  CHECK(rows.at(2).at(5) == "\u2014");  // the age was taken from the height
  CHECK(rows.at(3).at(5).get<std::string>().ends_with(" in 100 children of this age"));
  CHECK(rows.at(4).at(5) == "46 in 100 of the survey's men; eye above 50 in 100");
  CHECK(page.at("why").at("cook.taller_than").at("clause") ==
        "stature and eye height, mean and standard deviation");
}

TEST_CASE("a seated cook is told how deep the room for knees is, others are not",
          "[report][page]") {
  const auto knees = [](bool seated) {
    config::Config config;
    config.cooks[0].seated = seated;
    const json page =
        json::parse(report::page_json(config, evaluate::evaluate_fit(config), Units::Millimetre));
    for (const json& table : section(page, "reach").at("tables")) {
      if (table.at("caption").get<std::string>().starts_with("Room for knees")) return table;
    }
    return json();
  };
  CHECK(knees(false).is_null());
  // ADA 2010 306.3.3, through its figure: 11 in (280 mm) deep at 9 in (230 mm), 8 in (205 mm) at
  // 27 in (685 mm).
  const json rows = knees(true).at("rows");
  CHECK(rows.front() == json{"230 mm", "280 mm"});
  CHECK(rows.back() == json{"685 mm", "205 mm"});
}

TEST_CASE("rain is told from drizzle to cloudburst, with what drives it onto the front",
          "[report][page][weather]") {
  config::Config config;
  const auto rain = [&config] {
    const json page =
        json::parse(report::page_json(config, evaluate::evaluate_fit(config), Units::Millimetre));
    for (const json& table : section(page, "weather").at("tables")) {
      if (table.at("caption").get<std::string>().starts_with("Rain by how hard")) {
        return table.at("rows");
      }
    }
    return json();
  };
  CHECK(rain().is_null());  // nobody has said how the wind blows
  config.site.wind_m_s = 5;
  // At 10 mm/h Best 1950 and Laws and Parsons 1943 both give 1.885 mm; at 100 mm/h 3.215 and 2.867.
  // Lacy (ISO 15927-3): 0.222 x 5 m/s x 10 mm/h = 11.1 mm/h.
  const json rows = rain();
  REQUIRE(rows.size() == 4);
  CHECK(rows[1][0] == "10 mm an hour");
  CHECK(rows[1][1] == "1.9 mm");
  CHECK(rows[1][2] == "1.9 mm");
  CHECK(rows[1][4] == "11.1 mm an hour");
  CHECK(rows[3][1] == "3.2 mm");
  CHECK(rows[3][2] == "2.9 mm");
}

TEST_CASE("the inputs behind a number name the field that changes them", "[report][page]") {
  const json page = built(Units::Millimetre);
  const json& inputs = page.at("why").at("height.hand_ceiling").at("inputs");
  bool found = false;
  for (const json& input : inputs) {
    if (!input.contains("field")) continue;
    CHECK(config::find_field(input.at("field").get<std::string>()) != nullptr);
    if (input.at("field") != "cooks.0.elbow_height_mm") continue;
    found = true;
    CHECK(input.at("label") == "Ana: Elbow height");
    CHECK(input.at("value") == "1126 mm \u00B1 17 mm, estimated");
  }
  CHECK(found);
}

TEST_CASE("the most telling measurement is named", "[report][page]") {
  CHECK(section(built(Units::Millimetre), "sensitivity").at("intro") ==
        "Ana's elbow height moves the answer most: the oven by 16 mm. Measure it first.");
}

TEST_CASE("a field's value is told in the person's units", "[report][page]") {
  config::Config config;
  config.oven.mass_kg = 45.4;
  const auto told = [&config](const char* path, Units units) {
    return report::field_text(*config::find_field(path), config, 0, units);
  };
  CHECK(told("oven.floor_temp_c", Units::Millimetre) == "450 \u00B0C");
  CHECK(told("oven.floor_temp_c", Units::Inch) == "842 \u00B0F");
  CHECK(told("oven.mass_kg", Units::Inch) == "100 lb");
  CHECK(told("oven.kind", Units::Inch) == "Large tabletop, gas");
  CHECK(told("cooks[].seated", Units::Inch) == "no");
  CHECK(told("cooks[].at", Units::Inch) == "Oven and dough counter");
  CHECK(told("station.counter_height_mm", Units::Inch) == "the recommended one");
  CHECK(told("oven.listed_clearance.side_mm", Units::Inch) == "not known");
  CHECK(told("weights.worst_off", Units::Inch) == "50 %");
}

TEST_CASE("no page holds a number that is none", "[report][page][law]") {
  config::Config config;
  config.station.oven_base_height_mm = 1800;
  for (const Units units : {Units::Inch, Units::Millimetre}) {
    const std::string text = report::page_json(config, evaluate::evaluate(config), units);
    CHECK(text.find("null mm") == std::string::npos);
    CHECK(text.find("null \u00B0") == std::string::npos);
    CHECK(text.find("nan ") == std::string::npos);
    CHECK(text.find("\"inf") == std::string::npos);
  }
}
