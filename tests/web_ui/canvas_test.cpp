// The canvas without GL and browser.

#include "web/app/canvas.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "tests/web_ui/screen.h"
#include "web/app/panels.h"
#include "web/session/presets.h"

using namespace hs;
using namespace hs::web;
using namespace hs::web::test;

namespace {

std::vector<std::string> all_stations() {
  std::vector<std::string> texts;
  for (const Preset& preset : presets()) texts.push_back("link:" + std::string(preset.link));
  const std::filesystem::path folder = HEARTHSIGHT_SOURCE_DIR "/presets/stations";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    texts.push_back(read_file(entry.path().string()));
  }
  // Twelve cooks with long names, everything given.
  Session crowd;
  for (int i = 1; i < 12; ++i) crowd.add_cook();
  for (int i = 0; i < 12; ++i) {
    crowd.set_field("cooks." + std::to_string(i) + ".name",
                    "Wilhelmina Featherstone the " + std::to_string(i), report::Units::Inch);
  }
  crowd.set_field("station.oven_base_height_mm", "1180 mm", report::Units::Inch);
  crowd.set_field("station.counter_height_mm", "913 mm", report::Units::Inch);
  std::string link = crowd.link();
  texts.push_back("link:" + link);
  return texts;
}

bool overlap(const Rect& a, const Rect& b) {
  constexpr float kTouching = 0.6F;  // edges may meet
  return a.x + kTouching < b.right() && b.x + kTouching < a.right() &&
         a.y + kTouching < b.bottom() && b.y + kTouching < a.bottom();
}

double number(const std::string& text) { return std::strtod(text.c_str(), nullptr); }

constexpr const char* kRules[] = {"station.oven_base_height_mm", "view.standoff_mm",
                                  "station.prep_depth_mm"};

}  // namespace

TEST_CASE("every target is on the canvas, large enough and by itself", "[ui][layout]") {
  Screen screen;
  for (const std::string& text : all_stations()) {
    open(screen.session, text);
    for (const Size size : kSizes) {
      screen.resize(size);
      for (const report::Units units : {report::Units::Inch, report::Units::Millimetre}) {
        for (const Picture picture : {Picture::Section, Picture::FitMap}) {
          screen.view.units = units;
          screen.view.picture = picture;
          screen.canvas().wake();
          screen.rest();
          const auto items = screen.canvas().items().all();
          INFO(text.substr(0, 60) << " at " << size.width << "x" << size.height);
          CHECK(screen.canvas().items().repeated().empty());
          REQUIRE(items.size() >= 18);
          for (std::size_t i = 0; i < items.size(); ++i) {
            const Item& item = items[i];
            INFO(item.id << " at " << item.rect.x << "," << item.rect.y << " " << item.rect.w << "x"
                         << item.rect.h);
            CHECK(item.rect.x >= 0.0F);
            CHECK(item.rect.y >= 0.0F);
            CHECK(item.rect.right() <= size.width);
            CHECK(item.rect.bottom() <= size.height);
            CHECK(item.rect.w >= kTarget - 0.01F);
            CHECK(item.rect.h >= kTarget - 0.01F);
            CHECK_FALSE(item.label.empty());
            for (std::size_t j = 0; j < i; ++j) {
              INFO(items[j].id);
              CHECK_FALSE(overlap(item.rect, items[j].rect));
            }
          }
        }
      }
    }
  }
}

TEST_CASE("the drawing keeps a fair share of the canvas", "[ui][layout]") {
  for (const Size size : kSizes) {
    for (const std::size_t cooks :
         {std::size_t{1}, std::size_t{2}, std::size_t{4}, std::size_t{12}}) {
      const Layout layout = layout_of(size.width, size.height, {}, cooks);
      INFO(size.width << "x" << size.height << ", " << cooks << " cooks");
      CHECK(layout.picture.h >= 110.0F);
      CHECK(layout.scene.w >= 200.0F);
      CHECK(layout.line_count >= std::min<std::size_t>(cooks, 2));
    }
  }
  // The phone of the first screen: three cooks' lines and four tools in one column.
  const Layout phone = layout_of(390, 604, {}, 3);
  CHECK(phone.line_count == 3);
  CHECK(phone.tools[3].x == phone.tools[0].x);
}

