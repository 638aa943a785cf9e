#include "engine/loads/tip.h"

#include <algorithm>
#include <cmath>

namespace hs::loads {
namespace {

constexpr double kMetre_mm = 1000;

double turn(const Spot& a, const Spot& b, const Spot& c) {
  return (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - a.x_mm);
}

struct Edge {
  Spot at;
  double out_x = 0, out_y = 0;  // of length 1, outwards

  double outside_mm(double x_mm, double y_mm) const {
    return (x_mm - at.x_mm) * out_x + (y_mm - at.y_mm) * out_y;
  }
  Side side() const {
    if (std::abs(out_y) >= std::abs(out_x)) return out_y < 0 ? Side::Front : Side::Back;
    return out_x > 0 ? Side::Right : Side::Left;
  }
};

std::vector<Edge> edges_of(std::span<const Spot> feet) {
  const std::vector<Spot> hull = hull_of(feet);
  std::vector<Edge> edges;
  if (hull.size() < 3) return edges;
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const Spot &a = hull[i], &b = hull[(i + 1) % hull.size()];
    const double dx = b.x_mm - a.x_mm, dy = b.y_mm - a.y_mm;
    const double length = std::sqrt(dx * dx + dy * dy);
    edges.push_back({a, dy / length, -dx / length});
  }
  return edges;
}

struct Moments {
  double holds_n_m = 0, turns_n_m = 0;
};

Moments of_weight(std::span<const Lump> lumps, const Edge& edge) {
  Moments sum;
  for (const Lump& lump : lumps) {
    const double moment =
        lump.mass_kg * kGravity_m_s2 * edge.outside_mm(lump.x_mm, lump.y_mm) / kMetre_mm;
    (moment < 0 ? sum.holds_n_m : sum.turns_n_m) += std::abs(moment);
  }
  return sum;
}

double of_push(const Push& push, const Edge& edge) {
  return std::max(0.0, (push.x_n * edge.out_x + push.y_n * edge.out_y) * push.z_mm / kMetre_mm);
}

}  // namespace

std::vector<Spot> hull_of(std::span<const Spot> spots) {
  std::vector<Spot> sorted(spots.begin(), spots.end());
  std::sort(sorted.begin(), sorted.end(), [](const Spot& a, const Spot& b) {
    return a.x_mm < b.x_mm || (a.x_mm == b.x_mm && a.y_mm < b.y_mm);
  });
  if (sorted.size() < 3) return sorted;
  std::vector<Spot> hull;
  for (const bool upper : {false, true}) {
    const std::size_t start = hull.size();
    for (std::size_t i = 0; i < sorted.size(); ++i) {
      const Spot& spot = sorted[upper ? sorted.size() - 1 - i : i];
      while (hull.size() >= start + 2 &&
             turn(hull[hull.size() - 2], hull[hull.size() - 1], spot) <= 0) {
        hull.pop_back();
      }
      hull.push_back(spot);
    }
    hull.pop_back();
  }
  return hull;
}

Tip tip_of(std::span<const Lump> lumps, std::span<const Push> pushes, std::span<const Spot> feet) {
  Tip worst;
  bool any = false;
  for (const Edge& edge : edges_of(feet)) {
    Moments sum = of_weight(lumps, edge);
    for (const Push& push : pushes) sum.turns_n_m += of_push(push, edge);
    const bool still = sum.turns_n_m * kMost <= sum.holds_n_m;
    const double factor = still ? kMost : sum.holds_n_m / sum.turns_n_m;
    // Ties to the first edge, within what the last bits of a machine differ by.
    if (any && factor >= worst.factor - 1e-9) continue;
    any = true;
    worst = {factor, sum.holds_n_m, sum.turns_n_m, edge.side(), 0};
    for (const Spot& foot : feet) {
      worst.reach_mm = std::max(worst.reach_mm, -edge.outside_mm(foot.x_mm, foot.y_mm));
    }
  }
  return worst;
}

std::optional<double> tips_at_n(std::span<const Lump> lumps, std::span<const Spot> feet,
                                const Push& one) {
  std::optional<double> least;
  for (const Edge& edge : edges_of(feet)) {
    const double arm = of_push(one, edge);
    if (arm <= 1e-9) continue;
    const Moments sum = of_weight(lumps, edge);
    const double force = std::max(0.0, sum.holds_n_m - sum.turns_n_m) / arm;
    if (!least || force < *least) least = force;
  }
  return least;
}

double wind_pressure_pa(double gust, double exposure, double direction) {
  return 0.613 * exposure * direction * gust * gust;
}

}  // namespace hs::loads
