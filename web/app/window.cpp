#include "web/app/window.h"

#define GLFW_INCLUDE_ES3
#include <GLFW/glfw3.h>
#include <emscripten.h>

#include <algorithm>
#include <cmath>

#include "imgui.h"
#include "imgui_impl_opengl3.h"

// GLFW's own way to set a size asks for full screen when it happens to be the screen's.
// clang-format off
EM_JS(void, canvas_set_size, (int width, int height), {
  const canvas = Module["canvas"];
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
});
EM_JS(void, canvas_watch_context, (), {
  Module["canvas"].addEventListener("webglcontextlost", () => Module["_hs_context_lost"]());
});
// clang-format on

namespace hs::web {
namespace {

constexpr const char* kGlsl = "#version 300 es";

int pixels(float css, float scale) {
  return std::max(1, static_cast<int>(std::lround(css * scale)));
}

}  // namespace

bool Window::start(float css_width, float css_height, float scale) {
  if (glfwInit() == 0) return false;
  glfwWindowHint(GLFW_CLIENT_API, GLFW_OPENGL_ES_API);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  // Nothing here has depth, and edges are smoothed by Dear ImGui itself.
  glfwWindowHint(GLFW_DEPTH_BITS, 0);
  glfwWindowHint(GLFW_STENCIL_BITS, 0);
  glfwWindowHint(GLFW_ALPHA_BITS, 0);
  glfwWindowHint(GLFW_SAMPLES, 0);
  window_ = glfwCreateWindow(pixels(css_width, scale), pixels(css_height, scale), "Hearthsight",
                             nullptr, nullptr);
  if (window_ == nullptr) return false;
  glfwMakeContextCurrent(window_);
  alive_ = ImGui_ImplOpenGL3_Init(kGlsl);
  if (!alive_) return false;
  canvas_watch_context();
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
