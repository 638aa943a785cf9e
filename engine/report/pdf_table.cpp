// Tables of a PDF: columns as wide as their words ask for, rows that stay whole, the head again on
// each page.

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "engine/report/pdf_flow.h"

namespace hs::report {
namespace {

constexpr double kApart_mm = 2.2;   // between columns
constexpr double kAround_mm = 1.1;  // of a row's height, with no line in it
constexpr double kBeside_mm = 8;    // between the halves of a table
constexpr double kAfter_mm = 4;     // under it
constexpr PdfColour kRule{150, 150, 150};

using Cells = std::vector<std::vector<std::string>>;  // lines of each cell

double longest_word_mm(const std::string& letters, PdfFont font) {
  double most = 0;
  for (std::size_t at = 0; at < letters.size();) {
    const std::size_t space = std::min(letters.find(' ', at), letters.size());
    most = std::max(most, pdf_width_mm(letters.substr(at, space - at), font, kCell_mm));
    at = space + 1;
  }
  return most;
}

// What each column asks for: all of it, and its longest word.
struct Ask {
  double whole = 0, word = 0;
};

// No column wider than it asks for; where they are too wide together, the wide ones give way, none
// below its longest word while that is possible.
std::vector<double> shares(const std::vector<Ask>& asks, double across_mm) {
  const auto widths = [&](double level) {
    std::vector<double> all;
    for (const Ask& ask : asks) all.push_back(std::min(ask.whole, std::max(ask.word, level)));
    return all;
  };
  const auto sum = [](const std::vector<double>& all) {
    double total = 0;
    for (const double each : all) total += each;
    return total;
  };
  double low = 0, high = across_mm;
  if (sum(widths(high)) <= across_mm) return widths(high);
  for (int i = 0; i < 40; ++i) {
    const double middle = (low + high) / 2;
    (sum(widths(middle)) <= across_mm ? low : high) = middle;
  }
  std::vector<double> all = widths(low);
  const double over = sum(all) / across_mm;
  if (over > 1) {
    for (double& each : all) each /= over;
  }
  return all;
}

double height_of(const Cells& cells) {
  std::size_t lines = 1;
  for (const auto& cell : cells) lines = std::max(lines, cell.size());
  return kLeading * kCell_mm * static_cast<double>(lines) + kAround_mm;
}

}  // namespace

// A table as it stands on this width: lines of each cell, heights of its parts.
struct PdfFlow::Laid {
  std::vector<double> wide;
  double across = 0;
  bool headed = false;
  Cells head;
  std::vector<Cells> rows;
  double head_mm = 0, caption_mm = 0;
  bool in_halves = false;  // its second half beside the first

  double high_mm() const {
    double high = caption_mm + head_mm + kAfter_mm;
    const std::size_t down = in_halves ? (rows.size() + 1) / 2 : rows.size();
    for (std::size_t i = 0; i < down; ++i) {
      const bool two = in_halves && down + i < rows.size();
      high += std::max(height_of(rows[i]), two ? height_of(rows[down + i]) : 0.0);
    }
    return high;
  }
};

PdfFlow::Laid PdfFlow::lay(const Table& table) {
  Laid out;
  std::size_t columns = table.columns.size();
  for (const auto& row : table.rows) columns = std::max(columns, row.size());
  for (const std::string& column : table.columns) out.headed = out.headed || !column.empty();

  std::vector<Ask> asks(columns);
  const auto ask = [&](std::size_t i, const std::string& text, PdfFont font) {
    const std::string plain = letters(text);
    // A little more, so that what fits by its own measure is not broken by the last bit.
    asks[i].whole = std::max(asks[i].whole, pdf_width_mm(plain, font, kCell_mm) + 0.01);
    asks[i].word = std::max(asks[i].word, longest_word_mm(plain, font) + 0.01);
  };
  for (std::size_t i = 0; i < table.columns.size(); ++i) ask(i, table.columns[i], PdfFont::Bold);
  for (const auto& row : table.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) ask(i, row[i], PdfFont::Plain);
  }
  const double apart = kApart_mm * static_cast<double>(columns - 1);
  out.wide = shares(asks, width() - apart);
  out.across = apart;
  for (const double each : out.wide) out.across += each;

