#include "web/native/picture_file.h"

#include <GLES3/gl3.h>

#include <cstdio>
#include <string>
#include <vector>

namespace hs::web::native {

bool write_picture(const std::string& file, int width, int height) {
  const auto columns = static_cast<std::size_t>(width), rows = static_cast<std::size_t>(height);
  std::vector<unsigned char> pixels(4 * columns * rows);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
  std::string out = "P6\n" + std::to_string(width) + " " + std::to_string(height) + "\n255\n";
  out.reserve(out.size() + 3 * columns * rows);
  // OpenGL's lowest row comes first, a file's highest.
  for (std::size_t row = rows; row-- > 0;) {
    for (std::size_t column = 0; column < columns; ++column) {
      const std::size_t at = 4 * (row * columns + column);
      for (std::size_t part = 0; part < 3; ++part) out += static_cast<char>(pixels[at + part]);
    }
  }
  std::FILE* opened = std::fopen(file.c_str(), "wb");
  if (opened == nullptr) return false;
  const bool written = std::fwrite(out.data(), 1, out.size(), opened) == out.size();
  const bool closed = std::fclose(opened) == 0;
  if (!written || !closed) std::remove(file.c_str());
  return written && closed;
}

}  // namespace hs::web::native
