#pragma once
// The canvas in a native window: what web/app/exports.cpp and the page's script are in a browser.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "web/app/canvas.h"
#include "web/native/notice.h"
#include "web/native/options.h"
#include "web/native/window.h"
#include "web/render/scene_renderer.h"
#include "web/session/session.h"

namespace hs::web::native {

// Opens what the options name, or the example household. Empty: it is open.
std::vector<Problem> open_station(Session& session, const Options& options);

class App final : private Hands {
 public:
  // All three must outlive it; the window is open.
  App(Session& session, Window& window, const Options& options);
  ~App();
  App(const App&) = delete;
  App& operator=(const App&) = delete;

  // False: the driver takes no shader of Dear ImGui's.
  bool start();
  bool due() const { return due_; }  // a frame is wanted
  void frame();                      // into the back buffer
  // What the driver did not like of the scene, once; empty when all is well.
  const std::string& error() const { return scene_.error(); }
  std::string items_json() const { return canvas_.items().json(); }

 private:
  void pointer(PointerKind kind, float x, float y) override;
  void wheel(float dx, float dy) override;
  void key(std::string_view code, char letter, bool down, int modifiers) override;
  void blur() override;
  void resized() override;
  void exposed() override;

  bool command(char letter, bool shift);
  bool choice(char letter);
  void answer_sheet(const std::string& sheet);
  void paste();
  std::string address() const;  // of the page with this station
  void wake();

  Session& session_;
  Window& window_;
  const Options& options_;
  View view_;
  render::SceneRenderer scene_;
  Canvas canvas_;
  Notice notice_;
  bool ready_ = false;
  bool due_ = true;
};

}  // namespace hs::web::native
