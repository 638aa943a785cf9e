// What the shop works from: cut plans, the metal order, sums.

#include <algorithm>
#include <cmath>
#include <string>

#include "engine/base/number_text.h"
#include "engine/evaluate/packet.h"
#include "engine/report/cut_sheets.h"
#include "engine/report/metal_sheets.h"
#include "engine/report/packet_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/readers_units.h"
#include "engine/report/sheet_parts.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

constexpr std::string_view kNoFrame =
    "no cabinet is worked out for this station, so nothing is ordered for it.";

std::string from_rule(std::string_view id) {
  const std::string source = source_note(id);
  return source.empty() ? std::string() : " (" + source + ")";
}

std::string many(int count, std::string_view one) {
  return std::to_string(count) + " " + std::string(one) + (count == 1 ? "" : "s");
}

struct Money {
  const evaluate::Costing& costing;
  std::string operator()(const std::optional<double>& sum) const {
    if (!sum) return "not known";
    return fixed(*sum, 2) + (costing.currency.empty() ? "" : " " + costing.currency);
  }
};

// What no plan can be below: proven to be met, or how far it is.
std::string bound_words(const evaluate::CutGroup& group, const Money& money, Units units) {
  using By = evaluate::MeasuredBy;
  if (!group.too_large.empty()) return "No whole plan: what follows is for the parts that fit. ";
  if (group.proven) {
    switch (group.by) {
      case By::Pieces:
        return "Proven: no plan needs fewer. ";
      case By::Length:
      case By::Area:
        return "Proven: no plan takes less. ";
      case By::Price:
        return "Proven: no plan costs less. ";
    }
  }
  constexpr double kMetre_mm = 1000, kFoot_mm = 304.8, kSquareFoot_m2 = 0.09290304;
  const bool inch = units == Units::Inch;
  const auto amount = [&](double value) {
    switch (group.by) {
      case By::Pieces:
        return fixed(value, 0);
      case By::Length:
        return inch ? fixed(value / kFoot_mm, 1) + " ft" : fixed(value / kMetre_mm, 2) + " m";
      case By::Area:
        return inch ? fixed(value / kSquareFoot_m2, 1) + " sq ft" : fixed(value, 2) + " m\u00B2";
      case By::Price:
        return money(value);
    }
    return std::string();
  };
  return "Not proven: this plan takes " + amount(group.value) + ", no plan less than " +
         amount(group.at_least) + ". ";
}

// "4 sheets to buy, 1 sheet from the shop; 2 parts fit no sheet".
std::string taken_words(const evaluate::CutGroup& group) {
  const std::string_view one = group.sheets ? "sheet" : "board";
  std::string words = many(group.bought, one) + " to buy";
  if (group.from_hand > 0) words += ", " + many(group.from_hand, one) + " from the shop";
  if (const auto none = static_cast<int>(group.too_large.size()); none > 0) {
    words += "; " + many(none, "part") + (none == 1 ? " fits no " : " fit no ") + std::string(one);
  }
  return words;
}

std::string proof_words(const evaluate::CutGroup& group, const Money& money, Units units) {
  std::string words = taken_words(group) + ". ";
  words += bound_words(group, money, units);
  return words + percent(group.stock_share) +
         " of what is taken ends in parts as they are first cut.";
}

Table stock_table(const PacketView& view, const evaluate::CutGroup& group, const Money& money) {
  Table table{"Taken", {"What", "Length", "Width", "Used", "In the shop", "Price of one"}, {}};
  for (const evaluate::CutStock& stock : group.stocks) {
    if (stock.used == 0) continue;
    table.rows.push_back({stock.name, shop_length(stock.length_mm, view.choice.units, false),
                          shop_length(stock.width_mm, view.choice.units, false),
                          std::to_string(stock.used),
                          stock.on_hand ? std::to_string(*stock.on_hand) : "",
                          stock.price ? money(stock.price) : ""});
  }
  return table;
}

Table told_table(const evaluate::MetalOrder& order, Units units) {
  Table table{"Sizes", {"Where", "What", "Length", "Measured"}, {}};
  for (const sheet::Told& told : order.blank.told) {
    table.rows.push_back({std::string(told.where), std::string(told.what),
                          metal_length(told.mm, units),
                          told.reads == sheet::Reads::Outside  ? "outside"
                          : told.reads == sheet::Reads::Inside ? "inside"
                                                               : "flat"});
  }
  return table;
}

Table bend_table(const evaluate::MetalOrder& order, Units units) {
  Table table{"Bends", {"Where", "Angle", "Inside radius", "Allowance", "Deduction"}, {}};
  for (const sheet::BendLine& bend : order.blank.bends) {
    table.rows.push_back({std::string(sheet::side_name(bend.side)) + (bend.hem ? ", hem" : ""),
                          bend.hem ? "180\u00B0" : "90\u00B0", metal_length(bend.radius_mm, units),
                          metal_length(bend.arc_mm, units), metal_length(bend.deduct_mm, units)});
  }
  return table;
}

