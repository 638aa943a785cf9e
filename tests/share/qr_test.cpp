#include "engine/share/qr.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"

using hs::share::kMostQrBytes;
using hs::share::qr_svg;

namespace {

// The picture as a grid of modules, its quiet zone in it, read from the SVG text alone.
struct Grid {
  std::size_t side = 0;
  std::vector<bool> dark;
  bool at(std::size_t x, std::size_t y) const { return dark[y * side + x]; }
};

std::size_t number_at(const std::string& text, std::size_t& at) {
  std::size_t value = 0;
  while (text[at] >= '0' && text[at] <= '9') {
    value = value * 10 + static_cast<std::size_t>(text[at++] - '0');
  }
  return value;
}

Grid grid_of(const std::string& svg) {
  Grid grid;
  std::size_t at = svg.find("viewBox=\"0 0 ") + 13;
  grid.side = number_at(svg, at);
  grid.dark.assign(grid.side * grid.side, false);
  at = svg.find("<path d=\"") + 9;
  while (svg[at] == 'M') {
    const std::size_t x = number_at(svg, ++at);
    const std::size_t y = number_at(svg, ++at);
    const std::size_t length = number_at(svg, ++at);
    for (std::size_t i = 0; i < length; ++i) grid.dark.at(y * grid.side + x + i) = true;
    at = svg.find('z', at) + 1;
  }
  return grid;
}

std::size_t modules(std::size_t bytes) { return grid_of(qr_svg(std::string(bytes, 'a'))).side - 8; }

}  // namespace

TEST_CASE("a square is as small as its text allows", "[share][qr]") {
  // ISO/IEC 18004:2015, table 7: bytes that versions 1, 2, 10 and 25 hold at level L (from memory);
  // a version has 17 + 4 version modules on a side.
  CHECK(modules(17) == 21);
  CHECK(modules(18) == 25);
  CHECK(modules(32) == 25);
  CHECK(modules(33) == 29);
  CHECK(modules(271) == 57);
  CHECK(modules(272) == 61);
  CHECK(modules(1273) == 117);
}

TEST_CASE("what is too long for a hand-held camera, or nothing, has no square", "[share][qr]") {
  CHECK_FALSE(qr_svg(std::string(kMostQrBytes, 'a')).empty());
  CHECK(qr_svg(std::string(kMostQrBytes + 1, 'a')).empty());
  CHECK(qr_svg("").empty());
}

TEST_CASE("a square has its finders, its timing, its format and four light modules around it",
          "[share][qr]") {
  const Grid grid = grid_of(qr_svg("https://example.org/station/#avSqNZoN3ZdCGTSIZeAGv6jDi4liXhP"));
  const std::size_t q = 4, n = grid.side - 8;
  for (std::size_t i = 0; i < grid.side; ++i) {
    for (std::size_t edge = 0; edge < q; ++edge) {
      CHECK_FALSE((grid.at(i, edge) || grid.at(edge, i)));
      CHECK_FALSE((grid.at(i, grid.side - 1 - edge) || grid.at(grid.side - 1 - edge, i)));
    }
  }
  // ISO/IEC 18004, the finder: rings of 7, 5 and 3 modules, dark, light, dark (from memory).
  for (const auto& [left, top] :
       {std::pair{q, q}, std::pair{q + n - 7, q}, std::pair{q, q + n - 7}}) {
    for (std::size_t y = 0; y < 7; ++y) {
      for (std::size_t x = 0; x < 7; ++x) {
        const bool outer = x == 0 || y == 0 || x == 6 || y == 6;
        const bool inner = x >= 2 && x <= 4 && y >= 2 && y <= 4;
        CHECK(grid.at(left + x, top + y) == (outer || inner));
      }
    }
  }
  for (std::size_t i = 8; i < n - 8; ++i) {
    CHECK(grid.at(q + i, q + 6) == (i % 2 == 0));
    CHECK(grid.at(q + 6, q + i) == (i % 2 == 0));
  }
  // The format's 15 bits beside the first finder, under the mask 0x5412, are a word of the BCH code
  // of 0x537: nothing remains (ISO/IEC 18004, format information; from memory).
  std::uint32_t format = 0;
  for (std::size_t i = 0; i < 15; ++i) {
    const std::size_t x = i < 6 ? i : i < 8 ? i + 1 : 8;
    const std::size_t y = i < 8 ? 8 : i == 8 ? 7 : 14 - i;
    format = format << 1U | (grid.at(q + x, q + y) ? 1U : 0U);
  }
  format ^= 0x5412U;
  for (unsigned bit = 15; bit-- > 10;) {
    if ((format >> bit & 1U) != 0) format ^= 0x537U << (bit - 10);
  }
  CHECK(format == 0);
}
