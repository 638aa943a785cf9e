// What stands round the picture of the lamp, in the places of the first screen's own: what its
// place is worth, what to mend first, and a control for each of its numbers.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "engine/config/fields.h"
#include "engine/report/lamp_words.h"
#include "engine/report/phrases.h"
#include "web/app/panels.h"
#include "web/pictures/lamp_picture.h"

namespace hs::web {
namespace {

void draw_worth(Ui& ui, const Layout& layout, const Station& station, const View& view,
                Intents& intents) {
  const evaluate::Lamp& lamp = *station.evaluation.light.lamp;
  const Rect& r = layout.lines;
  const std::string light = report::lamp_light(lamp);
  const std::string neck = report::lamp_neck(station.config, lamp, view.units);
  const std::vector<report::LampWord> words = report::lamp_words(lamp.checks);
  std::string label = light + "; " + neck;
  for (const report::LampWord& word : words) {
    label += std::string(", ") + std::string(word.word) +
             (word.verdict == Verdict::Ok ? " good" : " not good");
  }
  const Touch touch = ui.target("action:lamp_worth", label + ". Why?", r);
  if (touch.pressed) intents.push_back({Ask::Sheet, "why:light.pizza", 0});
  if (touch.held) ui.fill(r, Tone::ControlOn);
  const bool three = r.h >= 3 * layout.line_height;
  const float step = three ? std::min(layout.line_height * 1.3F, r.h / 3) : r.h / 2;
  const float size = layout.roomy ? kText + 1 : kText - 1;
  float y = r.middle_y() - step * (three ? 1.0F : 0.5F);
  const std::string first = lamp.head ? light : std::string("no place within this neck works");
  ui.text(r.x + 4, y, first, ui.fitted(first, size + 1, 12, r.w - 8, true), Tone::Ink, true,
          Side::Left, r.w - 8);
  y += step;
  if (lamp.head) {
    const float room = r.w / static_cast<float>(words.size());
    float x = r.x + 4;
    for (const report::LampWord& word : words) {
      ui.badge(x + 8, y, 7, word.verdict);
      ui.text(x + 20, y, word.word, ui.fitted(word.word, size, 11.5F, room - 24, false), Tone::Ink,
              word.verdict != Verdict::Ok);
      x += room;
    }
    y += step;
  }
  if (three && lamp.head) {
    ui.text(r.x + 4, y, neck, ui.fitted(neck, size, 12, r.w - 8, false), Tone::Ink, false,
            Side::Left, r.w - 8);
  }
}

void draw_saying(Ui& ui, const Layout& layout, const Station& station, const View& view,
                 Intents& intents) {
  const report::LampSaying saying =
      report::lamp_saying(station.config, station.evaluation, view.units);
  const Rect& r = layout.caution;
  if (saying.text.empty()) return;
  const Touch touch = ui.target("action:lamp_saying", saying.text + " Why?", r);
  if (touch.pressed) {
    intents.push_back({Ask::Sheet, "why:" + std::string(saying.rule), 0});
  }
  ui.fill(r, touch.held ? Tone::ControlOn : wash_of(saying.verdict));
  ui.frame(r, tone_of(saying.verdict), 2);
  ui.badge(r.x + 22, r.middle_y(), 11, saying.verdict);
  ui.paragraph({r.x + 42, r.y + 3, r.w - 54, r.h - 6}, saying.text,
               layout.roomy ? kText + 1 : kText, 12, 3, Tone::Ink, true);
}

ValueSpec spec_of(std::string_view path, std::string_view label, double value, double low,
                  double high, const View& view) {
  const config::Field& field = *config::find_field(path);
  ValueSpec spec;
  spec.path = path;
  spec.label = label;
  spec.value_mm = value;
  spec.low_mm = std::max(low, field.min);
  spec.high_mm = std::min(high, field.max);
  spec.least_mm = field.min;
  spec.most_mm = field.max;
  spec.step_mm = view.units == report::Units::Inch ? 12.7 : 10;
  spec.text = report::plain_length(std::abs(value), view.units, true);
  spec.units = view.units;
  return spec;
}

// One of the head's three numbers; the other two stay where they are shown.
void head_control(Ui& ui, const Rect& row, const ValueSpec& spec, double Vec::*part, double sign,
                  Vec head, Hold& hold, Intents& intents) {
  const ValueChange change = value_control(ui, row, spec, hold);
  if (change.to_mm) {
    head.*part = sign * *change.to_mm;
    ask_head(head, intents);
  }
  if (change.done) intents.push_back({Ask::DragEnd, {}, 0});
}

void plain_control(Ui& ui, const Rect& row, const ValueSpec& spec, Hold& hold, Intents& intents) {
  const ValueChange change = value_control(ui, row, spec, hold);
  if (change.to_mm) intents.push_back({Ask::Drag, std::string(spec.path), *change.to_mm});
  if (change.done) intents.push_back({Ask::DragEnd, {}, 0});
}

Rect after(const Rect& row, float wide) {
  return {row.x + wide + kUnit, row.y, row.w - wide - kUnit, row.h};
}

void draw_numbers(Ui& ui, const Layout& layout, const Station& station, const View& view,
                  Hold& hold, Intents& intents) {
  const config::Light& light = station.config.light;
  const evaluate::Lamp& lamp = *station.evaluation.light.lamp;
  const Vec head = shown_head(lamp);
  const auto mark = [&](double value) {
    return lamp.search.best ? std::optional<double>(value) : std::nullopt;
  };
  const Vec best = lamp.search.best.value_or(head);

  const float wide = layout.height.w < 330 ? 64.0F : 84.0F;
  const bool right = light.mount == config::Mount::Right;
  if (switch_chip(ui, {layout.height.x, layout.height.y, wide, layout.height.h},
                  "action:light.mount", "Side of the mouth on which the lamp's neck is fixed",
                  "Left", "Right", right)) {
    const config::Mount other = right ? config::Mount::Left : config::Mount::Right;
    intents.push_back({Ask::Choose, "light.mount", static_cast<double>(other)});
  }
  ValueSpec across = spec_of("light.head.across_mm", "Sideways", head.x, -600, 600, view);
  across.mark_mm = mark(best.x);
  if (std::abs(head.x) >= 1) across.text += head.x > 0 ? " right" : " left";
  head_control(ui, after(layout.height, wide), across, &Vec::x, 1, head, hold, intents);

  const bool own = light.head.given();
  if (chip(ui, {layout.sight.x, layout.sight.y, wide, layout.sight.h}, "action:lamp_best",
           own ? "Hang the lamp at the best place found" : "The lamp hangs at the best place found",
           "Best place", false, !own) &&
      own) {
    intents.push_back({Ask::LampBest, {}, 0});
  }
  ValueSpec neck = spec_of("light.neck_mm", "Neck", light.neck_mm, 200, 1500, view);
  if (lamp.search.shortest_neck_mm) {
    neck.mark_mm = lamp.search.shortest_neck_mm;
    neck.band = height::Band{*lamp.search.shortest_neck_mm, neck.high_mm};
  }
  plain_control(ui, after(layout.sight, wide), neck, hold, intents);

  ValueSpec ahead = spec_of("light.head.ahead_mm", "In front", -head.y, 0, 1000, view);
  ahead.mark_mm = mark(-best.y);
  ValueSpec up = spec_of("light.head.up_mm", "Above floor", head.z, 0, 900, view);
  up.mark_mm = mark(best.z);
  ahead.compact = up.compact = true;
  // Two that are as wide, in the places of the kind and the prep depth.
  const Rect both{layout.kind.x, layout.kind.y, layout.prep.right() - layout.kind.x, layout.kind.h};
  const float half = (both.w - kUnit) / 2;
  head_control(ui, {both.x, both.y, half, both.h}, ahead, &Vec::y, -1, head, hold, intents);
  head_control(ui, {both.x + half + kUnit, both.y, half, both.h}, up, &Vec::z, 1, head, hold,
               intents);
  if (layout.dough.h <= 0) return;
  ValueSpec lumens = spec_of("light.lumens", "Lamp's light", light.lumens, 0, 2000, view);
  lumens.step_mm = 50;
  lumens.text = std::to_string(static_cast<int>(std::lround(light.lumens))) + " lm";
  lumens.units = report::Units::Millimetre;
  plain_control(ui, layout.dough, lumens, hold, intents);
}

}  // namespace

void draw_lamp_panel(Ui& ui, const Layout& layout, const Station& station, const View& view,
                     Hold& hold, Intents& intents) {
  draw_worth(ui, layout, station, view, intents);
  draw_saying(ui, layout, station, view, intents);
  draw_numbers(ui, layout, station, view, hold, intents);
}

}  // namespace hs::web
