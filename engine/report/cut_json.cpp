#include "engine/report/cut_json.h"

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

}  // namespace

std::string cut_plan_json(const CutJob& job, std::optional<std::int64_t> steps) {
  return boards_json(job, cuts::plan_boards(job.boards, steps.value_or(cuts::kUsualSteps)));
}

}  // namespace hs::report
