#include "engine/share/qr.h"

#include <qrcodegen.h>

#include <array>
#include <cstdint>

namespace hs::share {
namespace {

constexpr int kMostVersion = 25;
using Buffer = std::array<std::uint8_t, qrcodegen_BUFFER_LEN_FOR_VERSION(kMostVersion)>;

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

std::vector<QrRun> qr_runs(const std::vector<std::string>& rows) {
  std::vector<QrRun> runs;
  for (std::size_t y = 0; y < rows.size(); ++y) {
    const std::string& row = rows[y];
    for (std::size_t x = 0; x < row.size();) {
      std::size_t end = x;
      while (end < row.size() && row[end] == '#') ++end;
      if (end > x) {
        runs.push_back({static_cast<int>(x), static_cast<int>(y), static_cast<int>(end - x)});
      }
      x = end + 1;
    }
  }
  return runs;
}

std::string qr_path(const std::vector<std::string>& rows) {
  std::string path;
  // To each run's start, along its upper edge, down, back.
  for (const QrRun& run : qr_runs(rows)) {
    const std::string length = std::to_string(run.length);
    path += 'M' + std::to_string(run.x + kQuietModules) + ' ' +
            std::to_string(run.y + kQuietModules) + 'h' + length + "v1h-" + length + 'z';
  }
  return path;
}

std::string qr_svg(std::string_view text) {
  const std::vector<std::string> rows = qr_rows(text);
  if (rows.empty()) return {};
  const std::string side = std::to_string(qr_side(rows));
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + side + ' ' + side +
         "\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h" + side + 'v' + side +
         "H0z\"/><path d=\"" + qr_path(rows) + "\"/></svg>";
}

}  // namespace hs::share