TEST_CASE("insets push everything inward", "[ui][layout]") {
  const Insets insets{30, 10, 20, 40};
  const Layout layout = layout_of(390, 760, insets, 2);
  CHECK(layout.headlines[0].y >= insets.top);
  CHECK(layout.headlines[0].x >= insets.left);
  CHECK(layout.prep.right() <= 390 - insets.right);
  CHECK(layout.prep.bottom() <= 760 - insets.bottom);
}

TEST_CASE("a canvas at rest draws nothing and an event wakes it for three frames", "[ui][idle]") {
  Screen screen;
  CHECK(screen.step() == 0);
  screen.move(5, 5);
  CHECK(screen.rest() <= 4);
  CHECK(screen.step() == 0);
}

TEST_CASE("one tap on a stepper is one step", "[ui][touch]") {
  Screen screen;
  for (const report::Units units : {report::Units::Inch, report::Units::Millimetre}) {
    screen.view.units = units;
    for (const char* path : kRules) {
      const std::string field = std::string("field:") + path;
      const std::string action = std::string("action:") + path;
      // The first tap comes onto the marks, the second is one whole step.
      screen.tap(action + ".more");
      const double from = number(screen.value(field));
      screen.tap(action + ".more");
      const double more = number(screen.value(field));
      INFO(path);
      CHECK(more > from);
      CHECK(more - from <= 25.5);
      screen.tap(action + ".less");
      // Files keep tenths of a millimetre, a step in inches does not.
      CHECK(std::abs(number(screen.value(field)) - from) < 0.11);
      CHECK(screen.session.can_undo());
    }
  }
}

TEST_CASE("each tap goes on by one mark and none of them sticks", "[ui][touch]") {
  // 1/4 in is 6.35 mm and values are kept in tenths, so half of the marks are rounded.
  Screen screen;
  for (const char* path : kRules) {
    const std::string field = std::string("field:") + path;
    double before = number(screen.value(field));
    for (int i = 0; i < 24; ++i) {
      screen.tap(std::string("action:") + path + (i < 12 ? ".more" : ".less"));
      const double now = number(screen.value(field));
      INFO(path << ", tap " << i);
      CHECK((i < 12 ? now > before : now < before));
      before = now;
    }
  }
}

TEST_CASE("a finger drags a value along and all of it is one step of undo", "[ui][touch]") {
  for (const Size size : kSizes) {
    Screen screen(size);
    for (const char* path : kRules) {
      const std::string field = std::string("field:") + path;
      const config::Config before = screen.session.config();
      const double from = number(screen.value(field));
      screen.drag(field, 30);
      const double right = number(screen.value(field));
      INFO(path << " at " << size.width);
      CHECK(right > from);
      CHECK_FALSE(screen.session.dragging());
      screen.session.undo();
      CHECK(screen.session.config() == before);
      screen.canvas().wake();
      screen.rest();
      screen.drag(field, -30);
      CHECK(number(screen.value(field)) < from);
      screen.session.undo();
      CHECK(screen.session.config() == before);
      screen.canvas().wake();
      screen.rest();
    }
  }
}

TEST_CASE("a value follows the finger and comes back with it", "[ui][touch]") {
  Screen screen;
  const std::string field = "field:view.standoff_mm";
  const Rect r = screen.rect(field);
  const double from = number(screen.value(field));
  screen.down(r.middle_x(), r.middle_y());
  screen.rest();
  screen.move(r.middle_x() + 40, r.middle_y());
  screen.rest();
  CHECK(number(screen.value(field)) > from + 100);
  screen.move(r.middle_x(), r.middle_y());
  screen.rest();
  // Within the 4 px that a finger may tremble, on a rule of 1200 mm on some 165 px, and half a
  // step.
  CHECK(std::abs(number(screen.value(field)) - from) <= 4 * 1200.0 / 165 + 12.7);
  screen.up(r.middle_x(), r.middle_y());
  screen.rest();
}

