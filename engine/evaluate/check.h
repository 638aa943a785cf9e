#pragma once
// The last question at the border: is this Config fit for evaluation? What the config module can
// judge by itself, and what only the oven's geometry shows.

#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/read.h"

namespace hs::evaluate {

// config::validate() and oven::impossible(). Empty: evaluate() gives finite numbers.
std::vector<Problem> check(const config::Config& config);

// The problems of a reading and then check(), without what only follows from fields that could not
// be read. At most 50 and a count.
std::vector<Problem> check(const config::Reading& reading);

// JSON text -> a Config that check() finds nothing wrong with, or everything that is wrong.
Result<config::Config> read(std::string_view json);

}  // namespace hs::evaluate
