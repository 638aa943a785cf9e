#include "engine/report/svg.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

enum Tone : std::uint8_t {
  kPaper,
  kInk,
  kInkSoft,
  kGood,
  kWarn,
  kFail,
  kUnknown,
  kGround,
  kCabinet,
  kCounter,
  kOvenBody,
  kOvenInside,
  kPizza,
  kHidden,
  kPerson,
  kSightline,
  kSeen,
  kToneCount,
};

// Print: dark lines on white, large areas light, so that a sheet costs little ink.
constexpr Ink kInks[kToneCount] = {
    {"paper", "#faf4e6", "#12201a", "#ffffff"},
    {"ink", "#0e2018", "#f6efdd", "#000000"},
    {"ink_soft", "#30443a", "#d3d3c0", "#333333"},
    {"good", "#0f5230", "#9bdda9", "#0f5230"},
    {"warn", "#6b3d00", "#ffcb73", "#6b3d00"},
    {"fail", "#8c1710", "#ffb3a6", "#8c1710"},
    {"unknown", "#4b2c78", "#d9c4ff", "#4b2c78"},
    {"ground", "#d8c7a3", "#3a3a2a", "#e8e8e8"},
    {"cabinet", "#e6d9bb", "#33453a", "#f4f4f4"},
    {"counter", "#7a5c34", "#b9a277", "#555555"},
    {"oven_body", "#4c5a53", "#8a998f", "#777777"},
    {"oven_inside", "#ffe9c4", "#46371d", "#ffffff"},
    {"pizza", "#c2601a", "#f0a050", "#c2601a"},
    {"hidden", "#8c1710", "#ffb3a6", "#8c1710"},
    {"person", "#2c5f48", "#7fb796", "#8aa89a"},
    {"sightline", "#a63c00", "#ffc24d", "#a63c00"},
    {"seen", "#ffdd7a", "#8a6a1c", "#fff0c0"},
};

struct Tones {
  std::string_view name;  // the element's class
  Tone fill, line;
};

Tones tones_of(Role role) {
  switch (role) {
    case Role::Ground:
      return {"ground", kGround, kInkSoft};
    case Role::Cabinet:
      return {"cabinet", kCabinet, kInkSoft};
    case Role::Counter:
      return {"counter", kCounter, kCounter};
    case Role::OtherCounter:
      return {"other-counter", kCounter, kCounter};
    case Role::Riser:
      return {"riser", kCabinet, kInkSoft};
    case Role::OvenBody:
      return {"oven-body", kOvenBody, kOvenBody};
    case Role::OvenInside:
      return {"oven-inside", kOvenInside, kOvenInside};
    case Role::OvenFloor:
      return {"oven-floor", kOvenBody, kInk};
    case Role::Pizza:
      return {"pizza", kPizza, kPizza};
    case Role::Hidden:
      return {"hidden", kHidden, kHidden};
    case Role::Seen:
      return {"seen", kSeen, kSeen};
    case Role::Person:
      return {"person", kPerson, kPerson};
    case Role::PersonLine:
      return {"person-line", kPaper, kPaper};
    case Role::Seat:
      return {"seat", kCounter, kCounter};
    case Role::Eye:
      return {"eye", kSightline, kSightline};
    case Role::Sightline:
      return {"sightline", kSightline, kSightline};
    case Role::Feet:
      return {"feet", kSightline, kSightline};
    case Role::HeatLimit:
      return {"heat-limit", kFail, kFail};
    case Role::Dimension:
      return {"dimension", kInk, kInk};
    case Role::Label:
      return {"label", kInk, kInk};
    case Role::Key:
      return {"key", kInk, kInk};
    case Role::Thing:
      return {"thing", kInkSoft, kInkSoft};
    case Role::Cover:
      return {"cover", kInkSoft, kInkSoft};
    case Role::ClearRoom:
      return {"clear-room", kWarn, kWarn};
    case Role::Unknown:
      return {"unknown", kUnknown, kUnknown};
    case Role::ChildFree:
      return {"child-free", kWarn, kWarn};
    case Role::Room:
      return {"room", kInkSoft, kInkSoft};
    case Role::Landing:
      return {"landing", kGood, kGood};
    case Role::Prep:
      return {"prep", kInkSoft, kInkSoft};
    case Role::Peel:
      return {"peel", kInk, kInk};
    case Role::OtherPerson:
      return {"other-person", kInkSoft, kInkSoft};
    case Role::EyeLevel:
      return {"eye-level", kSightline, kSightline};
    case Role::Scale:
      return {"scale", kInk, kInk};
    case Role::Heading:
      return {"heading", kInk, kInk};
    case Role::Curve:
      return {"curve", kInk, kInk};
    case Role::GoodBand:
      return {"good-band", kGood, kGood};
    case Role::InUse:
      return {"in-use", kSightline, kSightline};
    case Role::Limit:
      return {"limit", kHidden, kHidden};
  }
  return {"label", kInk, kInk};
}

