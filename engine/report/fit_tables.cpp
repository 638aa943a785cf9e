// The fit map as tables: what each cook sees from a few distances at a few heights, in words.

#include <algorithm>
#include <cmath>

#include "engine/evaluate/fit_rows.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

constexpr int kEachWay = 3;       // floors above and below the one in use
constexpr double kSame_mm = 0.5;  // a distance that is on the list already
constexpr double kInch_mm = 25.4;

std::vector<double> floors_around(double used_mm, Units units) {
  const double step_mm = units == Units::Inch ? 2 * kInch_mm : 50;
  std::vector<double> floors;
  for (int i = -kEachWay; i <= kEachWay; ++i) {
    if (used_mm + i * step_mm > 0) floors.push_back(used_mm + i * step_mm);
  }
  return floors;
}

// From arm's length to three steps back, and where this household watches from.
std::vector<double> distances(double watching_mm, Units units) {
  std::vector<double> all{watching_mm};
  for (int i = 2; i <= 6; ++i) {
    const double mm = i * (units == Units::Inch ? 8 * kInch_mm : 200);
    if (std::abs(mm - watching_mm) > kSame_mm) all.push_back(mm);
  }
  std::sort(all.begin(), all.end());
  return all;
}

std::string cell_words(const evaluate::FitCell& cell) {
  return (cell.see_all ? std::string("all") : percent(cell.share)) + (cell.too_hot ? ", hot" : "");
}

}  // namespace

std::vector<Table> fit_tables(const Page& page) {
  const auto& used_mm = page.evaluation.used.oven_floor_mm;
  if (!used_mm) return {};
  const double watching_mm = page.config.view.standoff_mm;
  const std::vector<double> floors = floors_around(*used_mm, page.units);
  const std::vector<double> standoffs = distances(watching_mm, page.units);
  std::vector<std::string> columns{"Oven floor at"};
  for (const double mm : standoffs) {
    columns.push_back(distance(mm, page.units) + " away" +
                      (mm == watching_mm ? ", as you watch" : ""));
  }
  std::vector<Table> tables;
  for (const evaluate::FitRows& one : evaluate::fit_rows(page.config, floors, standoffs)) {
    Table table{page.cook_name(one.cook) + " sees of the pizza", columns, {}};
    std::size_t cell = 0;
    for (std::size_t i = 0; i < floors.size(); ++i) {
      std::string name = plain_length(floors[i], page.units, true);
      if (floors[i] == *used_mm) name += ", as it is";
      if (one.too_high[i]) name += "; too high for the hands";
      std::vector<std::string> row{std::move(name)};
      for (std::size_t j = 0; j < standoffs.size(); ++j) {
        row.push_back(cell_words(one.cells[cell++]));
      }
      table.rows.push_back(std::move(row));
    }
    tables.push_back(std::move(table));
  }
  return tables;
}

}  // namespace hs::report
