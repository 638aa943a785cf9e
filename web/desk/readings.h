#pragma once
// What the page's script hands over of a phone's sensor, as text.

#include <string_view>
#include <vector>

#include "engine/measure/tilt.h"

namespace hs::web {

// "0.12 9.7 -0.3 0.11 ...": three numbers for each reading, with a space between. Empty where one
// of them is no number, a reading is not whole, or there are more than a page collects (3000).
std::vector<measure::Gravity> readings(std::string_view text);

}  // namespace hs::web
