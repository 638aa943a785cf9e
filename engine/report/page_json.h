#pragma once
// Everything the page's document shows, as text in one person's units: the page only prints it.
//
// {"units", "headlines": [{id, label, value, band, note, why, verdict}], "live",
//  "cooks": [{name, line, verdict}], "worst": {text, verdict, rule}, "feet_line",
//  "sections": [{id, title, intro, "tables": [{caption, columns, rows}],
//                "items": [{id, verdict, title, sentence, why}]}],
//  "drawings": [{name, title, caption, section}],
//  "why": {"<rule id>": {title, words, "inputs": [{label, value, field?}], source, clause, basis,
//                        caution?}}}

#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

std::string page_json(const config::Config& config, const evaluate::Evaluation& evaluation,
                      Units units);

}  // namespace hs::report
