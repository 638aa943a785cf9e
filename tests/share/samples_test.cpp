// Links and field rows as they were first published. A sample is never deleted or changed: links
// are all that people have of their stations. New samples and rows are added below the old ones.
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/schema.h"
#include "engine/share/link.h"
#include "tests/support/read_config.h"

using namespace hs;

namespace {

std::string file(const std::string& name) {
  std::ifstream in(std::string(HEARTHSIGHT_SOURCE_DIR) + "/tests/share/samples/" + name,
                   std::ios::binary);
  REQUIRE(in.good());
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

// What a link's meaning hangs on. Choices may grow at their end.
std::string frozen(const config::Field& field) {
  std::ostringstream out;
  const config::Value usual = config::default_value(field);
  out << field.tag << ' ' << field.path << ' ' << config::quantity_name(field.quantity) << ' '
      << trimmed(field.min, 2) << ' ' << trimmed(field.max, 2) << ' ';
  if (const auto* number = std::get_if<double>(&usual)) out << trimmed(*number, 2);
  if (const auto* flag = std::get_if<bool>(&usual)) out << (*flag ? "true" : "false");
  if (const auto* choice = std::get_if<config::ChoiceIndex>(&usual))
    out << field.choices[choice->index];
  if (std::holds_alternative<std::monostate>(usual)) out << "none";
  if (std::holds_alternative<std::string>(usual)) out << "text";
  for (const std::string_view choice : field.choices) out << ' ' << choice;
  return out.str();
}

}  // namespace

TEST_CASE("published links mean what they meant", "[share][golden]") {
  for (const char* name :
       {"default", "household", "fullest", "scripts", "words", "twelve", "survey"}) {
    CAPTURE(name);
    std::string link = file(std::string(name) + ".link");
    link.resize(link.find_last_not_of('\n') + 1);
    const auto meant = test::read_config(file(std::string(name) + ".json"));
    REQUIRE(meant.has_value());
    const auto config = share::from_link(link);
    REQUIRE(config.has_value());
    CHECK(config::config_json(*config) == config::config_json(*meant));
    CHECK(share::to_link(*meant) == link);
  }
}

TEST_CASE("the demo household's link fits in 130 characters", "[share][golden][size]") {
  std::string link = file("household.link");
  link.resize(link.find_last_not_of('\n') + 1);
  CHECK(link.size() <= 130);
}

TEST_CASE("no field's tag, range, default or order of words has moved", "[share][golden]") {
  std::map<int, std::string> published;
  std::istringstream lines(file("rows.txt"));
  for (std::string line; std::getline(lines, line);) published[std::stoi(line)] = line;
  for (const config::Field& field : config::fields()) {
    const std::string row = frozen(field);
    INFO("a new field's row belongs into tests/share/samples/rows.txt: " << row);
    REQUIRE(published.count(field.tag) == 1);
    const std::string& before = published[field.tag];
    CHECK(row.substr(0, before.size()) == before);
    CHECK((row.size() == before.size() || row[before.size()] == ' '));
    published.erase(field.tag);
  }
  // A field that is dropped leaves its row, and with it its tag, behind: see
  // engine/config/migrate.h.
  CHECK(published.empty());
}
