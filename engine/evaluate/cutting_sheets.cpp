// Sheets: offcuts that are there first, then the size or the two sizes that cost least; saw passes
// strips first.

#include <algorithm>
#include <cmath>

#include "engine/cuts/sheets.h"
#include "engine/evaluate/cutting_work.h"

namespace hs::evaluate {
namespace {

constexpr std::int64_t kMixSteps = 20'000;  // of each try to do with another size
constexpr std::int64_t kOffcutSteps = 200;  // of each try to get one more part out of an offcut

double mm_of(std::int64_t quanta) { return static_cast<double>(quanta) / kCutQuanta; }

using Items = std::vector<std::size_t>;

cuts::SheetJob job_of(const config::Config& config, const CutGroup& group, const CutStock& stock,
                      const Items& items) {
  cuts::SheetJob job;
  job.width = cut_quanta(stock.length_mm);
  job.height = cut_quanta(stock.width_mm);
  job.kerf = cut_quanta(config.shop.kerf_mm);
  job.trim = std::min(cut_quanta(config.shop.sheet_trim_mm), std::min(job.width, job.height) / 3);
  job.turn = stock.turn;
  for (const std::size_t item : items) {
    job.parts.push_back({std::max<std::int64_t>(1, cut_quanta(group.items[item].length_mm)),
                         std::max<std::int64_t>(1, cut_quanta(group.items[item].width_mm))});
  }
  return job;
}

// One sheet's cuts as passes and pieces. A row of equal cuts is made first, from one edge on, and
// then each piece that it gave is sawn: strips first.
class SheetWalk {
 public:
  SheetWalk(const cuts::SheetJob& job, const cuts::SheetCuts& cuts, const Items& items,
            CutStick& stick)
      : job_(job), cuts_(cuts), items_(items), stick_(stick) {}

  void walk() {
    trim();
    saw(0, job_.trim, job_.trim, job_.width - 2 * job_.trim, job_.height - 2 * job_.trim, false);
  }

 private:
  using Kind = cuts::Pane::Kind;

  void trim() {
    if (job_.trim == 0) return;
    const std::int64_t near = job_.trim - job_.kerf;
    pass(true, true, near, 0, job_.width, near, {});
    pass(true, true, job_.height - job_.trim, 0, job_.width, job_.height - 2 * job_.trim, {});
    pass(true, false, near, job_.trim, job_.height - job_.trim, near, {});
    pass(true, false, job_.width - job_.trim, job_.trim, job_.height - job_.trim,
         job_.width - 2 * job_.trim, {});
  }

  // What lies at `pane`, with its lower left corner on the sheet. Returns its place in the stick's
  // list, so that the pass that cut it off can name it.
  std::optional<std::size_t> put(std::size_t at, std::int64_t x, std::int64_t y, std::int64_t w,
                                 std::int64_t h) {
    if (w <= 0 || h <= 0) return {};  // the saw takes all that is left
    const cuts::Pane& pane = cuts_[at];
    SawnPiece piece;
    piece.x_mm = mm_of(x);
    piece.y_mm = mm_of(y);
    piece.length_mm = mm_of(w);
    piece.width_mm = mm_of(h);
    if (pane.kind == Kind::Part) {
      piece.kind = SawnPiece::Kind::Part;
      piece.item = items_[pane.part];
      const cuts::SheetPart& part = job_.parts[pane.part];
      piece.turned = pane.width != part.width || pane.height != part.height;
    } else if (pane.kind == Kind::Offcut) {
      const double longer = std::max(piece.length_mm, piece.width_mm),
                   shorter = std::min(piece.length_mm, piece.width_mm);
      piece.kind = longer >= kKeptLength_mm && shorter >= kKeptWidth_mm ? SawnPiece::Kind::Leftover
                                                                        : SawnPiece::Kind::Waste;
    } else {
      piece.kind = SawnPiece::Kind::Strip;
    }
    stick_.pieces.push_back(piece);
    return stick_.pieces.size() - 1;
  }

  void pass(bool trim, bool along, std::int64_t at, std::int64_t from, std::int64_t to,
            std::int64_t fence, std::optional<std::size_t> off) {
    SawPass pass;
    pass.number = static_cast<int>(stick_.passes.size()) + 1;
    pass.trim = trim;
    pass.along = along;
    pass.at_mm = mm_of(at);
    pass.from_mm = mm_of(from);
    pass.to_mm = mm_of(to);
    pass.fence_mm = mm_of(fence);
    pass.off = off;
    stick_.passes.push_back(pass);
  }

  struct Cell {
    std::size_t pane;
    std::int64_t x, y, w, h;
  };

