#include "web/pictures/lamp_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/light/lamp.h"
#include "engine/report/lamp_drawing.h"
#include "engine/report/lamp_words.h"
#include "engine/report/phrases.h"
#include "web/app/widgets.h"

namespace hs::web {
namespace {

constexpr double kStep_mm = 25;  // of the places shown
constexpr float kPad = 4;
constexpr std::string_view kFixed = "A fixed lamp that nobody holds: common practice, no source.";

// The words on a card over the finger, beside it where there is no room above.
void draw_card(const Ui& ui, const Rect& area, ImVec2 at, const evaluate::Lamp& lamp) {
  constexpr float kRow = 19, kInside = 7, kOver = 44;
  const std::string first = report::lux(lamp.light.lux);
  const std::string_view second = !lamp.against.empty()       ? lamp.against
                                  : !lamp.checks.neck_reaches ? "farther than the neck goes"
                                                              : "works here";
  const float least = std::min(area.w, ui.width(second, kTextSmall) + 2 * kInside);
  const float wide = std::max(least, ui.width(first, kText, true) + 2 * kInside + 26);
  const float high = 2 * kRow + 2 * kInside;
  const bool above = at.y - kOver - high >= area.y;
  const float side = at.x > area.middle_x() ? at.x - kOver - wide : at.x + kOver;
  const float x = std::clamp(above ? at.x - wide / 2 : side, area.x, area.right() - wide);
  const Rect card{x, above ? at.y - kOver - high : area.y + 2, wide, high};
  const bool good = lamp.against.empty() && lamp.checks.neck_reaches;
  ui.fill(card, Tone::Card);
  ui.frame(card, Tone::Ink);
  ui.badge(card.right() - kInside - 8, card.y + kInside + kRow / 2, 8,
           good ? Verdict::Ok : Verdict::Fail);
  ui.text(card.x + kInside, card.y + kInside + kRow / 2, first, kText, Tone::Ink, true);
  ui.text(card.x + kInside, card.y + kInside + 1.5F * kRow, second,
          ui.fitted(second, kTextSmall, 11.5F, wide - 2 * kInside, false), Tone::Ink, false,
          Side::Left, wide - 2 * kInside);
}

// A small shade with a bulb: what the finger takes.
void draw_head(const Ui& ui, ImVec2 at, bool held) {
  ui.draw->AddCircleFilled(at, 13, ui.colour(Tone::Card), 32);
  ui.draw->AddCircleFilled(at, held ? 11.5F : 10.0F, ui.colour(Tone::Accent), 32);
  ui.draw->AddCircleFilled(at, 4, ui.colour(Tone::OnAccent), 16);
}

// What stands below the picture where no lamp is fixed yet.
constexpr float kAsking = kTarget + kUnit + 50;

void no_lamp(Ui& ui, const Rect& rect, Intents& intents) {
  const float wide = std::min(170.0F, (rect.w - 3 * kUnit) / 2);
  const float y = rect.bottom() - kTarget - kUnit;
  const float x = rect.middle_x() - wide - kUnit / 2;
  ui.paragraph({rect.x + kPad, y - 46, rect.w - 2 * kPad, 42}, kFixed, kText, 12, 2, Tone::Ink,
               false, Side::Centre);
  const auto side = [&](float left, std::string_view id, std::string_view label,
                        std::string_view words, config::Mount mount) {
    if (chip(ui, {left, y, wide, kTarget}, id, label, words)) {
      intents.push_back({Ask::Choose, "light.mount", static_cast<double>(mount)});
    }
  };
  side(x, "action:lamp_left", "Fix a lamp on the left of the mouth", "Lamp on the left",
       config::Mount::Left);
  side(x + wide + kUnit, "action:lamp_right", "Fix a lamp on the right of the mouth",
       "Lamp on the right", config::Mount::Right);
}

}  // namespace

Vec shown_head(const evaluate::Lamp& lamp) {
  return lamp.head.value_or(Vec{lamp.mount.x, std::min(lamp.mount.y, 0.0) - 200, 250});
}

void ask_head(const Vec& head, Intents& intents) {
  const std::pair<std::string_view, double> numbers[] = {{"light.head.across_mm", head.x},
                                                         {"light.head.ahead_mm", -head.y},
                                                         {"light.head.up_mm", head.z}};
  for (const auto& [path, mm] : numbers) intents.push_back({Ask::Drag, std::string(path), mm});
}

void LampPicture::refresh(const config::Config& config, const evaluate::Evaluation& evaluation,
                          bool dragging) {
  config::Config key = config;
  key.light.head = {};
  const auto& lamp = evaluation.light.lamp;
  const double across_mm = lamp ? shown_head(*lamp).x : 0;
  if (map_of_ && *map_of_ == key && map_.across_mm == across_mm && (!coarse_ || dragging)) return;
  coarse_ = dragging;
  map_ = evaluate::lamp_map(config, evaluation, across_mm, dragging ? 2 * kStep_mm : kStep_mm);
  map_of_ = std::move(key);
  ++computed_;
}

void LampPicture::place(const Rect& rect, const config::Config& config,
                        const evaluate::Evaluation& evaluation) {
  const report::Box box = report::lamp_frame(config, evaluation);
  const auto wide = static_cast<float>(box.right_mm - box.left_mm);
  const auto high = static_cast<float>(box.top_mm - box.bottom_mm);
  text_ = rect.h > 240 ? kText : kTextSmall;
  const float per_mm = std::min((rect.w - 2 * kPad) / std::max(1.0F, wide),
                                (rect.h - 2 * kPad) / std::max(1.0F, high));
  to_ = {.x = (rect.w - wide * per_mm) / 2 - static_cast<float>(box.left_mm) * per_mm,
         .y = (rect.h + high * per_mm) / 2 + static_cast<float>(box.bottom_mm) * per_mm,
         .per_mm = per_mm};
  drawing_ = report::lamp_drawing(
      config, evaluation, map_,
      {.text_mm = static_cast<double>(1.25F * text_ / per_mm), .names = rect.h > 150});
}

void LampPicture::hands(Ui& ui, const Rect& rect, const config::Config& config,
                        const evaluate::Evaluation& evaluation, const View& view,
                        Intents& intents) {
  const evaluate::Lamp& lamp = *evaluation.light.lamp;
  Vec head = shown_head(lamp);
  const double floor_mm = *evaluation.used.oven_floor_mm;
  Projection to = to_;
  to.x += rect.x;
  to.y += rect.y;
  const ImVec2 at = to.of({head.y, floor_mm + head.z});
  const float half = kTarget / 2;
  const Rect around{std::clamp(at.x - half, rect.x, rect.right() - kTarget),
                    std::clamp(at.y - half, rect.y, rect.bottom() - kTarget), kTarget, kTarget};
  const std::string value =
      "[" + trimmed(head.x, 1) + "," + trimmed(-head.y, 1) + "," + trimmed(head.z, 1) + "]";
  const Touch touch =
      ui.target("action:lamp_head",
                "Lamp's head. Arrow keys move it, Page Up and Page Down sideways", around, value);
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const double step = view.units == report::Units::Inch ? 6.35 : 5;
  const auto moved_to = [&](Vec next) {
    const auto keep = [&](std::string_view path, double mm) {
      const config::Field& field = *config::find_field(path);
      return snapped(mm, step, field.min, field.max);
    };
    next = {keep("light.head.across_mm", next.x), -keep("light.head.ahead_mm", -next.y),
            keep("light.head.up_mm", next.z)};
    ask_head(next, intents);
  };
  if (touch.began) {
    held_ = true;
    grab_x_ = pointer.x - at.x;
    grab_y_ = pointer.y - at.y;
  } else if (touch.held && held_ && ImGui::IsMousePosValid()) {
    const float x = std::clamp(pointer.x - grab_x_, rect.x, std::min(rect.right(), to.x));
    const float y = std::clamp(pointer.y - grab_y_, rect.y, rect.bottom());
    if (std::abs(x - at.x) > 1 || std::abs(y - at.y) > 1) {
      moved_to({head.x, static_cast<double>((x - to.x) / to.per_mm),
                static_cast<double>((to.y - y) / to.per_mm) - floor_mm});
    }
  }
  const bool more = touch.key == KeyAction::More || touch.key == KeyAction::MuchMore;
  switch (touch.key) {
    case KeyAction::Less:
    case KeyAction::More:
      (ui.focus->sideways ? head.y : head.z) += more ? step : -step;
      moved_to(head);
      intents.push_back({Ask::DragEnd, {}, 0});
      break;
    case KeyAction::MuchLess:
    case KeyAction::MuchMore:
      head.x += more ? 4 * step : -4 * step;
      moved_to(head);
      intents.push_back({Ask::DragEnd, {}, 0});
      break;
    case KeyAction::None:
    case KeyAction::Least:
    case KeyAction::Most:
    case KeyAction::Press:
    case KeyAction::Closer:
    case KeyAction::Farther:
      break;
  }
  if (touch.ended && held_) {
    held_ = false;
    intents.push_back({Ask::DragEnd, {}, 0});
  }
  if (touch.hovered || touch.held) ui.cursor = "move";
  draw_head(ui, at, held_);
  if (held_ && config.light.head.given()) draw_card(ui, rect, at, lamp);
}

void LampPicture::draw(Ui& ui, const Rect& rect, const config::Config& config,
                       const evaluate::Evaluation& evaluation, std::uint32_t revision,
                       const View& view, bool dragging, Intents& intents) {
  if (!evaluation.used.oven_floor_mm) {
    ui.paragraph(rect.inset(16), "Nobody works at the oven, so no lamp is asked for.", kText,
                 kTextSmall, 3, Tone::Ink, false, Side::Centre);
    return;
  }
  refresh(config, evaluation, dragging);
  const bool fixed = evaluation.light.lamp.has_value();
  const Rect area{rect.x, rect.y, rect.w, rect.h - (fixed ? 0 : kAsking)};
  const Key key{revision, computed_, area.w, area.h};
  if (!made_ || !(key == key_)) place(area, config, evaluation);
  key_ = key;
  made_ = true;
  ui.draw->PushClipRect(ImVec2(area.x, area.y), ImVec2(area.right(), area.bottom()), true);
  Projection to = to_;
  to.x += area.x;
  to.y += area.y;
  painter_.paint(ui, drawing_, to, text_);
  ui.draw->PopClipRect();
  if (!fixed) {
    no_lamp(ui, rect, intents);
    return;
  }
  hands(ui, rect, config, evaluation, view, intents);
}

}  // namespace hs::web
