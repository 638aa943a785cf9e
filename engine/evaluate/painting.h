#pragma once
// Paint: which face in which colour, how much, when: values of the packet.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/finish/air.h"
#include "engine/finish/paint.h"
#include "engine/finish/times.h"
#include "engine/parts/parts.h"

namespace hs::evaluate {

// A face or edge of a part, all its pieces together.
struct PaintedFace {
  int part = 0;                       // its number in the parts list
  std::string_view part_name;         // "door"
  std::string face;                   // "hinged edge" (parts/sides.h)
  std::optional<std::size_t> colour;  // absent: primer only
  double area_m2 = 0;                 // of all pieces, openings taken out
};

// The primer, or one colour.
struct PaintAmount {
  std::string name;
  double area_m2 = 0;  // once over
  int coats = 0;
  double least_l = 0, most_l = 0;  // by the coverage's two ends, with what is lost
  int quarts = 0, litres = 0;      // whole cans that hold most_l
};

// What the time to the next coat is called.
inline constexpr std::string_view kRecoat = "next coat";

struct WaitingTime {
  std::string_view what;        // "primer and each coat: next coat"
  std::optional<double> hours;  // absent: not in this air, or the label is to be read
  rules::Basis basis = rules::Basis::Memory;
};

struct Painting {
  std::vector<std::string> colours;
  std::vector<PaintedFace> faces;
  PaintAmount primer;
  std::vector<PaintAmount> paints;  // those that are used
  finish::Coating coating;          // what the amounts are worked out with
  std::vector<WaitingTime> waits;   // by the air that was given, else by the label's 25 C, 50 %
  finish::Weather air;
  bool air_given = false;
  finish::Day day;  // the gate for that air; nothing known where not given
  std::vector<finish::MaskLine> masks;
  int doors_numbered = 0;  // doors and drawer fronts, off and numbered
  // Inset fronts: the gap as built, what paint takes of it, what is left. Absent: not inset.
  std::optional<double> gap_mm, film_mm, gap_left_mm;
};

Painting painting_of(const config::Config& config, const parts::List& parts,
                     std::span<const frame::Piece> pieces);

}  // namespace hs::evaluate
