#include "web/app/widgets.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/number_text.h"

namespace hs::web {
namespace {

constexpr float kStepper = kTarget;

void draw_step_sign(const Ui& ui, const Rect& r, bool plus, Tone tone) {
  constexpr float kArm = 8;
  const float x = r.middle_x();
  const float y = r.middle_y();
  ui.line(x - kArm, y, x + kArm, y, tone, 3);
  if (plus) ui.line(x, y - kArm, x, y + kArm, tone, 3);
}

void draw_arrow(const Ui& ui, const Rect& r, bool forward, Tone tone) {
  const float x = r.middle_x();
  const float y = r.middle_y();
  const float d = forward ? 4.5F : -4.5F;
  const std::array points{ImVec2(x - d, y - 9), ImVec2(x + d, y), ImVec2(x - d, y + 9)};
  ui.draw->AddPolyline(points.data(), 3, ui.colour(tone), 0, 3);
}

bool end_button(Ui& ui, const Rect& r, std::string_view path, std::string_view part,
                std::string_view label, Touch& touch) {
  const std::string id = "action:" + std::string(path) + "." + std::string(part);
  touch = ui.target(id, label, r);
  ui.fill(r.inset(1.5F), touch.held ? Tone::ControlOn : Tone::Control);
  ui.frame(r.inset(1.5F), Tone::Rule, 1.5F);
  return touch.pressed;
}

// A rule's marks: every inch and half a foot, or every 20 mm and 100 mm, thinned to stay legible.
void draw_rule(const Ui& ui, const ValueSpec& spec, const Rect& r, double low, double high) {
  const bool inches = spec.units == report::Units::Inch;
  double small = inches ? 25.4 : 20.0;
  const double large = inches ? 152.4 : 100.0;
  const double per_mm = static_cast<double>(r.w) / (high - low);
  while (small * per_mm < 4) small *= 2;
  if (small < large) {
    for (double n = std::ceil(low / small); n * small <= high; n += 1) {
      const float x = r.x + static_cast<float>((n * small - low) * per_mm);
      ui.line(x, r.bottom() - 0.35F * r.h, x, r.bottom(), Tone::Rule, 1);
    }
  }
  for (double n = std::ceil(low / large); n * large <= high; n += 1) {
    const float x = r.x + static_cast<float>((n * large - low) * per_mm);
    ui.line(x, r.bottom() - 0.62F * r.h, x, r.bottom(), Tone::InkSoft, 1.5F);
  }
  ui.line(r.x, r.bottom(), r.right(), r.bottom(), Tone::InkSoft, 1.5F);
}

struct Scale {
  double low = 0, high = 1;
  Rect rule;
  float x_of(double mm) const {
    const double part = std::clamp((mm - low) / (high - low), 0.0, 1.0);
    return rule.x + rule.w * static_cast<float>(part);
  }
};

void draw_value(const Ui& ui, const ValueSpec& spec, const Rect& track, const Scale& scale,
                bool held) {
  ui.fill(track, Tone::Card);
  ui.frame(track, held ? Tone::Accent : Tone::Rule, held ? 2.5F : 1.5F);
  const Rect& rule = scale.rule;
  if (spec.band) {
    const float left = scale.x_of(spec.band->low_mm);
    const float right = std::max(scale.x_of(spec.band->high_mm), left + 3);
    ui.fill({left, rule.y, right - left, rule.h}, Tone::GoodWash, 2);
    ui.line(left, rule.y, left, rule.bottom(), Tone::Good, 1.5F);
    ui.line(right, rule.y, right, rule.bottom(), Tone::Good, 1.5F);
  }
  draw_rule(ui, spec, rule, scale.low, scale.high);
  if (spec.mark_mm) {
    // A pennant on its pole: the recommended place.
    const float x = scale.x_of(*spec.mark_mm);
    ui.line(x, rule.y - 1, x, rule.bottom(), Tone::Good, 2);
    ui.draw->AddTriangleFilled(ImVec2(x, rule.y - 2), ImVec2(x + 8, rule.y + 2),
                               ImVec2(x, rule.y + 6), ui.colour(Tone::Good));
  }
  const float x = scale.x_of(spec.value_mm);
  // A bead on the rule with a pointer up from it: what lies under it stays in sight.
  const float bead = spec.compact ? 5.5F : 7.5F;
  ui.draw->AddCircleFilled(ImVec2(x, rule.bottom() - 2), bead + 2, ui.colour(Tone::Card), 24);
  ui.line(x, rule.y - 2, x, rule.bottom() - 2, Tone::Accent, 3);
  ui.draw->AddCircleFilled(ImVec2(x, rule.bottom() - 2), bead, ui.colour(Tone::Accent), 24);

  const float text_y = track.y + (rule.y - track.y) / 2 + 1;
  const float left = track.x + 2.5F * kUnit;
  const float room = track.w - 5 * kUnit;
  if (spec.compact) {
    const float half = (rule.y - track.y) / 4;
    const float small = ui.fitted(spec.label, kTextSmall, 11.5F, track.w - 6, false);
    const std::size_t space = spec.label.rfind(' ');
    const bool fits = ui.width(spec.label, small) <= track.w - 6;
    ui.text(track.middle_x(), track.y + half + 3,
            fits || space == std::string_view::npos ? spec.label : spec.label.substr(space + 1),
            small, Tone::InkSoft, false, Side::Centre, track.w - 4);
    // Where it is too narrow for the unit, the number alone: the tool beside the picture names it.
    std::string_view words = spec.text;
    if (ui.width(words, kTextSmall, true) > track.w - 6) words = words.substr(0, words.rfind(' '));
    const float size = ui.fitted(words, 17, kTextSmall, track.w - 8, true);
    ui.text(track.middle_x(), track.y + 3 * half + 2, words, size, Tone::Ink, true, Side::Centre);
    return;
  }
  const bool large = track.h > 54;
  const float size = ui.fitted(spec.text, large ? 21.0F : 18.0F, kText, room * 0.62F, true);
  const float wide = ui.width(spec.text, size, true);
  ui.text(track.right() - 2.5F * kUnit, text_y, spec.text, size, Tone::Ink, true, Side::Right);
  const float label_room = room - wide - kUnit;
  const float label_size =
      ui.fitted(spec.label, large ? kText : kTextSmall, 11.5F, label_room, false);
  // Half a word helps nobody; the chip before the control says what it is, too.
  if (ui.width(spec.label, label_size) > label_room) return;
  const bool hint = large && spec.mark_mm && !spec.hint.empty();
  ui.text(left, hint ? text_y - 7 : text_y, spec.label, label_size, Tone::InkSoft);
  if (!hint) return;
  // All of it, or its first part.
  constexpr float kHint = 11.5F;
  const bool all = ui.width(spec.hint, kHint) <= label_room;
  ui.text(left, text_y + 9, all ? spec.hint : spec.hint.substr(0, spec.hint.find(',')), kHint,
          Tone::InkSoft, false, Side::Left, label_room);
}

double key_step(KeyAction key, const ValueSpec& spec, double low, double high) {
  switch (key) {
    case KeyAction::Less:
      return -spec.step_mm;
    case KeyAction::More:
      return spec.step_mm;
    case KeyAction::MuchLess:
      return -10 * spec.step_mm;
    case KeyAction::MuchMore:
      return 10 * spec.step_mm;
    case KeyAction::Least:
      return low - spec.value_mm;
    case KeyAction::Most:
      return high - spec.value_mm;
    case KeyAction::None:
    case KeyAction::Press:
    case KeyAction::Closer:
    case KeyAction::Farther:
      return 0;
  }
  return 0;
}

}  // namespace

double snapped(double value_mm, double step_mm, double least_mm, double most_mm) {
  const double near = std::round(value_mm / step_mm) * step_mm;
  return std::clamp(near, least_mm, most_mm);
}

ValueChange value_control(Ui& ui, const Rect& rect, const ValueSpec& spec, Hold& hold) {
  ValueChange change;
  const Rect less{rect.x, rect.y, kStepper, rect.h};
  const Rect more{rect.right() - kStepper, rect.y, kStepper, rect.h};
  const Rect track{less.right() + 2, rect.y + 1.5F, rect.w - 2 * kStepper - 4, rect.h - 3};
  const std::string id = "field:" + std::string(spec.path);

  Scale scale;
  const bool holds = hold.id == id;
  scale.low = holds ? hold.low : std::min(spec.low_mm, spec.value_mm);
  scale.high = holds ? hold.high : std::max(spec.high_mm, spec.value_mm);
  const float side = spec.compact ? 8 : 12;
  const float rule_height = spec.compact ? 9 : 17;
  scale.rule = {track.x + side, track.bottom() - rule_height - (spec.compact ? 5 : 6),
                track.w - 2 * side, rule_height};

  const auto step_to = [&](double by_mm) {
    // A step starts from the mark that is shown, the nearest one: from a value kept between two
    // marks the first step must move what the person reads.
    const double marks = std::round(spec.value_mm / spec.step_mm) * spec.step_mm;
    change.to_mm = std::clamp(marks + by_mm, spec.least_mm, spec.most_mm);
    change.done = true;
  };

  Touch touch;
  const std::string name(spec.label);
  if (end_button(ui, less, spec.path, "less", name + ": less", touch)) step_to(-spec.step_mm);
  draw_step_sign(ui, less, false, Tone::Ink);

  touch = ui.target(id, spec.label, track, trimmed(spec.value_mm, 1));
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  if (touch.began) {
    hold = {id, spec.value_mm, pointer.x, pointer.y, false, false, scale.low, scale.high};
  } else if (touch.held && hold.id == id && ImGui::IsMousePosValid()) {
    const float dx = pointer.x - hold.x, dy = pointer.y - hold.y;
    if (!hold.moved && !hold.passed && std::max(std::abs(dx), std::abs(dy)) > kStill) {
      hold.passed = std::abs(dy) > std::abs(dx);
      hold.moved = !hold.passed;
      if (hold.moved) hold.x += dx > 0 ? kStill : -kStill;
    }
    if (hold.moved) {
      const double per_px = (hold.high - hold.low) / static_cast<double>(scale.rule.w);
      const double wanted = hold.value + static_cast<double>(pointer.x - hold.x) * per_px;
      change.to_mm = snapped(wanted, spec.step_mm, std::max(spec.least_mm, hold.low),
                             std::min(spec.most_mm, hold.high));
      change.dragging = true;
    }
  }
  if (touch.ended && hold.id == id) {
    // A tap nudges toward itself by one step; it never jumps.
    const float gap = hold.x - scale.x_of(spec.value_mm);
    if (hold.moved) {
      change.done = true;
    } else if (touch.pressed && !hold.passed && std::abs(gap) > kStill) {
      step_to(gap > 0 ? spec.step_mm : -spec.step_mm);
    }
    hold.id.clear();
  }
  const double by_key = key_step(touch.key, spec, scale.low, scale.high);
  if (by_key != 0) step_to(by_key);
  const float wheel = touch.hovered ? ImGui::GetIO().MouseWheel : 0;
  if (wheel != 0) step_to(wheel > 0 ? spec.step_mm : -spec.step_mm);
  if (touch.hovered || touch.held) ui.cursor = "ew-resize";
  draw_value(ui, spec, track, scale, touch.held);

  if (end_button(ui, more, spec.path, "more", name + ": more", touch)) step_to(spec.step_mm);
  draw_step_sign(ui, more, true, Tone::Ink);
  return change;
}

Choice chooser(Ui& ui, const Rect& rect, std::string_view path, std::string_view label,
               std::string_view name, std::string_view value) {
  Choice choice = Choice::None;
  const Rect back{rect.x, rect.y, kStepper, rect.h};
  const Rect on{rect.right() - kStepper, rect.y, kStepper, rect.h};
  const Rect body{back.right() + 2, rect.y + 1.5F, rect.w - 2 * kStepper - 4, rect.h - 3};
  Touch touch;
  const std::string words(label);
  if (end_button(ui, back, path, "previous", words + ": the one before", touch)) {
    choice = Choice::Previous;
  }
  draw_arrow(ui, back, false, Tone::Ink);
  touch = ui.target("field:" + std::string(path), label, body, value);
  if (touch.pressed) choice = Choice::Open;
  if (touch.key == KeyAction::Less || touch.key == KeyAction::MuchLess) choice = Choice::Previous;
  if (touch.key == KeyAction::More || touch.key == KeyAction::MuchMore) choice = Choice::Next;
  ui.fill(body, touch.held ? Tone::ControlOn : Tone::Card);
  ui.frame(body, Tone::Rule, 1.5F);
  const bool narrow = body.w < 70;
  ui.paragraph(body.inset(narrow ? 2 : 5), name, kText, narrow ? 10.5F : 12.0F, narrow ? 3 : 2,
               Tone::Ink, true, Side::Centre);
  if (end_button(ui, on, path, "next", words + ": the next one", touch)) choice = Choice::Next;
  draw_arrow(ui, on, true, Tone::Ink);
  return choice;
}

bool switch_chip(Ui& ui, const Rect& rect, std::string_view id, std::string_view label,
                 std::string_view first, std::string_view second, bool second_chosen) {
  const Touch touch =
      ui.target(id, label, rect, "\"" + std::string(second_chosen ? second : first) + "\"");
  const Rect box = rect.inset(1.5F);
  ui.fill(box, touch.held ? Tone::ControlOn : Tone::Control);
  ui.frame(box, Tone::Rule, 1.5F);
  const float half = (box.h - 6) / 2;
  const Rect rows[] = {{box.x + 3, box.y + 3, box.w - 6, half},
                       {box.x + 3, box.y + 3 + half, box.w - 6, half}};
  for (int i = 0; i < 2; ++i) {
    const bool chosen = (i == 1) == second_chosen;
    if (chosen) ui.fill(rows[i], Tone::Accent, kRadius - 3);
    const std::string_view word = i == 0 ? first : second;
    const float size = ui.fitted(word, kText, 12, rows[i].w - 8, chosen);
    ui.text(rows[i].middle_x(), rows[i].middle_y(), word, size, chosen ? Tone::OnAccent : Tone::Ink,
            chosen, Side::Centre);
  }
  return touch.pressed;
}

bool chip(Ui& ui, const Rect& rect, std::string_view id, std::string_view label,
          std::string_view text, bool eye, bool filled) {
  const Touch touch = ui.target(id, label, rect);
  const Rect box = rect.inset(1.5F);
  const Tone ink = filled ? Tone::OnAccent : Tone::Ink;
  ui.fill(box, filled ? Tone::Accent : touch.held ? Tone::ControlOn : Tone::Control);
  if (!filled) ui.frame(box, Tone::Rule, 1.5F);
  if (eye) {
    draw_eye(ui, box.middle_x(), box.y + box.h * 0.34F, 24, ink);
    const float size = ui.fitted(text, kText, 12, box.w - 10, true);
    ui.text(box.middle_x(), box.y + box.h * 0.72F, text, size, ink, true, Side::Centre, box.w - 8);
  } else {
    ui.paragraph(box.inset(6), text, kText, 12, 2, ink, true, Side::Centre);
  }
  return touch.pressed;
}

void draw_eye(const Ui& ui, float x, float y, float size, Tone tone) {
  const float half = size / 2;
  const float bulge = size * 0.42F;
  const ImU32 ink = ui.colour(tone);
  ui.draw->AddBezierQuadratic(ImVec2(x - half, y), ImVec2(x, y - bulge), ImVec2(x + half, y), ink,
                              2, 14);
  ui.draw->AddBezierQuadratic(ImVec2(x - half, y), ImVec2(x, y + bulge), ImVec2(x + half, y), ink,
                              2, 14);
  ui.draw->AddCircleFilled(ImVec2(x, y), size * 0.15F, ink, 16);
}

bool tool(Ui& ui, const Rect& rect, std::string_view id, std::string_view label, Tool icon,
          bool enabled, std::string_view text) {
  const Touch touch = ui.target(id, label, rect);
  const Rect box = rect.inset(3);
  const Tone ink = enabled ? Tone::Ink : Tone::Rule;
  ui.fill(box, touch.held && enabled ? Tone::ControlOn : Tone::Control);
  ui.frame(box, Tone::Rule, enabled ? 1.5F : 1.0F);
  const float x = box.middle_x();
  const float y = box.middle_y();
  const ImU32 colour = ui.colour(ink);
  switch (icon) {
    case Tool::Word:
      ui.text(x, y, text, ui.fitted(text, 17, kTextSmall, box.w - 4, true), ink, true,
              Side::Centre);
      break;
    case Tool::Undo:
    case Tool::Redo: {
      const float turn = icon == Tool::Undo ? 1.0F : -1.0F;
      constexpr int kSteps = 14;
      std::array<ImVec2, kSteps + 1> arc;
      for (int i = 0; i <= kSteps; ++i) {
        const float angle = -2.6F + 3.5F * static_cast<float>(i) / kSteps;
        arc[static_cast<std::size_t>(i)] =
            ImVec2(x + turn * (8.5F * std::cos(angle)), y + 1.5F + 8.5F * std::sin(angle));
      }
      ui.draw->AddPolyline(arc.data(), kSteps + 1, colour, 0, 2.6F);
      const ImVec2 tip = arc[0];
      ui.draw->AddTriangleFilled(ImVec2(tip.x - turn * 2.5F, tip.y + 7.5F),
                                 ImVec2(tip.x - turn * 4.5F, tip.y - 4.5F),
                                 ImVec2(tip.x + turn * 7.0F, tip.y + 2.0F), colour);
      break;
    }
    case Tool::Closer:
    case Tool::Farther:
      draw_step_sign(ui, box, icon == Tool::Closer, ink);
      break;
  }
  return touch.pressed && enabled;
}

}  // namespace hs::web
