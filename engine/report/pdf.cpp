#include "engine/report/pdf.h"

#include "engine/base/number_text.h"
#include "engine/base/text.h"
#include "engine/report/pdf_packed.h"

namespace hs::report {
namespace {

// One unit of the format is 1/72 in (ISO 32000-1, 8.3.2.3).
constexpr double kUnitsPerMm = 72 / 25.4;

std::string number(double value) { return trimmed(value == 0 ? 0.0 : value, 3); }
std::string at(Spot p) { return number(p.x_mm) + ' ' + number(p.y_mm); }
std::string three(PdfColour c) {
  return trimmed(c.red / 255.0, 3) + ' ' + trimmed(c.green / 255.0, 3) + ' ' +
         trimmed(c.blue / 255.0, 3);
}

// A string of the format: what would end it, or is no plain letter, as a number (7.3.4.2).
std::string quoted(std::string_view letters) {
  std::string out = "(";
  for (const char letter : letters) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte == '(' || byte == ')' || byte == '\\' || byte < 32 || byte > 126) {
      out += '\\';
      for (const int shift : {6, 3, 0}) out += static_cast<char>('0' + ((byte >> shift) & 7));
    } else {
      out += letter;
    }
  }
  return out + ')';
}

// A text of the reader's own windows: UTF-16 as hexadecimal digits (7.9.2.2).
std::string spelled(std::string_view utf8) {
  std::string out = "<FEFF";
  const auto unit = [&out](std::uint32_t value) {
    for (const int shift : {12, 8, 4, 0}) out += "0123456789ABCDEF"[(value >> shift) & 15];
  };
  for (std::size_t i = 0; i < utf8.size();) {
    const CodePoint read = code_point_at(utf8, i);
    if (read.bytes == 0) {
      unit('?');
      ++i;
      continue;
    }
    if (read.value < 0x10000) {
      unit(read.value);
    } else {
      unit(0xD800 + ((read.value - 0x10000) >> 10));
      unit(0xDC00 + ((read.value - 0x10000) & 0x3FF));
    }
    i += read.bytes;
  }
  return out + '>';
}

std::string count(std::size_t n) { return std::to_string(n); }

// Objects of the file by number, and where each begins.
class File {
 public:
  File() { out_ = "%PDF-1.4\n%\xE2\xE3\xCF\xD3\n"; }
  void object(std::size_t number, std::string_view body) {
    if (starts_.size() <= number) starts_.resize(number + 1, 0);
    starts_[number] = out_.size();
    out_ += count(number) + " 0 obj\n";
    out_ += body;
    out_ += "\nendobj\n";
  }
  std::string take(std::size_t root, std::size_t info) {
    const std::size_t table = out_.size();
    out_ += "xref\n0 " + count(starts_.size()) + "\n0000000000 65535 f \n";
    for (std::size_t i = 1; i < starts_.size(); ++i) {
      const std::string place = count(starts_[i]);
      out_ += std::string(10 - place.size(), '0') + place + " 00000 n \n";
    }
    out_ += "trailer\n<< /Size " + count(starts_.size()) + " /Root " + count(root) + " 0 R /Info " +
            count(info) + " 0 R >>\nstartxref\n" + count(table) + "\n%%EOF\n";
    return std::move(out_);
  }

 private:
  std::string out_;
  std::vector<std::size_t> starts_;
};

std::string stream(const std::string& marks) {
  const std::string packed = pdf_packed(marks);
  return "<< /Length " + count(packed.size()) + " /Filter /FlateDecode >>\nstream\n" + packed +
         "\nendstream";
}

}  // namespace

PdfColour pdf_colour(std::string_view hex) {
  if (hex.size() != 7 || hex[0] != '#') return {};
  const auto digit = [&](std::size_t i) {
    const char c = hex[i];
    return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : 0;
  };
  const auto part = [&](std::size_t i) {
    return static_cast<std::uint8_t>(16 * digit(i) + digit(i + 1));
  };
  return {part(1), part(3), part(5)};
}

void Pdf::add_page(double width_mm, double height_mm) {
  at_ = pages_.size();
  // From here on a unit is a millimetre; corners are round as in every drawing of ours.
  pages_.push_back({width_mm, height_mm, "2.834646 0 0 2.834646 0 0 cm 1 j\n"});
}

void Pdf::bookmark(std::string_view title) { bookmarks_.push_back({std::string(title), at_}); }

void Pdf::path(std::span<const Spot> points) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    marks() += at(points[i]) + (i == 0 ? " m " : " l ");
  }
}

void Pdf::pen(const PdfStroke& stroke) {
  marks() += number(stroke.wide_mm) + " w " + three(stroke.colour) + " RG ";
  marks() += stroke.dash_mm > 0
                 ? '[' + number(stroke.dash_mm) + ' ' + number(stroke.gap_mm) + "] 0 d "
                 : "[] 0 d ";
}

