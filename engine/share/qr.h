#pragma once
// A link as a square that a phone's camera reads, off a screen and off paper.
//
// The modules are those of ISO/IEC 18004, made by the pinned generator; this file chooses how dense
// the square may become and draws it.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace hs::share {

// Version 25 at the lowest level of correction, 117 modules on a side: 63 mm on paper, its quiet
// zone in, at half a millimetre a module, about 3 CSS px a module across a phone. Beyond that a
// hand-held camera gives up (our judgement); the link or a file is then the way.
inline constexpr std::size_t kMostQrBytes = 1273;  // ISO/IEC 18004, table 7, 25-L (from memory)
inline constexpr int kQuietModules = 4;            // ISO/IEC 18004, quiet zone (from memory)

// The whole picture as SVG text, one unit a module, black on white with its quiet zone. The highest
// level of correction that costs no larger square is taken. Empty where the text is longer than
// kMostQrBytes or empty.
std::string qr_svg(std::string_view text);
// The modules themselves, without the quiet zone: a row for each, '#' dark, '.' light. Empty where
// qr_svg() is.
std::vector<std::string> qr_rows(std::string_view text);

// Dark modules side by side in one row of qr_rows(): whoever draws them draws these, so that no
// seams show between modules.
struct QrRun {
  int x = 0, y = 0;  // its first module, from the left and from the top
  int length = 0;
};
std::vector<QrRun> qr_runs(const std::vector<std::string>& rows);

// The runs as the data of an SVG path, one unit a module, beginning a quiet zone from the corner.
std::string qr_path(const std::vector<std::string>& rows);
// The side of that picture, both quiet zones in.
constexpr std::size_t qr_side(const std::vector<std::string>& rows) {
  return rows.size() + 2 * static_cast<std::size_t>(kQuietModules);
}

}  // namespace hs::share
