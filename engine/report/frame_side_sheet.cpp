// The cabinets cut from front to back, one run beside the other: toe space, fronts, boxes,
// overhang, and what lies on what.

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/evaluate/build.h"
#include "engine/report/build_sheets.h"
#include "engine/report/frame_drawing.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using frame::Piece;

// Doors first, since nothing else shows how a front sits; a gas bay only where there is no other.
const frame::Bay& bay_to_cut(const frame::Run& run) {
  const auto with = [&run](auto wanted) {
    return std::find_if(run.bays.begin(), run.bays.end(), wanted);
  };
  auto found = with([](const frame::Bay& bay) { return bay.holds == config::Holds::Doors; });
  if (found == run.bays.end()) {
    found = with([](const frame::Bay& bay) { return bay.holds != config::Holds::Gas; });
  }
  return found == run.bays.end() ? run.bays.front() : *found;
}

std::array<Spot, 4> from_left(const Block& b, double shift_mm) {
  return {Spot{b.near_mm + shift_mm, b.bottom_mm}, Spot{b.far_mm + shift_mm, b.bottom_mm},
          Spot{b.far_mm + shift_mm, b.top_mm}, Spot{b.near_mm + shift_mm, b.top_mm}};
}

// Beside a thin piece where its number does not fit on it, with a line to it: first on the side
// away from the middle of what is cut, so that two neighbours' numbers stand as they do.
void number_piece(Drawing& d, Labels& labels, const Block& b, double shift_mm, double middle_mm,
                  double line, const std::string& text) {
  const Spot middle{(b.near_mm + b.far_mm) / 2 + shift_mm, (b.bottom_mm + b.top_mm) / 2};
  const bool fits =
      b.depth_mm() > text_width_mm(text, line) + 0.3 * line && b.height_mm() > 1.1 * line;
  if (fits && labels.place(d, middle, text)) return;
  const bool upright = b.height_mm() > b.depth_mm();
  for (const double along : {0.0, 0.3, -0.3, 0.42, -0.42}) {
    const double out = upright && middle.x_mm < middle_mm ? -1 : 1;
    for (const double side : {1.5 * out, -1.5 * out, 2.8 * out, -2.8 * out}) {
      const Spot tip{middle.x_mm + (upright ? 0 : along * b.depth_mm()),
                     middle.y_mm + (upright ? along * b.height_mm() : 0)};
      const Spot at{tip.x_mm + (upright ? side * line : 0), tip.y_mm + (upright ? 0 : side * line)};
      if (!labels.place(d, at, text)) continue;
      const double short_of = side > 0 ? -0.6 * line : 0.6 * line;
      d.line(Role::Dimension, tip,
             {at.x_mm + (upright ? short_of : 0), at.y_mm + (upright ? 0 : short_of)},
             Weight::Thin);
      return;
    }
  }
}

}  // namespace

Sheet frame_side_sheet(const config::Config& config, const evaluate::Evaluation& e,
                       const SheetView& view) {
  const evaluate::Build& build = *e.build;
  const frame::Frame& frame = build.frame;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  double deep = 0;
  for (const frame::Run& run : frame.runs) deep += run.counter.depth_mm();
  sheet.text_mm = line_of(view, sheet_text_mm(1.6 * deep));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units, true);
  Labels labels(line);
  const double foot = std::min(0.0, frame.low_mm);
  double shift = 0;
  bool first = true;
  for (const frame::Run& run : frame.runs) {
    const frame::Bay& bay = bay_to_cut(run);
    // Beside the middle: two doors meet there.
    const double cut_x = bay.box.left_mm + 0.31 * bay.box.width_mm();
    const bool riser = run.oven && frame.places.riser;
    if (!first) shift += (riser ? 30 : 22) * line;
    first = false;
    shift -= run.counter.near_mm;
    const double near = run.counter.near_mm + shift, far = run.counter.far_mm + shift;
    d.line(Role::Ground, {near - 2 * line, 0}, {far + 2 * line, 0}, Weight::Heavy);

    struct Met {
      const Piece* piece;
      std::size_t index;
      Block block;
    };
    std::vector<Met> behind, cut;
    for (std::size_t i = 0; i < frame.pieces.size(); ++i) {
      const Piece& piece = frame.pieces[i];
      if (piece.oven != run.oven) continue;
      for (const Block& block : frame::blocks_of(piece)) {
        if (block.left_mm <= cut_x && cut_x <= block.right_mm) {
          cut.push_back({&piece, i, block});
        } else if (block.left_mm > cut_x && block.left_mm < bay.box.right_mm) {
          behind.push_back({&piece, i, block});
        }
      }
    }
    std::stable_sort(behind.begin(), behind.end(),
                     [](const Met& a, const Met& b) { return a.block.left_mm > b.block.left_mm; });
    for (const Met& met : behind) {
      d.polygon(kPale, from_left(met.block, shift));
      d.outline(kPaleEdge, from_left(met.block, shift), Weight::Thin);
    }
    for (const Met& met : cut) {
      d.polygon(role_of(*met.piece), from_left(met.block, shift));
      d.outline(Role::Person, from_left(met.block, shift), Weight::Normal);
    }
    // Those farthest from the middle first: they have the places outside.
    const double middle = (run.counter.near_mm + run.counter.far_mm) / 2;
    std::stable_sort(cut.begin(), cut.end(), [middle](const Met& a, const Met& b) {
      const auto away = [middle](const Block& block) {
        return std::abs((block.near_mm + block.far_mm) / 2 - middle);
      };
      return away(a.block) > away(b.block);
    });
    std::vector<int> named;
    for (const Met& met : cut) {
      const int number = parts::number_of(build.parts, met.index);
      if (std::find(named.begin(), named.end(), number) != named.end()) continue;
      named.push_back(number);
      number_piece(d, labels, met.block, shift, middle + shift, line, std::to_string(number));
    }

    pen.chain(std::array{near, run.boxes.near_mm + shift, run.boxes.far_mm + shift, far},
              foot - 1.6 * line, 0);
    pen.chain(std::array{near, run.toe_mm + shift, run.boxes.far_mm + shift, far}, foot - 5 * line,
              0);
    pen.chain(std::array{near, far}, foot - 8.4 * line, 0);
    draw_ladder(d, pen, frame, run, near, near - 2.5 * line, -1, view.units);
    const std::string fronts = bay.holds == config::Holds::Open
                                   ? std::string("open, ")
                                   : "top over fronts " +
                                         pen.length(run.face_mm - run.counter.near_mm) +
                                         ", fronts " + pen.length(config.build.front_mm) + ", ";
    const std::string name = run.oven ? "Under the oven" : "Under the dough counter";
    pen.key({(near + far) / 2,
             std::max(run.top_mm, riser ? frame.places.riser->top_mm : 0) + 4.2 * line},
            Role::Label,
            name + ", cut through bay " + std::to_string(&bay - run.bays.data() + 1) + ": " +
                fronts + "toe space " + pen.length(run.toe_mm - run.face_mm) +
                " deep behind the face, " + lower_first(base_words(frame, pen)) +
                ", sheets under the metal " + pen.length(run.sheets_mm) + " (" +
                source_note("frame.base") + ")");
    shift = far;
  }
  pen.note(
      "The cook stands on the left. Heavy edges are cut, pale ones lie behind; numbers are "
      "those of the parts list; joints are butts (" +
      source_note("frame.rough") + ")");
  pen.finish_below();
  describe(sheet, "Cabinets cut from front to back", config,
           "Base, box, front, overhang and top of each run, seen from its left.", pen.entries());
  return sheet;
}

}  // namespace hs::report
