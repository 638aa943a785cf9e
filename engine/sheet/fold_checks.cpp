#include "engine/sheet/fold_checks.h"

#include <cmath>
#include <cstddef>

namespace hs::sheet {
namespace {

constexpr double kTiny = 1e-6;
constexpr double kThinnest_mm = 0.3, kThickest_mm = 6, kLongest_mm = 6000;  // what is still sheet
constexpr double kWidestRadius_t = 20;                                      // beyond it: a curve

struct Checker {
  const Top& top;
  std::vector<Remark> out{};

  double thick_mm() const { return top.metal.thick_mm; }
  double setback() const { return setback_mm(top.metal, 90); }
  const Flange& flange(Side side) const { return top.flanges[index_of(side)]; }
  bool has(Side side) const { return flange(side).down_mm > 0; }

  // A least that refuses, and one above it that warns. NaN is refused.
  bool least(Remark remark, double refuse_below, double warn_below = 0) {
    if (remark.measured_mm >= refuse_below - kTiny && remark.measured_mm >= warn_below - kTiny) {
      return true;
    }
    remark.caution = remark.measured_mm >= refuse_below - kTiny;
    remark.limit_mm = remark.caution ? warn_below : refuse_below;
    out.push_back(remark);
    return remark.caution;
  }
  bool most(Remark remark, double limit) {
    if (remark.measured_mm <= limit + kTiny) return true;
    remark.limit_mm = limit;
    remark.at_most = true;
    out.push_back(remark);
    return false;
  }

  // Without these no other number means anything.
  bool metal() {
    const Metal& m = top.metal;
    Remark thick{.where = "metal",
                 .what = "is not of a thickness that is folded",
                 .measured_mm = m.thick_mm,
                 .advice = "Give its thickness as a decimal length."};
    Remark k{.where = "metal",
             .what = "has a K that no bend has",
             .measured_mm = m.k,
             .length = false,
             .advice = "0.45 serves where nothing is known."};
    bool well = least(thick, kThinnest_mm) && most(thick, kThickest_mm) && least(k, kLeastK) &&
                most(k, kMostK);
    if (!well) return false;
    if (const auto gauge = wrong_chart(m.thick_mm)) {
      out.push_back({.where = "metal",
                     .what = "is as thick as another metal's gauge",
                     .measured_mm = m.thick_mm,
                     .limit_mm = gauge_readings(*gauge)->stainless_mm,
                     .caution = true,
                     .advice = "Stainless of that gauge is thicker: order by decimal thickness."});
    }
    const Remark radius{.where = "bend",
                        .what = "is too tight inside",
                        .measured_mm = m.inside_radius_mm,
                        .advice = "The sheet may crack along it: ask the fabricator."};
    const Remark wide{.where = "bend",
                      .what = "is too wide inside to be one bend",
                      .measured_mm = m.inside_radius_mm,
                      .advice = "Give its inside radius."};
    well = least(radius, top.limits.least_radius_t * m.thick_mm,
                 top.limits.careful_radius_t * m.thick_mm);
    return most(wide, kWidestRadius_t * m.thick_mm) && well;
  }

  bool plate() {
    bool well = true;
    const auto one = [&](double size_mm, Side low, Side high, std::string_view what) {
      const double bent = (has(low) ? setback() : 0) + (has(high) ? setback() : 0);
      const Remark remark{
          .where = "top", .what = what, .measured_mm = size_mm, .advice = "Give its outside size."};
      well = least(remark, bent + least_flange_mm(top.metal, top.limits)) && well;
      well = most(remark, kLongest_mm) && well;
    };
    one(top.width_mm, Side::Left, Side::Right, "has no width that can be folded");
    one(top.depth_mm, Side::Front, Side::Back, "has no depth that can be folded");
    const Remark gap{.where = "corner",
                     .what = "has no gap that can be made",
                     .measured_mm = top.corner_gap_mm,
                     .advice = "Usual: 0.5 mm."};
    return least(gap, 0) && most(gap, 10) && well;
  }

