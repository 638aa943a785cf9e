#pragma once
// Published words that quote a measure in two units, turned so that the reader's own comes first.

#include <string>
#include <string_view>

#include "engine/report/summary.h"

namespace hs::report {

// "at least 3 ft (0.9 m) from it" for millimetres: "at least 0.9 m (3 ft) from it". Both measures
// stay as they were published; what is quoted in one unit alone stays as it is.
std::string readers_first(std::string_view text, Units units);

// What is told in metric units alone, for who reads inches: "18.3 mm thick" becomes "23/32 in
// (18.3 mm) thick". What stands in brackets, or has brackets after it, stays as it is. For
// millimetres nothing changes.
std::string readers_own(std::string_view text, Units units);

}  // namespace hs::report
