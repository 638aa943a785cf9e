#include "engine/evaluate/metal_cutting.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/base/number_text.h"
#include "engine/evaluate/cutting_work.h"

namespace hs::evaluate {
namespace {

constexpr double kSameThick_mm = 0.05;
constexpr std::int64_t kSteps = 20'000;  // a station has three blanks or so

bool suits(const config::StockItem& row, double thick_mm) {
  return row.kind == config::StockKind::Metal && row.on_hand != 0.0 && row.length_mm &&
         row.width_mm && (!row.thick_mm || std::abs(*row.thick_mm - thick_mm) <= kSameThick_mm);
}

CutStock stock_of(const config::Config& config, std::size_t i, bool there) {
  const config::StockItem& row = config.stock[i];
  CutStock stock;
  stock.name = row.name;
  stock.row = i;
  stock.length_mm = *row.length_mm;
  stock.width_mm = *row.width_mm;
  if (there) stock.on_hand = static_cast<int>(*row.on_hand);
  if (!there) stock.price = row.price;
  return stock;
}

void add_stocks(const config::Config& config, CutGroup& group) {
  std::vector<std::size_t> there;
  for (std::size_t i = 0; i < config.stock.size(); ++i) {
    const config::StockItem& row = config.stock[i];
    if (!suits(row, group.thick_mm)) continue;
    if (row.on_hand) there.push_back(i);
    group.stocks.push_back(stock_of(config, i, row.on_hand.has_value()));
  }
  if (there.size() < group.stocks.size()) return;
  for (const std::size_t i : there) group.stocks.push_back(stock_of(config, i, false));
}

}  // namespace

std::vector<CutGroup> metal_groups(const config::Config& config, const MetalSheets& metal) {
  std::vector<CutGroup> groups;
  for (const MetalOrder& order : metal.orders) {
    if (!order.blank.possible()) continue;
    const double thick_mm = order.top.metal.thick_mm;
    auto group = std::find_if(groups.begin(), groups.end(), [&](const CutGroup& one) {
      return std::abs(one.thick_mm - thick_mm) <= kSameThick_mm;
    });
    if (group == groups.end()) {
      CutGroup made;
      made.material = frame::Material::Metal;
      made.name = std::string(frame::material_name(made.material)) + ", " + trimmed(thick_mm, 2) +
                  " mm thick";
      made.sheets = made.grain = true;
      made.thick_mm = thick_mm;
      add_stocks(config, made);
      group = groups.insert(groups.end(), std::move(made));
    }
    for (int copy = 0; copy < order.quantity; ++copy) {
      CutItem item;
      item.part = order.part;
      item.copy = copy;
      item.length_mm = order.blank.width_mm;
      item.width_mm = order.blank.depth_mm;
      group->items.push_back(item);
    }
  }
  std::erase_if(groups, [](const CutGroup& group) { return group.stocks.empty(); });
  config::Config shop = config;
  shop.shop.kerf_mm = shop.shop.sheet_trim_mm = kBlankApart_mm;
  for (CutGroup& group : groups) {
    std::vector<std::size_t> items;
    for (std::size_t i = 0; i < group.items.size(); ++i) {
      (held(shop, group, group.items[i]) ? items : group.too_large).push_back(i);
    }
    if (items.empty()) continue;
    const auto run = sheet_run(shop, group, std::move(items), kSteps);
    while (run->advance(kSteps)) {
    }
    run->finish();
  }
  return groups;
}

void add_unused_metal(const config::Config& config, const MetalSheets& metal, Cutting& cutting) {
  if (metal.orders.empty()) return;
  const double thick_mm = metal.orders.front().top.metal.thick_mm;
  for (std::size_t i = 0; i < config.stock.size(); ++i) {
    const config::StockItem& row = config.stock[i];
    if (row.kind != config::StockKind::Metal || row.on_hand == 0.0) continue;
    const bool suited =
        std::any_of(metal.orders.begin(), metal.orders.end(),
                    [&](const MetalOrder& order) { return suits(row, order.top.metal.thick_mm); });
    if (suited) continue;
    const bool sized = row.length_mm && row.width_mm;
    cutting.unused.push_back({i, sized ? "it is " + trimmed(*row.thick_mm, 2) +
                                             " mm thick, and the tops need " +
                                             trimmed(thick_mm, 2) + " mm"
                                       : "its length or width is not given"});
  }
}

}  // namespace hs::evaluate
