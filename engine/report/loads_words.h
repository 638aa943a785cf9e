#pragma once
// Words of what is built under its loads, for the report and for its tables.

#include <string>
#include <string_view>

#include "engine/base/json_writer.h"
#include "engine/loads/loads.h"

namespace hs::report {

std::string_view side_words(loads::Side side);     // "to the front"
std::string_view under_words(loads::Under under);  // "top of the block"
std::string_view grows_words(loads::Grows grows);  // "longest metal top"
// "2 of 2x4 on edge, front to back"; empty: none is needed.
std::string stiffener_words(const loads::Deck& deck);

// The key "loads".
void put_loads(JsonWriter& out, const loads::Loads& loads);

}  // namespace hs::report
