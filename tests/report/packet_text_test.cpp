// Text in the packet's drawings as it comes out on paper.
#include <algorithm>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/packet.h"
#include "engine/report/packet.h"
#include "engine/report/pdf_document.h"
#include "engine/report/sheet_parts.h"
#include "tests/report/preset.h"
#include "tests/support/unpacked.h"

using namespace hs;
using namespace hs::report;

namespace {

constexpr double kLeast_pt = 7, kPoint_mm = 25.4 / 72;

double smallest_letters_mm(const std::string& pdf) {
  double least = 1000;
  for (const std::string& marks : test::pdf_streams(pdf)) {
    for (std::size_t at = marks.find(" Tf"); at != marks.npos; at = marks.find(" Tf", at + 1)) {
      const std::size_t begin = marks.rfind(' ', at - 1) + 1;
      least = std::min(least, std::stod(marks.substr(begin, at - begin)));
    }
  }
  return least;
}

}  // namespace

TEST_CASE("no text of a printed drawing is under 7 points", "[report][packet]") {
  for (const char* name : {"demo", "stations/evening_lamp", "stations/settled_yard"}) {
    const config::Config config = test::preset(name);
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      const auto e = evaluate::evaluate_packet(config, marks_of(units));
      for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const Document document = packet_document(config, e, {paper, units, {}});
        int figures = 0;
        for (const DocPart& part : document.parts) {
          for (const DocBlock& block : part.blocks) {
            if (!block.figure) continue;
            ++figures;
            const FigureFit fit = fit_figure(block, figure_room(block, paper), units);
            const double letters_mm = kLetterPerLine * fit.scale * block.figure->text_mm;
            INFO(name << (paper == Paper::A4 ? ", A4, " : ", Letter, ") << block.head);
            CHECK(letters_mm >= kLeast_pt * kPoint_mm);
          }
        }
        CHECK(figures > 20);
        // The PDF's room for a figure is what its pages leave.
        INFO(name << (paper == Paper::A4 ? ", A4" : ", Letter"));
        CHECK(smallest_letters_mm(document_pdf(document)) >= kLeast_pt * kPoint_mm);
      }
    }
  }
}