// "Its right edge is straight and butts against part 33, 0.0787 in between for a bead of sealant."
std::string joint_words(const evaluate::Joint& joint, Units units) {
  constexpr double kLevel_mm = 1;
  std::string words = joint.side == sheet::Side::Left ? " Its left edge" : " Its right edge";
  words += " is straight and ";
  if (joint.part == 0) return words + "meets no other top: ask what it is to meet.";
  const std::string other = "part " + std::to_string(joint.part);
  if (std::abs(joint.step_mm) > kLevel_mm) {
    const bool higher = joint.step_mm > 0;
    return words + "stands " + metal_length(std::abs(joint.step_mm), units) +
           (higher ? " above " : " below ") + other +
           (higher
                ? ": bare metal and sheet show there, so fold or cap that edge by what is measured."
                : ", whose edge shows above it: seal it against what stands there.");
  }
  words += "butts against " + other + ", " + metal_length(joint.gap_mm, units) +
           " between the two, filled with a bead of sealant" + from_rule("metal.joint") + ".";
  constexpr double kBead_mm = 5;  // what a bead still closes: our judgement
  if (joint.tail_mm > 0) {
    words +=
        " Its last " + metal_length(joint.tail_mm, units) +
        " at the back meet no other top and are turned down too, beyond that edge by the room "
        "and the thickness of a fold; a slot one thickness wide frees the bend where it begins.";
  } else if (joint.alone_mm > kBead_mm) {
    words += " Its last " + metal_length(joint.alone_mm, units) +
             " at the back meet nothing: fold or cap them, so that no rain gets in.";
  }
  return words;
}

void put_order(const PacketView& view, DocPart& part, std::size_t index) {
  const evaluate::MetalOrder& order = view.evaluation.packet->metal.orders[index];
  const Units units = view.choice.units;
  const auto length = [&](double mm) { return metal_length(mm, units); };
  const Unit unit = unit_of(units);
  part.blocks.push_back(heading(capitalised(order.name) + ", part " + std::to_string(order.part) +
                                ": " + std::to_string(order.quantity) + " of it"));
  for (const sheet::Remark& remark : order.blank.refusals) {
    DocBlock b = words(sheet::words(remark, unit));
    b.verdict = Verdict::Fail;
    part.blocks.push_back(std::move(b));
  }
  if (!order.blank.possible()) return;
  part.blocks.push_back(words(
      "Stainless steel " + metal_thickness(order.top.metal.thick_mm, units) + " Inside radius " +
      length(order.top.metal.inside_radius_mm) + ", K " + trimmed(order.top.metal.k, 3) +
      from_rule("metal.fold") + ". Blank " + length(order.blank.width_mm) + " x " +
      length(order.blank.depth_mm) + ", " + fixed(order.blank.mass_kg, 1) + " kg each."));
  std::string joints;
  for (const evaluate::Joint& joint : order.joints) joints += joint_words(joint, units);
  part.blocks.push_back(words(
      "It lies over " + length(order.under_width_mm) + " x " + length(order.under_depth_mm) + ", " +
      length(order.under_thick_mm) + " thick, " +
      (order.measured ? "as measured"
                      : "AS PLANNED: measure the primed sheets before you "
                        "order") +
      ". On each side " + length(order.fit_mm) + " of room; paint takes " + length(order.paint_mm) +
      ", a bend 1\u00B0 off " + length(order.bend_error_mm) + ", so at least " +
      length(order.least_left_mm) + " stays" + from_rule("metal.fit") + ". Bed " +
      length(order.bedding_mm) + ", drip " + length(order.drip_mm) + ". " +
      (order.hem_mm > 0 ? "Lower edges hemmed inside, return " + length(order.hem_mm) + "."
                        : std::string("Lower edges deburred, not hemmed.")) +
      (order.ease_mm > 0 ? " Round the corner under the bend to " + length(order.ease_mm) + "."
                         : "") +
      joints));
  const std::string name = "metal_" + std::to_string(order.part);
  part.blocks.push_back(figure(
      view,
      {.file = name, .head = {}, .caption = "Flat blank. Bend lines are the middle of each arc."},
      [&](const SheetView& v) { return metal_sheet(view.config, view.evaluation, v, index); }));
  if (order.blank.relief_mm > 0) {
    part.blocks.push_back(
        words("Corners: the side flanges stand between the front and back ones, " +
              length(order.top.corner_gap_mm) + " clear of them, half a thickness, with a square " +
              "relief to " + length(order.blank.relief_mm) + " from both outside faces, R + T, " +
              "where both bends end. They are left open, not welded; a bead closes them" +
              from_rule("metal.corner") + "."));
    part.blocks.push_back(
        figure(view,
               {.file = name + "_corner",
                .head = {},
                .caption = "One corner's notch, flat: all corners of two flanges are alike."},
               [&](const SheetView& v) {
                 return metal_corner_sheet(view.config, view.evaluation, v, index);
               }));
  }
  part.blocks.push_back(rows(told_table(order, units)));
  part.blocks.push_back(rows(bend_table(order, units)));
  for (const sheet::Remark& remark : order.blank.cautions) {
    DocBlock b = words(sheet::words(remark, unit));
    b.verdict = Verdict::Warn;
    part.blocks.push_back(std::move(b));
  }
}

}  // namespace

