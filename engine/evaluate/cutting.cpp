// The parts of one station by material and section, and the stock that they may be cut from.

#include "engine/evaluate/cutting.h"

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/cutting_work.h"
#include "engine/frame/stock.h"

namespace hs::evaluate {
namespace {

using config::StockItem;
using frame::kInch_mm;
using frame::Material;

constexpr double kFoot_mm = 12 * kInch_mm;
constexpr double kSame_mm = 1.05;  // stock that is this near to what a part needs will do
constexpr double kFit_mm = 0.05;
constexpr double kWider_mm =
    25;                          // than the yard's board: a wider one is not ripped (our judgement)
constexpr double kRip_mm = 0.5;  // no rip for less: a saw's fence is set no finer (our judgement)

bool is_board(Material material) {
  return material == Material::FaceBoard || material == Material::BaseBoard ||
         material == Material::Carrier;
}
bool is_sheet(Material material) {
  return material == Material::Sheet || material == Material::DrawerSheet ||
         material == Material::Front;
}

// What a yard usually has, where the stock list has nothing: softwood boards of 8 to 16 ft and
// cellular PVC of 12 and 18 ft (trade practice, from memory), sheets of 4 x 8 ft.
std::vector<CutStock> usual(Material material, double width_mm) {
  std::vector<CutStock> out;
  const auto add = [&out](double length_mm, double wide_mm) {
    CutStock stock;
    stock.name = "usual size";
    stock.length_mm = length_mm;
    stock.width_mm = wide_mm;
    out.push_back(std::move(stock));
  };
  if (is_sheet(material)) {
    add(frame::kSheetLong_mm, frame::kSheetWide_mm);
  } else if (material == Material::BaseBoard) {
    for (const int feet : {12, 18}) add(feet * kFoot_mm, width_mm);
  } else {
    for (const int feet : {8, 10, 12, 16}) add(feet * kFoot_mm, width_mm);
  }
  return out;
}

bool of_material(const StockItem& row, Material material) {
  return static_cast<std::size_t>(row.kind) == static_cast<std::size_t>(material);
}

// The least width that the group's parts can be had from: what they are ripped to.
double least_width_mm(const CutGroup& group) {
  double least_mm = 0;
  for (const CutItem& item : group.items) {
    least_mm = std::max(least_mm, item.rip_mm.value_or(item.width_mm));
  }
  return least_mm;
}

std::string both(std::string_view what, double is_mm, std::string_view need, double need_mm) {
  return "it is " + trimmed(is_mm, 1) + " mm " + std::string(what) + ", and parts need " +
         std::string(need) + trimmed(need_mm, 1) + " mm";
}

// Why the row does not suit what the group needs; empty: it does. Thickness to kSame_mm; a board is
// as wide as the yard's, or what it is wider than its parts is ripped off.
std::string misfit(const StockItem& row, const CutGroup& group) {
  if (!row.length_mm) return "its length is not given";
  if (row.thick_mm && std::abs(*row.thick_mm - group.thick_mm) > kSame_mm) {
    return both("thick", *row.thick_mm, "", group.thick_mm);
  }
  if (group.sheets) return row.width_mm ? std::string() : "its width is not given";
  if (!row.width_mm || std::abs(*row.width_mm - group.width_mm) <= kSame_mm) return {};
  if (const double least_mm = least_width_mm(group); *row.width_mm < least_mm - kFit_mm) {
    return both("wide", *row.width_mm, "at least ", least_mm);
  }
  if (const double most_mm = group.width_mm + kWider_mm; *row.width_mm > most_mm) {
    return both("wide", *row.width_mm, "at most ", most_mm);
  }
  return {};
}

bool suits(const StockItem& row, const CutGroup& group) {
  return of_material(row, group.material) && row.on_hand != 0.0 && misfit(row, group).empty();
}

// Rows that suit none of the groups of their material, and why they do not suit the first.
std::vector<UnusedRow> unused_rows(const config::Config& config,
                                   const std::vector<CutGroup>& groups) {
  std::vector<UnusedRow> out;
  for (std::size_t i = 0; i < config.stock.size(); ++i) {
    const StockItem& row = config.stock[i];
    if (row.on_hand == 0.0) continue;  // none is there, as the list says itself
    std::string why;
    bool used = false;
    for (const CutGroup& group : groups) {
      if (!of_material(row, group.material)) continue;
      used = used || suits(row, group);
      if (why.empty()) why = misfit(row, group);
    }
    if (!used && !why.empty()) out.push_back({i, std::move(why)});
  }
  return out;
}

// A board is as wide as what it comes from, and ripped where that is wider than the part.
void set_rips(CutGroup& group) {
  if (group.sheets) return;
  for (const CutStick& stick : group.sticks) {
    for (const SawnPiece& piece : stick.pieces) {
      if (piece.kind != SawnPiece::Kind::Part) continue;
      group.items[piece.item].width_mm = group.stocks[stick.stock].width_mm;
    }
  }
  for (CutItem& item : group.items) {
    if (item.rip_mm && item.width_mm <= *item.rip_mm + kRip_mm) item.rip_mm.reset();
  }
}

void add_stocks(const config::Config& config, CutGroup& group) {
  bool buys = false;
  for (std::size_t i = 0; i < config.stock.size(); ++i) {
    const StockItem& row = config.stock[i];
    if (!suits(row, group)) continue;
    CutStock stock;
    stock.name = row.name;
    stock.row = i;
    stock.length_mm = *row.length_mm;
    stock.width_mm = row.width_mm.value_or(group.width_mm);
    // Grain across the sheet's length: length is always the way of the grain here.
    if (group.sheets && row.grain == config::Grain::Width) {
      std::swap(stock.length_mm, stock.width_mm);
    }
    if (row.on_hand) stock.on_hand = static_cast<int>(*row.on_hand);
    if (!row.on_hand) stock.price = row.price;
    if (row.bad_from_mm && row.bad_to_mm && !group.sheets) {
      stock.bad_from_mm = std::clamp(*row.bad_from_mm, 0.0, stock.length_mm);
      stock.bad_to_mm = std::clamp(*row.bad_to_mm, stock.bad_from_mm, stock.length_mm);
    }
    stock.turn = group.sheets && (!group.grain || row.grain == config::Grain::None);
    buys = buys || !stock.on_hand;
    group.stocks.push_back(std::move(stock));
  }
  if (buys) return;
  for (CutStock& stock : usual(group.material, group.width_mm)) {
    stock.turn = group.sheets && !group.grain;
    group.stocks.push_back(std::move(stock));
  }
}

std::string group_name(const CutGroup& group, const std::string& section) {
  std::string out(frame::material_name(group.material));
  return out + ", " + (section.empty() ? trimmed(group.thick_mm, 1) + " mm thick" : section);
}

// Can the finished size at least be had where the rough one cannot?
void fit_to_stock(const config::Config& config, CutGroup& group,
                  const std::vector<const parts::Part*>& part_of) {
  for (std::size_t i = 0; i < group.items.size(); ++i) {
    CutItem& item = group.items[i];
    if (held(config, group, item)) continue;
    CutItem finished = item;
    finished.length_mm = part_of[i]->length_mm;
    if (group.sheets) finished.width_mm = part_of[i]->width_mm;
    finished.at_finished = true;
    if (held(config, group, finished)) item = finished;
  }
}

void finish_numbers(CutGroup& group) {
  double taken = 0, parts = 0;
  for (const CutStick& stick : group.sticks) {
    const CutStock& stock = group.stocks[stick.stock];
    ++(stock.on_hand ? group.from_hand : group.bought);
    taken += stock.length_mm * (group.sheets ? stock.width_mm : 1);
    for (const SawnPiece& piece : stick.pieces) {
      if (piece.kind != SawnPiece::Kind::Part) continue;
      parts += piece.length_mm * (group.sheets ? piece.width_mm : 1);
    }
  }
  group.stock_share = taken > 0 ? parts / taken : 0;
}

}  // namespace

bool held(const config::Config& config, const CutGroup& group, const CutItem& item) {
  return std::any_of(group.stocks.begin(), group.stocks.end(), [&](const CutStock& stock) {
    return !stock.on_hand && holds(config, group, stock, item);
  });
}

bool holds(const config::Config& config, const CutGroup& group, const CutStock& stock,
           const CutItem& item) {
  if (!group.sheets) {
    // The longest stretch without the defect.
    const double trim_mm = config.shop.board_trim_mm;
    const double end_mm = stock.length_mm - trim_mm;
    double longest_mm = end_mm - trim_mm;
    if (stock.bad_to_mm > stock.bad_from_mm) {
      longest_mm = std::max(std::min(stock.bad_from_mm, end_mm) - trim_mm,
                            end_mm - std::max(stock.bad_to_mm, trim_mm));
    }
    return item.length_mm <= longest_mm + kFit_mm;
  }
  const double trim_mm = 2 * config.shop.sheet_trim_mm;
  const double length_mm = stock.length_mm - trim_mm + kFit_mm,
               width_mm = stock.width_mm - trim_mm + kFit_mm;
  return (item.length_mm <= length_mm && item.width_mm <= width_mm) ||
         (stock.turn && item.width_mm <= length_mm && item.length_mm <= width_mm);
}

std::vector<TooLarge> too_large_parts(const CutGroup& group) {
  std::vector<TooLarge> out;
  for (const std::size_t i : group.too_large) {
    const CutItem& item = group.items[i];
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const TooLarge& one) { return one.part == item.part; });
    if (same == out.end()) {
      out.push_back({item.part, 1, item.length_mm, item.width_mm});
    } else {
      ++same->count;
    }
  }
  return out;
}