class Writer {
 public:
  Writer(const Drawing& drawing, const SvgStyle& style)
      : drawing_(drawing), style_(style), letter_mm_(kLetterPerLine * style.text_mm) {}

  std::string all();

 private:
  double thickness(Weight weight) const {
    const double thin = 0.035 * style_.text_mm;
    return weight == Weight::Thin ? thin : weight == Weight::Normal ? 1.7 * thin : 3 * thin;
  }
  std::string colour(Tone tone) const;
  static std::string number(double mm) { return trimmed(mm == 0 ? 0.0 : mm, 2); }
  static std::string at(Spot p) { return number(p.x_mm) + "," + number(-p.y_mm); }
  std::string stroke(Role role, Weight weight, bool dashed) const;

  void style_sheet();
  // Lines and areas first, then the paper under lengths, then words: no line lies on a word.
  void shape(const Mark& mark);
  void paper_under(const Mark& mark);
  void words(const Mark& mark);
  Spot words_at(const Mark& mark) const {
    const std::span<const Spot> points = drawing_.points(mark);
    if (mark.shape != Shape::Dimension) return points[0];
    return {(points[0].x_mm + points[1].x_mm) / 2, (points[0].y_mm + points[1].y_mm) / 2};
  }
  void lines(const Mark& mark, std::span<const Spot> points);
  void hatch(const Mark& mark, std::span<const Spot> points);
  void dimension(const Mark& mark, std::span<const Spot> points);
  void arrow(Spot tip, Spot from);
  void text(Role role, Spot place, std::string_view words, Align align, bool bold);

  const Drawing& drawing_;
  const SvgStyle& style_;
  double letter_mm_;
  std::string out_;
};

std::string Writer::colour(Tone tone) const {
  const Ink& ink = kInks[tone];
  switch (style_.colours) {
    case SvgColours::Dusk:
      return std::string(ink.dusk);
    case SvgColours::Page:
      return "var(--" + std::string(ink.name) + ", " + std::string(ink.sun) + ")";
    case SvgColours::Print:
      return std::string(ink.print);
    case SvgColours::Alone:
    case SvgColours::Sun:
      return std::string(ink.sun);
  }
  return std::string(ink.sun);
}

std::string Writer::stroke(Role role, Weight weight, bool dashed) const {
  const Tones ink = tones_of(role);
  std::string text = " fill=\"none\" stroke=\"" + colour(ink.line) + "\" stroke-width=\"" +
                     number(thickness(weight)) + "\" class=\"l-" +
                     std::string(kInks[ink.line].name) + " " + std::string(ink.name) + "\"";
  if (dashed) {
    text += " stroke-dasharray=\"" + number(0.28 * style_.text_mm) + " " +
            number(0.2 * style_.text_mm) + "\"";
  }
  return text;
}

void Writer::lines(const Mark& mark, std::span<const Spot> points) {
  const bool closed = mark.shape == Shape::Outline;
  if (!closed && points.size() == 2) {
    out_ += "<line x1=\"" + number(points[0].x_mm) + "\" y1=\"" + number(-points[0].y_mm) +
            "\" x2=\"" + number(points[1].x_mm) + "\" y2=\"" + number(-points[1].y_mm) + "\"";
  } else {
    out_ += closed ? "<polygon points=\"" : "<polyline points=\"";
    for (std::size_t i = 0; i < points.size(); ++i) out_ += (i > 0 ? " " : "") + at(points[i]);
    out_ += "\"";
  }
  out_ += stroke(mark.role, mark.weight, mark.dashed) + "/>\n";
}

