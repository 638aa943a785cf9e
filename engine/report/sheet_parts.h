#pragma once
// What the sheets share: dimension lines, the key, the line of known length, a source in a few
// words.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/report/drawing.h"
#include "engine/report/sheet.h"

namespace hs::report {

// How wide a line of text is drawn: 0.6 of its letters' size on average (DejaVu Sans), and the
// letters' size is 0.8 of the line's height. Wide enough for what is kept apart by it.
inline constexpr double kLetterPerLine = 0.8;
double text_width_mm(std::string_view text, double line_mm);
// The paper under words on a point: lines make way for a length.
Box words_box(Spot at, std::string_view text, Align align, double line_mm);

// Lines broken at spaces, none longer than `most` letters but for a longer word.
std::vector<std::string> wrapped(std::string_view text, std::size_t most);
// How many letters a line of this width holds; at least 20.
std::size_t letters_across(double width_mm, double line_mm);

// Smallest box around every point and every text at this line height.
Box inked_box(const Drawing& drawing, double text_mm);

// "US kitchen planning guidelines, guideline 23; read in the source", from a rule's or a caution's
// row. Empty for an id that is neither.
std::string source_note(std::string_view id);

// "grill's left"; the oven's own side alone, and the flue without a side: all ask for the same.
std::string clear_side(clearance::Hot hot, clearance::Side side);
// Who asks for this free room, with the source: "local rule, as typed in". Empty: nobody.
std::string clear_source(clearance::Hot hot, const clearance::Need& need);

class SheetPen {
 public:
  // `shop`: lengths to what is cut to, 0.1 mm or 1/32 in, instead of what is read off.
  SheetPen(Drawing& drawing, double text_mm, Units units, bool shop = false)
      : d_(drawing), text_mm_(text_mm), units_(units), shop_(shop) {}

  std::string length(double mm) const;
  double line_mm() const { return text_mm_; }

  // Lengths one after the other between these places, at height y; lines lead there from from_y.
  // What is too short for its text has it a line farther out.
  void chain(std::span<const double> places_mm, double y_mm, double from_y_mm);
  // One height at x, from low to high, its text beside it on the left.
  void height(double x_mm, double low_mm, double high_mm, std::string_view text);

  // A letter at a place, and its words for the key. `zone` is how the swatch is hatched; Label: no
  // swatch, the letter alone.
  void key(Spot at, Role zone, std::string words);
  // The last letter once more.
  void again(Spot at);
  // The same without a place: what the drawing shows by itself.
  void note(std::string words, Role zone = Role::Label);
  // Everything in the key, from the top left corner down, lines wrapped to the width. Returns how
  // low it reached.
  double list(Spot corner, double width_mm);
  // The same, then the line of known length.
  double finish(Spot corner, double width_mm);
  // The same, two lines below everything that is drawn and as wide, but not under forty lines.
  double finish_below();
  const std::vector<std::string>& entries() const { return words_; }

 private:
  Drawing& d_;
  double text_mm_;
  Units units_;
  bool shop_;
  std::vector<std::string> words_;
  std::vector<Role> zones_;
  std::vector<std::string> letters_;
  char next_ = 'A';
};

// A sheet's text height for what it shows: some sixty lines of text across.
double sheet_text_mm(double wide_mm);
// What the view asks for, else the sheet's own.
inline double line_of(const SheetView& view, double own_mm) {
  return view.line_mm > 0 ? view.line_mm : own_mm;
}

// Title and description from the words of the key.
void describe(Sheet& sheet, std::string_view kind, const config::Config& config,
              std::string_view first, const std::vector<std::string>& entries);

}  // namespace hs::report
