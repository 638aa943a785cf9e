#pragma once
// The height of the oven's floor and of the dough counter that serve a household best.
//
// Hands are a hard ceiling (the shortest oven cook's), seeing is soft (a tall cook steps back),
// dough is soft. Costs are unit-free: 1 is "all of the target hidden" or "150 mm outside the band".

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>

namespace hs::height {

// Hand over the oven's floor while a peel clears the sill, and how far a hand may be above the
// elbow: our judgement. Together: floor at most elbow + 100.
inline constexpr double kHandOverFloor_mm = 50;
inline constexpr double kHandAboveElbow_mm = 150;

// What no hand can tell at a ceiling: a floor this little over it still passes, so that a height
// rounded for building (5 mm or 1/4 in) does not fail its own rule. Our judgement.
inline constexpr double kHandTolerance_mm = 4;
inline constexpr double kOverHands_mm = 3;  // a mark may be so much over: our judgement

// Highest oven floor that this elbow allows, mm above the ground.
constexpr double floor_ceiling_mm(double elbow_mm) {
  return elbow_mm + kHandAboveElbow_mm - kHandOverFloor_mm;
}

struct Band {  // heights or offsets in mm, low <= high
  double low_mm = 0, high_mm = 0;
  bool operator==(const Band&) const = default;
  constexpr double middle_mm() const { return (low_mm + high_mm) / 2; }
};

// How far below the elbow the work surface belongs: dough -150..-250 (where Pheasant & Haslegrave's
// heavy band and those of Grandjean, AUVA and CCOHS overlap), light work -50..-100 (Pheasant &
// Haslegrave, CCOHS, AUVA). The surface is the board's top: the counter is board_mm lower.
Band dough_offset(double board_mm);
Band light_offset(double board_mm);

// Work surfaces for a seated person, above the ground (ADA 2010, 902.3).
inline constexpr Band kSeatedCounter{710, 865};

// Free height for knees (ADA 2010, 306.3).
inline constexpr double kKneeClear_mm = 685;

// A seated cook's counter, as an offset below their elbow: kSeatedCounter, and no lower than knees
// fit under a top of this thickness; the elbow comes second.
Band seated_offset(double elbow_mm, double top_mm);

// What a published kitchen rule says, told beside ours: counter at half the stature plus 50 to 100
// (Kawaguchi et al. 2003, MEW Technical Report 82:24-28, abstract).
Band kitchen_rule(double stature_mm);

// How far outside the band, mm; 0 inside.
double outside_mm(double value_mm, const Band& band);

// 0 inside the band, 1 at 150 mm outside it, growing with the square.
double band_cost(double value_mm, const Band& band);

// Oven floors at which the hand over the floor is between 200 mm below the elbow and the elbow: our
// judgement.
Band easy_floors(double elbow_mm);

// Hands at the oven below their ceiling: 0 at an easy floor, 1 at 150 mm above or below those,
// growing with the square.
double hand_cost(double oven_floor_mm, double elbow_mm);

struct Grid {  // whole millimetres: low, low + step ... <= high
  int low_mm = 0, high_mm = 0, step_mm = 1;
  std::size_t size() const {
    return high_mm < low_mm ? 0 : static_cast<std::size_t>((high_mm - low_mm) / step_mm + 1);
  }
  int at(std::size_t i) const { return low_mm + static_cast<int>(i) * step_mm; }
};

struct Weights {
  double sight = 1, prep = 0.1, hands = 0.1;
  double worst_off = 0.5;  // 0: the mean counts alone, 1: the worst-off cook alone
};

// One cook in the search.
struct Member {
  double share = 1;
  double elbow_mm = 0;
  bool oven = false;    // pulls the oven's height
  bool prep = false;    // pulls the dough counter's height
  Band prep_band = {};  // offsets below the elbow that suit this cook at the dough counter
};

// What one height costs one cook. unseen: hidden part of the target, 0..1.
double oven_cost(const Member& member, double oven_floor_mm, double unseen, const Weights& weights);
double prep_cost(const Member& member, double counter_mm, const Weights& weights);

struct Choice {
  int height_mm = 0;
  double cost = 0;        // the household's
  std::size_t worst = 0;  // index of the worst-off member
  double worst_cost = 0;
};

// The cost of each member at each grid height: costs[i * members + m]; a negative cost marks a
// member whom this height does not concern. Returns the cheapest height, the lower of equals
// (costs compared in millionths, so that every machine picks the same one). nullopt: empty grid or
// nobody concerned.
std::optional<Choice> cheapest(const Grid& grid, std::span<const Member> members,
                               std::span<const double> costs, double worst_off);

// The household's cost of one row of costs.
Choice household(std::span<const Member> members, std::span<const double> row, double worst_off);

}  // namespace hs::height
