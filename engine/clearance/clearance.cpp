#include "engine/clearance/clearance.h"

#include <algorithm>

#include "engine/clearance/published.h"

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
  } else if (config.oven.listed == false) {
    need.required_mm = unlisted_mm(side, config.oven.fuel);
    if (need.required_mm) need.from = From::Published;
  }
  return need;
}

using Permission = std::optional<bool> config::Clearance::*;

Allowed allowed(Permission permission, const config::Config& config) {
  const std::optional<bool>& listed = config.oven.listed_clearance.*permission;
  const std::optional<bool>& local = config.site.local_clearance.*permission;
  if (listed && (!*listed || local.value_or(true))) return {listed, From::Listed};
  if (local) return {local, From::Local};
  return {};
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

  left.burns = station.left_combustible;
  right.burns = station.right_combustible;
  back.burns = station.back_combustible;
  above.burns = config.site.cover.combustible;
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
  const Allowed said = allowed(&config::Clearance::on_combustible, config);
  return {said.yes, said.from, config.station.top_combustible};
}

Allowed under_cover(const config::Config& config) {
  return allowed(&config::Clearance::under_cover, config);
}

std::optional<bool> covered(const config::Config& config) {
  if (config.site.cover_height_mm) return true;
  if (!config.site.cover.kind) return {};
  return *config.site.cover.kind != config::CoverKind::None;
}

Need flue_need(const config::Config& config) {
  const config::Flue& flue = config.site.flue;
  Need need;
  if (flue.listed_gap_mm) {
    need.required_mm = flue.listed_gap_mm;
    need.from = From::Listed;
  } else if (config::is_masonry(config.oven.kind)) {
    need.required_mm = kChimneyFraming_mm;
    need.from = From::Published;
  }
  need.available_mm = flue.gap_mm;
  return need;
}

Need grill_need(const config::Config& config) {
  const config::Grill& grill = config.site.grill;
  Need need = asked(grill.at == config::GrillAt::Right ? Side::Right : Side::Left,
                    &config::Clearance::side_mm, config);
  if (!need.required_mm || !grill.listed_side_mm) {
    need.required_mm.reset();
    need.from = From::Unknown;
  } else if (*grill.listed_side_mm > *need.required_mm) {
    need.required_mm = grill.listed_side_mm;
    need.from = From::Listed;
  }
  need.available_mm = grill.gap_mm;
  return need;
}

}  // namespace hs::clearance
