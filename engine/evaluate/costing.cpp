#include "engine/evaluate/costing.h"

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/evaluate/metal_cutting.h"
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

// May a row without the good's own name price it? A tin of one paint stands for another; glue,
// filler and hardware are not what another row of their kind is.
enum class Named : std::uint8_t { Must, May };

struct Teller {
  explicit Teller(const config::Config& of) : config(of) {
    for (const StockItem& item : config.stock) left.push_back(item.on_hand.value_or(0));
  }

  const config::Config& config;
  std::vector<double> left;  // of each row of the list: there, and not yet taken
  Costing out{};

  void add(CostLine line) {
    if (line.price) line.total = *line.price * std::max(0.0, line.quantity - line.from_hand);
    if (line.all_there()) line.total = 0;
    out.lines.push_back(std::move(line));
  }

  // Rows of that very name; where there are none and it may be, all of the kind.
  std::vector<std::size_t> rows(StockKind kind, std::string_view name, Named named) const {
    std::vector<std::size_t> own, others;
    for (std::size_t i = 0; i < config.stock.size(); ++i) {
      const StockItem& item = config.stock[i];
      if (item.kind != kind) continue;
      (!item.name.empty() && item.name == name ? own : others).push_back(i);
    }
    return own.empty() && named == Named::May ? others : own;
  }

  // What is there is taken first; the rest has the price of a row that is bought as needed, else of
  // one that is there.
  void take(CostLine& line, const std::vector<std::size_t>& rows) {
    for (const std::size_t row : rows) {
      const StockItem& item = config.stock[row];
      const bool other_colour =
          item.kind == StockKind::Paint && !item.name.empty() && item.name != line.what;
      if (other_colour) continue;
      const double took = std::min(left[row], line.quantity - line.from_hand);
      left[row] -= took;
      line.from_hand += took;
    }
    for (const bool bought : {true, false}) {
      for (const std::size_t row : rows) {
        const StockItem& item = config.stock[row];
        if (line.price || !item.price || item.on_hand.has_value() == bought) continue;
        line.price = item.price;
      }
    }
  }

