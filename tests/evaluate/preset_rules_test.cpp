// Heat and light rules against the presets: each verdict a rule can give is shown by a station that
// anyone can open.
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/rules/rules.h"

using namespace hs;

namespace {

std::string file(const std::string& name) {
  std::ifstream in(std::string(HEARTHSIGHT_SOURCE_DIR) + "/presets/" + name + ".json",
                   std::ios::binary);
  REQUIRE(in.good());
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

TEST_CASE("every verdict of a heat or light rule is shown by a preset", "[evaluate][heat][light]") {
  std::map<std::string_view, std::set<Verdict>> shown;
  for (const char* name : {"demo", "stations/four_cooks", "stations/evening_lamp",
                           "stations/brick_oven_too_close", "stations/prep_only"}) {
    const auto config = evaluate::read(file(name));
    REQUIRE(config.has_value());
    for (const Finding& finding : evaluate::evaluate(*config).findings) {
      shown[finding.rule].insert(finding.verdict);
    }
  }
  for (const rules::Rule& rule : rules::rules()) {
    const auto module = rules::module_of(rule);
    if (!rule.finding || (module != "heat" && module != "light")) continue;
    CAPTURE(rule.id);
    const std::set<Verdict>& told = shown[rule.id];
    CHECK_FALSE(told.empty());
    if (!rule.ok.empty()) CHECK(told.count(Verdict::Ok) == 1);
    // Broken by one of them, whichever way it can be broken.
    if (!rule.fail.empty() || !rule.warn.empty()) {
      CHECK(told.count(Verdict::Fail) + told.count(Verdict::Warn) >= 1);
    }
  }
}
