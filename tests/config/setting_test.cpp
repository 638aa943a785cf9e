#include "engine/config/setting.h"

#include <limits>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/config/validate.h"

using namespace hs;
using namespace hs::config;

namespace {

std::vector<Problem> apply(Config& config, std::string_view path, std::string_view text) {
  return apply_setting(config, path, text);
}

const Field& field(std::string_view path) { return *find_field(path); }

}  // namespace

TEST_CASE("a setting takes JSON scalars, words and length text", "[config][setting]") {
  Config config;
  CHECK(apply(config, "cooks.0.stature_mm", "1.75e3").empty());
  CHECK(config.cooks[0].stature_mm == 1750);
  CHECK(apply(config, "cooks.0.stature_mm", "5' 11\"").empty());
  CHECK(config.cooks[0].stature_mm == 1803.4);
  CHECK(apply(config, "cooks.0.stature_mm", "\"70 in\"").empty());
  CHECK(config.cooks[0].stature_mm == 1778);
  CHECK(apply(config, "cooks.0.name", "\"Anna\"").empty());
  CHECK(config.cooks[0].name == "Anna");
  CHECK(apply(config, "title", "By the wall").empty());
  CHECK(config.title == "By the wall");
  CHECK(apply(config, "title", "").empty());
  CHECK(config.title.empty());
  CHECK(apply(config, "oven.kind", "masonry_dome_28").empty());
  CHECK(config.oven.kind == OvenKind::MasonryDome28);
  CHECK(apply(config, "cooks.0.seated", "true").empty());
  CHECK(config.cooks[0].seated);
  CHECK(apply(config, "station.counter_height_mm", "42 1/2").empty());
  CHECK(config.station.counter_height_mm == 1079.5);
  CHECK(apply(config, "station.counter_height_mm", "null").empty());
  CHECK_FALSE(config.station.counter_height_mm.has_value());
  CHECK(apply(config, "oven.outer_mouth.width_mm", "600").empty());
  CHECK(apply(config, "oven.outer_mouth", "null").empty());
  CHECK_FALSE(config.oven.outer_mouth.given());
}

TEST_CASE("a setting one past the last cook adds one, up to twelve", "[config][setting]") {
  Config config;
  for (std::size_t i = 1; i < kMaxCooks; ++i) {
    CHECK(apply(config, "cooks." + std::to_string(i) + ".share", "0.5").empty());
    CHECK(config.cooks.size() == i + 1);
  }
  CHECK(apply(config, "cooks.12.share", "0.5").size() == 1);
  CHECK(config.cooks.size() == kMaxCooks);
  CHECK(validate(config).empty());
  Config two;
  CHECK(apply(two, "cooks.2.share", "0.5").size() == 1);
  CHECK(apply(two, "cooks.1.share", "5").size() == 1);
  CHECK(two.cooks.size() == 1);
}

TEST_CASE("a group takes JSON and becomes what a file with it there would give",
          "[config][setting]") {
  Config config;
  config.oven.listed_clearance.back_mm = 200;
  CHECK(apply(config, "oven.listed_clearance", R"({"side_mm":"10 in","on_combustible":false})")
            .empty());
  CHECK(config.oven.listed_clearance.side_mm == 254);
  CHECK(config.oven.listed_clearance.on_combustible == false);
  CHECK_FALSE(config.oven.listed_clearance.back_mm);  // left out: not known
  CHECK(apply(config, "oven.listed_clearance", "null").empty());
  CHECK(config.oven.listed_clearance == Clearance{});

  config.oven.depth_mm = 900;
  CHECK(apply(config, "oven", R"( {"width_mm":700,"outer_mouth":{"width_mm":600}} )").empty());
  Oven oven;
  oven.width_mm = 700;
  oven.outer_mouth.width_mm = 600;
  CHECK(config.oven == oven);

  CHECK(apply(config, "cooks", R"([{"name":"Ana"},{"stature_mm":1600}])").empty());
  REQUIRE(config.cooks.size() == 2);
  CHECK(config.cooks[1].name == "Cook 2");
  CHECK(apply(config, "cooks.0", R"({"seated":true})").empty());
  CHECK(config.cooks[0] == Cook{.name = "Cook 1", .seated = true});
  CHECK(apply(config, "cooks.2", R"({"name":"Bo","at":"prep"})").empty());
  REQUIRE(config.cooks.size() == 3);
  CHECK(config.cooks[2] == Cook{.name = "Bo", .at = At::Prep});
}