void Writer::hatch(const Mark& mark, std::span<const Spot> points) {
  const HatchStyle how = hatch_style(mark.role);
  std::vector<Spot> ends;
  const double spacing = 0.42 * style_.text_mm * how.spacing;
  hatch_lines(points, spacing, how.angle_deg, ends);
  if (how.crossed) hatch_lines(points, spacing, how.angle_deg + 90, ends);
  if (ends.empty()) return;
  out_ += "<path d=\"";
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
    out_ += "M" + at(ends[i]) + "L" + at(ends[i + 1]);
  }
  out_ += "\"" + stroke(mark.role, Weight::Thin, false) + "/>\n";
}

void Writer::arrow(Spot tip, Spot from) {
  const double length = std::hypot(tip.x_mm - from.x_mm, tip.y_mm - from.y_mm);
  if (length <= 0) return;
  const double back = std::min(0.32 * style_.text_mm, length / 2), side = 0.34 * back;
  const double ux = (tip.x_mm - from.x_mm) / length, uy = (tip.y_mm - from.y_mm) / length;
  const Spot foot{tip.x_mm - ux * back, tip.y_mm - uy * back};
  out_ += "<polygon points=\"" + at(tip) + " " +
          at({foot.x_mm - uy * side, foot.y_mm + ux * side}) + " " +
          at({foot.x_mm + uy * side, foot.y_mm - ux * side}) + "\" fill=\"" + colour(kInk) +
          "\" class=\"f-ink\"/>\n";
}

void Writer::text(Role role, Spot place, std::string_view words, Align align, bool bold) {
  if (words.empty()) return;
  const char* anchor = align == Align::Left ? "start" : align == Align::Right ? "end" : "middle";
  if (role == Role::Key) {
    out_ += "<circle cx=\"" + number(place.x_mm) + "\" cy=\"" + number(-place.y_mm) + "\" r=\"" +
            number(0.58 * style_.text_mm) + "\" fill=\"" + colour(kPaper) + "\" stroke=\"" +
            colour(kInk) + "\" stroke-width=\"" + number(thickness(Weight::Thin)) +
            "\" class=\"f-paper l-ink\"/>\n";
  }
  // A rim of paper keeps the letters readable over lines and hatching.
  out_ += "<text x=\"" + number(place.x_mm) + "\" y=\"" + number(-place.y_mm + 0.36 * letter_mm_) +
          "\" text-anchor=\"" + anchor + "\" fill=\"" + colour(kInk) + "\" stroke=\"" +
          colour(kPaper) + "\" stroke-width=\"" + number(0.22 * letter_mm_) +
          "\" paint-order=\"stroke\" class=\"f-ink l-paper\"";
  if (bold) out_ += " font-weight=\"bold\"";
  out_ += ">" + xml_escaped(words) + "</text>\n";
}

void Writer::dimension(const Mark& mark, std::span<const Spot> points) {
  const Mark as_line{.shape = Shape::Polyline, .role = Role::Dimension, .weight = Weight::Thin};
  lines(as_line, points);
  if (mark.ends != Ends::Last) arrow(points[0], points[1]);
  if (mark.ends != Ends::First) arrow(points[1], points[0]);
}

void Writer::paper_under(const Mark& mark) {
  const std::string_view words = drawing_.text(mark);
  const bool asks = mark.shape == Shape::Dimension || (mark.shape == Shape::Text && mark.boxed);
  if (!asks || words.empty()) return;
  const Align align = mark.shape == Shape::Dimension ? Align::Centre : mark.align;
  const Box box = words_box(words_at(mark), words, align, style_.text_mm);
  out_ += "<rect x=\"" + number(box.left_mm) + "\" y=\"" + number(-box.top_mm) + "\" width=\"" +
          number(box.right_mm - box.left_mm) + "\" height=\"" + number(box.top_mm - box.bottom_mm) +
          "\" fill=\"" + colour(kPaper) + "\" class=\"f-paper\"/>\n";
}

void Writer::words(const Mark& mark) {
  if (mark.shape == Shape::Dimension) {
    text(Role::Label, words_at(mark), drawing_.text(mark), Align::Centre, true);
  } else if (mark.shape == Shape::Text) {
    text(mark.role, words_at(mark), drawing_.text(mark), mark.align,
         mark.role == Role::Key || mark.role == Role::Heading);
  }
}

