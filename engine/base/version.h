#pragma once
// The engine's own version, as the build names it: "0.1.0".

#include <string_view>

namespace hs {

std::string_view version();

}  // namespace hs