TEST_CASE("a bad group is refused where it is wrong, with what it takes", "[config][setting]") {
  struct Row {
    const char* path;
    const char* text;
    const char* sentence;
  };
  const Row rows[] = {
      {"oven.listed_clearance", "{side_mm:25}",
       "oven.listed_clearance: broken JSON near side_mm (line 1, column 2) is not allowed; give "
       "JSON text; here a JSON object such as {\"side_mm\":...}, null, or one of its members by "
       "name"},
      {"oven.listed_clearance", "close",
       "oven.listed_clearance: \"close\" is not allowed; give a JSON object such as "
       "{\"side_mm\":...}, null, or one of its members by name"},
      {"oven.listed_clearance", "",
       "oven.listed_clearance: nothing is not allowed; give a JSON object such as "
       "{\"side_mm\":...}, null, or one of its members by name"},
      {"oven.listed_clearance", R"({"sid_mm":25})",
       "oven.listed_clearance.sid_mm: an unknown key is not allowed; give one of the known keys; "
       "did you mean oven.listed_clearance.side_mm?"},
      {"oven.listed_clearance", R"({"side_mm":25,"side_mm":30})",
       "oven.listed_clearance.side_mm: the same key twice is not allowed; give each key once"},
      {"oven.listed_clearance", R"({"side_mm":-5})",
       "oven.listed_clearance.side_mm: -5 mm is not allowed; give 0 to 5000 mm, or leave it out"},
      {"oven", "null",
       "oven: null is not allowed; give a JSON object such as {\"width_mm\":...}, or one of its "
       "members by name"},
      {"cooks.0", "[]",
       "cooks.0: a list is not allowed; give a JSON object such as {\"stature_mm\":...}, or one of "
       "its members by name"},
      {"cooks", "{}",
       "cooks: an object is not allowed; give a JSON list such as [{\"stature_mm\":...}]"},
      {"cooks", "[]", "cooks: 0 cooks is not allowed; give a list of 1 to 12 cooks"},
      {"cooks.1", R"({"share":5})", "cooks.1.share: 5 is not allowed; give 0 to 1"},
      {"format", "x",
       "format: a setting is not allowed; give it in the file itself, as \"hearthsight/1\""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.path, row.text);
    Config config;
    const auto problems = apply(config, row.path, row.text);
    REQUIRE(problems.size() == 1);
    CHECK(sentence(problems[0]) == row.sentence);
    CHECK(config == Config{});
  }
}

TEST_CASE("a bad setting is refused at its path and changes nothing", "[config][setting]") {
  struct Row {
    const char* path;
    const char* text;
  };
  const Row rows[] = {
      {"cooks.0.stature_mm", "3000"},
      {"cooks.0.stature_mm", ""},
      {"cooks.0.stature_mm", "tall"},
      {"cooks.0.stature_mm", "NaN"},
      {"cooks.0.stature_mm", "1e308"},
      {"cooks.0.stature_mm", "[1]"},
      {"cooks.0.stature_mm", "null"},
      {"cooks.0.stature_mm", "true"},
      {"cooks.00.share", "1"},
      {"cooks.-1.share", "1"},
      {"cooks.x.share", "1"},
      {"cooks[].share", "1"},
      {"cooks.0", "1"},
      {"cooks.0.hair", "1"},
      {"cooks", "1"},
      {"oven", "null"},
      {"oven.outer_mouth", "3"},
      {"", "1"},
      {"format", "x"},
      {"oven.kind", "Other"},
      {"cooks.0.seated", "1"},
      {"title", "null"},
      {"station.counter_height_mm", ""},
      {"oven.width_mm.x", "1"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.path, row.text);
    Config config;
    const auto problems = apply(config, row.path, row.text);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].path == row.path);
    CHECK(config == Config{});
  }
}

