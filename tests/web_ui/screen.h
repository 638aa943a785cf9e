#pragma once
// The canvas without GL and browser, and what a person at it does: fingers and keys by hand.

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "imgui.h"
#include "imgui_internal.h"
#include "web/app/canvas.h"

namespace hs::web::test {

inline std::string read_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

inline const std::string& font(const char* name) {
  static const std::string regular = read_file(HEARTHSIGHT_FONT_DIR "/DejaVuSans.ttf");
  static const std::string bold = read_file(HEARTHSIGHT_FONT_DIR "/DejaVuSans-Bold.ttf");
  const std::string& bytes = std::string(name) == "bold" ? bold : regular;
  if (bytes.empty()) throw std::runtime_error("DejaVu Sans is not in " HEARTHSIGHT_FONT_DIR);
  return bytes;
}

struct Size {
  float width, height;
};
// Canvas sizes: phones upright and across, a narrow one, tablets, the left of a wide screen.
inline constexpr Size kSizes[] = {{390, 604}, {390, 844}, {320, 512}, {360, 584}, {412, 760},
                                  {746, 390}, {640, 360}, {768, 968}, {736, 800}, {900, 760}};

// What a person at the canvas does. Draws until it is at rest after each act.
class Screen {
 public:
  explicit Screen(Size size = kSizes[0]) : canvas_(session, view, font("regular"), font("bold")) {
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    resize(size);
  }
  ~Screen() {
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    }
  }

  void resize(Size size) {
    size_ = size;
    canvas_.resize(size.width, size.height, 2, {});
    rest();
  }

  // The number of frames it took. The longest move is the scene's, some 1.5 s.
  static constexpr int kMostFrames = 120;
  int rest() {
    for (int frames = 1; frames <= kMostFrames; ++frames) {
      if (step() == 0) return frames;
    }
    FAIL("the canvas does not come to rest");
    return 0;
  }
  int step() {
    time_ms_ += 16;
    const int wanted = canvas_.frame(time_ms_);
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      if (texture->Status == ImTextureStatus_WantDestroy) {
        texture->SetTexID(ImTextureID_Invalid);
        texture->SetStatus(ImTextureStatus_Destroyed);
      } else if (texture->Status != ImTextureStatus_OK) {
        texture->SetTexID(1);
        texture->SetStatus(ImTextureStatus_OK);
      }
    }
    return wanted;
  }

  Rect rect(const std::string& id) const {
    const Item* item = canvas_.items().find(id);
    if (!item) throw std::runtime_error("no item " + id);
    return item->rect;
  }
  std::string value(const std::string& id) const { return canvas_.items().find(id)->value; }
  bool has(const std::string& id) const { return canvas_.items().find(id) != nullptr; }

  void down(float x, float y, int id = 1) { canvas_.pointer(PointerKind::Down, id, true, x, y); }
  void move(float x, float y, int id = 1) { canvas_.pointer(PointerKind::Move, id, true, x, y); }
  void up(float x, float y, int id = 1) { canvas_.pointer(PointerKind::Up, id, true, x, y); }

  void tap(const std::string& id) {
    const Rect r = rect(id);
    tap(r.middle_x(), r.middle_y());
  }
  void tap(float x, float y) {
    down(x, y);
    up(x, y);
    rest();
  }
  void drag(const std::string& id, float dx, float dy = 0) {
    const Rect r = rect(id);
    down(r.middle_x(), r.middle_y());
    rest();
    for (int i = 1; i <= 10; ++i) {
      const float part = static_cast<float>(i) / 10;
      move(r.middle_x() + dx * part, r.middle_y() + dy * part);
      step();
    }
    up(r.middle_x() + dx, r.middle_y() + dy);
    rest();
  }
  bool key(const char* code, int modifiers = 0) {
    const bool used = canvas_.key(code, true, modifiers);
    canvas_.key(code, false, modifiers);
    rest();
    return used;
  }

  Canvas& canvas() { return canvas_; }
  Size size() const { return size_; }

  Session session;
  View view;

 private:
  Canvas canvas_;
  Size size_{};
  double time_ms_ = 0;
};

// A file's JSON, or "link:" and a link.
inline void open(Session& session, const std::string& text) {
  const std::vector<Problem> problems =
      text.starts_with("link:") ? session.open_link(text.substr(5)) : session.open_json(text);
  REQUIRE(problems.empty());
}

}  // namespace hs::web::test
