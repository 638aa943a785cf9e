// The smallest honest page of the same make as ours: Dear ImGui over GLFW and WebGL 2, one window
// with a text, a button and a slider, and the regular face of our font, because the toolkit's
// built-in one (about 6 KB less of the download) has no degree, fraction or accent.
// scripts/bench weighs and times the real page against it.
#define GLFW_INCLUDE_ES3
#include <GLFW/glfw3.h>
#include <emscripten.h>

#include <string_view>

#include "font_sans.h"
#include "imgui.h"
#include "imgui_impl_glfw.h"
#include "imgui_impl_opengl3.h"

namespace {

EM_JS(void, mark_ready, (), { performance.mark("hearthsight:ready"); });

GLFWwindow* window = nullptr;
int frames = 0;
float value = 0.5F;

void draw_frame() {
  glfwPollEvents();
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  ImGui::NewFrame();
  ImGui::Begin("Empty");
  ImGui::TextUnformatted("Nothing but a window.");
  ImGui::Button("A button");
  ImGui::SliderFloat("A slider", &value, 0.0F, 1.0F);
  ImGui::End();
  ImGui::Render();
  int width = 0;
  int high = 0;
  glfwGetFramebufferSize(window, &width, &high);
  glViewport(0, 0, width, high);
  glClearColor(1.0F, 1.0F, 1.0F, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  glfwSwapBuffers(window);
  // A window's first frame is measured and hidden; the second one shows it.
  if (++frames == 2) mark_ready();
}

}  // namespace

int main() {
  if (glfwInit() == 0) return 1;
  glfwWindowHint(GLFW_CLIENT_API, GLFW_OPENGL_ES_API);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  window = glfwCreateWindow(400, 600, "Empty", nullptr, nullptr);
  if (window == nullptr) return 1;
  glfwMakeContextCurrent(window);
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  const std::string_view font = hearthsight::embedded::font_sans();
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<char*>(font.data()),
                                             static_cast<int>(font.size()), 16.0F, &config);
  ImGui_ImplGlfw_InitForOpenGL(window, true);
  ImGui_ImplGlfw_InstallEmscriptenCallbacks(window, "#canvas");
  ImGui_ImplOpenGL3_Init("#version 300 es");
  emscripten_set_main_loop(draw_frame, 0, 0);
  return 0;
}
