#pragma once
// One field changed by text: a person's input on the page, or --set on the command line. The same
// parsers, ranges and messages as for a whole file.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/fields.h"
#include "engine/config/tree.h"

namespace hs::config {

// A value from a JSON node. The problem says what the field takes.
Result<Value> value_from_node(const Field& field, const std::string& path, const Node& node);

// A value from typed text. Empty text: absent where the field may be absent, an empty title, and a
// problem elsewhere. A name that is empty comes back empty; the caller finds one.
Result<Value> value_from_text(const Field& field, const std::string& path, std::string_view text,
                              Unit bare);

// For the page: sets the field of row `row` (ignored for a station field) and checks the Config
// as a whole. With problems the Config is left as it was. A cook who is renamed keeps their cold
// trial.
std::vector<Problem> set_field(Config& config, const Field& field, std::size_t row,
                               std::string_view text, Unit bare);

// For --set key.path=value: `text` is JSON, a length text or a plain word; "null" clears a field or
// a group that may be absent. A group ("oven.listed_clearance", "cooks.1") or a list ("cooks")
// takes JSON and becomes what a file with that text there would give: members left out have their
// defaults. "cooks.N" with N one past the last adds a row. With problems the Config is left as it
// was. Judges the fields alone: several settings may only make sense together, so validate() comes
// after the last.
std::vector<Problem> apply_setting(Config& config, std::string_view path, std::string_view text);

// Adds a default cook with a free name; false at the most cooks there may be.
bool add_cook(Config& config);
// Removes one, and with them their cold trial; false for the last one left.
bool remove_cook(Config& config, std::size_t cook);

// What is said of a cook by name, their cold trial, goes with them to their new name.
void follow_rename(Config& config, std::string_view before, const std::string& after);

}  // namespace hs::config
