#pragma once
// What of a top cannot be folded, and what a fabricator is to be asked.

#include <vector>

#include "engine/sheet/top.h"

namespace hs::sheet {

// Refusals and cautions of a top, in the order of its members. Anything may be given.
std::vector<Remark> remarks_on(const Top& top);

}  // namespace hs::sheet
