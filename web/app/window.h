#pragma once
// The surface that the canvas is drawn on: the page's own WebGL 2 context (library_window.js),
// which Dear ImGui's OpenGL backend draws on. Everything that GL holds can be lost at any moment
// and made again.

#include <cstdint>

namespace hs::web {

class Window {
 public:
  // False: no WebGL 2. A Dear ImGui context must exist.
  bool start(float css_width, float css_height, float scale);
  bool started() const { return started_; }
  bool alive() const { return alive_; }  // there is a context to draw with
  // The context is gone: lets go of every GL object, which says nothing now and would be an error
  // once there is a new context.
  void lose();
  // The context came back: makes them again.
  bool restore();
  // Sets the drawing buffer's size; the size on the page is the style sheet's.
  void resize(float css_width, float css_height, float scale);

  void begin_frame();
  void end_frame(std::uint32_t backdrop);  // that colour, and ImGui::GetDrawData() on it

 private:
  bool started_ = false;
  bool alive_ = false;
  int width_ = 1, height_ = 1;  // device pixels
};

}  // namespace hs::web
