#include "web/app/window.h"

#include <GLES3/gl3.h>

#include <algorithm>
#include <cmath>
#include <cstdarg>

#include "imgui.h"
#include "imgui_impl_opengl3.h"

extern "C" {
// library_window.js
int canvas_start();
void canvas_set_size(int width, int height);

// Dear ImGui's backend reads the number in "#version 300 es" by C's sscanf, which brings all of C's
// reading of numbers, 2 KB of the download. The linker puts this in its place (--wrap): the first
// whole number of the text into the first place given.
int __wrap_sscanf(const char* text, const char* format, ...) {
  while (*text != '\0' && (*text < '0' || *text > '9')) ++text;
  if (*text == '\0') return 0;
  int number = 0;
  for (; *text >= '0' && *text <= '9'; ++text) number = number * 10 + (*text - '0');
  std::va_list places;
  va_start(places, format);
  *va_arg(places, int*) = number;
  va_end(places);
  return 1;
}

// The same backend asks the library for its state before every frame, to put it back afterwards. A
// browser answers some of these only when the graphics process has done all that was asked of it
// before: half of a frame's time (measured). Nothing but this canvas draws in its context, and what
// draws sets what it needs, so these are answers that may be put back.
void __wrap_glGetIntegerv(GLenum name, GLint* value) {
  switch (name) {
    case GL_VIEWPORT:
    case GL_SCISSOR_BOX:
      value[0] = value[1] = 0;
      value[2] = value[3] = 1;
      return;
    case GL_ACTIVE_TEXTURE:
      *value = GL_TEXTURE0;
      return;
    case GL_BLEND_SRC_RGB:
    case GL_BLEND_SRC_ALPHA:
      *value = GL_ONE;
      return;
    case GL_BLEND_EQUATION_RGB:
    case GL_BLEND_EQUATION_ALPHA:
      *value = GL_FUNC_ADD;
      return;
    case GL_MAX_TEXTURE_SIZE:
      *value = 2048;  // every WebGL 2 has as much: OpenGL ES 3.0, table 6.28
      return;
    default:
      *value = 0;  // nothing is bound
      return;
  }
}
GLboolean __wrap_glIsEnabled(GLenum) { return GL_FALSE; }
}

namespace hs::web {
namespace {

constexpr const char* kGlsl = "#version 300 es";

int pixels(float css, float scale) {
  return std::max(1, static_cast<int>(std::lround(css * scale)));
}

}  // namespace

bool Window::start(float css_width, float css_height, float scale) {
  started_ = canvas_start() != 0;
  if (!started_) return false;
  alive_ = ImGui_ImplOpenGL3_Init(kGlsl);
  if (!alive_) return false;
  resize(css_width, css_height, scale);
  return true;
}

void Window::lose() {
  if (alive_) ImGui_ImplOpenGL3_Shutdown();
  alive_ = false;
}

bool Window::restore() {
  lose();
  alive_ = ImGui_ImplOpenGL3_Init(kGlsl);
  return alive_;
}

void Window::resize(float css_width, float css_height, float scale) {
  width_ = pixels(css_width, scale);
  height_ = pixels(css_height, scale);
  canvas_set_size(width_, height_);
}

void Window::begin_frame() { ImGui_ImplOpenGL3_NewFrame(); }

void Window::end_frame(std::uint32_t backdrop) {
  const auto part = [backdrop](int shift) {
    return static_cast<float>((backdrop >> shift) & 0xFFU) / 255.0F;
  };
  glViewport(0, 0, width_, height_);
  glClearColor(part(16), part(8), part(0), 1);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

}  // namespace hs::web
