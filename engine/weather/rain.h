#pragma once
// Rain on the slant: how steeply it comes down in a wind, and what a cover's edge or a counter's
// overhang keeps dry.
//
// A straight slant at a steady wind. Gusts, eddies behind a wall, splash from the ground and what
// runs off an edge are not in it: what it calls dry can get wet, what it calls wet does.

#include <optional>

namespace hs::weather {

// Drops that the table of fall speeds covers, mm.
inline constexpr double kSmallestDrop_mm = 0.5, kLargestDrop_mm = 5.8;

// What findings are judged by: a drop of moderate rain, near the median of 13 mm/h (field rule,
// second hand). Drizzle slants far more.
inline constexpr double kUsualDrop_mm = 2;

// How fast does a drop fall in still air at sea level, m/s? Gunn and Kinzer 1949, table 2 (second
// hand, two transcriptions agree), straight lines between its rows; nullopt outside 0.5..5.8 mm.
// Within 2 % of the formula of Atlas and others 1973 from 1 to 5 mm (computed).
std::optional<double> fall_speed_m_s(double drop_mm);

// Middle drop by volume, mm, of rain at this rate, mm/h (above 0). Best 1950: of the water in the
// air, 1.105 I^0.232 (computed from his law); Laws and Parsons 1943: of what lands, 1.24 I^0.182
// (second hand). They agree at 10 mm/h and differ by an eighth at 100.
double median_drop_best_mm(double rain_mm_h);
double median_drop_laws_parsons_mm(double rain_mm_h);

// Angle of falling rain from the vertical, degrees, 0..90: tan = wind / fall speed. Wind in m/s, 0
// or more; a drop outside the table is taken at the table's end.
double slant_deg(double wind_m_s, double drop_mm);

// How far does rain come in under an edge this high above the point, mm? height x wind / fall
// speed; 0 for a point at or above the edge.
double reach_mm(double height_mm, double wind_m_s, double drop_mm);

// How far below an overhang does its face stay dry, mm? overhang x fall speed / wind; nullopt: all
// the way down, in still air.
std::optional<double> dry_face_mm(double overhang_mm, double wind_m_s, double drop_mm);

// Strongest wind, m/s, at which an edge this far out and this high above a point keeps it dry;
// nullopt: any wind does (the point is not below the edge). 0 where the edge is not out beyond it.
std::optional<double> dry_up_to_m_s(double out_mm, double height_mm, double drop_mm);

// Driving rain on an upright face, mm/h: a x wind x rain x cos. Lacy, as in ISO 15927-3 (second
// hand): a = 0.222 s/m in the open, 0.2 exposed, 0.07 half way up a sheltered front. Angle between
// wind and the face's normal; from behind the face: 0.
inline constexpr double kDrivingOpen_s_m = 0.222;
double driving_rain_mm_h(double wind_m_s, double rain_mm_h, double angle_deg,
                         double factor_s_m = kDrivingOpen_s_m);

}  // namespace hs::weather
