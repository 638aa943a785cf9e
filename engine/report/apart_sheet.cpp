// The cabinets pulled apart, all of them or what one step of the build puts on.

#include <algorithm>
#include <array>
#include <tuple>
#include <vector>

#include "engine/evaluate/build.h"
#include "engine/report/build_sheets.h"
#include "engine/report/frame_drawing.h"
#include "engine/report/parts_words.h"
#include "engine/report/pulled_apart.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using frame::Kind;
using frame::Piece;

// Depth goes up to the right at half its length: an oblique view, true across and up.
Spot oblique(double x, double y, double z) { return {x + 0.42 * y, z + 0.28 * y}; }

struct Faces {
  std::array<Spot, 4> front, top, side;
};
Faces faces_of(const Block& b) {
  const auto at = [](double x, double y, double z) { return oblique(x, y, z); };
  return {{at(b.left_mm, b.near_mm, b.bottom_mm), at(b.right_mm, b.near_mm, b.bottom_mm),
           at(b.right_mm, b.near_mm, b.top_mm), at(b.left_mm, b.near_mm, b.top_mm)},
          {at(b.left_mm, b.near_mm, b.top_mm), at(b.right_mm, b.near_mm, b.top_mm),
           at(b.right_mm, b.far_mm, b.top_mm), at(b.left_mm, b.far_mm, b.top_mm)},
          {at(b.right_mm, b.near_mm, b.bottom_mm), at(b.right_mm, b.far_mm, b.bottom_mm),
           at(b.right_mm, b.far_mm, b.top_mm), at(b.right_mm, b.near_mm, b.top_mm)}};
}

// Places on a face from its middle outwards.
std::vector<Spot> places_on(const std::array<Spot, 4>& face) {
  std::vector<Spot> out;
  for (const double u : {0.5, 0.3, 0.7, 0.12, 0.88}) {
    for (const double v : {0.5, 0.3, 0.7, 0.12, 0.88}) {
      const Spot low{face[0].x_mm + u * (face[1].x_mm - face[0].x_mm),
                     face[0].y_mm + u * (face[1].y_mm - face[0].y_mm)};
      const Spot high{face[3].x_mm + u * (face[2].x_mm - face[3].x_mm),
                      face[3].y_mm + u * (face[2].y_mm - face[3].y_mm)};
      out.push_back({low.x_mm + v * (high.x_mm - low.x_mm), low.y_mm + v * (high.y_mm - low.y_mm)});
    }
  }
  return out;
}

// Of a parallelogram whose corners go round one way or the other.
bool covers(const std::array<Spot, 4>& face, Spot at) {
  int left = 0, right = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const Spot &a = face[i], &b = face[(i + 1) % 4];
    const double turn =
        (b.x_mm - a.x_mm) * (at.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (at.x_mm - a.x_mm);
    (turn > 0 ? left : right) += 1;
  }
  return left == 0 || right == 0;
}

// What is put on together, in its order; a set of them is a sum.
constexpr unsigned kBase = 1, kBoxes = 2, kFace = 4, kSheets = 8, kMetal = 16, kBlock = 32,
                   kCap = 64, kFronts = 128;

unsigned layer_of(Kind kind) {
  switch (kind) {
    case Kind::BaseFront:
    case Kind::BaseBack:
    case Kind::BaseEnd:
    case Kind::Carrier:
    case Kind::CrossPiece:
      return kBase;
    case Kind::Side:
    case Kind::Bottom:
    case Kind::Back:
    case Kind::Stretcher:
    case Kind::Deck:
    case Kind::Shelf:
    case Kind::SlidePacker:
      return kBoxes;
    case Kind::Stile:
    case Kind::Rail:
      return kFace;
    case Kind::Substrate:
      return kSheets;
    case Kind::MetalTop:
      return kMetal;
    case Kind::RiserFront:
    case Kind::RiserSide:
    case Kind::RiserRib:
    case Kind::RiserTop:
    case Kind::Slab:
      return kBlock;
    case Kind::RiserCap:
      return kCap;
    case Kind::Door:
    case Kind::DrawerFront:
    case Kind::DrawerSide:
    case Kind::DrawerEnd:
    case Kind::DrawerBottom:
      return kFronts;
  }
  return kBoxes;
}

