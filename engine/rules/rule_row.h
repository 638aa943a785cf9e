#pragma once
// How a rule is written down: one row with all its texts. Read when compiled and never linked;
// engine/rules/rules.cpp takes it apart into what judges, what says so and what explains.

#include <string_view>

#include "engine/rules/rules.h"

namespace hs::rules {

// Members as in Rule and RuleWords.
struct RuleRow {
  std::string_view id, title;
  Unit unit;
  Harm harm;
  std::string_view measures, against, source, clause;
  Basis basis;
  std::string_view words, ok, warn, fail, unknown, inputs;
  bool finding = true;

  constexpr Rule rule() const { return {id, title, unit, harm, source, clause, basis, finding}; }
  constexpr Sentences sentences() const { return {ok, warn, fail, unknown}; }
  constexpr RuleWords explanation() const {
    return {measures, against, words, inputs, {}, {}, {}, {}};
  }
  constexpr RuleWords late_explanation() const {
    return {measures, against, words, inputs, ok, warn, fail, unknown};
  }
};

}  // namespace hs::rules
