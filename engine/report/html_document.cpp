#include "engine/report/html_document.h"

#include <algorithm>

#include "engine/base/number_text.h"
#include "engine/report/html.h"
#include "engine/report/svg.h"
#include "engine/share/qr.h"

namespace hs::report {
namespace {

constexpr std::string_view kStyle =
    "*{box-sizing:border-box}html{background:#fff;color:#000}"
    "body{margin:0 auto;padding:4mm;max-width:200mm;font:10pt/1.35 system-ui,\"DejaVu Sans\","
    "sans-serif;overflow-wrap:break-word}"
    "h1{font-size:20pt;margin:0}h2{font-size:16pt;margin:0 0 3mm}h3{font-size:12pt;margin:3mm 0 "
    "1mm}"
    "p,figure{margin:0 0 2mm}.soft,.note,figcaption{font-size:8pt;color:#333}"
    ".large{font-size:26pt;font-weight:bold;line-height:1.15}"
    ".caution{border-left:1.2mm solid #000;padding-left:3mm;break-inside:avoid}"
    "table{border-collapse:collapse;width:100%;font-size:8.5pt;margin:0 0 4mm}"
    "caption{text-align:left;font-weight:bold;font-size:10pt;padding:1mm 0}"
    "th,td{text-align:left;vertical-align:top;padding:.8mm 2mm .8mm 0;border-bottom:.1mm solid "
    "#888}thead th{border-bottom:.3mm solid #555}tr,figure,.step,.together{break-inside:avoid}"
    "h2,h3,caption{break-after:avoid}.scroll{overflow-x:auto}"
    ".step{display:flex;gap:5mm;border-top:.2mm solid #888;padding:2mm 0}.step>div{flex:1}"
    ".step>.beside{flex:0 0 58mm}"
    ".figure svg,.square svg{display:block}ol.contents{columns:2}"
    ".measure{display:flex;gap:6mm;break-inside:avoid}"
    ".bars{width:100mm;height:100mm;flex:none;border-left:.3mm solid;border-bottom:.3mm solid;"
    "position:relative;display:flex;align-items:center;justify-content:center}"
    ".bars span{position:absolute;font-size:8pt}.bars .up{top:0;left:1mm}"
    ".bars .level{bottom:0;right:1mm}.bars svg{width:62mm;height:62mm}"
    ".strip svg{display:block;max-width:100%}"
    "@media screen{.figure svg{max-width:100%;height:auto}section{margin-top:10mm}}"
    "@media print{body{padding:0;max-width:none}.scroll{overflow:visible}"
    "section.new{break-before:page}section:first-of-type{break-before:auto}"
    ".whole{break-before:page}h2+.whole{break-before:auto}"
    ".lying{page:lying}.strip{page:strip;break-before:page}}";

std::string mm(double value) { return trimmed(value, 2) + "mm"; }

std::string page_rules(Paper paper) {
  const PaperSize size = size_of(paper);
  const std::string wide = mm(size.width_mm), high = mm(size.height_mm);
  const std::string foot =
      "@bottom-right{content:\"page \" counter(page) \" of \" counter(pages);font-size:8pt}";
  return "@page{size:" + high + " " + wide + ";margin:" + mm(kPaperMargin_mm) + ";" + foot +
         "}@page lying{size:" + wide + " " + high + "}@page strip{size:" + wide + " " + high +
         ";margin:0;@bottom-right{content:none}}";
}

std::string square_svg(const std::vector<std::string>& rows) {
  const std::string side = std::to_string(share::qr_side(rows));
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 " + side + ' ' +
         side +
         "\" shape-rendering=\"crispEdges\"><title>The link as a square for a camera</title><path "
         "d=\"" +
         share::qr_path(rows) + "\"/></svg>\n";
}

class Printer {
 public:
  explicit Printer(const Document& document) : document_(document) {}
  std::string all();

 private:
  void block(const DocBlock& block);
  void words(std::string_view tag, std::string_view kind, const DocBlock& block);
  void figure(const DocBlock& block);
  void drawing(const DocBlock& block);
  void contents();