  // `told`: the piece is in the list already.
  void saw(std::size_t at, std::int64_t x, std::int64_t y, std::int64_t w, std::int64_t h,
           bool told) {
    const Kind kind = cuts_[at].kind;
    if (kind != Kind::Across && kind != Kind::Along) {
      if (!told) put(at, x, y, w, h);
      return;
    }
    const bool along = kind == Kind::Along;
    std::vector<Cell> cells;
    for (; cuts_[at].kind == kind; at = cuts_[at].second) {
      const cuts::Pane& cut = cuts_[at];
      const Cell cell{cut.first, x, y, along ? w : cut.at, along ? cut.at : h};
      const auto off = put(cell.pane, cell.x, cell.y, cell.w, cell.h);
      pass(false, along, (along ? y : x) + cut.at, along ? x : y, along ? x + w : y + h, cut.at,
           off);
      cells.push_back(cell);
      const std::int64_t gone = cut.at + job_.kerf;
      (along ? y : x) += gone;
      (along ? h : w) -= gone;
    }
    put(at, x, y, w, h);
    cells.push_back({at, x, y, w, h});
    for (const Cell& cell : cells) {
      if (cell.w > 0 && cell.h > 0) saw(cell.pane, cell.x, cell.y, cell.w, cell.h, true);
    }
  }

  const cuts::SheetJob& job_;
  const cuts::SheetCuts& cuts_;
  const Items& items_;
  CutStick& stick_;
};

void add_sheets(CutGroup& group, std::size_t stock, const cuts::SheetJob& job,
                const cuts::SheetPlan& plan, const Items& items) {
  for (const cuts::SheetCuts& cuts : plan.sheets) {
    CutStick stick;
    stick.stock = stock;
    ++group.stocks[stock].used;
    SheetWalk(job, cuts, items, stick).walk();
    group.sticks.push_back(std::move(stick));
  }
}

double area(const CutGroup& group, const Items& items) {
  double sum = 0;
  for (const std::size_t item : items) {
    sum += group.items[item].length_mm * group.items[item].width_mm;
  }
  return sum;
}

// As many of the items as one offcut holds, the largest first; they leave `items`. False: none.
bool use_offcut(const config::Config& config, CutGroup& group, std::size_t stock, Items& items) {
  const CutStock& offcut = group.stocks[stock];
  Items in;
  std::vector<CutItem> refused;
  for (const std::size_t item : items) {
    const CutItem& one = group.items[item];
    const bool known = std::any_of(refused.begin(), refused.end(), [&](const CutItem& other) {
      return other.length_mm <= one.length_mm && other.width_mm <= one.width_mm;
    });
    if (known || !holds(config, group, offcut, one)) continue;
    Items more = in;
    more.push_back(item);
    if (area(group, more) > offcut.length_mm * offcut.width_mm) continue;
    if (cuts::plan_sheets(job_of(config, group, offcut, more), kOffcutSteps).sheets.size() > 1) {
      refused.push_back(one);
      continue;
    }
    in = std::move(more);
  }
  if (in.empty()) return false;
  const cuts::SheetJob job = job_of(config, group, offcut, in);
  add_sheets(group, stock, job, cuts::plan_sheets(job, kOffcutSteps), in);
  std::erase_if(
      items, [&](std::size_t item) { return std::find(in.begin(), in.end(), item) != in.end(); });
  return true;
}

// Sheets of one size that are bought, and what is sawn from them.
struct Bought {
  std::size_t stock = 0;
  Items items;
  cuts::SheetPlan plan;
};

// What one sheet counts as: its price, or its area in m2.
double worth(const CutStock& stock, bool priced) {
  return priced ? *stock.price : stock.length_mm * stock.width_mm * 1e-6;
}

double worth(const CutGroup& group, const std::vector<Bought>& buys, bool priced) {
  double sum = 0;
  for (const Bought& one : buys) {
    sum += worth(group.stocks[one.stock], priced) * static_cast<double>(one.plan.sheets.size());
  }
  return sum;
}

Items items_in(const cuts::SheetCuts& sheet, const Items& items) {
  Items out;
  for (const cuts::Pane& pane : sheet) {
    if (pane.kind == cuts::Pane::Kind::Part) out.push_back(items[pane.part]);
  }
  return out;
}

// Two sizes: the fullest sheets of `most` stay, and what is on the others goes to each other size
// that holds all of it. The cheapest of these where it is cheaper than `best`.
void mix_sizes(const config::Config& config, const CutGroup& group,
               const std::vector<std::size_t>& bought, const Bought& most, bool priced,
               std::vector<Bought>& best) {
  std::vector<std::size_t> order(most.plan.sheets.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return area(group, items_in(most.plan.sheets[a], most.items)) >
           area(group, items_in(most.plan.sheets[b], most.items));
  });
  for (std::size_t kept = 1; kept < order.size(); ++kept) {
    Bought full{most.stock, most.items, {}};
    Items left;
    for (std::size_t i = 0; i < order.size(); ++i) {
      const cuts::SheetCuts& sheet = most.plan.sheets[order[i]];
      if (i < kept) {
        full.plan.sheets.push_back(sheet);
      } else {
        const Items in = items_in(sheet, most.items);
        left.insert(left.end(), in.begin(), in.end());
      }
    }
    for (const std::size_t stock : bought) {
      const bool held_there = std::all_of(left.begin(), left.end(), [&](std::size_t item) {
        return holds(config, group, group.stocks[stock], group.items[item]);
      });
      if (stock == most.stock || !held_there) continue;
      std::vector<Bought> mixed{
          full,
          {stock, left,
           cuts::plan_sheets(job_of(config, group, group.stocks[stock], left), kMixSteps)}};
      if (worth(group, mixed, priced) < worth(group, best, priced) - 1e-9) best = std::move(mixed);
    }
  }
}

class SheetRun : public GroupRun {
 public:
  SheetRun(const config::Config& config, CutGroup& group, Items all, std::int64_t steps)
      : config_(config),
        group_(group),
        all_(std::move(all)),
        steps_(steps),
        priced_(all_priced(group)),
        items_(all_) {
    std::stable_sort(items_.begin(), items_.end(), [&](std::size_t a, std::size_t b) {
      return area(group, {a}) > area(group, {b});
    });
    for (std::size_t i = 0; i < group.stocks.size(); ++i) {
      (group.stocks[i].on_hand ? there_ : bought_).push_back(i);
    }
    use_offcuts();
    share_out();
  }

