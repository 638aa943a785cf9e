#include "engine/config/read.h"

#include <algorithm>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/base/text.h"
#include "engine/config/json.h"
#include "tests/support/read_config.h"

using namespace hs;
using namespace hs::config;
using hs::test::read_config;

namespace {

std::vector<std::string> paths(const std::vector<Problem>& problems) {
  std::vector<std::string> out;
  for (const Problem& problem : problems) out.push_back(problem.path);
  return out;
}

std::string with(const std::string& members) {
  return R"({"format":"hearthsight/1",)" + members + "}";
}

struct Bad {
  std::string json;
  std::vector<std::string> paths;  // in the order they are reported
};

}  // namespace

TEST_CASE("the format alone is the default station", "[config][read]") {
  const auto config = read_config(R"({"format":"hearthsight/1"})");
  REQUIRE(config.has_value());
  CHECK(*config == Config{});
}

TEST_CASE("every cook is written with its name, and nothing else that is as usual",
          "[config][write]") {
  CHECK(config_json(Config{}) ==
        "{\n  \"format\": \"hearthsight/1\",\n  \"cooks\": [\n    {\n      \"name\": \"Cook 1\"\n"
        "    }\n  ]\n}\n");
}

TEST_CASE("lengths are numbers of mm or text in any unit, rounded to a tenth", "[config][read]") {
  const auto config =
      read_config(with(R"("station":{"counter_height_mm":"3' 5 3/8\"","prep_depth_mm":"60,5 cm",
      "aisle_mm":"1.2 m","board_mm":20.04},"cooks":[{"stature_mm":"5' 11\""},{"stature_mm":"1700"}])"));
  REQUIRE(config.has_value());
  CHECK(config->station.counter_height_mm == 1050.9);
  CHECK(config->station.prep_depth_mm == 605);
  CHECK(config->station.aisle_mm == 1200);
  CHECK(config->station.board_mm == 20);
  CHECK(config->cooks[0].stature_mm == 1803.4);
  CHECK(config->cooks[1].stature_mm == 1700);
}

TEST_CASE("null means unknown where a key may be unknown, alone or as a group", "[config][read]") {
  const auto config =
      read_config(with(R"("station":{"counter_height_mm":null,"top_combustible":null},
      "oven":{"listed_clearance":null,"outer_mouth":{"shape":null}},"site":{"local_clearance":null},
      "trial":{"at":null},"cooks":[{"age_years":null}])"));
  REQUIRE(config.has_value());
  CHECK(*config == Config{});
}

TEST_CASE("cooks without a name get one that nobody has", "[config][read]") {
  const auto config =
      read_config(with(R"("cooks":[{"name":"Cook 2"},{},{"name":"  "},{"name":" Anna "}])"));
  REQUIRE(config.has_value());
  CHECK(config->cooks[0].name == "Cook 2");
  CHECK(config->cooks[1].name == "Cook 3");
  CHECK(config->cooks[2].name == "Cook 4");
  CHECK(config->cooks[3].name == "Anna");
}

TEST_CASE("every fault is refused at its path", "[config][read]") {
  const std::vector<Bad> cases = {
      {"", {""}},
      {"null", {""}},
      {"[]", {""}},
      {"{}", {"format"}},
      {R"({"format":1})", {"format"}},
      {R"({"format":"hearthsight/"})", {"format"}},
      {R"({"format":"hearthsight/01"})", {"format"}},
      {R"({"format":"hearthsight/2","new_key":1})", {"format"}},
      {R"({"format":"hearthsight/0"})", {"format"}},
      {R"({"format":"hearthsight/1")", {""}},
      {R"({"format":"hearthsight/1"} 1)", {""}},
      {R"({"format":"hearthsight/1",})", {""}},
      {with(R"("title":NaN)"), {"title"}},
      {with(R"("oven":{"width_mm":NaN})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":-Infinity})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":1e999})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":1e308})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":199.9})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":3500.1})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":"wide"})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":"1e3 mm"})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":"1,051"})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":true})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":[600]})"), {"oven.width_mm"}},
      {with(R"("oven":{"width_mm":null})"), {"oven.width_mm"}},
      {with(R"("oven":{"floor_temp_c":"450 C"})"), {"oven.floor_temp_c"}},
      {with(R"("oven":{"kind":"Masonry"})"), {"oven.kind"}},
      {with(R"("oven":{"kind":3})"), {"oven.kind"}},
      {with(R"("oven":{"with_mm":3})"), {"oven.with_mm"}},
      {with(R"("oven":[])"), {"oven"}},
      {with(R"("oven":null)"), {"oven"}},
      {with(R"("trial":null)"), {"trial"}},
      {with(R"("cooks":null)"), {"cooks"}},
      {with(R"("cooks":[])"), {"cooks"}},
      {with(R"("cooks":{"name":"A"})"), {"cooks"}},
      {with(R"("cooks":[{},{},{},{},{},{},{},{},{},{},{},{},{}])"), {"cooks"}},
      {with(R"("cooks":[1])"), {"cooks.0"}},
      {with(R"("cooks":[{"name":"A"},{"name":"A"}])"), {"cooks.1.name"}},
      {with(R"("cooks":[{"at":null}])"), {"cooks.0.at"}},
      {with(R"("cooks":[{"seated":0}])"), {"cooks.0.seated"}},
      {with(R"("cooks":[{"name":"a\u0007b"}])"), {"cooks.0.name"}},
      {with(R"("cooks":[{"name":"a\u202eb"}])"), {"cooks.0.name"}},
      {with("\"title\":\"a\xC3\""), {"title"}},
      {with("\"title\":\"" + std::string(81, 'x') + "\""), {"title"}},
      {with(R"("title":"\ud800")"), {"title"}},
      {with(R"("title":"a","title":"b")"), {"title"}},
      {with(R"("format":"hearthsight/1")"), {"format"}},
      {with(R"("trial":{"at":{"cook":"Zed"}})"), {"trial.at.cook"}},
      {with(
           R"("station":{"arrangement":"one_level","counter_height_mm":900,"oven_base_height_mm":901})"),
       {"station.counter_height_mm", "station.oven_base_height_mm"}},
      {with(R"("weights":{"worst_off":1.01})"), {"weights.worst_off"}},
  };
  for (const Bad& bad : cases) {
    CAPTURE(bad.json);
    const auto config = read_config(bad.json);
    REQUIRE_FALSE(config.has_value());
    CHECK(paths(config.error()) == bad.paths);
    for (const Problem& problem : config.error()) {
      CHECK(is_printable(sentence(problem)));
      CHECK_FALSE(problem.allowed.empty());
    }
  }
}

