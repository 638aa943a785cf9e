#include "engine/report/document.h"

#include <algorithm>
#include <span>

#include "engine/base/number_text.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

// Lines of text in a figure: larger than the one is no easier to read, smaller than the other hard.
constexpr double kMostLine_mm = 3.6, kLeastLine_mm = 3;

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
