#include "engine/clearance/clearance.h"

#include <algorithm>

namespace hs::clearance {
namespace {

using Figure = std::optional<double> config::Clearance::*;

Need asked(Side side, Figure figure, const config::Config& config) {
  const std::optional<double>& listed = config.oven.listed_clearance.*figure;
  const std::optional<double>& local = config.site.local_clearance.*figure;
  Need need;
  need.side = side;
  if (listed && (!local || *listed >= *local)) {
    need.required_mm = listed;
    need.from = From::Listed;
  } else if (local) {
    need.required_mm = local;
    need.from = From::Local;
  }
  return need;
}

// The oven stands on its top without a gap (its own feet are part of it), so only a top that is
// said to burn, or a figure of nothing, can be told; what is under a top that does not burn cannot.
std::optional<double> room_below(const Need& below, const config::Config& config) {
  const bool nothing_asked = below.required_mm && *below.required_mm == 0;
  const bool burns = config.station.top_combustible.value_or(false);
  return nothing_asked || burns ? std::optional<double>(0.0) : std::nullopt;
}

}  // namespace

std::array<Need, 6> needs(const config::Config& config, double oven_base_mm) {
  using C = config::Clearance;
  const config::Station& station = config.station;
  Need left = asked(Side::Left, &C::side_mm, config);
  Need right = asked(Side::Right, &C::side_mm, config);
  Need back = asked(Side::Back, &C::back_mm, config);
  Need above = asked(Side::Above, &C::above_mm, config);
  Need front = asked(Side::Front, &C::front_mm, config);
  Need below = asked(Side::Below, &C::below_mm, config);

  left.available_mm = station.left_gap_mm;
  right.available_mm = station.right_gap_mm;
  back.available_mm = station.back_gap_mm;
  if (config.site.cover_height_mm) {
    const double top_mm = oven_base_mm + config.oven.height_mm;
    above.available_mm = std::max(0.0, *config.site.cover_height_mm - top_mm);
  }
  // From the mouth's plane, which is the body's front.
  if (station.aisle_mm) front.available_mm = *station.aisle_mm + station.oven_setback_mm;
  below.available_mm = room_below(below, config);
  return {left, right, back, above, front, below};
}

std::optional<double> highest_base_under_cover_mm(const config::Config& config) {
  const Need above = asked(Side::Above, &config::Clearance::above_mm, config);
  if (!config.site.cover_height_mm || !above.required_mm) return {};
  return *config.site.cover_height_mm - *above.required_mm - config.oven.height_mm;
}

Standing standing(const config::Config& config) {
  const std::optional<bool>& listed = config.oven.listed_clearance.on_combustible;
  const std::optional<bool>& local = config.site.local_clearance.on_combustible;
  Standing standing;
  standing.top_combustible = config.station.top_combustible;
  // Either may forbid; a permission counts only where the other does not.
  if (listed && (!*listed || local.value_or(true))) {
    standing.allowed_on_combustible = listed;
    standing.from = From::Listed;
  } else if (local) {
    standing.allowed_on_combustible = local;
    standing.from = From::Local;
  }
  return standing;
}

}  // namespace hs::clearance
