#pragma once
// A document as a PDF: pages of its paper with margins that every printer keeps, each with its
// part's name and its number; tables go on over pages with their head again; drawings at a scale of
// a ruler, which stands under them.

#include <cstddef>
#include <string>

#include "engine/report/document.h"

namespace hs::report {

// The same document gives the same bytes. `lost`, if given: how many letters the typeface has not.
std::string document_pdf(const Document& document, std::size_t* lost = nullptr);

}  // namespace hs::report
