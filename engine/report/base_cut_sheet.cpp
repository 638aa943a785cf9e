// One panel of the base as it is cut: the board, the line to cut, its heights in their places.

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/report/build_sheets.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/survey_words.h"

namespace hs::report {
namespace {

// The numbers along a row of places: each in the nearest row that still has room for it.
class Numbers {
 public:
  Numbers(Drawing& drawing, double line_mm, double from_y_mm, double way)
      : d_(drawing), line_mm_(line_mm), from_y_mm_(from_y_mm), way_(way) {}

  void put(double x_mm, double edge_y_mm, const std::string& text) {
    const double half = text_width_mm(text, line_mm_) / 2 + 0.25 * line_mm_;
    std::size_t row = 0;
    while (row < ends_mm_.size() && ends_mm_[row] > x_mm - half) ++row;
    if (row == ends_mm_.size()) ends_mm_.push_back(0);
    ends_mm_[row] = x_mm + half;
    const double y = from_y_mm_ + way_ * (0.9 + 1.25 * static_cast<double>(row)) * line_mm_;
    d_.line(Role::Dimension, {x_mm, edge_y_mm}, {x_mm, y - way_ * 0.5 * line_mm_}, Weight::Thin);
    d_.text(Role::Label, {x_mm, y}, text, Align::Centre);
  }
  // Past the last row.
  double end_mm() const {
    return from_y_mm_ + way_ * (0.9 + 1.25 * static_cast<double>(ends_mm_.size())) * line_mm_;
  }

 private:
  Drawing& d_;
  double line_mm_, from_y_mm_, way_;
  std::vector<double> ends_mm_;
};

// Which panels are cut, in their order.
std::vector<std::size_t> cut_panels(const evaluate::Evaluation& e) {
  std::vector<std::size_t> out;
  if (!e.survey || !e.survey->base) return out;
  for (std::size_t i = 0; i < e.survey->panels.size(); ++i) {
    if (e.survey->base->cuts[i]) out.push_back(i);
  }
  return out;
}

// A bare number with the least of a unit: it stands over twenty others of its kind.
std::string bare(double mm, Units units) {
  std::string text = cut_length(mm, units);
  const std::size_t unit = text.rfind(' ');
  return unit == std::string::npos ? text : text.substr(0, unit);
}

}  // namespace

std::size_t base_cut_count(const evaluate::Evaluation& e) { return cut_panels(e).size(); }

std::string base_cut_title(const evaluate::Evaluation& e, std::size_t index) {
  return capitalised(std::string(e.survey->panels[cut_panels(e)[index]].name)) + ", cut";
}

Sheet base_cut_sheet(const config::Config& config, const evaluate::Evaluation& e,
                     const SheetView& view, std::size_t index) {
  const evaluate::SurveyResult& s = *e.survey;
  const std::size_t panel = cut_panels(e)[index];
  const survey::Base& base = *s.base;
  const survey::Cut& cut = *base.cuts[panel];
  const double length = s.panels[panel].length_mm();
  Sheet sheet;
  Drawing& d = sheet.drawing;
  sheet.text_mm = line_of(view, std::clamp(length / 46, 4.0, 60.0));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);

  // Heights drawn larger than lengths, never smaller.
  const double deep = std::max(cut.rip_mm, cut.most_mm);
  const double larger = std::max(1.0, 0.26 * length / std::max(deep, 1.0));
  const auto y = [larger](double height_mm) { return -larger * height_mm; };
  std::vector<Spot> curve;
  for (const survey::Ordinate& o : cut.ordinates) curve.push_back({o.along_mm, y(o.height_mm)});
  const double lower = y(deep) - 1.5 * line;
  std::vector<Spot> board = curve, earth = curve;
  board.push_back({length, 0});
  board.push_back({0, 0});
  earth.push_back({length, lower});
  earth.push_back({0, lower});
  d.polygon(Role::Cabinet, board);
  d.polygon(Role::Ground, earth);
  d.hatch(Role::Ground, earth);
  d.outline(Role::Person, board, Weight::Normal);
  d.line(Role::Dimension, {0, y(cut.rip_mm)}, {length, y(cut.rip_mm)}, Weight::Normal, true);
  d.polyline(Role::Curve, curve, Weight::Heavy);

  Numbers heights(d, line, 0, 1), places(d, line, lower, -1);
  for (std::size_t i = 0; i < cut.ordinates.size(); ++i) {
    const survey::Ordinate& o = cut.ordinates[i];
    d.line(Role::Dimension, {o.along_mm, 0}, curve[i], Weight::Thin, !o.joint);
    heights.put(o.along_mm, 0, bare(o.height_mm, view.units));
    places.put(o.along_mm, lower, bare(o.along_mm, view.units));
    if (o.doubtful) {
      d.polygon(Role::Limit, diamond(curve[i], 0.5 * line));
    } else if (o.read) {
      d.dot(Role::Curve, curve[i], 0.22 * line);
    }
    if (o.joint) d.line(Role::Dimension, curve[i], {o.along_mm, lower}, Weight::Thin, true);
  }
  const std::string_view unit = view.units == Units::Millimetre ? "mm" : "in";
  d.text(Role::Label, {0, heights.end_mm() + 0.3 * line},
         "Board that stays, down from its top edge, " + std::string(unit));
  d.text(Role::Label, {0, places.end_mm() - 0.3 * line},
         "Along the board from its left end, " + std::string(unit));

  const auto length_of = [&](double mm) { return cut_length(mm, view.units); };
  if (const std::string stop = do_not_cut(s, panel); !stop.empty()) {
    pen.note(stop + ". Read again first: every height here may change." +
             (s.grounds[panel].doubtful.empty() ? "" : " Diamonds: doubtful readings."));
  }
  pen.note("Rip the board to " + length_of(cut.rip_mm) + " first: the dashed line.");
  pen.note(
      "Compass, with the board shimmed level on its highest ground: " + length_of(cut.compass_mm) +
      "; where it is not ripped " + length_of(cut.compass_unripped_mm) + ".");
  pen.note("Least that stays " + length_of(cut.least_mm) + ", most " + length_of(cut.most_mm) +
           ": " + std::string(way_words(cut.way)) + ".");
  const auto turn = std::find(base.order.begin(), base.order.end(), panel);
  if (turn != base.order.end()) {
    pen.note("Set it as number " + std::to_string(turn - base.order.begin() + 1) + " of " +
             std::to_string(base.order.size()) + ", its top at " + base_top(s, view.units) + ".");
  }
  pen.note("Seen from outside. Heights are drawn " + trimmed(larger, 1) +
           " times as large as lengths. Dots: readings; solid upright lines: joints. Computed; a "
           "reading by tape is 1 to 2 mm (1/16 in) at best: one cut, and perhaps a trim.");
  const Box inked = inked_box(d, line);
  pen.list({inked.left_mm, inked.bottom_mm - 2 * line},
           std::max(inked.right_mm - inked.left_mm, 40 * line));
  describe(sheet, base_cut_title(e, index), config,
           "The board above the ground, with the height of the cut at every place.", pen.entries());
  return sheet;
}

}  // namespace hs::report