  void hem(Side side) {
    const Flange& f = flange(side);
    const double t = thick_mm();
    const Remark back{.where = side_name(side),
                      .what = "has a hem that turns back too little",
                      .measured_mm = f.return_mm,
                      .advice = "Ask the fabricator for the least that the brake can flatten."};
    least(back, top.limits.least_return_t * t, top.limits.usual_return_t * t);
    const Remark far{.where = side_name(side),
                     .what = "has a hem that runs up into its bend",
                     .measured_mm = f.return_mm,
                     .advice = "Make the hem shorter."};
    most(far, f.down_mm - setback());
    if (f.hem == Hem::Open) {
      const Remark open{.where = side_name(side),
                        .what = "has an open hem with too little inside",
                        .measured_mm = f.gap_mm,
                        .advice = "Open it, or close it altogether."};
      least(open, top.limits.least_gap_t * t);
      most({.where = side_name(side),
            .what = "has an open hem wider than it turns back",
            .measured_mm = f.gap_mm,
            .advice = "Make the hem narrower."},
           f.return_mm);
    }
  }

  // A front or back hem's return stands between the side flanges and their returns.
  void between(Side side) {
    double room = top.width_mm;
    for (const Side end : {Side::Left, Side::Right}) {
      const Flange& f = flange(end);
      if (f.down_mm == 0) continue;
      room -= thick_mm() + top.corner_gap_mm;
      if (f.hem != Hem::None) room -= thick_mm() + (f.hem == Hem::Open ? f.gap_mm : 0);
    }
    least({.where = side_name(side),
           .what = "has no room for its hem between the side flanges",
           .measured_mm = room,
           .advice = "Leave the hem out."},
          least_flange_mm(top.metal, top.limits));
  }

  // A side flange that is shorter than its side: long enough to be bent, the rest of the side too.
  void part(Side side) {
    const Flange& f = flange(side);
    const double needed = least_flange_mm(top.metal, top.limits);
    const bool end = side == Side::Left || side == Side::Right;
    const Remark remark{.where = side_name(side),
                        .what = "is not turned down along a part of its side that can be folded",
                        .measured_mm = end ? f.long_mm : 0,
                        .advice = "Fold the whole side, or none of it."};
    const double back = has(Side::Back) ? thick_mm() + top.corner_gap_mm : 0;
    least(remark, back + needed);
    most(remark, top.depth_mm - (has(Side::Front) ? setback() : 0) - needed);
    least({.where = side_name(side),
           .what = "has a straight edge outside it",
           .measured_mm = f.step_mm,
           .advice = "Give how far the straight edge is inside the flange."},
          0);
    most({.where = side_name(side),
          .what = "stands too far beyond its straight edge",
          .measured_mm = f.step_mm,
          .advice = "Cut the sheets for it instead."},
         f.down_mm);
  }

  void flanges() {
    for (const Side side : {Side::Front, Side::Back, Side::Left, Side::Right}) {
      const Flange& f = flange(side);
      if (f.down_mm == 0) continue;
      const Remark low{.where = side_name(side),
                       .what = "is too short to be bent",
                       .measured_mm = f.down_mm,
                       .advice = "Make it longer, or leave it out."};
      const bool well = least(low, least_flange_mm(top.metal, top.limits),
                              top.limits.careful_flange_t * thick_mm());
      if (well && f.hem != Hem::None) {
        hem(side);
        if (side == Side::Front || side == Side::Back) between(side);
      }
      if (f.long_mm != 0) part(side);
      most({.where = side_name(side),
            .what = "is longer than a flange",
            .measured_mm = f.down_mm,
            .advice = "Give its outside height."},
           500);
    }
  }

