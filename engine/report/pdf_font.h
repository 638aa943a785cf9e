#pragma once
// The letters of a PDF file and how wide they are: Helvetica and Helvetica Bold, which every reader
// of PDF brings along, so that the file carries no typeface.
//
// Letters are bytes of WinAnsiEncoding (ISO 32000-1, annex D). Binary fractions are written out as
// "35 1/2", because the encoding has no eighths; other letters of Latin alphabets lose their mark
// rather than the whole letter; what is left is '?', and is counted.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace hs::report {

enum class PdfFont : std::uint8_t { Plain, Bold };

// UTF-8 to letters. Control characters become spaces. `lost`: grows by how many became '?'.
std::string pdf_letters(std::string_view utf8, std::size_t* lost = nullptr);

// How wide letters (not UTF-8) are at this size, mm. Widths: Adobe's metrics of the standard 14
// typefaces (from memory; a test compares every one with another program's).
double pdf_width_mm(std::string_view letters, PdfFont font, double size_mm);

// Letters broken at spaces into lines of this width; a word that is wider is broken too. No line
// for no letters.
std::vector<std::string> pdf_lines(std::string_view letters, PdfFont font, double size_mm,
                                   double width_mm);

}  // namespace hs::report
