#pragma once
// What every user of a hot oven is told, whatever the numbers say: fire, gas, power, burns,
// tipping, carbon monoxide, children, ash.

#include <cstdint>
#include <span>
#include <string_view>

#include "engine/rules/sources.h"

namespace hs::rules {

enum class Applies : std::uint8_t {
  Always,
  Gas,
  Solid,     // wood, pellets, charcoal
  Flame,     // gas or solid
  Electric,  // needs power to bake
};

struct Caution {
  std::string_view id;  // "caution.leak_test"
  Applies applies;
  std::string_view title;
  std::string_view text;  // both inches and mm where a length is named
  std::string_view source, clause;
  Basis basis;
};

// Worst harm first.
std::span<const Caution> cautions();

}  // namespace hs::rules
