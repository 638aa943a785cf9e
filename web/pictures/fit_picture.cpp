#include "web/pictures/fit_picture.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/report/fit_words.h"
#include "engine/report/ticks.h"
#include "web/app/widgets.h"
#include "web/pictures/fit_frame.h"
#include "web/pictures/fit_lines.h"
#include "web/pictures/fit_shades.h"

namespace hs::web {
namespace {

constexpr int kColumns = 96;
constexpr int kRows = 64;
constexpr float kLabel = kTextSmall;
constexpr std::string_view kGoodWords = "good for all";

void draw_axes(const Ui& ui, const FitFrame& frame, report::Units units) {
  const Rect& a = frame.area;
  const evaluate::FitMap& map = frame.map;
  const std::string unit(report::unit_text(units));
  const double across =
      report::tick_step(map.floor_low_mm, map.floor_high_mm, static_cast<double>(a.w), 52, units);
  for (const double mm : report::ticks(map.floor_low_mm, map.floor_high_mm, across)) {
    const float x = frame.x_of(mm);
    ui.line(x, a.bottom(), x, a.bottom() + 4, Tone::Ink, 1.5F);
    ui.text(x, a.bottom() + 12, report::tick_text(mm, units), kLabel, Tone::Ink, false,
            Side::Centre);
  }
  const double up = report::tick_step(map.standoff_low_mm, map.standoff_high_mm,
                                      static_cast<double>(a.h), 30, units);
  for (const double mm : report::ticks(map.standoff_low_mm, map.standoff_high_mm, up)) {
    const float y = frame.y_of(mm);
    ui.line(a.x - 4, y, a.x, y, Tone::Ink, 1.5F);
    ui.text(a.x - 7, y, report::tick_text(mm, units), kLabel, Tone::Ink, false, Side::Right);
  }
  ui.frame({a.x - 1, a.y - 1, a.w + 2, a.h + 2}, Tone::Ink, 1.5F, 0);
  ui.text(a.middle_x(), a.bottom() + 27, "oven floor above the ground, " + unit, kLabel, Tone::Ink,
          true, Side::Centre);
  // The key stands at the other end of this line.
  std::string up_words = "eye in front of the mouth, " + unit;
  if (ui.width(up_words, kLabel, true) + ui.width(kGoodWords, kLabel) > a.w) {
    up_words = "eye to mouth, " + unit;
  }
  ui.text(a.x - 36, a.y - 12, up_words, kLabel, Tone::Ink, true);
}

// Whose view the shades are.
std::string_view caption_of(const evaluate::FitMap& map) {
  return map.cooks.size() > 1 ? "% of the pizza the worst-placed sees" : "% of the pizza seen";
}

void draw_key(const Ui& ui, const FitFrame& frame) {
  const Rect& a = frame.area;
  const float y = a.y - 12;
  const float x = a.right() - ui.width(kGoodWords, kLabel);
  ui.fill({x - 20, y - 6, 14, 12}, Tone::GoodWash, 2);
  ui.frame({x - 20, y - 6, 14, 12}, Tone::Good, 2.5F, 2);
  ui.text(a.right(), y, kGoodWords, kLabel, Tone::Ink, false, Side::Right);
  const float room = a.w + 36;
  const std::string_view whose = caption_of(frame.map);
  const float lower = shade_key_fits(ui, whose, room) ? 0 : kShadeKeyLine;
  draw_shade_key(ui, whose, a.x - 36, a.bottom() + 47 + lower, room);
}

// Where the floor is too high for everyone's hands. A single cook's limit is drawn here, those of
// several with their names.
void draw_too_high(const Ui& ui, const FitFrame& frame, float good_right) {
  const Rect& a = frame.area;
  constexpr std::string_view kWords[] = {"too high for", "the hands"};
  constexpr float kPad = 5, kRow = 17;
  float from = good_right;
  for (const evaluate::FitCook& cook : frame.map.cooks) {
    from = std::max(from, frame.x_of(cook.ceiling_mm));
  }
  if (good_right > 0 && frame.map.cooks.size() == 1) {
    ui.line(good_right, a.y, good_right, a.bottom(), Tone::Good, 2);
  }
  const float wide = ui.width(kWords[0], kLabel) + 2 * kPad;
  if (a.right() - from < wide + 2) return;
  const float middle = (from + a.right()) / 2;
  ui.fill({middle - wide / 2, a.y + 3, wide, 2 * kRow}, Tone::Card, 4);
  float y = a.y + 3 + kRow / 2;
  for (const std::string_view line : kWords) {
    ui.text(middle, y, line, kLabel, Tone::Ink, false, Side::Centre);
    y += kRow;
  }
}

// The words on a card over the finger, inside the map; beside it where there is no room above.
void draw_flag(const Ui& ui, const Rect& area, ImVec2 at, const std::vector<std::string>& lines) {
  constexpr float kRow = 18, kPad = 7, kOver = 46;
  float wide = 0;
  for (const std::string& line : lines) wide = std::max(wide, ui.width(line, kLabel, true));
  wide = std::min(wide + 2 * kPad, area.w);
  const float high = kRow * static_cast<float>(lines.size()) + 2 * kPad;
  const bool above = at.y - kOver - high >= area.y;
  const float side = at.x > area.middle_x() ? at.x - kOver - wide : at.x + kOver;
  const float x = std::clamp(above ? at.x - wide / 2 : side, area.x, area.right() - wide);
  const Rect card{x, above ? at.y - kOver - high : area.y + 2, wide, high};
  ui.fill(card, Tone::Card);
  ui.frame(card, Tone::Ink);
  float y = card.y + kPad + kRow / 2;
  for (const std::string& line : lines) {
    ui.text(card.x + kPad, y, line, kLabel, Tone::Ink, y < card.y + kRow + kPad, Side::Left,
            wide - 2 * kPad);
    y += kRow;
  }
}

}  // namespace

void FitPicture::refresh(const config::Config& config, bool dragging) {
  config::Config key = config;
  key.station.oven_base_height_mm.reset();
  key.station.counter_height_mm.reset();
  // The map's own range grows with a far watching distance, and only then depends on it.
  key.view.standoff_mm = held_ && key_
                             ? key_->view.standoff_mm
                             : std::max(1300.0, std::ceil(key.view.standoff_mm / 100) * 100);
  if (key_ && *key_ == key && (!coarse_ || dragging)) return;
  coarse_ = dragging;
  map_ = evaluate::fit_map(key, dragging ? kColumns / 2 : kColumns, dragging ? kRows / 2 : kRows);
  key_ = std::move(key);
  ++computed_;
}

void FitPicture::draw(Ui& ui, const Rect& rect, const config::Config& config,
                      const evaluate::Evaluation& evaluation, const View& view, bool dragging,
                      Intents& intents) {
  refresh(config, dragging);
  flag_.clear();
  names_.clear();
  if (map_.columns < 2) {
    ui.paragraph(rect.inset(16), "Nobody works at the oven, so there is nothing to map.", kText,
                 kTextSmall, 3, Tone::Ink, false, Side::Centre);
    return;
  }
  const float key = shade_key_fits(ui, caption_of(map_), rect.w - 16) ? 0 : kShadeKeyLine;
  const FitFrame frame{map_, {rect.x + 42, rect.y + 26, rect.w - 52, rect.h - 84 - key}};
  draw_shades(ui, frame);
  const float good_right = draw_good(ui, frame);
  Knob knob;
  if (evaluation.used.oven_floor_mm) {
    knob = ImVec2(frame.x_of(*evaluation.used.oven_floor_mm), frame.y_of(config.view.standoff_mm));
    ui.line(knob->x, frame.area.y, knob->x, frame.area.bottom(), Tone::Ink, 1);
    ui.line(frame.area.x, knob->y, frame.area.right(), knob->y, Tone::Ink, 1);
  }
  draw_too_high(ui, frame, good_right);
  const Rect heat = draw_heat(ui, frame);
  names_ = draw_cooks(ui, frame, config, knob, heat);
  draw_axes(ui, frame, view.units);
  draw_key(ui, frame);

  if (!knob) return;
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const float x = knob->x, y = knob->y;
  // The target stays inside the picture even where the point is at its edge.
  const float half = kTarget / 2;
  const Rect around{std::clamp(x - half, rect.x, rect.right() - kTarget),
                    std::clamp(y - half, rect.y, rect.bottom() - kTarget), kTarget, kTarget};
  const std::string value = "[" + trimmed(*evaluation.used.oven_floor_mm, 1) + "," +
                            trimmed(config.view.standoff_mm, 1) + "]";
  const Touch touch =
      ui.target("action:fit_point", "Oven floor height and watching distance", around, value);
  double floor_mm = *evaluation.used.oven_floor_mm;
  double standoff_mm = config.view.standoff_mm;
  const double step = view.units == report::Units::Inch ? 6.35 : 5;
  bool moved = false;
  if (touch.began) {
    held_ = true;
    grab_x_ = pointer.x - x;
    grab_y_ = pointer.y - y;
  } else if (touch.held && held_ && ImGui::IsMousePosValid()) {
    const float px = std::clamp(pointer.x - grab_x_, frame.area.x, frame.area.right());
    const float py = std::clamp(pointer.y - grab_y_, frame.area.y, frame.area.bottom());
    moved = std::abs(px - x) > 1 || std::abs(py - y) > 1;
    if (moved) {
      floor_mm = frame.floor_at(px);
      standoff_mm = frame.standoff_at(py);
    }
  }
  switch (touch.key) {
    case KeyAction::Less:
    case KeyAction::More:
      floor_mm += touch.key == KeyAction::More ? step : -step;
      moved = true;
      break;
    case KeyAction::MuchLess:
    case KeyAction::MuchMore:
      standoff_mm += touch.key == KeyAction::MuchMore ? 4 * step : -4 * step;
      moved = true;
      break;
    case KeyAction::None:
    case KeyAction::Least:
    case KeyAction::Most:
    case KeyAction::Press:
    case KeyAction::Closer:
    case KeyAction::Farther:
      break;
  }
  if (moved) {
    // What stands on marks is the height that is built, not the floor inside the oven.
    const auto drag = [&intents](std::string_view path, double mm, double step_mm) {
      const config::Field* field = config::find_field(path);
      if (field == nullptr) return;
      intents.push_back(
          {Ask::Drag, std::string(path), snapped(mm, step_mm, field->min, field->max)});
    };
    drag("station.oven_base_height_mm", floor_mm - config.oven.floor_above_base_mm, step);
    drag("view.standoff_mm", standoff_mm, 2 * step);
    if (!touch.held) intents.push_back({Ask::DragEnd, {}, 0});
  }
  if (touch.ended && held_) {
    held_ = false;
    intents.push_back({Ask::DragEnd, {}, 0});
  }
  if (touch.hovered || touch.held) ui.cursor = "move";
  ui.draw->AddCircleFilled(ImVec2(x, y), kKnob, ui.colour(Tone::Card), 32);
  ui.draw->AddCircleFilled(ImVec2(x, y), 10, ui.colour(Tone::Accent), 32);
  ui.draw->AddCircleFilled(ImVec2(x, y), 3.5F, ui.colour(Tone::OnAccent), 16);

  // Under the finger: the point while it is held, else whatever place the finger or mouse is at.
  const bool over = ImGui::IsMousePosValid() && frame.area.contains(pointer.x, pointer.y);
  if (!held_ && !over) return;
  const ImVec2 at = held_ ? ImVec2(x, y) : pointer;
  const double floor_here_mm = held_ ? *evaluation.used.oven_floor_mm : frame.floor_at(at.x);
  const double standoff_here_mm = held_ ? config.view.standoff_mm : frame.standoff_at(at.y);
  flag_ = report::fit_words(config, evaluate::fit_at(config, floor_here_mm, standoff_here_mm),
                            floor_here_mm, standoff_here_mm, view.units);
  draw_flag(ui, frame.area, at, flag_);
}

}  // namespace hs::web
