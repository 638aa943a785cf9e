#pragma once
// A table whose cells are already words.

#include <string>
#include <vector>

#include "engine/base/json_writer.h"

namespace hs::report {

struct Table {
  std::string caption;
  std::vector<std::string> columns;
  std::vector<std::vector<std::string>> rows;
};

// {"caption", "columns", "rows"}.
void put_table(JsonWriter& out, const Table& table);

}  // namespace hs::report
