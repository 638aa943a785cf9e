#pragma once
// The whole report as one document to keep, send and print: the heights, the safety sheet, the
// drawings, every finding with its source, what was given, cautions where their numbers stand, and
// the sources at the end. Reads on a phone, prints on A4 and Letter, runs no script and fetches
// nothing.

#include <string>
#include <string_view>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

// `style` is markup for the head, as for html_document(). The same input gives the same bytes.
std::string report_html(const config::Config& config, const evaluate::Evaluation& evaluation,
                        Units units, std::string_view style);

}  // namespace hs::report
