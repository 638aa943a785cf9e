#include "web/native/window.h"

#define GLFW_INCLUDE_NONE
#include <GLES3/gl3.h>
#include <GLFW/glfw3.h>

#include <cmath>

#include "web/native/keys.h"

namespace hs::web::native {
namespace {

// One notch of a wheel is about 100 px in a browser.
constexpr double kNotch_px = 100;

// GLFW's bits of shift, control, alt and meta are those of Canvas::key.
constexpr int kModifiers = GLFW_MOD_SHIFT | GLFW_MOD_CONTROL | GLFW_MOD_ALT | GLFW_MOD_SUPER;
static_assert(GLFW_MOD_SHIFT == kShift && kModifiers == 15);

std::string last_error() {
  const char* words = nullptr;
  glfwGetError(&words);
  return words != nullptr ? words : "GLFW does not say why";
}

int cursor_shape(std::string_view css_name) {
  if (css_name == "pointer" || css_name == "grab") return GLFW_HAND_CURSOR;
  if (css_name == "ew-resize") return GLFW_HRESIZE_CURSOR;
  if (css_name == "move" || css_name == "grabbing") return GLFW_CROSSHAIR_CURSOR;
  return GLFW_ARROW_CURSOR;
}

}  // namespace

struct Window::Calls {
  static Window& of(GLFWwindow* window) {
    return *static_cast<Window*>(glfwGetWindowUserPointer(window));
  }
  static void moved(GLFWwindow* window, double x, double y) {
    Window& self = of(window);
    self.x_ = self.css(x);
    self.y_ = self.css(y);
    if (self.hands_ != nullptr) self.hands_->pointer(PointerKind::Move, self.x_, self.y_);
  }
  static void pressed(GLFWwindow* window, int button, int action, int) {
    Window& self = of(window);
    // A mouse has other buttons; only the main one acts.
    if (button != GLFW_MOUSE_BUTTON_LEFT || self.hands_ == nullptr) return;
    self.held_ = action == GLFW_PRESS;
    self.hands_->pointer(self.held_ ? PointerKind::Down : PointerKind::Up, self.x_, self.y_);
  }
  static void entered(GLFWwindow* window, int inside) {
    Window& self = of(window);
    if (inside != 0 || self.held_ || self.hands_ == nullptr) return;
    self.hands_->pointer(PointerKind::Cancel, self.x_, self.y_);
  }
  static void scrolled(GLFWwindow* window, double dx, double dy) {
    Window& self = of(window);
    if (self.hands_ == nullptr) return;
    self.hands_->wheel(static_cast<float>(-dx * kNotch_px), static_cast<float>(-dy * kNotch_px));
  }
  static void typed(GLFWwindow* window, int key, int scancode, int action, int mods) {
    Window& self = of(window);
    if (self.hands_ == nullptr) return;
    const char* name = glfwGetKeyName(key, scancode);
    char letter = name != nullptr && name[0] != '\0' && name[1] == '\0' ? name[0] : '\0';
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    self.hands_->key(code_of(key), letter, action != GLFW_RELEASE, mods & kModifiers);
  }
  static void focused(GLFWwindow* window, int has_focus) {
    Window& self = of(window);
    if (has_focus != 0 || self.hands_ == nullptr) return;
    self.held_ = false;
    self.hands_->blur();
  }
  static void resized(GLFWwindow* window, int, int) {
    if (of(window).hands_ != nullptr) of(window).hands_->resized();
  }
  static void scaled(GLFWwindow* window, float, float) {
    if (of(window).hands_ != nullptr) of(window).hands_->resized();
  }
  static void exposed(GLFWwindow* window) {
    if (of(window).hands_ != nullptr) of(window).hands_->exposed();
  }
};

bool Window::open(int css_width, int css_height, float scale, std::string& error) {
  forced_scale_ = scale;
  if (glfwInit() == 0) {
    error = last_error();
    return false;
  }
  // The shaders are OpenGL ES 3's, as in a browser.
  glfwWindowHint(GLFW_CLIENT_API, GLFW_OPENGL_ES_API);
  glfwWindowHint(GLFW_CONTEXT_CREATION_API, GLFW_EGL_CONTEXT_API);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  // Nothing here has depth: the scene draws into a surface of its own, smoothed before it is
  // copied.
  glfwWindowHint(GLFW_DEPTH_BITS, 0);
  glfwWindowHint(GLFW_STENCIL_BITS, 0);
  glfwWindowHint(GLFW_ALPHA_BITS, 0);
  glfwWindowHint(GLFW_SAMPLES, 0);
  glfwWindowHint(GLFW_SCALE_TO_MONITOR, scale > 0 ? GLFW_FALSE : GLFW_TRUE);
  const float units = scale > 0 ? scale : 1;
  const auto length = [units](int css) {
    return static_cast<int>(std::lround(static_cast<float>(css) * units));
  };
  window_ =
      glfwCreateWindow(length(css_width), length(css_height), "Hearthsight", nullptr, nullptr);
  if (window_ == nullptr) {
    error = last_error();
    return false;
  }
  glfwMakeContextCurrent(window_);
  glfwSwapInterval(1);
  const auto* version = reinterpret_cast<const char*>(glGetString(GL_VERSION));
  if (version == nullptr || !std::string_view(version).starts_with("OpenGL ES 3")) {
    error = std::string("no OpenGL ES 3, but ") + (version != nullptr ? version : "nothing");
    return false;
  }
  glfwSetWindowUserPointer(window_, this);
  glfwSetCursorPosCallback(window_, Calls::moved);
  glfwSetMouseButtonCallback(window_, Calls::pressed);
  glfwSetCursorEnterCallback(window_, Calls::entered);
  glfwSetScrollCallback(window_, Calls::scrolled);
  glfwSetKeyCallback(window_, Calls::typed);
  glfwSetWindowFocusCallback(window_, Calls::focused);
  glfwSetFramebufferSizeCallback(window_, Calls::resized);
  glfwSetWindowContentScaleCallback(window_, Calls::scaled);
  glfwSetWindowRefreshCallback(window_, Calls::exposed);
  return true;
}

Window::~Window() {
  if (window_ != nullptr) glfwDestroyWindow(window_);
  glfwTerminate();
}

WindowSize Window::size() const {
  WindowSize out;
  glfwGetFramebufferSize(window_, &out.pixel_width, &out.pixel_height);
  float across = 1, down = 1;
  glfwGetWindowContentScale(window_, &across, &down);
  out.scale = forced_scale_ > 0 ? forced_scale_ : across;
  out.width = static_cast<float>(out.pixel_width) / out.scale;
  out.height = static_cast<float>(out.pixel_height) / out.scale;
  return out;
}

// GLFW tells places in units of its own, which are device pixels on some systems and not on others.
float Window::css(double window_units) const {
  int units = 0, unused = 0;
  glfwGetWindowSize(window_, &units, &unused);
  const double share = units > 0 ? static_cast<double>(size().width) / units : 1;
  return static_cast<float>(window_units * share);
}

bool Window::closing() const { return glfwWindowShouldClose(window_) != 0; }
void Window::close() { glfwSetWindowShouldClose(window_, GLFW_TRUE); }

void Window::events(bool wait) {
  if (wait) {
    glfwWaitEvents();
  } else {
    glfwPollEvents();
  }
}

void Window::show_frame() { glfwSwapBuffers(window_); }
double Window::time_ms() const { return glfwGetTime() * 1000; }

void Window::cursor(std::string_view css_name) {
  if (css_name == cursor_name_) return;
  cursor_name_ = std::string(css_name);
  GLFWcursor* next = glfwCreateStandardCursor(cursor_shape(css_name));
  glfwSetCursor(window_, next);
  if (cursor_ != nullptr) glfwDestroyCursor(cursor_);
  cursor_ = next;
}

void Window::copy(const std::string& text) { glfwSetClipboardString(window_, text.c_str()); }

std::string Window::pasted() const {
  const char* text = glfwGetClipboardString(window_);
  return text != nullptr ? text : "";
}

}  // namespace hs::web::native