  const auto broken = [&](const std::vector<std::string>& row, PdfFont font) {
    Cells cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(pdf_lines(pdf_letters(row[i]), font, kCell_mm, out.wide[i]));
    }
    return cells;
  };
  out.head = broken(table.columns, PdfFont::Bold);
  for (const auto& row : table.rows) out.rows.push_back(broken(row, PdfFont::Plain));
  out.head_mm = out.headed ? height_of(out.head) : 0;
  out.caption_mm = table.caption.empty() ? 0 : kLeading * kBody_mm + 1;
  // A narrow, long table takes half as much paper so; never over the end of a page.
  constexpr std::size_t kLeastRows = 8;
  out.in_halves = table.rows.size() >= kLeastRows && 2 * out.across + kBeside_mm <= width();
  out.in_halves = out.in_halves && out.high_mm() <= top() - bottom();
  return out;
}

double PdfFlow::table_high_mm(const Table& table) {
  if (table.rows.empty()) return 0;
  const std::size_t lost = lost_;  // its words are counted when they are printed
  const Laid laid = lay(table);
  lost_ = lost;
  return laid.high_mm();
}

void PdfFlow::table(const Table& table) {
  if (table.rows.empty()) return;
  upright();
  const Laid laid = lay(table);
  const auto put_at = [&](double x_mm, const Cells& cells, PdfFont font, double rule_mm) {
    double x = x_mm;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      double y = y_ - 0.4;
      for (const std::string& line : cells[i]) {
        y -= kLeading * kCell_mm;
        pdf_.text({x, y + 0.25 * kCell_mm}, line, font, kCell_mm);
      }
      x += laid.wide[i] + kApart_mm;
    }
    const double low = y_ - height_of(cells);
    pdf_.line(std::array{Spot{x_mm, low}, Spot{x_mm + laid.across, low}}, {rule_mm, kRule});
  };
  const std::size_t half = laid.in_halves ? (laid.rows.size() + 1) / 2 : 0;
  const double beside = left() + laid.across + kBeside_mm;
  const auto put = [&](const Cells& cells, PdfFont font, double rule_mm) {
    put_at(left(), cells, font, rule_mm);
    y_ -= height_of(cells);
  };
  const auto begin = [&](bool again) {
    if (!table.caption.empty()) {
      skip(kLeading * kBody_mm);
      pdf_.text({left(), y_}, letters(table.caption) + (again ? " (continued)" : ""), PdfFont::Bold,
                kBody_mm);
      skip(1);
    }
    if (laid.headed && half > 0) put_at(beside, laid.head, PdfFont::Bold, 0.4);
    if (laid.headed) put(laid.head, PdfFont::Bold, 0.4);
  };
  if (half > 0) {
    need(laid.high_mm());
    begin(false);
    for (std::size_t i = 0; i < half; ++i) {
      const Cells* right = half + i < laid.rows.size() ? &laid.rows[half + i] : nullptr;
      const double high =
          std::max(height_of(laid.rows[i]), right != nullptr ? height_of(*right) : 0.0);
      if (right != nullptr) put_at(beside, *right, PdfFont::Plain, 0.12);
      put_at(left(), laid.rows[i], PdfFont::Plain, 0.12);
      y_ -= high;
    }
    skip(kAfter_mm);
    return;
  }
  need(laid.caption_mm + laid.head_mm + height_of(laid.rows[0]) + kAfter_mm);
  begin(false);
  for (const Cells& cells : laid.rows) {
    if (height_of(cells) > room() && !at_top()) {
      page();
      begin(true);
    }
    put(cells, PdfFont::Plain, 0.12);
  }
  skip(kAfter_mm);
}

}  // namespace hs::report
