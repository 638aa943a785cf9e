#include "engine/evaluate/costing.h"

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/packet.h"

namespace hs::evaluate {
namespace {

using config::StockItem;
using config::StockKind;
using frame::Material;

double can_l(config::Can can) {
  switch (can) {
    case config::Can::Litre:
      return 1;
    case config::Can::Quart:
      return finish::kQuart_l;
    case config::Can::Gallon:
      return finish::kGallon_l;
    case config::Can::FiveLitres:
      return 5;
  }
  return 1;
}

std::string size_words(double length_mm, double width_mm, bool sheet) {
  const std::string length = trimmed(length_mm, 1) + " mm";
  return sheet ? trimmed(length_mm, 1) + " x " + trimmed(width_mm, 1) + " mm" : length;
}

// kg of mm3.
double kg(double mm3, Material material) { return mm3 * density_g_cm3(material) * 1e-6; }

const parts::Part* find(const parts::List& parts, int number) {
  for (const parts::Part& part : parts.parts) {
    if (part.number == number) return &part;
  }
  return nullptr;
}

struct Teller {
  const config::Config& config;
  Costing out{};

  void add(CostLine line) {
    if (line.price) line.total = line.on_hand ? 0 : *line.price * line.quantity;
    if (line.on_hand) line.total = 0;
    out.lines.push_back(std::move(line));
  }

  // The first row of that kind, or of that kind and name where a name is asked for.
  const StockItem* row(StockKind kind, std::string_view name) const {
    for (const StockItem& item : config.stock) {
      if (item.kind == kind && !item.name.empty() && item.name == name) return &item;
    }
    if (kind == StockKind::Hardware) return nullptr;
    for (const StockItem& item : config.stock) {
      if (item.kind == kind) return &item;
    }
    return nullptr;
  }

