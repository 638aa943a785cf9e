// What one standard error of each estimate does to the heights.

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "engine/base/number_text.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/plot_parts.h"
#include "engine/report/plots.h"

namespace hs::report {
namespace {

constexpr std::string_view kHeading = "What each estimate can move";
constexpr double kBar_mm = 4.2;

struct Bar {
  Role role;
  double moves_mm;
  std::string words;
};

// As moves() words it: below a millimetre is nothing.
bool moves_something(const evaluate::Sensitivity& s) {
  return std::abs(s.oven_moves_mm) >= 1 || std::abs(s.dough_moves_mm) >= 1;
}

// From nought to where it moves, its words at the end that has room.
void draw_bar(Drawing& d, const PlotRows& rows, const Bar& bar, double upper_mm) {
  const double zero = rows.x(0), end = rows.x(bar.moves_mm);
  const double lower = upper_mm - 0.8 * kBar_mm;
  if (std::abs(end - zero) > 0.2) {
    const std::array box{Spot{zero, lower}, Spot{end, lower}, Spot{end, upper_mm},
                         Spot{zero, upper_mm}};
    if (bar.role == Role::OvenBody) {
      d.polygon(bar.role, box);
    } else {
      d.hatch(bar.role, box);
    }
    d.outline(bar.role, box, Weight::Normal);
  }
  const double middle = (upper_mm + lower) / 2;
  const double room = text_width_mm(bar.words, kPlotText_mm) + 1.5;
  const bool right = bar.moves_mm >= 0 ? end + room < kPlotRight_mm : end - room < kPlotLeft_mm;
  d.text(Role::Label, {right ? std::max(zero, end) + 1 : std::min(zero, end) - 1, middle},
         bar.words, right ? Align::Left : Align::Right);
}

}  // namespace

Sheet moves_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view) {
  const Page page{config, evaluation, view.units};
  Sheet sheet;
  const auto& all = evaluation.sensitivity;
  const auto still = std::count_if(all.begin(), all.end(), std::not_fn(moves_something));
  if (still == std::ssize(all)) {
    const std::string_view words =
        all.empty() ? "Every height that the answer rests on is measured: no estimate can move it."
                    : "One standard error of no estimate moves a height by a millimetre.";
    say_nothing(sheet, kHeading, words);
    describe(sheet, kHeading, config, words, {});
    return sheet;
  }
  sheet.text_mm = kPlotText_mm;
  double most_mm = view.units == Units::Inch ? 30 : 55;  // so that there is more than one tick
  for (const evaluate::Sensitivity& s : all) {
    most_mm = std::max({most_mm, std::abs(s.oven_moves_mm), std::abs(s.dough_moves_mm)});
  }
  Drawing& d = sheet.drawing;
  PlotRows rows(d, view.units, -1.1 * most_mm, 1.1 * most_mm);
  rows.heading(kHeading);
  const bool oven = evaluation.used.oven_base_mm.has_value();
  const bool dough = evaluation.used.counter_mm.has_value();
  const double row_mm = (oven ? kBar_mm : 0) + (dough ? kBar_mm : 0) + 1.2;
  for (const evaluate::Sensitivity& s : all) {
    if (!moves_something(s)) continue;
    const double upper =
        rows.row(page.cook_name(s.cook) + "'s " + std::string(measure_words(s.measure)),
                 "if " + page.length(s.sd_mm) + " more", row_mm);
    d.line(Role::Dimension, {rows.x(0), upper}, {rows.x(0), upper - row_mm}, Weight::Thin);
    double bar = upper - 0.9;
    if (oven) {
      draw_bar(d, rows, {Role::OvenBody, s.oven_moves_mm, moves(page, s.oven_moves_mm)}, bar);
      bar -= kBar_mm;
    }
    if (dough) {
      draw_bar(d, rows, {Role::Prep, s.dough_moves_mm, moves(page, s.dough_moves_mm)}, bar);
    }
  }
  rows.axis("Lower or higher than now");
  SheetPen key(d, kPlotText_mm, view.units);
  if (oven) key.note("the oven's counter moves", Role::OvenBody);
  if (dough) key.note("the dough counter moves", Role::Prep);
  if (still > 0) {
    key.note(trimmed(static_cast<double>(still), 0) +
             (still == 1 ? " other estimate moves nothing" : " other estimates move nothing"));
  }
  key.list({kPlotLeft_mm, rows.bottom()}, kPlotRight_mm - kPlotLeft_mm);
  std::string first =
      "Each row is one estimated height; its bars show how far the recommended heights move when "
      "that height is really one standard error more; what moves nothing has no row. About two "
      "people in three are within one "
      "standard error. Computed. ";
  first += sharpest_measurement(page);
  describe(sheet, kHeading, config, first, {});
  return sheet;
}

}  // namespace hs::report
