#include "engine/base/text.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace hs {
namespace {

bool is_continuation(unsigned char byte) { return (byte & 0xC0U) == 0x80U; }

constexpr bool is_surrogate(std::uint32_t value) { return value >= 0xD800 && value <= 0xDFFF; }

}  // namespace

CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto lead = static_cast<unsigned char>(text[at]);
  if (lead < 0x80) return {lead, 1};
  std::size_t bytes = 0;
  std::uint32_t value = 0;
  std::uint32_t lowest = 0;  // smaller values have a shorter form, so this one is overlong
  if ((lead & 0xE0U) == 0xC0U) {
    bytes = 2, value = lead & 0x1FU, lowest = 0x80;
  } else if ((lead & 0xF0U) == 0xE0U) {
    bytes = 3, value = lead & 0x0FU, lowest = 0x800;
  } else if ((lead & 0xF8U) == 0xF0U) {
    bytes = 4, value = lead & 0x07U, lowest = 0x10000;
  } else {
    return {};
  }
  if (text.size() - at < bytes) return {};
  for (std::size_t i = 1; i < bytes; ++i) {
    const auto byte = static_cast<unsigned char>(text[at + i]);
    if (!is_continuation(byte)) return {};
    value = (value << 6U) | (byte & 0x3FU);
  }
  if (value < lowest || value > 0x10FFFF || is_surrogate(value)) return {};
  return {value, bytes};
}

void append_code_point(std::string& text, std::uint32_t value) {
  if (value > 0x10FFFF || is_surrogate(value)) value = 0xFFFD;
  const auto tail = [&](unsigned shift) {
    text.push_back(static_cast<char>(0x80U | ((value >> shift) & 0x3FU)));
  };
  if (value < 0x80) {
    text.push_back(static_cast<char>(value));
  } else if (value < 0x800) {
    text.push_back(static_cast<char>(0xC0U | (value >> 6U)));
    tail(0);
  } else if (value < 0x10000) {
    text.push_back(static_cast<char>(0xE0U | (value >> 12U)));
    tail(6), tail(0);
  } else {
    text.push_back(static_cast<char>(0xF0U | (value >> 18U)));
    tail(12), tail(6), tail(0);
  }
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0) return false;
    at += point.bytes;
  }
  return true;
}

bool is_control(std::uint32_t c) {
  return c < 0x20 || (c >= 0x7F && c <= 0x9F) || c == 0x200E || c == 0x200F ||
         (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0xFEFF;
}

bool is_printable(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0 || is_control(point.value)) return false;
    at += point.bytes;
  }
  return true;
}

std::string_view trimmed_ends(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r\n";
  const std::size_t first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::string shortened(std::string_view text, std::size_t most) {
  constexpr std::size_t kDots = 3;
  std::string out;
  std::size_t count = 0;
  std::size_t cut = 0;  // bytes of `out` that leave room for the dots
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    const std::size_t step = std::max<std::size_t>(point.bytes, 1);
    if (point.bytes == 0 || !is_control(point.value)) {
      if (count == most) {
        out.resize(cut);
        out += "...";
        return out;
      }
      if (point.bytes == 0) {
        out.push_back('?');
      } else {
        out += text.substr(at, step);
      }
      ++count;
      if (count + kDots <= most) cut = out.size();
    }
    at += step;
  }
  return out;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row[b.size()];
}

}  // namespace hs
