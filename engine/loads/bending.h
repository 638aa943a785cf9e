#pragma once
// Sheets, strips, plates, beams and screws under load, by published formulas. N, mm, N/mm2.

#include <optional>
#include <span>

namespace hs::loads {

// ---- Strips of plywood, face grain across the supports ----

// What a strip of plywood 1 mm wide bears. Values of its span rating, by thickness as sold:
// AWC ASD/LRFD manual, table M9.2-1 (the APA's own figures), seen for stiffness and for the
// strength of 48/24; strength of the others from memory.
struct Strip {
  double ei_n_mm = 0;         // N mm2 for each mm of width
  double moment_n = 0;        // allowable moment, N mm for each mm of width
  double label_thick_in = 0;  // of the rating
};
// The strongest rating that a sheet of this thickness may carry: its least thickness by PS 1 must
// be met. nullopt: thinner than 3/8 in.
std::optional<Strip> strip_of(double sheet_mm);

// 1 lb in2 for each foot of width, and 1 lb in for each foot, in the units above.
inline constexpr double kPound_n = 4.4482216;
inline constexpr double kEiFoot_n_mm = kPound_n * 25.4 * 25.4 / 304.8;
inline constexpr double kMomentFoot_n = kPound_n * 25.4 / 304.8;

// ---- Beams on two supports ----

struct Bend {
  double sag_mm = 0;
  double moment_n_mm = 0;
};
// Even load: 5 w L^4 / (384 EI) and w L^2 / 8. Load in the middle: P L^3 / (48 EI) and P L / 4.
// Source: general; the second from memory.
Bend even_load(double w_n_mm, double span_mm, double ei_n_mm2);
Bend middle_load(double p_n, double span_mm, double ei_n_mm2);
// Load anywhere: `at_mm` from one end. Sag under the worst point, moment P a b / L. Outside of the
// span: nothing. Source: general.
Bend point_load(double p_n, double at_mm, double span_mm, double ei_n_mm2);

// ---- Plates on four edges ----

struct Plate {
  double sag_mm = 0;
  double stress_n_mm2 = 0;
};
// Even load, edges held down but free to turn, Poisson's ratio 0.3: Roark, table 11.4, case 1a.
// Between its rows at most 1 % low, 1.2 % high. `a` and `b` in any order.
Plate plate_even(double q_n_mm2, double a_mm, double b_mm, double e_n_mm2, double thick_mm);
// One load over a circle of radius r in the middle: case 1b.
Plate plate_middle(double w_n, double r_mm, double a_mm, double b_mm, double e_n_mm2,
                   double thick_mm);

// ---- Wood screws ----

// Withdrawal from side grain, to failure: 15 700 G^2 D L lb, inches (Wood Handbook, chapter 8,
// second hand). Plywood holds less than this says.
double withdrawal_lb(double gravity, double shank_in, double thread_in);
// What a design may count on: 2850 G^2 D lb for each inch of thread (NDS, seen).
double allowable_withdrawal_lb(double gravity, double shank_in, double thread_in);

}  // namespace hs::loads
