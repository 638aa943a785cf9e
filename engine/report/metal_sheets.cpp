#include "engine/report/metal_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

constexpr double kInch_mm = 25.4;

// Places along one axis, each once, 0 and the end among them.
std::vector<double> stops(std::set<double> places, double end) {
  places.insert(0);
  places.insert(end);
  std::vector<double> all;
  for (const double at : places) {
    if (all.empty() || at - all.back() > 0.05) all.push_back(at);
  }
  return all;
}

// Each from the left and from below, so that errors do not add up.
void put_stops(Drawing& d, const std::vector<double>& all_across, const std::vector<double>& all_up,
               double line, Units units) {
  double y = -1.6 * line;
  // The farthest first: no line runs through a name.
  for (std::size_t i = all_across.size(); i-- > 1; y -= 1.7 * line) {
    const double at = all_across[i];
    d.dimension({0, y}, {at, y}, "");
    d.text(Role::Label, {at + 0.5 * line, y}, metal_length(at, units));
    d.line(Role::Dimension, {at, 0}, {at, y - 0.3 * line}, Weight::Thin);
  }
  d.line(Role::Dimension, {0, 0}, {0, y + 1.4 * line}, Weight::Thin);
  double x = -1.6 * line;
  for (std::size_t i = 1; i < all_up.size(); ++i, x -= 1.7 * line) {
    const double at = all_up[i];
    d.dimension({x, 0}, {x, at}, "");
    // Each name over its own line, a line higher than the one before where two would touch.
    d.text(Role::Label,
           {x, all_up.back() + (0.9 + 1.2 * static_cast<double>(all_up.size() - 1 - i)) * line},
           metal_length(at, units), Align::Right);
    d.line(Role::Dimension, {0, at}, {x - 0.3 * line, at}, Weight::Thin);
    d.line(Role::Dimension, {x, at},
           {x, all_up.back() + (0.3 + 1.2 * static_cast<double>(all_up.size() - 1 - i)) * line},
           Weight::Thin);
  }
}

}  // namespace

std::string metal_length(double mm, Units units) {
  // A sheet's thickness is told by more places: 0.0625 in is not 0.063.
  constexpr double kThin_mm = 6;
  if (units == Units::Inch) return fixed(mm / kInch_mm, mm < kThin_mm ? 4 : 3) + " in";
  return trimmed(mm, mm < kThin_mm ? 3 : 1) + " mm";
}

std::string metal_thickness(double mm, Units units) {
  std::string words = metal_length(mm, units) + " thick: order by this thickness, not by a gauge";
  constexpr double kNear_share = 0.02;
  for (const int gauge : {14, 16, 18, 20}) {
    const double sold_mm = sheet::gauge_readings(gauge)->stainless_mm;
    if (std::abs(sold_mm - mm) > kNear_share * mm) continue;
    words += "; what is sold as " + std::to_string(gauge) + " gauge of stainless, " +
             metal_length(sold_mm, units) + ", serves";
  }
  return words + " (" + source_note("frame.metal") + ").";
}

std::string metal_edges(const config::Config& config) {
  const std::string rest = config.build.hem == config::Hem::None
                               ? "Every bare edge is deburred, none is hemmed"
                               : "Lower edges are hemmed, every other bare edge is deburred";
  return rest + "; corners are rounded: bare ones cut (" + source_note("metal.hem") + ").";
}

