#pragma once
// The field table as the page's forms read it: each row with its present values in the person's
// own units.

#include <string>

#include "engine/config/config.h"
#include "engine/report/summary.h"

namespace hs::web {

// {"fields": [{path, label, question, measure, kind, unit, absent, min, max, step, choices,
// values, usual}]} kind: "length", "choice", ... min, max, step in the field's own unit (mm), null
// for what is no number; choices: {value, label}; values: one for the station or one for each cook,
// the text of a form's input without its unit, null where nobody has said; usual: for each cook
// what an absent choice means, in words, empty where it means that nobody has said.
std::string page_fields_json(const config::Config& config, report::Units units);

}  // namespace hs::web
