#include "engine/share/qr.h"

#include <qrcodegen.h>

#include <array>
#include <cstdint>

namespace hs::share {
namespace {

constexpr int kMostVersion = 25;
using Buffer = std::array<std::uint8_t, qrcodegen_BUFFER_LEN_FOR_VERSION(kMostVersion)>;

// A run of dark modules: to its start, along its upper edge, down, back.
void append_run(std::string& path, int x, int y, int length) {
  path += 'M' + std::to_string(x + kQuietModules) + ' ' + std::to_string(y + kQuietModules) + 'h' +
          std::to_string(length) + "v1h-" + std::to_string(length) + 'z';
}

}  // namespace

std::vector<std::string> qr_rows(std::string_view text) {
  if (text.empty() || text.size() > kMostQrBytes) return {};
  const std::string ended(text);
  Buffer work{}, code{};
  if (!qrcodegen_encodeText(ended.c_str(), work.data(), code.data(), qrcodegen_Ecc_LOW,
                            qrcodegen_VERSION_MIN, kMostVersion, qrcodegen_Mask_AUTO, true)) {
    return {};
  }
  const int modules = qrcodegen_getSize(code.data());
  std::vector<std::string> rows(static_cast<std::size_t>(modules));
  for (int y = 0; y < modules; ++y) {
    std::string& row = rows[static_cast<std::size_t>(y)];
    for (int x = 0; x < modules; ++x) row += qrcodegen_getModule(code.data(), x, y) ? '#' : '.';
  }
  return rows;
}

std::string qr_svg(std::string_view text) {
  const std::vector<std::string> rows = qr_rows(text);
  if (rows.empty()) return {};
  const std::string side = std::to_string(rows.size() + 2 * kQuietModules);
  std::string path;
  for (std::size_t y = 0; y < rows.size(); ++y) {
    for (std::size_t x = 0; x < rows.size();) {
      std::size_t end = x;
      while (end < rows.size() && rows[y][end] == '#') ++end;
      if (end > x) {
        append_run(path, static_cast<int>(x), static_cast<int>(y), static_cast<int>(end - x));
      }
      x = end + 1;
    }
  }
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + side + ' ' + side +
         "\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h" + side + 'v' + side +
         "H0z\"/><path d=\"" + path + "\"/></svg>";
}

}  // namespace hs::share
