#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/sight/scene.h"

namespace hs::sight {
namespace {

// One depth of the outline.
struct Row {
  double y_mm = 0;
  Span seen;
};

Row row_at(const Scene& scene, double y_mm) { return {y_mm, overlap_at(scene, y_mm)}; }

// A gap between two rows of which the polygon may cut something off.
struct Cut {
  double most_mm2 = 0;  // at most this much
  double y_mm = 0;      // where a new row saves most of it
};

// One side of a gap from (y1, x1) to (y2, x2). The side bulges outward, so it runs inside the
// triangle that the neighbouring chords make when drawn on into the gap; where they meet is where
// a corner would be. `outward` is +1 on the right and -1 on the left.
Cut cut_of_side(double y1, double x1, double slope_before, double y2, double x2, double slope_after,
                double outward) {
  const double turn = outward * (slope_before - slope_after);
  if (!(turn > 0)) return {};
  const double chord = (x2 - x1) / (y2 - y1);
  const double from_first = (y2 - y1) * outward * (chord - slope_after) / turn;
  const double apex = std::clamp(from_first, 0.0, y2 - y1);
  const double height = outward * (slope_before - chord) * apex;
  return {std::max(0.0, height) * (y2 - y1) / 2, y1 + apex};
}

double slope(const Row& a, const Row& b, double Span::*side) {
  return (b.seen.*side - a.seen.*side) / (b.y_mm - a.y_mm);
}

// The gap between rows i and i + 1, both sides.
Cut cut_between(const std::vector<Row>& rows, std::size_t i) {
  const Row &first = rows[i], &second = rows[i + 1];
  const double depth = second.y_mm - first.y_mm;
  Cut worst;
  double both_mm2 = 0;
  for (const double outward : {1.0, -1.0}) {
    double Span::*side = outward > 0 ? &Span::right_mm : &Span::left_mm;
    const double x1 = first.seen.*side, x2 = second.seen.*side;
    Cut cut;
    if (i > 0 && i + 2 < rows.size()) {
      cut = cut_of_side(first.y_mm, x1, slope(rows[i - 1], first, side), second.y_mm, x2,
                        slope(second, rows[i + 2], side), outward);
    } else {
      // At the region's two ends there is one neighbour only; the other side of the triangle is
      // straight across at the end.
      const bool at_near = i == 0;
      const double beyond = at_near ? x2 - depth * slope(second, rows[i + 2], side) - x1
                                    : x1 + depth * slope(rows[i - 1], first, side) - x2;
      cut = {std::max(0.0, outward * beyond) * depth / 2,
             at_near ? first.y_mm + depth / 4 : second.y_mm - depth / 4};
    }
    both_mm2 += cut.most_mm2;
    if (cut.most_mm2 > worst.most_mm2) worst = cut;
  }
  worst.most_mm2 = both_mm2;
  return worst;
}

}  // namespace

std::vector<Point> seen_outline(const oven::Geometry& oven, const Eye& eye, int steps) {
  if (!looks_in(eye)) return {};
  Scene scene = scene_of(oven, eye);
  constexpr Search kSearch{.tolerance = 1e-6, .steps = 60, .take_seen = true};
  if (!narrow(scene, kSearch)) return {};

  // Half the rows evenly, closer together at the ends where a round edge turns quickest; the
  // others one by one where most could still be cut off, which finds the corners.
  const int budget = std::max(4, steps), even_rows = std::max(4, budget / 2);
  std::vector<Row> rows;
  for (int i = 0; i < even_rows; ++i) {
    const double even = static_cast<double>(i) / (even_rows - 1);
    rows.push_back(row_at(scene, scene.near_mm + scene.depth_mm() * even * even * (3 - 2 * even)));
  }
  for (int added = even_rows; added < budget; ++added) {
    Cut worst;
    std::size_t after = 0;
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
      const Cut cut = cut_between(rows, i);
      if (cut.most_mm2 > worst.most_mm2) {
        worst = cut;
        after = i;
      }
    }
    // A corner that is a row already: nothing left to find.
    const double low = rows[after].y_mm, high = rows[after + 1].y_mm;
    const double apart = 1e-3 * (high - low);
    if (!(worst.most_mm2 > 0)) break;
    rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(after) + 1,
                row_at(scene, std::clamp(worst.y_mm, low + apart, high - apart)));
  }

  std::vector<Point> outline, left;
  for (const Row& row : rows) {
    outline.push_back({row.seen.right_mm, row.y_mm});
    if (row.seen.left_mm < row.seen.right_mm) left.push_back({row.seen.left_mm, row.y_mm});
  }
  outline.insert(outline.end(), left.rbegin(), left.rend());
  return outline;
}

}  // namespace hs::sight
