#include "engine/report/build_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/frame_drawing.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using frame::Face;
using frame::Kind;
using frame::Piece;

constexpr std::array kFrameSheets{
    FrameSheet{"frame_front", "Cabinets from the front",
               "Every box, door and drawer, with its sizes.", "As built.", true, frame_front_sheet},
    FrameSheet{"frame_side", "Cabinets cut from front to back",
               "Toe space, box, fronts and overhang, and what lies on what.", "As built.", true,
               frame_side_sheet},
    FrameSheet{"frame_pulled_apart", "Cabinets pulled apart",
               "Every part in its place, numbered as in the parts list.",
               "Numbers are those of the parts list. Drawn on the slant and not to scale: across "
               "and up is "
               "true, depth at half.",
               false, pulled_apart_sheet},
};
constexpr std::string_view kPanel = "panel_", kBase = "base_";

const FrameSheet* find_frame_sheet(std::string_view name) {
  const auto* found = std::find_if(kFrameSheets.begin(), kFrameSheets.end(),
                                   [name](const FrameSheet& one) { return one.name == name; });
  return found == kFrameSheets.end() ? nullptr : found;
}

// The number of a name that begins so, from 1; nullopt: it is no such name.
std::optional<std::size_t> number_after(std::string_view start, std::string_view name) {
  if (!name.starts_with(start)) return {};
  const std::string_view digits = name.substr(start.size());
  if (digits.empty() || digits.size() > 4 || digits[0] == '0') return {};
  std::size_t number = 0;
  for (const char c : digits) {
    if (c < '0' || c > '9') return {};
    number = 10 * number + static_cast<std::size_t>(c - '0');
  }
  return number;
}

std::array<Spot, 4> from_front(const Block& b) {
  return {Spot{b.left_mm, b.bottom_mm}, Spot{b.right_mm, b.bottom_mm}, Spot{b.right_mm, b.top_mm},
          Spot{b.left_mm, b.top_mm}};
}

// A gas bay says on the drawing what keeps it safe.
std::string bay_words(config::Holds holds) {
  if (holds != config::Holds::Gas) return std::string(holds_words(holds));
  return "gas cylinder alone, open high and low in front and behind (" +
         source_note("frame.gas_bay") + ")";
}

void each_once(std::vector<double>& places_mm) {
  std::sort(places_mm.begin(), places_mm.end());
  places_mm.erase(std::unique(places_mm.begin(), places_mm.end(),
                              [](double a, double b) { return std::abs(a - b) < 0.05; }),
                  places_mm.end());
}

// Two dashed lines from the corners of a door to the middle of its hinged side: the side away from
// its pull.
void draw_hinges(Drawing& d, const Piece& door) {
  if (door.kind != Kind::Door) return;
  const Block& b = door.place;
  for (const frame::Hole& hole : door.holes) {
    if (hole.use != frame::HoleUse::Pull) continue;
    const bool right = hole.u_mm < b.width_mm() / 2;
    const double hinged = right ? b.right_mm : b.left_mm, free = right ? b.left_mm : b.right_mm;
    const double middle = (b.bottom_mm + b.top_mm) / 2;
    for (const double end : {b.bottom_mm, b.top_mm}) {
      d.line(Role::Thing, {free, end}, {hinged, middle}, Weight::Thin, true);
    }
    for (int i = 0; i < hole.count; ++i) {
      const double u = b.left_mm + hole.u_mm + (hole.along_u ? i * hole.pitch_mm : 0);
      const double v = b.bottom_mm + hole.v_mm + (hole.along_u ? 0 : i * hole.pitch_mm);
      d.outline(Role::Thing, ellipse({u, v}, 2 * hole.wide_mm, 2 * hole.high_mm), Weight::Thin);
    }
  }
}

}  // namespace

