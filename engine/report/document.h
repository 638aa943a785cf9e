#pragma once
// A document for paper as a list of blocks: what is said, not where it stands. Two writers print
// the same list, pdf_document.h and html_document.h, so that both say the same.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/finding.h"
#include "engine/report/base_template.h"
#include "engine/report/sheet.h"
#include "engine/report/table.h"

namespace hs::report {

struct DocBlock {
  enum class Kind : std::uint8_t {
    Heading,   // words
    Words,     // a paragraph; `head`, if any, stands before it, bold; so does a verdict
    Note,      // the same, small: a source
    Caution,   // the same, with a bar beside it
    Large,     // head over words, the words large: a height
    Rows,      // table
    Figure,    // a drawing with its caption in `words`
    Step,      // head and words on the left, the drawing on the right; without one: words alone
    Measure,   // a line of 100 mm each way, between them a square for a camera, words beside them
    Contents,  // the document's parts; a paper with page numbers numbers them
  };
  Kind kind = Kind::Words;
  std::optional<Verdict> verdict{};
  std::string head{}, words{};
  Table table{};
  std::shared_ptr<const Sheet> figure{};
  std::string file{};  // of a figure: name of its own file, without ".svg"
  // Of a figure: stands on a page of its own, lying where it is wide. Else as large as its words
  // are read easily.
  bool whole_page = false;
  bool to_scale = false;              // lengths are true in it: its scale stands under it
  std::vector<std::string> square{};  // rows of '#' and '.'
};

struct DocPart {
  std::string id, title;
  std::vector<DocBlock> blocks{};
  bool starts_page = true;
  // Sheets of the paper's own size, lying, one a page: they measure true.
  std::vector<TemplateSheet> strips{};
};

struct Document {
  std::string title, subtitle;
  Paper paper = Paper::A4;
  Units units = Units::Inch;
  std::vector<DocPart> parts;
};

// Scales that people on either side of the inch have rulers for: 1 to this. The largest picture
// that is no larger than `most` (paper over nature); 0 where even the smallest is larger.
int ruler_scale(double most, Units units);

// How a figure comes to stand on paper.
struct FigureFit {
  Box box;            // what is inked, in the drawing
  double scale = 0;   // paper over nature
  std::string claim;  // "Scale 1:24 (1/2 in is 1 ft)"; empty: none
  double wide_mm() const { return scale * (box.right_mm - box.left_mm); }
  double high_mm() const { return scale * (box.top_mm - box.bottom_mm); }
};
// What there is for it: no more than this, and no higher than is liked unless its words ask for it.
struct FigureRoom {
  double wide_mm = 0, high_mm = 0, liked_mm = 0;
};
// As large as this room and easy reading allow; `block` has a figure.
FigureFit fit_figure(const DocBlock& block, const FigureRoom& room, Units units);
// Wide enough that a lying page shows it larger.
bool lies(const DocBlock& block);

// "Does not work: Side clearance"; the verdict's word before the head, either may be missing.
std::string doc_head(const DocBlock& block);

}  // namespace hs::report
