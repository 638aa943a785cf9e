// The scene under hands: it turns, zooms, rests, and leaves the station alone.

#include <algorithm>
#include <string_view>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "tests/web_ui/screen.h"

using namespace hs;
using namespace hs::web;
using namespace hs::web::test;

namespace {

// Shows the scene and waits until it is there.
void open_scene(Screen& screen) {
  screen.view.picture = Picture::Scene;
  screen.canvas().wake();
  screen.rest();
}

}  // namespace

TEST_CASE("one finger turns the scene, two zoom and shift it, a double tap resets it",
          "[ui][scene][touch]") {
  Screen screen;
  open_scene(screen);
  const scene::Camera& camera = screen.canvas().scene_picture().camera();
  const double yaw = camera.yaw_deg(), distance = camera.distance_mm();
  const config::Config before = screen.session.config();
  screen.drag("action:scene", 60, -20);
  CHECK(camera.yaw_deg() < yaw - 10);
  CHECK(camera.distance_mm() == distance);

  const Rect r = screen.rect("action:scene");
  const float x = r.middle_x(), y = r.middle_y();
  screen.down(x - 20, y, 1);
  screen.step();
  screen.down(x + 20, y, 2);
  screen.step();
  for (int i = 1; i <= 10; ++i) {
    screen.move(x - 20 - 3.0F * static_cast<float>(i), y, 1);
    screen.move(x + 20 + 3.0F * static_cast<float>(i), y, 2);
    screen.step();
  }
  CHECK(camera.distance_mm() < 0.6 * distance);
  // One of them leaves; the other goes on turning without a jump.
  const double turned = camera.yaw_deg();
  screen.up(x - 50, y, 1);
  screen.step();
  CHECK(camera.yaw_deg() == turned);
  screen.move(x + 90, y, 2);
  screen.step();
  screen.move(x + 100, y, 2);
  screen.step();
  CHECK(camera.yaw_deg() < turned);
  screen.up(x + 100, y, 2);
  screen.rest();

  // Away from the buttons at the foot of the picture.
  const float free = r.y + r.h * 0.4F;
  screen.down(x, free);
  screen.step();
  screen.up(x, free);
  screen.step();
  screen.down(x, free);
  screen.step();
  screen.up(x, free);
  screen.rest();
  CHECK(camera.yaw_deg() == yaw);
  CHECK(camera.distance_mm() == Catch::Approx(distance));
  CHECK(screen.session.config() == before);
}

TEST_CASE("a second finger leaves a slider alone", "[ui][touch]") {
  Screen screen;
  open_scene(screen);
  const Rect r = screen.rect("field:station.prep_depth_mm");
  const double before = screen.session.config().station.prep_depth_mm;
  screen.down(r.middle_x(), r.middle_y(), 1);
  screen.step();
  screen.down(200, 200, 2);
  screen.move(20, 20, 2);
  screen.step();
  screen.up(20, 20, 2);
  screen.up(r.middle_x(), r.middle_y(), 1);
  screen.rest();
  CHECK(screen.session.config().station.prep_depth_mm == before);
}

TEST_CASE("keys turn, zoom and reset the scene", "[ui][scene][keyboard]") {
  Screen screen;
  open_scene(screen);
  while (screen.canvas().focus() != "action:scene") REQUIRE(screen.key("Tab"));
  const scene::Camera& camera = screen.canvas().scene_picture().camera();
  const double yaw = camera.yaw_deg(), pitch = camera.pitch_deg(), far = camera.distance_mm();
  CHECK(screen.key("ArrowLeft"));
  CHECK(camera.yaw_deg() > yaw);
  CHECK(camera.pitch_deg() == pitch);
  CHECK(screen.key("ArrowUp"));
  CHECK(camera.pitch_deg() != pitch);
  CHECK(screen.key("Equal"));
  CHECK(camera.distance_mm() < far);
  CHECK(screen.key("Minus"));
  CHECK(screen.key("Minus"));
  CHECK(camera.distance_mm() > far);
  CHECK(screen.key("Home"));
  CHECK(camera.yaw_deg() == yaw);
  CHECK(camera.distance_mm() == Catch::Approx(far));
}

TEST_CASE("the scene rests, and makes again only what has changed", "[ui][scene]") {
  Screen screen;
  open_scene(screen);
  ScenePicture& picture = screen.canvas().scene_picture();
  const int built = picture.built();
  CHECK(built == 5);
  for (int i = 0; i < 10; ++i) CHECK(screen.step() == 0);
  CHECK(picture.built() == built);
  screen.drag("action:scene", 40, 10);
  CHECK(picture.built() == built);
  screen.tap("action:units");  // heights are marked anew
  const int marked = picture.built();
  CHECK(marked < built + 5);
  screen.tap("action:through_eyes");
  CHECK(screen.view.through_eyes);
  CHECK(picture.camera().inside());
  CHECK(screen.step() == 0);
  CHECK(picture.built() == marked + 2);  // the cook is gone from the picture, and the paint
  screen.tap("action:through_eyes");
  CHECK_FALSE(picture.camera().inside());
}

TEST_CASE("with motion unwanted the scene is where it goes at once", "[ui][scene]") {
  Screen screen;
  screen.view.still = true;
  open_scene(screen);
  const int frames = [&] {
    const Rect r = screen.rect("action:through_eyes");
    screen.down(r.middle_x(), r.middle_y());
    screen.up(r.middle_x(), r.middle_y());
    return screen.rest();
  }();
  CHECK(screen.canvas().scene_picture().camera().inside());
  CHECK(frames <= 8);
}