Sheet frame_front_sheet(const config::Config& config, const evaluate::Evaluation& e,
                        const SheetView& view) {
  const frame::Frame& frame = e.build->frame;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  double left = 0, right = 0;
  for (const frame::Run& run : frame.runs) {
    left = std::min(left, run.counter.left_mm);
    right = std::max(right, run.counter.right_mm);
  }
  sheet.text_mm = line_of(view, sheet_text_mm((right - left) * 1.4));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  d.line(Role::Ground, {left - 2 * line, 0}, {right + 2 * line, 0}, Weight::Heavy);
  // Far pieces first, so that near ones cover them.
  std::vector<const Piece*> order;
  for (const Piece& piece : frame.pieces) order.push_back(&piece);
  std::stable_sort(order.begin(), order.end(), [](const Piece* a, const Piece* b) {
    return a->place.near_mm > b->place.near_mm;
  });
  for (const Piece* piece : order) {
    for (const Block& block : frame::blocks_of(*piece)) {
      d.polygon(role_of(*piece), from_front(block));
      d.outline(role_of(*piece), from_front(block), Weight::Thin);
    }
    draw_hinges(d, *piece);
    for (const frame::Hole& hole : piece->holes) {
      if (hole.use != frame::HoleUse::Vent || piece->kind != Kind::Door) continue;
      const Spot at{piece->place.left_mm + hole.u_mm, piece->place.bottom_mm + hole.v_mm};
      const double w = hole.wide_mm / 2, h = hole.high_mm / 2;
      d.polygon(Role::OvenBody,
                std::array{Spot{at.x_mm - w, at.y_mm - h}, Spot{at.x_mm + w, at.y_mm - h},
                           Spot{at.x_mm + w, at.y_mm + h}, Spot{at.x_mm - w, at.y_mm + h}});
    }
  }
  std::vector<double> across;
  for (const frame::Run& run : frame.runs) {
    across.push_back(run.boxes.left_mm);
    for (const frame::Bay& bay : run.bays) across.push_back(bay.box.right_mm);
  }
  each_once(across);
  const double foot = std::min(0.0, frame.low_mm);
  pen.chain(across, foot - 1.6 * line, 0);
  // What it takes up: the tops, their overhang with them.
  std::vector<double> tops;
  for (const frame::Run& run : frame.runs) {
    tops.push_back(run.counter.left_mm);
    tops.push_back(run.counter.right_mm);
  }
  each_once(tops);
  const bool apart = tops.size() > 2;
  if (apart) pen.chain(tops, foot - 5 * line, 0);
  pen.chain(std::array{tops.front(), tops.back()}, foot - (apart ? 8.4 : 5) * line, 0);
  // Heights: one ladder for each run, outside of it.
  double way = -1;
  for (const frame::Run& run : frame.runs) {
    const double edge = way < 0 ? left - 2.5 * line : right + 2.5 * line;
    draw_ladder(d, pen, frame, run, way < 0 ? left : right, edge, way, view.units);
    way = frame.runs.size() == 1 ? way : 1;
  }
  for (const frame::Run& run : frame.runs) {
    for (std::size_t i = 0; i < run.bays.size(); ++i) {
      const frame::Bay& bay = run.bays[i];
      pen.key({(bay.box.left_mm + bay.box.right_mm) / 2,
               bay.box.bottom_mm + 0.42 * bay.box.height_mm()},
              Role::Label,
              std::string(run.oven ? "Under the oven" : "Under the dough counter") + ", bay " +
                  std::to_string(i + 1) + ": " + bay_words(bay.holds));
    }
  }
  pen.note(base_words(frame, pen) + ": it takes what the boxes leave, so that the top lands (" +
           source_note("frame.base") + ")");
  if (std::any_of(frame.pieces.begin(), frame.pieces.end(),
                  [](const Piece& piece) { return piece.kind == Kind::Door; })) {
    pen.note("Dashed lines on a door meet at its hinged side; its pull is on the other");
  }
  if (frame.places.masonry_base) {
    pen.note("The oven's own pier is masonry and not drawn: never a cabinet (" +
             source_note("frame.masonry") + ")");
  }
  pen.finish_below();
  describe(sheet, "Cabinets from the front", config, "Base, boxes, fronts and top, as built.",
           pen.entries());
  return sheet;
}

std::optional<Sheet> build_sheet(std::string_view name, const config::Config& config,
                                 const evaluate::Evaluation& e, const SheetView& view) {
  if (const auto number = number_after(kBase, name)) {
    if (*number > base_cut_count(e)) return {};
    return base_cut_sheet(config, e, view, *number - 1);
  }
  if (!e.build || !e.build->frame.made()) return {};
  if (const FrameSheet* whole = find_frame_sheet(name)) return whole->draw(config, e, view);
  if (auto step = step_sheet(name, config, e, view)) return step;
  const auto number = number_after(kPanel, name);
  if (!number || *number > e.build->parts.parts.size()) return {};
  return panel_sheet(config, e, view, *number - 1);
}

std::span<const FrameSheet> frame_sheets() { return kFrameSheets; }

std::string frame_sheet_names() {
  std::string names;
  const auto add = [&names](std::string_view name) {
    if (!names.empty()) names += ", ";
    names += name;
  };
  for (const FrameSheet& whole : kFrameSheets) add(whole.name);
  for (const std::string_view step : step_sheet_names()) add(step);
  return names;
}

bool is_build_sheet_name(std::string_view name) {
  const auto steps = step_sheet_names();
  return find_frame_sheet(name) != nullptr || number_after(kPanel, name) ||
         number_after(kBase, name) || std::find(steps.begin(), steps.end(), name) != steps.end();
}

std::string build_sheet_names(const evaluate::Evaluation& e) {
  std::string names;
  if (e.build && e.build->frame.made()) {
    names =
        frame_sheet_names() + ", panel_1 to panel_" + std::to_string(e.build->parts.parts.size());
  }
  if (const std::size_t boards = base_cut_count(e); boards > 0) {
    names += (names.empty() ? "base_1 to base_" : ", base_1 to base_") + std::to_string(boards);
  }
  return names;
}

}  // namespace hs::report