  const Document& document_;
  HtmlWriter out_;
};

void Printer::words(std::string_view tag, std::string_view kind, const DocBlock& b) {
  out_.open(tag, kind.empty() ? std::string() : "class=\"" + std::string(kind) + "\"");
  if (b.verdict) {
    put_verdict(out_, *b.verdict);
    out_.text(" ");
  }
  if (!b.head.empty()) {
    out_.element("b", b.head);
    out_.text(" ");
  }
  out_.text(b.words);
  out_.close();
}

void Printer::drawing(const DocBlock& b) {
  const FigureFit fit = fit_figure(b, figure_room(b, document_.paper), document_.units);
  const Sheet& sheet = *b.figure;
  // The drawing's own size on paper, so that the scale under it is true.
  out_.open("div", "class=\"figure\" style=\"width:" + mm(fit.wide_mm()) + ";max-width:100%\"");
  out_.markup(svg(sheet.drawing, {.title = sheet.title,
                                  .description = sheet.description,
                                  .text_mm = sheet.text_mm,
                                  .colours = SvgColours::Print,
                                  .size = SvgSize::Fitted,
                                  .page = &fit.box}));
  out_.close();
  if (!fit.claim.empty()) out_.element("figcaption", fit.claim + ", printed at 100 %.");
}

void Printer::figure(const DocBlock& b) {
  const bool lying = b.whole_page && lies(b);
  out_.open("figure", !b.whole_page ? "" : lying ? "class=\"whole lying\"" : "class=\"whole\"");
  out_.element("h3", b.head);
  drawing(b);
  out_.element("figcaption", b.words);
  out_.close();
}

void Printer::contents() {
  out_.open("ol", "class=\"contents\"");
  for (std::size_t i = 1; i < document_.parts.size(); ++i) {
    out_.open("li");
    out_.open("a", "href=\"#" + document_.parts[i].id + "\"");
    out_.text(document_.parts[i].title);
    out_.close();
    out_.close();
  }
  out_.close();
}

void Printer::block(const DocBlock& b) {
  using Kind = DocBlock::Kind;
  switch (b.kind) {
    case Kind::Heading:
      out_.element("h3", b.words);
      return;
    case Kind::Words:
      words("p", {}, b);
      return;
    case Kind::Note:
      words("p", "note", b);
      return;
    case Kind::Caution:
      words("p", "caution", b);
      return;
    case Kind::Large:
      out_.element("p", b.head);
      out_.element("p", b.words, "class=\"large\"");
      return;
    case Kind::Rows:
      put_html_table(out_, b.table);
      return;
    case Kind::Figure:
      figure(b);
      return;
    case Kind::Step:
      out_.open("div", "class=\"step\"");
      out_.open("div", b.figure ? "class=\"beside\"" : "");
      out_.element("h3", b.head);
      out_.element("p", b.words);
      out_.close();
      if (b.figure) {
        out_.open("div");
        drawing(b);
        out_.close();
      }
      out_.close();
      return;
    case Kind::Measure:
      out_.open("div", "class=\"measure\"");
      out_.open("div", "class=\"bars\"");
      if (!b.square.empty()) out_.markup(square_svg(b.square));
      out_.element("span", "100 mm", "class=\"up\"");
      out_.element("span", "100 mm", "class=\"level\"");
      out_.close();
      out_.element("p", b.words);
      out_.close();
      return;
    case Kind::Contents:
      contents();
      return;
  }
}

std::string Printer::all() {
  for (const DocPart& part : document_.parts) {
    const bool first = &part == &document_.parts[0];
    out_.open("section", "id=\"" + part.id + "\"" + (part.starts_page ? " class=\"new\"" : ""));
    out_.element(first ? "h1" : "h2", part.title);
    for (std::size_t i = 0; i < part.blocks.size(); ++i) {
      const bool with_next = part.blocks[i].with_next && i + 1 < part.blocks.size();
      if (with_next) {
        out_.open("div", "class=\"together\"");
        block(part.blocks[i++]);
      }
      block(part.blocks[i]);
      if (with_next) out_.close();
    }
    for (const TemplateSheet& strip : part.strips) {
      out_.open("div", "class=\"strip\"");
      out_.markup(template_svg(strip, document_.paper));
      out_.close();
    }
    out_.close();
  }
  return html_document(document_.title,
                       "<style>" + page_rules(document_.paper) + std::string(kStyle) + "</style>\n",
                       out_.take());
}

}  // namespace

std::string document_html(const Document& document) { return Printer(document).all(); }

}  // namespace hs::report
