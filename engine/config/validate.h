#pragma once
// Is a value, a cook or a whole Config allowed? Asked once, at the border; the rest of the engine
// then trusts what it gets. What needs the oven's geometry is in engine/evaluate/check.h.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/fields.h"

namespace hs::config {

// "800 to 2300 mm", "one of right, left", "text of 1 to 40 bytes": what the field takes. Lengths in
// the person's unit.
std::string allowed_text(const Field& field, Unit unit);

// "450 degrees Celsius", "\"Anna\"", "null": a value as a message shows it, shortened.
std::string given_text(const Field& field, const Value& value, Unit unit);

// Type, range, finiteness, choice, printable text. A number is judged after rounding to its
// quantum.
std::optional<Problem> check_value(const Field& field, const std::string& path, const Value& value,
                                   Unit unit = Unit::Mm);

// Everything wrong with this Config by itself: each field, the number of cooks, names that are not
// unique, one level at two heights, a trial by nobody. Empty: it is fit for links and, once
// evaluate::check() agrees too, for evaluation.
std::vector<Problem> validate(const Config& config);

// A name for cook `index` that no other cook has: "Cook 3", or the next number that is free.
std::string free_cook_name(const Config& config, std::size_t index);

}  // namespace hs::config
