#include "web/pictures/painter.h"

#include <algorithm>
#include <cmath>

#include "web/pictures/strokes.h"

namespace hs::web {
namespace {

using report::Mark;
using report::Role;
using report::Shape;
using report::Weight;

constexpr float kHatchSpacing = 6;
constexpr float kHatchLine = 1.6F;
constexpr float kArrow = 6;
constexpr float kLeastDot = 3;
constexpr float kDashRuns[] = {6, 4};
constexpr std::span<const float> kDashes = kDashRuns;

Tone fill_tone(Role role) {
  switch (role) {
    case Role::Ground:
      return Tone::Ground;
    case Role::Cabinet:
    case Role::Riser:
      return Tone::Cabinet;
    case Role::Counter:
    case Role::OtherCounter:
    case Role::Seat:
      return Tone::Counter;
    case Role::OvenBody:
    case Role::OvenFloor:
      return Tone::OvenBody;
    case Role::OvenInside:
      return Tone::OvenInside;
    case Role::Pizza:
      return Tone::Pizza;
    case Role::Hidden:
      return Tone::Hidden;
    case Role::Seen:
      return Tone::Seen;
    case Role::Person:
      return Tone::Person;
    case Role::PersonLine:
      return Tone::Sky;
    case Role::Eye:
    case Role::Sightline:
    case Role::Feet:
      return Tone::Sightline;
    case Role::Landing:
      return Tone::Good;
    case Role::ClearRoom:
    case Role::ChildFree:
      return Tone::Warn;
    case Role::Unknown:
      return Tone::Unknown;
    case Role::Prep:
    case Role::Thing:
    case Role::Cover:
    case Role::Room:
    case Role::OtherPerson:
      return Tone::InkSoft;
    case Role::EyeLevel:
    case Role::InUse:
      return Tone::Sightline;
    case Role::HeatLimit:
      return Tone::Fail;
    case Role::GoodBand:
      return Tone::Good;
    case Role::Limit:
      return Tone::Hidden;
    case Role::Dimension:
    case Role::Label:
    case Role::Key:
    case Role::Peel:
    case Role::Scale:
    case Role::Heading:
    case Role::Curve:
      return Tone::Ink;
  }
  return Tone::Ink;
}

// Edges are darker than what they bound, so that shapes hold without their fill.
Tone line_tone(Role role) {
  switch (role) {
    case Role::Ground:
    case Role::Cabinet:
    case Role::Riser:
      return Tone::InkSoft;
    case Role::OvenFloor:
      return Tone::Ink;
    default:
      return fill_tone(role);
  }
}

float thickness_of(Weight weight) {
  switch (weight) {
    case Weight::Thin:
      return 1.2F;
    case Weight::Normal:
      return 1.8F;
    case Weight::Heavy:
      return 2.8F;
  }
  return 1;
}

void arrow_head(ImDrawList* draw, ImVec2 tip, ImVec2 from, ImU32 colour) {
  const float length = std::hypot(tip.x - from.x, tip.y - from.y);
  if (length < 1) return;
  const float ux = (tip.x - from.x) / length;
  const float uy = (tip.y - from.y) / length;
  const float back = std::min(kArrow * 1.4F, length / 2);
  const float side = back * 0.36F;
  draw->AddTriangleFilled(tip, ImVec2(tip.x - ux * back - uy * side, tip.y - uy * back + ux * side),
                          ImVec2(tip.x - ux * back + uy * side, tip.y - uy * back - ux * side),
                          colour);
}

}  // namespace

void Painter::place(std::span<const report::Spot> points, const Projection& to) {
  placed_.clear();
  for (const report::Spot& p : points) placed_.push_back(to.of(p));
}

void Painter::paint(const Ui& ui, const report::Drawing& drawing, const Projection& to,
                    float text_size) {
  for (const Mark& mark : drawing.marks()) paint_mark(ui, drawing, mark, to, text_size);
}

void Painter::paint_mark(const Ui& ui, const report::Drawing& drawing, const Mark& mark,
                         const Projection& to, float text_size) {
  const std::span<const report::Spot> points = drawing.points(mark);
  if (points.empty()) return;
  ImDrawList* draw = ui.draw;
  switch (mark.shape) {
    case Shape::Polygon:
      place(points, to);
      draw->AddConcavePolyFilled(placed_.data(), static_cast<int>(placed_.size()),
                                 ui.colour(fill_tone(mark.role)));
      break;
    case Shape::Polyline:
    case Shape::Outline: {
      place(points, to);
      const bool closed = mark.shape == Shape::Outline;
      const ImU32 colour = ui.colour(line_tone(mark.role));
      const float thickness = thickness_of(mark.weight);
      if (mark.dashed) {
        stroke(draw, placed_, closed, colour, thickness, kDashes);
      } else {
        draw->AddPolyline(placed_.data(), static_cast<int>(placed_.size()), colour,
                          closed ? ImDrawFlags_Closed : ImDrawFlags_None, thickness);
      }
      break;
    }
    case Shape::Hatch: {
      hatch_.clear();
      const report::HatchStyle style = report::hatch_style(mark.role);
      const double spacing = style.spacing * static_cast<double>(kHatchSpacing / to.per_mm);
      report::hatch_lines(points, spacing, style.angle_deg, hatch_);
      if (style.crossed) report::hatch_lines(points, spacing, style.angle_deg + 90, hatch_);
      for (std::size_t i = 0; i + 1 < hatch_.size(); i += 2) {
        straight(draw, to.of(hatch_[i]), to.of(hatch_[i + 1]), ui.colour(fill_tone(mark.role)),
                 kHatchLine);
      }
      break;
    }
    case Shape::Dot: {
      const ImVec2 at = to.of(points[0]);
      const float radius = std::max(kLeastDot, static_cast<float>(mark.size_mm) * to.per_mm);
      if (mark.role == Role::Eye) {
        // A ring of paper sets the eye off from the head.
        draw->AddCircleFilled(at, radius + 1.8F, ui.colour(Tone::Sky), 20);
      }
      draw->AddCircleFilled(at, radius, ui.colour(fill_tone(mark.role)), 20);
      break;
    }
    case Shape::Dimension:
      place(points, to);
      paint_dimension(ui, mark, drawing.text(mark), text_size);
      break;
    case Shape::Text: {
      const ImVec2 at = to.of(points[0]);
      const Side side = mark.align == report::Align::Left    ? Side::Left
                        : mark.align == report::Align::Right ? Side::Right
                                                             : Side::Centre;
      ui.text(at.x, at.y, drawing.text(mark), text_size, Tone::Ink, false, side);
      break;
    }
  }
}

void Painter::paint_dimension(const Ui& ui, const Mark& mark, std::string_view text,
                              float text_size) {
  const ImVec2 a = placed_[0];
  const ImVec2 b = placed_[1];
  const ImU32 colour = ui.colour(Tone::Ink);
  straight(ui.draw, a, b, colour, 1.2F);
  if (mark.ends != report::Ends::Last) arrow_head(ui.draw, a, b, colour);
  if (mark.ends != report::Ends::First) arrow_head(ui.draw, b, a, colour);
  if (text.empty()) return;
  const float wide = ui.width(text, text_size, true);
  const float x = (a.x + b.x) / 2;
  const float y = (a.y + b.y) / 2;
  ui.fill({x - wide / 2 - 3, y - text_size * 0.6F, wide + 6, text_size * 1.2F}, Tone::Ground, 3);
  ui.text(x, y, text, text_size, Tone::Ink, true, Side::Centre);
}

}  // namespace hs::web
