#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "engine/report/cited.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"
#include "engine/rules/sources.h"

namespace {

using namespace hs::rules;
using hs::config::Field;
using hs::config::fields;

std::vector<std::string> words_of(std::string_view list) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < list.size()) {
    const std::size_t end = std::min(list.find(' ', at), list.size());
    if (end > at) words.emplace_back(list.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

// Placeholders that engine/report/sentence.cpp fills.
const std::set<std::string> kBlanks{
    "cook",         "measured",    "limit",      "margin",       "where",     "Where",
    "standoff",     "working",     "full_view",  "steps",        "all_of",    "all_of_target",
    "bend",         "counter",     "band",       "table",        "too",       "farther",
    "from_limit",   "likely",      "corrected",  "asks",         "block",     "spare",
    "limit_about",  "unexplained", "seconds",    "flame",        "linger",    "point_high",
    "downhill",     "height",      "above_feet", "above_base",   "above_low", "above_high",
    "feet_missing", "feet_least",  "point_low",  "points_apart", "cylinder",  "hold"};

std::vector<std::string_view> templates_of(const Rule& rule) {
  const Sentences says = sentences_of(rule);
  return {says.ok, says.warn, says.fail, says.unknown};
}

}  // namespace

TEST_CASE("rule and source ids are unique and resolve", "[rules]") {
  std::set<std::string_view> ids;
  for (const Rule& rule : rules()) {
    CAPTURE(rule.id);
    CHECK(ids.insert(rule.id).second);
    CHECK(find_rule(rule.id) == &rule);
    CHECK(find_source(rule.source) != nullptr);
  }
  for (const Source& source : sources()) {
    CAPTURE(source.id);
    CHECK(ids.insert(source.id).second);
    CHECK(find_source(source.id) == &source);
  }
  CHECK(find_rule("height.no_such_rule") == nullptr);
  CHECK(find_source("") == nullptr);
}

TEST_CASE("each rule belongs to a module of the engine", "[rules]") {
  const std::set<std::string_view> modules{"sight",  "height", "cook", "reach", "clearance",
                                           "heat",   "light",  "oven", "room",  "weather",
                                           "survey", "frame",  "load", "cuts",  "metal",
                                           "power",  "finish", "plan", "money"};
  for (const Rule& rule : rules()) CHECK(modules.count(module_of(rule)) == 1);
}

TEST_CASE("every rule that a field names exists", "[rules][config]") {
  for (const Field& field : fields()) {
    for (const std::string& id : words_of(hs::config::help_of(field).rules)) {
      CAPTURE(field.path, id);
      CHECK(find_rule(id) != nullptr);
    }
  }
}

TEST_CASE("every rule reads a field, unless it says that it reads none", "[rules][config]") {
  for (const Rule& rule : rules()) {
    CAPTURE(rule.id);
    int read = 0;
    for (const Field& field : fields())
      read += reads(rule, hs::config::help_of(field).rules) ? 1 : 0;
    CHECK((read > 0) == (hs::rules::words_of(rule).inputs != "-"));
    for (const std::string& id : words_of(hs::rules::words_of(rule).inputs)) {
      if (id == "-") continue;
      bool named = false;
      for (const Field& field : fields()) {
        const auto ids = words_of(hs::config::help_of(field).rules);
        named |= std::find(ids.begin(), ids.end(), id) != ids.end();
      }
      CAPTURE(id);
      CHECK(named);
    }
  }
}

TEST_CASE("a field is an input by its whole id, not by a part of it", "[rules]") {
  const Rule& side = *find_rule("clearance.side");
  CHECK(reads(side, "clearance.side"));
  CHECK(reads(side, "reach.aisle clearance.side"));
  CHECK_FALSE(reads(side, "clearance.sideways"));
  CHECK_FALSE(reads(side, ""));
}

TEST_CASE("sentences use only placeholders that are filled, and end as sentences", "[rules]") {
  for (const Rule& rule : rules()) {
    for (const std::string_view text : templates_of(rule)) {
      CAPTURE(rule.id, text);
      int open = 0;
      for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '[') CHECK(++open == 1);
        if (c == ']') CHECK(--open == 0);
        if (c == '|') CHECK(text[at - 1] == '.');
        if (c != '{') continue;
        const std::size_t end = text.find('}', at);
        REQUIRE(end != std::string_view::npos);
        const std::string name(text.substr(at + 1, end - at - 1));
        CAPTURE(name);
        CHECK(kBlanks.count(name) == 1);
        // Numbers that the row says nothing about are never filled.
        if (name == "measured") CHECK_FALSE(hs::rules::words_of(rule).measures.empty());
        if (name == "limit") CHECK_FALSE(hs::rules::words_of(rule).against.empty());
      }
      CHECK(open == 0);
      if (!text.empty()) CHECK(text.back() == '.');
    }
    CHECK(hs::rules::words_of(rule).words.back() == '.');
    CHECK(rule.title.back() != '.');
  }
}

