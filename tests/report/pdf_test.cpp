// The PDF writer: what other programs read from it is tests/cli/packet.test.mjs.
#include "engine/report/pdf.h"

#include <array>

#include "catch_amalgamated.hpp"
#include "engine/report/pdf_document.h"
#include "engine/report/pdf_packed.h"
#include "tests/support/random.h"
#include "tests/support/unpacked.h"

using namespace hs;
using namespace hs::report;

TEST_CASE("packed bytes come back by a reader of RFC 1951's own words", "[pdf]") {
  for (const std::string& text : {std::string(), std::string("a"), std::string(1000, 'x'),
                                  std::string("1 0 0 RG 10.5 20 m 10.5 21 l S\n")}) {
    CHECK(test::Unpacker(pdf_packed(text)).all() == text);
  }
  test::Random random(7);
  for (const int letters : {2, 12, 256}) {
    std::string text;
    for (int i = 0; i < 80000; ++i) text += static_cast<char>(random.below(letters));
    CHECK(test::Unpacker(pdf_packed(text)).all() == text);
  }
}

TEST_CASE("fractions and degrees come out as letters of the typeface", "[pdf]") {
  std::size_t lost = 0;
  CHECK(pdf_letters("35\u00BD in", &lost) == "35 1/2 in");
  CHECK(pdf_letters("41\u00B3\u2044\u2081\u2086 in", &lost) == "41 3/16 in");
  CHECK(pdf_letters("\u215E", &lost) == "7/8");
  // WinAnsiEncoding: degree is octal 260, plus-minus 261, multiply 327 (ISO 32000-1, annex D.2).
  CHECK(pdf_letters("34\u00B0 \u00B1 2 \u00D7", &lost) == "34\260 \261 2 \327");
  CHECK(pdf_letters("\u2212\u00BC", &lost) == "-1/4");
  CHECK(pdf_letters("\u0141ukasz \u017D\u2014", &lost) == "Lukasz \216\227");
  CHECK(lost == 0);
  CHECK(pdf_letters("\u0410\u043D\u043D\u0430", &lost) == "????");
  CHECK(lost == 4);
}

TEST_CASE("lines are no wider than asked for, and lose no word", "[pdf]") {
  const std::string text = pdf_letters(
      "Length runs with the grain. Measure the sheets before the first cut: "
      "averyveryverylongwordthatfitsnoline indeed");
  for (const double width : {20.0, 33.0, 80.0, 200.0}) {
    std::string joined;
    for (const std::string& line : pdf_lines(text, PdfFont::Plain, 3.5, width)) {
      CHECK(pdf_width_mm(line, PdfFont::Plain, 3.5) <= width);
      joined += line;
    }
    std::string without;
    for (const char c : text) without += c == ' ' ? "" : std::string(1, c);
    std::string plain;
    for (const char c : joined) plain += c == ' ' ? "" : std::string(1, c);
    CHECK(plain == without);
  }
  CHECK(pdf_lines("", PdfFont::Plain, 3, 50).empty());
  CHECK(pdf_lines("W", PdfFont::Plain, 3, 0.1).size() == 1);
}

TEST_CASE("a file of the same marks is the same, and holds no time", "[pdf]") {
  const auto made = [] {
    Pdf pdf("A (title) \\ \u0416");
    pdf.add_page(210, 297);
    pdf.bookmark("Cover");
    pdf.text({20, 20}, pdf_letters("a) Tj ET (b \\"), PdfFont::Plain, 4);
    pdf.line(std::array{Spot{20, 30}, Spot{120, 30}}, {});
    return pdf.take();
  };
  const std::string one = made();
  CHECK(one == made());
  CHECK(one.starts_with("%PDF-1.4\n"));
  CHECK(one.ends_with("%%EOF\n"));
  for (const std::string_view word : {"CreationDate", "ModDate", "/ID", "/JavaScript", "/JS"}) {
    CHECK(one.find(word) == std::string::npos);
  }
  // Where the table says that an object begins, it does.
  const std::size_t table = one.rfind("xref\n0 ", one.rfind("startxref"));
  // Lines of 20 bytes (ISO 32000-1, 7.5.4), the first of them for object 0.
  std::size_t line = one.find('\n', one.find('\n', table) + 1) + 21;
  int number = 1;
  for (; one[line] != 't'; line += 20, ++number) {
    const std::size_t start = static_cast<std::size_t>(std::stoul(one.substr(line, 10)));
    CHECK(one.substr(start, 8).starts_with(std::to_string(number) + " 0 obj"));
  }
  CHECK(number == 10);
}

TEST_CASE("scales are those of a ruler, never larger than there is room", "[pdf]") {
  CHECK(ruler_scale(0.06, Units::Inch) == 20);
  CHECK(ruler_scale(1.0 / 24, Units::Inch) == 24);
  CHECK(ruler_scale(0.06, Units::Millimetre) == 20);
  CHECK(ruler_scale(3, Units::Millimetre) == 1);
  CHECK(ruler_scale(0.001, Units::Millimetre) == 0);
  for (int i = 1; i < 100; ++i) {
    const double most = 1.0 / i;
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      const int part = ruler_scale(most, units);
      if (part > 0) CHECK(1.0 / part <= most);
    }
  }
}

TEST_CASE("a long table goes on over pages with its head again", "[pdf]") {
  Document document{"T", {}, Paper::A4, Units::Inch, {}};
  DocPart part{"p", "Part"};
  DocBlock rows;
  rows.kind = DocBlock::Kind::Rows;
  rows.table = {"Many", {"No.", "What"}, {}};
  for (int i = 0; i < 200; ++i) rows.table.rows.push_back({std::to_string(i), "a row of words"});
  part.blocks.push_back(rows);
  document.parts.push_back(part);
  const std::string pdf = document_pdf(document);
  std::size_t pages = 0;
  for (std::size_t at = 0; (at = pdf.find("/Type /Page ", at)) != std::string::npos; ++at) ++pages;
  CHECK(pages == 4);
  CHECK(pdf == document_pdf(document));
}
