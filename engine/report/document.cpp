#include "engine/report/document.h"

#include <algorithm>
#include <span>

#include "engine/base/number_text.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

// Larger lines of text than this are no easier to read.
constexpr double kMostLine_mm = 3.6;

std::string_view verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::Ok:
      return "Good:";
    case Verdict::Warn:
      return "Watch:";
    case Verdict::Fail:
      return "Does not work:";
    case Verdict::Unknown:
      return "Not known:";
  }
  return {};
}

struct Scale {
  int part;
  bool
      by_foot;  // of an architect's ruler: so much to the foot; else an engineer's, or a metric one
};
constexpr Scale kInch[] = {{1, false},  {2, false}, {4, true},   {5, false},  {8, true},
                           {10, false}, {12, true}, {16, true},  {20, false}, {24, true},
                           {30, false}, {32, true}, {40, false}, {48, true},  {60, false},
                           {64, true},  {96, true}};
constexpr Scale kMm[] = {{1, false},  {2, false},  {5, false},  {10, false},
                         {15, false}, {20, false}, {25, false}, {30, false},
                         {40, false}, {50, false}, {75, false}, {100, false}};

std::span<const Scale> scales(Units units) {
  return units == Units::Inch ? std::span<const Scale>(kInch) : std::span<const Scale>(kMm);
}

std::string scale_claim(int part, Units units) {
  constexpr double kFoot_mm = 304.8;
  const std::string number = std::to_string(part);
  for (const Scale& scale : scales(units)) {
    if (scale.part != part) continue;
    if (scale.by_foot)
      return "Scale 1:" + number + " (" + inches_text(kFoot_mm / part) + " is 1 ft)";
    if (units == Units::Inch && part > 1)
      return "Scale 1:" + number + " (1 in is " + number + " in)";
  }
  return "Scale 1:" + number;
}

}  // namespace

int ruler_scale(double most, Units units) {
  for (const Scale& scale : scales(units)) {
    if (1.0 / scale.part <= most) return scale.part;
  }
  return 0;
}

FigureFit fit_figure(const DocBlock& block, const FigureRoom& room, Units units) {
  const Sheet& sheet = *block.figure;
  FigureFit fit{inked_box(sheet.drawing, sheet.text_mm), 0, {}};
  const double wide = std::max(1.0, fit.box.right_mm - fit.box.left_mm);
  const double high = std::max(1.0, fit.box.top_mm - fit.box.bottom_mm);
  const double liked = std::max(room.liked_mm / high, kLeastLine_mm / sheet.text_mm);
  // On a page of its own it may be as large as it will.
  const double readable = block.whole_page ? 2 * kMostLine_mm : kMostLine_mm;
  fit.scale = std::min({room.wide_mm / wide, room.high_mm / high, liked, readable / sheet.text_mm});
  const int part = block.to_scale ? ruler_scale(fit.scale, units) : 0;
  if (part > 0) {
    fit.scale = 1.0 / part;
    fit.claim = scale_claim(part, units);
  }
  return fit;
}

FigureRoom figure_room(const DocBlock& block, Paper paper) {
  constexpr double kLikedHigh_mm = 100;
  const PaperSize size = size_of(paper);
  // A part's title, the figure's own head and caption.
  const double around_mm = block.whole_page ? 50 : 36;
  const bool lying = block.whole_page && lies(block);
  const double wide = (lying ? size.width_mm : size.height_mm) - 2 * kPaperMargin_mm;
  const double high = (lying ? size.height_mm : size.width_mm) - 2 * kPaperMargin_mm - around_mm;
  if (block.kind == DocBlock::Kind::Step)
    return {wide - kStepWords_mm - kStepGap_mm, kLikedHigh_mm, kLikedHigh_mm};
  return {wide, high, block.whole_page ? high : kLikedHigh_mm};
}

void draw_figure(DocBlock& block, const Document& on, bool key,
                 const std::function<Sheet(double line_mm)>& draw) {
  constexpr int kMostTimes = 12;
  constexpr double kMore = 1.005;  // so that no last bit of a length decides
  double line = 0;
  for (int times = 0; times < kMostTimes; ++times) {
    Sheet sheet = draw(line);
    if (times == 0) block.in_file = std::make_shared<const Sheet>(sheet);
    if (!key) sheet.drawing = sheet.drawing.picture();
    block.figure = std::make_shared<const Sheet>(std::move(sheet));
    FigureRoom room = figure_room(block, on.paper);
    room.high_mm = room.liked_mm;
    const double printed = fit_figure(block, room, on.units).scale * block.figure->text_mm;
    if (printed >= kLeastLine_mm || printed <= 0) return;
    line = kMore * block.figure->text_mm * kLeastLine_mm / printed;
  }
}

bool lies(const DocBlock& block) {
  const Box box = inked_box(block.figure->drawing, block.figure->text_mm);
  return box.right_mm - box.left_mm > 1.1 * (box.top_mm - box.bottom_mm);
}

std::string doc_head(const DocBlock& block) {
  std::string head = block.verdict ? std::string(verdict_word(*block.verdict)) : std::string();
  if (!block.head.empty()) head += (head.empty() ? "" : " ") + block.head;
  return head;
}

}  // namespace hs::report
