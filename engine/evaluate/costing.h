#pragma once
// What it costs and weighs, by material with its waste, and what an inch of one cook's eye costs:
// values of the packet. Prices are the household's own, of its stock list.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/changes.h"
#include "engine/frame/piece.h"

namespace hs::evaluate {

struct Evaluation;
struct Packet;

enum class CostOf : std::uint8_t { Boards, Sheets, Metal, Slab, Paint, Bedding, Hardware };
std::string_view cost_name(CostOf of);  // "boards"

// One thing that is bought or taken from the shop.
struct CostLine {
  CostOf of = CostOf::Boards;
  std::string what;             // "treated lumber, 2x4, 3658 mm"
  double quantity = 0;          // of `unit`
  std::string_view unit;        // "", "l", "pair"
  std::optional<double> price;  // of one; absent: not in the stock list
  double from_hand = 0;         // of the quantity: there already, costs nothing
  std::optional<double> total;  // what is bought x price
  double waste_share = 0;       // of what is taken, that ends in no part
  double mass_kg = 0;           // of what is taken; 0: not counted

  bool all_there() const { return from_hand >= quantity; }
};

// By material.
struct CostSum {
  CostOf of = CostOf::Boards;
  double total = 0;  // of lines with a price
  int without_price = 0;
  double mass_kg = 0;
};

// One cook's eye, or elbow, an inch higher, all else as it is.
struct InchCost {
  std::size_t cook = 0;
  bool elbow = false;  // else the eye
  double counter_moves_mm = 0, oven_base_moves_mm = 0;
  // Absent: no price at all, or what has no price is not the same in both.
  std::optional<double> total_moves;
  double mass_moves_kg = 0;
  int pieces_changed = 0;  // of the frame
  std::vector<Change> changes;
};

struct Costing {
  std::string currency;  // as typed; empty: not said
  std::vector<CostLine> lines;
  std::vector<CostSum> sums;     // those with a line
  std::optional<double> total;   // of lines with a price; absent: none has one
  int without_price = 0;         // lines
  double built_kg = 0;           // the finished station without oven: parts by volume
  double taken_kg = 0;           // boards, sheets, metal and slabs as they come
  std::vector<InchCost> inches;  // eyes at the oven, elbows at the dough counter
};

// Sums without the inches: evaluate_packet() adds them.
Costing costing_of(const config::Config& config, const Evaluation& evaluation,
                   const Packet& packet);

// What the total says nothing of: the lines without a price, by name.
std::vector<std::string> unpriced(const Costing& costing);

// Density used for masses, g/cm3. Sources in the rule money.mass.
double density_g_cm3(frame::Material material);

}  // namespace hs::evaluate
