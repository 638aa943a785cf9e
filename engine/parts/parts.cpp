#include "engine/parts/parts.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/base/quantity.h"
#include "engine/frame/stock.h"
#include "engine/parts/hardware.h"

namespace hs::parts {
namespace {

using frame::Axis;
using frame::Face;
using frame::Material;
using frame::Piece;

constexpr double kBoardLonger_mm = 25;  // boards are first cut this much longer

// Halves go up whatever the last bits say: equal sizes at two places are equal.
double tenth(double mm) { return round_to(mm + 1e-6, 10); }
long long quanta(double mm) { return std::llround(mm * 10); }

// A piece's own axes: along, across, and whether the front faces the low side of its thickness.
struct Axes {
  Axis along = Axis::X, across = Axis::Y, thick = Axis::Z;
  bool front_is_low = false;
};

Axes axes_of(const Piece& piece) {
  Axes out;
  out.thick = piece.thick;
  out.along = frame::u_of(piece.thick);
  out.across = frame::v_of(piece.thick);
  const bool other_way = piece.has_grain ? piece.grain == out.across
                                         : quanta(frame::size_of(piece.place, out.across)) >
                                               quanta(frame::size_of(piece.place, out.along));
  if (other_way) std::swap(out.along, out.across);
  // along x across points to the high side where the three follow each other round.
  const int a = static_cast<int>(out.along), b = static_cast<int>(out.across);
  out.front_is_low = (a + 1) % 3 != b;
  return out;
}

constexpr Face face_of(Axis axis, bool high) {
  return static_cast<Face>(2 * static_cast<int>(axis) + (high ? 1 : 0));
}

Part part_of(const Piece& piece) {
  const Axes axes = axes_of(piece);
  Part part;
  part.kind = piece.kind;
  part.material = piece.material;
  part.length_mm = tenth(frame::size_of(piece.place, axes.along));
  part.width_mm = tenth(frame::size_of(piece.place, axes.across));
  part.thick_mm = tenth(frame::size_of(piece.place, axes.thick));
  part.grain_along = piece.has_grain;
  const Face sides[] = {face_of(axes.thick, !axes.front_is_low),
                        face_of(axes.thick, axes.front_is_low),
                        face_of(axes.along, false),
                        face_of(axes.along, true),
                        face_of(axes.across, false),
                        face_of(axes.across, true)};
  for (std::size_t i = 0; i < part.surfaces.size(); ++i) part.surfaces[i] = piece.at(sides[i]);
  part.faces.push_back({sides[0], sides[1], sides[2], sides[3], sides[4], sides[5]});
  for (std::size_t i = 0; i < part.folds_mm.size(); ++i) {
    part.folds_mm[i] = tenth(frame::turned_down_mm(piece, sides[i + 2]));
  }
  for (const frame::Tail& tail : piece.tails) {
    part.tails.push_back({tail.side == sides[2] ? At::Start : At::End,
                          tenth(piece.place.far_mm - tail.from_mm), tenth(tail.out_mm),
                          tenth(tail.down_mm)});
    part.length_mm = tenth(part.length_mm + tail.out_mm);
  }
  const bool swapped = axes.along != frame::u_of(piece.thick);
  for (const frame::Hole& hole : piece.holes) {
    Cut cut;
    cut.use = hole.use;
    cut.in_front = hole.face == sides[0];
    cut.along_mm = tenth(swapped ? hole.v_mm : hole.u_mm);
    cut.across_mm = tenth(swapped ? hole.u_mm : hole.v_mm);
    cut.round = hole.round;
    cut.long_mm = tenth(swapped ? hole.high_mm : hole.wide_mm);
    cut.wide_mm = tenth(swapped ? hole.wide_mm : hole.high_mm);
    cut.deep_mm = tenth(hole.deep_mm);
    cut.count = hole.count;
    cut.pitch_mm = hole.count > 1 ? hole.pitch_mm : 0;
    cut.row_along = hole.count > 1 && hole.along_u != swapped;
    part.cuts.push_back(cut);
  }
  return part;
}

void swap_at(Part& part, At a, At b) {
  const auto one = static_cast<std::size_t>(a), other = static_cast<std::size_t>(b);
  std::swap(part.surfaces[one], part.surfaces[other]);
  for (auto& faces : part.faces) std::swap(faces[one], faces[other]);
}

// Half a turn: end for end, side for side, or both. One alone shows the other face.
Part turned(const Part& part, bool end_for_end, bool side_for_side) {
  Part out = part;
  const bool other_face = end_for_end != side_for_side;
  if (other_face) swap_at(out, At::Front, At::Back);
  if (end_for_end) {
    swap_at(out, At::Start, At::End);
    std::swap(out.folds_mm[0], out.folds_mm[1]);
  }
  if (side_for_side) {
    swap_at(out, At::Low, At::High);
    std::swap(out.folds_mm[2], out.folds_mm[3]);
  }
  for (Cut& cut : out.cuts) {
    // A hole through is seen from both faces.
    if (other_face && cut.deep_mm > 0) cut.in_front = !cut.in_front;
    const double row_mm = (cut.count - 1) * cut.pitch_mm;
    if (end_for_end) {
      cut.along_mm = tenth(part.length_mm - cut.along_mm - (cut.row_along ? row_mm : 0));
    }
    if (side_for_side) {
      cut.across_mm = tenth(part.width_mm - cut.across_mm - (cut.row_along ? 0 : row_mm));
    }
  }
  return out;
}

// What two parts must share to be one. Holes in order, so that it does not matter how they came.
std::vector<long long> key_of(Part& part) {
  const auto numbers = [](const Cut& cut) {
    return std::array<long long, 11>{cut.in_front ? 0 : 1,
                                     static_cast<long long>(cut.use),
                                     quanta(cut.along_mm),
                                     quanta(cut.across_mm),
                                     cut.round ? 1 : 0,
                                     quanta(cut.long_mm),
                                     quanta(cut.wide_mm),
                                     quanta(cut.deep_mm),
                                     cut.count,
                                     quanta(cut.pitch_mm),
                                     cut.row_along ? 1 : 0};
  };
  for (Cut& cut : part.cuts) {
    if (cut.deep_mm == 0) cut.in_front = true;
  }
  std::sort(part.cuts.begin(), part.cuts.end(),
            [&](const Cut& a, const Cut& b) { return numbers(a) < numbers(b); });
  std::vector<long long> key;
  // Holes to the front first, so that the drawing shows them.
  key.push_back(std::count_if(part.cuts.begin(), part.cuts.end(),
                              [](const Cut& cut) { return !cut.in_front; }));
  for (const frame::Surface& surface : part.surfaces) {
    key.push_back(10 * static_cast<long long>(surface.coat) + static_cast<long long>(surface.edge));
  }
  for (const double mm : part.folds_mm) key.push_back(quanta(mm));
  for (const Tail& tail : part.tails) {
    key.push_back(static_cast<long long>(tail.at));
    for (const double mm : {tail.long_mm, tail.inside_mm, tail.down_mm}) key.push_back(quanta(mm));
  }
  for (const Cut& cut : part.cuts) {
    for (const long long number : numbers(cut)) key.push_back(number);
  }
  return key;
}

void set_rough(Part& part, const Choices& choices) {
  switch (part.material) {
    case Material::Sheet:
    case Material::DrawerSheet:
    case Material::Front:
      part.rough_length_mm = part.length_mm + choices.rough_mm;
      part.rough_width_mm = part.width_mm + choices.rough_mm;
      return;
    case Material::FaceBoard:
    case Material::BaseBoard:
    case Material::Carrier: {
      part.rough_length_mm = part.length_mm + kBoardLonger_mm;
      const auto board = frame::board_at_least(part.width_mm);
      if (board) {
        part.rough_width_mm = tenth(*frame::dressed_width_mm(*board));
        part.stock = (part.material == Material::Carrier ? "2x" : "1x") + std::to_string(*board);
      }
      return;
    }
    case Material::Metal:
    case Material::Slab:
      return;
  }
}

}  // namespace

List list_of(std::span<const Piece> pieces, const Choices& choices) {
  struct Keyed {
    std::vector<long long> key;
    Part part;
  };
  std::vector<Keyed> found;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Keyed best;
    const Part as_it_is = part_of(pieces[i]);
    // Metal stays as the cook sees it: its order names front, back, left and right.
    const int turns = pieces[i].material == Material::Metal ? 1 : 4;
    for (int turn = 0; turn < turns; ++turn) {
      Part part = turned(as_it_is, turn % 2 == 1, turn >= 2);
      std::vector<long long> key = key_of(part);
      if (turn == 0 || key < best.key) best = {std::move(key), std::move(part)};
    }
    for (const long long more :
         {static_cast<long long>(best.part.kind), static_cast<long long>(best.part.material),
          quanta(best.part.length_mm), quanta(best.part.width_mm), quanta(best.part.thick_mm),
          best.part.grain_along ? 1LL : 0LL}) {
      best.key.push_back(more);
    }
    const auto same = std::find_if(found.begin(), found.end(),
                                   [&](const Keyed& one) { return one.key == best.key; });
    if (same != found.end()) {
      same->part.pieces.push_back(i);
      same->part.faces.push_back(best.part.faces.front());
      continue;
    }
    best.part.pieces.push_back(i);
    set_rough(best.part, choices);
    found.push_back(std::move(best));
  }
  // Small lists: by insertion, which keeps the order of equals.
  List list;
  const auto rank = [](const Part& part) {
    return 100 * static_cast<int>(part.material) + static_cast<int>(part.kind);
  };
  for (Keyed& one : found) {
    std::size_t at = list.parts.size();
    while (at > 0 && rank(list.parts[at - 1]) > rank(one.part)) --at;
    list.parts.insert(list.parts.begin() + static_cast<std::ptrdiff_t>(at), std::move(one.part));
  }
  for (std::size_t i = 0; i < list.parts.size(); ++i) {
    list.parts[i].number = static_cast<int>(i) + 1;
  }
  list.hardware = hardware_of(pieces, choices);
  return list;
}

int number_of(const List& list, std::size_t piece) {
  for (const Part& part : list.parts) {
    if (std::find(part.pieces.begin(), part.pieces.end(), piece) != part.pieces.end()) {
      return part.number;
    }
  }
  return 0;
}

std::string place_text(const Piece& piece) {
  std::string out = piece.oven ? "under the oven" : "under the dough counter";
  if (piece.bay != frame::kWholeRun) out += ", bay " + std::to_string(piece.bay + 1);
  return out;
}

std::string_view use_name(frame::HoleUse use) {
  constexpr std::string_view kNames[] = {"shelf pin", "hinge cup", "pull", "opening for gas"};
  return kNames[static_cast<std::size_t>(use)];
}

}  // namespace hs::parts
