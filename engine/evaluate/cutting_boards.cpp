// Boards: the plan of engine/cuts, with its saw passes in order and what is left.

#include <algorithm>
#include <cmath>

#include "engine/cuts/boards.h"
#include "engine/evaluate/cutting_work.h"

namespace hs::evaluate {
namespace {

using Items = std::vector<std::size_t>;

double mm_of(std::int64_t quanta) { return static_cast<double>(quanta) / kCutQuanta; }

cuts::BoardJob job_of(const config::Config& config, const CutGroup& group, const Items& items) {
  cuts::BoardJob job;
  job.kerf = cut_quanta(config.shop.kerf_mm);
  const bool priced = all_priced(group);
  for (const CutStock& stock : group.stocks) {
    cuts::BoardStock board;
    board.length = cut_quanta(stock.length_mm);
    board.trim = std::min(cut_quanta(config.shop.board_trim_mm), board.length / 2);
    board.count = stock.on_hand;
    // Without prices the least length is bought. What costs nothing is still not taken for nothing.
    const double cost = priced ? stock.price.value_or(0) * 100 : stock.length_mm;
    board.cost = stock.on_hand ? 0 : std::max<std::int64_t>(1, std::llround(cost));
    if (stock.bad_to_mm > stock.bad_from_mm) {
      // A cut at least wide, so that the pieces beside it are a cut apart.
      const std::int64_t from = cut_quanta(stock.bad_from_mm);
      const std::int64_t to = std::max(cut_quanta(stock.bad_to_mm), from + job.kerf);
      board.blocked.push_back({from, std::min(to, board.length)});
    }
    job.stocks.push_back(std::move(board));
  }
  for (const std::size_t item : items) {
    job.parts.push_back(std::max<std::int64_t>(1, cut_quanta(group.items[item].length_mm)));
  }
  return job;
}

// The passes along a board from its start, and all that lies between them.
class BoardWalk {
 public:
  BoardWalk(const config::Config& config, const CutStock& stock, CutStick& stick)
      : kerf_mm_(config.shop.kerf_mm), stock_(stock), stick_(stick) {}

  void piece(std::size_t item, double at_mm, double length_mm) {
    // Something lies between the last cut and this piece: it is cut off before it.
    if (at_mm > cut_mm_ + kNone_mm) pass(at_mm - kerf_mm_);
    add(SawnPiece::Kind::Part, at_mm, length_mm);
    stick_.pieces.back().item = item;
    held_ = stick_.pieces.size() - 1;
    // A piece that ends where the board does needs no cut.
    if (at_mm + length_mm < stock_.length_mm - kNone_mm) pass(at_mm + length_mm);
  }
  void end() {
    if (!held_) rest(cut_mm_, stock_.length_mm - cut_mm_);
  }

 private:
  static constexpr double kNone_mm = 0.05;

  void add(SawnPiece::Kind kind, double at_mm, double length_mm) {
    SawnPiece piece;
    piece.kind = kind;
    piece.x_mm = at_mm;
    piece.length_mm = length_mm;
    piece.width_mm = stock_.width_mm;
    stick_.pieces.push_back(piece);
  }
  void rest(double at_mm, double length_mm) {
    if (length_mm <= kNone_mm) return;
    add(length_mm >= kKeptLength_mm ? SawnPiece::Kind::Leftover : SawnPiece::Kind::Waste, at_mm,
        length_mm);
  }
  // The near side of the saw at `at_mm`.
  void pass(double at_mm) {
    SawPass pass;
    pass.number = static_cast<int>(stick_.passes.size()) + 1;
    pass.trim = stick_.passes.empty() && !held_;
    pass.at_mm = at_mm;
    pass.to_mm = stock_.width_mm;
    pass.fence_mm = at_mm - cut_mm_;
    if (held_) {
      pass.off = held_;
    } else {
      rest(cut_mm_, at_mm - cut_mm_);
    }
    held_.reset();
    stick_.passes.push_back(pass);
    cut_mm_ = at_mm + kerf_mm_;
  }

  double kerf_mm_;
  const CutStock& stock_;
  CutStick& stick_;
  double cut_mm_ = 0;                // far side of the last cut: where what is in hand begins
  std::optional<std::size_t> held_;  // the piece that the next pass cuts off
};

class BoardRun : public GroupRun {
 public:
  BoardRun(const config::Config& config, CutGroup& group, Items items, std::int64_t steps)
      : config_(config),
        group_(group),
        items_(std::move(items)),
        job_(job_of(config, group, items_)),
        search_(job_),
        left_(steps) {}

  bool advance(std::int64_t steps) override {
    const std::int64_t now = std::min(steps, left_);
    left_ -= now;
    search_.advance(now);
    return left_ > 0 && !search_.done();
  }

  void finish() override {
    const cuts::BoardPlan plan = search_.best();
    const bool priced = all_priced(group_);
    group_.by = priced ? MeasuredBy::Price : MeasuredBy::Length;
    group_.value = static_cast<double>(plan.cost) / (priced ? 100 : 1);
    group_.at_least = static_cast<double>(plan.lower_bound) / (priced ? 100 : 1);
    group_.proven = plan.proven;
    for (const cuts::Board& board : plan.boards) {
      CutStick stick;
      stick.stock = board.stock;
      ++group_.stocks[board.stock].used;
      std::vector<cuts::Piece> pieces = board.pieces;
      std::sort(pieces.begin(), pieces.end(),
                [](const cuts::Piece& a, const cuts::Piece& b) { return a.at < b.at; });
      BoardWalk walk(config_, group_.stocks[board.stock], stick);
      for (const cuts::Piece& piece : pieces) {
        walk.piece(items_[piece.part], mm_of(piece.at), mm_of(job_.parts[piece.part]));
      }
      walk.end();
      group_.sticks.push_back(std::move(stick));
    }
  }

 private:
  const config::Config& config_;
  CutGroup& group_;
  Items items_;
  cuts::BoardJob job_;
  cuts::BoardSearch search_;
  std::int64_t left_;
};

}  // namespace

std::int64_t cut_quanta(double mm) { return std::llround(mm * kCutQuanta); }

bool all_priced(const CutGroup& group) {
  return std::all_of(group.stocks.begin(), group.stocks.end(),
                     [](const CutStock& stock) { return stock.on_hand || stock.price; });
}

std::unique_ptr<GroupRun> board_run(const config::Config& config, CutGroup& group,
                                    std::vector<std::size_t> items, std::int64_t steps) {
  return std::make_unique<BoardRun>(config, group, std::move(items), steps);
}

}  // namespace hs::evaluate
