// The lamp under hands: its head is dragged, its numbers have controls, and the station follows.

#include "web/pictures/lamp_picture.h"

#include <string>

#include "catch_amalgamated.hpp"
#include "tests/web_ui/screen.h"

using namespace hs;
using namespace hs::web;
using namespace hs::web::test;

namespace {

void open_lamp(Screen& screen) {
  screen.tap("action:lamp");
  REQUIRE(screen.view.picture == Picture::Lamp);
  screen.tap("action:lamp_right");
  REQUIRE(screen.session.config().light.mount == config::Mount::Right);
}

double lux(const Screen& screen) { return screen.session.evaluation().light.lamp->light.lux; }

}  // namespace

TEST_CASE("the lamp is one tap from the section and one tap back", "[ui][lamp]") {
  for (const Size size : kSizes) {
    Screen screen(size);
    screen.tap("action:lamp");
    CHECK(screen.view.picture == Picture::Lamp);
    screen.tap("action:lamp");
    CHECK(screen.view.picture == Picture::Section);
  }
}

TEST_CASE("a finger drags the lamp's head, its light follows, and one undo takes it back",
          "[ui][lamp][touch]") {
  for (const Size size : {kSizes[0], kSizes[1], kSizes[2], kSizes[5], kSizes[7]}) {
    Screen screen(size);
    open_lamp(screen);
    const config::Config before = screen.session.config();
    CHECK_FALSE(before.light.head.given());
    REQUIRE(screen.session.evaluation().light.lamp->search.done);
    const double start = lux(screen);
    const int computed = screen.canvas().lamp_picture().computed();
    const Rect r = screen.rect("action:lamp_head");
    screen.down(r.middle_x(), r.middle_y());
    screen.rest();
    CHECK(lux(screen) == start);
    double last = start;
    for (int i = 1; i <= 6; ++i) {
      screen.move(r.middle_x() - 6.0F * static_cast<float>(i), r.middle_y() - 2.0F);
      screen.rest();
      INFO(size.width << ", " << i);
      CHECK(screen.session.dragging());
      CHECK(lux(screen) != last);
      last = lux(screen);
    }
    REQUIRE(screen.session.config().light.head.given());
    // Farther from the pizza: darker. Straight along its plane: sideways it stays.
    CHECK(last < start);
    CHECK(*screen.session.config().light.head.across_mm ==
          Catch::Approx(screen.session.evaluation().light.lamp->search.best->x).margin(3.2));
    // Where it may be does not depend on where it is.
    CHECK(screen.canvas().lamp_picture().computed() <= computed + 1);
    screen.up(r.middle_x() - 36, r.middle_y() - 2);
    screen.rest();
    CHECK_FALSE(screen.session.dragging());
    CHECK(screen.session.evaluation().light.lamp->search.done);
    CHECK(lux(screen) == last);
    CHECK(screen.step() == 0);
    screen.tap("action:undo");
    CHECK(screen.session.config() == before);
    CHECK(lux(screen) == start);
  }
}

TEST_CASE("the lamp's head does not go into the oven, and follows keys", "[ui][lamp][keyboard]") {
  Screen screen(kSizes[1]);
  open_lamp(screen);
  screen.drag("action:lamp_head", 400);
  CHECK(*screen.session.config().light.head.ahead_mm >= 10);
  CHECK_FALSE(screen.session.evaluation().light.lamp->against.empty());
  while (screen.canvas().focus() != "action:lamp_head") REQUIRE(screen.key("Tab"));
  const config::LampHead from = screen.session.config().light.head;
  CHECK(screen.key("ArrowLeft"));
  CHECK(*screen.session.config().light.head.ahead_mm > *from.ahead_mm);
  CHECK(screen.key("ArrowUp"));
  CHECK(*screen.session.config().light.head.up_mm > *from.up_mm);
  CHECK(screen.key("PageUp"));
  CHECK(*screen.session.config().light.head.across_mm > *from.across_mm);
}

