// The smallest honest page of the same make as ours: Dear ImGui over GLFW and WebGL 2, one window.
// scripts/bench weighs and times the real page against it.
#define GLFW_INCLUDE_ES3
#include <GLFW/glfw3.h>
#include <emscripten.h>

#include "imgui.h"
#include "imgui_impl_glfw.h"
#include "imgui_impl_opengl3.h"

namespace {

EM_JS(void, mark_ready, (), { performance.mark("hearthsight:ready"); });

GLFWwindow* window = nullptr;
int frames = 0;

void draw_frame() {
  glfwPollEvents();
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  ImGui::NewFrame();
  ImGui::Begin("Empty");
  ImGui::TextUnformatted("Nothing but a window.");
  ImGui::Button("A button");
  ImGui::End();
  ImGui::Render();
  int width = 0;
  int height = 0;
  glfwGetFramebufferSize(window, &width, &height);
  glViewport(0, 0, width, height);
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
  ImGui_ImplGlfw_InitForOpenGL(window, true);
  ImGui_ImplGlfw_InstallEmscriptenCallbacks(window, "#canvas");
  ImGui_ImplOpenGL3_Init("#version 300 es");
  emscripten_set_main_loop(draw_frame, 0, 0);
  return 0;
}
