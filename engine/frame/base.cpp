// The base under the boxes: treated lumber on shims carries, boards round it hide and carry
// nothing.

#include <algorithm>

#include "engine/frame/stock.h"
#include "engine/frame/work.h"

namespace hs::frame {
namespace {

// Between what carries and what hides: nothing rests on the hiding boards.
constexpr double kClear_mm = 5;
// A shorter board is neither sawn nor screwed: it reaches on beside the neighbour. Our judgement.
constexpr double kLeastEnd_mm = 100;

void add_board(Work& work, const BaseBoard& board) {
  Piece piece;
  piece.kind = board.kind;
  piece.material = Material::BaseBoard;
  piece.oven = board.oven;
  piece.place = board.place;
  piece.place.bottom_mm = work.low_mm();
  piece.place.top_mm = work.out.base_mm;
  piece.thick = axis_of(board.outside);
  piece.grain = board.kind == Kind::BaseEnd ? Axis::Y : Axis::X;
  piece.has_grain = false;
  for (std::size_t f = 0; f < piece.surfaces.size(); ++f) {
    const Face face = static_cast<Face>(f);
    const bool wide = axis_of(face) == piece.thick;
    piece.at(face) = {face == board.outside ? Coat::Body : Coat::Sealed,
                      wide ? Edge::None : Edge::Eased};
  }
  add_piece(work, std::move(piece));
}

void add_lumber(Work& work, Kind kind, const Run& run, const Block& place, Axis thick, Axis grain) {
  Piece piece;
  piece.kind = kind;
  piece.material = Material::Carrier;
  piece.oven = run.oven;
  piece.place = place;
  piece.thick = thick;
  piece.grain = grain;
  for (std::size_t f = 0; f < piece.surfaces.size(); ++f) {
    const bool wide = axis_of(static_cast<Face>(f)) == thick;
    piece.surfaces[f] = {Coat::Bare, wide ? Edge::None : Edge::Cut};
  }
  add_piece(work, std::move(piece));
}

}  // namespace

std::vector<BaseBoard> boards_round(const Work& work, const Run& run) {
  const double board_mm = work.build().base_board_mm;
  const Block& boxes = run.boxes;
  const Block all{boxes.left_mm, boxes.right_mm, run.toe_mm, boxes.far_mm, 0, 0};
  Block front = all, back = all;
  front.far_mm = all.near_mm + board_mm;
  back.near_mm = all.far_mm - board_mm;
  std::vector<BaseBoard> boards{{Kind::BaseFront, run.oven, false, Face::Near, front},
                                {Kind::BaseBack, run.oven, false, Face::Far, back}};

  // Ends: all of a free one; where another run meets this one, what sticks out behind it.
  const auto other = std::find_if(work.out.runs.begin(), work.out.runs.end(),
                                  [&run](const Run& one) { return one.oven != run.oven; });
  const auto end_from = [&](bool is_free) -> double {
    if (is_free) return front.far_mm;
    if (other == work.out.runs.end()) return back.near_mm;  // a pier stands there
    return std::max(front.far_mm, other->boxes.far_mm);
  };
  const auto add_end = [&](bool right, bool is_free) {
    Block end = all;
    end.near_mm = end_from(is_free);
    end.far_mm = back.near_mm;
    if (end.depth_mm() <= 1) return;
    end.near_mm = std::min(end.near_mm, std::max(front.far_mm, end.far_mm - kLeastEnd_mm));
    (right ? end.left_mm : end.right_mm) = right ? all.right_mm - board_mm : all.left_mm + board_mm;
    boards.push_back({Kind::BaseEnd, run.oven, !is_free, right ? Face::Right : Face::Left, end});
  };
  add_end(false, run.free_left);
  add_end(true, run.free_right);
  return boards;
}

void add_base(Work& work, const Run& run) {
  const double board_mm = work.build().base_board_mm;
  double inset_left_mm = 0, inset_right_mm = 0;
  for (const BaseBoard& board : boards_round(work, run)) {
    if (board.outside == Face::Left) inset_left_mm = board_mm + kClear_mm;
    if (board.outside == Face::Right) inset_right_mm = board_mm + kClear_mm;
    add_board(work, board);
  }

  const Block& boxes = run.boxes;
  Block rail{boxes.left_mm, boxes.right_mm, run.toe_mm, boxes.far_mm, 0, work.out.base_mm};
  rail.left_mm += inset_left_mm;
  rail.right_mm -= inset_right_mm;
  rail.bottom_mm = work.lift_mm();
  Block front_rail = rail, back_rail = rail;
  front_rail.near_mm = rail.near_mm + board_mm + kClear_mm;
  front_rail.far_mm = front_rail.near_mm + kTwoBy_mm;
  back_rail.far_mm = rail.far_mm - board_mm - kClear_mm;
  back_rail.near_mm = back_rail.far_mm - kTwoBy_mm;
  add_lumber(work, Kind::Carrier, run, front_rail, Axis::Y, Axis::X);
  add_lumber(work, Kind::Carrier, run, back_rail, Axis::Y, Axis::X);
  const auto cross = [&](double left_mm) {
    add_lumber(work, Kind::CrossPiece, run,
               {left_mm, left_mm + kTwoBy_mm, front_rail.far_mm, back_rail.near_mm, rail.bottom_mm,
                rail.top_mm},
               Axis::X, Axis::Y);
  };
  cross(rail.left_mm);
  for (std::size_t i = 0; i + 1 < run.bays.size(); ++i) {
    cross(run.bays[i].box.right_mm - kTwoBy_mm / 2);
  }
  cross(rail.right_mm - kTwoBy_mm);
}

}  // namespace hs::frame