TEST_CASE("an input on the page is read in the person's unit", "[config][setting]") {
  Config config;
  const Field& counter = field("station.counter_height_mm");
  CHECK(set_field(config, counter, 0, "42.5", Unit::Inch).empty());
  CHECK(config.station.counter_height_mm == 1079.5);
  CHECK(set_field(config, counter, 0, "1051", Unit::Mm).empty());
  CHECK(config.station.counter_height_mm == 1051);
  const auto problems = set_field(config, counter, 0, "70", Unit::Inch);
  REQUIRE(problems.size() == 1);
  CHECK(sentence(problems[0]) ==
        "station.counter_height_mm: \"70\" is not allowed; give 11 13/16 to 62 15/16 in, or leave "
        "it out");
  CHECK(config.station.counter_height_mm == 1051);
  CHECK(set_field(config, counter, 0, " ", Unit::Inch).empty());
  CHECK_FALSE(config.station.counter_height_mm.has_value());
  CHECK(set_field(config, field("oven.width_mm"), 0, "", Unit::Mm).size() == 1);
  CHECK(set_field(config, field("oven.floor_temp_c"), 0, "800 F", Unit::Inch).empty());
  CHECK(config.oven.floor_temp_c == 426.7);
  CHECK(set_field(config, field("cooks[].share"), 1, "0.5", Unit::Mm).size() == 1);
}

TEST_CASE("an input that contradicts another is refused and changes nothing", "[config][setting]") {
  Config config;
  config.station.arrangement = Arrangement::OneLevel;
  config.station.oven_base_height_mm = 1000;
  const Config before = config;
  CHECK_FALSE(set_field(config, field("station.counter_height_mm"), 0, "900", Unit::Mm).empty());
  CHECK(config == before);
  CHECK(set_field(config, field("station.counter_height_mm"), 0, "1000", Unit::Mm).empty());
}

TEST_CASE("a renamed cook keeps the cold trial and a removed one takes it along",
          "[config][setting]") {
  Config config;
  REQUIRE(add_cook(config));
  config.trial.cook = "Cook 2";
  config.trial.cold_farthest_seen_mm = 300;
  CHECK(set_field(config, field("cooks[].name"), 1, "Bo", Unit::Mm).empty());
  CHECK(config.trial.cook == "Bo");
  CHECK(set_field(config, field("cooks[].name"), 0, "Bo", Unit::Mm).size() == 1);
  CHECK(set_field(config, field("cooks[].name"), 1, "", Unit::Mm).empty());
  CHECK(config.cooks[1].name == "Cook 2");
  CHECK(remove_cook(config, 1));
  CHECK(config.trial == Trial{});
  CHECK_FALSE(remove_cook(config, 0));
  CHECK(validate(config).empty());
}

TEST_CASE("a value that is not finite or not of its list is refused whoever made it",
          "[config][validate]") {
  Config config;
  config.oven.width_mm = std::numeric_limits<double>::quiet_NaN();
  config.view.standoff_mm = std::numeric_limits<double>::infinity();
  config.oven.fuel = static_cast<Fuel>(200);
  config.title = " x";
  config.cooks[0].name.clear();
  std::vector<std::string> paths;
  for (const Problem& problem : validate(config)) paths.push_back(problem.path);
  CHECK(paths == std::vector<std::string>{"title", "cooks.0.name", "oven.width_mm", "oven.fuel",
                                          "view.standoff_mm"});
}

TEST_CASE("what is counted is counted whole", "[config][setting]") {
  int counts = 0;
  for (const Field& one : fields()) {
    if (one.quantity != Quantity::Count || list_of(one.group) != nullptr) continue;
    CAPTURE(one.path);
    Config config;
    const Config before = config;
    const std::string path(one.path);
    const auto problems = apply(config, path, trimmed(one.min, 0) + ".7");
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].path == path);
    CHECK(problems[0].allowed.find(", a whole number") != std::string::npos);
    CHECK(config == before);
    CHECK(apply(config, path, trimmed(one.max, 0)).empty());
    ++counts;
  }
  CHECK(counts >= 3);
}
