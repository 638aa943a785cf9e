#pragma once
// Keys and groups of the config, as the field table's paths imply them.

#include <string>
#include <string_view>

#include "engine/config/config.h"

namespace hs::config {

// Is `path` inside `group` ("oven.width_mm" in "oven")?
bool is_under(std::string_view path, std::string_view group);

// An object with fields in it ("oven", "oven.outer_mouth", "cooks[]").
bool is_group(std::string_view path);
// A list whose rows have fields in them ("cooks").
bool is_list(std::string_view path);
// A group that may be null as a whole: a nested one of nothing but optional members
// ("oven.outer_mouth"). `path` without an index.
bool may_be_null(std::string_view group);
// All members of one row of a list, or of the group for a path without one, as where a file leaves
// them out. A cook's name is empty then.
void reset_group(Config& config, std::string_view group, std::size_t row);

// "one of the known keys; did you mean station.aisle_mm?": what to give instead of a key that there
// is not. The hint only where something is close.
std::string known_keys_text(std::string_view path);

}  // namespace hs::config
