// The sheets under the oven's feet, and stiffeners where they sag too much.

#include <algorithm>

#include "engine/loads/loads.h"

namespace hs::loads {
namespace {

constexpr double kTwoBy_mm = 38.1;
constexpr int kMostStiffeners = 4;
// Treated No. 2 southern pine, 1.4e6 psi: NDS supplement, from memory.
constexpr double kLumber_n_mm2 = 9650;
struct Lumber {
  int name_in;
  double high_mm;
};
constexpr Lumber kLumber[] = {{3, 63.5}, {4, 88.9}, {6, 139.7}};  // PS 20: 2 1/2, 3 1/2, 5 1/2 in

// As wide as half the span, or as the foot: an endless plate under one load sags like a strip of
// 1.35 spans (Roark, case 1b, against a beam); plywood is some five times less stiff across. Our
// judgement, on the safe side.
double strip_mm(double foot_mm, double span_mm, double depth_mm) {
  return std::min(std::max(foot_mm, span_mm / 2), std::max(depth_mm, foot_mm));
}

struct Judged {
  Bend bend;
  double strength = 0;
};

Judged judge(double foot_n, double span_mm, const std::optional<double>& at_mm, const Strip& strip,
             double wide_mm, int layers) {
  const double ei = strip.ei_n_mm * wide_mm * layers;
  const Bend bend =
      at_mm ? point_load(foot_n, *at_mm, span_mm, ei) : middle_load(foot_n, span_mm, ei);
  return {bend, bend.moment_n_mm / (strip.moment_n * wide_mm * layers)};
}

}  // namespace

std::optional<Strip> outdoor_strip(double sheet_mm) {
  std::optional<Strip> strip = strip_of(sheet_mm);
  if (!strip) return {};
  strip->ei_n_mm *= kMoistStiffness;
  strip->moment_n *= kMoistStrength * kStaysStrength;
  return strip;
}

Deck deck_of(double foot_n, double foot_mm, double span_mm, const std::optional<double>& at_mm,
             double sheet_mm, int layers, double depth_mm) {
  Deck deck;
  deck.span_mm = span_mm;
  deck.layers = layers;
  deck.thick_mm = sheet_mm * layers;
  deck.limit_mm = span_mm * kSagShare;
  deck.strip_mm = strip_mm(foot_mm, span_mm, depth_mm);
  // Thinner than any rating: as the thinnest, thinned in proportion to what bends.
  constexpr double kThinnest_mm = 0.344 * 25.4;
  const std::optional<Strip> rated = outdoor_strip(std::max(sheet_mm, kThinnest_mm));
  if (!rated) return deck;
  Strip strip = *rated;
  if (sheet_mm < kThinnest_mm) {
    const double share = sheet_mm / kThinnest_mm;
    strip.ei_n_mm *= share * share * share;
    strip.moment_n *= share * share;
  }
  const Judged as_drawn = judge(foot_n, span_mm, at_mm, strip, deck.strip_mm, layers);
  deck.bend = as_drawn.bend;
  deck.strength = as_drawn.strength;
  deck.stiffened_mm = deck.bend.sag_mm;
  if (deck.holds()) return deck;
  deck.mended = false;
  for (int count = 1; count <= kMostStiffeners; ++count) {
    const double clear_mm = (span_mm - count * kTwoBy_mm) / (count + 1);
    if (clear_mm <= foot_mm) break;
    const Judged with =
        judge(foot_n, clear_mm, {}, strip, strip_mm(foot_mm, clear_mm, depth_mm), layers);
    deck.stiffeners = count;
    deck.stiffened_mm = with.bend.sag_mm;
    deck.mended = with.bend.sag_mm <= clear_mm * kSagShare &&
                  kYearsSag * with.bend.sag_mm <= clear_mm * kYearsShare && with.strength <= 1;
    if (deck.mended) break;
  }
  if (deck.stiffeners == 0) return deck;
  for (const Lumber& lumber : kLumber) {
    const double inertia = kTwoBy_mm * lumber.high_mm * lumber.high_mm * lumber.high_mm / 12;
    const Bend bend = middle_load(foot_n, depth_mm, kLumber_n_mm2 * inertia);
    if (bend.sag_mm > depth_mm * kSagShare) continue;
    deck.stiffener_in = lumber.name_in;
    break;
  }
  return deck;
}

}  // namespace hs::loads