void Pdf::line(std::span<const Spot> points, const PdfStroke& stroke, bool closed) {
  if (points.size() < 2) return;
  pen(stroke);
  path(points);
  marks() += closed ? "s\n" : "S\n";
}

void Pdf::lines(std::span<const Spot> ends, const PdfStroke& stroke) {
  if (ends.size() < 2) return;
  pen(stroke);
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2) path(ends.subspan(i, 2));
  marks() += "S\n";
}

void Pdf::area(std::span<const Spot> points, PdfColour colour) {
  if (points.size() < 3) return;
  marks() += three(colour) + " rg ";
  path(points);
  marks() += "h f\n";
}

void Pdf::box(const Box& box, PdfColour colour) { boxes({&box, 1}, colour); }

void Pdf::boxes(std::span<const Box> all, PdfColour colour) {
  marks() += three(colour) + " rg ";
  for (const Box& each : all) {
    marks() += at({each.left_mm, each.bottom_mm}) + ' ' + number(each.right_mm - each.left_mm) +
               ' ' + number(each.top_mm - each.bottom_mm) + " re ";
  }
  marks() += "f\n";
}

void Pdf::letters(Spot place, std::string_view letters, PdfFont font, double size_mm) {
  marks() += std::string(font == PdfFont::Bold ? "/B " : "/P ") + number(size_mm) + " Tf " +
             at(place) + " Td " + quoted(letters) + " Tj ET\n";
}

void Pdf::text(Spot place, std::string_view words, PdfFont font, double size_mm, PdfColour colour) {
  if (words.empty()) return;
  marks() += "BT 0 Tr " + three(colour) + " rg ";
  letters(place, words, font, size_mm);
}

void Pdf::text_on(Spot place, std::string_view words, PdfFont font, double size_mm,
                  PdfColour colour, PdfColour rim) {
  if (words.empty()) return;
  pen({0.22 * size_mm, rim});
  marks() += "BT 1 Tr ";
  letters(place, words, font, size_mm);
  text(place, words, font, size_mm, colour);
}

std::string Pdf::take() {
  // 1 catalogue, 2 pages, 3 information, 4 and 5 typefaces, 6 bookmarks; then two for each page,
  // then one for each bookmark.
  constexpr std::size_t kFirstPage = 7;
  const std::size_t first_mark = kFirstPage + 2 * pages_.size();
  const auto page = [](std::size_t i) { return count(kFirstPage + 2 * i) + " 0 R"; };
  const auto mark = [&](std::size_t i) { return count(first_mark + i) + " 0 R"; };
  File file;
  file.object(1, bookmarks_.empty()
                     ? "<< /Type /Catalog /Pages 2 0 R >>"
                     : "<< /Type /Catalog /Pages 2 0 R /Outlines 6 0 R /PageMode /UseOutlines >>");
  std::string kids;
  for (std::size_t i = 0; i < pages_.size(); ++i) kids += (i > 0 ? " " : "") + page(i);
  file.object(2, "<< /Type /Pages /Kids [" + kids + "] /Count " + count(pages_.size()) + " >>");
  file.object(3, "<< /Title " + spelled(title_) + " /Producer (Hearthsight) >>");
  for (const auto& [number, name] : {std::pair{4, "Helvetica"}, std::pair{5, "Helvetica-Bold"}}) {
    file.object(static_cast<std::size_t>(number), "<< /Type /Font /Subtype /Type1 /BaseFont /" +
                                                      std::string(name) +
                                                      " /Encoding /WinAnsiEncoding >>");
  }
  file.object(6, bookmarks_.empty() ? "<< /Type /Outlines >>"
                                    : "<< /Type /Outlines /First " + mark(0) + " /Last " +
                                          mark(bookmarks_.size() - 1) + " /Count " +
                                          count(bookmarks_.size()) + " >>");
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const Page& one = pages_[i];
    const std::size_t number = kFirstPage + 2 * i;
    file.object(number, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 " +
                            trimmed(one.width_mm * kUnitsPerMm, 3) + ' ' +
                            trimmed(one.height_mm * kUnitsPerMm, 3) +
                            "] /Resources << /Font << /P 4 0 R /B 5 0 R >> >> /Contents " +
                            count(number + 1) + " 0 R >>");
    file.object(number + 1, stream(one.marks));
  }
  for (std::size_t i = 0; i < bookmarks_.size(); ++i) {
    std::string body = "<< /Title " + spelled(bookmarks_[i].title) + " /Parent 6 0 R";
    if (i > 0) body += " /Prev " + mark(i - 1);
    if (i + 1 < bookmarks_.size()) body += " /Next " + mark(i + 1);
    file.object(first_mark + i, body + " /Dest [" + page(bookmarks_[i].page) + " /Fit] >>");
  }
  return file.take(1, 3);
}

}  // namespace hs::report
