#include "engine/survey/scribe.h"

#include <algorithm>
#include <cmath>

#include "engine/base/quantity.h"

namespace hs::survey {
namespace {

constexpr double kSameHeight_mm = 0.05;
constexpr double kSameAlong_mm = 0.05;

double tenth(double mm) { return round_to(mm, 10); }

// On the panel's line: how far along, nullopt where the point is not on it.
std::optional<double> along_of(const PanelLine& panel, const Point& point) {
  const double length = panel.length_mm();
  if (length <= 0) return {};
  const double ux = (panel.to_x_mm - panel.from_x_mm) / length;
  const double uy = (panel.to_y_mm - panel.from_y_mm) / length;
  const double dx = point.x_mm - panel.from_x_mm, dy = point.y_mm - panel.from_y_mm;
  const double along = dx * ux + dy * uy, beside = dy * ux - dx * uy;
  if (std::abs(beside) > kOnLine_mm) return {};
  if (along < -kOnLine_mm || along > length + kOnLine_mm) return {};
  return std::clamp(along, 0.0, length);
}

std::vector<Knot> knots_on(const PanelLine& panel, std::span<const Point> points, double feet_mm,
                           std::vector<std::size_t>& doubtful) {
  std::vector<Knot> knots;
  for (const Point& point : points) {
    if (!point.height_mm || (point.kind != Kind::Panel && point.kind != Kind::Joint)) continue;
    const auto along = along_of(panel, point);
    if (!along) continue;
    if (point.doubtful) doubtful.push_back(point.first);
    knots.push_back(
        {*along, *point.height_mm - feet_mm, true, point.kind == Kind::Joint, point.doubtful});
  }
  std::stable_sort(knots.begin(), knots.end(),
                   [](const Knot& a, const Knot& b) { return a.along_mm < b.along_mm; });
  std::vector<Knot> kept;
  for (const Knot& knot : knots) {
    if (kept.empty() || knot.along_mm - kept.back().along_mm > kSameAlong_mm) {
      kept.push_back(knot);
      continue;
    }
    Knot& there = kept.back();
    there.ground_mm = std::max(there.ground_mm, knot.ground_mm);
    there.joint |= knot.joint;
    there.doubtful |= knot.doubtful;
  }
  return kept;
}

// The upper hull of the ground, left to right.
std::vector<Knot> upper_hull(const std::vector<Knot>& knots) {
  std::vector<Knot> hull;
  for (const Knot& knot : knots) {
    while (hull.size() >= 2) {
      const Knot& a = hull[hull.size() - 2];
      const Knot& b = hull.back();
      const double turn = (b.along_mm - a.along_mm) * (knot.ground_mm - a.ground_mm) -
                          (b.ground_mm - a.ground_mm) * (knot.along_mm - a.along_mm);
      if (turn < 0) break;
      hull.pop_back();
    }
    hull.push_back(knot);
  }
  return hull;
}

void add_ordinates(Cut& cut, const Ground& ground, double length_mm, double top_mm,
                   double step_mm) {
  std::vector<Knot> places = ground.knots;
  const auto steps = static_cast<int>(std::floor(length_mm / step_mm + 1e-9));
  for (int i = 1; i <= steps; ++i) {
    const double along = i * step_mm;
    const bool near = std::any_of(places.begin(), places.end(), [&](const Knot& knot) {
      return std::abs(knot.along_mm - along) <= kSameAlong_mm;
    });
    if (!near && along < length_mm) places.push_back({along, ground.at(along)});
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const Knot& a, const Knot& b) { return a.along_mm < b.along_mm; });
  for (const Knot& place : places) {
    const double height = tenth(top_mm - place.ground_mm);
    cut.ordinates.push_back({place.along_mm, height, tenth(cut.rip_mm - height), place.read,
                             place.joint, place.doubtful});
  }
}

Way way_of(const Cut& cut, bool reaches) {
  if (!reaches || cut.fall_mm > kWedge_mm) return Way::Legs;
  if (cut.fall_mm <= kStraight_mm) return Way::Straight;
  return cut.fall_mm <= kShim_mm ? Way::Shim : Way::Scribe;
}

}  // namespace

double PanelLine::length_mm() const {
  const double dx = to_x_mm - from_x_mm, dy = to_y_mm - from_y_mm;
  return std::sqrt(dx * dx + dy * dy);
}

double Ground::at(double along_mm) const {
  if (knots.empty()) return 0;
  if (along_mm <= knots.front().along_mm) return knots.front().ground_mm;
  for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
    const Knot& a = knots[i];
    const Knot& b = knots[i + 1];
    if (along_mm > b.along_mm) continue;
    const double share = (along_mm - a.along_mm) / (b.along_mm - a.along_mm);
    return a.ground_mm + share * (b.ground_mm - a.ground_mm);
  }
  return knots.back().ground_mm;
}

