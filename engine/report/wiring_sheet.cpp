#include "engine/report/wiring_sheet.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

// A panel's other two axes, in the order x, y, z.
struct Flat {
  double wide_mm, high_mm;
};
Flat flat_of(const power::Panel& panel) {
  const Block& b = panel.place;
  switch (panel.thick) {
    case power::Through::X:
      return {b.depth_mm(), b.height_mm()};
    case power::Through::Y:
      return {b.width_mm(), b.height_mm()};
    case power::Through::Z:
      return {b.width_mm(), b.depth_mm()};
  }
  return {};
}

}  // namespace

std::string panel_words(const evaluate::PanelPart& panel) {
  return "part " + std::to_string(panel.part) +
         (panel.one_of > 1 ? " (one of " + std::to_string(panel.one_of) + ")" : std::string()) +
         ", " + panel.place;
}

FromEdges edges_of(power::Through thick) {
  switch (thick) {
    case power::Through::X:
      return {"front edge", "lower edge", "from the right"};
    case power::Through::Y:
      return {"left edge", "lower edge", "from the front"};
    case power::Through::Z:
      return {"left edge", "front edge", "from above"};
  }
  return {};
}

bool has_cutouts(const evaluate::Wiring& wiring, std::size_t panel) {
  return std::any_of(
      wiring.cutting.cutouts.begin(), wiring.cutting.cutouts.end(),
      [&](const power::Cutout& cut) { return wiring.fittings[cut.fitting].panel == panel; });
}

Sheet wiring_sheet(const config::Config& config, const evaluate::Evaluation& e,
                   const SheetView& view, std::size_t index) {
  const evaluate::Wiring& wiring = *e.packet->wiring;
  const power::Panel& panel = wiring.panels[index];
  const Flat flat = flat_of(panel);
  const FromEdges edges = edges_of(panel.thick);
  Sheet sheet;
  Drawing& d = sheet.drawing;
  sheet.text_mm =
      line_of(view, std::clamp(std::max(flat.wide_mm, 1.3 * flat.high_mm) / 40, 4.0, 60.0));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  const std::array outline{Spot{0, 0}, Spot{flat.wide_mm, 0}, Spot{flat.wide_mm, flat.high_mm},
                           Spot{0, flat.high_mm}};
  d.polygon(Role::Cabinet, outline);
  d.outline(Role::Dimension, outline, Weight::Normal);
  double low = -1.6 * line;
  pen.chain(std::array{0.0, flat.wide_mm}, low, 0);
  d.dimension({-1.6 * line, 0}, {-1.6 * line, flat.high_mm}, "");
  d.text(Role::Label, {-2 * line, flat.high_mm / 2}, pen.length(flat.high_mm), Align::Right);
  for (const power::Cutout& cut : wiring.cutting.cutouts) {
    const power::Fitting& fitting = wiring.fittings[cut.fitting];
    if (fitting.panel != index) continue;
    const double w = cut.wide_mm, h = cut.round ? cut.wide_mm : cut.high_mm;
    const Spot middle{cut.u_mm + w / 2, cut.v_mm + h / 2};
    if (cut.round) {
      const std::vector<Spot> ring = ellipse(middle, w / 2, w / 2);
      d.hatch(Role::Thing, ring);
      d.outline(Role::Dimension, ring);
    } else {
      const std::array corners{Spot{cut.u_mm, cut.v_mm}, Spot{cut.u_mm + w, cut.v_mm},
                               Spot{cut.u_mm + w, cut.v_mm + h}, Spot{cut.u_mm, cut.v_mm + h}};
      d.hatch(Role::Thing, corners);
      d.outline(Role::Dimension, corners);
    }
    const double beside = w / 2 + 0.9 * line;
    const bool right = middle.x_mm + beside + line < flat.wide_mm;
    pen.key({middle.x_mm + (right ? beside : -beside), middle.y_mm}, Role::Label,
            power::fitting_name(fitting) + ": " + pen.length(cut.u_mm) + " from the " +
                std::string(edges.along) + ", " + pen.length(cut.v_mm) + " from the " +
                std::string(edges.up) + ", " +
                (cut.round ? pen.length(w) + " across" : pen.length(w) + " x " + pen.length(h)));
  }
  pen.note("Cut out of " + panel_words(wiring.panel_parts[index]) + ". Seen " +
           std::string(edges.seen) + ": its " + std::string(edges.along) + " is on the left, its " +
           std::string(edges.up) + " below");
  const Box inked = inked_box(d, line);
  pen.list({inked.left_mm, inked.bottom_mm - 1.6 * line},
           std::max(inked.right_mm - inked.left_mm, 40 * line));
  describe(sheet, "Cut out of " + panel_words(wiring.panel_parts[index]), config,
           "Openings for boxes and wires, seen " + std::string(edges.seen) + ".", pen.entries());
  return sheet;
}

}  // namespace hs::report
