// The ground under each panel of the base, and the bottom that is cut to it.

#include <algorithm>
#include <array>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/report/phrases.h"
#include "engine/report/plot_parts.h"
#include "engine/report/plots.h"
#include "engine/report/survey_words.h"

namespace hs::report {
namespace {

constexpr std::string_view kHeading = "Cut of the base";
constexpr double kField_mm = 16;
constexpr double kRim_mm = 2;  // of the field, above the highest and below the lowest ground

// One panel seen from outside, heights enlarged: board above, ground below, readings as dots.
void draw_panel(Drawing& d, const PlotRows& rows, const survey::Ground& ground, double upper_mm,
                double high_mm, double enlarged) {
  const auto y = [&](double z) { return upper_mm - kRim_mm - (high_mm - z) * enlarged; };
  const double lower = upper_mm - kField_mm;
  std::vector<Spot> line;
  for (const survey::Knot& knot : ground.knots) {
    line.push_back({rows.x(knot.along_mm), y(knot.ground_mm)});
  }
  std::vector<Spot> board = line, earth = line;
  board.push_back({line.back().x_mm, upper_mm});
  board.push_back({line.front().x_mm, upper_mm});
  earth.push_back({line.back().x_mm, lower});
  earth.push_back({line.front().x_mm, lower});
  d.polygon(Role::Cabinet, board);
  d.polygon(Role::Ground, earth);
  d.hatch(Role::Ground, earth);
  d.polyline(Role::Curve, line, Weight::Heavy);
  for (std::size_t i = 0; i < ground.knots.size(); ++i) {
    if (!ground.knots[i].read) continue;
    if (ground.knots[i].joint) {
      d.line(Role::Dimension, line[i], {line[i].x_mm, lower}, Weight::Thin, true);
    }
    if (ground.knots[i].doubtful) {
      d.polygon(Role::Limit, diamond(line[i], 1.6));
    } else {
      d.dot(Role::Curve, line[i], 0.8);
    }
  }
}

std::string number_of(std::size_t i) { return trimmed(static_cast<double>(i + 1), 0); }

Table ordinates(const evaluate::SurveyResult& s, Units units) {
  Table table{"Heights of the cut, from each panel's left end as one stands before it",
              {"Panel", "Along", "Board that stays", "Cut off, of the ripped board", "There"},
              {}};
  std::size_t number = 0;
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    if (!s.base || !s.base->cuts[i]) continue;
    const std::string name = number_of(number++) + " " + std::string(s.panels[i].name);
    for (const survey::Ordinate& o : s.base->cuts[i]->ordinates) {
      table.rows.push_back(
          {name, cut_length(o.along_mm, units), cut_length(o.height_mm, units),
           cut_length(o.cut_mm, units),
           std::string(o.joint ? "joint" : (o.read ? "reading" : "between readings")) +
               (o.doubtful ? ", doubtful" : "")});
    }
  }
  return table;
}

}  // namespace

Sheet base_profile_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view) {
  Sheet sheet;
  const auto& survey = evaluation.survey;
  if (!survey || !survey->base) {
    const std::string_view words =
        survey ? "No panel of the base has readings at both of its ends yet."
               : "Nobody has read the ground yet: readings down from a level line show how the "
                 "base is cut.";
    say_nothing(sheet, kHeading, words);
    describe(sheet, kHeading, config, words, {});
    return sheet;
  }
  const evaluate::SurveyResult& s = *survey;
  const survey::Base& base = *s.base;
  sheet.text_mm = kPlotText_mm;
  double longest = 0;
  for (const survey::PanelLine& panel : s.panels) longest = std::max(longest, panel.length_mm());
  Drawing& d = sheet.drawing;
  PlotRows rows(d, view.units, 0, longest);
  rows.heading(kHeading);
  const double fall = std::max(base.high_mm - base.low_mm, 1.0);
  const double enlarged = (kField_mm - 2 * kRim_mm) / fall;
  SheetPen key(d, kPlotText_mm, view.units);
  std::size_t number = 0;
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    if (!base.cuts[i]) continue;
    const survey::Cut& cut = *base.cuts[i];
    const std::string digit = number_of(number++);
    const double upper =
        rows.row(digit + " " + capitalised(std::string(s.panels[i].name)), "", kField_mm);
    draw_panel(d, rows, s.grounds[i], upper, base.high_mm, enlarged);
    const std::string stop = do_not_cut(s, i);
    key.note(digit + ": " + (stop.empty() ? "" : lower_first(stop) + "; ") + "rip to " +
             cut_length(cut.rip_mm, view.units) + ", compass " +
             cut_length(cut.compass_mm, view.units) + "; least left " +
             cut_length(cut.least_mm, view.units) + "; " + std::string(way_words(cut.way)));
  }
  rows.axis("Along the panel from its left end");
  key.note("Top of the base: " + base_top(s, view.units) + ". Start with the " +
           std::string(s.panels[base.order.front()].name) + ".");
  key.note(
      "Heights drawn larger than lengths. Dots: readings; diamonds: doubtful ones, to be read "
      "again before anything is cut; dashed: joints. Computed; a reading by tape is 1 to 2 mm "
      "(1/16 in) at best.");
  key.list({0, rows.bottom()}, kPlotRight_mm);
  sheet.table = ordinates(s, view.units);
  describe(sheet, kHeading, config,
           "Each row is one panel of the base, seen from outside: the board above, the ground "
           "below, heights drawn larger than lengths.",
           key.entries());
  return sheet;
}

}  // namespace hs::report
