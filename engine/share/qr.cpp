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

std::string qr_svg(std::string_view text) {
  if (text.empty() || text.size() > kMostQrBytes) return {};
  const std::string ended(text);
  Buffer work{}, code{};
  if (!qrcodegen_encodeText(ended.c_str(), work.data(), code.data(), qrcodegen_Ecc_LOW,
                            qrcodegen_VERSION_MIN, kMostVersion, qrcodegen_Mask_AUTO, true)) {
    return {};
  }
  const int modules = qrcodegen_getSize(code.data());
  const std::string side = std::to_string(modules + 2 * kQuietModules);
  std::string path;
  for (int y = 0; y < modules; ++y) {
    for (int x = 0; x < modules;) {
      int end = x;
      while (end < modules && qrcodegen_getModule(code.data(), end, y)) ++end;
      if (end > x) append_run(path, x, y, end - x);
      x = end + 1;
    }
  }
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + side + ' ' + side +
         "\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h" + side + 'v' + side +
         "H0z\"/><path d=\"" + path + "\"/></svg>";
}

}  // namespace hs::share