  bool advance(std::int64_t steps) override {
    if (at_ == buys_.size()) return false;
    if (!search_) {
      const Bought& one = buys_[at_];
      search_.emplace(job_of(config_, group_, group_.stocks[one.stock], one.items));
      left_ = steps_;
    }
    const std::int64_t now = std::min(steps, left_);
    left_ -= now;
    search_->advance(now);
    if (left_ > 0 && !search_->done()) return true;
    buys_[at_].plan = search_->best();
    search_.reset();
    return ++at_ < buys_.size();
  }

  void finish() override {
    // What was stopped keeps its best plan, what was not begun gets a quick one.
    if (search_) {
      buys_[at_].plan = search_->best();
      search_.reset();
      ++at_;
    }
    for (; at_ < buys_.size(); ++at_) {
      Bought& one = buys_[at_];
      one.plan = cuts::plan_sheets(job_of(config_, group_, group_.stocks[one.stock], one.items),
                                   kOffcutSteps);
    }
    std::vector<Bought> best = single_ ? cheapest() : buys_;
    bool proven = true;
    double least = 0;
    if (single_) {
      least = worth(group_.stocks[best[0].stock], priced_) *
              static_cast<double>(best[0].plan.lower_bound);
      proven = best[0].plan.proven;
      for (const Bought& one : buys_) mix_sizes(config_, group_, bought_, one, priced_, best);
    }
    for (const Bought& one : best) {
      add_sheets(group_, one.stock, job_of(config_, group_, group_.stocks[one.stock], one.items),
                 one.plan, one.items);
    }
    const double value = worth(group_, best, priced_);
    if (bought_.size() > 1 || offcuts_mm2_ > 0) {
      least = least_of_all();
      proven = value <= least + 1e-9;
    }
    group_.proven = proven;
    if (!priced_ && bought_.size() == 1) {
      const double each = worth(group_.stocks[bought_[0]], priced_);
      group_.by = MeasuredBy::Pieces;
      group_.value = std::round(value / each);
      group_.at_least = std::round(least / each);
    } else {
      group_.by = priced_ ? MeasuredBy::Price : MeasuredBy::Area;
      group_.value = value;
      group_.at_least = least;
    }
  }

 private:
  void use_offcuts() {
    // Small offcuts first: a large one may still hold what a small one does not.
    std::stable_sort(there_.begin(), there_.end(), [&](std::size_t a, std::size_t b) {
      return group_.stocks[a].length_mm * group_.stocks[a].width_mm <
             group_.stocks[b].length_mm * group_.stocks[b].width_mm;
    });
    for (const std::size_t stock : there_) {
      // What one of them does not take its equals do not take either.
      const CutStock& one = group_.stocks[stock];
      int n = 0;
      while (n < *one.on_hand && use_offcut(config_, group_, stock, items_)) ++n;
      offcuts_mm2_ += one.length_mm * one.width_mm * *one.on_hand;
    }
  }

