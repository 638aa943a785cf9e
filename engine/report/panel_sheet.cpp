// One part as it lies on the bench: sizes, holes, grain, faces and edges.

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/evaluate/packet.h"
#include "engine/parts/sides.h"
#include "engine/report/build_sheets.h"
#include "engine/report/metal_sheets.h"
#include "engine/report/parts_words.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using parts::Cut;
using parts::Part;

void draw_cut(Drawing& d, const Cut& cut, double along, double across) {
  const Role role = Role::OvenBody;
  if (cut.round) {
    const std::vector<Spot> circle = ellipse({along, across}, cut.long_mm / 2, cut.wide_mm / 2);
    if (cut.deep_mm == 0) d.polygon(role, circle);
    d.outline(role, circle, Weight::Normal, !cut.in_front);
    return;
  }
  const double l = cut.long_mm / 2, w = cut.wide_mm / 2;
  const std::array slot{Spot{along - l, across - w}, Spot{along + l, across - w},
                        Spot{along + l, across + w}, Spot{along - l, across + w}};
  d.hatch(role, slot);
  d.outline(role, slot, Weight::Normal, !cut.in_front);
}

std::string cut_words(const Cut& cut, const SheetPen& pen) {
  std::string words(parts::use_name(cut.use));
  words += cut.round ? ", " + trimmed(cut.long_mm, 1) + " mm bit"
                     : ", " + pen.length(cut.long_mm) + " x " + pen.length(cut.wide_mm);
  words += cut.deep_mm > 0 ? ", " + pen.length(cut.deep_mm) + " deep" : ", through";
  if (!cut.in_front) words += ", from the face that lies down";
  words += ": middle " + pen.length(cut.along_mm) + " from the left, " + pen.length(cut.across_mm) +
           " up";
  if (cut.count > 1) {
    words += "; " + std::to_string(cut.count) + " in a row " +
             (cut.row_along ? "to the right" : "upwards") + ", " + pen.length(cut.pitch_mm) +
             " apart";
  }
  return words;
}

// Openings for boxes and wires, which one piece of the part alone may have.
void add_openings(Drawing& d, SheetPen& pen, const evaluate::Wiring& wiring, const Part& part) {
  for (std::size_t i = 0; i < wiring.on_part.size(); ++i) {
    const power::Cutout& cutout = wiring.cutting.cutouts[i];
    const power::Fitting& fitting = wiring.fittings[cutout.fitting];
    const evaluate::PanelPart& panel = wiring.panel_parts[fitting.panel];
    if (panel.part != part.number) continue;
    const evaluate::OnPart& at = wiring.on_part[i];
    Cut cut;
    cut.round = cutout.round;
    cut.long_mm = at.long_mm;
    cut.wide_mm = at.wide_mm;
    draw_cut(d, cut, at.along_mm, at.across_mm);
    pen.key({at.along_mm, at.across_mm}, Role::Label,
            power::fitting_name(fitting) + ", " +
                (cut.round ? pen.length(at.long_mm) + " across"
                           : pen.length(at.long_mm) + " x " + pen.length(at.wide_mm)) +
                ", through: middle " + pen.length(at.along_mm) + " from the left, " +
                pen.length(at.across_mm) + " up; " +
                (panel.one_of > 1 ? "in one only, the " : "in the ") + panel.place +
                (panel.one_of > 1 ? ", its " + std::string(at.left_edge) + " to the left here"
                                  : std::string()));
  }
}

// "left, right, lower: sealed; upper: body colour, rounded": sides with the same finish are told
// together. `first`: where the names' surfaces begin.
std::string sides_words(const Part& part, std::span<const std::string> names, std::size_t first,
                        Units units) {
  std::vector<std::pair<std::string, std::string>> told;  // the finish, and which sides have it
  for (std::size_t i = 0; i < names.size(); ++i) {
    std::string finish = surface_words(part.surfaces[first + i]);
    // Only edges are turned down; they come after the two faces.
    constexpr std::size_t kFaceCount = 2;
    const double fold_mm = first < kFaceCount ? 0 : part.folds_mm[first + i - kFaceCount];
    if (fold_mm > 0) finish += " " + metal_length(fold_mm, units);
    auto place = std::find_if(told.begin(), told.end(),
                              [&finish](const auto& one) { return one.first == finish; });
    if (place == told.end()) place = told.insert(told.end(), {finish, {}});
    place->second += (place->second.empty() ? "" : ", ") + names[i];
  }
  std::string text;
  for (const auto& [finish, sides] : told) {
    text +=
        (text.empty() ? "" : "; ") + (told.size() > 1 ? sides : std::string("all")) + ": " + finish;
  }
  return text;
}

}  // namespace

