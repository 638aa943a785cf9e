#pragma once
// The field table for other programs: as a JSON Schema of the config, and row by row for controls
// and the field reference.

#include <string>
#include <string_view>

#include "engine/base/quantity.h"

namespace hs::config {

// JSON Schema, draft 2020-12, of what read() takes: types, ranges, words, what may be null, unknown
// keys refused. Names that are not unique and heights that contradict each other are beyond it.
std::string schema_json();

// Every row of the table: {"format", "most_cooks", "fields": [{tag, path, group, label, question,
// measure, quantity, unit, min, max, step, choices, absent, default, rules}]}. min, max and step
// are null where the quantity is not a number; a text's min and max are bytes.
std::string fields_json();

// "length", "choice": the word for a kind of number.
std::string_view quantity_name(Quantity quantity);

}  // namespace hs::config
