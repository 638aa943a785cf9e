#pragma once
// A document as one HTML file to print: page rules for its paper, drawings at the scale that they
// claim, tables with their head on every page. It runs no script and fetches nothing.

#include <string>

#include "engine/report/document.h"

namespace hs::report {

// The same document gives the same bytes.
std::string document_html(const Document& document);

}  // namespace hs::report
