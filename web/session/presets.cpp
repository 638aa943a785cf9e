#include "web/session/presets.h"

namespace hs {

std::string_view preset_link(std::string_view name) {
  for (const Preset& preset : presets()) {
    if (preset.name == name) return preset.link;
  }
  return {};
}

}  // namespace hs
