#pragma once
// A drawing as an SVG file: one user unit is one millimetre, text stays text, no script.
//
// Colours are written on each element, so that the file looks right where a page's policy blocks
// style sheets and in viewers without any. Only the file that stands alone carries a small style
// sheet beside them: dusk where the reader's screen is dark, black on white in print.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "engine/report/drawing.h"

namespace hs::report {

enum class SvgColours : std::uint8_t {
  Alone,  // sun, and a style sheet for dark screens and print
  Sun,
  Dusk,
  Page,   // the page's own custom properties: for an SVG element inside the page
  Print,  // dark lines on white
};
enum class SvgSize : std::uint8_t {
  True,    // width and height in mm: 1000 mm of the station are 1000 mm
  Fitted,  // as wide as it is given room for
};

struct SvgStyle {
  std::string_view title{}, description{};
  double text_mm = 60;  // height of a line of text; letters are 0.8 of it
  SvgColours colours = SvgColours::Alone;
  SvgSize size = SvgSize::True;
  const Box* page = nullptr;  // the sheet of paper; absent: what is drawn, with a rim
};

std::string svg(const Drawing& drawing, const SvgStyle& style);

// A role of the page's theme (web/theme.css) with its two values; a test compares them.
struct Ink {
  std::string_view name;  // "oven_body": the custom property --oven_body
  std::string_view sun, dusk, print;
};
std::span<const Ink> inks();

// What a role is drawn in: the element's class, and the inks of its areas and its lines.
struct RoleInk {
  std::string_view name;  // "oven-body"
  const Ink* fill;
  const Ink* line;
};
RoleInk ink_of(Role role);
const Ink& paper_ink();
const Ink& text_ink();

// For text and attributes: & < > " and ' as entities.
std::string xml_escaped(std::string_view text);

}  // namespace hs::report