Ground ground_under(const PanelLine& panel, std::span<const Point> points, double feet_mm) {
  Ground ground;
  const double length = panel.length_mm();
  std::vector<Knot> knots = knots_on(panel, points, feet_mm, ground.doubtful);
  const bool left = !knots.empty() && knots.front().along_mm <= kAtEnd_mm;
  const bool right = !knots.empty() && knots.back().along_mm >= length - kAtEnd_mm;
  if (!left || !right) {
    ground.lacks = !left && !right
                       ? "readings at both ends"
                       : (left ? "a reading at its right end" : "a reading at its left end");
    return ground;
  }
  for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
    ground.widest_gap_mm =
        std::max(ground.widest_gap_mm, knots[i + 1].along_mm - knots[i].along_mm);
  }
  if (knots.front().along_mm > kSameAlong_mm) {
    knots.insert(knots.begin(), {0, knots.front().ground_mm});
  }
  if (knots.back().along_mm < length - kSameAlong_mm) {
    knots.push_back({length, knots.back().ground_mm});
  }
  knots.front().along_mm = 0;
  knots.back().along_mm = length;
  ground.knots = std::move(knots);
  ground.high_mm = ground.low_mm = ground.knots[0].ground_mm;
  for (const Knot& knot : ground.knots) {
    if (knot.ground_mm > ground.high_mm + kSameHeight_mm) {
      ground.high_mm = knot.ground_mm;
      ground.high_at_mm = knot.along_mm;
    }
    if (knot.ground_mm < ground.low_mm - kSameHeight_mm) {
      ground.low_mm = knot.ground_mm;
      ground.low_at_mm = knot.along_mm;
    }
  }
  // Nearly as high counts as high: the very highest all the same.
  for (const Knot& knot : ground.knots) {
    ground.high_mm = std::max(ground.high_mm, knot.ground_mm);
    ground.low_mm = std::min(ground.low_mm, knot.ground_mm);
  }
  return ground;
}

Rest rest_on(const Ground& ground, double length_mm) {
  const std::vector<Knot> hull = upper_hull(ground.knots);
  if (hull.empty()) return {};
  const double middle = length_mm / 2;
  if (hull.size() == 1) return {hull[0].along_mm, hull[0].along_mm, 0};
  std::size_t i = 0;
  while (i + 2 < hull.size() && hull[i + 1].along_mm < middle) ++i;
  const Knot& a = hull[i];
  const Knot& b = hull[i + 1];
  // Balanced on one point: it rocks, and stays level as well as any other way.
  if (std::abs(b.along_mm - middle) <= kSameAlong_mm && i + 2 < hull.size()) {
    return {b.along_mm, b.along_mm, 0};
  }
  const double slope = (b.ground_mm - a.ground_mm) / (b.along_mm - a.along_mm);
  return {a.along_mm, b.along_mm, slope * length_mm};
}

std::vector<double> level_touches(const Ground& ground) {
  std::vector<double> touches;
  for (const Knot& knot : ground.knots) {
    if (knot.ground_mm >= ground.high_mm - kSameHeight_mm) touches.push_back(knot.along_mm);
  }
  return touches;
}

std::optional<Base> base_on(std::span<const PanelLine> panels, std::span<const Ground> grounds,
                            const Board& board) {
  Base base;
  bool any = false;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const Ground& ground = grounds[i];
    if (!ground.known()) continue;
    if (!any || ground.high_mm > base.high_mm) {
      base.high_mm = ground.high_mm;
      base.high_panel = i;
    }
    if (!any || ground.low_mm < base.low_mm) {
      base.low_mm = ground.low_mm;
      base.low_panel = i;
    }
    any = true;
    base.order.push_back(i);
  }
  if (!any) return {};
  std::stable_sort(base.order.begin(), base.order.end(), [&](std::size_t a, std::size_t b) {
    return grounds[a].high_mm > grounds[b].high_mm;
  });
  base.highest_mm = std::max(base.high_mm, board.inside_high_mm.value_or(base.high_mm));
  base.lowest_mm = std::min(base.low_mm, board.inside_low_mm.value_or(base.low_mm));
  // A tenth inwards at both ends, so that a top in tenths suits.
  base.lowest_top_mm = std::ceil((base.highest_mm + board.least_mm) * 10 - 1e-6) / 10;
  base.highest_top_mm = std::floor((base.low_mm + board.height_mm) * 10 + 1e-6) / 10;
  base.board_needed_mm = tenth(base.highest_mm - base.low_mm + board.least_mm);
  base.possible = base.lowest_top_mm <= base.highest_top_mm;
  double top = board.top_mm.value_or(board.usual_mm);
  if (!board.top_mm) {
    // Where no height suits, enough must stay of the board.
    top = std::max(std::min(top, base.highest_top_mm), base.lowest_top_mm);
  }
  base.top_mm = tenth(top);
  base.fits = base.possible && base.top_mm >= base.lowest_top_mm - kSameHeight_mm &&
              base.top_mm <= base.highest_top_mm + kSameHeight_mm;
  base.cuts.resize(panels.size());
  for (const std::size_t i : base.order) {
    const Ground& ground = grounds[i];
    Cut cut;
    cut.least_mm = tenth(base.top_mm - ground.high_mm);
    cut.most_mm = tenth(base.top_mm - ground.low_mm);
    cut.fall_mm = ground.high_mm - ground.low_mm;
    cut.rip_mm = cut.most_mm;
    cut.compass_mm = tenth(cut.rip_mm - cut.least_mm);
    cut.compass_unripped_mm = tenth(board.height_mm - cut.least_mm);
    cut.touches = level_touches(ground);
    cut.rest = rest_on(ground, panels[i].length_mm());
    const bool reaches = cut.most_mm <= board.height_mm + kSameHeight_mm &&
                         cut.least_mm >= board.least_mm - kSameHeight_mm;
    cut.way = way_of(cut, reaches);
    add_ordinates(cut, ground, panels[i].length_mm(), base.top_mm, board.step_mm);
    base.cuts[i] = std::move(cut);
  }
  return base;
}

}  // namespace hs::survey