enum class How : std::uint8_t { Apart, Lifted, Standing };

struct Step {
  std::string_view name, title, words;
  unsigned now, before;  // layers that it puts on, and those that stand there already
  How how = How::Apart;
};

// Every piece of the station at once.
constexpr Step kWhole{"frame_pulled_apart", "Cabinets pulled apart",
                      "Every piece pulled from its place, with its number in the parts list.", ~0U,
                      0};

constexpr unsigned kBody = kBoxes | kFace;
constexpr std::array kSteps{
    Step{"step_base_boards", "Boards of the base and the face",
         "Treated lumber that carries, and the boards that are seen.", kBase | kFace, 0},
    Step{"step_base", "The base as it stands", "On its shims, before any cabinet.", kBase, 0,
         How::Standing},
    Step{"step_dry", "Boxes, fronts and drawers", "Put together dry, numbered, taken apart again.",
         kBody | kFronts, 0},
    Step{"step_boxes", "The boxes", "Without their fronts.", kBody | kBlock, 0},
    Step{"step_cabinets", "Boxes onto the base", "Each box comes down on the base whole.", kBody,
         kBase, How::Lifted},
    Step{"step_sheets", "Sheets under the tops", "They go onto the boxes.", kSheets, kBase | kBody},
    Step{"step_tops", "Metal over the sheets", "Tried dry, then bedded.", kMetal,
         kBase | kBody | kSheets},
    Step{"step_block", "The oven's block onto its top", "Bedded, then the cap on it.",
         kBlock | kCap, kBase | kBody | kSheets | kMetal},
    Step{"step_fronts", "Fronts onto the boxes", "By their numbers; then their gaps are set.",
         kFronts, kBase | kBody | kSheets | kMetal | kBlock | kCap},
};

struct Shown {
  const Piece* piece;
  std::size_t index;
  Pull by;
  bool now;        // put on by this step: numbered
  unsigned after;  // drawn after all with less: what stands layer by layer, then what is put on
  double depth;
};

std::vector<Shown> shown_of(const frame::Frame& frame, const Step& step) {
  constexpr double kLift_mm = 300;
  constexpr unsigned kLast = ~0U;
  std::vector<Shown> order;
  for (std::size_t i = 0; i < frame.pieces.size(); ++i) {
    const Piece& piece = frame.pieces[i];
    const unsigned layer = layer_of(piece.kind);
    // What goes onto something else lies over its place.
    const bool bays_apart = step.before == 0 && step.how == How::Apart;
    Pull by = pull_of(frame, piece, bays_apart);
    const bool now = (step.now & layer) != 0;
    if (!now && (step.before & layer) == 0) continue;
    const bool home = !now || step.how != How::Apart;
    if (home) by.y_mm = 0;
    if (home) by.z_mm = now && step.how == How::Lifted ? kLift_mm : 0;
    order.push_back({&piece, i, by, now, now ? kLast : layer, 0});
  }
  for (Shown& shown : order) {
    const Block b = moved(shown.piece->place, shown.by);
    // Far, low and left first.
    shown.depth =
        b.near_mm + b.far_mm - 0.6 * (b.bottom_mm + b.top_mm) - 0.4 * (b.left_mm + b.right_mm);
  }
  std::stable_sort(order.begin(), order.end(), [](const Shown& a, const Shown& b) {
    return std::tuple(a.after, -a.depth) < std::tuple(b.after, -b.depth);
  });
  return order;
}

