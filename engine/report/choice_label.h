#pragma once
// What a choice is called where a person reads it: the file's word "adult_a" is "Adult, like the
// survey's men". The one place of these words for canvas, forms and reports.

#include <cstddef>
#include <string>

#include "engine/config/fields.h"

namespace hs::report {

// Empty where the field has no such choice.
std::string choice_label(const config::Field& field, std::size_t index);

}  // namespace hs::report
