#pragma once
// Text, tables and figures down the pages of a PDF, a new page where one is full.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "engine/report/document.h"
#include "engine/report/pdf.h"

namespace hs::report {

// Sizes of letters, mm.
inline constexpr double kBody_mm = 3.5, kSmall_mm = 2.7, kCell_mm = 2.8, kHead_mm = 4.4,
                        kPartHead_mm = 6.6, kLarge_mm = 9;
inline constexpr double kLeading = 1.32;  // lines apart, in letters' sizes

class PdfFlow {
 public:
  static constexpr double kMargin_mm = kPaperMargin_mm, kHeadRoom_mm = 8, kFootRoom_mm = 8;

  PdfFlow(Pdf& pdf, Paper paper, std::string running);

  void page(bool lying = false);
  // What comes next is no figure: off a lying page.
  void upright();
  // Only a heading stands on this page: a figure that asks for a page of its own has it.
  void fresh() { fresh_y_ = y_; }
  // A new page unless this much room is left.
  void need(double height_mm);
  void skip(double height_mm) { y_ -= height_mm; }
  bool at_top() const { return y_ > top() - 0.01; }
  double room() const { return y_ - bottom(); }
  double left() const { return kMargin_mm; }
  double width() const { return wide_ - 2 * kMargin_mm; }
  double top() const { return high_ - kMargin_mm - kHeadRoom_mm; }
  double bottom() const { return kMargin_mm + kFootRoom_mm; }
  double y() const { return y_; }
  void part(std::string_view title) { part_ = title; }

  // Lines from here down. `head`: bold words before them.
  void words(std::string_view head, std::string_view text, double size_mm, double indent_mm = 0,
             PdfFont font = PdfFont::Plain, PdfColour colour = {});
  void table(const Table& table);
  double table_high_mm(const Table& table);
  void figure(const DocBlock& block, Units units);
  // Height that this figure takes where it does not stand on a page of its own.
  double figure_high_mm(const DocBlock& block, Units units);
  void step(const DocBlock& block, Units units);
  void measure(const DocBlock& block);

  // The place of page numbers: on every page, once all are there.
  void finish();

  std::string letters(std::string_view utf8) { return pdf_letters(utf8, &lost_); }
  std::size_t lost() const { return lost_; }
  Pdf& pdf() { return pdf_; }

 private:
  struct Placed {
    std::vector<std::string> caption;
    double head_mm = 0, foot_mm = 0;
    FigureFit fit;
    double high_mm() const { return head_mm + fit.high_mm() + foot_mm; }
  };
  Placed place(const DocBlock& block, Units units);
  struct Laid;
  Laid lay(const Table& table);
  // Its upper left corner here.
  void draw(const DocBlock& block, const FigureFit& fit, double x_mm, double y_mm);

  Pdf& pdf_;
  Paper paper_;
  std::string running_, part_;
  struct Foot {
    std::size_t page;
    double wide, high;
    std::string part;
  };
  std::vector<Foot> feet_;
  double wide_ = 0, high_ = 0, y_ = 0, fresh_y_ = 0;
  std::size_t lost_ = 0;
};

}  // namespace hs::report