Sheet apart_sheet(const config::Config& config, const evaluate::Evaluation& e,
                  const SheetView& view, const Step& step) {
  const evaluate::Build& build = *e.build;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  const std::vector<Shown> order = shown_of(build.frame, step);
  for (const Shown& shown : order) {
    for (const Block& block : frame::blocks_of(*shown.piece)) {
      const Faces faces = faces_of(moved(block, shown.by));
      for (const auto* face : {&faces.side, &faces.top, &faces.front}) {
        d.polygon(shown.now ? role_of(*shown.piece) : kPale, *face);
        d.outline(shown.now ? Role::Thing : kPaleEdge, *face, Weight::Thin);
      }
    }
  }
  const Box drawn = d.bounds();
  sheet.text_mm = line_of(view, sheet_text_mm(drawn.right_mm - drawn.left_mm));
  const double line = sheet.text_mm;
  Labels labels(line);
  std::vector<bool> named(build.parts.parts.size() + 1, false);
  // A number stands where its piece is seen: no face drawn later lies over it. Near pieces first.
  const auto seen = [&order](std::size_t from, Spot at) {
    for (std::size_t i = from + 1; i < order.size(); ++i) {
      for (const Block& block : frame::blocks_of(*order[i].piece)) {
        const Faces faces = faces_of(moved(block, order[i].by));
        if (covers(faces.front, at) || covers(faces.top, at) || covers(faces.side, at)) {
          return false;
        }
      }
    }
    return true;
  };
  const auto name_one = [&](std::size_t from, const std::string& text, bool anywhere) {
    const Faces faces = faces_of(moved(order[from].piece->place, order[from].by));
    const frame::Axis thick = order[from].piece->thick;
    const auto& face = thick == frame::Axis::Z   ? faces.top
                       : thick == frame::Axis::X ? faces.side
                                                 : faces.front;
    for (const Spot& at : places_on(face)) {
      if ((anywhere || seen(from, at)) && labels.place(d, at, text)) return true;
    }
    return false;
  };
  for (const bool anywhere : {false, true}) {
    for (std::size_t i = order.size(); i-- > 0;) {
      const auto number = static_cast<std::size_t>(parts::number_of(build.parts, order[i].index));
      if (order[i].now && !named[number]) {
        named[number] = name_one(i, std::to_string(number), anywhere);
      }
    }
  }
  SheetPen pen(d, line, view.units, true);
  for (const parts::Part& part : build.parts.parts) {
    if ((step.now & layer_of(part.kind)) == 0) continue;
    pen.note(part_name(part) + ": " + part_size(part, e, view.units) +
             (ground_cut(part, e) ? "; cut to the ground" : ""));
  }
  pen.note(
      "Across and up is true, depth is drawn at half and slanted. Numbers are those of the "
      "parts list; joints are butts (" +
      source_note("frame.rough") + ")");
  pen.finish_below();
  describe(sheet, step.title, config, step.words, pen.entries());
  return sheet;
}

}  // namespace

Sheet pulled_apart_sheet(const config::Config& config, const evaluate::Evaluation& e,
                         const SheetView& view) {
  return apart_sheet(config, e, view, kWhole);
}

std::span<const std::string_view> step_sheet_names() {
  static const auto kNames = [] {
    std::array<std::string_view, kSteps.size()> names;
    std::transform(kSteps.begin(), kSteps.end(), names.begin(),
                   [](const Step& step) { return step.name; });
    return names;
  }();
  return kNames;
}

std::optional<Sheet> step_sheet(std::string_view name, const config::Config& config,
                                const evaluate::Evaluation& e, const SheetView& view) {
  const auto* step = std::find_if(kSteps.begin(), kSteps.end(),
                                  [name](const Step& one) { return one.name == name; });
  if (step == kSteps.end()) return {};
  const auto& pieces = e.build->frame.pieces;
  // Nothing is put on by a step that this station does not have.
  if (std::none_of(pieces.begin(), pieces.end(),
                   [&](const Piece& piece) { return (step->now & layer_of(piece.kind)) != 0; })) {
    return {};
  }
  return apart_sheet(config, e, view, *step);
}

}  // namespace hs::report