  // Each size that holds all of the rest may be planned with it; where none does, each part goes to
  // the cheapest by area of those that hold it.
  void share_out() {
    if (items_.empty()) return;
    for (const std::size_t stock : bought_) {
      const bool all_fit = std::all_of(items_.begin(), items_.end(), [&](std::size_t item) {
        return holds(config_, group_, group_.stocks[stock], group_.items[item]);
      });
      if (all_fit) buys_.push_back({stock, items_, {}});
    }
    single_ = !buys_.empty();
    if (single_) return;
    std::vector<Items> of(group_.stocks.size());
    for (const std::size_t item : items_) {
      std::optional<std::size_t> to;
      for (const std::size_t stock : bought_) {
        if (!holds(config_, group_, group_.stocks[stock], group_.items[item])) continue;
        if (!to || by_area(stock) < by_area(*to)) to = stock;
      }
      of[*to].push_back(item);
    }
    for (const std::size_t stock : bought_) {
      if (!of[stock].empty()) buys_.push_back({stock, of[stock], {}});
    }
  }

  double by_area(std::size_t stock) const {
    const CutStock& one = group_.stocks[stock];
    return worth(one, priced_) / (one.length_mm * one.width_mm);
  }

  std::vector<Bought> cheapest() const {
    const auto dear = [&](const Bought& one) { return worth(group_, {one}, priced_); };
    return {*std::min_element(buys_.begin(), buys_.end(),
                              [&](const Bought& a, const Bought& b) { return dear(a) < dear(b); })};
  }

  // Other sizes and other uses of the offcuts may do better: what is left after all of the offcuts
  // by area, at the cheapest area there is.
  double least_of_all() const {
    double cheapest = -1;
    for (const std::size_t stock : bought_) {
      if (cheapest < 0 || by_area(stock) < cheapest) cheapest = by_area(stock);
    }
    double least = std::max(0.0, area(group_, all_) - offcuts_mm2_) * cheapest;
    if (bought_.size() != 1) return least;
    const CutStock& sheet = group_.stocks[bought_[0]];
    const double each = worth(sheet, priced_);
    if (each > 0) least = std::ceil(least / each - 1e-9) * each;
    // What no offcut holds is sawn from sheets that are bought.
    Items too_large;
    for (const std::size_t item : all_) {
      const bool there = std::any_of(there_.begin(), there_.end(), [&](std::size_t stock) {
        return holds(config_, group_, group_.stocks[stock], group_.items[item]);
      });
      if (!there) too_large.push_back(item);
    }
    if (!too_large.empty()) {
      least = std::max(least, static_cast<double>(sheets_for(too_large, sheet)) * each);
    }
    // And a plan with offcuts would be one with as many more sheets, where these are no smaller.
    const bool covered = std::all_of(there_.begin(), there_.end(), [&](std::size_t stock) {
      const CutStock& one = group_.stocks[stock];
      return one.length_mm <= sheet.length_mm && one.width_mm <= sheet.width_mm &&
             (!one.turn || sheet.turn);
    });
    if (!covered) return least;
    std::int64_t offcuts = 0;
    for (const std::size_t stock : there_) offcuts += *group_.stocks[stock].on_hand;
    return std::max(least, static_cast<double>(sheets_for(all_, sheet) - offcuts) * each);
  }

  std::int64_t sheets_for(const Items& items, const CutStock& sheet) const {
    return cuts::plan_sheets(job_of(config_, group_, sheet, items), kOffcutSteps).lower_bound;
  }

  const config::Config& config_;
  CutGroup& group_;
  Items all_;
  std::int64_t steps_;
  bool priced_;
  Items items_;  // what the offcuts have left
  std::vector<std::size_t> bought_, there_;
  double offcuts_mm2_ = 0;
  bool single_ = false;  // each of `buys_` is all of the rest; else they are it together
  std::vector<Bought> buys_;
  std::size_t at_ = 0;  // of them, in work
  std::optional<cuts::SheetSearch> search_;
  std::int64_t left_ = 0;
};

}  // namespace

std::unique_ptr<GroupRun> sheet_run(const config::Config& config, CutGroup& group,
                                    std::vector<std::size_t> items, std::int64_t steps) {
  return std::make_unique<SheetRun>(config, group, std::move(items), steps);
}

}  // namespace hs::evaluate
