#pragma once
// The presets as a test reads them, by name: "demo", "ovens/steel_cabinet".

#include <fstream>
#include <sstream>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"

namespace hs::test {

inline constexpr const char* kPresets[] = {
    "demo",
    "ovens/tabletop_gas_small",
    "ovens/tabletop_gas_large",
    "ovens/tabletop_multi_fuel",
    "ovens/steel_cabinet",
    "ovens/masonry_dome_28",
    "ovens/masonry_dome_36",
    "ovens/masonry_barrel",
    "stations/brick_oven_too_close",
    "stations/crowded_porch",
    "stations/evening_lamp",
    "stations/four_cooks",
    "stations/open_courtyard",
    "stations/prep_only",
    "stations/seated_cook",
    "stations/garden_shelter",
    "stations/settled_yard",
};

inline config::Config preset(const std::string& name) {
  std::ifstream in(std::string(HEARTHSIGHT_SOURCE_DIR) + "/presets/" + name + ".json");
  std::stringstream text;
  text << in.rdbuf();
  Result<config::Config> read = evaluate::read(text.str());
  INFO(name);
  REQUIRE(read.has_value());
  return read.value();
}

}  // namespace hs::test
