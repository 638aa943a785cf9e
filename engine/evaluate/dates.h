#pragma once
// Dates as a person types them: "2027-04-05", or several with spaces between.

#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/schedule/calendar.h"

namespace hs::evaluate {

// Year, month and day with hyphens; nullopt for anything else and for a day that is none.
std::optional<schedule::Date> date_from(std::string_view text);
// nullopt where one of them is none.
std::optional<std::vector<schedule::Date>> dates_from(std::string_view text);

// What is wrong with the dates of a plan, by field.
std::vector<Problem> date_problems(const config::Plan& plan);

}  // namespace hs::evaluate
