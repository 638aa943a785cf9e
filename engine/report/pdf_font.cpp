#include "engine/report/pdf_font.h"

#include <algorithm>
#include <iterator>

#include "engine/base/text.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

// Thousandths of the size, for the bytes 32 to 255. Nought: the encoding has nothing there.
constexpr std::uint16_t kPlain[] = {
    278,  278, 355, 556, 556, 889,  667,  191,  333, 333,  389, 584, 278,  333, 278, 278,  // 32
    556,  556, 556, 556, 556, 556,  556,  556,  556, 556,  278, 278, 584,  584, 584, 556,  // 48
    1015, 667, 667, 722, 722, 667,  611,  778,  722, 278,  500, 667, 556,  833, 722, 778,  // 64
    667,  778, 722, 667, 611, 722,  667,  944,  667, 667,  611, 278, 278,  278, 469, 556,  // 80
    333,  556, 556, 500, 556, 556,  278,  556,  556, 222,  222, 500, 222,  833, 556, 556,  // 96
    556,  556, 333, 500, 278, 556,  500,  722,  500, 500,  500, 334, 260,  334, 584, 0,    // 112
    556,  0,   222, 556, 333, 1000, 556,  556,  333, 1000, 667, 333, 1000, 0,   611, 0,    // 128
    0,    222, 222, 333, 333, 350,  556,  1000, 333, 1000, 500, 333, 944,  0,   500, 667,  // 144
    278,  333, 556, 556, 556, 556,  260,  556,  333, 737,  370, 556, 584,  333, 737, 333,  // 160
    400,  584, 333, 333, 333, 556,  537,  278,  333, 333,  365, 556, 834,  834, 834, 611,  // 176
    667,  667, 667, 667, 667, 667,  1000, 722,  667, 667,  667, 667, 278,  278, 278, 278,  // 192
    722,  722, 778, 778, 778, 778,  778,  584,  778, 722,  722, 722, 722,  667, 667, 611,  // 208
    556,  556, 556, 556, 556, 556,  889,  500,  556, 556,  556, 556, 278,  278, 278, 278,  // 224
    556,  556, 556, 556, 556, 556,  556,  584,  611, 556,  556, 556, 556,  500, 556, 500,  // 240
};
constexpr std::uint16_t kBold[] = {
    278, 333, 474, 556, 556, 889,  722,  238,  333, 333,  389, 584, 278,  333, 278, 278,  // 32
    556, 556, 556, 556, 556, 556,  556,  556,  556, 556,  333, 333, 584,  584, 584, 611,  // 48
    975, 722, 722, 722, 722, 667,  611,  778,  722, 278,  556, 722, 611,  833, 722, 778,  // 64
    667, 778, 722, 667, 611, 722,  667,  944,  667, 667,  611, 333, 278,  333, 584, 556,  // 80
    333, 556, 611, 556, 611, 556,  333,  611,  611, 278,  278, 556, 278,  889, 611, 611,  // 96
    611, 611, 389, 556, 333, 611,  556,  778,  556, 556,  500, 389, 280,  389, 584, 0,    // 112
    556, 0,   278, 556, 500, 1000, 556,  556,  333, 1000, 667, 333, 1000, 0,   611, 0,    // 128
    0,   278, 278, 500, 500, 350,  556,  1000, 333, 1000, 556, 333, 944,  0,   500, 667,  // 144
    278, 333, 556, 556, 556, 556,  280,  556,  333, 737,  370, 556, 584,  333, 737, 333,  // 160
    400, 584, 333, 333, 333, 611,  556,  278,  333, 333,  365, 556, 834,  834, 834, 611,  // 176
    722, 722, 722, 722, 722, 722,  1000, 722,  667, 667,  667, 667, 278,  278, 278, 278,  // 192
    722, 722, 778, 778, 778, 778,  778,  584,  778, 722,  722, 722, 722,  667, 667, 611,  // 208
    556, 556, 556, 556, 556, 556,  889,  556,  556, 556,  556, 556, 278,  278, 278, 278,  // 224
    611, 611, 611, 611, 611, 611,  611,  584,  611, 611,  611, 611, 611,  556, 611, 556,  // 240
};
static_assert(std::size(kPlain) == 224 && std::size(kBold) == 224);

// The bytes 128 to 159, as code points. Nought: none.
constexpr std::uint16_t kMiddle[] = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};
static_assert(std::size(kMiddle) == 32);

// Letters of Latin Extended-A without their marks, U+0100 to U+017F.
constexpr std::string_view kUnmarked =
    "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIiIiJjKkkLlLlLlLlLlNnNnNnnNnOoOoOoOoRrRrRrSsSs"
    "Ss"
    "SsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs";
static_assert(kUnmarked.size() == 128);

char letter_of(char32_t point, std::size_t& lost) {
  if (point < 32 || point == 127) return ' ';
  if (point < 127 || (point >= 160 && point < 256)) {
    return static_cast<char>(static_cast<unsigned char>(point));
  }
  for (std::size_t i = 0; i < std::size(kMiddle); ++i) {
    if (kMiddle[i] != 0 && kMiddle[i] == point) return static_cast<char>(128 + i);
  }
  if (point >= 0x100 && point < 0x180) return kUnmarked[point - 0x100];
  if (point == 0x2212 || point == 0x2010 || point == 0x2011) return '-';
  ++lost;
  return '?';
}

double thousandths(std::string_view letters, PdfFont font) {
  const std::uint16_t* widths = font == PdfFont::Bold ? kBold : kPlain;
  double sum = 0;
  for (const char letter : letters) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte >= 32) sum += widths[byte - 32];
  }
  return sum;
}

}  // namespace

std::string pdf_letters(std::string_view utf8, std::size_t* lost) {
  const std::string plain = plain_marks(utf8);
  std::string out;
  out.reserve(plain.size());
  std::size_t unknown = 0;
  for (std::size_t at = 0; at < plain.size();) {
    const CodePoint read = code_point_at(plain, at);
    if (read.bytes == 0) {
      out += '?';
      ++unknown;
      ++at;
      continue;
    }
    out += letter_of(read.value, unknown);
    at += read.bytes;
  }
  if (lost != nullptr) *lost += unknown;
  return out;
}

double pdf_width_mm(std::string_view letters, PdfFont font, double size_mm) {
  return thousandths(letters, font) * size_mm / 1000;
}

std::vector<std::string> pdf_lines(std::string_view letters, PdfFont font, double size_mm,
                                   double width_mm) {
  std::vector<std::string> lines;
  const auto fits = [&](std::string_view text) {
    return pdf_width_mm(text, font, size_mm) <= width_mm;
  };
  std::string line;
  std::size_t at = 0;
  while (at < letters.size()) {
    const std::size_t space = std::min(letters.find(' ', at), letters.size());
    std::string_view word = letters.substr(at, space - at);
    at = space + 1;
    if (word.empty()) continue;
    if (!line.empty() && fits(line + ' ' + std::string(word))) {
      line += ' ';
      line += word;
      continue;
    }
    if (!line.empty()) lines.push_back(std::move(line));
    while (!fits(word)) {
      std::size_t keep = 1;
      while (keep < word.size() && fits(word.substr(0, keep + 1))) ++keep;
      if (keep == word.size()) break;  // one letter, wider than the line
      lines.emplace_back(word.substr(0, keep));
      word.remove_prefix(keep);
    }
    line = word;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace hs::report
