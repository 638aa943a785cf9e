#pragma once
// A window of the desktop with an OpenGL ES 3 context, through GLFW: what web/app/window.h and the
// page's script are in a browser. Everything it tells is in CSS px: device pixels by the content
// scale.

#include <string>
#include <string_view>

#include "web/app/canvas.h"

struct GLFWwindow;
struct GLFWcursor;

namespace hs::web::native {

// Who listens to the window.
class Hands {
 public:
  virtual void pointer(PointerKind kind, float x, float y) = 0;
  virtual void wheel(float dx, float dy) = 0;  // browser's px, down and right positive
  // `code`: KeyboardEvent.code, empty where it has none. `letter`: what the key writes on this
  // keyboard's layout, lower case, 0: nothing. Modifiers as for Canvas::key.
  virtual void key(std::string_view code, char letter, bool down, int modifiers) = 0;
  virtual void blur() = 0;
  virtual void resized() = 0;
  virtual void exposed() = 0;  // what was drawn is gone

 protected:
  ~Hands() = default;
};

struct WindowSize {
  float width = 1, height = 1;            // CSS px
  float scale = 1;                        // device pixels in one
  int pixel_width = 0, pixel_height = 0;  // 0: minimised
};

class Window {
 public:
  Window() = default;
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  // scale 0: the monitor's. False: `error` says why there is no window with OpenGL ES 3.
  bool open(int css_width, int css_height, float scale, std::string& error);
  void listen(Hands* hands) { hands_ = hands; }

  WindowSize size() const;
  bool closing() const;
  void close();
  // Takes the events there are; waits for one where nothing is to be drawn.
  void events(bool wait);
  void show_frame();  // what was drawn becomes what is seen
  double time_ms() const;
  void cursor(std::string_view css_name);
  void copy(const std::string& text);
  std::string pasted() const;

 private:
  struct Calls;  // what GLFW calls back
  float css(double window_units) const;

  GLFWwindow* window_ = nullptr;
  GLFWcursor* cursor_ = nullptr;
  std::string cursor_name_ = "default";
  float forced_scale_ = 0;
  Hands* hands_ = nullptr;
  bool held_ = false;  // the main button is down
  float x_ = 0, y_ = 0;
};

}  // namespace hs::web::native
