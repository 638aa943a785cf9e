#include "web/pictures/fit_picture.h"

#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"
#include "engine/report/fit_words.h"
#include "tests/web_ui/screen.h"

using namespace hs;
using namespace hs::web;
using namespace hs::web::test;

TEST_CASE("the point of the fit map drags height and distance at once", "[ui][fit_map]") {
  Screen screen;
  screen.tap("action:picture");
  const config::Config before = screen.session.config();
  const int computed = screen.canvas().fit_picture().computed();
  screen.drag("action:fit_point", -40, -30);
  REQUIRE(screen.session.config().station.oven_base_height_mm.has_value());
  CHECK(*screen.session.config().station.oven_base_height_mm <
        *screen.session.evaluation().recommended.heights.oven_base_mm);
  CHECK(screen.session.config().view.standoff_mm > before.view.standoff_mm);
  // The map depends on neither.
  CHECK(screen.canvas().fit_picture().computed() == computed);
  screen.session.undo();
  CHECK(screen.session.config() == before);
}

TEST_CASE("the fit map is computed on change and not at rest", "[ui][fit_map]") {
  Screen screen;
  screen.tap("action:picture");
  const int computed = screen.canvas().fit_picture().computed();
  CHECK(computed == 1);
  for (int i = 0; i < 20; ++i) screen.step();
  screen.tap("action:station.prep_depth_mm.more");
  screen.tap("action:units");
  // The prep depth is part of the config that the map is kept for; units are not.
  CHECK(screen.canvas().fit_picture().computed() <= computed + 1);
  screen.tap("action:oven.kind.next");
  CHECK(screen.canvas().fit_picture().computed() > computed);
}

TEST_CASE("the fit map's point moves by keys", "[ui][keyboard]") {
  Screen screen;
  screen.tap("action:picture");
  while (screen.canvas().focus() != "action:fit_point") REQUIRE(screen.key("Tab"));
  const double standoff = screen.session.config().view.standoff_mm;
  CHECK(screen.key("ArrowLeft"));
  CHECK(*screen.session.config().station.oven_base_height_mm <
        *screen.session.evaluation().recommended.heights.oven_base_mm);
  CHECK(screen.key("PageUp"));
  CHECK(screen.session.config().view.standoff_mm > standoff);
}

TEST_CASE("a finger on the fit map reads what holds there", "[ui][fit_map]") {
  Screen screen;
  open(screen.session, read_file(HEARTHSIGHT_SOURCE_DIR "/presets/stations/four_cooks.json"));
  screen.tap("action:picture");
  const auto flag = [&] { return screen.canvas().fit_picture().flag(); };
  CHECK(flag().empty());
  const config::Config before = screen.session.config();
  const Rect point = screen.rect("action:fit_point");
  // On the point: the values in use.
  screen.down(point.middle_x(), point.middle_y());
  screen.rest();
  const double floor_mm = *screen.session.evaluation().used.oven_floor_mm;
  const double standoff_mm = before.view.standoff_mm;
  CHECK(flag() == report::fit_words(before, evaluate::fit_at(before, floor_mm, standoff_mm),
                                    floor_mm, standoff_mm, screen.view.units));
  screen.up(point.middle_x(), point.middle_y());
  screen.rest();
  CHECK(flag().empty());
  // Beside it: other values, and nothing moves.
  screen.down(point.middle_x() - 70, point.middle_y());
  screen.rest();
  REQUIRE(flag().size() >= 2);
  const std::string beside = flag()[0];
  screen.move(point.middle_x() - 90, point.middle_y());
  screen.rest();
  REQUIRE(flag().size() >= 2);
  CHECK(flag()[0] != beside);
  screen.up(point.middle_x() - 90, point.middle_y());
  screen.rest();
  CHECK(flag().empty());
  CHECK(screen.session.config() == before);
}

TEST_CASE("names on the fit map keep clear of the point and its lines", "[ui][fit_map]") {
  for (const Size& size : kSizes) {
    // On the lowest pictures the map is hardly higher than the point; there names lie over its
    // lines.
    if (size.width < 600 && size.height < 700) continue;
    Screen screen(size);
    open(screen.session, read_file(HEARTHSIGHT_SOURCE_DIR "/presets/stations/four_cooks.json"));
    screen.view.picture = Picture::FitMap;
    // The recommended place, where the first hands end, and one among the names.
    for (const double base_mm : {0.0, 960.0, 1040.0}) {
      CAPTURE(size.width, size.height, base_mm);
      if (base_mm > 0) {
        screen.session.set_field("station.oven_base_height_mm", std::to_string(base_mm) + " mm",
                                 report::Units::Millimetre);
      }
      screen.canvas().wake();
      screen.rest();
      const Rect point = screen.rect("action:fit_point");
      const std::vector<Rect>& names = screen.canvas().fit_picture().names();
      REQUIRE(names.size() == 4);
      for (const Rect& name : names) {
        const bool beside = name.right() < point.middle_x() || name.x > point.middle_x();
        const bool over = name.bottom() < point.middle_y() || name.y > point.middle_y();
        CHECK(beside);
        CHECK(over);
      }
    }
  }
}