TEST_CASE("a tap on a rule never jumps", "[ui][touch]") {
  Screen screen;
  for (const char* path : kRules) {
    const std::string field = std::string("field:") + path;
    const Rect r = screen.rect(field);
    for (const float part : {0.05F, 0.3F, 0.6F, 0.95F}) {
      const double from = number(screen.value(field));
      screen.tap(r.x + part * r.w, r.middle_y());
      INFO(path << " at " << part);
      CHECK(std::abs(number(screen.value(field)) - from) <= 25.5);
    }
  }
  // Far right of the bead goes up, far left goes down.
  const Rect r = screen.rect("field:view.standoff_mm");
  const double from = screen.session.config().view.standoff_mm;
  screen.tap(r.right() - 4, r.middle_y());
  CHECK(screen.session.config().view.standoff_mm > from);
}

TEST_CASE("a hand that passes over a rule moves nothing", "[ui][touch]") {
  for (const Size size : kSizes) {
    Screen screen(size);
    const config::Config before = screen.session.config();
    for (const char* path : kRules) {
      const std::string field = std::string("field:") + path;
      const Rect r = screen.rect(field);
      INFO(path << " at " << size.width);
      // Up and down, never quite straight; and back to where it began.
      for (const float way : {-1.0F, 1.0F}) {
        screen.drag(field, 40 * way, 120 * way);
        screen.drag(field, -25, 60 * way);
      }
      screen.down(r.x + 0.9F * r.w, r.middle_y());
      screen.rest();
      for (const float off : {10.0F, 20.0F, 8.0F, 0.0F}) {
        screen.move(r.x + 0.9F * r.w, r.middle_y() + off);
        screen.rest();
      }
      screen.up(r.x + 0.9F * r.w, r.middle_y());
      screen.rest();
      CHECK(screen.session.config() == before);
      CHECK_FALSE(screen.session.can_undo());
      CHECK_FALSE(screen.session.dragging());
    }
  }
}

TEST_CASE("sliding off, a cancelled touch and a second finger press nothing", "[ui][touch]") {
  Screen screen;
  const config::Config before = screen.session.config();
  const Rect more = screen.rect("action:view.standoff_mm.more");
  screen.down(more.middle_x(), more.middle_y());
  screen.rest();
  screen.up(more.middle_x(), more.middle_y() - 200);
  screen.rest();
  CHECK(screen.session.config() == before);

  screen.down(more.middle_x(), more.middle_y());
  screen.rest();
  screen.canvas().pointer(PointerKind::Cancel, 1, true, more.middle_x(), more.middle_y());
  screen.rest();
  CHECK(screen.session.config() == before);

  // The second finger's tap is left out while the first one is down elsewhere.
  screen.down(200, 300, 1);
  screen.rest();
  screen.down(more.middle_x(), more.middle_y(), 2);
  screen.up(more.middle_x(), more.middle_y(), 2);
  screen.rest();
  CHECK(screen.session.config() == before);
  screen.up(200, 300, 1);
  screen.rest();
  screen.tap("action:view.standoff_mm.more");
  CHECK(screen.session.config().view.standoff_mm > before.view.standoff_mm);
}

TEST_CASE("tools change what is shown and never the station", "[ui][touch]") {
  Screen screen;
  const config::Config before = screen.session.config();
  screen.tap("action:picture");
  CHECK(screen.view.picture == Picture::FitMap);
  CHECK(screen.has("action:fit_point"));
  screen.tap("action:picture");
  CHECK(screen.view.picture == Picture::Scene);
  CHECK(screen.has("action:scene"));
  screen.tap("action:picture");
  CHECK(screen.view.picture == Picture::Section);
  screen.tap("action:units");
  CHECK(screen.view.units == report::Units::Millimetre);
  CHECK(screen.canvas().take_view_changed());
  CHECK_FALSE(screen.canvas().take_view_changed());
  screen.tap("action:height");
  CHECK(screen.view.dough_counter);
  CHECK(screen.has("field:station.counter_height_mm"));
  CHECK(screen.session.config() == before);
}