  void to_edge(int number, double there_mm, double needed_mm) {
    least({.where = "hole",
           .number = number,
           .what = "is too near to an edge",
           .measured_mm = there_mm,
           .advice = "Move it inwards, or make it smaller."},
          needed_mm);
  }
  void to_bend(int number, double there_mm) {
    const double t = thick_mm(), r = top.metal.inside_radius_mm;
    least({.where = "hole",
           .number = number,
           .what = "is too near to a bend",
           .measured_mm = there_mm,
           .advice = "It would be pulled out of round: move it away from the bend."},
          top.limits.hole_t * t + r, top.limits.careful_hole_t * t + r);
  }
  // From a hole's edge to one side of the top: to where its bend begins, or to its cut edge.
  void to_side(int number, Side side, double from_outside_mm) {
    if (has(side)) {
      to_bend(number, from_outside_mm - setback());
    } else {
      to_edge(number, from_outside_mm, top.limits.hole_edge_t * thick_mm());
    }
  }

  void hole(const Hole& h, int number) {
    const double half = h.diameter_mm / 2, cut = top.limits.hole_edge_t * thick_mm();
    if (!least({.where = "hole",
                .number = number,
                .what = "is smaller than the metal is thick",
                .measured_mm = h.diameter_mm,
                .advice = "A punch would break: make it larger."},
               thick_mm())) {
      return;
    }
    if (h.in_top) {
      to_side(number, Side::Left, h.x_mm - half);
      to_side(number, Side::Right, top.width_mm - h.x_mm - half);
      to_side(number, Side::Front, h.y_mm - half);
      to_side(number, Side::Back, top.depth_mm - h.y_mm - half);
      return;
    }
    const Flange& f = flange(h.side);
    if (f.down_mm == 0) {
      out.push_back({.where = "hole",
                     .number = number,
                     .what = "is in a flange that is not there",
                     .measured_mm = 0,
                     .advice = "Say which flange it is in."});
      return;
    }
    to_bend(number, h.y_mm - half - setback());
    to_edge(number, f.down_mm - h.y_mm - half, cut + (f.hem == Hem::None ? 0 : f.return_mm));
    const bool lap = h.side == Side::Front || h.side == Side::Back;
    const Side first = lap ? Side::Left : Side::Front, second = lap ? Side::Right : Side::Back;
    const double long_mm = lap ? top.width_mm : top.depth_mm;
    // A lapping flange hides the other's thickness; a side flange begins behind it.
    const auto end = [&](Side side) {
      if (side == Side::Front && f.long_mm > 0) return top.depth_mm - f.long_mm + cut;
      return cut + (has(side) ? thick_mm() + (lap ? 0 : top.corner_gap_mm) : 0);
    };
    to_edge(number, h.x_mm - half, end(first));
    to_edge(number, long_mm - h.x_mm - half, end(second));
  }
};

// Two holes in one face, and what is left between them.
void add_pairs(Checker& check) {
  const std::vector<Hole>& holes = check.top.holes;
  for (std::size_t i = 0; i < holes.size(); ++i) {
    for (std::size_t j = i + 1; j < holes.size(); ++j) {
      const Hole& a = holes[i];
      const Hole& b = holes[j];
      if (a.in_top != b.in_top || (!a.in_top && a.side != b.side)) continue;
      const double apart = std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
      check.least({.where = "hole",
                   .number = static_cast<int>(j) + 1,
                   .what = "leaves too little metal to another hole",
                   .measured_mm = apart - (a.diameter_mm + b.diameter_mm) / 2,
                   .advice = "Move them apart."},
                  check.top.limits.hole_edge_t * check.thick_mm());
    }
  }
}

}  // namespace

std::vector<Remark> remarks_on(const Top& top) {
  Checker check{top};
  for (const Flange& f : top.flanges) {
    if (std::isfinite(f.down_mm) && f.down_mm >= 0) continue;
    check.out.push_back({.where = "flange",
                         .what = "has no height",
                         .measured_mm = 0,
                         .advice = "Give its outside height, or 0 where there is none."});
    return check.out;
  }
  if (!check.metal() || !check.plate()) return check.out;
  check.flanges();
  for (std::size_t i = 0; i < top.holes.size(); ++i) {
    check.hole(top.holes[i], static_cast<int>(i) + 1);
  }
  add_pairs(check);
  return check.out;
}

}  // namespace hs::sheet
