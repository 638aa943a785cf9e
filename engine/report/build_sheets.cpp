#include "engine/report/build_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/parts_words.h"
#include "engine/report/phrases.h"
#include "engine/report/pulled_apart.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

using frame::Face;
using frame::Kind;
using frame::Piece;

constexpr std::string_view kFront = "frame_front", kApart = "frame_pulled_apart";
constexpr std::string_view kPanel = "panel_", kBase = "base_";

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
    for (const Block& block : frame::blocks_of(*piece)) {
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
    // Written as on the cards, not to what a part is cut to.
    d.dimension({x, 0}, {x, run.top_mm}, plain_length(run.top_mm, view.units, true));
    // The block on it carries the oven: its top is the oven counter.
    if (run.oven && frame.places.riser) {
      const double top = frame.places.riser->top_mm;
      const double beyond = edge + way * 20 * line;
      d.dimension({beyond, 0}, {beyond, top}, plain_length(top, view.units, true));
      d.line(Role::Dimension, {way < 0 ? left : right, top}, {beyond, top}, Weight::Thin);
    }
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
  struct Shown {
    const Piece* piece;
    std::size_t index;
    Pull by;
    double depth;
  };
  std::vector<Shown> order;
  for (std::size_t i = 0; i < frame.pieces.size(); ++i) {
    const Piece& piece = frame.pieces[i];
    order.push_back({&piece, i, pull_of(frame, piece), 0});
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
    for (const Block& block : frame::blocks_of(*shown.piece)) {
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
      if (!named[number]) named[number] = name_one(i, std::to_string(number), anywhere);
    }
  }
  SheetPen pen(d, line, view.units, true);
  for (const parts::Part& part : build.parts.parts) {
    pen.note(part_name(part) + ": " + part_size(part, view.units));
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
  if (const auto number = number_after(kBase, name)) {
    if (*number > base_cut_count(e)) return {};
    return base_cut_sheet(config, e, view, *number - 1);
  }
  if (!e.build || !e.build->frame.made()) return {};
  if (name == kFront) return frame_front_sheet(config, e, view);
  if (name == kApart) return pulled_apart_sheet(config, e, view);
  const auto number = number_after(kPanel, name);
  if (!number || *number > e.build->parts.parts.size()) return {};
  return panel_sheet(config, e, view, *number - 1);
}

bool is_build_sheet_name(std::string_view name) {
  return name == kFront || name == kApart || number_after(kPanel, name) ||
         number_after(kBase, name);
}

std::string build_sheet_names(const evaluate::Evaluation& e) {
  std::string names;
  if (e.build && e.build->frame.made()) {
    names = "frame_front, frame_pulled_apart, panel_1 to panel_" +
            std::to_string(e.build->parts.parts.size());
  }
  if (const std::size_t boards = base_cut_count(e); boards > 0) {
    names += (names.empty() ? "base_1 to base_" : ", base_1 to base_") + std::to_string(boards);
  }
  return names;
}

}  // namespace hs::report