PacketPart cuts_part(const PacketView& view) {
  DocPart part{"cuts", "Cut plans"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  const evaluate::Cutting& cutting = packet->cutting;
  if (cutting.groups.empty()) return {std::move(part), "nothing is sawn."};
  const Money money{packet->costing};
  const auto length = [&](double mm) { return shop_length(mm, view.choice.units, false); };
  part.blocks.push_back(words(
      "Saw in the order of the numbers: heavy lines are passes of the saw, and the number of "
      "one stands on it or where it ends at the edge. The kerf, " +
      length(cutting.kerf_mm) +
      ", is beside every line and reckoned in; edges of sheets are trimmed by " +
      length(cutting.sheet_trim_mm) + ", ends of boards by " + length(cutting.board_trim_mm) +
      ". Sizes on a plan are in " + (view.choice.units == Units::Inch ? "inches" : "millimetres") +
      ". White: kept as an offcut; grey: waste" + from_rule("cuts.kerf") + "."));
  part.blocks.push_back(caution("caution.power"));
  for (const evaluate::UnusedRow& one : cutting.unused) {
    const std::string& name = view.config.stock[one.row].name;
    DocBlock b = words("Row " + std::to_string(one.row + 1) + " of the stock list" +
                       (name.empty() ? "" : ", " + name) + ", is not used: " +
                       readers_own(one.why, view.choice.units) + from_rule("cuts.stock") + ".");
    b.verdict = Verdict::Warn;
    part.blocks.push_back(std::move(b));
  }
  const std::vector<CutSheet> sheets = cut_sheets(cutting);
  // What is taken of everything first: then a plan and its passes have a page of their own.
  for (std::size_t g = 0; g < cutting.groups.size(); ++g) {
    const evaluate::CutGroup& group = cutting.groups[g];
    part.blocks.push_back(heading(capitalised(readers_own(group.name, view.choice.units))));
    part.blocks.push_back(
        words(proof_words(group, money, view.choice.units) + from_rule("cuts.plan")));
    for (const evaluate::TooLarge& one : evaluate::too_large_parts(group)) {
      DocBlock b =
          words("Part " + std::to_string(one.part) + ", " + std::to_string(one.count) + " of it, " +
                length(one.length_mm) + " x " + length(one.width_mm) + ": it fits no " +
                (group.sheets ? "sheet" : "board") + " of the stock list or of the usual sizes" +
                from_rule("cuts.too_large") + ".");
      b.verdict = Verdict::Fail;
      part.blocks.push_back(std::move(b));
    }
    part.blocks.push_back(rows(stock_table(view, group, money)));
  }
  int number = 0;
  for (const CutSheet& which : sheets) {
    const evaluate::CutGroup& group = cutting.groups[which.group];
    const evaluate::CutStock& stock = group.stocks[group.sticks[which.stick].stock];
    const std::string name = std::to_string(++number);
    part.blocks.push_back(figure(
        view,
        {.file = "cut_" + name,
         .head = "Plan " + name + ", " + readers_own(group.name, view.choice.units) + ": " +
                 std::to_string(which.alike) + " of " + stock.name + ", " +
                 length(stock.length_mm) +
                 (group.sheets ? " x " + length(stock.width_mm) : std::string()),
         .caption = sawn_words(view.evaluation, view.sheet(), which),
         .with_next = true},
        [&](const SheetView& v) { return cut_sheet(view.config, view.evaluation, v, which); }));
    part.blocks.push_back(rows(pass_table(view.evaluation, view.sheet(), which)));
  }
  return {std::move(part), {}};
}

PacketPart metal_part(const PacketView& view) {
  DocPart part{"metal", "Metal order"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  const evaluate::MetalSheets& metal = packet->metal;
  if (metal.orders.empty()) return {std::move(part), "no top is of metal."};
  part.blocks.push_back(
      words("For the fabricator: sizes are decimal; K and radius are ours until the shop names its "
            "own. Alloy: 304, near salt water 316, or as the shop advises" +
            from_rule("metal.alloy") +
            ". Finish: No. 4, brushed along the width, on the upper face and the flanges' outside" +
            from_rule("metal.finish") + ". " + metal_edges(view.config) + " All tops together " +
            mass(metal.mass_kg, view.choice.units) + from_rule("metal.measure") + "."));
  for (std::size_t i = 0; i < metal.orders.size(); ++i) put_order(view, part, i);
  return {std::move(part), {}};
}

PacketPart money_part(const PacketView& view) {
  DocPart part{"money", "Cost and mass"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  const evaluate::Costing& costing = packet->costing;
  if (costing.lines.empty()) return {std::move(part), "nothing is bought."};
  const Money money{costing};
  std::string sum =
      costing.total ? "Together " + money(costing.total) + ". " : "No price is in the stock list. ";
  if (costing.total && costing.without_price > 0) {
    sum += many(costing.without_price, "line") + " without a price not counted. ";
  }
  const Units units = view.choice.units;
  sum += "The finished station without its oven weighs some " + mass(costing.built_kg, units) +
         "; what is taken for it " + mass(costing.taken_kg, units) + from_rule("money.mass") + ".";
  part.blocks.push_back(words(std::move(sum)));
  Table lines{"What is taken", {"What", "Quantity", "Price of one", "Together", "Waste"}, {}};
  for (const evaluate::CostLine& line : costing.lines) {
    const bool some = line.from_hand > 0 && !line.all_there();
    lines.rows.push_back(
        {readers_own(line.what, units),
         quantity_words(line.quantity, line.unit, units) +
             (some ? ", " + trimmed(line.from_hand, 1) + " of it in the shop" : ""),
         line.all_there() ? "in the shop" : money(line.price),
         line.all_there() ? "" : money(line.total),
         line.waste_share > 0 ? percent(line.waste_share) : ""});
  }
  part.blocks.push_back(rows(std::move(lines)));
  Table sums{"By material", {"Material", "Together", "Without a price", "Mass"}, {}};
  for (const evaluate::CostSum& one : costing.sums) {
    sums.rows.push_back({std::string(evaluate::cost_name(one.of)),
                         one.total > 0 || one.without_price == 0 ? money(one.total) : "not known",
                         one.without_price > 0 ? std::to_string(one.without_price) : "",
                         one.mass_kg > 0 ? mass(one.mass_kg, units) : ""});
  }
  part.blocks.push_back(rows(std::move(sums)));
  Table inches{
      "What an inch of one height moves",
      {"An inch more of", "Dough counter", "Oven's base", "Cost", "Mass", "Pieces changed"},
      {}};
  const Page page = view.page();
  for (const evaluate::InchCost& one : costing.inches) {
    inches.rows.push_back(
        {page.cook_name(one.cook) + (one.elbow ? "'s elbow" : "'s eye"),
         moves(page, one.counter_moves_mm), moves(page, one.oven_base_moves_mm),
         one.total_moves ? money(one.total_moves) : "not known",
         (one.mass_moves_kg < 0 ? "-" : "") + mass(std::abs(one.mass_moves_kg), units),
         std::to_string(one.pieces_changed)});
  }
  if (!inches.rows.empty()) {
    part.blocks.push_back(rows(std::move(inches)));
    part.blocks.push_back(
        note("Cost is not known where something else has no price than before. Source: " +
             source_note("money.inch") + "."));
  }
  return {std::move(part), {}};
}

// What a shop asks first. Nothing is worked out here: counts of the plans, and their sums.
Table glance_table(const PacketView& view) {
  Table table{"At a glance", {"What", "How much"}, {}};
  const auto& packet = view.evaluation.packet;
  const auto& build = view.evaluation.build;
  if (!packet || !build) return table;
  int pieces = 0;
  for (const parts::Part& part : build->parts.parts) pieces += part.quantity();
  table.rows.push_back(
      {"Parts to make", std::to_string(pieces) + ", of " +
                            many(static_cast<int>(build->parts.parts.size()), "kind")});
  for (const evaluate::CutGroup& group : packet->cutting.groups) {
    table.rows.push_back({readers_own(group.name, view.choice.units), taken_words(group)});
  }
  if (!packet->metal.orders.empty()) {
    int tops = 0;
    for (const evaluate::MetalOrder& order : packet->metal.orders) tops += order.quantity;
    table.rows.push_back({"Metal tops", std::to_string(tops) + ", " +
                                            mass(packet->metal.mass_kg, view.choice.units)});
  }
  const evaluate::Costing& costing = packet->costing;
  table.rows.push_back(
      {"The finished station, without its oven", mass(costing.built_kg, view.choice.units)});
  const Money money{costing};
  std::string price = costing.total ? money(costing.total) : "no price is in the stock list";
  if (costing.total && costing.without_price > 0) {
    price += ", and " + many(costing.without_price, "line") + " without a price";
  }
  table.rows.push_back({"Material, by the stock list's prices", std::move(price)});
  return table;
}

}  // namespace hs::report