void Writer::shape(const Mark& mark) {
  const std::span<const Spot> points = drawing_.points(mark);
  if (points.empty()) return;
  const Tones ink = tones_of(mark.role);
  switch (mark.shape) {
    case Shape::Polyline:
    case Shape::Outline:
      lines(mark, points);
      break;
    case Shape::Polygon:
      out_ += "<polygon points=\"";
      for (std::size_t i = 0; i < points.size(); ++i) out_ += (i > 0 ? " " : "") + at(points[i]);
      out_ += "\" fill=\"" + colour(ink.fill) + "\" class=\"f-" +
              std::string(kInks[ink.fill].name) + " " + std::string(ink.name) + "\"/>\n";
      break;
    case Shape::Hatch:
      hatch(mark, points);
      break;
    case Shape::Dot:
      out_ += "<circle cx=\"" + number(points[0].x_mm) + "\" cy=\"" + number(-points[0].y_mm) +
              "\" r=\"" + number(mark.size_mm) + "\" fill=\"" + colour(ink.fill) + "\" stroke=\"" +
              colour(kPaper) + "\" stroke-width=\"" + number(thickness(Weight::Thin)) +
              "\" class=\"f-" + std::string(kInks[ink.fill].name) + " l-paper " +
              std::string(ink.name) + "\"/>\n";
      break;
    case Shape::Dimension:
      if (points.size() == 2) dimension(mark, points);
      break;
    case Shape::Text:
      break;
  }
}

void Writer::style_sheet() {
  const auto rules = [&](std::string_view Ink::*which) {
    for (const Ink& ink : kInks) {
      const std::string name(ink.name), value(ink.*which);
      out_ += ".f-" + name + "{fill:" + value + "}.l-" + name + "{stroke:" + value + "}";
    }
  };
  out_ += "<style>@media screen and (prefers-color-scheme:dark){";
  rules(&Ink::dusk);
  out_ += "}@media print{";
  rules(&Ink::print);
  out_ += "}</style>\n";
}

std::string Writer::all() {
  Box box = inked_box(drawing_, style_.text_mm);
  const double rim = style_.text_mm;
  box = {std::floor(box.left_mm - rim), std::floor(box.bottom_mm - rim),
         std::ceil(box.right_mm + rim), std::ceil(box.top_mm + rim)};
  if (style_.page != nullptr) box = *style_.page;
  const std::string wide = number(box.right_mm - box.left_mm);
  const std::string high = number(box.top_mm - box.bottom_mm);
  out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"" + number(box.left_mm) +
         " " + number(-box.top_mm) + " " + wide + " " + high + "\"";
  if (style_.size == SvgSize::True) {
    out_ += " width=\"" + wide + "mm\" height=\"" + high + "mm\"";
  } else {
    out_ += " width=\"100%\"";
  }
  out_ += " font-family=\"DejaVu Sans, Verdana, sans-serif\" font-size=\"" + number(letter_mm_) +
          "\" stroke-linejoin=\"round\">\n";
  out_ += "<title>" + xml_escaped(style_.title) + "</title>\n";
  out_ += "<desc>" + xml_escaped(style_.description) + "</desc>\n";
  if (style_.colours == SvgColours::Alone) style_sheet();
  out_ += "<rect x=\"" + number(box.left_mm) + "\" y=\"" + number(-box.top_mm) + "\" width=\"" +
          wide + "\" height=\"" + high + "\" fill=\"" + colour(kPaper) + "\" class=\"f-paper\"/>\n";
  for (const Mark& each : drawing_.marks()) shape(each);
  for (const Mark& each : drawing_.marks()) paper_under(each);
  for (const Mark& each : drawing_.marks()) words(each);
  out_ += "</svg>\n";
  return std::move(out_);
}

}  // namespace

std::span<const Ink> inks() { return kInks; }

RoleInk ink_of(Role role) {
  const Tones tones = tones_of(role);
  return {tones.name, &kInks[tones.fill], &kInks[tones.line]};
}

const Ink& paper_ink() { return kInks[kPaper]; }
const Ink& text_ink() { return kInks[kInk]; }

std::string xml_escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string svg(const Drawing& drawing, const SvgStyle& style) {
  return Writer(drawing, style).all();
}

}  // namespace hs::report
