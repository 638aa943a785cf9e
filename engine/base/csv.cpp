#include "engine/base/csv.h"

#include <algorithm>
#include <string>

#include "engine/base/number_text.h"
#include "engine/base/text.h"

namespace hs {
namespace {

constexpr char kGuard = '\'';

// Full-width forms of = + - @ are formulas to some programs too.
constexpr std::string_view kWide[] = {"\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"};

bool acts(std::string_view text) {
  if (text.empty()) return false;
  if (std::string_view("=+-@\t\r\n").find(text[0]) != std::string_view::npos) return true;
  return std::any_of(std::begin(kWide), std::end(kWide),
                     [text](std::string_view mark) { return text.starts_with(mark); });
}

struct Reader {
  std::string_view text;
  char apart = ',';
  std::size_t at = 0, line = 1;
  std::vector<Problem> problems{};

  bool ended() const { return at >= text.size(); }
  // At the end of a line or of the file.
  bool stops() const { return ended() || text[at] == '\n' || text.substr(at, 2) == "\r\n"; }
  void refuse(std::size_t row_line, std::size_t column, std::string given, std::string allowed) {
    problems.push_back({csv_place(row_line, column), std::move(given), std::move(allowed)});
  }
  std::string cell(std::size_t column);
  CsvRow row();
};

std::string Reader::cell(std::size_t column) {
  std::string out;
  if (ended() || text[at] != '"') {
    while (!stops() && text[at] != apart) {
      if (text[at] == '"') {
        refuse(line, column, "a quote inside a cell", "the cell in quotes, a quote in it twice");
        while (!stops()) ++at;
        return {};
      }
      out += text[at++];
    }
    return out;
  }
  const std::size_t began = line;
  for (++at; !ended(); ++at) {
    if (text[at] == '\n') ++line;
    if (text[at] != '"') {
      out += text[at];
    } else if (text.substr(at, 2) == "\"\"") {
      out += text[at++];
    } else {
      ++at;
      if (stops() || text[at] == apart) return out;
      refuse(line, column, "text behind the closing quote",
             "a comma or the line's end after a quoted cell");
      while (!stops()) ++at;
      return {};
    }
  }
  refuse(began, column, "a quote that does not close", "a closing quote");
  return {};
}

CsvRow Reader::row() {
  CsvRow row{line, {}};
  for (;;) {
    const std::size_t column = row.cells.size(), before = line;
    std::string words = cell(column);
    if (!is_printable(words)) {
      refuse(before, column, is_utf8(words) ? "a control character" : "text that is not UTF-8",
             "letters, digits and signs on one line");
    }
    if (words.size() > 1 && words[0] == kGuard &&
        (words[1] == kGuard || acts(std::string_view(words).substr(1)))) {
      words.erase(0, 1);
    }
    row.cells.push_back(std::move(words));
    if (row.cells.size() > kMostCsvCells) {
      refuse(line, column, "more cells", "at most " + std::to_string(kMostCsvCells) + " in a row");
      at = text.size();
    }
    if (ended() || text[at] != apart) break;
    ++at;
  }
  if (!ended()) {
    at += text[at] == '\r' ? std::size_t{2} : std::size_t{1};
    ++line;
  }
  return row;
}

}  // namespace

void CsvWriter::next() {
  if (begun_) out_ += ',';
  begun_ = true;
}

void CsvWriter::text(std::string_view utf8) {
  next();
  std::string words;
  if (acts(utf8) || utf8.starts_with(kGuard)) words += kGuard;
  for (const char c : utf8) {
    const bool breaks = static_cast<unsigned char>(c) < 32;
    if (c == '"') words += '"';
    words += breaks ? ' ' : c;
  }
  const bool quoted = words.find_first_of(",;\"'") != std::string::npos || words.starts_with(' ') ||
                      words.ends_with(' ');
  out_ += quoted ? '"' + words + '"' : words;
}

void CsvWriter::number(double value, int most_decimals) {
  next();
  out_ += trimmed(value, most_decimals);
}

void CsvWriter::number(const std::optional<double>& value, int most_decimals) {
  if (value) {
    number(*value, most_decimals);
  } else {
    next();
  }
}

void CsvWriter::end_row() {
  out_ += "\r\n";
  begun_ = false;
}

void CsvWriter::head(std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names) text(name);
  end_row();
}

Result<std::vector<CsvRow>> read_csv(std::string_view text) {
  if (text.size() > kMostCsvBytes) {
    return Problem{"", std::to_string(text.size()) + " bytes",
                   "at most " + std::to_string(kMostCsvBytes) + " bytes"};
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  Reader reader{text};
  const std::string_view first = text.substr(0, text.find('\n'));
  if (first.find(',') == std::string_view::npos && first.find(';') != std::string_view::npos) {
    reader.apart = ';';
  }
  std::vector<CsvRow> rows;
  while (!reader.ended()) {
    CsvRow row = reader.row();
    const bool blank = std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) {
      return trimmed_ends(cell).empty();
    });
    if (blank) continue;
    if (rows.size() == kMostCsvRows) {
      reader.refuse(row.line, 0, "more rows", "at most " + std::to_string(kMostCsvRows));
      break;
    }
    rows.push_back(std::move(row));
  }
  if (!reader.problems.empty()) return capped(std::move(reader.problems));
  return rows;
}

std::string csv_place(std::size_t line, std::size_t column) {
  return "line " + std::to_string(line) + ", column " + std::to_string(column + 1);
}

}  // namespace hs
