#include "engine/height/height.h"

#include <algorithm>
#include <cmath>

namespace hs::height {
namespace {

constexpr double kCostUnit_mm = 150;  // this far outside a band costs 1: our judgement

double square(double x) { return x * x; }

// Settles ties only, whatever the weights: of equally good heights the one nearest to the easiest
// wins. A millimetre of it moves the cost by less than a hundredth of what seeing does.
double tie_break(double off_mm) { return 1e-3 * std::abs(off_mm) / kCostUnit_mm; }

// Objectives are compared in millionths: far below what a millimetre changes, far above the one-ulp
// differences between native and WebAssembly.
double in_millionths(double cost) { return std::round(cost * 1e6); }

}  // namespace

Band dough_offset(double board_mm) { return {150 + board_mm, 250 + board_mm}; }

Band light_offset(double board_mm) { return {50 + board_mm, 100 + board_mm}; }

Band seated_offset(double elbow_mm, double top_mm) {
  const double least_mm =
      std::clamp(kKneeClear_mm + top_mm, kSeatedCounter.low_mm, kSeatedCounter.high_mm);
  return {elbow_mm - kSeatedCounter.high_mm, elbow_mm - least_mm};
}

Band kitchen_rule(double stature_mm) { return {stature_mm / 2 + 50, stature_mm / 2 + 100}; }

double outside_mm(double value_mm, const Band& band) {
  if (value_mm < band.low_mm) return band.low_mm - value_mm;
  if (value_mm > band.high_mm) return value_mm - band.high_mm;
  return 0;
}

double band_cost(double value_mm, const Band& band) {
  return square(outside_mm(value_mm, band) / kCostUnit_mm);
}

Band easy_floors(double elbow_mm) {
  return {elbow_mm - kHandOverFloor_mm - 200, elbow_mm - kHandOverFloor_mm};
}

double hand_cost(double oven_floor_mm, double elbow_mm) {
  return band_cost(oven_floor_mm, easy_floors(elbow_mm));
}

double oven_cost(const Member& member, double oven_floor_mm, double unseen,
                 const Weights& weights) {
  return weights.sight * unseen + weights.hands * hand_cost(oven_floor_mm, member.elbow_mm) +
         tie_break(oven_floor_mm + kHandOverFloor_mm - member.elbow_mm);
}

double prep_cost(const Member& member, double counter_mm, const Weights& weights) {
  const double offset_mm = member.elbow_mm - counter_mm;
  return weights.prep * band_cost(offset_mm, member.prep_band) +
         tie_break(offset_mm - member.prep_band.middle_mm());
}

Choice household(std::span<const Member> members, std::span<const double> row, double worst_off) {
  Choice choice;
  double weighted = 0, shares = 0, plain = 0;
  std::size_t concerned = 0;
  choice.worst_cost = -1;
  for (std::size_t m = 0; m < members.size(); ++m) {
    if (row[m] < 0) continue;
    weighted += members[m].share * row[m];
    shares += members[m].share;
    plain += row[m];
    ++concerned;
    if (row[m] > choice.worst_cost) {
      choice.worst_cost = row[m];
      choice.worst = m;
    }
  }
  if (concerned == 0) return {};
  // When nobody has a share all count alike.
  const double mean = shares > 0 ? weighted / shares : plain / static_cast<double>(concerned);
  choice.cost = (1 - worst_off) * mean + worst_off * choice.worst_cost;
  return choice;
}

std::optional<Choice> cheapest(const Grid& grid, std::span<const Member> members,
                               std::span<const double> costs, double worst_off) {
  std::optional<Choice> best;
  for (std::size_t i = 0; i < grid.size(); ++i) {
    const auto row = costs.subspan(i * members.size(), members.size());
    if (std::none_of(row.begin(), row.end(), [](double c) { return c >= 0; })) return {};
    Choice choice = household(members, row, worst_off);
    choice.height_mm = grid.at(i);
    if (!best || in_millionths(choice.cost) < in_millionths(best->cost)) best = choice;
  }
  return best;
}

}  // namespace hs::height
