// A run on its carrying boards, and the oven on its feet, against what may tip them.

#include <algorithm>
#include <cmath>
#include <numeric>

#include "engine/frame/stock.h"
#include "engine/loads/parts_of.h"

namespace hs::loads {
namespace {

using frame::Kind;
using frame::Piece;

constexpr double kMetre_mm = 1000;

bool of_drawer(Kind kind) {
  return kind == Kind::DrawerFront || kind == Kind::DrawerSide || kind == Kind::DrawerEnd ||
         kind == Kind::DrawerBottom;
}

// Everything of a run as lumps, doors and drawers shut or open, and where a child could hang on.
struct Body {
  std::vector<Lump> lumps;
  std::vector<Spot> feet;
  Spot outermost;  // of what opens, else of the counter's edge
};

// How far a bay's drawers come out: all of a side, as full extension slides let them.
double drawer_out_mm(const Asked& asked, const Piece& drawer) {
  double out_mm = 0;
  for (const Piece& piece : asked.pieces) {
    if (piece.kind == Kind::DrawerSide && piece.oven == drawer.oven && piece.bay == drawer.bay) {
      out_mm = std::max(out_mm, piece.place.depth_mm());
    }
  }
  return out_mm;
}

Body body_of(const config::Config& config, const Asked& asked, const Stands& run, bool open) {
  Body body;
  const Block& counter = run.counter;
  body.outermost = {(counter.left_mm + counter.right_mm) / 2, counter.near_mm};
  const auto farther = [&body](double x_mm, double y_mm) {
    if (y_mm < body.outermost.y_mm) body.outermost = {x_mm, y_mm};
  };
  for (const Piece& piece : asked.pieces) {
    if (piece.oven != run.oven) continue;
    Lump lump = lump_of(piece);
    const Block& place = piece.place;
    if (of_drawer(piece.kind)) {
      const double out_mm = open ? drawer_out_mm(asked, piece) : 0;
      lump.y_mm -= out_mm;
      if (piece.kind == Kind::DrawerFront) {
        if (open) farther(lump.x_mm, place.near_mm - out_mm);
        // What is in it, in its middle.
        body.lumps.push_back({config.loads.drawer_kg, lump.x_mm,
                              place.far_mm - out_mm + drawer_out_mm(asked, piece) / 2, lump.z_mm});
      }
    } else if (piece.kind == Kind::Door && open) {
      // At a right angle: its width sticks out before the run.
      lump.y_mm = place.near_mm - place.width_mm() / 2;
      farther(lump.x_mm, place.near_mm - place.width_mm());
    }
    body.lumps.push_back(lump);
    if (piece.kind == Kind::Carrier) {
      for (const double x : {place.left_mm, place.right_mm}) {
        for (const double y : {place.near_mm, place.far_mm}) body.feet.push_back({x, y});
      }
    }
  }
  if (run.oven && asked.oven_base_mm && !asked.pier) {
    body.lumps.push_back(oven_loads(config, asked)->body);
  }
  return body;
}

struct Gust {
  double x = 0, y = 0;  // direction
  double area_mm2 = 0, middle_mm = 0;
};

// Both ways across and both ways through; a box flat on. Where the middle of the pressed area is.
std::vector<Gust> gusts_on(double wide_mm, double deep_mm, double bottom_mm, double top_mm) {
  const double high_mm = top_mm - bottom_mm, middle_mm = (top_mm + bottom_mm) / 2;
  return {{0, -1, wide_mm * high_mm, middle_mm},
          {0, 1, wide_mm * high_mm, middle_mm},
          {1, 0, deep_mm * high_mm, middle_mm},
          {-1, 0, deep_mm * high_mm, middle_mm}};
}

Push push_of(const Gust& gust, double pressure_pa) {
  constexpr double kSquareMetre_mm2 = 1e6;
  const double force_n = pressure_pa * kBoxForce * gust.area_mm2 / kSquareMetre_mm2;
  return {gust.x * force_n, gust.y * force_n, gust.middle_mm};
}

// The four winds on a run and on the oven that stands on it, as pushes of this pressure.
std::vector<std::vector<Push>> winds_on(const config::Config& config, const Asked& asked,
                                        const Stands& run, double pressure_pa) {
  const auto body = gusts_on(run.counter.width_mm(), run.counter.depth_mm(), 0, run.counter.top_mm);
  std::vector<std::vector<Push>> winds;
  for (const Gust& gust : body) winds.push_back({push_of(gust, pressure_pa)});
  if (run.oven && asked.oven_base_mm) {
    const auto oven = gusts_on(config.oven.width_mm, config.oven.depth_mm, *asked.oven_base_mm,
                               *asked.oven_base_mm + config.oven.height_mm);
    for (std::size_t i = 0; i < winds.size(); ++i) {
      winds[i].push_back(push_of(oven[i], pressure_pa));
    }
  }
  return winds;
}

// Wind that tips it, m/s: the force grows with the speed's square.
double tipping_gust(std::span<const Lump> lumps, std::span<const Spot> feet,
                    const std::vector<std::vector<Push>>& winds_of_1_pa) {
  double least = kMost;
  for (const std::vector<Push>& wind : winds_of_1_pa) {
    // As one push at the height where both together act.
    Push sum;
    double moment = 0, force = 0;
    for (const Push& push : wind) {
      const double size = std::abs(push.x_n) + std::abs(push.y_n);
      sum.x_n += push.x_n;
      sum.y_n += push.y_n;
      moment += size * push.z_mm;
      force += size;
    }
    if (force <= 0) continue;
    sum.z_mm = moment / force;
    const auto pascals = tips_at_n(lumps, feet, sum);
    if (pascals) least = std::min(least, std::sqrt(*pascals / wind_pressure_pa(1)));
  }
  return least;
}

// What would have to hold so that the factor is kEnough.
TipCase case_of(Case what, const Tip& tip, double top_mm) {
  TipCase out{what, tip, 0, 0};
  const double lacks_n_m = kEnough * tip.turns_n_m - tip.holds_n_m;
  if (tip.factor >= kEnough || lacks_n_m <= 0) return out;
  if (tip.side == Side::Front && top_mm > 0) out.tie_n = lacks_n_m / top_mm * kMetre_mm;
  if (tip.reach_mm > 0) out.anchor_n = lacks_n_m / tip.reach_mm * kMetre_mm;
  return out;
}

// Legs and masonry are the builder's: how many there are and on what, nobody has said.
void add_ground(const config::Config& config, const Asked& asked, RunLoads& out) {
  const auto& carries = config.loads.carries;
  if (carries == config::Carries::Legs || carries == config::Carries::Masonry) return;
  int supports = 0;
  for (const Piece& piece : asked.pieces) {
    if (piece.kind != Kind::Carrier || piece.oven != out.oven) continue;
    supports += frame::supports_under(piece.place.width_mm());
  }
  if (supports == 0) return;
  // Off the middle, so the nearest bear up to twice their share.
  out.support_n = 2 * out.whole.mass_kg * kGravity_m_s2 / supports;
  constexpr double kKilo = 1000;
  out.pressure_kpa = out.support_n / kPaver_mm2 * kKilo;
}

}  // namespace

std::string_view case_name(Case one) {
  switch (one) {
    case Case::Shut:
      return "as it stands";
    case Case::Open:
      return "all doors and drawers open";
    case Case::Child:
      return "a child on what is open";
    case Case::Pull:
      return "a pull at the top";
    case Case::Wind:
      return "wind";
  }
  return "";
}

std::optional<OvenLoads> oven_loads(const config::Config& config, const Asked& asked) {
  if (!asked.oven_base_mm) return {};
  const config::Oven& oven = config.oven;
  const Feet feet = feet_of(config);
  OvenLoads out;
  // At half its height: most of an oven's mass is its floor, lower than that.
  out.body = {oven.mass_kg, 0, oven.depth_mm / 2, *asked.oven_base_mm + oven.height_mm / 2};
  out.foot_n = oven.mass_kg * kGravity_m_s2 / 2;
  const double x = feet.across_mm / 2, y = feet.deep_mm / 2, middle = oven.depth_mm / 2;
  const Spot spots[] = {{-x, middle - y}, {x, middle - y}, {x, middle + y}, {-x, middle + y}};
  Lump body = out.body;
  body.z_mm -= *asked.oven_base_mm;
  std::vector<std::vector<Push>> winds;
  for (const Gust& gust : gusts_on(oven.width_mm, oven.depth_mm, 0, oven.height_mm)) {
    winds.push_back({push_of(gust, 1)});
  }
  const Lump lumps[] = {body};
  out.gust_m_s = tipping_gust(lumps, spots, winds);
  double least_n = 0;
  for (const Push& push : {Push{0, -1, oven.height_mm}, Push{1, 0, oven.height_mm}}) {
    const auto force_n = tips_at_n(lumps, spots, push);
    if (force_n && (least_n == 0 || *force_n < least_n)) least_n = *force_n;
  }
  out.pull_n = least_n;
  return out;
}

RunLoads run_loads(const config::Config& config, const Asked& asked, const Stands& run) {
  RunLoads out;
  out.oven = run.oven;
  const Body shut = body_of(config, asked, run, false);
  const Body open = body_of(config, asked, run, true);
  out.whole = sum_of(shut.lumps);
  const double top_mm = run.counter.top_mm;
  const auto add = [&](Case what, const Tip& tip) {
    out.cases.push_back(case_of(what, tip, top_mm));
  };
  add(Case::Shut, tip_of(shut.lumps, {}, shut.feet));
  add(Case::Open, tip_of(open.lumps, {}, open.feet));
  std::vector<Lump> climbed = open.lumps;
  climbed.push_back({kChild_kg, open.outermost.x_mm, open.outermost.y_mm, 0});
  add(Case::Child, tip_of(climbed, {}, open.feet));
  const Push pull{0, -kPull_n, top_mm};
  add(Case::Pull, tip_of(shut.lumps, std::span(&pull, 1), shut.feet));
  out.pull_n = tips_at_n(shut.lumps, shut.feet, {0, -1, top_mm}).value_or(0);
  out.gust_m_s = tipping_gust(shut.lumps, shut.feet, winds_on(config, asked, run, 1));
  if (config.loads.gust_m_s) {
    const double pressure = wind_pressure_pa(*config.loads.gust_m_s);
    std::optional<Tip> worst;
    for (const std::vector<Push>& wind : winds_on(config, asked, run, pressure)) {
      const Tip tip = tip_of(shut.lumps, wind, shut.feet);
      if (!worst || tip.factor < worst->factor - 1e-9) worst = tip;
    }
    add(Case::Wind, *worst);
  }
  add_ground(config, asked, out);
  return out;
}

}  // namespace hs::loads
