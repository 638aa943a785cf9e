#pragma once
// What a lamp throws on the floor of the oven through its mouth, and where its head may be.
//
// Oven frame, as engine/oven has it; what stands in front of the mouth has y < 0. A lamp shines
// evenly inside its beam and not at all outside: a beam's quoted width is where it has faded to
// half, so this is an average. Nothing shines back from walls or roof, so the true light is rather
// more.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "engine/base/quantity.h"
#include "engine/base/vec.h"
#include "engine/oven/oven.h"

namespace hs::light {

// Luminous intensity of an even cone, candela: lumens / (2 pi (1 - cos(beam / 2))). Beam 0..360.
double candela_of(double lumens, double beam_deg);

// Lux on a small surface by the inverse-square cosine law: candela x cos / distance^2. Nothing
// behind the surface. Lengths in mm.
double lux_at(const Vec& point, const Vec& normal, const Vec& head, double candela);

// Smallest distance at which the law holds: five times the source's size, IES practice, second
// hand.
constexpr double law_holds_from_mm(double source_mm) { return 5 * source_mm; }

// Whether a straight ray from a point in front of the mouth reaches a point at or above the oven's
// floor: through both outlines and under the brow.
bool passes_mouth(const oven::Geometry& oven, const Vec& head, const Vec& inside);

struct Target {  // the pizza, on the floor's middle line
  double y_mm = 0, radius_mm = 0;
};

// Nineteen points that stand for equal parts of the pizza; what hangs over the floor is left out.
inline constexpr std::size_t kPoints = 19;
std::vector<Vec> points_of(const Target& target, const oven::Floor& floor);

inline constexpr double kHead_mm = 60;        // a small lamp head, across: our judgement
inline constexpr double kPeelPlay_mm = 50;    // between the peel and a lamp head: our judgement
inline constexpr double kLitShare = 0.9;      // of the pizza that must get light: our judgement
inline constexpr double kNeckPerSpan = 1.15;  // a neck is bent, not straight: our judgement

// What a lamp is judged by.
struct Setup {
  oven::Geometry oven;
  Target target;
  Vec mount;
  double neck_mm = 0;
  double candela = 0, beam_deg = 0;
  std::vector<Vec> eyes;                     // of every cook at the oven, watching and working
  double peel_half_mm = 0, peel_top_mm = 0;  // half the blade's width; how high the peel is held
};

// One place of the head, aimed as well as it can be.
struct Throw {
  Vec aim;               // on the oven's floor
  double lux = 0;        // mean over the pizza, shadow counting as nought
  double least_lux = 0;  // on the darkest of its points
  double lit_share = 0;  // of the pizza that has light at all
};

// Aimed at whichever of the pizza's points puts most light on it, ties to the first. Points as
// from points_of().
Throw best_throw(const Setup& setup, std::span<const Vec> points, const Vec& head);

// Mean lux with every point inside the beam and none in shadow: no aim gives more.
double most_lux(const Setup& setup, std::span<const Vec> points, const Vec& head);

// Why a head may not be at a place; the first that applies.
enum class Against : unsigned char { Nothing, Peel, Eye, Shadow, TooNear };

// The same, each by itself.
struct Judged {
  bool in_peel_path = false, hides_target = false, in_shadow = false, too_near = false;
};

// The head would hide part of the pizza from an eye.
bool hides_target(const Setup& setup, const Vec& eye, const Vec& head);
bool in_peel_path(const Setup& setup, const Vec& head);
// Length of neck that a head at this place needs.
double neck_needed_mm(const Setup& setup, const Vec& head);
// The mouth's edge keeps light from more than a tenth of the pizza, wherever the lamp is aimed.
bool in_shadow(const Setup& setup, std::span<const Vec> points, const Vec& head);
// Nearer to a point of the pizza than the inverse-square law goes.
bool too_near(std::span<const Vec> points, const Vec& head);
// Everything but the neck. Heat is the caller's to judge.
Against against(const Setup& setup, std::span<const Vec> points, const Vec& head);
Judged judge(const Setup& setup, std::span<const Vec> points, const Vec& head);

struct Best {
  std::optional<Vec> head;  // most light within the neck's length
  Throw light;
  std::optional<double> shortest_neck_mm;  // to any place that works
  int places = 0;                          // how many of the grid's places work within the neck
};

// Places tried: a grid of this step through the space in front of the mouth and beside it.
inline constexpr double kGrid_mm = 50;
inline constexpr int kAcross = 18, kDeep = 20, kUp = 18;  // grid points: either side, ahead, up

// Heads on the grid that work. too_hot(head): heat forbids the place. Ties: the shorter neck, then
// the first. Lux are compared whole, necks in tenths.
template <typename TooHot>
Best search(const Setup& setup, TooHot too_hot) {
  Best best;
  const std::vector<Vec> points = points_of(setup.target, setup.oven.floor);
  for (int up = 1; up <= kUp; ++up) {
    for (int ahead = 1; ahead <= kDeep; ++ahead) {
      for (int across = -kAcross; across <= kAcross; ++across) {
        const Vec head{across * kGrid_mm, -ahead * kGrid_mm, up * kGrid_mm};
        const double neck_mm = round_to(neck_needed_mm(setup, head), 10);
        const bool within = neck_mm <= setup.neck_mm;
        if (!within && best.shortest_neck_mm && neck_mm >= *best.shortest_neck_mm) continue;
        // Cheap and nearly always decisive: the lit part of the floor is convex, so where the
        // middle of the pizza is dark more than a tenth of it is.
        if (points.empty() || !passes_mouth(setup.oven, head, points.front())) continue;
        if (against(setup, points, head) != Against::Nothing || too_hot(head)) continue;
        if (!best.shortest_neck_mm || neck_mm < *best.shortest_neck_mm) {
          best.shortest_neck_mm = neck_mm;
        }
        if (!within) continue;
        ++best.places;
        const double best_lux = round_to(best.light.lux, 1);
        if (best.head && round_to(most_lux(setup, points, head), 1) < best_lux) continue;
        const Throw here = best_throw(setup, points, head);
        const double lux = round_to(here.lux, 1);
        const bool better =
            !best.head || lux > best_lux ||
            (lux == best_lux && neck_mm < round_to(neck_needed_mm(setup, *best.head), 10));
        if (!better) continue;
        best.head = head;
        best.light = here;
      }
    }
  }
  return best;
}

// General light: a lamp straight over the middle of a level surface. Lux below it and `aside_mm`
// away: candela x height / distance^3; nothing outside the beam.
double lux_below(double candela, double beam_deg, double height_mm, double aside_mm);

}  // namespace hs::light
