#pragma once
// What a report names: findings by an id of their own, and the sources behind everything it says.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/rules/cautions.h"
#include "engine/rules/sources.h"

namespace hs::report {

// The rule's id; where several findings share a rule, what tells them apart joins it:
// "clearance.side.left", "sight.pizza_share.2" (the second cook).
std::string finding_id(const Finding& finding, const std::vector<Finding>& all);

// Whether a fuel is among those that a caution is for. Pellets burn as wood does, and their feed
// and fan need power; gas ovens may spark by battery and are not counted as powered.
bool applies(const rules::Caution& caution, config::Fuel fuel);

// The rule whose source a figure for free room rests on; empty: a local rule, or nobody has said.
std::string_view clear_rule(clearance::Hot hot, const clearance::Need& need);

// Who asks for it, in a few words: "the oven's manual", "a local rule", "nobody yet".
std::string_view clear_asker(clearance::Hot hot, clearance::From from);

// One source as it is cited: the clauses of all rules that cite it, and the weakest that any of
// their figures is known.
struct Cited {
  std::string_view source;
  std::string clauses;  // apart by "; "
  rules::Basis basis = rules::Basis::Seen;
};

// Every source behind the findings, the recommendation and the cautions for this fuel, in the order
// in which they are first met.
std::vector<Cited> cited_sources(const config::Config& config,
                                 const evaluate::Evaluation& evaluation);

}  // namespace hs::report
