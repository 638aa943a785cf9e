#include "engine/report/cut_json.h"

#include <vector>

#include "engine/base/json_writer.h"
#include "engine/report/json_values.h"

namespace hs::report {
namespace {

void put_whole(JsonWriter& out, std::string_view key, std::int64_t value) {
  out.key(key);
  out.number(std::to_string(value));
}

// {"boards", "cost" where there are prices, "lower_bound" of the cost or the boards, "proven",
// "layout": the parts of each board in the order they lie, "offsets": where each begins,
// "stock_of_board": which of the stocks each board is, from 0}.
std::string boards_json(const CutJob& job, const cuts::BoardPlan& plan) {
  JsonWriter out;
  out.begin_object();
  put_whole(out, "boards", static_cast<std::int64_t>(plan.boards.size()));
  if (job.priced) put_whole(out, "cost", plan.cost);
  put_whole(out, "lower_bound", plan.lower_bound);
  put_flag(out, "proven", plan.proven);
  const auto put_pieces = [&](std::string_view key, auto&& number) {
    out.key(key);
    out.begin_list();
    for (const cuts::Board& board : plan.boards) {
      out.begin_list();
      for (const cuts::Piece& piece : board.pieces) out.number(std::to_string(number(piece)));
      out.end_list();
    }
    out.end_list();
  };
  put_pieces("layout", [&](const cuts::Piece& piece) { return job.boards.parts[piece.part]; });
  put_pieces("offsets", [](const cuts::Piece& piece) { return piece.at; });
  out.key("stock_of_board");
  out.begin_list();
  for (const cuts::Board& board : plan.boards) out.number(std::to_string(board.stock));
  out.end_list();
  out.end_object();
  return out.take();
}

void put_sides(JsonWriter& out, const cuts::Pane& pane) {
  out.number(std::to_string(pane.width));
  out.number(std::to_string(pane.height));
}

bool holds_parts(const cuts::SheetCuts& cuts, std::size_t at) {
  const cuts::Pane& pane = cuts[at];
  if (pane.kind == cuts::Pane::Kind::Part) return true;
  if (pane.kind == cuts::Pane::Kind::Offcut) return false;
  return holds_parts(cuts, pane.first) || holds_parts(cuts, pane.second);
}

// Writes a sheet's cuts: ["V", at, left, right], ["H", at, below, above] or ["part", width,
// height]. A cut that only takes an offcut away is not written: there the piece is larger than what
// is cut out of it. Cuts side by side may be made in any order: a few come one after another, of
// many the middle one first, so that no list nests deep.
class TreeWriter {
 public:
  TreeWriter(JsonWriter& out, const cuts::SheetCuts& cuts, std::int64_t kerf)
      : out_(out), cuts_(cuts), kerf_(kerf) {}

  void put(std::size_t at) {
    const cuts::Pane& pane = cuts_[at];
    if (pane.kind == cuts::Pane::Kind::Part) {
      out_.begin_list();
      out_.string("part");
      put_sides(out_, pane);
      out_.end_list();
      return;
    }
    // The pieces side by side that cuts of this kind leave.
    std::vector<std::size_t> pieces;
    for (; cuts_[at].kind == pane.kind; at = cuts_[at].second) pieces.push_back(cuts_[at].first);
    if (holds_parts(cuts_, at)) pieces.push_back(at);
    put_pieces(pane.kind, pieces);
  }

 private:
  void put_pieces(cuts::Pane::Kind kind, const std::vector<std::size_t>& pieces) {
    constexpr std::size_t kFew = 8;
    if (pieces.size() == 1) return put(pieces[0]);
    const bool across = kind == cuts::Pane::Kind::Across;
    const auto middle =
        pieces.begin() + static_cast<std::ptrdiff_t>(pieces.size() > kFew ? pieces.size() / 2 : 1);
    std::int64_t at = -kerf_;
    for (auto piece = pieces.begin(); piece != middle; ++piece) {
      at += kerf_ + (across ? cuts_[*piece].width : cuts_[*piece].height);
    }
    out_.begin_list();
    out_.string(across ? "V" : "H");
    out_.number(std::to_string(at));
    put_pieces(kind, {pieces.begin(), middle});
    put_pieces(kind, {middle, pieces.end()});
    out_.end_list();
  }

  JsonWriter& out_;
  const cuts::SheetCuts& cuts_;
  std::int64_t kerf_ = 0;
};

// {"sheets", "lower_bound", "proven", "cut_trees": how each sheet is cut, "offcuts": [width,
// height] of what is left of each}.
std::string sheets_json(const cuts::SheetPlan& plan, std::int64_t kerf) {
  JsonWriter out;
  out.begin_object();
  put_whole(out, "sheets", static_cast<std::int64_t>(plan.sheets.size()));
  put_whole(out, "lower_bound", plan.lower_bound);
  put_flag(out, "proven", plan.proven);
  out.key("cut_trees");
  out.begin_list();
  for (const cuts::SheetCuts& cuts : plan.sheets) TreeWriter(out, cuts, kerf).put(0);
  out.end_list();
  out.key("offcuts");
  out.begin_list();
  for (const cuts::SheetCuts& cuts : plan.sheets) {
    out.begin_list();
    for (const cuts::Pane& pane : cuts) {
      // Where the saw takes all that is left there is nothing to keep.
      if (pane.kind != cuts::Pane::Kind::Offcut || pane.width == 0 || pane.height == 0) continue;
      out.begin_list();
      put_sides(out, pane);
      out.end_list();
    }
    out.end_list();
  }
  out.end_list();
  out.end_object();
  return out.take();
}

}  // namespace

std::string cut_plan_json(const CutJob& job, std::optional<std::int64_t> steps) {
  if (job.sheets) {
    return sheets_json(cuts::plan_sheets(*job.sheets, steps.value_or(cuts::kUsualSheetSteps)),
                       job.sheets->kerf);
  }
  return boards_json(job, cuts::plan_boards(job.boards, steps.value_or(cuts::kUsualSteps)));
}

}  // namespace hs::report
