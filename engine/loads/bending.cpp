#include "engine/loads/bending.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace hs::loads {
namespace {

constexpr double kInch_mm = 25.4;

struct Rating {
  double least_in, label_in, ei, moment;
};
constexpr Rating kRatings[] = {
    {0.344, 0.375, 86000, 320},    // 24/16
    {0.438, 0.469, 125000, 370},   // 32/16
    {0.563, 0.594, 250000, 625},   // 40/20
    {0.688, 0.703, 440000, 845},   // 48/24
    {1.063, 1.125, 1265000, 1600}  // 48 oc
};

struct Row {
  double ratio, alpha, beta;
};
constexpr Row kEven[] = {{1.0, .0444, .2874}, {1.2, .0616, .3762}, {1.4, .0770, .4530},
                         {1.6, .0906, .5172}, {1.8, .1017, .5688}, {2.0, .1110, .6102},
                         {3.0, .1335, .7134}, {4.0, .1400, .7410}, {5.0, .1417, .7476}};
constexpr Row kEvenLong{0, .1421, .7500};
constexpr Row kMiddle[] = {{1.0, .1267, .435}, {1.2, .1478, .650}, {1.4, .1621, .789},
                           {1.6, .1715, .875}, {1.8, .1770, .927}, {2.0, .1805, .958}};
constexpr Row kMiddleLong{0, .1851, 1.000};

// Beyond the last row: those of an endless plate, which are larger.
template <std::size_t N>
Row between(const Row (&rows)[N], const Row& endless, double ratio) {
  if (ratio > rows[N - 1].ratio) return endless;
  std::size_t i = 1;
  while (i + 1 < N && rows[i].ratio < ratio) ++i;
  const Row &a = rows[i - 1], &b = rows[i];
  // Straight over the short side to the long one: the rows bend less there.
  const double t = (1 / ratio - 1 / a.ratio) / (1 / b.ratio - 1 / a.ratio);
  return {ratio, a.alpha + t * (b.alpha - a.alpha), a.beta + t * (b.beta - a.beta)};
}

}  // namespace

std::optional<Strip> strip_of(double sheet_mm) {
  // Sheets are read to 0.1 mm.
  constexpr double kQuantum_mm = 0.05;
  std::optional<Strip> best;
  for (const Rating& rating : kRatings) {
    if (sheet_mm + kQuantum_mm < rating.least_in * kInch_mm) break;
    best = Strip{rating.ei * kEiFoot_n_mm, rating.moment * kMomentFoot_n, rating.label_in};
  }
  return best;
}

Bend even_load(double w, double span, double ei) {
  return {5 * w * span * span * span * span / (384 * ei), w * span * span / 8};
}

Bend middle_load(double p, double span, double ei) {
  return {p * span * span * span / (48 * ei), p * span / 4};
}

Bend point_load(double p, double at, double span, double ei) {
  if (at <= 0 || at >= span) return {};
  // The longer part holds the worst point.
  const double a = std::max(at, span - at), b = span - a;
  const double worst = std::sqrt((span * span - b * b) / 3);
  return {p * b * worst * worst * worst / (3 * ei * span), p * a * b / span};
}

Plate plate_even(double q, double a, double b, double e, double t) {
  if (a < b) std::swap(a, b);
  const Row row = between(kEven, kEvenLong, a / b);
  return {row.alpha * q * b * b * b * b / (e * t * t * t), row.beta * q * b * b / (t * t)};
}

Plate plate_middle(double w, double r, double a, double b, double e, double t) {
  if (a < b) std::swap(a, b);
  constexpr double kPoisson = 0.3;
  const Row row = between(kMiddle, kMiddleLong, a / b);
  const double spread = r < 0.5 * t ? std::sqrt(1.6 * r * r + t * t) - 0.675 * t : r;
  const double stress = 3 * w / (2 * std::numbers::pi * t * t) *
                        ((1 + kPoisson) * std::log(2 * b / (std::numbers::pi * spread)) + row.beta);
  return {row.alpha * w * b * b / (e * t * t * t), stress};
}

double withdrawal_lb(double gravity, double shank, double thread) {
  return 15700 * gravity * gravity * shank * thread;
}

double allowable_withdrawal_lb(double gravity, double shank, double thread) {
  return 2850 * gravity * gravity * shank * thread;
}

}  // namespace hs::loads