  // So many litres, in whole cans where one of these rows has it.
  void liquid(CostOf of, const std::string& name, double litres, std::vector<std::size_t> of_it) {
    if (litres <= 0) return;
    CostLine line;
    line.of = of;
    line.what = name;
    if (of_it.empty()) {
      line.quantity = litres;
      line.unit = "l";
      return add(std::move(line));
    }
    // Cans of one size: those of the first row.
    const config::Can size = config.stock[of_it.front()].can;
    std::erase_if(of_it, [&](std::size_t row) { return config.stock[row].can != size; });
    const double can = can_l(size);
    line.quantity = std::ceil(litres / can - 1e-9);
    line.unit = "can";
    take(line, of_it);
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
      if (stock.on_hand) line.from_hand = line.quantity;
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

const MetalOrder* order_of(const MetalSheets& metal, int part) {
  for (const MetalOrder& order : metal.orders) {
    if (order.part == part) return &order;
  }
  return nullptr;
}

// Whole sheets where the stock list has some that hold the blanks; the others by the blank.
void add_metal(Teller& teller, const MetalSheets& metal) {
  std::vector<int> sawn;  // parts whose blanks lie on a sheet of the list
  for (const CutGroup& group : metal_groups(teller.config, metal)) {
    for (std::size_t i = 0; i < group.stocks.size(); ++i) {
      const CutStock& stock = group.stocks[i];
      if (stock.used == 0) continue;
      double blanks_mm2 = 0;
      std::vector<int> parts;
      for (const CutStick& stick : group.sticks) {
        if (stick.stock != i) continue;
        for (const SawnPiece& piece : stick.pieces) {
          if (piece.kind != SawnPiece::Kind::Part) continue;
          parts.push_back(group.items[piece.item].part);
          const MetalOrder* order = order_of(metal, parts.back());
          if (order != nullptr) blanks_mm2 += order->blank.area_mm2;
        }
      }
      sawn.insert(sawn.end(), parts.begin(), parts.end());
      std::sort(parts.begin(), parts.end());
      parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
      CostLine line;
      line.of = CostOf::Metal;
      line.what = group.name + ", " + size_words(stock.length_mm, stock.width_mm, true) +
                  (parts.size() == 1 ? ", for part" : ", for parts");
      for (const int part : parts) {
        line.what += (part == parts.front() ? " " : ", ") + std::to_string(part);
      }
      line.quantity = stock.used;
      line.unit = "sheet";
      line.price = stock.price;
      if (stock.on_hand) line.from_hand = line.quantity;
      const double taken_mm2 = stock.used * stock.length_mm * stock.width_mm;
      line.waste_share = std::clamp(1 - blanks_mm2 / taken_mm2, 0.0, 1.0);
      line.mass_kg = kg(taken_mm2 * group.thick_mm, Material::Metal);
      teller.add(std::move(line));
    }
  }
  for (const MetalOrder& order : metal.orders) {
    if (std::find(sawn.begin(), sawn.end(), order.part) != sawn.end()) continue;
    CostLine line;
    line.of = CostOf::Metal;
    line.what = order.name;
    line.quantity = order.quantity;
    line.unit = "blank";
    line.mass_kg = order.blank.mass_kg * order.quantity;
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
    teller.take(line, teller.rows(StockKind::Slab, line.what, Named::May));
    line.mass_kg =
        kg(part.quantity() * part.length_mm * part.width_mm * part.thick_mm, part.material);
    teller.add(std::move(line));
  }
}

void add_hardware(Teller& teller, const parts::List& parts) {
  for (const parts::Hardware& one : parts.hardware) {
    if (one.unit == "l") {
      // Of this kind the bed alone may have a row under another name, and not under one of these.
      const bool bed = one.name == parts::kBeddingAdhesive;
      std::vector<std::size_t> rows =
          teller.rows(StockKind::Bedding, one.name, bed ? Named::May : Named::Must);
      std::erase_if(rows, [&](std::size_t row) {
        const std::string& name = teller.config.stock[row].name;
        return name != one.name &&
               std::any_of(parts.hardware.begin(), parts.hardware.end(),
                           [&](const parts::Hardware& other) { return other.name == name; });
      });
      teller.liquid(CostOf::Bedding, one.name, one.quantity, std::move(rows));
      continue;
    }
    CostLine line;
    line.of = CostOf::Hardware;
    line.what = one.name;
    line.quantity = one.quantity;
    line.unit = one.unit;
    teller.take(line, teller.rows(StockKind::Hardware, one.name, Named::Must));
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
    out.total = out.total.value_or(0) + *line.total;
  }
}

}  // namespace

std::string_view cost_name(CostOf of) {
  constexpr std::string_view kNames[] = {"boards", "sheets",  "metal",   "slab",
                                         "paint",  "bedding", "hardware"};
  return kNames[static_cast<std::size_t>(of)];
}

std::vector<std::string> unpriced(const Costing& costing) {
  std::vector<std::string> names;
  for (const CostLine& line : costing.lines) {
    if (!line.total) names.push_back(line.what);
  }
  std::sort(names.begin(), names.end());
  return names;
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
  const PaintAmount& primer = packet.painting.primer;
  teller.liquid(CostOf::Paint, primer.name, primer.most_l,
                teller.rows(StockKind::Primer, primer.name, Named::May));
  for (const PaintAmount& paint : packet.painting.paints) {
    teller.liquid(CostOf::Paint, paint.name, paint.most_l,
                  teller.rows(StockKind::Paint, paint.name, Named::May));
  }
  add_hardware(teller, parts);
  Costing out = std::move(teller.out);
  add_sums(out);
  for (const CostSum& sum : out.sums) {
    if (sum.of == CostOf::Boards || sum.of == CostOf::Sheets || sum.of == CostOf::Metal ||
        sum.of == CostOf::Slab) {
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
