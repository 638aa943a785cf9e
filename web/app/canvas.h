#pragma once
// The whole canvas: input in, one frame of Dear ImGui out, changes to the Session in between.
// Knows no GL and no browser, so a native test can drive it without either.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "web/app/items.h"
#include "web/app/layout.h"
#include "web/app/ui.h"
#include "web/app/view.h"
#include "web/app/widgets.h"
#include "web/pictures/fit_picture.h"
#include "web/pictures/lamp_picture.h"
#include "web/pictures/scene_picture.h"
#include "web/pictures/section_picture.h"
#include "web/session/session.h"

namespace hs::web {

struct Station;  // panels.h

enum class PointerKind : std::uint8_t { Down, Move, Up, Cancel };
inline constexpr int kShift = 1;  // of the modifiers of a key

class Canvas {
 public:
  // Fonts as TrueType bytes; they must outlive the canvas. One canvas at a time: Dear ImGui has one
  // current context.
  Canvas(Session& session, View& view, std::string_view font, std::string_view bold_font);
  ~Canvas();
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  // Size in CSS px, device pixels in one CSS px.
  void resize(float width, float height, float scale, const Insets& insets);

  // `time_ms` on the clock of frame(); not given: now.
  void pointer(PointerKind kind, int id, bool touch, float x, float y, double time_ms = -1);
  void wheel(float dx, float dy);
  // `code` as in the UI Events standard ("ArrowLeft"). False: not used, the browser may have it.
  bool key(std::string_view code, bool down, int modifiers);
  void blur();
  void wake() { wanted_ = kFramesAfterEvent; }

  // What lies under everything that a frame paints.
  std::uint32_t backdrop() const { return tone(view_.theme, Tone::Paper); }

  // One frame into ImGui::GetDrawData(). How many more are wanted before the canvas is at rest.
  int frame(double time_ms);
  std::uint32_t frame_count() const { return frames_; }

  const Items& items() const { return items_; }
  std::string_view focus() const { return focus_.id; }
  std::string_view cursor() const { return cursor_; }
  const FitPicture& fit_picture() const { return fit_picture_; }
  const LampPicture& lamp_picture() const { return lamp_picture_; }
  ScenePicture& scene_picture() { return scene_picture_; }
  const Layout& layout() const { return layout_; }

  // Sheets that were asked for since the last call, oldest first.
  std::vector<std::string> take_sheets();
  // True once after the person changed what they look at here (units, picture).
  bool take_view_changed();

 private:
  // Dear ImGui settles a press in up to three frames.
  static constexpr int kFramesAfterEvent = 3;

  void follow(PointerKind kind, const Finger& finger);
  bool pass();  // one layout with what it asks for done; true: the station is another one
  void draw();
  void draw_picture(Ui& ui, const Station& station);
  void apply();
  void apply_later(const Intent& intent);
  void refresh_summary();

  Session& session_;
  View& view_;
  ImFont* font_ = nullptr;
  ImFont* bold_ = nullptr;
  float scale_ = 1;
  Insets insets_;

  Items items_;
  Focus focus_;
  Hold hold_;
  Layout layout_;
  Intents intents_;
  std::vector<std::string> sheets_;
  bool view_changed_ = false;
  std::string cursor_;

  report::Summary summary_;
  std::uint32_t summary_of_ = 0;
  bool summary_made_ = false;
  report::Units summary_units_ = report::Units::Inch;

  SectionPicture section_picture_;
  FitPicture fit_picture_;
  LampPicture lamp_picture_;
  ScenePicture scene_picture_;

  int wanted_ = kFramesAfterEvent;
  std::uint32_t frames_ = 0;
  double last_ms_ = -1;
  double passed_ms_ = 0, time_ms_ = 0;
  int pointer_ = -1;  // the one finger that counts; in the scene, all of them
  bool pointing_ = false;
  std::vector<Finger> fingers_;  // that are down, in the order in which they came
  Finger last_down_;             // a tap may be over before a frame has seen it
};

}  // namespace hs::web
