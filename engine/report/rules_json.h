#pragma once
// The whole registry as JSON: every rule with its fields, every source, every caution.

#include <string>
#include <string_view>

namespace hs::report {

// {"format": "hearthsight-rules/1", "rules": [...], "sources": [...], "cautions": [...]}, with a
// line break at the end.
std::string rules_json();

// "NFPA. NFPA 58, Liquefied Petroleum Gas Code, 2017": how a source is named beside a number; empty
// for an unknown id.
std::string citation(std::string_view source_id);

}  // namespace hs::report
