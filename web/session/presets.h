#pragma once
// The JSON files of presets/ that the page offers, compiled in as links by
// web/session/presets.cmake.

#include <span>
#include <string_view>

namespace hs {

struct Preset {
  std::string_view name;  // "ovens/steel_cabinet", "demo"
  std::string_view link;  // opens to the very config that the file reads to
};

// By name.
std::span<const Preset> presets();

// Empty when there is none of that name.
std::string_view preset_link(std::string_view name);

}  // namespace hs
