#include "engine/report/drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/base/quantity.h"

namespace hs::report {

void Drawing::clear() {
  marks_.clear();
  points_.clear();
  text_.clear();
  picture_marks_ = 0;
}

Drawing Drawing::picture() const {
  Drawing alone = *this;
  if (picture_marks_ == 0 || picture_marks_ >= marks_.size()) return alone;
  // Points and letters of the key come after those of the picture, in the order of the marks.
  const Mark& first = marks_[picture_marks_];
  alone.points_.resize(first.first_point);
  alone.marks_.resize(picture_marks_);
  return alone;
}

Mark& Drawing::add(Shape shape, Role role, std::span<const Spot> points) {
  Mark mark;
  mark.shape = shape;
  mark.role = role;
  mark.first_point = static_cast<std::uint32_t>(points_.size());
  mark.point_count = static_cast<std::uint32_t>(points.size());
  points_.insert(points_.end(), points.begin(), points.end());
  marks_.push_back(mark);
  return marks_.back();
}

void Drawing::polyline(Role role, std::span<const Spot> points, Weight weight, bool dashed) {
  Mark& mark = add(Shape::Polyline, role, points);
  mark.weight = weight;
  mark.dashed = dashed;
}

void Drawing::line(Role role, Spot from, Spot to, Weight weight, bool dashed) {
  polyline(role, std::array{from, to}, weight, dashed);
}

void Drawing::outline(Role role, std::span<const Spot> points, Weight weight, bool dashed) {
  Mark& mark = add(Shape::Outline, role, points);
  mark.weight = weight;
  mark.dashed = dashed;
}

void Drawing::polygon(Role role, std::span<const Spot> points) {
  add(Shape::Polygon, role, points);
}

void Drawing::hatch(Role role, std::span<const Spot> points) { add(Shape::Hatch, role, points); }

void Drawing::dimension(Spot from, Spot to, std::string_view text, Ends ends) {
  Mark& mark = add(Shape::Dimension, Role::Dimension, std::array{from, to});
  mark.ends = ends;
  mark.first_char = static_cast<std::uint32_t>(text_.size());
  mark.char_count = static_cast<std::uint32_t>(text.size());
  text_ += text;
}

void Drawing::text(Role role, Spot at, std::string_view text, Align align) {
  Mark& mark = add(Shape::Text, role, std::array{at});
  mark.align = align;
  mark.first_char = static_cast<std::uint32_t>(text_.size());
  mark.char_count = static_cast<std::uint32_t>(text.size());
  text_ += text;
}

void Drawing::length(Spot at, std::string_view words, Align align) {
  text(Role::Label, at, words, align);
  marks_.back().boxed = true;
}

void Drawing::dot(Role role, Spot at, double radius_mm, bool filled) {
  Mark& mark = add(Shape::Dot, role, std::array{at});
  mark.size_mm = radius_mm;
  mark.weight = filled ? Weight::Heavy : Weight::Normal;
}

void Drawing::leader(Spot tip, Spot words, std::string_view text, Align align) {
  const double part = std::hypot(words.x_mm - tip.x_mm, words.y_mm - tip.y_mm);
  constexpr double kShort_mm = 30;  // the line ends before the letters begin
  const double keep = part > 2 * kShort_mm ? 1 - kShort_mm / part : 1;
  line(Role::Dimension, tip,
       {tip.x_mm + (words.x_mm - tip.x_mm) * keep, tip.y_mm + (words.y_mm - tip.y_mm) * keep},
       Weight::Thin);
  dot(Role::Dimension, tip, 8);
  Drawing::text(Role::Label, words, text, align);
}

std::span<const Spot> Drawing::points(const Mark& mark) const {
  return std::span<const Spot>(points_).subspan(mark.first_point, mark.point_count);
}

std::string_view Drawing::text(const Mark& mark) const {
  return std::string_view(text_).substr(mark.first_char, mark.char_count);
}

Box Drawing::bounds() const {
  if (points_.empty()) return {};
  Box box{points_[0].x_mm, points_[0].y_mm, points_[0].x_mm, points_[0].y_mm};
  for (const Spot& p : points_) {
    box.left_mm = std::min(box.left_mm, p.x_mm);
    box.right_mm = std::max(box.right_mm, p.x_mm);
    box.bottom_mm = std::min(box.bottom_mm, p.y_mm);
    box.top_mm = std::max(box.top_mm, p.y_mm);
  }
  return box;
}

void hatch_lines(std::span<const Spot> polygon, double spacing_mm, double angle_deg,
                 std::vector<Spot>& ends) {
  if (polygon.size() < 3 || !(spacing_mm > 0)) return;
  const double along_x = std::cos(deg_to_rad(angle_deg));
  const double along_y = std::sin(deg_to_rad(angle_deg));
  // In turned axes the hatch is level: u runs along a line, v counts the lines.
  const auto turned = [&](const Spot& p) {
    return Spot{p.x_mm * along_x + p.y_mm * along_y, p.y_mm * along_x - p.x_mm * along_y};
  };
  double low = turned(polygon[0]).y_mm;
  double high = low;
  for (const Spot& p : polygon) {
    low = std::min(low, turned(p).y_mm);
    high = std::max(high, turned(p).y_mm);
  }
  std::vector<double> crossings;
  // Half a spacing off, so that an edge on a multiple of the spacing is not a line of the hatch.
  for (double n = std::ceil(low / spacing_mm - 0.5); (n + 0.5) * spacing_mm < high; n += 1) {
    const double v = (n + 0.5) * spacing_mm;
    crossings.clear();
    Spot before = turned(polygon.back());
    for (const Spot& p : polygon) {
      const Spot here = turned(p);
      if ((before.y_mm <= v) != (here.y_mm <= v)) {
        const double part = (v - before.y_mm) / (here.y_mm - before.y_mm);
        crossings.push_back(before.x_mm + (here.x_mm - before.x_mm) * part);
      }
      before = here;
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      for (const double u : {crossings[i], crossings[i + 1]}) {
        ends.push_back({u * along_x - v * along_y, u * along_y + v * along_x});
      }
    }
  }
}

std::vector<Spot> arc(Spot middle, double radius_mm, double from_deg, double to_deg) {
  constexpr double kStep_deg = 5;
  const int steps =
      std::max(1, static_cast<int>(std::ceil(std::abs(to_deg - from_deg) / kStep_deg)));
  std::vector<Spot> points;
  points.reserve(static_cast<std::size_t>(steps) + 1);
  for (int i = 0; i <= steps; ++i) {
    const double turn = deg_to_rad(from_deg + (to_deg - from_deg) * i / steps);
    points.push_back(
        {middle.x_mm + radius_mm * std::cos(turn), middle.y_mm + radius_mm * std::sin(turn)});
  }
  return points;
}

std::array<Spot, 4> diamond(Spot centre, double to_corner_mm) {
  const auto [x, y] = centre;
  const double r = to_corner_mm;
  return {Spot{x + r, y}, Spot{x, y + r}, Spot{x - r, y}, Spot{x, y - r}};
}

std::vector<Spot> ellipse(Spot middle, double half_width_mm, double half_height_mm) {
  constexpr int kRound = 48;
  std::vector<Spot> points;
  points.reserve(kRound);
  for (int i = 0; i < kRound; ++i) {
    const double turn = 2 * std::numbers::pi * i / kRound;
    points.push_back({middle.x_mm + half_width_mm * std::cos(turn),
                      middle.y_mm + half_height_mm * std::sin(turn)});
  }
  return points;
}

std::vector<Spot> smooth_closed(std::span<const Spot> through, int steps) {
  std::vector<Spot> curve;
  const std::size_t n = through.size();
  if (n < 3 || steps < 1) return {through.begin(), through.end()};
  curve.reserve(n * static_cast<std::size_t>(steps));
  for (std::size_t i = 0; i < n; ++i) {
    const Spot& a = through[(i + n - 1) % n];
    const Spot& b = through[i];
    const Spot& c = through[(i + 1) % n];
    const Spot& d = through[(i + 2) % n];
    for (int s = 0; s < steps; ++s) {
      const double t = static_cast<double>(s) / steps;
      const auto mix = [t](double p, double q, double r, double u) {
        return 0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - u) * t * t +
                      (3 * q - p - 3 * r + u) * t * t * t);
      };
      curve.push_back({mix(a.x_mm, b.x_mm, c.x_mm, d.x_mm), mix(a.y_mm, b.y_mm, c.y_mm, d.y_mm)});
    }
  }
  return curve;
}

}  // namespace hs::report
