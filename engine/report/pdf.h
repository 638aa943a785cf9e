#pragma once
// A PDF file, written a mark at a time: lines, filled areas and text in two typefaces that every
// reader brings along (pdf_font.h). ISO 32000-1, version 1.4 of the format.
//
// Places and sizes are millimetres from a page's lower left corner, so a drawing that claims a
// scale keeps it. The file holds no time, no random number and no name of a machine: the same marks
// give the same bytes.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/report/drawing.h"
#include "engine/report/pdf_font.h"

namespace hs::report {

struct PdfColour {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const PdfColour&) const = default;
};
// "#0f5230"; black for what is not six digits after a '#'.
PdfColour pdf_colour(std::string_view hex);

struct PdfStroke {
  double wide_mm = 0.2;
  PdfColour colour{};
  double dash_mm = 0, gap_mm = 0;  // no dash: a whole line
};

class Pdf {
 public:
  explicit Pdf(std::string_view title) : title_(title) {}

  // A new page; what is drawn from now on goes there.
  void add_page(double width_mm, double height_mm);
  // Draws on page `index` again: page numbers are written once all pages are there.
  void turn_to(std::size_t index) { at_ = index; }
  std::size_t pages() const { return pages_.size(); }
  // An entry of the reader's own list of contents, for the page that is drawn on.
  void bookmark(std::string_view title);

  void line(std::span<const Spot> points, const PdfStroke& stroke, bool closed = false);
  // Pairs of ends, one path.
  void lines(std::span<const Spot> ends, const PdfStroke& stroke);
  void area(std::span<const Spot> points, PdfColour colour);
  void box(const Box& box, PdfColour colour);
  // Boxes of one colour, one path: a square for a camera.
  void boxes(std::span<const Box> all, PdfColour colour);
  // `letters` as pdf_letters() gives them, their foot at `at`.
  void text(Spot at, std::string_view letters, PdfFont font, double size_mm, PdfColour colour = {});
  // The same on a rim of this colour, so that lines under it leave it readable.
  void text_on(Spot at, std::string_view letters, PdfFont font, double size_mm, PdfColour colour,
               PdfColour rim);

  // The whole file. At least one page.
  std::string take();

 private:
  struct Page {
    double width_mm, height_mm;
    std::string marks;
  };
  struct Bookmark {
    std::string title;
    std::size_t page;
  };
  std::string& marks() { return pages_[at_].marks; }
  void path(std::span<const Spot> points);
  void pen(const PdfStroke& stroke);
  void letters(Spot at, std::string_view letters, PdfFont font, double size_mm);

  std::string title_;
  std::vector<Page> pages_;
  std::vector<Bookmark> bookmarks_;
  std::size_t at_ = 0;
};

}  // namespace hs::report
