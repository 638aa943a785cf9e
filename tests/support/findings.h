#pragma once
// What an evaluation found, asked for by the rule's id.

#include <cstddef>
#include <string_view>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"

namespace hs::test {

// The first finding of a rule, at one place where one is named; nullptr: there is none. It lives as
// long as the evaluation.
inline const Finding* found(const evaluate::Evaluation& e, std::string_view rule,
                            std::string_view where = {}) {
  for (const Finding& finding : e.findings) {
    if (finding.rule == rule && (where.empty() || finding.where == where)) return &finding;
  }
  return nullptr;
}

// The first that is about this cook, or about nobody alone.
inline const Finding* found_for(std::size_t cook, const evaluate::Evaluation& e,
                                std::string_view rule) {
  for (const Finding& finding : e.findings) {
    if (finding.rule == rule && finding.cook.value_or(cook) == cook) return &finding;
  }
  return nullptr;
}

// The verdict of the first; the test fails where the rule found nothing.
inline Verdict verdict(const evaluate::Evaluation& e, std::string_view rule,
                       std::string_view where = {}) {
  CAPTURE(rule, where);
  const Finding* finding = found(e, rule, where);
  REQUIRE(finding != nullptr);
  return finding->verdict;
}

}  // namespace hs::test
