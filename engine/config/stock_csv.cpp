#include "engine/config/stock_csv.h"

#include <algorithm>
#include <vector>

#include "engine/base/csv.h"
#include "engine/base/text.h"
#include "engine/config/fields.h"
#include "engine/config/setting.h"
#include "engine/config/validate.h"

namespace hs::config {
namespace {

std::vector<const Field*> stock_fields() {
  std::vector<const Field*> all;
  for (const Field& field : fields()) {
    if (field.group == Group::Stock) all.push_back(&field);
  }
  return all;
}

std::string keys_text(const std::vector<const Field*>& all) {
  std::string text;
  for (const Field* field : all) text += (text.empty() ? "" : ", ") + std::string(key_of(*field));
  return text;
}

void put(CsvWriter& out, const Field& field, const Value& value) {
  if (const double* number = std::get_if<double>(&value)) {
    out.number(*number, 4);
  } else if (const bool* yes = std::get_if<bool>(&value)) {
    out.text(*yes ? "true" : "false");
  } else if (const std::string* words = std::get_if<std::string>(&value)) {
    out.text(*words);
  } else if (const ChoiceIndex* choice = std::get_if<ChoiceIndex>(&value)) {
    out.text(field.choices[choice->index]);
  } else {
    out.empty();
  }
}

// The fields of the columns, in the order of the file.
std::vector<const Field*> columns_of(const CsvRow& head, std::vector<Problem>& problems) {
  const std::vector<const Field*> all = stock_fields();
  std::vector<const Field*> columns;
  for (std::size_t i = 0; i < head.cells.size(); ++i) {
    const std::string_view name = trimmed_ends(head.cells[i]);
    const auto known = std::find_if(all.begin(), all.end(),
                                    [&](const Field* field) { return key_of(*field) == name; });
    const bool again =
        known != all.end() && std::find(columns.begin(), columns.end(), *known) != columns.end();
    if (known == all.end() || again) {
      problems.push_back({csv_place(head.line, i), name.empty() ? "an empty name" : shortened(name),
                          again ? "each column once" : "one of " + keys_text(all)});
    }
    columns.push_back(known == all.end() || again ? nullptr : *known);
  }
  return columns;
}

// "stock.3.bad_to_mm" is of the file's own rows and columns.
std::string place_of(const std::string& path, const std::vector<CsvRow>& rows,
                     const std::vector<const Field*>& columns) {
  for (std::size_t row = 0; row + 1 < rows.size(); ++row) {
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (columns[i] != nullptr && path_of(*columns[i], row) == path) {
        return csv_place(rows[row + 1].line, i);
      }
    }
  }
  return path;
}

}  // namespace

std::string stock_csv(const Config& config) {
  CsvWriter out;
  const std::vector<const Field*> all = stock_fields();
  for (const Field* field : all) out.text(key_of(*field));
  out.end_row();
  for (std::size_t row = 0; row < config.stock.size(); ++row) {
    for (const Field* field : all) put(out, *field, field->get(config, row));
    out.end_row();
  }
  return out.take();
}

Result<Config> with_stock(const Config& config, std::string_view csv) {
  const auto read = read_csv(csv);
  if (!read) return read.error();
  if (read->empty()) {
    return Problem{csv_place(1, 0), "",
                   "missing; the first row names the columns: " + keys_text(stock_fields())};
  }
  std::vector<Problem> problems;
  const std::vector<CsvRow>& rows = *read;
  const std::vector<const Field*> columns = columns_of(rows[0], problems);
  const std::size_t most = list_of(Group::Stock)->most;
  if (rows.size() - 1 > most) {
    problems.push_back({csv_place(rows[most + 1].line, 0), "one more row",
                        "at most " + std::to_string(most) + " rows"});
  }
  if (!problems.empty()) return capped(std::move(problems));
  Config out = config;
  out.stock.clear();
  set_rows(out, Group::Stock, rows.size() - 1);
  for (std::size_t row = 0; row + 1 < rows.size(); ++row) {
    const CsvRow& line = rows[row + 1];
    for (std::size_t i = 0; i < line.cells.size(); ++i) {
      const std::string_view text = trimmed_ends(line.cells[i]);
      if (i >= columns.size()) {
        if (text.empty()) continue;
        problems.push_back({csv_place(line.line, i), "a cell without a column", "nothing here"});
        continue;
      }
      if (text.empty()) continue;
      const auto value = value_from_text(*columns[i], csv_place(line.line, i), text, Unit::Mm);
      if (value) {
        columns[i]->set(out, row, *value);
      } else {
        problems.insert(problems.end(), value.error().begin(), value.error().end());
      }
    }
  }
  if (problems.empty()) {
    problems = validate(out);
    for (Problem& problem : problems) problem.path = place_of(problem.path, rows, columns);
  }
  if (!problems.empty()) return capped(std::move(problems));
  return out;
}

}  // namespace hs::config
