#pragma once
// A field's value as a person reads it: "42½ in", "Child, 3 to 17", "yes", "not known".

#include <cstddef>
#include <string>

#include "engine/config/fields.h"
#include "engine/report/summary.h"

namespace hs::report {

std::string field_text(const config::Field& field, const config::Config& config, std::size_t cook,
                       Units units);

}  // namespace hs::report