  // So many litres, in whole cans where the list has one.
  void liquid(CostOf of, StockKind kind, const std::string& name, double litres) {
    if (litres <= 0) return;
    CostLine line;
    line.of = of;
    line.what = name;
    const StockItem* item = row(kind, name);
    if (item == nullptr) {
      line.quantity = litres;
      line.unit = "l";
      return add(std::move(line));
    }
    const double can = can_l(item->can);
    line.quantity = std::ceil(litres / can - 1e-9);
    line.unit = "can";
    line.price = item->price;
    line.waste_share = 1 - litres / (line.quantity * can);
    add(std::move(line));
  }
};

void add_cuts(Teller& teller, const parts::List& parts, const Cutting& cutting) {
  for (const CutGroup& group : cutting.groups) {
    for (std::size_t i = 0; i < group.stocks.size(); ++i) {
      const CutStock& stock = group.stocks[i];
      if (stock.used == 0) continue;
      CostLine line;
      line.of = group.sheets ? CostOf::Sheets : CostOf::Boards;
      line.what = group.name + ", " + size_words(stock.length_mm, stock.width_mm, group.sheets);
      line.quantity = stock.used;
      line.price = stock.price;
      line.on_hand = stock.on_hand.has_value();
      double parts_mm2 = 0;
      for (const CutStick& stick : group.sticks) {
        if (stick.stock != i) continue;
        for (const SawnPiece& piece : stick.pieces) {
          if (piece.kind != SawnPiece::Kind::Part) continue;
          const parts::Part* part = find(parts, group.items[piece.item].part);
          if (part != nullptr) parts_mm2 += part->length_mm * part->width_mm;
        }
      }
      const double taken_mm2 = stock.used * stock.length_mm * stock.width_mm;
      line.waste_share = taken_mm2 > 0 ? std::clamp(1 - parts_mm2 / taken_mm2, 0.0, 1.0) : 0;
      line.mass_kg = kg(taken_mm2 * group.thick_mm, group.material);
      teller.add(std::move(line));
    }
    // What it takes for these is not known, so they have no price; their mass is the least of it.
    for (const TooLarge& one : too_large_parts(group)) {
      CostLine line;
      line.of = group.sheets ? CostOf::Sheets : CostOf::Boards;
      line.what = group.name + ", part " + std::to_string(one.part) + ", " +
                  size_words(one.length_mm, one.width_mm, true) + ": fits no " +
                  (group.sheets ? "sheet" : "board");
      line.quantity = one.count;
      line.mass_kg = kg(one.count * one.length_mm * one.width_mm * group.thick_mm, group.material);
      teller.add(std::move(line));
    }
  }
}

// Each blank out of a sheet of its own: the fabricator has the rest.
void add_metal(Teller& teller, const MetalSheets& metal) {
  for (const MetalOrder& order : metal.orders) {
    CostLine line;
    line.of = CostOf::Metal;
    line.what = order.name;
    line.quantity = order.quantity;
    line.unit = "blank";
    line.mass_kg = order.blank.mass_kg * order.quantity;
    for (const StockItem& item : teller.config.stock) {
      if (item.kind != StockKind::Metal || item.on_hand == 0.0) continue;
      if (item.thick_mm && std::abs(*item.thick_mm - order.top.metal.thick_mm) > 0.05) continue;
      if (!item.length_mm || !item.width_mm) continue;
      // Its polish runs along the sheet's length.
      if (order.blank.width_mm > *item.length_mm || order.blank.depth_mm > *item.width_mm) continue;
      line.price = item.price;
      line.on_hand = item.on_hand.has_value();
      line.unit = "sheet";
      const double taken_mm2 = *item.length_mm * *item.width_mm;
      line.waste_share = std::clamp(1 - order.blank.area_mm2 / taken_mm2, 0.0, 1.0);
      line.mass_kg = order.quantity * kg(taken_mm2 * order.top.metal.thick_mm, Material::Metal);
      break;
    }
    teller.add(std::move(line));
  }
}

void add_slabs(Teller& teller, const parts::List& parts) {
  for (const parts::Part& part : parts.parts) {
    if (part.material != Material::Slab) continue;
    CostLine line;
    line.of = CostOf::Slab;
    line.what = std::string(frame::material_name(part.material)) + ", " +
                size_words(part.length_mm, part.width_mm, true);
    line.quantity = part.quantity();
    if (const StockItem* item = teller.row(StockKind::Slab, line.what)) line.price = item->price;
    line.mass_kg =
        kg(part.quantity() * part.length_mm * part.width_mm * part.thick_mm, part.material);
    teller.add(std::move(line));
  }
}

void add_hardware(Teller& teller, const parts::List& parts) {
  for (const parts::Hardware& one : parts.hardware) {
    if (one.unit == "l") {
      teller.liquid(CostOf::Bedding, StockKind::Bedding, one.name, one.quantity);
      continue;
    }
    CostLine line;
    line.of = CostOf::Hardware;
    line.what = one.name;
    line.quantity = one.quantity;
    line.unit = one.unit;
    if (const StockItem* item = teller.row(StockKind::Hardware, one.name)) {
      line.price = item->price;
    }
    teller.add(std::move(line));
  }
}

void add_sums(Costing& out) {
  for (const CostLine& line : out.lines) {
    auto sum = std::find_if(out.sums.begin(), out.sums.end(),
                            [&](const CostSum& one) { return one.of == line.of; });
    if (sum == out.sums.end()) sum = out.sums.insert(sum, {line.of});
    sum->mass_kg += line.mass_kg;
    if (!line.total) {
      ++sum->without_price;
      ++out.without_price;
      continue;
    }
    sum->total += *line.total;
    if (line.price || line.on_hand) out.total = out.total.value_or(0) + *line.total;
  }
}

}  // namespace

std::string_view cost_name(CostOf of) {
  constexpr std::string_view kNames[] = {"boards", "sheets",  "metal",   "slab",
                                         "paint",  "bedding", "hardware"};
  return kNames[static_cast<std::size_t>(of)];
}

double density_g_cm3(Material material) {
  switch (material) {
    case Material::Sheet:
    case Material::DrawerSheet:
      return 0.577;
    case Material::Front:
    case Material::BaseBoard:
      return 0.55;
    case Material::FaceBoard:
    case Material::Carrier:
      return 0.545;
    case Material::Metal:
      return sheet::kDensity_g_cm3;
    case Material::Slab:
      return 2.4;
  }
  return 1;
}

Costing costing_of(const config::Config& config, const Evaluation& e, const Packet& packet) {
  Teller teller{config};
  teller.out.currency = config.shop.currency;
  const parts::List& parts = e.build->parts;
  add_cuts(teller, parts, packet.cutting);
  add_metal(teller, packet.metal);
  add_slabs(teller, parts);
  teller.liquid(CostOf::Paint, StockKind::Primer, packet.painting.primer.name,
                packet.painting.primer.most_l);
  for (const PaintAmount& paint : packet.painting.paints) {
    teller.liquid(CostOf::Paint, StockKind::Paint, paint.name, paint.most_l);
  }
  add_hardware(teller, parts);
  Costing out = std::move(teller.out);
  add_sums(out);
  for (const CostSum& sum : out.sums) {
    if (sum.of == CostOf::Boards || sum.of == CostOf::Sheets || sum.of == CostOf::Metal) {
      out.taken_kg += sum.mass_kg;
    }
  }
  for (const parts::Part& part : parts.parts) {
    if (part.material == Material::Metal) continue;  // by its blank
    out.built_kg +=
        kg(part.quantity() * part.length_mm * part.width_mm * part.thick_mm, part.material);
  }
  out.built_kg += packet.metal.mass_kg;
  return out;
}

}  // namespace hs::evaluate
