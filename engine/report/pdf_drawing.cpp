#include "engine/report/pdf_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/report/sheet_parts.h"
#include "engine/report/svg.h"

namespace hs::report {
namespace {

// Helvetica is narrower than the typeface that drawings are laid out for, so its letters may be
// larger in the same room.
constexpr double kLarger = 1.1;
// The foot of capitals is this far below their middle (capitals are 0.72 of the size high).
constexpr double kHalfCapital = 0.36;

class Pen {
 public:
  Pen(Pdf& pdf, const Drawing& drawing, double text_mm, Spot origin, double scale)
      : pdf_(pdf), drawing_(drawing), origin_(origin), scale_(scale), line_mm_(text_mm * scale) {}

  // Lines and areas first, then the paper under lengths, then words: no line lies on a word.
  void shape(const Mark& mark);
  void paper_under(const Mark& mark);
  void words(const Mark& mark);

 private:
  Spot place(Spot p) const {
    return {origin_.x_mm + scale_ * p.x_mm, origin_.y_mm + scale_ * p.y_mm};
  }
  std::vector<Spot> places(std::span<const Spot> points) const {
    std::vector<Spot> all;
    all.reserve(points.size());
    for (const Spot& p : points) all.push_back(place(p));
    return all;
  }
  double thickness(Weight weight) const {
    const double thin = std::max(0.035 * line_mm_, 0.09);
    return weight == Weight::Thin ? thin : weight == Weight::Normal ? 1.7 * thin : 3 * thin;
  }
  PdfStroke stroke(Role role, Weight weight, bool dashed) const {
    PdfStroke stroke{thickness(weight), pdf_colour(ink_of(role).line->print)};
    if (dashed) stroke.dash_mm = 0.28 * line_mm_, stroke.gap_mm = 0.2 * line_mm_;
    return stroke;
  }
  // Of a dimension its middle.
  Spot words_at(const Mark& mark) const {
    const std::span<const Spot> points = drawing_.points(mark);
    if (mark.shape != Shape::Dimension) return place(points[0]);
    return place({(points[0].x_mm + points[1].x_mm) / 2, (points[0].y_mm + points[1].y_mm) / 2});
  }
  void hatch(const Mark& mark, std::span<const Spot> points);
  void arrow(Spot tip, Spot from);
  void dimension(const Mark& mark, std::span<const Spot> points);
  void text(Role role, Spot middle, std::string_view words, Align align, bool bold);

  Pdf& pdf_;
  const Drawing& drawing_;
  Spot origin_;
  double scale_, line_mm_;
};

void Pen::hatch(const Mark& mark, std::span<const Spot> points) {
  const HatchStyle how = hatch_style(mark.role);
  const double spacing = 0.42 * line_mm_ * how.spacing;
  std::vector<Spot> ends;
  hatch_lines(points, spacing, how.angle_deg, ends);
  if (how.crossed) hatch_lines(points, spacing, how.angle_deg + 90, ends);
  pdf_.lines(ends, stroke(mark.role, Weight::Thin, false));
}

void Pen::arrow(Spot tip, Spot from) {
  const double length = std::hypot(tip.x_mm - from.x_mm, tip.y_mm - from.y_mm);
  if (length <= 0) return;
  const double back = std::min(0.32 * line_mm_, length / 2), side = 0.34 * back;
  const double ux = (tip.x_mm - from.x_mm) / length, uy = (tip.y_mm - from.y_mm) / length;
  const Spot foot{tip.x_mm - ux * back, tip.y_mm - uy * back};
  pdf_.area(std::array{tip, Spot{foot.x_mm - uy * side, foot.y_mm + ux * side},
                       Spot{foot.x_mm + uy * side, foot.y_mm - ux * side}},
            pdf_colour(text_ink().print));
}

void Pen::text(Role role, Spot middle, std::string_view words, Align align, bool bold) {
  if (words.empty()) return;
  const PdfColour ink = pdf_colour(text_ink().print), paper = pdf_colour(paper_ink().print);
  if (role == Role::Key) {
    const std::vector<Spot> ring = ellipse(middle, 0.58 * line_mm_, 0.58 * line_mm_);
    pdf_.area(ring, paper);
    pdf_.line(ring, {thickness(Weight::Thin), ink}, true);
  }
  const PdfFont font = bold ? PdfFont::Bold : PdfFont::Plain;
  const double size = kLetterPerLine * line_mm_ * kLarger;
  const std::string letters = pdf_letters(words);
  const double wide = pdf_width_mm(letters, font, size);
  const double before = align == Align::Left ? 0 : align == Align::Right ? wide : wide / 2;
  pdf_.text_on({middle.x_mm - before, middle.y_mm - kHalfCapital * size}, letters, font, size, ink,
               paper);
}

void Pen::dimension(const Mark& mark, std::span<const Spot> points) {
  pdf_.line(points, stroke(Role::Dimension, Weight::Thin, false));
  if (mark.ends != Ends::Last) arrow(points[0], points[1]);
  if (mark.ends != Ends::First) arrow(points[1], points[0]);
}

void Pen::paper_under(const Mark& mark) {
  const std::string_view words = drawing_.text(mark);
  const bool asks = mark.shape == Shape::Dimension || (mark.shape == Shape::Text && mark.boxed);
  if (!asks || words.empty()) return;
  const Align align = mark.shape == Shape::Dimension ? Align::Centre : mark.align;
  pdf_.box(words_box(words_at(mark), words, align, line_mm_), pdf_colour(paper_ink().print));
}

void Pen::words(const Mark& mark) {
  if (mark.shape == Shape::Dimension) {
    text(Role::Label, words_at(mark), drawing_.text(mark), Align::Centre, true);
  } else if (mark.shape == Shape::Text) {
    text(mark.role, words_at(mark), drawing_.text(mark), mark.align,
         mark.role == Role::Key || mark.role == Role::Heading);
  }
}

void Pen::shape(const Mark& mark) {
  const std::vector<Spot> points = places(drawing_.points(mark));
  if (points.empty()) return;
  const RoleInk ink = ink_of(mark.role);
  switch (mark.shape) {
    case Shape::Polyline:
    case Shape::Outline:
      pdf_.line(points, stroke(mark.role, mark.weight, mark.dashed), mark.shape == Shape::Outline);
      break;
    case Shape::Polygon:
      pdf_.area(points, pdf_colour(ink.fill->print));
      break;
    case Shape::Hatch:
      hatch(mark, points);
      break;
    case Shape::Dot: {
      const double radius = std::max(mark.size_mm * scale_, 0.3);
      const std::vector<Spot> round = ellipse(points[0], radius, radius);
      pdf_.area(round, pdf_colour(ink.fill->print));
      pdf_.line(round, {thickness(Weight::Thin), pdf_colour(paper_ink().print)}, true);
      break;
    }
    case Shape::Dimension:
      if (points.size() == 2) dimension(mark, points);
      break;
    case Shape::Text:
      break;
  }
}

}  // namespace

void draw_on(Pdf& pdf, const Drawing& drawing, double text_mm, Spot origin, double scale) {
  Pen pen(pdf, drawing, text_mm, origin, scale);
  for (const Mark& mark : drawing.marks()) pen.shape(mark);
  for (const Mark& mark : drawing.marks()) pen.paper_under(mark);
  for (const Mark& mark : drawing.marks()) pen.words(mark);
}

}  // namespace hs::report
