#include "engine/report/base_template.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/survey_words.h"
#include "engine/report/svg.h"

namespace hs::report {
namespace {

// Places on the paper, mm. Printers leave 5 mm blank at most edges (from memory).
constexpr double kEdge_mm = 12;
constexpr double kUprightBar_mm = 20;  // x of the upright line
constexpr double kStripLeft_mm = 42;   // x of a sheet's left mark
constexpr double kStripLow_mm = 34;    // y that no strip goes below
constexpr double kLevelBar_mm = 18;    // y of the level line
constexpr double kHead_mm = 24;        // for the words at the top
constexpr double kOverlap_mm = 10;     // past the marks, on both sides
constexpr double kStay_mm = 20;        // of strip above the highest cut
constexpr double kMark_mm = 4;         // half a cross
constexpr double kLabelApart_mm = 17;  // between heights that are written
constexpr double kToCut_mm = 1;        // a panel with less to cut has no strip

double tile_mm(Paper paper) {
  // Whole centimetres that leave the margin and the overlap.
  const double room = size_of(paper).width_mm - kEdge_mm - kOverlap_mm - kStripLeft_mm;
  return std::floor(room / 10) * 10;
}

// What a strip of one panel looks like on every sheet.
struct Strip {
  const survey::Cut& cut;
  const survey::Ground& ground;
  double length_mm;
  double level_mm;  // of board above the level line, from the panel's top edge
  double upper_mm;  // y of the level line

  double height(double along_mm) const {  // of board that stays
    const auto& all = cut.ordinates;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
      const survey::Ordinate& a = all[i];
      const survey::Ordinate& b = all[i + 1];
      if (along_mm > b.along_mm) continue;
      const double share = (along_mm - a.along_mm) / (b.along_mm - a.along_mm);
      return a.height_mm + share * (b.height_mm - a.height_mm);
    }
    return all.back().height_mm;
  }
  double y(double height_mm) const { return upper_mm - (height_mm - level_mm); }
};

void draw_bars(Drawing& d) {
  const auto bar = [&](Spot from, Spot to, Spot tick, Spot words, Align align) {
    d.line(Role::Scale, from, to, Weight::Normal);
    for (const Spot& end : {from, to}) {
      d.line(Role::Dimension, {end.x_mm - tick.x_mm, end.y_mm - tick.y_mm},
             {end.x_mm + tick.x_mm, end.y_mm + tick.y_mm}, Weight::Thin);
    }
    d.text(Role::Label, words, "100 mm", align);
  };
  const double low = kStripLow_mm + 10;
  bar({kStripLeft_mm, kLevelBar_mm}, {kStripLeft_mm + kBar_mm, kLevelBar_mm}, {0, 2},
      {kStripLeft_mm + kBar_mm + 4, kLevelBar_mm}, Align::Left);
  bar({kUprightBar_mm, low}, {kUprightBar_mm, low + kBar_mm}, {2, 0}, {kUprightBar_mm, low - 5},
      Align::Centre);
}

// A cross in a ring above and below the strip, where two sheets meet.
void draw_mark(Drawing& d, double x, double upper, double lower, std::string_view name) {
  for (const double y : {upper + 2 * kMark_mm, lower - 2 * kMark_mm}) {
    d.line(Role::Dimension, {x - kMark_mm, y}, {x + kMark_mm, y}, Weight::Thin);
    d.line(Role::Dimension, {x, y - kMark_mm}, {x, y + kMark_mm}, Weight::Thin);
    d.outline(Role::Dimension, ellipse({x, y}, kMark_mm / 2, kMark_mm / 2), Weight::Thin);
  }
  d.line(Role::Dimension, {x, lower - kMark_mm}, {x, upper + kMark_mm}, Weight::Thin, true);
  d.text(Role::Heading, {x + 1.4 * kMark_mm, lower - 2 * kMark_mm}, name);
}

void draw_strip(Drawing& d, const Strip& strip, double from, double to, Units units) {
  const double left = std::max(0.0, from - kOverlap_mm);
  const double right = std::min(strip.length_mm, to + kOverlap_mm);
  const auto x = [&](double along) { return kStripLeft_mm + along - from; };
  std::vector<Spot> line{{x(left), strip.y(strip.height(left))}};
  double written = -1e9;
  for (const survey::Ordinate& o : strip.cut.ordinates) {
    if (o.along_mm < left || o.along_mm > right) continue;
    const Spot at{x(o.along_mm), strip.y(o.height_mm)};
    if (o.along_mm > left && o.along_mm < right) line.push_back(at);
    d.line(Role::Dimension, at, {at.x_mm, strip.upper_mm}, Weight::Thin, !o.read);
    // Each height once, on the sheet whose marks are around it.
    const bool here = o.along_mm >= from && o.along_mm <= to;
    if (!here || o.along_mm - written < kLabelApart_mm) continue;
    written = o.along_mm;
    d.text(Role::Label, {at.x_mm, strip.upper_mm + 3.4}, cut_length(o.height_mm, units),
           Align::Centre);
  }
  line.push_back({x(right), strip.y(strip.height(right))});
  d.polyline(Role::Curve, line, Weight::Heavy);
  d.line(Role::Dimension, {x(left), strip.upper_mm}, {x(right), strip.upper_mm}, Weight::Normal);
  for (const double end : {0.0, strip.length_mm}) {
    if (end < left || end > right) continue;
    d.line(Role::Curve, {x(end), strip.upper_mm}, {x(end), strip.y(strip.height(end))},
           Weight::Normal);
  }
}

std::string count(std::size_t n) { return trimmed(static_cast<double>(n), 0); }

}  // namespace

