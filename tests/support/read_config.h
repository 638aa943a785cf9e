#pragma once
// JSON text -> Config, judged by the config module alone: random configs need not have an oven that
// can be. The program itself reads by evaluate::read(), which also knows the oven.

#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/read.h"

namespace hs::test {

inline Result<config::Config> read_config(std::string_view json) {
  config::Reading reading = config::read_fields(json);
  const std::vector<Problem> whole = config::validate_read(reading);
  reading.problems.insert(reading.problems.end(), whole.begin(), whole.end());
  if (!reading.problems.empty()) return capped(std::move(reading.problems));
  return std::move(reading.config);
}

}  // namespace hs::test