Sheet metal_sheet(const config::Config& config, const evaluate::Evaluation& e,
                  const SheetView& view, std::size_t index) {
  const evaluate::MetalOrder& order = e.packet->metal.orders[index];
  const sheet::Blank& blank = order.blank;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  sheet.text_mm =
      line_of(view, std::clamp(std::max(blank.width_mm, 1.3 * blank.depth_mm) / 44, 4.0, 60.0));
  const double line = sheet.text_mm;
  std::vector<Spot> outline;
  for (const sheet::Spot& at : blank.outline) outline.push_back({at.x_mm, at.y_mm});
  d.polygon(Role::Cabinet, outline);
  d.outline(Role::Dimension, outline, Weight::Heavy);
  std::set<double> across, up;
  for (const sheet::BendLine& bend : blank.bends) {
    d.line(Role::Limit, {bend.from.x_mm, bend.from.y_mm}, {bend.to.x_mm, bend.to.y_mm},
           Weight::Normal, true);
    const bool level = std::abs(bend.from.y_mm - bend.to.y_mm) < 0.05;
    (level ? up : across).insert(level ? bend.from.y_mm : bend.from.x_mm);
  }
  std::set<double> bends_across = across, bends_up = up;
  for (const sheet::Spot& start : blank.starts) {
    across.insert(start.x_mm);
    up.insert(start.y_mm);
  }
  for (const sheet::BlankHole& hole : blank.holes) {
    const double radius = hole.diameter_mm / 2;
    d.outline(Role::Dimension, ellipse({hole.at.x_mm, hole.at.y_mm}, radius, radius));
    across.insert(hole.at.x_mm);
    up.insert(hole.at.y_mm);
  }
  put_stops(d, stops(across, blank.width_mm), stops(up, blank.depth_mm), line, view.units);
  // Which edge is which, inside the bend lines: as the cook sees the top from above.
  const auto name = [&](sheet::Side side, Spot at, Align align) {
    constexpr std::string_view kNames[] = {"front", "back", "left", "right"};
    const std::size_t i = sheet::index_of(side);
    const sheet::Flange& flange = order.top.flanges[i];
    std::string words(kNames[i]);
    if (flange.down_mm == 0) words += ", straight";
    if (flange.long_mm > 0) words += ", part straight, part turned down";
    d.text(Role::Label, at, std::move(words), align);
  };
  const auto turned = [&](sheet::Side side) {
    return order.top.flanges[sheet::index_of(side)].down_mm > 0;
  };
  const double half_up = 0.3 * blank.depth_mm, half_across = blank.width_mm / 2;
  const double in_front = turned(sheet::Side::Front) ? *bends_up.begin() : 0;
  const double in_back = turned(sheet::Side::Back) ? *bends_up.rbegin() : blank.depth_mm;
  const double in_left = turned(sheet::Side::Left) ? *bends_across.begin() : 0;
  const double in_right = turned(sheet::Side::Right) ? *bends_across.rbegin() : blank.width_mm;
  name(sheet::Side::Front, {half_across, in_front + 1.2 * line}, Align::Centre);
  name(sheet::Side::Back, {half_across, in_back - 1.2 * line}, Align::Centre);
  name(sheet::Side::Left, {in_left + 0.6 * line, half_up}, Align::Left);
  name(sheet::Side::Right, {in_right - 0.6 * line, half_up}, Align::Right);
  const Spot middle{blank.width_mm / 2, blank.depth_mm / 2};
  d.text(Role::Heading, middle, "top's face up; every bend goes down", Align::Centre);
  if (order.top.polish != sheet::Polish::None) {
    const bool along = order.top.polish == sheet::Polish::AlongWidth;
    const double half = 4 * line;
    const Spot at{middle.x_mm, middle.y_mm - 2.2 * line};
    d.dimension(along ? Spot{at.x_mm - half, at.y_mm} : Spot{at.x_mm, at.y_mm - half},
                along ? Spot{at.x_mm + half, at.y_mm} : Spot{at.x_mm, at.y_mm + half}, "");
    d.text(Role::Label, {at.x_mm, at.y_mm - (along ? 1.0 : 5.2) * line}, "polish", Align::Centre);
  }
  describe(sheet, "Flat blank: " + order.name, config, "Outline, bend lines dashed, holes.", {});
  return sheet;
}

Sheet metal_corner_sheet(const config::Config& config, const evaluate::Evaluation& e,
                         const SheetView& view, std::size_t index) {
  const evaluate::MetalOrder& order = e.packet->metal.orders[index];
  const sheet::Blank& blank = order.blank;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  double wide = 0, high = 0;
  std::set<double> across, up;
  for (const sheet::Spot& at : blank.notch) {
    wide = std::max(wide, at.x_mm);
    high = std::max(high, at.y_mm);
    across.insert(at.x_mm);
    up.insert(at.y_mm);
  }
  wide *= 1.45;
  high *= 1.25;
  sheet.text_mm = line_of(view, std::max(wide, high) / 31);
  const double line = sheet.text_mm;
  std::vector<Spot> edge;
  for (const sheet::Spot& at : blank.notch) edge.push_back({at.x_mm, at.y_mm});
  std::vector<Spot> face = edge;
  face.insert(face.begin(), {0, high});
  face.push_back({wide, 0});
  face.push_back({wide, high});
  d.polygon(Role::Cabinet, face);
  edge.insert(edge.begin(), {0, high});
  edge.push_back({wide, 0});
  d.polyline(Role::Dimension, edge, Weight::Heavy);
  put_stops(d, stops(across, *across.rbegin()), stops(up, *up.rbegin()), line, view.units);
  d.text(Role::Label, {0.4 * wide, 0.9 * high}, "side flange", Align::Centre);
  d.text(Role::Label, {0.99 * wide, 0.4 * high}, "front or back", Align::Right);
  d.text(Role::Label, {0.99 * wide, 0.4 * high - 1.3 * line}, "flange", Align::Right);
  describe(sheet, "Corner notch: " + order.name, config,
           "Flat, from the blank's two edges. Where they cross, a square relief.", {});
  return sheet;
}

}  // namespace hs::report
