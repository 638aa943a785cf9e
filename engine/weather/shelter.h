#pragma once
// What rain reaches on a counter and on the face of its cabinet, under a cover or under none, and
// where the water goes then.

#include <optional>

namespace hs::weather {

// A counter seen from its end; heights above the ground, lengths outward from its front edge.
struct Front {
  double counter_mm = 900;   // top of the counter
  double depth_mm = 610;     // front edge to back
  double overhang_mm = 25;   // front edge in front of the cabinet's face
  double face_low_mm = 100;  // lowest part of the face that must stay dry: the kick board's top
};
struct Edge {
  double height_mm = 2400;  // underside of the cover at its edge
  double out_mm = 0;        // in front of the counter's edge; negative: behind it
};

struct Wet {
  double top_mm = 0;         // of the counter's depth, from its front edge
  double face_dry_mm = 0;    // of the face, downward from the counter's top; its height: all of it
  double face_mm = 0;        // height of the face
  bool cover_helps = false;  // the cover keeps more of the face dry than the overhang alone
};

// Rain blown straight at the front by this wind, m/s. Without an edge the whole top is wet and the
// counter's overhang alone shelters the face.
Wet wet_front(const Front& front, const std::optional<Edge>& edge, double wind_m_s, double drop_mm);

// Fall of a hard surface away from a house within 10 ft, as a share: 2 %, IRC R401.3, exception
// (second hand, three pages). 1/4 in per ft is 2.083 %. Bare ground: 6 in in the first 10 ft, 5 %.
inline constexpr double kHardFall = 0.02, kBareFall = 0.05;
inline constexpr double kFallRun_mm = 3048;  // 10 ft, over which a fall is measured
constexpr double fall_share(double fall_mm) { return fall_mm / kFallRun_mm; }

// A counter's edge drips clear of the face where it overhangs at least 1 in (25 mm) and has a
// groove underneath: practice, from memory.
inline constexpr double kDripOverhang_mm = 25;

}  // namespace hs::weather
