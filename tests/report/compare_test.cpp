#include "engine/report/compare.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "tests/report/preset.h"

using namespace hs;
using report::Units;

namespace {

struct Station {
  std::string name;
  config::Config config;
  evaluate::Evaluation evaluation;

  Station(std::string called, config::Config c)
      : name(std::move(called)), config(std::move(c)), evaluation(evaluate::evaluate_all(config)) {}
};

report::Comparison compared(const std::vector<Station>& stations, Units units) {
  std::vector<report::Compared> all;
  for (const Station& s : stations) all.push_back({s.name, &s.config, &s.evaluation});
  return report::compare(all, units);
}

const report::Table* table(const report::Comparison& comparison, const std::string& caption) {
  const auto it = std::find_if(comparison.tables.begin(), comparison.tables.end(),
                               [&](const report::Table& t) { return t.caption == caption; });
  return it == comparison.tables.end() ? nullptr : &*it;
}

std::vector<std::string> row(const report::Table& table, const std::string& name) {
  for (const auto& cells : table.rows) {
    if (cells.front() == name) return cells;
  }
  return {};
}

}  // namespace

TEST_CASE("a station beside itself differs in nothing, and says so", "[report][compare]") {
  for (const char* name : test::kPresets) {
    const config::Config config = test::preset(name);
    const auto comparison = compared({{"A", config}, {"B", config}, {"C", config}}, Units::Inch);
    INFO(name);
    CHECK(comparison.tables.empty());
    CHECK(comparison.same.starts_with("Nothing differs."));
  }
}

TEST_CASE("only what differs has a row, with every station's own word", "[report][compare]") {
  const config::Config one = test::preset("demo");
  config::Config other = one;
  other.title = "Another";
  other.cooks.front().stature_mm += 60;
  other.cooks.push_back({});
  other.cooks.back().name = "Tom";
  other.cooks.back().stature_mm = 1955;
  other.station.prep_depth_mm = 700;
  const auto both = compared({{"One", one}, {"Other", other}}, Units::Millimetre);
  const report::Table* answers = table(both, "Answers");
  REQUIRE(answers != nullptr);
  CHECK(answers->columns == std::vector<std::string>{"", "One", "Other"});
  // Exactly the three answers that were changed: by hand.
  CHECK(answers->rows.size() == 3);
  CHECK(row(*answers, "Tom, Height") ==
        std::vector<std::string>{"Tom, Height", "not in it", "1955 mm"});
  const auto depth = std::find_if(answers->rows.begin(), answers->rows.end(),
                                  [](const auto& cells) { return cells[2] == "700 mm"; });
  CHECK(depth != answers->rows.end());
  const report::Table* people = table(both, "How it suits whom");
  REQUIRE(people != nullptr);
  const auto tom = row(*people, "Tom");
  REQUIRE(tom.size() == 3);
  CHECK(tom[1] == "\u2014");
  CHECK(tom[2] != "\u2014");
}

TEST_CASE("of each pair of presets every row differs and every finding's verdict is its own",
          "[report][compare]") {
  std::vector<Station> all;
  for (const char* name : test::kPresets) all.push_back({name, test::preset(name)});
  for (std::size_t i = 0; i + 2 < all.size(); ++i) {
    const std::vector<Station> three{all[i], all[i + 1], all[i + 2]};
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      for (const report::Table& t : compared(three, units).tables) {
        for (const auto& cells : t.rows) {
          INFO(t.caption << ": " << cells.front());
          REQUIRE(cells.size() == 4);
          CHECK_FALSE(cells.front().empty());
          CHECK((cells[1] != cells[2] || cells[2] != cells[3]));
          // What is fine here and not asked there is no difference.
          if (t.caption == "Findings") {
            CHECK(std::any_of(cells.begin() + 1, cells.end(), [](const std::string& cell) {
              return cell != "Good" && cell != "\u2014";
            }));
          }
          for (const std::string& cell : cells) {
            CHECK_FALSE(cell.empty());
            CHECK(cell.find("nan") == std::string::npos);
          }
        }
      }
    }
  }
}

TEST_CASE("a station's word in a comparison is its word alone", "[report][compare]") {
  const Station one("One", test::preset("demo"));
  const Station two("Two", test::preset("stations/brick_oven_too_close"));
  const auto both = compared({one, two}, Units::Inch);
  const auto s = report::summary(two.config, two.evaluation, Units::Inch);
  const report::Table* heights = table(both, "Heights");
  REQUIRE(heights != nullptr);
  const auto oven = row(*heights, "Oven");
  REQUIRE(oven.size() == 3);
  CHECK(oven[2].find(s.headlines[0].value) != std::string::npos);
  const report::Table* people = table(both, "How it suits whom");
  REQUIRE(people != nullptr);
  for (const auto& cook : s.cooks) {
    const auto cells = row(*people, cook.name);
    REQUIRE(cells.size() == 3);
    CHECK(cells[2].ends_with(cook.line));
  }
}

TEST_CASE("the comparison as JSON holds the same tables", "[report][compare]") {
  const Station one("One", test::preset("demo"));
  const Station two("Two \"x\" <b>", test::preset("stations/seated_cook"));
  const std::vector<report::Compared> all{{one.name, &one.config, &one.evaluation},
                                          {two.name, &two.config, &two.evaluation}};
  const auto json = nlohmann::json::parse(report::compare_json(all, Units::Inch));
  const auto tables = report::compare(all, Units::Inch).tables;
  REQUIRE(json["tables"].size() == tables.size());
  CHECK(json["tables"][0]["columns"][2] == two.name);
  CHECK(json["tables"].back()["rows"].get<std::vector<std::vector<std::string>>>() ==
        tables.back().rows);
  CHECK(json["same"].get<std::string>().find("The same in all of them: ") != std::string::npos);
}
