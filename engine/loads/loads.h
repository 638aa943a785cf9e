#pragma once
// What the cabinets carry and what becomes of them under it: masses, the sheets under the oven's
// feet, tipping, the ground, what people lift, growth over the year.
//
// Each run is taken by itself, as if it were not screwed to its neighbour: the worst moment of the
// building, and less than what stands in the end. What is put on a counter is not in it. An
// engineer's word, and a building office's, come before any of it.

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/piece.h"
#include "engine/loads/bending.h"
#include "engine/loads/mass.h"
#include "engine/loads/tip.h"

namespace hs::loads {

// One cabinet run, as the frame has it.
struct Stands {
  bool oven = false;
  Block counter;  // from the ground to the height in use, as wide as the counter's top
};

struct Asked {
  std::span<const frame::Piece> pieces;
  std::span<const Stands> runs;
  std::optional<double> oven_base_mm;  // what the oven stands on; absent: there is none
  std::optional<Block> pier;           // of masonry, under the oven
};

enum class Case : std::uint8_t { Shut, Open, Child, Pull, Wind };
std::string_view case_name(Case one);  // "a pull at the top"

struct TipCase {
  Case what = Case::Shut;
  Tip tip;
  // What a tie at the counter's back edge, or anchors at the far feet, must bear so that the factor
  // is kEnough. A tie to a wall behind holds against tipping to the front only. 0: nothing.
  double tie_n = 0, anchor_n = 0;
};

struct RunLoads {
  bool oven = false;
  Lump whole;  // doors and drawers shut, the oven on it
  std::vector<TipCase> cases;
  double gust_m_s = 0;      // that tips it
  double pull_n = 0;        // at the top, to the front, that tips it
  double support_n = 0;     // on one of the supports under the carrying boards, most; 0: not known
  double pressure_kpa = 0;  // under a small paver there
};

// The oven on its own feet.
struct OvenLoads {
  Lump body;
  double foot_n = 0;  // on one foot, where it rocks on two
  double gust_m_s = 0, pull_n = 0;
};

inline constexpr double kYearsShare = 1.0 / 240;  // US practice for a load that stays
// Plywood out of doors may hold 16 % of water: 0.85 of its stiffness, 0.75 of its strength (APA
// panel design, from memory). A load that stays: 0.9 of its strength (NDS table 2.3.2), and twice
// the sag in years (NDS 3.5.2, wood structural panels); both from memory.
inline constexpr double kMoistStiffness = 0.85, kMoistStrength = 0.75;
inline constexpr double kStaysStrength = 0.9, kYearsSag = 2.0;

enum class Under : std::uint8_t { Sheets, Block };  // under the oven: the deck, or the block's top
struct Deck {
  Under what = Under::Sheets;
  double span_mm = 0, thick_mm = 0, strip_mm = 0;
  int layers = 1;
  Bend bend;                // of the strip under one foot
  double limit_mm = 0;      // span / 360
  double strength = 0;      // moment over what is allowed
  int stiffeners = 0;       // of 2x lumber on edge under it, from front to back
  int stiffener_in = 0;     // 4: a 2x4; 0: none is enough
  double stiffened_mm = 0;  // sag then, at first
  bool mended = true;       // false: even with as many as there is room for it is too weak
  double years_mm() const { return kYearsSag * bend.sag_mm; }  // sag after years of the same weight
  double years_limit_mm() const { return span_mm * kYearsShare; }
  bool holds() const {
    return bend.sag_mm <= limit_mm && years_mm() <= years_limit_mm() && strength <= 1;
  }
};

struct Lift {
  std::string_view what;
  double mass_kg = 0;
};

enum class Grows : std::uint8_t { BaseBoard, Front, MetalTop };
struct Growth {
  Grows what = Grows::BaseBoard;
  double length_mm = 0;
  double longer_mm = 0, shorter_mm = 0;  // when it is hottest, coldest, than when it was built
  std::optional<double> room_mm;         // that the drawing leaves it
  double needed_mm = 0;                  // of that: for a whole board its gaps together
  double slot_mm = 0;                    // how long a screw's slot must be at its end
};

// Feet that are said to be farther apart than what they stand on reaches.
struct FeetOff {
  bool across = true;   // left to right, else front to back
  double feet_mm = 0;   // outside to outside
  double under_mm = 0;  // of what they stand on, as far as it reaches both ways
};

struct Loads {
  bool made = false;  // false: no cabinet
  Lump whole;
  std::vector<RunLoads> runs;
  std::optional<OvenLoads> oven;
  std::vector<FeetOff> feet_off;
  std::vector<Deck> decks;  // none where a foot stands beside them
  std::vector<Lift> lifts;  // heaviest first
  std::vector<Growth> growth;
  std::optional<double> pier_kpa;
  int screws = 0;  // of the worst tie, in a wall's framing
  double washer_mm = 0;
};

// ---- Limits, each with where it comes from ----
inline constexpr double kEnough = 1.5;  // factor against tipping: common practice, from memory
inline constexpr double kSagShare = 1.0 / 360;  // of a span: US practice for live load
inline constexpr double kChild_kg = 27.2;       // 60 lb: ASTM F2057-23, second hand; not its scope
inline constexpr double kPull_n = 222;  // 50 lb, somebody who stumbles and holds on: judgement
inline constexpr double kOne_kg = 23;   // one person: NIOSH lifting equation, from memory
inline constexpr double kTwo_kg = 2 * kOne_kg * 2 / 3;  // two thirds of both: HSE, from memory
inline constexpr double kSoil_kpa = 71.8;        // 1500 lb/ft2: IRC table R401.4.1, from memory
inline constexpr double kPaver_mm2 = 200 * 100;  // the smallest usual paver: common practice
inline constexpr double kPier_kg_m3 = 1900;      // brickwork: common practice
// Growth for each degree C. Cellular PVC 5.76e-5 (3.2e-5 for each F, ASTM D696, seen; 2.7e-5 to
// 3.5e-5 elsewhere). Stainless 304 17.3e-6 (data sheets).
inline constexpr double kPvcGrowth = 5.76e-5, kSteelGrowth = 17.3e-6;
// A screw into a wall's framing: #10 (0.190 in), 1 1/2 in of thread, specific gravity 0.42
// (spruce, from memory). Plywood's face bears 2.5 N/mm2 under a head (360 psi, from memory).
inline constexpr double kScrewShank_in = 0.190, kScrewThread_in = 1.5, kFraming = 0.42;
inline constexpr double kFaceBears_n_mm2 = 2.5;

// Any config that validate() passes, and the pieces of its frame. Every number is finite. Some
// 50 us.
Loads loads_of(const config::Config& config, const Asked& asked);

// A strip out of doors, under a load that stays. nullopt: thinner than any rating.
std::optional<Strip> outdoor_strip(double sheet_mm);

// Longer by, mm.
double growth_mm(double length_mm, double per_degree, double degrees);

// The deck under one foot: `foot_n` in the middle of the span, or `at_mm` from its left end where
// the place of the feet is known. Sheets are not glued: they share the load. Moist, and a load that
// stays.
Deck deck_of(double foot_n, double foot_mm, double span_mm, const std::optional<double>& at_mm,
             double sheet_mm, int layers, double depth_mm);

}  // namespace hs::loads
