// Rules of heat, light, clearances, room and weather against the presets: each verdict a rule can
// give is shown by a station that anyone can open, or by one of them with a field changed.
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/rules/rules.h"
#include "tests/report/preset.h"

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

TEST_CASE("every verdict of a rule of what keeps people whole is shown by a preset",
          "[evaluate][heat][light][clearance][weather]") {
  std::map<std::string_view, std::set<Verdict>> shown;
  for (const char* name :
       {"demo", "stations/four_cooks", "stations/evening_lamp", "stations/brick_oven_too_close",
        "stations/prep_only", "stations/open_courtyard", "stations/crowded_porch",
        "stations/seated_cook", "stations/garden_shelter", "stations/settled_yard"}) {
    const auto config = evaluate::read(file(name));
    REQUIRE(config.has_value());
    const auto show = [&shown](const config::Config& one) {
      for (const Finding& finding : evaluate::evaluate(one).findings) {
        shown[finding.rule].insert(finding.verdict);
      }
    };
    show(*config);
    if (std::string_view(name) != "stations/settled_yard") continue;
    // Taller boards suit this ground, but not at every height of the base; and a stone within it.
    config::Config changed = *config;
    changed.survey.board_mm = 184;
    config::SurveyPoint stone = changed.survey.points.back();
    stone.x_mm = 1400;
    stone.y_mm = 400;
    *stone.reading_mm -= 40;
    changed.survey.points.push_back(stone);
    for (const double base_mm : {60, 150, 240}) {
      changed.survey.base_mm = base_mm;
      show(changed);
    }
  }
  for (const rules::Rule& rule : rules::rules()) {
    const auto module = rules::module_of(rule);
    const std::set<std::string_view> judged{"heat", "light",   "clearance",
                                            "room", "weather", "survey"};
    if (!rule.finding || judged.count(module) == 0) continue;
    CAPTURE(rule.id);
    const std::set<Verdict>& told = shown[rule.id];
    CHECK_FALSE(told.empty());
    const rules::Sentences says = rules::sentences_of(rule);
    if (!says.ok.empty()) CHECK(told.count(Verdict::Ok) == 1);
    // Broken by one of them, whichever way it can be broken.
    if (!says.fail.empty() || !says.warn.empty()) {
      CHECK(told.count(Verdict::Fail) + told.count(Verdict::Warn) >= 1);
    }
  }
}

TEST_CASE("the example shows each verdict, and every preset hears of heat, light, room and weather",
          "[evaluate][heat][light][clearance][weather]") {
  for (const char* name : test::kPresets) {
    const auto config = evaluate::read(file(name));
    REQUIRE(config.has_value());
    std::set<Verdict> verdicts;
    std::set<std::string_view> modules;
    for (const Finding& finding : evaluate::evaluate(*config).findings) {
      verdicts.insert(finding.verdict);
      modules.insert(finding.rule.substr(0, finding.rule.find('.')));
    }
    CAPTURE(name);
    for (const char* module : {"heat", "light", "clearance", "weather"}) {
      CAPTURE(module);
      CHECK(modules.count(module) == 1);
    }
    if (std::string_view(name) == "demo") CHECK(verdicts.size() == 4);
  }
}
