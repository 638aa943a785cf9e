#pragma once
// What kept a change from being made, for the page's script.

#include <string>
#include <vector>

#include "engine/base/result.h"

namespace hs::web {

// [{path, given, allowed, message}]
std::string problems_json(const std::vector<Problem>& problems);

}  // namespace hs::web