TEST_CASE("every number of the lamp has a control, and the best place is a tap away",
          "[ui][lamp][touch]") {
  Screen screen(kSizes[7]);
  open_lamp(screen);
  const config::Config before = screen.session.config();
  screen.tap("action:light.head.across_mm.less");
  const config::LampHead moved = screen.session.config().light.head;
  REQUIRE(moved.given());
  const Vec best = *screen.session.evaluation().light.lamp->search.best;
  CHECK(*moved.across_mm < best.x);
  // The other two are where they were.
  CHECK(*moved.ahead_mm == Catch::Approx(-best.y).margin(0.06));
  CHECK(*moved.up_mm == Catch::Approx(best.z).margin(0.06));
  screen.tap("action:light.head.ahead_mm.more");
  CHECK(*screen.session.config().light.head.ahead_mm > *moved.ahead_mm);
  screen.tap("action:light.head.up_mm.more");
  CHECK(*screen.session.config().light.head.up_mm > *moved.up_mm);
  screen.tap("action:lamp_best");
  CHECK(screen.session.config() == before);
  screen.tap("action:light.neck_mm.less");
  CHECK(screen.session.config().light.neck_mm < before.light.neck_mm);
  const double start = lux(screen);
  screen.tap("action:light.lumens.more");
  CHECK(lux(screen) > start);
  screen.tap("action:light.mount");
  CHECK(screen.session.config().light.mount == config::Mount::Left);
  CHECK(screen.session.evaluation().light.lamp->mount.x < 0);
}

TEST_CASE("dragging a neck judges the lamp where it hangs", "[ui][lamp][touch]") {
  Screen screen(kSizes[7]);
  open_lamp(screen);
  const Rect r = screen.rect("field:light.neck_mm");
  REQUIRE(screen.session.evaluation().light.lamp->checks.neck_reaches);
  const Vec head = *screen.session.evaluation().light.lamp->head;
  screen.down(r.middle_x(), r.middle_y());
  screen.rest();
  screen.move(r.x + 4, r.middle_y());
  screen.rest();
  REQUIRE(screen.session.dragging());
  const evaluate::Lamp held = *screen.session.evaluation().light.lamp;
  CHECK(held.head->x == head.x);
  CHECK_FALSE(held.checks.neck_reaches);
  CHECK(held.search.shortest_neck_mm.has_value());
  screen.up(r.x + 4, r.middle_y());
  screen.rest();
  screen.tap("action:undo");
}

TEST_CASE("the lamp's targets are on the canvas, large enough and by themselves",
          "[ui][lamp][layout]") {
  for (const Size size : kSizes) {
    for (const report::Units units : {report::Units::Inch, report::Units::Millimetre}) {
      Screen screen(size);
      screen.view.units = units;
      screen.tap("action:lamp");
      for (const bool with : {false, true}) {
        if (with) screen.tap("action:lamp_left");
        for (const Item& item : screen.canvas().items().all()) {
          INFO(item.id << " at " << size.width << "x" << size.height << ": " << item.rect.x << ","
                       << item.rect.y << " " << item.rect.w << "x" << item.rect.h);
          CHECK(item.rect.x >= 0);
          CHECK(item.rect.y >= 0);
          CHECK(item.rect.right() <= size.width + 0.01F);
          CHECK(item.rect.bottom() <= size.height + 0.01F);
          CHECK(item.rect.w >= kTarget - 0.01F);
          CHECK(item.rect.h >= kTarget - 0.01F);
          CHECK_FALSE(item.label.empty());
          for (const Item& other : screen.canvas().items().all()) {
            // The head is where its place is, over what lies there.
            if (&other == &item || item.id == "action:lamp_head" ||
                other.id == "action:lamp_head") {
              continue;
            }
            const bool apart = item.rect.x + 0.6F >= other.rect.right() ||
                               other.rect.x + 0.6F >= item.rect.right() ||
                               item.rect.y + 0.6F >= other.rect.bottom() ||
                               other.rect.y + 0.6F >= item.rect.bottom();
            INFO(other.id);
            CHECK(apart);
          }
        }
      }
    }
  }
}

TEST_CASE("where nobody works at the oven no lamp is asked for", "[ui][lamp]") {
  Screen screen;
  open(screen.session, read_file(HEARTHSIGHT_SOURCE_DIR "/presets/stations/prep_only.json"));
  screen.tap("action:lamp");
  CHECK_FALSE(screen.has("action:lamp_head"));
  CHECK_FALSE(screen.has("action:lamp_left"));
}
