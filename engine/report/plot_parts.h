#pragma once
// How the plots are laid out, in mm on paper: a heading, rows under each other over one axis, words
// under it, a key.

#include <string>
#include <string_view>
#include <vector>

#include "engine/report/sheet_parts.h"
#include "engine/report/ticks.h"

namespace hs::report {

inline constexpr double kPlotText_mm = 4.4;
inline constexpr double kPlotLeft_mm = 14, kPlotRight_mm = 91;  // of every row's field
inline constexpr double kPlotRow_mm = 14;

// One row: its field's upper edge and what stands over it, name left and value right.
class PlotRows {
 public:
  // The axis runs from low to high; `shift_mm` is added to what it says (a floor over its base).
  PlotRows(Drawing& drawing, Units units, double low_mm, double high_mm, double shift_mm = 0)
      : d_(drawing), units_(units), low_mm_(low_mm), high_mm_(high_mm), shift_mm_(shift_mm) {}

  double x(double mm) const;
  bool shows(double mm) const { return mm >= low_mm_ && mm <= high_mm_; }

  void heading(std::string_view words);
  // Words over the first row, above a place of the axis.
  void flag(double mm, std::string_view words);
  // A row's head, then its frame of this height. Returns its upper edge.
  double row(std::string_view name, std::string_view value, double height_mm);
  // Ticks with their numbers under the last row, words below.
  void axis(std::string_view words);
  // A gauge beside the last row: words at its upper and lower edge.
  void gauge(double y_mm, std::string_view words);

  // Where the next thing goes.
  double bottom() const { return y_mm_; }
  double upper(std::size_t row) const { return uppers_mm_[row]; }  // edge of its field

 private:
  Drawing& d_;
  Units units_;
  double low_mm_, high_mm_, shift_mm_;
  double y_mm_ = 0, lower_mm_ = 0;
  std::vector<double> uppers_mm_;
};

// A sheet that says why there is nothing to plot.
void say_nothing(Sheet& sheet, std::string_view heading, std::string_view words);

}  // namespace hs::report