TEST_CASE("reasons, people and the oven open their sheets", "[ui][touch]") {
  Screen screen;
  screen.tap("action:why.oven_counter");
  screen.tap("action:worst");
  screen.tap("action:people");
  screen.tap("field:oven.kind");
  const std::vector<std::string> sheets = screen.canvas().take_sheets();
  REQUIRE(sheets.size() == 4);
  CHECK(sheets[0].starts_with("why:height."));
  CHECK(sheets[1].starts_with("why:"));
  CHECK(sheets[2] == "people:0");
  CHECK(sheets[3] == "oven");
  CHECK(screen.canvas().take_sheets().empty());
}

TEST_CASE("a line of the people opens their sheet at the one whose line it is", "[ui][touch]") {
  for (const Size size : {Size{390, 790}, Size{390, 606}, Size{1280, 800}}) {
    Screen screen(size);
    REQUIRE(screen.session.add_cook().empty());
    REQUIRE(screen.session.add_cook().empty());
    screen.rest();
    const std::size_t cooks = screen.session.config().cooks.size();
    const Layout& layout = screen.canvas().layout();
    REQUIRE(layout.line_count == cooks);
    const float first =
        layout.lines.middle_y() - static_cast<float>(cooks) * layout.line_height / 2;
    for (std::size_t i = 0; i < cooks; ++i) {
      INFO(size.width << "x" << size.height << ", " << i);
      screen.tap(layout.lines.middle_x(),
                 first + (static_cast<float>(i) + 0.5F) * layout.line_height);
      const std::vector<std::string> sheets = screen.canvas().take_sheets();
      REQUIRE(sheets.size() == 1);
      CHECK(sheets[0] == "people:" + std::to_string(i));
    }
  }
}

TEST_CASE("undo and redo work by touch and only when there is something", "[ui][touch]") {
  Screen screen;
  screen.tap("action:undo");
  CHECK(screen.session.config() == config::Config{});
  screen.tap("action:oven.kind.next");
  CHECK(screen.session.config().oven.kind == config::OvenKind::TabletopMultiFuel);
  screen.tap("action:undo");
  CHECK(screen.session.config() == config::Config{});
  screen.tap("action:redo");
  CHECK(screen.session.config().oven.kind == config::OvenKind::TabletopMultiFuel);
}

TEST_CASE("the arrows go round all oven kinds", "[ui][touch]") {
  Screen screen;
  const config::OvenKind first = screen.session.config().oven.kind;
  for (int i = 0; i < 7; ++i) screen.tap("action:oven.kind.next");
  CHECK(screen.session.config().oven.kind == first);
  for (int i = 0; i < 7; ++i) screen.tap("action:oven.kind.previous");
  CHECK(screen.session.config().oven.kind == first);
}

TEST_CASE("a height of one's own can be given back", "[ui][touch]") {
  Screen screen;
  CHECK_FALSE(screen.has("action:recommended"));
  screen.tap("action:station.oven_base_height_mm.more");
  REQUIRE(screen.has("action:recommended"));
  screen.tap("action:recommended");
  CHECK_FALSE(screen.session.config().station.oven_base_height_mm.has_value());
  CHECK_FALSE(screen.has("action:recommended"));
}

TEST_CASE("who looks goes round those who work at the oven", "[ui][touch]") {
  Screen screen;
  open(screen.session, "link:" + std::string(preset_link("demo")));
  screen.canvas().wake();
  screen.rest();
  CHECK(screen.view.person == 0);
  screen.tap("action:person");
  CHECK(screen.view.person == 1);
  screen.tap("action:person");  // the child works at prep
  CHECK(screen.view.person == 0);
}

