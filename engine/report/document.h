#pragma once
// A document for paper as a list of blocks: what is said, not where it stands. Two writers print
// the same list, pdf_document.h and html_document.h, so that both say the same.

#include <cstdint>
#include <functional>
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
  std::string file{};                      // of a figure: name of its own file, without ".svg"
  std::shared_ptr<const Sheet> in_file{};  // the same, as large as a screen wants it, with its key
  // Of a figure: stands on a page of its own, lying where it is wide. Else as large as its words
  // are read easily.
  bool whole_page = false;
  bool to_scale = false;              // lengths are true in it: its scale stands under it
  bool with_next = false;             // of a figure: stands on the page of the table after it
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
// Of every page. Printers leave 5 mm blank at most edges (from memory).
inline constexpr double kPaperMargin_mm = 12;
// What every writer has for it at least.
FigureRoom figure_room(const DocBlock& block, Paper paper);
// Of a step: its words beside the picture, and the gap between.
inline constexpr double kStepWords_mm = 58, kStepGap_mm = 5;

// A line of text on paper: the letters of the narrower typeface are then 7.7 points, those of the
// wider one 7.03.
inline constexpr double kLeastLine_mm = 3.1;
// The block's figure, drawn for this paper: where its words would come out too small to read in its
// room it is drawn again with larger ones. `line_mm`: of SheetView. `key`: with what its key says.
void draw_figure(DocBlock& block, const Document& on, bool key,
                 const std::function<Sheet(double line_mm)>& draw);

// As large as this room and easy reading allow; `block` has a figure.
FigureFit fit_figure(const DocBlock& block, const FigureRoom& room, Units units);
// Wide enough that a lying page shows it larger.
bool lies(const DocBlock& block);

// "Does not work: Side clearance"; the verdict's word before the head, either may be missing.
std::string doc_head(const DocBlock& block);

}  // namespace hs::report
