#include "engine/report/plot_parts.h"

#include <algorithm>
#include <array>

#include "engine/base/text.h"

namespace hs::report {
namespace {

constexpr double kLine_mm = kPlotText_mm;
constexpr double kTick_mm = 1.2;

}  // namespace

double PlotRows::x(double mm) const {
  return kPlotLeft_mm + (kPlotRight_mm - kPlotLeft_mm) * (mm - low_mm_) / (high_mm_ - low_mm_);
}

void PlotRows::heading(std::string_view words) {
  for (const std::string& line : wrapped(words, letters_across(kPlotRight_mm, kLine_mm))) {
    d_.text(Role::Heading, {0, y_mm_}, line);
    y_mm_ -= 1.2 * kLine_mm;
  }
}

void PlotRows::flag(double mm, std::string_view words) {
  const double half = text_width_mm(words, kLine_mm) / 2;
  const double at = std::clamp(x(mm), kPlotLeft_mm + half, kPlotRight_mm - half);
  d_.text(Role::Label, {at, y_mm_}, words, Align::Centre);
  y_mm_ -= 1.1 * kLine_mm;
}

double PlotRows::row(std::string_view name, std::string_view value, double height_mm) {
  // Bold letters are a tenth wider.
  const double room = (kPlotRight_mm - kPlotLeft_mm - text_width_mm(value, kLine_mm)) / 1.1;
  d_.text(Role::Heading, {kPlotLeft_mm, y_mm_},
          shortened(name, letters_across(room - kLine_mm, kLine_mm)));
  d_.text(Role::Label, {kPlotRight_mm, y_mm_}, value, Align::Right);
  const double upper = y_mm_ - 0.75 * kLine_mm, lower = upper - height_mm;
  d_.outline(Role::Dimension,
             std::array{Spot{kPlotLeft_mm, lower}, Spot{kPlotRight_mm, lower},
                        Spot{kPlotRight_mm, upper}, Spot{kPlotLeft_mm, upper}},
             Weight::Thin);
  uppers_mm_.push_back(upper);
  lower_mm_ = lower;
  y_mm_ = lower - 0.95 * kLine_mm;
  return upper;
}

void PlotRows::gauge(double y_mm, std::string_view words) {
  d_.line(Role::Dimension, {kPlotLeft_mm - kTick_mm, y_mm}, {kPlotLeft_mm, y_mm}, Weight::Thin);
  d_.text(Role::Label, {kPlotLeft_mm - 1.8, y_mm}, words, Align::Right);
}

void PlotRows::axis(std::string_view words) {
  const double lower = lower_mm_;
  const double low = low_mm_ + shift_mm_, high = high_mm_ + shift_mm_;
  const double step = tick_step(low, high, kPlotRight_mm - kPlotLeft_mm, 3.2 * kLine_mm, units_);
  for (const double mm : ticks(low, high, step)) {
    const double at = x(mm - shift_mm_);
    d_.line(Role::Dimension, {at, lower}, {at, lower - kTick_mm}, Weight::Thin);
    d_.text(Role::Label, {at, lower - kTick_mm - 0.6 * kLine_mm}, tick_text(mm, units_),
            Align::Centre);
  }
  y_mm_ = lower - kTick_mm - 1.75 * kLine_mm;
  d_.text(Role::Label, {(kPlotLeft_mm + kPlotRight_mm) / 2, y_mm_},
          std::string(words) + ", " + std::string(unit_text(units_)), Align::Centre);
  y_mm_ -= 1.6 * kLine_mm;
}

void say_nothing(Sheet& sheet, std::string_view heading, std::string_view words) {
  sheet.text_mm = kPlotText_mm;
  double y = 0;
  sheet.drawing.text(Role::Heading, {0, y}, heading);
  // As wide as any other, so that its letters are as large.
  sheet.drawing.line(Role::Dimension, {0, y - 0.8 * kLine_mm}, {kPlotRight_mm, y - 0.8 * kLine_mm},
                     Weight::Thin);
  for (const std::string& line : wrapped(words, letters_across(kPlotRight_mm, kLine_mm))) {
    y -= 1.4 * kLine_mm;
    sheet.drawing.text(Role::Label, {0, y}, line);
  }
}

}  // namespace hs::report
