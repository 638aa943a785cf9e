#include "engine/config/migrate.h"

#include <algorithm>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/read.h"

using namespace hs;
using namespace hs::config;

namespace {

// The steps of an invented history: version 1 called the title "name", version 2 kept the counter's
// height in cm.
void name_becomes_title(Node& root) {
  for (std::string& key : root.keys) {
    if (key == "name") key = "title";
  }
}
void cm_becomes_mm(Node& root) {
  Node* station = root.find("station");
  if (station == nullptr) return;
  for (std::size_t i = 0; i < station->keys.size(); ++i) {
    if (station->keys[i] != "counter_height_cm") continue;
    station->keys[i] = "counter_height_mm";
    station->items[i].number *= 10;
  }
}

constexpr MigrationStep kSteps[] = {{1, name_becomes_title}, {2, cm_becomes_mm}};
constexpr MigrationStep kGap[] = {{2, cm_becomes_mm}};

}  // namespace

TEST_CASE("an old file is brought up step by step and then read as usual", "[config][migrate]") {
  const Migration migration{kSteps, 3};
  const Reading from_1 = read_fields(
      R"({"format":"hearthsight/1","name":"Old","station":{"counter_height_cm":90}})", migration);
  CHECK(from_1.problems.empty());
  CHECK(from_1.config.title == "Old");
  CHECK(from_1.config.station.counter_height_mm == 900);
  const Reading from_2 = read_fields(
      R"({"format":"hearthsight/2","title":"Mid","station":{"counter_height_cm":90}})", migration);
  CHECK(from_2.problems.empty());
  CHECK(from_2.config.station.counter_height_mm == 900);
  const Reading from_3 =
      read_fields(R"({"format":"hearthsight/3","station":{"counter_height_mm":900}})", migration);
  CHECK(from_3.problems.empty());
  CHECK(from_3.config.station.counter_height_mm == 900);
}

TEST_CASE("an old key in a new file is unknown", "[config][migrate]") {
  const Reading reading =
      read_fields(R"({"format":"hearthsight/3","name":"New"})", Migration{kSteps, 3});
  REQUIRE(reading.problems.size() == 1);
  CHECK(reading.problems[0].path == "name");
}

TEST_CASE("a newer file and one without a way up are refused without guessing",
          "[config][migrate]") {
  const Reading newer = read_fields(R"({"format":"hearthsight/4","x":1})", Migration{kSteps, 3});
  REQUIRE(newer.problems.size() == 1);
  CHECK(sentence(newer.problems[0]).find("made by a newer version") != std::string::npos);
  const Reading older = read_fields(R"({"format":"hearthsight/1","name":"x"})", Migration{kGap, 3});
  REQUIRE(older.problems.size() == 1);
  CHECK(older.problems[0].path == "format");
}

TEST_CASE("the program has a step from every version before its own", "[config][migrate]") {
  const Migration migration = current_migration();
  CHECK(migration.newest == kFormatVersion);
  for (int version = 1; version < kFormatVersion; ++version) {
    CHECK(std::any_of(migration.steps.begin(), migration.steps.end(),
                      [&](const MigrationStep& step) { return step.from == version; }));
  }
}
