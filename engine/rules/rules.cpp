#include "engine/rules/rules.h"

#include <array>
#include <cstddef>
#include <iterator>

#include "engine/base/packed_table.h"
#include "engine/rules/rows_clearance.h"
#include "engine/rules/rows_cook.h"
#include "engine/rules/rows_frame.h"
#include "engine/rules/rows_heat.h"
#include "engine/rules/rows_height.h"
#include "engine/rules/rows_light.h"
#include "engine/rules/rows_loads.h"
#include "engine/rules/rows_packet.h"
#include "engine/rules/rows_reach.h"
#include "engine/rules/rows_room.h"
#include "engine/rules/rows_sight.h"
#include "engine/rules/rows_surroundings.h"
#include "engine/rules/rows_survey.h"
#include "engine/rules/rows_weather.h"
#include "engine/rules/source_rows.h"

namespace hs::rules {
namespace {

constexpr std::span<const RuleRow> kParts[] = {
    kSightRows,  kHeightRows, kCookRows,         kReachRows, kClearanceRows,
    kHeatRows,   kLightRows,  kSurroundingsRows, kRoomRows,  kWeatherRows,
    kSurveyRows, kFrameRows,  kLoadsRows,        kPacketRows};
// From here on nothing is found before the ground is read and the cabinets are built.
constexpr std::size_t kLateParts = 10;

constexpr std::size_t count(std::size_t from, std::size_t to) {
  std::size_t sum = 0;
  for (std::size_t i = from; i < to; ++i) sum += kParts[i].size();
  return sum;
}

template <std::size_t From, std::size_t To, typename Part>
constexpr auto each(Part (RuleRow::*part_of)() const) {
  std::array<Part, count(From, To)> all{};
  std::size_t at = 0;
  for (std::size_t i = From; i < To; ++i) {
    for (const RuleRow& row : kParts[i]) all[at++] = (row.*part_of)();
  }
  return all;
}

constexpr std::size_t kAllParts = std::size(kParts);
constexpr std::size_t kEarlyRules = count(0, kLateParts);
constexpr auto kRules = each<0, kAllParts>(&RuleRow::rule);
constexpr auto kEarly = each<0, kLateParts>(&RuleRow::sentences);

constexpr auto all_words() {
  const auto early = each<0, kLateParts>(&RuleRow::explanation);
  const auto late = each<kLateParts, kAllParts>(&RuleRow::late_explanation);
  std::array<RuleWords, kRules.size()> all{};
  for (std::size_t i = 0; i < all.size(); ++i) {
    all[i] = i < kEarlyRules ? early[i] : late[i - kEarlyRules];
  }
  return all;
}
constexpr auto kWords = all_words();

constexpr bool ids_unique() {
  for (std::size_t i = 0; i < kRules.size(); ++i) {
    for (std::size_t j = i + 1; j < kRules.size(); ++j) {
      if (kRules[i].id == kRules[j].id) return false;
    }
  }
  return true;
}
static_assert(ids_unique(), "two rules share an id");

constexpr bool sources_resolve() {
  for (const Rule& rule : kRules) {
    if (!may_cite(rule.source, rule.basis)) return false;
  }
  return true;
}
static_assert(
    sources_resolve(),
    "a rule cites a source that has no row, or claims to be known better than its source");

constexpr bool rows_complete() {
  for (const RuleWords& explanation : kWords) {
    if (explanation.words.empty()) return false;
  }
  for (std::size_t i = 0; i < kRules.size(); ++i) {
    const Rule& rule = kRules[i];
    if (rule.title.empty() || rule.id.find('.') == rule.id.npos) return false;
    const RuleWords& late = kWords[i];
    const Sentences says =
        i < kEarlyRules ? kEarly[i] : Sentences{late.ok, late.warn, late.fail, late.unknown};
    const bool some =
        !says.ok.empty() || !says.warn.empty() || !says.fail.empty() || !says.unknown.empty();
    if (rule.finding && !some) return false;
  }
  return true;
}
static_assert(rows_complete(), "a rule without title, words, module or sentence");

// True when `list` (words apart by single spaces) holds `word`.
constexpr bool holds(std::string_view list, std::string_view word) {
  while (!list.empty()) {
    const std::size_t space = list.find(' ');
    if (list.substr(0, space) == word) return true;
    if (space == std::string_view::npos) return false;
    list.remove_prefix(space + 1);
  }
  return false;
}

using Rules = PackedTable<kRules, &Rule::id, &Rule::title, &Rule::source, &Rule::clause>;
using EarlySentences =
    PackedTable<kEarly, &Sentences::ok, &Sentences::warn, &Sentences::fail, &Sentences::unknown>;
using Words = LaterTable<kWords, &RuleWords::measures, &RuleWords::against, &RuleWords::words,
                         &RuleWords::inputs, &RuleWords::ok, &RuleWords::warn, &RuleWords::fail,
                         &RuleWords::unknown>;

}  // namespace

std::span<const Rule> rules() { return Rules::rows(); }

const RuleWords& words_of(const Rule& rule) {
  return Words::rows()[static_cast<std::size_t>(&rule - rules().data())];
}

Sentences sentences_of(const Rule& rule) {
  const auto index = static_cast<std::size_t>(&rule - rules().data());
  if (index < kEarlyRules) return EarlySentences::rows()[index];
  const RuleWords& late = words_of(rule);
  return {late.ok, late.warn, late.fail, late.unknown};
}

const Rule* find_rule(std::string_view id) {
  for (const Rule& rule : rules()) {
    if (rule.id == id) return &rule;
  }
  return nullptr;
}

bool reads(const Rule& rule, std::string_view field_rules) {
  std::string_view wanted = words_of(rule).inputs;
  if (wanted.empty()) return holds(field_rules, rule.id);
  while (!wanted.empty()) {
    const std::size_t space = wanted.find(' ');
    if (holds(field_rules, wanted.substr(0, space))) return true;
    if (space == std::string_view::npos) return false;
    wanted.remove_prefix(space + 1);
  }
  return false;
}

}  // namespace hs::rules
