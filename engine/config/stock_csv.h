#pragma once
// The stock list as a file for a spreadsheet program, in and out: a column for each field of a row,
// by its key in the field table; lengths in mm.

#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/config/config.h"

namespace hs::config {

// The head alone where there is no stock.
std::string stock_csv(const Config& config);

// The config with the stock list of this file in the place of its own. The first row names the
// columns, in any order; a column that is left out, and an empty cell, take the default. Lengths
// may be typed as everywhere ("8 ft"). Problems name line and column: a column that is none, or
// twice there, a value that the field does not take, more rows than the list holds.
Result<Config> with_stock(const Config& config, std::string_view csv);

}  // namespace hs::config
