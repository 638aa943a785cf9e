#pragma once
// What is different between two evaluations: the diff of a packet, as values.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"

namespace hs::evaluate {

struct Evaluation;

enum class ChangeOf : std::uint8_t { Height, Part, Hardware, Cut, Metal, Paint, Plan, Money };
std::string_view change_name(ChangeOf of);  // "height"
enum class ChangeUnit : std::uint8_t { Mm, Count, Square_m, Litre, Kg, Hour, Money };

// One number that is another now. Equal changes of several pieces are one, with their places.
struct Change {
  ChangeOf of = ChangeOf::Height;
  std::string what;          // "side", "dough counter", "2x4"
  std::string_view measure;  // "length"; of a piece that came or went: "quantity"
  ChangeUnit unit = ChangeUnit::Mm;
  std::optional<double> before, after;  // absent: was not there, is no more
  int count = 1;                        // pieces that changed alike
  std::vector<std::string> places;      // "under the oven, bay 1"; of pieces only
};

// From `before` to `after`, in the order of ChangeOf. Evaluations with their builds; cuts, metal,
// paint, plan and money only where both have a packet. Lengths to 0.1 mm.
std::vector<Change> changes(const Evaluation& before, const Evaluation& after);

}  // namespace hs::evaluate
