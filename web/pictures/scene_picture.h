#pragma once
// The scene on the screen: hands turn it, buttons lead to a cook's eye and back. It keeps the
// meshes and the camera; a Surface draws them.

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/station_layout.h"
#include "web/app/ui.h"
#include "web/app/view.h"
#include "web/scene/camera.h"
#include "web/scene/frame.h"
#include "web/scene/model.h"

namespace hs::web {

// What draws in this frame and what has passed since the last one.
struct SceneInput {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  std::uint32_t revision = 0;
  const View& view;
  std::span<const Finger> fingers;  // that are down
  const Finger& last_down;
  double passed_ms = 0;
};

class ScenePicture {
 public:
  // Null: everything but the picture itself works.
  void use(scene::Surface* surface) { surface_ = surface; }

  // The ground runs across the whole `backdrop`; what is shown and touched stays in `rect`.
  void draw(Ui& ui, const Rect& backdrop, const Rect& rect, const SceneInput& input,
            Intents& intents);

  bool moving() const { return moving_; }  // wants another frame
  bool held() const { return held_; }      // every finger on the canvas is the scene's
  const scene::Camera& camera() const { return camera_; }
  int built() const { return built_; }  // parts made so far, for a test
  // The piece of the frame that a finger has picked while they are pulled apart.
  std::optional<std::size_t> picked() const { return picked_; }

  // The painted floor from straight above, filling the picture, in place of the scene: what a test
  // measures the seen share on.
  void show_plan(bool on);

 private:
  void refresh(const SceneInput& input);
  void hands(const Touch& touch, const Rect& rect, const SceneInput& input, const Focus& focus);
  void buttons(Ui& ui, const Rect& backdrop, const Rect& rect, const SceneInput& input,
               Intents& intents);
  void key(Ui& ui, const Rect& rect, const SceneInput& input) const;
  static Rect free_place(const Rect& backdrop, const Rect& rect,
                         std::initializer_list<Rect> others);
  void apart_button(Ui& ui, const Rect& place, Intents& intents) const;
  void picked_words(Ui& ui, const Rect& rect, const SceneInput& input) const;
  void pick(const SceneInput& input, float x, float y);
  void zone_button(Ui& ui, const Rect& place, const SceneInput& input, Intents& intents) const;
  void names(Ui& ui, const Rect& rect, report::Units units) const;
  void fill_frame(const Ui& ui, const Rect& backdrop, const Rect& rect);

  scene::Surface* surface_ = nullptr;
  scene::Camera camera_;
  scene::Frame frame_;
  std::array<scene::Part, scene::kPartCount> parts_;
  report::StationLayout layout_;
  scene::Look look_;
  scene::Lens lens_;  // of `rect` alone
  std::vector<scene::Vec> corners_;
  std::optional<scene::Vec> feet_line_, zone_;  // where their names go
  std::vector<scene::ZoneName> zones_;          // what the zones are called, while they are shown
  bool zones_shown_ = false;
  scene::ApartView apart_;
  std::optional<std::size_t> picked_;  // in this frame, shown in the next one
  double hearth_mm_ = 0;
  Rect shown_{};  // where the picture is, without what lies round it
  scene::PeopleView people_;
  bool made_ = false;
  std::uint32_t revision_ = 0;
  Theme theme_ = Theme::Sun;
  bool moving_ = false, changed_ = true;
  bool plan_ = false;
  oven::Floor plan_floor_;
  int built_ = 0;
  std::pair<scene::Surface*, scene::Frame*> to_paint_{nullptr, nullptr};

  // The hand's last state.
  bool held_ = false, moved_ = false;
  std::size_t finger_count_ = 0;
  float last_x_ = 0, last_y_ = 0, last_span_ = 0, start_x_ = 0, start_y_ = 0;
  double start_ms_ = 0;
  double tapped_ms_ = -1e9;
  float tapped_x_ = 0, tapped_y_ = 0;
};

}  // namespace hs::web
