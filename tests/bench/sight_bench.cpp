// One visible-share evaluation against a regular grid of rays that is as accurate.
//
// Both are measured on the same 50 random ovens and eyes against the same reference (200,000
// strips, each exact across). The grid is the coarsest N x N whose worst error over the 50 is no
// greater than ours. It is a fair one: what depends on the depth alone is worked out once a row.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "engine/oven/oven.h"
#include "engine/sight/sight.h"
#include "tests/bench/bench.h"
#include "tests/sight/random_ovens.h"

namespace {

using hs::oven::Geometry;
using hs::oven::Outline;
using hs::sight::Eye;

struct Case {
  Geometry oven;
  Eye eye;
  double reference = 0;  // share of the floor
};

double strips_share(const Geometry& oven, const Eye& eye) {
  constexpr int kStrips = 200000;
  const double depth = oven.floor.far_mm - oven.floor.near_mm;
  double sum = 0;
  for (int i = 0; i < kStrips; ++i) {
    const auto span =
        hs::sight::seen_at(oven, eye, oven.floor.near_mm + depth * (i + 0.5) / kStrips);
    sum += std::max(0.0, span.right_mm - span.left_mm);
  }
  return sum * depth / kStrips / oven.floor.area_mm2();
}

// Share of the floor's points on an n x n grid over its rectangle that a ray reaches.
double grid_share(const Geometry& oven, const Eye& eye, int n) {
  int points = 0, seen = 0;
  const double depth = oven.floor.far_mm - oven.floor.near_mm;
  for (int row = 0; row < n; ++row) {
    const double y = oven.floor.near_mm + depth * (row + 0.5) / n;
    const double from_eye = y + eye.distance_mm;
    const double outer_left = y / from_eye;  // of the ray's way, from the outer plane on
    const double inner_left = (y - oven.throat_mm) / from_eye;
    const double outer_half = oven.outer.half_width_at(eye.height_mm * outer_left);
    const double inner_half = oven.inner.half_width_at(eye.height_mm * inner_left);
    const double floor_half = oven.floor.half_width_at(y);
    const bool under_brow = oven.brow_mm <= 0 || eye.distance_mm <= oven.brow_mm ||
                            eye.height_mm * (y + oven.brow_mm) / from_eye <= oven.brow_edge_mm;
    const double outer_x = eye.x_mm * outer_left, outer_share = 1 - outer_left;
    const double inner_x = eye.x_mm * inner_left, inner_share = 1 - inner_left;
    for (int column = 0; column < n; ++column) {
      const double x = oven.floor.half_width_mm * (2 * (column + 0.5) / n - 1);
      const bool on_floor = std::abs(x) <= floor_half;
      points += on_floor;
      seen += on_floor && under_brow && std::abs(outer_x + outer_share * x) <= outer_half &&
              std::abs(inner_x + inner_share * x) <= inner_half;
    }
  }
  return points == 0 ? 0 : static_cast<double>(seen) / points;
}

// The coarsest grid whose error stays within `worst` on every case: sizes 2 % apart. The case that
// failed last is tried first, so that most sizes fail at once.
int coarsest_grid(std::vector<Case> cases, double worst) {
  constexpr int kTooFine = 20000;
  for (int n = 16; n < kTooFine; n += std::max(1, n / 50)) {
    const auto failed = std::find_if(cases.begin(), cases.end(), [&](const Case& c) {
      return std::abs(grid_share(c.oven, c.eye, n) - c.reference) > worst;
    });
    if (failed == cases.end()) return n;
    std::rotate(cases.begin(), failed, failed + 1);
  }
  return kTooFine;
}

}  // namespace

void bench_sight() {
  // Cases of which part is seen: nobody needs 48 nodes, or a grid, to see all or nothing.
  constexpr std::size_t kCases = 50;
  hs::test::Random random(2026);
  std::vector<Case> cases;
  while (cases.size() < kCases) {
    const hs::test::Look look = hs::test::usual_look(random);
    Case c{hs::oven::geometry_of(look.oven), look.eye};
    c.reference = strips_share(c.oven, c.eye);
    if (c.reference > 0.01 && c.reference < 0.99) cases.push_back(c);
  }

  double worst = 0;
  for (const Case& c : cases) {
    worst = std::max(worst, std::abs(hs::sight::seen_share_of_floor(c.oven, c.eye) - c.reference));
  }
  const int grid = coarsest_grid(cases, worst);

  std::size_t next = 0;
  const auto one_of = [&]() -> const Case& { return cases[next++ % cases.size()]; };
  const double ours_ns = hs::bench::median_ns(
      [&] {
        const Case& c = one_of();
        hs::bench::keep(hs::sight::seen_share_of_floor(c.oven, c.eye));
      },
      5000);
  // A grid takes the same time for every call in a case, so one pass over the cases is enough.
  double grid_ns = 0;
  for (const Case& c : cases) {
    const auto start = std::chrono::steady_clock::now();
    hs::bench::keep(grid_share(c.oven, c.eye, grid));
    grid_ns +=
        std::chrono::duration<double, std::nano>(std::chrono::steady_clock::now() - start).count() /
        static_cast<double>(cases.size());
  }

  hs::bench::print("sight: worst error of a visible share, 50 ovens", worst * 100,
                   "% of the floor");
  hs::bench::print("sight: one visible share", ours_ns / 1000, "us");
  hs::bench::print("sight: coarsest ray grid of equal worst error, rays a side", grid, "rays");
  hs::bench::print("sight: the same share by that grid", grid_ns / 1000, "us");
  hs::bench::print("sight: times faster than the ray grid", grid_ns / ours_ns, "x (target 3000)");
}