TEST_CASE("the scene's controls are whole targets inside its picture at every size",
          "[ui][scene]") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width, size.height);
    Screen screen(size);
    // Somebody who can lean has a button more.
    open(screen.session, read_file(HEARTHSIGHT_SOURCE_DIR "/presets/stations/four_cooks.json"));
    open_scene(screen);
    const Rect scene = screen.rect("action:scene");
    CHECK(screen.has("action:clear_zones"));
    // The build comes with the later part of the program.
    CHECK_FALSE(screen.has("action:pull_apart"));
    screen.session.bring_build();
    screen.canvas().wake();
    screen.rest();
    CHECK(screen.has("action:pull_apart"));
    // One of them may stand beside the picture's tools.
    const float top = std::min(scene.y, screen.rect("action:picture").y);
    std::vector<Rect> all;
    for (const char* id : {"action:picture", "action:units", "action:undo", "action:redo"}) {
      all.push_back(screen.rect(id));
    }
    for (const char* id : {"action:through_eyes", "action:scene.closer", "action:scene.farther",
                           "action:clear_zones", "action:lean", "action:pull_apart"}) {
      if (!screen.has(id)) continue;
      const Rect r = screen.rect(id);
      CHECK(r.w >= kTarget);
      CHECK(r.h >= kTarget);
      CHECK(r.x >= scene.x - 0.1F);
      CHECK(r.right() <= scene.right() + 0.1F);
      CHECK(r.y >= (std::string_view(id) == "action:pull_apart" ? top : scene.y) - 0.1F);
      CHECK(r.bottom() <= scene.bottom() + 0.1F);
      // Wholly in the tools' row, not half over the picture.
      if (r.y < scene.y - 0.1F) CHECK(r.bottom() <= scene.y + 0.1F);
      for (const Rect& other : all) {
        const bool apart = r.x >= other.right() - 0.1F || other.x >= r.right() - 0.1F ||
                           r.y >= other.bottom() - 0.1F || other.y >= r.bottom() - 0.1F;
        CHECK(apart);
      }
      all.push_back(r);
    }
  }
}

TEST_CASE("one tap shows what must stay free, another hides it, and only that is made again",
          "[ui][scene]") {
  for (const Size& size : kSizes) {
    Screen screen(size);
    open_scene(screen);
    ScenePicture& picture = screen.canvas().scene_picture();
    const config::Config before = screen.session.config();
    const int built = picture.built();
    screen.tap("action:clear_zones");
    CHECK(screen.view.clear_zones);
    CHECK(picture.built() == built + 1);
    CHECK(screen.step() == 0);
    screen.tap("action:clear_zones");
    CHECK_FALSE(screen.view.clear_zones);
    CHECK(picture.built() == built + 2);
    CHECK(screen.session.config() == before);
  }
}

TEST_CASE("a lamp that moves makes nothing but the lamp again", "[ui][scene][lamp]") {
  Screen screen;
  screen.session.set_field("light.mount", "right", report::Units::Inch);
  open_scene(screen);
  const int built = screen.canvas().scene_picture().built();
  screen.session.set_field("light.head.across_mm", "250 mm", report::Units::Inch);
  screen.session.set_field("light.head.ahead_mm", "600 mm", report::Units::Inch);
  screen.session.set_field("light.head.up_mm", "250 mm", report::Units::Inch);
  screen.canvas().wake();
  screen.rest();
  CHECK(screen.canvas().scene_picture().built() == built + 1);
}

TEST_CASE("the cabinets are pulled apart, a part is picked, and all of it goes back",
          "[ui][scene][apart]") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width, size.height);
    Screen screen(size);
    screen.session.bring_build();
    open_scene(screen);
    ScenePicture& picture = screen.canvas().scene_picture();
    const config::Config before = screen.session.config();
    const double near = picture.camera().distance_mm();
    const int built = picture.built();
    screen.tap("action:pull_apart");
    CHECK(screen.view.pulled_apart);
    CHECK(picture.built() > built);
    // Farther away: more room than the station as it stands.
    CHECK(picture.camera().distance_mm() > near);
    for (const char* id : {"action:clear_zones", "action:through_eyes", "action:lean"}) {
      CHECK_FALSE(screen.has(id));
    }
    // Wherever a finger comes down on a part, that part is picked; once more lets it go.
    const Rect r = screen.rect("action:scene");
    const auto touch = [&](float x, float y) {
      for (int i = 0; i < 40; ++i) screen.step();  // no double tap
      screen.down(x, y);
      screen.step();
      screen.up(x, y);
      screen.rest();
    };
    int found = 0;
    const Rect button = screen.rect("action:pull_apart");
    for (float down = 0.25F; down < 0.75F; down += 0.1F) {
      const float x = r.middle_x(), y = r.y + down * r.h;
      if (y > button.y - 2) continue;  // the buttons' row
      touch(x, y);
      if (!picture.picked()) continue;
      ++found;
      CHECK(*picture.picked() < screen.session.evaluation().build->frame.pieces.size());
      const int made = picture.built();
      touch(x, y);
      CHECK_FALSE(picture.picked());
      CHECK(picture.built() == made + 1);
    }
    CHECK(found > 0);
    screen.tap("action:pull_apart");
    CHECK_FALSE(screen.view.pulled_apart);
    CHECK(picture.camera().distance_mm() == Catch::Approx(near));
    CHECK(screen.has("action:through_eyes"));
    CHECK(screen.step() == 0);
    CHECK(screen.session.config() == before);
  }
}