std::vector<TemplateSheet> base_template(const evaluate::Evaluation& evaluation, Paper paper,
                                         Units units, std::vector<std::string>* without) {
  std::vector<TemplateSheet> sheets;
  std::vector<std::string> missing;
  const auto& survey = evaluation.survey;
  if (!survey || !survey->base) return sheets;
  const PaperSize size = size_of(paper);
  const double tile = tile_mm(paper);
  char letter = 'A';
  for (std::size_t i = 0; i < survey->panels.size(); ++i) {
    if (!survey->base->cuts[i]) continue;
    const survey::Cut& cut = *survey->base->cuts[i];
    const char name = letter++;
    if (cut.fall_mm < kToCut_mm) continue;
    const std::string panel = capitalised(std::string(survey->panels[i].name));
    Strip strip{cut, survey->grounds[i], survey->panels[i].length_mm(), 0,
                size.height_mm - kHead_mm - 3 * kMark_mm};
    strip.level_mm = std::max(0.0, std::floor((cut.least_mm - kStay_mm) / 10) * 10);
    const double lower = strip.y(cut.most_mm);
    if (lower - 3 * kMark_mm < kStripLow_mm - kMark_mm) {
      missing.push_back(panel);
      continue;
    }
    const auto pages = static_cast<std::size_t>(std::ceil(strip.length_mm / tile - 1e-9));
    for (std::size_t page = 0; page < pages; ++page) {
      TemplateSheet sheet;
      sheet.panel = i;
      sheet.from_mm = tile * static_cast<double>(page);
      sheet.to_mm = std::min(strip.length_mm, sheet.from_mm + tile);
      Drawing& d = sheet.drawing;
      draw_strip(d, strip, sheet.from_mm, sheet.to_mm, units);
      const auto mark = [&](double along, std::size_t number) {
        draw_mark(d, kStripLeft_mm + along - sheet.from_mm, strip.upper_mm, lower,
                  std::string(1, name) + count(number));
      };
      mark(sheet.from_mm, page);
      mark(sheet.to_mm, page + 1);
      draw_bars(d);
      sheet.title = panel + ", sheet " + count(page + 1) + " of " + count(pages);
      const std::string level =
          strip.level_mm > 0
              ? "The level line is " + cut_length(strip.level_mm, units) + " under the top edge."
              : "The level line is the top edge.";
      double y = size.height_mm - kEdge_mm - 2;
      const std::string stop = do_not_cut(*survey, i);
      d.text(Role::Heading, {kStripLeft_mm, y},
             sheet.title + (stop.empty() ? "" : ". " + stop + "."));
      y -= 1.25 * kTemplateText_mm;
      d.text(Role::Label, {kStripLeft_mm, y},
             level + " Keep what is above the heavy line; seen from outside.");
      d.text(Role::Label, {kStripLeft_mm, kEdge_mm - 2},
             "Print at 100 %, and measure both lines. One cut, and perhaps a trim.");
      sheet.description = sheet.title + (stop.empty() ? "" : ". " + stop) + ". Full size. " + level;
      sheets.push_back(std::move(sheet));
    }
  }
  if (!sheets.empty() && !missing.empty()) {
    std::string words = "No strip, because the ground falls too far: ";
    for (std::size_t i = 0; i < missing.size(); ++i) {
      words += (i > 0 ? ", " : "") + lower_first(missing[i]);
    }
    sheets.front().drawing.text(Role::Label,
                                {kStripLeft_mm, kEdge_mm - 2 + 1.25 * kTemplateText_mm},
                                words + ". Use its heights.");
  }
  if (without != nullptr) *without = std::move(missing);
  return sheets;
}

std::string template_svg(const TemplateSheet& sheet, Paper paper) {
  const PaperSize size = size_of(paper);
  const Box page{0, 0, size.width_mm, size.height_mm};
  return svg(sheet.drawing, {.title = sheet.title,
                             .description = sheet.description,
                             .text_mm = kTemplateText_mm,
                             .page = &page});
}

std::string template_html(const std::vector<TemplateSheet>& sheets, Paper paper,
                          std::string_view title) {
  const PaperSize size = size_of(paper);
  const std::string wide = trimmed(size.width_mm, 1) + "mm";
  const std::string high = trimmed(size.height_mm, 1) + "mm";
  std::string out =
      "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
      xml_escaped(title) + "</title>\n<style>@page{size:" + wide + " " + high +
      ";margin:0}html,body{margin:0}svg{display:block;break-after:page;break-inside:avoid}"
      "svg:last-of-type{break-after:auto}</style>\n</head>\n<body>\n";
  for (const TemplateSheet& sheet : sheets) out += template_svg(sheet, paper);
  return out + "</body>\n</html>\n";
}

}  // namespace hs::report
