#include "engine/sheet/top.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

#include "engine/sheet/fold_checks.h"

namespace hs::sheet {
namespace {

constexpr double kInch_mm = 25.4;
constexpr Sheet kSheets[] = {{96 * kInch_mm, 48 * kInch_mm},
                             {120 * kInch_mm, 48 * kInch_mm},
                             {120 * kInch_mm, 60 * kInch_mm}};

// Flat lengths of one side, from the blank's own edge inwards.
struct Flat {
  bool there = false;
  double hem_mm = 0;      // what the hem adds
  double fold_mm = 0;     // to the middle of the hem's arc
  double edge_mm = 0;     // to where the outer faces would meet
  double bend_mm = 0;     // to the middle of the bend's arc
  double arc_mm = 0;      // from the end of the flange's flat to there:
  double tangent_mm = 0;  // to where the top is flat
};

Flat flat_of(const Metal& metal, const Flange& flange) {
  Flat flat;
  if (flange.down_mm <= 0) return flat;
  flat.there = true;
  const double arc = allowance_mm(metal, 90), setback = setback_mm(metal, 90);
  if (flange.hem != Hem::None) {
    const double gap = flange.hem == Hem::Open ? flange.gap_mm : 0;
    const double turn = gap / 2 + metal.thick_mm;
    flat.hem_mm = hem_mm(metal, flange.return_mm, gap);
    flat.fold_mm =
        flange.return_mm - turn + std::numbers::pi * (gap / 2 + metal.k * metal.thick_mm) / 2;
  }
  flat.tangent_mm = flat.hem_mm + flange.down_mm - setback + arc;
  flat.arc_mm = arc;
  flat.bend_mm = flat.tangent_mm - arc / 2;
  flat.edge_mm = flat.tangent_mm - setback;
  return flat;
}

// A corner of the blank, as distances from the two blank edges that meet in it.
struct Corner {
  std::vector<Spot> path;        // from the side's edge to the front's or back's
  double side_from_mm = 0;       // where the side flange's flat begins
  double side_bend_from_mm = 0;  // and its bend
  double lap_from_mm = 0;        // where the front or back flange's flat begins
  double lap_bend_from_mm = 0;   // and its bend
  double hem_from_mm = 0;        // where its hem begins
  bool meeting = false;          // of two flanges
};

// The notch leaves the folded side flange the corner's gap behind the lapping one. Its inner corner
// is relieved by a square as wide as the arcs, to where both bends end: neither is bent against the
// other, and from R + T on the top is whole.
Corner corner_of(const Top& top, const Flat& side, const Flat& lap, const Flange& side_flange) {
  Corner corner;
  if (!side.there || !lap.there) {
    corner.path = {{0, 0}};
    return corner;
  }
  const Metal& metal = top.metal;
  corner.meeting = true;
  corner.side_from_mm = lap.edge_mm + metal.thick_mm + top.corner_gap_mm;
  corner.side_bend_from_mm = std::max(corner.side_from_mm, lap.tangent_mm);
  corner.lap_from_mm = side.edge_mm;
  corner.lap_bend_from_mm = side.tangent_mm;
  corner.hem_from_mm = corner.lap_from_mm;
  corner.path = {{0, corner.side_from_mm}};
  if (corner.side_from_mm < lap.tangent_mm) {
    corner.path.push_back({side.tangent_mm - side.arc_mm, corner.side_from_mm});
    corner.path.push_back({side.tangent_mm - side.arc_mm, lap.tangent_mm});
    corner.path.push_back({side.tangent_mm, lap.tangent_mm});
  } else {
    corner.path.push_back({side.tangent_mm, corner.side_from_mm});
  }
  corner.path.push_back({side.tangent_mm, lap.tangent_mm - lap.arc_mm});
  corner.path.push_back({corner.lap_from_mm, lap.tangent_mm - lap.arc_mm});
  if (lap.hem_mm > 0) {
    // Its return stands inside: clear of the side flange and of that one's own return.
    const bool hemmed = side_flange.hem != Hem::None;
    const double gap = side_flange.hem == Hem::Open ? side_flange.gap_mm : 0;
    corner.hem_from_mm += metal.thick_mm + (hemmed ? metal.thick_mm + gap : 0) + top.corner_gap_mm;
    corner.path.push_back({corner.lap_from_mm, lap.hem_mm});
    corner.path.push_back({corner.hem_from_mm, lap.hem_mm});
  }
  corner.path.push_back({corner.hem_from_mm, 0});
  return corner;
}

// The front corner of a side that is turned down from further back on.
Corner start_of(const Top& top, const Flat& side, const Flat& front, const Flange& flange) {
  Corner corner;
  const double from = front.edge_mm + top.depth_mm - flange.long_mm;
  const double straight = side.edge_mm + flange.step_mm;
  corner.side_from_mm = corner.side_bend_from_mm = from;
  corner.lap_from_mm = corner.lap_bend_from_mm = corner.hem_from_mm = straight;
  corner.path = {{0, from}};
  if (straight < side.tangent_mm) {
    corner.path.push_back({side.tangent_mm, from});
    corner.path.push_back({side.tangent_mm, from - top.metal.thick_mm});
    corner.path.push_back({straight, from - top.metal.thick_mm});
  } else {
    corner.path.push_back({straight, from});
  }
  corner.path.push_back({straight, 0});
  return corner;
}

double area_of(const std::vector<Spot>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& a = outline[i];
    const Spot& b = outline[(i + 1) % outline.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return twice / 2;
}

int sheet_for(const Top& top, double width_mm, double depth_mm) {
  for (std::size_t i = 0; i < std::size(kSheets); ++i) {
    const auto lies = [&](double along, double across) {
      return along <= kSheets[i].long_mm && across <= kSheets[i].wide_mm;
    };
    if ((top.polish != Polish::AlongDepth && lies(width_mm, depth_mm)) ||
        (top.polish != Polish::AlongWidth && lies(depth_mm, width_mm))) {
      return static_cast<int>(i);
    }
  }
  return -1;
}

struct Maker {
  const Top& top;
  std::array<Flat, 4> flats{};
  std::array<Corner, 4> corners{};  // front left, front right, back right, back left
  Blank out{};

  const Flat& flat(Side side) const { return flats[index_of(side)]; }

  double bare(double size_mm, Side low, Side high) const {
    const double setback = setback_mm(top.metal, 90);
    return size_mm - (flat(low).there ? setback : 0) - (flat(high).there ? setback : 0);
  }
  Spot placed(std::size_t corner, const Spot& spot) const {
    const bool right = corner == 1 || corner == 2, back = corner >= 2;
    return {right ? out.width_mm - spot.x_mm : spot.x_mm,
            back ? out.depth_mm - spot.y_mm : spot.y_mm};
  }

  void outline() {
    const Side sides[] = {Side::Left, Side::Right, Side::Right, Side::Left};
    const Side laps[] = {Side::Front, Side::Front, Side::Back, Side::Back};
    for (std::size_t i = 0; i < 4; ++i) {
      const Flange& flange = top.flanges[index_of(sides[i])];
      const bool start = laps[i] == Side::Front && flat(sides[i]).there && flange.long_mm > 0;
      corners[i] = start ? start_of(top, flat(sides[i]), flat(laps[i]), flange)
                         : corner_of(top, flat(sides[i]), flat(laps[i]), flange);
      if (start) {
        out.starts.push_back(placed(i, {corners[i].lap_from_mm, corners[i].side_from_mm}));
      }
      std::vector<Spot> path = corners[i].path;
      // Anticlockwise a corner is reached along the side at the front left and the back right.
      if (i % 2 == 1) std::reverse(path.begin(), path.end());
      for (const Spot& spot : path) out.outline.push_back(placed(i, spot));
    }
  }

  // All notches are alike where their flanges are: the first is told.
  void notch() {
    for (const Corner& corner : corners) {
      if (!corner.meeting || !out.notch.empty()) continue;
      out.notch = corner.path;
      out.relief_mm = setback_mm(top.metal, 90);
    }
  }

  void bend(Side side, bool hem) {
    const Flat& f = flat(side);
    const Flange& flange = top.flanges[index_of(side)];
    if (!f.there || (hem && f.hem_mm <= 0)) return;
    BendLine line;
    line.side = side;
    line.hem = hem;
    const double in = hem ? f.fold_mm : f.bend_mm;
    if (side == Side::Front || side == Side::Back) {
      const Corner& a = corners[side == Side::Front ? 0 : 3];
      const Corner& b = corners[side == Side::Front ? 1 : 2];
      const double y = side == Side::Front ? in : out.depth_mm - in;
      line.from = {hem ? a.hem_from_mm : a.lap_bend_from_mm, y};
      line.to = {out.width_mm - (hem ? b.hem_from_mm : b.lap_bend_from_mm), y};
    } else {
      const double x = side == Side::Left ? in : out.width_mm - in;
      const Corner& a = corners[side == Side::Left ? 0 : 1];
      const Corner& b = corners[side == Side::Left ? 3 : 2];
      line.from = {x, hem ? a.side_from_mm : a.side_bend_from_mm};
      line.to = {x, out.depth_mm - (hem ? b.side_from_mm : b.side_bend_from_mm)};
    }
    if (hem) {
      const double gap = flange.hem == Hem::Open ? flange.gap_mm : 0;
      line.radius_mm = gap / 2;
      line.arc_mm = std::numbers::pi * (gap / 2 + top.metal.k * top.metal.thick_mm);
      line.deduct_mm = flange.return_mm - f.hem_mm;
    } else {
      line.radius_mm = top.metal.inside_radius_mm;
      line.arc_mm = allowance_mm(top.metal, 90);
      line.deduct_mm = deduction_mm(top.metal, 90);
    }
    out.bends.push_back(line);
  }

  // Outside coordinates to the blank's: a flanged side's outside is its flat's edge_mm inwards.
  double flat_x(double x_mm) const { return flat(Side::Left).edge_mm + x_mm; }
  double flat_y(double y_mm) const { return flat(Side::Front).edge_mm + y_mm; }

  void hole(const Hole& h) {
    if (h.in_top) {
      out.holes.push_back({{flat_x(h.x_mm), flat_y(h.y_mm)}, h.diameter_mm});
      return;
    }
    const Flange& flange = top.flanges[index_of(h.side)];
    const double in = flat(h.side).hem_mm + flange.down_mm - h.y_mm;
    Spot at;
    switch (h.side) {
      case Side::Front:
        at = {flat_x(h.x_mm), in};
        break;
      case Side::Back:
        at = {flat_x(h.x_mm), out.depth_mm - in};
        break;
      case Side::Left:
        at = {in, flat_y(h.x_mm)};
        break;
      case Side::Right:
        at = {out.width_mm - in, flat_y(h.x_mm)};
        break;
    }
    out.holes.push_back({at, h.diameter_mm});
  }

  void tell() {
    const double t = top.metal.thick_mm;
    const auto walls = [&](Side low, Side high) {
      return t * ((flat(low).there ? 1 : 0) + (flat(high).there ? 1 : 0));
    };
    const double across = walls(Side::Left, Side::Right), back = walls(Side::Front, Side::Back);
    out.told = {{"blank", "width", out.width_mm, Reads::Flat},
                {"blank", "depth", out.depth_mm, Reads::Flat},
                {"top", "width", top.width_mm, Reads::Outside},
                {"top", "width", top.width_mm - across, Reads::Inside},
                {"top", "depth", top.depth_mm, Reads::Outside},
                {"top", "depth", top.depth_mm - back, Reads::Inside},
                {"bend", "radius", top.metal.inside_radius_mm, Reads::Inside}};
    if (out.relief_mm > 0) {
      out.told.push_back({"corner", "gap", top.corner_gap_mm, Reads::Inside});
      out.told.push_back({"corner", "square relief", out.relief_mm, Reads::Outside});
    }
    for (const Side side : {Side::Front, Side::Back, Side::Left, Side::Right}) {
      const Flange& f = top.flanges[index_of(side)];
      if (!flat(side).there) continue;
      out.told.push_back({side_name(side), "height", f.down_mm, Reads::Outside});
      out.told.push_back({side_name(side), "height", f.down_mm - t, Reads::Inside});
      if (f.long_mm > 0) {
        out.told.push_back({side_name(side), "length, to the back", f.long_mm, Reads::Outside});
        out.told.push_back({side_name(side), "straight edge before it", f.step_mm, Reads::Outside});
      }
      if (f.hem == Hem::None) continue;
      out.told.push_back({side_name(side), "hem's return", f.return_mm, Reads::Outside});
      const double gap = f.hem == Hem::Open ? f.gap_mm : 0;
      out.told.push_back({side_name(side), "hem's gap", gap, Reads::Inside});
    }
  }
};

}  // namespace

std::string_view side_name(Side side) {
  constexpr std::string_view kNames[] = {"front flange", "back flange", "left flange",
                                         "right flange"};
  return kNames[index_of(side)];
}

std::span<const Sheet> usual_sheets() { return kSheets; }

Top top_over(const Substrate& substrate, const Metal& metal) {
  Top top;
  top.metal = metal;
  const double edge = substrate.fit_mm + metal.thick_mm;
  const auto outside = [&](double bare_mm, Side low, Side high) {
    const int edges =
        (substrate.flanged[index_of(low)] ? 1 : 0) + (substrate.flanged[index_of(high)] ? 1 : 0);
    return bare_mm + 2 * substrate.paint_mm + edges * edge;
  };
  top.width_mm = outside(substrate.width_mm, Side::Left, Side::Right);
  top.depth_mm = outside(substrate.depth_mm, Side::Front, Side::Back);
  const double down = metal.thick_mm + substrate.bedding_mm + substrate.thick_mm +
                      2 * substrate.paint_mm + substrate.drip_mm;
  for (std::size_t i = 0; i < 4; ++i) top.flanges[i].down_mm = substrate.flanged[i] ? down : 0;
  return top;
}

double corner_ease_mm(double inside_radius_mm, double fit_mm, double bedding_mm) {
  const double r = inside_radius_mm;
  if (fit_mm >= r || bedding_mm >= r) return 0;
  if (std::hypot(r - fit_mm, r - bedding_mm) <= r) return 0;
  // A corner rounded by e touches where its arc, middle at (fit + e, bed + e), reaches the bend's:
  // distance between the middles plus e equals r. One square root, the smaller solution.
  const double a = r - fit_mm, b = r - bedding_mm;
  // (a - e)^2 + (b - e)^2 = (r - e)^2  =>  e^2 - 2 (a + b - r) e + a^2 + b^2 - r^2 = 0
  const double half = a + b - r;
  const double root = std::sqrt(std::max(0.0, half * half - (a * a + b * b - r * r)));
  return std::max(0.0, half - root);
}

std::string words(const Remark& remark, Unit unit) {
  const auto told = [&](double value) {
    if (!remark.length) return trimmed(value, 3);
    if (unit == Unit::Mm) return fixed(value, 1) + " mm";
    return fixed(value / kInch_mm, 3) + " in";
  };
  std::string text(remark.where);
  if (remark.number > 0) text += ' ' + std::to_string(remark.number);
  text += ' ';
  text += remark.what;
  if (remark.limit_mm != 0 || remark.measured_mm != 0) {
    const bool known = std::isfinite(remark.measured_mm) && std::abs(remark.measured_mm) < 1e9;
    text += ": " + (known ? told(remark.measured_mm) : std::string("no number"));
    text += ", where at ";
    text += remark.at_most ? "most " : "least ";
    text += told(remark.limit_mm) + (remark.caution ? " is usual" : " is needed");
  }
  text += ". ";
  text += remark.advice;
  return text;
}

Blank blank_of(const Top& top) {
  Maker maker{top};
  for (const Remark& remark : remarks_on(top)) {
    (remark.caution ? maker.out.cautions : maker.out.refusals).push_back(remark);
  }
  if (!maker.out.possible()) return std::move(maker.out);
  for (std::size_t i = 0; i < 4; ++i) maker.flats[i] = flat_of(top.metal, top.flanges[i]);
  Blank& out = maker.out;
  out.width_mm = maker.bare(top.width_mm, Side::Left, Side::Right) +
                 maker.flat(Side::Left).tangent_mm + maker.flat(Side::Right).tangent_mm;
  out.depth_mm = maker.bare(top.depth_mm, Side::Front, Side::Back) +
                 maker.flat(Side::Front).tangent_mm + maker.flat(Side::Back).tangent_mm;
  maker.outline();
  maker.notch();
  for (const Side side : {Side::Front, Side::Back, Side::Left, Side::Right}) {
    maker.bend(side, false);
    maker.bend(side, true);
  }
  for (const Hole& hole : top.holes) maker.hole(hole);
  out.area_mm2 = area_of(out.outline);
  for (const BlankHole& hole : out.holes) {
    out.area_mm2 -= std::numbers::pi / 4 * hole.diameter_mm * hole.diameter_mm;
  }
  out.mass_kg = mass_kg(out.area_mm2, top.metal.thick_mm);
  out.sheet = sheet_for(top, out.width_mm, out.depth_mm);
  maker.tell();
  return std::move(maker.out);
}

}  // namespace hs::sheet