TEST_CASE("what burns or sets fire is told before what is only a nuisance", "[rules]") {
  CHECK(find_rule("clearance.side")->harm == Harm::Fire);
  CHECK(find_rule("height.hand_ceiling")->harm == Harm::Burn);
  CHECK(Harm::Fire < Harm::Burn);
  CHECK(Harm::Burn < Harm::Sight);
  CHECK(find_rule("sight.pizza_share")->harm < find_rule("reach.prep_area")->harm);
}

TEST_CASE("published limits keep their clause and how they are known", "[rules][source]") {
  struct Row {
    std::string_view rule, source, clause;
    Basis basis;
  };
  const Row rows[] = {
      {"reach.knee_room", "ada2010", "306.3", Basis::Seen},
      {"reach.seated_reach", "ada2010", "308.2.2", Basis::Seen},
      {"reach.seated_counter", "ada2010", "902.3", Basis::Seen},
      {"cook.child_table", "ada2010", "902.4.2", Basis::Seen},
      {"reach.prep_area", "us_kitchen", "guideline 12", Basis::Seen},
      {"reach.landing", "us_kitchen", "guideline 23", Basis::Seen},
      {"reach.aisle", "us_kitchen", "work aisle", Basis::SecondHand},
      {"sight.gaze", "en1005_4", "line of sight", Basis::SecondHand},
      {"sight.stoop", "iso11226", "trunk inclination", Basis::SecondHand},
      {"sight.edge_on", "judgement", "", Basis::Judgement},
      {"height.kitchen_counter", "common_practice", "", Basis::CommonPractice},
  };
  for (const Row& row : rows) {
    const Rule* rule = find_rule(row.rule);
    CAPTURE(row.rule);
    REQUIRE(rule != nullptr);
    CHECK(rule->source == row.source);
    CHECK(rule->clause == row.clause);
    CHECK(rule->basis == row.basis);
  }
}

TEST_CASE("every fuel gets the cautions that belong to it", "[rules][caution]") {
  using hs::config::Fuel;
  const auto told = [](Fuel fuel) {
    std::set<std::string> ids;
    for (const Caution& caution : cautions()) {
      if (hs::report::applies(caution, fuel)) ids.emplace(caution.id);
    }
    return ids;
  };
  const Fuel all[] = {Fuel::Gas,    Fuel::Wood,     Fuel::GasAndWood,
                      Fuel::Pellet, Fuel::Charcoal, Fuel::Electric};
  for (const Fuel fuel : all) {
    const auto ids = told(fuel);
    for (const char* always : {"caution.manual_first", "caution.cover", "caution.child_free_zone",
                               "caution.burns", "caution.extinguisher", "caution.tipping"}) {
      CAPTURE(static_cast<int>(fuel), always);
      CHECK(ids.count(always) == 1);
    }
    const bool gas = fuel == Fuel::Gas || fuel == Fuel::GasAndWood;
    const bool solid = fuel != Fuel::Gas && fuel != Fuel::Electric;
    const bool electric = fuel == Fuel::Electric || fuel == Fuel::Pellet;
    for (const char* of_gas : {"caution.leak_test", "caution.relight", "caution.lp_cylinder",
                               "caution.lp_cylinder_fire_feature"}) {
      CHECK(ids.count(of_gas) == (gas ? 1U : 0U));
    }
    CHECK(ids.count("caution.ash") == (solid ? 1U : 0U));
    CHECK(ids.count("caution.carbon_monoxide") == (gas || solid ? 1U : 0U));
    CHECK(ids.count("caution.power") == (electric ? 1U : 0U));
  }
}

TEST_CASE("a length in a caution stands in both units", "[rules][caution]") {
  for (const Caution& caution : cautions()) {
    CAPTURE(caution.id);
    const bool feet = caution.text.find(" ft") != std::string_view::npos;
    CHECK(feet == (caution.text.find(" m)") != std::string_view::npos));
  }
}
