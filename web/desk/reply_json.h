#pragma once
// What a link that came back asks a household, and what it says to that, for the page's script.

#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/report/summary.h"

namespace hs::web {

// "null" where `theirs` is no reply to `ours` (share::is_reply). Else
// {"questions": [{"kind": "new"|"cook"|"station"|"ground", "name", "rows": [{"label", "here",
// "there"}]}], "stay": [names that are only here]}, the questions in the order of
// share::differences(). `here` is empty for a new cook.
std::string reply_json(const config::Config& ours, const config::Config& theirs,
                       report::Units units);

// share::merged() with what was said in letters, one for each question: 'o' ours, 't' theirs, 'b'
// both; anything else is ours.
Result<config::Config> merged_by_letters(const config::Config& ours, const config::Config& theirs,
                                         std::string_view said);

}  // namespace hs::web
