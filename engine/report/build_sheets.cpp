#include "engine/report/build_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using frame::Face;
using frame::Kind;
using frame::Piece;

constexpr std::string_view kPanel = "panel_";

Role role_of(const Piece& piece) {
  switch (piece.material) {
    case frame::Material::Metal:
      return Role::Counter;
    case frame::Material::Carrier:
    case frame::Material::Slab:
      return Role::Riser;
    case frame::Material::Sheet:
    case frame::Material::DrawerSheet:
    case frame::Material::Front:
    case frame::Material::FaceBoard:
    case frame::Material::BaseBoard:
      return Role::Cabinet;
  }
  return Role::Cabinet;
}

std::vector<Block> solids(const Piece& piece) {
  std::vector<Block> all = piece.folds;
  all.push_back(piece.place);
  return all;
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

std::size_t part_number(const evaluate::Build& build, std::size_t piece) {
  for (std::size_t i = 0; i < build.parts.parts.size(); ++i) {
    const auto& pieces = build.parts.parts[i].pieces;
    if (std::find(pieces.begin(), pieces.end(), piece) != pieces.end()) return i + 1;
  }
  return 0;
}

// How far a piece is pulled from its place.
struct Pull {
  double x_mm = 0, y_mm = 0, z_mm = 0;
};

Pull pull_of(const Piece& piece) {
  constexpr double kFront = -420, kFrame = -210;
  switch (piece.kind) {
    case Kind::BaseFront:
      return {0, kFront, -420};
    case Kind::BaseBack:
    case Kind::BaseEnd:
      return {0, 0, -420};
    case Kind::Carrier:
    case Kind::CrossPiece:
      return {0, 0, -300};
    case Kind::Bottom:
      return {0, 0, -130};
    case Kind::Back:
      return {0, 350, 0};
    case Kind::Stretcher:
    case Kind::Deck:
      return {0, 0, 130};
    case Kind::Stile:
    case Kind::Rail:
      return {0, kFrame, 0};
    case Kind::Door:
    case Kind::DrawerFront:
      return {0, kFront, 0};
    case Kind::DrawerSide:
    case Kind::DrawerEnd:
    case Kind::DrawerBottom:
      return {0, kFrame, 0};
    case Kind::Substrate:
      return {0, 0, piece.nth == 0 ? 330.0 : 430.0};
    case Kind::MetalTop:
      return {0, 0, 560};
    case Kind::RiserFront:
    case Kind::RiserSide:
    case Kind::RiserRib:
    case Kind::Slab:
      return {0, 0, 760};
    case Kind::RiserTop:
      return {0, 0, 900};
    case Kind::RiserCap:
      return {0, 0, 1020};
    case Kind::Side:
    case Kind::Shelf:
    case Kind::SlidePacker:
      return {};
  }
  return {};
}

Block moved(const Block& b, const Pull& by) {
  return {b.left_mm + by.x_mm, b.right_mm + by.x_mm,  b.near_mm + by.y_mm,
          b.far_mm + by.y_mm,  b.bottom_mm + by.z_mm, b.top_mm + by.z_mm};
}

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

// Keeps numbers apart: the first place of a few that is free.
class Labels {
 public:
  explicit Labels(double line_mm) : line_mm_(line_mm) {}
  bool place(Drawing& d, Spot at, const std::string& text) {
    const double wide = text_width_mm(text, line_mm_) + 0.2 * line_mm_;
    const Box box{at.x_mm - wide / 2, at.y_mm - 0.5 * line_mm_, at.x_mm + wide / 2,
                  at.y_mm + 0.5 * line_mm_};
    for (const Box& other : taken_) {
      if (box.left_mm < other.right_mm && other.left_mm < box.right_mm &&
          box.bottom_mm < other.top_mm && other.bottom_mm < box.top_mm) {
        return false;
      }
    }
    taken_.push_back(box);
    d.text(Role::Key, at, text, Align::Centre);
    return true;
  }

 private:
  double line_mm_;
  std::vector<Box> taken_;
};

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
  sheet.text_mm = sheet_text_mm((right - left) * 1.4);
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
    for (const Block& block : solids(*piece)) {
      d.polygon(role_of(*piece), from_front(block));
      d.outline(role_of(*piece), from_front(block), Weight::Thin);
    }
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
  std::sort(across.begin(), across.end());
  across.erase(std::unique(across.begin(), across.end(),
                           [](double a, double b) { return std::abs(a - b) < 0.05; }),
               across.end());
  pen.chain(across, -1.6 * line, 0);
  // Heights: one ladder for each run, outside of it.
  double way = -1;
  for (const frame::Run& run : frame.runs) {
    const bool alone = frame.runs.size() == 1;
    const double edge = way < 0 ? left - 2.5 * line : right + 2.5 * line;
    const double stops[] = {0, run.boxes.bottom_mm, run.boxes.top_mm, run.top_mm};
    for (std::size_t i = 0; i + 1 < std::size(stops); ++i) {
      const double x = edge + way * 2.2 * line * static_cast<double>(i % 2);
      d.dimension({x, stops[i]}, {x, stops[i + 1]}, "");
      d.text(Role::Label, {x + way * 0.4 * line, (stops[i] + stops[i + 1]) / 2},
             pen.length(stops[i + 1] - stops[i]), way < 0 ? Align::Right : Align::Left);
      d.line(Role::Dimension, {way < 0 ? left : right, stops[i + 1]}, {x, stops[i + 1]},
             Weight::Thin);
    }
    const double x = edge + way * 11.5 * line;
    d.dimension({x, 0}, {x, run.top_mm}, pen.length(run.top_mm));
    way = alone ? way : 1;
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
  pen.note("Base " + pen.length(frame.base_mm) +
           " at the ground where the cook's feet are: it takes what the boxes leave, so that the "
           "top lands (" +
           source_note("frame.base") + ")");
  if (frame.places.masonry_base) {
    pen.note("The oven's own pier is masonry and not drawn: never a cabinet (" +
             source_note("frame.masonry") + ")");
  }
  const Box inked = inked_box(d, line);
  pen.finish({inked.left_mm, inked.bottom_mm - 2 * line},
             std::max(inked.right_mm - inked.left_mm, 40 * line));
  describe(sheet, "Cabinets from the front", config, "Base, boxes, fronts and top, as built.",
           pen.entries());
  return sheet;
}

Sheet pulled_apart_sheet(const config::Config& config, const evaluate::Evaluation& e,
                         const SheetView& view) {
  const evaluate::Build& build = *e.build;
  const frame::Frame& frame = build.frame;
  Sheet sheet;
  Drawing& d = sheet.drawing;
  // Boxes are drawn apart too: each by its bay, runs away from each other.
  struct Shown {
    const Piece* piece;
    std::size_t index;
    Pull by;
    double depth;
  };
  std::vector<Shown> order;
  for (std::size_t i = 0; i < frame.pieces.size(); ++i) {
    const Piece& piece = frame.pieces[i];
    Pull by = pull_of(piece);
    const bool second = frame.runs.size() > 1 && piece.oven == frame.runs[1].oven;
    by.x_mm += second ? 420 : 0;
    if (piece.bay != frame::kWholeRun) by.x_mm += 60 * piece.bay;
    order.push_back({&piece, i, by, 0});
  }
  for (Shown& shown : order) {
    const Block b = moved(shown.piece->place, shown.by);
    // Far, low and left first.
    shown.depth =
        b.near_mm + b.far_mm - 0.6 * (b.bottom_mm + b.top_mm) - 0.4 * (b.left_mm + b.right_mm);
  }
  std::stable_sort(order.begin(), order.end(),
                   [](const Shown& a, const Shown& b) { return a.depth > b.depth; });
  for (const Shown& shown : order) {
    for (const Block& block : solids(*shown.piece)) {
      const Faces faces = faces_of(moved(block, shown.by));
      const Role role = role_of(*shown.piece);
      for (const auto* face : {&faces.side, &faces.top, &faces.front}) {
        d.polygon(role, *face);
        d.outline(Role::Thing, *face, Weight::Thin);
      }
    }
  }
  const Box drawn = d.bounds();
  sheet.text_mm = sheet_text_mm(drawn.right_mm - drawn.left_mm);
  const double line = sheet.text_mm;
  Labels labels(line);
  std::vector<bool> named(build.parts.parts.size() + 1, false);
  // A number stands where its piece is seen: no face drawn later lies over it. Near pieces first.
  const auto seen = [&order](std::size_t from, Spot at) {
    for (std::size_t i = from + 1; i < order.size(); ++i) {
      for (const Block& block : solids(*order[i].piece)) {
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
      const std::size_t number = part_number(build, order[i].index);
      if (!named[number]) named[number] = name_one(i, std::to_string(number), anywhere);
    }
  }
  SheetPen pen(d, line, view.units, true);
  for (const parts::Part& part : build.parts.parts) {
    pen.note(std::to_string(part.number) + "  " + std::string(frame::kind_name(part.kind)) + ", " +
             std::to_string(part.quantity()) + ": " + pen.length(part.length_mm) + " x " +
             pen.length(part.width_mm) + " x " + pen.length(part.thick_mm) + ", " +
             std::string(frame::material_name(part.material)));
  }
  pen.note(
      "Across and up is true, depth is drawn at half and slanted. Numbers are those of the "
      "parts list; joints are butts (" +
      source_note("frame.rough") + ")");
  const Box inked = inked_box(d, line);
  pen.finish({inked.left_mm, inked.bottom_mm - 2 * line},
             std::max(inked.right_mm - inked.left_mm, 40 * line));
  describe(sheet, "Cabinets pulled apart", config,
           "Every piece pulled from its place, with its number in the parts list.", pen.entries());
  return sheet;
}

std::optional<Sheet> build_sheet(std::string_view name, const config::Config& config,
                                 const evaluate::Evaluation& e, const SheetView& view) {
  if (!e.build || !e.build->frame.made()) return {};
  if (name == "frame_front") return frame_front_sheet(config, e, view);
  if (name == "frame_pulled_apart") return pulled_apart_sheet(config, e, view);
  if (!name.starts_with(kPanel)) return {};
  const std::string_view digits = name.substr(kPanel.size());
  if (digits.empty() || digits.size() > 4 || digits[0] == '0') return {};
  std::size_t number = 0;
  for (const char c : digits) {
    if (c < '0' || c > '9') return {};
    number = 10 * number + static_cast<std::size_t>(c - '0');
  }
  if (number > e.build->parts.parts.size()) return {};
  return panel_sheet(config, e, view, number - 1);
}

std::string build_sheet_names(const evaluate::Evaluation& e) {
  if (!e.build || !e.build->frame.made()) return {};
  return "frame_front, frame_pulled_apart, panel_1 to panel_" +
         std::to_string(e.build->parts.parts.size());
}

}  // namespace hs::report