TEST_CASE("all faults of a file are reported at once, in its order", "[config][read]") {
  const auto config = read_config(with(R"("cooks":[{"stature_mm":3000,"hair":1},{"share":"all"}],
      "oven":{"widht_mm":1,"mass_kg":0},"view":7,"station":{"arrangement":"one_level",
      "counter_height_mm":900,"oven_base_height_mm":1000})"));
  REQUIRE_FALSE(config.has_value());
  CHECK(paths(config.error()) ==
        std::vector<std::string>{"cooks.0.stature_mm", "cooks.0.hair", "cooks.1.share",
                                 "oven.widht_mm", "oven.mass_kg", "view",
                                 "station.counter_height_mm", "station.oven_base_height_mm"});
}

TEST_CASE("a message names the value, the range and the unit", "[config][read]") {
  const auto message = [](const std::string& members) {
    return sentence(read_config(with(members)).error().at(0));
  };
  CHECK(message(R"("cooks":[{},{"stature_mm":3000}])") ==
        "cooks.1.stature_mm: 3000 mm is not allowed; give 800 to 2300 mm");
  CHECK(message(R"("oven":{"floor_temp_c":700})") ==
        "oven.floor_temp_c: 700 degrees Celsius is not allowed; give 0 to 600 degrees Celsius");
  CHECK(message(R"("station":{"aisle_mm":-1})") ==
        "station.aisle_mm: -1 mm is not allowed; give 0 to 20000 mm, or leave it out");
  CHECK(message(R"("oven":{"widht_mm":3})") ==
        "oven.widht_mm: an unknown key is not allowed; give one of the known keys; did you mean "
        "oven.width_mm?");
  CHECK(message(R"("mouth_height_mm":3)").find("did you mean oven.mouth_height_mm?") !=
        std::string::npos);
  CHECK(message(R"("ovn":{})").find("did you mean oven?") != std::string::npos);
}

TEST_CASE("a refused value is never echoed whole", "[config][read]") {
  const std::string long_text(5000, 'z');
  for (const std::string& json :
       {with("\"title\":\"" + long_text + "\""), with("\"" + long_text + "\":1"),
        with("\"oven\":{\"kind\":\"" + long_text + "\"}"), with("\"view\":" + long_text),
        with("\"oven\":{\"width_mm\":1" + std::string(400, '0') + ".5}"),
        std::string(R"({"format":")") + long_text + "\"}"}) {
    const auto config = read_config(json);
    REQUIRE_FALSE(config.has_value());
    for (const Problem& problem : config.error()) {
      CHECK(problem.given.size() <= 100);
      CHECK(sentence(problem).size() <= 400);
    }
  }
}

TEST_CASE("hostile sizes are one clear refusal", "[config][read]") {
  const auto one = [](const std::string& json) {
    const auto config = read_config(json);
    REQUIRE_FALSE(config.has_value());
    return config.error();
  };
  const auto large = one(std::string(10'000'000, ' '));
  REQUIRE(large.size() == 1);
  CHECK(large[0].given == "more than 1000000 bytes of input");
  CHECK(one(std::string(200'000, '[')).size() == 1);
  CHECK(one(std::string(100'000, '[') + std::string(100'000, ']')).size() == 1);
  std::string numbers = "[0";
  for (int i = 0; i < 400'000; ++i) numbers += ",0";
  CHECK(one(numbers + "]").size() == 1);
  std::string cooks = "{}";
  for (int i = 1; i < 500; ++i) cooks += ",{}";
  const auto many = one(with("\"cooks\":[" + cooks + "]"));
  REQUIRE(many.size() == 1);
  CHECK(sentence(many[0]) == "cooks: 500 cooks is not allowed; give a list of 1 to 12 cooks");
  std::string keys = "\"k\":0";
  for (int i = 0; i < 5000; ++i) keys += ",\"k" + std::to_string(i) + "\":0";
  const auto unknown = one(with(keys));
  CHECK(unknown.size() == 51);
  CHECK(sentence(unknown.back()) == "and 4951 more problems");
}

TEST_CASE("sixteen levels are read and a seventeenth is refused", "[config][json]") {
  const auto nested = [](int levels) {
    return std::string(static_cast<std::size_t>(levels), '[') +
           std::string(static_cast<std::size_t>(levels), ']');
  };
  CHECK(parse_json(nested(kDeepestJson)).complete);
  CHECK_FALSE(parse_json(nested(kDeepestJson + 1)).complete);
}