Sheet panel_sheet(const config::Config& config, const evaluate::Evaluation& e,
                  const SheetView& view, std::size_t index) {
  const evaluate::Build& build = *e.build;
  const Part& part = build.parts.parts[index];
  Sheet sheet;
  Drawing& d = sheet.drawing;
  const double length = part.length_mm, width = part.width_mm;
  const bool metal = part.material == frame::Material::Metal;
  sheet.text_mm = line_of(view, std::clamp(std::max(length, 1.3 * width) / 36, 4.0, 60.0));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  const std::array<std::string, 6> sides = parts::sides_of(part, build.frame.pieces);
  // Metal is told in decimals, as its order tells it.
  const auto told = [&](double mm) {
    return metal ? metal_length(mm, view.units) : pen.length(mm);
  };
  std::vector<Spot> outline{{0, 0}, {length, 0}, {length, width}, {0, width}};
  for (const parts::Tail& tail : part.tails) {
    const double up = width - tail.long_mm;
    if (tail.at == parts::At::End) {
      const double x = length - tail.inside_mm;
      outline[1].x_mm = x;
      outline.insert(outline.begin() + 2, {{x, up}, {length, up}});
    } else {
      outline[0].x_mm = tail.inside_mm;
      outline.insert(outline.end(), {{0, up}, {tail.inside_mm, up}});
    }
  }
  d.polygon(Role::Cabinet, outline);
  d.outline(Role::Person, outline, Weight::Normal);

  std::set<double> along, across;
  for (const Cut& cut : part.cuts) {
    for (int i = 0; i < cut.count; ++i) {
      const double step = i * cut.pitch_mm;
      draw_cut(d, cut, cut.along_mm + (cut.row_along ? step : 0),
               cut.across_mm + (cut.row_along ? 0 : step));
    }
    along.insert(cut.along_mm);
    across.insert(cut.across_mm);
  }
  along.insert(0);
  along.insert(length);
  across.insert(0);
  across.insert(width);
  // Holes first, the whole outside them; up is told beside lines of its own.
  const std::vector<double> stops(along.begin(), along.end());
  if (stops.size() > 2) pen.chain(stops, -2 * line, 0);
  const double whole_y = (stops.size() > 2 ? -5.2 : -2.4) * line;
  if (metal) {
    d.dimension({0, whole_y}, {length, whole_y}, "");
    d.text(Role::Label, {length / 2, whole_y - 0.9 * line}, told(length), Align::Centre);
    for (const double end : {0.0, length}) {
      d.line(Role::Dimension, {end, 0}, {end, whole_y - 0.3 * line}, Weight::Thin);
    }
  } else {
    pen.chain(std::array{0.0, length}, whole_y, 0);
  }
  double x = -1.5 * line;
  const auto up = [&](double from, double to, double at) {
    d.dimension({at, from}, {at, to}, "");
    d.text(Role::Label, {at - 0.4 * line, (from + to) / 2}, told(to - from), Align::Right);
    d.line(Role::Dimension, {0, to}, {at - 0.3 * line, to}, Weight::Thin);
    d.line(Role::Dimension, {0, from}, {at - 0.3 * line, from}, Weight::Thin);
  };
  if (across.size() > 2) {
    // Each height from below, so that errors do not add up; lines stand a text apart.
    for (const double height : across) {
      if (height == 0 || height == width) continue;
      up(0, height, x);
      x -= 7.5 * line;
    }
  }
  up(0, width, x);

  for (const Cut& cut : part.cuts) {
    const double beside = cut.long_mm / 2 + 0.9 * line;
    const bool right = cut.along_mm + beside + line < length;
    pen.key({cut.along_mm + (right ? beside : -beside), cut.across_mm}, Role::Label,
            cut_words(cut, pen));
  }
  if (e.packet && e.packet->wiring) add_openings(d, pen, *e.packet->wiring, part);
  // Which edge is which, on the two sides without lengths.
  d.text(Role::Label, {length, width + (part.grain_along ? 2.6 : 1.2) * line}, sides[5],
         Align::Right);
  d.text(Role::Label, {length + 0.8 * line, width / 2}, sides[3]);
  if (part.grain_along) {
    const double y = width + 1.2 * line;
    d.polyline(Role::Dimension, std::array{Spot{0.1 * length, y}, Spot{0.4 * length, y}});
    d.polyline(Role::Dimension,
               std::array{Spot{0.4 * length - 0.6 * line, y + 0.35 * line}, Spot{0.4 * length, y},
                          Spot{0.4 * length - 0.6 * line, y - 0.35 * line}});
    d.text(Role::Label, {0.4 * length + 0.5 * line, y}, metal ? "polish" : "grain");
  }
  pen.note("Make " + std::to_string(part.quantity()) + ": " +
           std::string(frame::material_name(part.material)) +
           (part.stock.empty() ? "" : " " + part.stock) + ", " + told(part.thick_mm) +
           " thick; place: " + places_words(part, build));
  std::string sizes = "Finished " + told(length) + " x " + told(width);
  const auto cut = ground_cut(part, e);
  if (cut) {
    sizes = "Drawn as on level ground: " + pen.length(length) + " long, " +
            ground_cut_words(*cut, view.units);
  }
  if (part.rough_length_mm) {
    const double wide_mm = part.rough_width_mm.value_or(width);
    sizes += "; first cut " + pen.length(*part.rough_length_mm) + " x " +
             pen.length(cut ? std::max(wide_mm, cut->most_mm) : wide_mm) + " (" +
             source_note("frame.rough") + ")";
  }
  pen.note(sizes);
  const std::array<std::string, 2> faces{"up, the " + sides[0], "down, the " + sides[1]};
  const std::array<std::string, 4> edges{"left, its " + sides[2], "right, its " + sides[3],
                                         "below, its " + sides[4], "above, its " + sides[5]};
  pen.note("Its " + sides[0] + " lies up here. Faces: " + sides_words(part, faces, 0, view.units) +
           ". Edges: " + sides_words(part, edges, faces.size(), view.units) + ".");
  if (part.material == frame::Material::BaseBoard) {
    for (const loads::Growth& one : build.loads.growth) {
      if (one.what != loads::Grows::BaseBoard || one.needed_mm <= 0) continue;
      pen.note("Heat lengthens it: where its right end, seen from outside, meets another board, " +
               pen.length(std::ceil(one.needed_mm)) + " come off that end when it is fitted (" +
               source_note("load.growth_base") + ")");
    }
  }
  for (const parts::Tail& tail : part.tails) {
    pen.note("The " + std::string(tail.at == parts::At::Start ? "left" : "right") +
             " edge is straight " + told(tail.inside_mm) + " inside that size, but for its last " +
             told(tail.long_mm) + " at the back: it meets no other top there and is turned down " +
             told(tail.down_mm) + ".");
  }
  if (metal) {
    pen.note(
        "Sizes are outside, over the turned-down edges, and from the upper face down. Make it "
        "from the primed sheets as measured, not from this sheet (" +
        source_note("metal.measure") + ")");
    pen.note(metal_thickness(part.thick_mm, view.units));
    pen.note(metal_edges(config));
  }
  const Box inked = inked_box(d, line);
  // Paper is some sixty lines wide.
  const double least = (view.line_mm > 0 ? 56 : 40) * line;
  pen.list({inked.left_mm, inked.bottom_mm - 1.6 * line},
           std::max(inked.right_mm - inked.left_mm, least));
  describe(sheet,
           "Part " + std::to_string(part.number) + ", " + std::string(frame::kind_name(part.kind)),
           config, "One part, its " + sides[0] + " up.", pen.entries());
  return sheet;
}

}  // namespace hs::report
