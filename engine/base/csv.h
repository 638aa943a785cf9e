#pragma once
// Comma-separated values, RFC 4180: written so that a spreadsheet program reads numbers as numbers
// and words as words, and read again with every refusal naming its line and column.
//
// Words that a spreadsheet program would take for a formula (they begin with = + - @ or a control
// character; rule: OWASP, "CSV Injection") get an apostrophe before them, and lose it when read.

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace hs {

class CsvWriter {
 public:
  void text(std::string_view utf8);
  // At most this many decimals, a point before them.
  void number(double value, int most_decimals);
  void number(const std::optional<double>& value, int most_decimals);
  void empty() { next(); }
  void end_row();  // CRLF (RFC 4180, 2.1)
  // Names of columns, then the row's end.
  void head(std::initializer_list<std::string_view> names);

  std::string take() { return std::move(out_); }

 private:
  void next();
  std::string out_;
  bool begun_ = false;  // a cell of this row is there
};

struct CsvRow {
  std::size_t line = 0;  // of the file, from 1, where it begins
  std::vector<std::string> cells;
};

inline constexpr std::size_t kMostCsvBytes = 1 << 20, kMostCsvRows = 10'000, kMostCsvCells = 64;

// Rows with something in them. Lines end in CRLF or LF, the last one need not; a byte order mark is
// passed over. Cells are apart by commas; by semicolons where the first line has some and no comma,
// as spreadsheet programs write where the comma is the decimal mark. Problems: a quote that does
// not close, what stands around a quoted cell, text that is not UTF-8 or cannot be shown, too much.
Result<std::vector<CsvRow>> read_csv(std::string_view text);

// "line 4, column 2": the path of a problem. `column` from 0.
std::string csv_place(std::size_t line, std::size_t column);

}  // namespace hs
