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

void Window::end_frame() {
  glViewport(0, 0, width_, height_);
  glClearColor(0, 0, 0, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

}  // namespace hs::web
