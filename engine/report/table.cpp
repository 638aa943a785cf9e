#include "engine/report/table.h"

#include "engine/report/json_values.h"

namespace hs::report {

void put_table(JsonWriter& out, const Table& table) {
  out.begin_object();
  put_text(out, "caption", table.caption);
  out.key("columns");
  out.begin_list();
  for (const std::string& column : table.columns) out.string(column);
  out.end_list();
  out.key("rows");
  out.begin_list();
  for (const std::vector<std::string>& row : table.rows) {
    out.begin_list();
    for (const std::string& cell : row) out.string(cell);
    out.end_list();
  }
  out.end_list();
  out.end_object();
}

}  // namespace hs::report
