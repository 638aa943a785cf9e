#include "engine/report/pdf_document.h"

#include <vector>

#include "engine/report/pdf_drawing.h"
#include "engine/report/pdf_flow.h"

namespace hs::report {
namespace {

constexpr PdfColour kSoft{70, 70, 70};

struct Printer {
  const Document& document;
  const std::vector<std::size_t>& pages;  // of the parts, from 1; 0: not known yet
  Pdf pdf;
  PdfFlow flow;
  bool after_strips = false;  // the last page is a strip of the paper's own size

  Printer(const Document& d, const std::vector<std::size_t>& p)
      : document(d), pages(p), pdf(d.title), flow(pdf, d.paper, d.title) {}

  void contents();
  void block(const DocBlock& block);
  void part(const DocPart& part, std::vector<std::size_t>& starts);
};

void Printer::contents() {
  for (std::size_t i = 1; i < document.parts.size(); ++i) {
    flow.need(kLeading * kBody_mm);
    flow.skip(kLeading * kBody_mm);
    const double right = flow.left() + 0.62 * flow.width();
    const std::string number = std::to_string(pages[i]);
    pdf.text({flow.left(), flow.y()}, flow.letters(document.parts[i].title), PdfFont::Plain,
             kBody_mm);
    pdf.text({right - pdf_width_mm(number, PdfFont::Plain, kBody_mm), flow.y()}, number,
             PdfFont::Plain, kBody_mm);
  }
  flow.skip(2);
}

void Printer::block(const DocBlock& b) {
  using Kind = DocBlock::Kind;
  if (b.kind != Kind::Figure) flow.upright();
  switch (b.kind) {
    case Kind::Heading:
      flow.need(5 * kHead_mm);
      flow.skip(flow.at_top() ? 0 : 2);
      flow.words({}, b.words, kHead_mm, 0, PdfFont::Bold);
      flow.skip(1.2);
      return;
    case Kind::Words:
      flow.words(doc_head(b), b.words, kBody_mm);
      flow.skip(1.4);
      return;
    case Kind::Note:
      flow.words(doc_head(b), b.words, kSmall_mm, 0, PdfFont::Plain, kSoft);
      flow.skip(1.6);
      return;
    case Kind::Caution: {
      constexpr double kIndent_mm = 4;
      const std::size_t page = pdf.pages();
      flow.need(3 * kLeading * kBody_mm);
      const double begin = pdf.pages() == page ? flow.y() : flow.top();
      flow.words(doc_head(b), b.words, kBody_mm, kIndent_mm);
      // The bar stands where the words began; what goes on over the page has a bar of its own.
      const bool over = flow.y() > begin;
      pdf.box({flow.left(), flow.y() - 1, flow.left() + 1.2, over ? flow.top() : begin - 0.8}, {});
      flow.skip(1.8);
      return;
    }
    case Kind::Large:
      flow.need(2.4 * kLarge_mm);
      flow.words({}, b.head, kBody_mm);
      flow.words({}, b.words, kLarge_mm, 0, PdfFont::Bold);
      flow.skip(1.2);
      return;
    case Kind::Rows:
      flow.table(b.table);
      return;
    case Kind::Figure:
      flow.figure(b, document.units);
      return;
    case Kind::Step:
      flow.step(b, document.units);
      return;
    case Kind::Measure:
      flow.measure(b);
      return;
    case Kind::Contents:
      contents();
      return;
  }
}

void Printer::part(const DocPart& part, std::vector<std::size_t>& starts) {
  flow.part(starts.empty() ? std::string_view() : std::string_view(part.title));
  // A part that begins with a figure on a page of its own has its heading there.
  const DocBlock* first = part.blocks.empty() ? nullptr : &part.blocks[0];
  if (part.starts_page || pdf.pages() == 0 || after_strips) {
    flow.page(first != nullptr && first->whole_page && lies(*first));
  } else {
    flow.upright();
    flow.need(9 * kPartHead_mm);
  }
  starts.push_back(pdf.pages());
  pdf.bookmark(part.title);
  if (!flow.at_top()) flow.skip(4);
  flow.words({}, part.title, kPartHead_mm, 0, PdfFont::Bold);
  flow.skip(2.5);
  flow.fresh();
  for (std::size_t i = 0; i < part.blocks.size(); ++i) {
    // A heading stands on the page of what it heads.
    const DocBlock* next = i + 1 < part.blocks.size() ? &part.blocks[i + 1] : nullptr;
    if (part.blocks[i].kind == DocBlock::Kind::Heading && next != nullptr && next->figure &&
        !next->whole_page) {
      flow.need(3 * kHead_mm + flow.figure_high_mm(*next, document.units));
    }
    if (part.blocks[i].with_next && next != nullptr) {
      flow.upright();
      flow.need(flow.figure_high_mm(part.blocks[i], document.units) +
                flow.table_high_mm(next->table));
    }
    block(part.blocks[i]);
  }
  after_strips = !part.strips.empty();
  for (const TemplateSheet& strip : part.strips) {
    const PaperSize size = size_of(document.paper);
    pdf.add_page(size.width_mm, size.height_mm);
    draw_on(pdf, strip.drawing, kTemplateText_mm, {0, 0}, 1);
  }
}

}  // namespace

std::string document_pdf(const Document& document, std::size_t* lost) {
  // Twice: the contents on the cover name pages that only the first pass knows.
  std::vector<std::size_t> pages(document.parts.size(), 0);
  for (const bool last : {false, true}) {
    Printer printer(document, pages);
    std::vector<std::size_t> starts;
    for (const DocPart& part : document.parts) printer.part(part, starts);
    if (last) {
      printer.flow.finish();
      if (lost != nullptr) *lost = printer.flow.lost();
      return printer.pdf.take();
    }
    pages = starts;
  }
  return {};
}

}  // namespace hs::report