CuttingRun::~CuttingRun() = default;

CuttingRun::CuttingRun(const config::Config& config, const parts::List& list, bool scribed,
                       std::int64_t steps)
    : config_(config), steps_(steps) {
  Cutting& out = out_;
  out.kerf_mm = config.shop.kerf_mm;
  out.sheet_trim_mm = config.shop.sheet_trim_mm;
  out.board_trim_mm = config.shop.board_trim_mm;
  struct Key {
    Material material;
    std::string section;
    double thick_mm;
  };
  std::vector<Key> keys;
  std::vector<std::vector<const parts::Part*>> part_of;
  for (const parts::Part& part : list.parts) {
    const bool sheets = is_sheet(part.material);
    if (!sheets && !is_board(part.material)) continue;
    std::size_t at = 0;
    while (at < keys.size() &&
           !(keys[at].material == part.material && keys[at].section == part.stock &&
             std::abs(keys[at].thick_mm - part.thick_mm) < kFit_mm)) {
      ++at;
    }
    if (at == keys.size()) {
      keys.push_back({part.material, part.stock, part.thick_mm});
      part_of.emplace_back();
      CutGroup group;
      group.material = part.material;
      group.sheets = sheets;
      group.thick_mm = part.thick_mm;
      group.width_mm = sheets ? 0 : part.rough_width_mm.value_or(part.width_mm);
      group.name = group_name(group, part.stock);
      out.groups.push_back(std::move(group));
    }
    CutGroup& group = out.groups[at];
    group.grain = group.grain || part.grain_along;
    for (int copy = 0; copy < part.quantity(); ++copy) {
      CutItem item;
      item.part = part.number;
      item.copy = copy;
      item.length_mm = part.rough_length_mm.value_or(part.length_mm);
      item.width_mm = part.rough_width_mm.value_or(part.width_mm);
      const bool to_ground = scribed && part.material == Material::BaseBoard;
      if (!sheets && !to_ground) item.rip_mm = part.width_mm;  // set_rips() has the last word
      group.items.push_back(item);
      part_of[at].push_back(&part);
    }
  }
  items_.resize(out.groups.size());
  for (std::size_t i = 0; i < out.groups.size(); ++i) {
    CutGroup& group = out.groups[i];
    add_stocks(config, group);
    fit_to_stock(config, group, part_of[i]);
    for (std::size_t k = 0; k < group.items.size(); ++k) {
      (held(config, group, group.items[k]) ? items_[i] : group.too_large).push_back(k);
    }
  }
  out.unused = unused_rows(config, out.groups);
}

void CuttingRun::begin() {
  CutGroup& group = out_.groups[at_];
  const std::vector<std::size_t>& items = items_[at_];
  if (items.empty()) return;
  run_ = group.sheets ? sheet_run(config_, group, items, steps_)
                      : board_run(config_, group, items, steps_);
}

void CuttingRun::end() {
  if (run_) run_->finish();
  run_.reset();
  CutGroup& group = out_.groups[at_];
  // The least for some of the parts proves nothing for all.
  group.proven = group.proven && group.too_large.empty();
  set_rips(group);
  finish_numbers(group);
  ++at_;
}

bool CuttingRun::advance(std::int64_t steps) {
  if (at_ == out_.groups.size()) return false;
  if (!run_) begin();
  if (!run_ || !run_->advance(steps)) end();
  return at_ < out_.groups.size();
}

Cutting CuttingRun::take() {
  for (; at_ < out_.groups.size();) {
    if (!run_) begin();
    end();
  }
  return std::move(out_);
}

Cutting cutting_of(const config::Config& config, const parts::List& parts, bool scribed,
                   std::int64_t steps) {
  CuttingRun run(config, parts, scribed, steps);
  while (run.advance(steps)) {
  }
  return run.take();
}

}  // namespace hs::evaluate
