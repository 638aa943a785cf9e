#include "engine/report/rules_json.h"

#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"
#include "engine/rules/sources.h"

using namespace hs;
using nlohmann::json;

TEST_CASE("the registry is whole as JSON", "[report][rules]") {
  const json all = json::parse(report::rules_json());
  CHECK(all.at("format") == "hearthsight-rules/1");
  CHECK(all.at("rules").size() == rules::rules().size());
  CHECK(all.at("sources").size() == rules::sources().size());
  CHECK(all.at("cautions").size() == rules::cautions().size());
  std::set<std::string> sources;
  for (const json& source : all.at("sources")) {
    sources.insert(source.at("id").get<std::string>());
    CHECK_FALSE(source.at("citation").get<std::string>().empty());
  }
  const std::set<std::string> bases{"seen",     "second_hand", "memory", "common_practice",
                                    "computed", "judgement"};
  for (const char* list : {"rules", "cautions"}) {
    for (const json& row : all.at(list)) {
      CAPTURE(row.at("id"));
      CHECK(sources.count(row.at("source").get<std::string>()) == 1);
      CHECK(bases.count(row.at("basis").get<std::string>()) == 1);
    }
  }
}

TEST_CASE("a rule lists the fields that it reads", "[report][rules]") {
  const json all = json::parse(report::rules_json());
  for (const json& rule : all.at("rules")) {
    if (rule.at("id") != "clearance.back") continue;
    const json expected{"oven.depth_mm",       "oven.listed_clearance.back_mm",
                        "station.back_gap_mm", "site.local_clearance.back_mm",
                        "oven.listed",         "station.back_combustible"};
    const auto as_set = [](const json& list) {
      return std::set<std::string>(list.begin(), list.end());
    };
    CHECK(as_set(rule.at("fields")) == as_set(expected));
  }
}

TEST_CASE("a source is cited by body, title and edition", "[report][rules]") {
  CHECK(report::citation("nfpa58") == "NFPA. NFPA 58, Liquefied Petroleum Gas Code, 2017");
  CHECK(report::citation("ada2010") ==
        "US Department of Justice. ADA Standards for Accessible Design, 2010");
  CHECK(report::citation("no such source").empty());
}
