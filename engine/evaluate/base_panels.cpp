#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include "engine/evaluate/surveying.h"
#include "engine/frame/frame.h"

namespace hs::evaluate {
namespace {

// As one stands before its outer face: from its left to its right end.
survey::PanelLine line_of(const frame::BaseBoard& board, PanelPlace place) {
  const Block& at = board.place;
  const std::string_view name = panel_name(place);
  switch (board.outside) {
    case frame::Face::Far:
      return {name, at.right_mm, at.far_mm, at.left_mm, at.far_mm};
    case frame::Face::Left:
      return {name, at.left_mm, at.far_mm, at.left_mm, at.near_mm};
    case frame::Face::Right:
      return {name, at.right_mm, at.near_mm, at.right_mm, at.far_mm};
    default:
      return {name, at.left_mm, at.near_mm, at.right_mm, at.near_mm};
  }
}

PanelPlace place_of(const frame::BaseBoard& board) {
  switch (board.kind) {
    case frame::Kind::BaseFront:
      return board.oven ? PanelPlace::OvenFront : PanelPlace::DoughFront;
    case frame::Kind::BaseBack:
      return board.oven ? PanelPlace::OvenBack : PanelPlace::DoughBack;
    default:
      if (board.meets) return PanelPlace::Between;
      return board.outside == frame::Face::Left ? PanelPlace::LeftEnd : PanelPlace::RightEnd;
  }
}

// Fronts from the left, the two ends, what sticks out behind another counter, backs from the left.
int rank_of(PanelPlace place) {
  switch (place) {
    case PanelPlace::OvenFront:
    case PanelPlace::DoughFront:
      return 0;
    case PanelPlace::LeftEnd:
      return 1;
    case PanelPlace::RightEnd:
      return 2;
    case PanelPlace::Between:
      return 3;
    case PanelPlace::OvenBack:
    case PanelPlace::DoughBack:
      return 4;
  }
  return 4;
}

}  // namespace

void base_panels(const config::Config& config, const Heights& used, SurveyResult& out) {
  const frame::Levels levels{used.counter_mm, used.oven_base_mm};
  const frame::Places stands = frame::places(config, levels);
  const double left_mm = frame::left_mm(stands), front_mm = stands.front_mm;
  std::vector<frame::BaseBoard> boards = frame::base_boards(config, levels);
  std::stable_sort(boards.begin(), boards.end(), [](const auto& a, const auto& b) {
    return rank_of(place_of(a)) < rank_of(place_of(b));
  });
  for (const frame::BaseBoard& board : boards) {
    const PanelPlace place = place_of(board);
    survey::PanelLine line = line_of(board, place);
    for (double* x : {&line.from_x_mm, &line.to_x_mm}) *x -= left_mm;
    for (double* y : {&line.from_y_mm, &line.to_y_mm}) *y -= front_mm;
    out.panels.push_back(line);
    out.places.push_back(place);
  }
  for (const frame::BaseBoard& board : boards) {
    if (board.kind != frame::Kind::BaseFront) continue;
    const auto back = std::find_if(boards.begin(), boards.end(), [&](const auto& one) {
      return one.kind == frame::Kind::BaseBack && one.oven == board.oven;
    });
    if (back == boards.end()) continue;
    out.within.push_back({board.place.left_mm - left_mm, board.place.right_mm - left_mm,
                          board.place.near_mm - front_mm, back->place.far_mm - front_mm, 0, 0});
  }
}

std::string_view panel_name(PanelPlace place) {
  constexpr std::string_view kNames[] = {"front of the oven's counter",
                                         "front of the dough counter",
                                         "left end",
                                         "right end",
                                         "panel between the counters",
                                         "back of the oven's counter",
                                         "back of the dough counter"};
  return kNames[static_cast<std::size_t>(place)];
}

}  // namespace hs::evaluate
