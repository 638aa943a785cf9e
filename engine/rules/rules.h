#pragma once
// Every rule that the engine judges by or explains a number with: one row each, with its words,
// its source and the sentences that a finding turns into.
//
// A Finding names its rule by id and carries numbers only. What `measured` and `limit` are is said
// by `measures` and `against` of its RuleWords; both are in the row's unit. The sentences are
// templates:
//   {cook} {measured} {limit} {margin}   the finding's own; margin without its sign
//   {where}                              the finding's place
//   [ ... ]                              left out when a placeholder inside it has no value
//   a | b                                the first alternative whose placeholders all have values
// and the further placeholders listed in engine/report/sentence.cpp.

#include <cstdint>
#include <span>
#include <string_view>

#include "engine/rules/sources.h"

namespace hs::rules {

enum class Unit : std::uint8_t {
  None,      // yes or no; measured and limit stay empty
  Length,    // mm
  Distance,  // mm, a place to stand: told to the whole inch or 10 mm
  Angle,     // degrees
  Share,     // 0..1
  HeatFlux,  // kW/m2
  Lux,       // lx
  Factor,    // so many times
  Mass,      // kg
};

constexpr std::string_view unit_name(Unit u) {
  switch (u) {
    case Unit::None:
      return "";
    case Unit::Length:
    case Unit::Distance:
      return "mm";
    case Unit::Angle:
      return "degree";
    case Unit::Share:
      return "share";
    case Unit::HeatFlux:
      return "kW/m2";
    case Unit::Lux:
      return "lx";
    case Unit::Factor:
      return "times";
    case Unit::Mass:
      return "kg";
  }
  return "";
}

// What goes wrong when the rule is broken, worst first: the order of findings of equal verdict.
enum class Harm : std::uint8_t { Fire, Burn, Fall, Strain, Sight, Nuisance, Note };

struct Rule {
  std::string_view id;     // "height.hand_ceiling"; before the dot: its module
  std::string_view title;  // plain, a few words
  Unit unit;
  Harm harm;
  std::string_view source;  // id of a Source
  std::string_view clause;  // clause, table or chapter; may be empty
  Basis basis;              // of this figure
  bool finding = true;      // false: explains a number, is never a finding
};

// Templates of a finding's sentence, by verdict. Kept apart: those of what is built and made come
// with the part of a program that finds it.
struct Sentences {
  std::string_view ok, warn, fail;  // empty: this verdict is never given
  std::string_view unknown;         // empty: "<title>: not known."
};

// What only an explanation prints. Kept apart, so that a program that explains nothing need not
// carry it.
struct RuleWords {
  std::string_view measures;  // what `measured` is; empty: nothing
  std::string_view against;   // what `limit` is; empty: nothing
  std::string_view words;     // the formula or the rule, in words
  std::string_view inputs;    // rule ids whose fields it reads; "": its own id; "-": reads no field
  // The sentences of what is built and made (sentences_of() has them).
  std::string_view ok, warn, fail, unknown;
};

constexpr std::string_view module_of(const Rule& rule) {
  return rule.id.substr(0, rule.id.find('.'));
}

// Every rule, by module. Ids are unique and every source id resolves (checked when compiled).
std::span<const Rule> rules();

// `rule` is one of rules().
const RuleWords& words_of(const Rule& rule);

// The same.
Sentences sentences_of(const Rule& rule);

// nullptr when there is none. About 0.3 us.
const Rule* find_rule(std::string_view id);

// True when a field's `rules` column (space-separated ids) makes it an input of this rule.
bool reads(const Rule& rule, std::string_view field_rules);

}  // namespace hs::rules