TEST_CASE("Tab goes through every item once and leaves at the end", "[ui][keyboard]") {
  Screen screen;
  const std::size_t count = screen.canvas().items().all().size();
  std::vector<std::string> seen;
  for (std::size_t i = 0; i < count; ++i) {
    REQUIRE(screen.key("Tab"));
    seen.push_back(std::string(screen.canvas().focus()));
  }
  CHECK_FALSE(screen.key("Tab"));
  CHECK(screen.canvas().focus().empty());
  std::sort(seen.begin(), seen.end());
  CHECK(std::unique(seen.begin(), seen.end()) == seen.end());
  // Backwards from outside it begins at the last.
  REQUIRE(screen.key("Tab", kShift));
  CHECK(screen.canvas().focus() == screen.canvas().items().all().back().id);
}

TEST_CASE("keys change the value that has the focus and leave others alone", "[ui][keyboard]") {
  Screen screen;
  for (const char* path : kRules) {
    const std::string field = std::string("field:") + path;
    while (screen.canvas().focus() != field) REQUIRE(screen.key("Tab"));
    const double from = number(screen.value(field));
    CHECK(screen.key("ArrowRight"));
    const double more = number(screen.value(field));
    INFO(path);
    CHECK(more > from);
    CHECK(screen.key("ArrowDown"));
    CHECK(number(screen.value(field)) < more);
    CHECK(screen.key("PageUp"));
    CHECK(number(screen.value(field)) > more);
    CHECK(screen.key("Home"));
    CHECK(number(screen.value(field)) < from);
  }
  CHECK_FALSE(screen.key("KeyA"));
  CHECK_FALSE(screen.key("ArrowRight", 2));  // with Control it belongs to the browser
}

TEST_CASE("Enter and Space press, Escape is left to the page", "[ui][keyboard]") {
  Screen screen;
  while (screen.canvas().focus() != "action:picture") REQUIRE(screen.key("Tab"));
  CHECK(screen.key("Enter"));
  CHECK(screen.view.picture == Picture::FitMap);
  CHECK(screen.key("Space"));
  CHECK(screen.view.picture == Picture::Scene);
  CHECK_FALSE(screen.key("Escape"));
  screen.canvas().blur();
  screen.rest();
  CHECK(screen.canvas().focus().empty());
  CHECK_FALSE(screen.key("Enter"));
}

TEST_CASE("items as JSON name their id, place and value", "[ui][items]") {
  Screen screen;
  const std::string json = screen.canvas().items().json();
  CHECK(json.front() == '[');
  CHECK(json.find("{\"id\":\"field:view.standoff_mm\",\"label\":\"Eye to oven\",\"rect\":[") !=
        std::string::npos);
  CHECK(json.find("\"value\":700}") != std::string::npos);
  CHECK(json.find("\"value\":\"tabletop_gas_large\"}") != std::string::npos);
}

TEST_CASE("the same id twice is found", "[ui][items]") {
  Items items;
  items.add("action:a", "A", {0, 0, 48, 48}, "");
  items.add("action:b", "B", {50, 0, 48, 48}, "");
  CHECK(items.repeated().empty());
  items.add("action:a", "A again", {100, 0, 48, 48}, "");
  CHECK(items.repeated() == "action:a");
}

TEST_CASE("bold letters are made at the screen's own density", "[ui]") {
  Screen screen;
  CHECK(ImGui::GetIO().Fonts->Fonts.back()->LastBaked->RasterizerDensity == 2);
}

TEST_CASE("nothing keeps asking for frames while a finger rests on the glass", "[ui][idle]") {
  Screen screen;
  const Rect r = screen.rect("field:view.standoff_mm");
  screen.down(r.middle_x(), r.middle_y());
  CHECK(screen.rest() <= 6);
  CHECK(screen.step() == 0);
  screen.up(r.middle_x(), r.middle_y());
  screen.rest();
}

TEST_CASE("the kind's word is the field table's", "[ui]") {
  const config::Field* field = config::find_field("oven.kind");
  REQUIRE(field != nullptr);
  for (std::size_t i = 0; i < field->choices.size(); ++i) {
    CHECK(kind_word(static_cast<config::OvenKind>(i)) == field->choices[i]);
  }
}
