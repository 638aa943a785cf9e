#pragma once
// One bend in sheet metal: how much of the flat sheet it takes, and what a press brake can fold.
//
// Thickness is always a decimal length. A gauge number names a different thickness in each series,
// and orders by it come back wrong; gauge_readings() tells them apart.

#include <optional>
#include <span>
#include <string>

#include "engine/base/number_text.h"

namespace hs::sheet {

// What is bent, and how: the fabricator's own K and radius take the place of these, where known.
// K is where the neutral line lies, as a share of the thickness from the inside of the bend. 0.45
// where nothing is known; 0.42 to 0.50 is the published range for stainless (several, seen).
struct Metal {
  double thick_mm = 1.588;
  double inside_radius_mm = 1.588;
  double k = 0.45;
};

inline constexpr double kLeastK = 0.3, kMostK = 0.5;  // outside it a K is a slip of the pen

// How long is the arc of the neutral line, mm? pi/180 x A x (R + K T). Angle: how far the sheet is
// turned from flat, 0 to 180. Exact for the K given; a shop's K moves it by some 0.1 mm a bend.
// Source: bend allowance, general practice (many pages, seen).
double allowance_mm(const Metal& metal, double angle_deg);

// From the start of the bend to where the outer faces would meet, mm: (R + T) tan(A/2). Angle 0 to
// 170: at 180 the faces never meet (use hem_mm). Source: FAA airframe handbook vol. 1 (seen).
double setback_mm(const Metal& metal, double angle_deg);

// How much shorter is the flat than the two outside lengths together, mm? 2 setbacks less the
// allowance. A page in circulation puts the allowance inside the tangent: that is a misprint.
double deduction_mm(const Metal& metal, double angle_deg);

// The flat length, mm, of outside lengths with a 90 degree bend between each and the next: their
// sum less a deduction a bend. An empty list is 0.
double flat_mm(std::span<const double> outside_mm, const Metal& metal);

// The allowance by the aircraft shops' figures, mm: A (0.01743 R + 0.0078 T), which is K of about
// 0.447. Source: shop practice (seen). For comparison.
double shop_allowance_mm(double thick_mm, double inside_radius_mm, double angle_deg);

// Flat length, mm, that a hem adds below the flange's lowest edge: return + fold - 2 (r + T), where
// the return is measured outside, from the lowest edge, and r is half the hem's gap (closed: 0).
// At K 0.5 a closed hem of any return L adds L - 0.43 T, the trade's figure (from memory). A hem
// that is crushed stretches as it likes: the fabricator's own table wins.
double hem_mm(const Metal& metal, double return_mm, double gap_mm);

// K of stainless by the handbook's table: Machinery's Handbook 26th ed., as tabulated on a page
// (second hand): T 0.029 and 0.078 in, R 0.030 to 0.188 in, straight lines between. nullopt
// outside.
std::optional<double> handbook_k(double thick_mm, double inside_radius_mm);

// What a gauge number may mean, mm. Stainless: US standard gauge (seen, 14 16 18 20). Carbon steel:
// manufacturers' standard (14 seen, others from memory). Aluminium: AWG, 0.005 in x 92^((36-n)/39)
// (ASTM B258, from memory; 16 seen). nullopt for other numbers than 14, 16, 18, 20.
struct GaugeReadings {
  double stainless_mm = 0, carbon_steel_mm = 0, aluminium_mm = 0;
};
std::optional<GaugeReadings> gauge_readings(int gauge);

// Why a gauge number is not enough: "16 gauge is 1.59 mm in stainless, 1.52 in carbon steel, 1.29
// in aluminium: order 1.59 mm, not a gauge." Empty for a number without readings.
std::string gauge_words(int gauge, Unit unit);

// Is this thickness another metal's gauge, read off the wrong chart? The gauge; nullopt where it is
// a stainless thickness, or nobody's, to half a percent.
std::optional<int> wrong_chart(double thick_mm);

// Steel and its growth. Density of 304 and 316: 8.0 g/cm3 (data sheets, seen; others print 7.90 to
// 8.03, 1.2 %). Growth of 304, 0 to 100 C: 17.3e-6 /K (data sheet, seen; 17.2e-6 is as common).
inline constexpr double kDensity_g_cm3 = 8.0;
inline constexpr double kGrowth_per_k = 17.3e-6;

// How much longer does a length get, mm? length x growth x warmer by.
constexpr double growth_mm(double length_mm, double warmer_k, double per_k = kGrowth_per_k) {
  return length_mm * warmer_k * per_k;
}

// kg of sheet: area in mm2.
constexpr double mass_kg(double area_mm2, double thick_mm, double g_cm3 = kDensity_g_cm3) {
  return area_mm2 * thick_mm * g_cm3 * 1e-6;
}

// What a press brake can fold. Fabricators' pages (seen) disagree: the strict limit of each pair
// refuses, the careful one warns. All may be replaced by the fabricator's own.
struct Limits {
  double least_radius_t = 1.0, careful_radius_t = 1.25;  // times T: usual; one shop's advice
  double flange_t = 4;                                   // a flange at least 4 T (one shop) ...
  double flange_plus_radius_t = 3;                       // ... and 3 T + R (others)
  double careful_flange_t = 0.77 * 8;                    // V-die of 8 T, flange 0.77 V: from memory
  double least_return_t = 4, usual_return_t = 6;  // a closed hem's: least our judgement, usual seen
  double least_gap_t = 1;                         // an open hem's inside, times T (seen)
  double hole_t = 2, careful_hole_t = 4;  // hole's edge to the bend: so many T, and R (seen)
  double hole_edge_t = 2;                 // hole's edge to a cut edge: common practice
};

double least_flange_mm(const Metal& metal, const Limits& limits);

}  // namespace hs::sheet
