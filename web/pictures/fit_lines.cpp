#include "web/pictures/fit_lines.h"

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "web/pictures/strokes.h"

namespace hs::web {
namespace {

// Patterns in turn; the fifth cook's line is the first's again, heavier.
constexpr std::array<float, 2> kLong{11, 5};
constexpr std::array<float, 2> kDots{2.5F, 3.5F};
constexpr std::array<float, 4> kLongDot{11, 4, 2.5F, 4};
std::span<const float> pattern_of(std::size_t n) {
  switch (n % 4) {
    case 1:
      return kLong;
    case 2:
      return kDots;
    case 3:
      return kLongDot;
    default:
      return {};
  }
}

constexpr float kLine = 2.2F, kHeavier = 3.4F;
constexpr float kName = kTextSmall, kNameHigh = 18, kNamePad = 5, kLongestName = 96;
constexpr float kAside = 4;  // of a card from its tip's own line

// A card of the name, and a line from it to what it names.
struct Tag {
  ImVec2 tip;
  Rect card;
  std::string_view name;
};

// The line: up from the border's far end to where the hands end, then up along their limit.
std::vector<ImVec2> line_of(const FitFrame& frame, const evaluate::FitCook& cook) {
  std::vector<ImVec2> line;
  const float limit = frame.x_of(cook.ceiling_mm);
  if (cook.corner_standoff_mm) {
    line.push_back(ImVec2(limit, frame.area.y));
    line.push_back(ImVec2(limit, frame.y_of(*cook.corner_standoff_mm)));
  }
  for (const evaluate::FitPlace& place : cook.border) {
    if (cook.corner_standoff_mm && place.floor_mm > cook.ceiling_mm) continue;
    line.push_back(ImVec2(frame.x_of(place.floor_mm), frame.y_of(place.standoff_mm)));
  }
  return line;
}

bool apart(const Rect& a, const Rect& b) {
  return a.right() < b.x || b.right() < a.x || a.bottom() < b.y || b.bottom() < a.y;
}

// From right to left, each card as near under its tip as it can be without touching what is taken,
// on either side of it; where there is no room under the tip, on the limit's line from the top
// down.
void place_cards(const Rect& area, std::vector<Tag>& tags, std::vector<Rect> taken) {
  constexpr float kStep = 3;
  std::sort(tags.begin(), tags.end(), [](const Tag& x, const Tag& y) { return x.tip.x > y.tip.x; });
  const int rows = std::max(1, static_cast<int>(area.h / kStep));
  for (Tag& tag : tags) {
    Rect& card = tag.card;
    const float lowest = area.bottom() - kNameHigh - 2;
    const float under = std::min(tag.tip.y + 8, lowest);
    card.y = under;  // where nothing is free
    bool placed = false;
    for (int n = 0; n < 4 * rows && !placed; ++n) {
      const int row = n / 2;
      Rect there = card;
      if (n % 2 == 1) there.x = std::max(area.x + 2, tag.tip.x - kAside - card.w);
      there.y = row < rows ? under + kStep * static_cast<float>(row)
                           : area.y + 3 + kStep * static_cast<float>(row - rows);
      placed = there.y <= lowest && std::all_of(taken.begin(), taken.end(),
                                                [&](const Rect& r) { return apart(there, r); });
      if (placed) card = there;
    }
    taken.push_back(card);
  }
}

}  // namespace

std::vector<Rect> draw_cooks(const Ui& ui, const FitFrame& frame, const config::Config& config,
                             const Knob& knob, const Rect& heat) {
  const Rect& a = frame.area;
  const std::vector<evaluate::FitCook>& cooks = frame.map.cooks;
  if (cooks.size() < 2) return {};
  const ImU32 ink = ui.colour(Tone::Ink);
  std::vector<Tag> tags;
  for (std::size_t i = 0; i < cooks.size(); ++i) {
    const evaluate::FitCook& cook = cooks[i];
    const std::vector<ImVec2> line = line_of(frame, cook);
    const float thickness = i < 4 ? kLine : kHeavier;
    const float limit = frame.x_of(cook.ceiling_mm);
    if (line.size() > 1) stroke(ui.draw, line, false, ink, thickness, pattern_of(i));
    if (!cook.corner_standoff_mm) {
      // The two do not meet on the map: the limit stands by itself.
      stroke(ui.draw, {ImVec2(limit, a.y), ImVec2(limit, a.bottom())}, false, ink, thickness,
             pattern_of(i));
    }
    const ImVec2 tip(limit, cook.corner_standoff_mm ? frame.y_of(*cook.corner_standoff_mm)
                                                    : a.bottom() - kNameHigh);
    const std::string_view name = config.cooks[cook.cook].name;
    const float wide = std::min(ui.width(name, kName, true), kLongestName) + 2 * kNamePad;
    const float left = std::min(tip.x + kAside, a.right() - wide - 2);
    tags.push_back({tip, {left, tip.y + 8, wide, kNameHigh}, name});
  }
  std::vector<Rect> taken{heat};
  if (knob) {
    taken = {heat,
             {knob->x - kKnob, knob->y - kKnob, 2 * kKnob, 2 * kKnob},
             {knob->x - 1, a.y, 2, a.h},
             {a.x, knob->y - 1, a.w, 2}};
  }
  place_cards(a, tags, std::move(taken));
  std::vector<Rect> cards;
  for (const Tag& tag : tags) {
    const float to = std::clamp(tag.tip.x, tag.card.x, tag.card.right());
    straight(ui.draw, tag.tip, ImVec2(to, tag.card.middle_y()), ink, 1.2F);
    ui.draw->AddCircleFilled(tag.tip, 4, ink, 16);
    ui.fill(tag.card, Tone::Card, 4);
    ui.frame(tag.card, Tone::Ink, 1, 4);
    ui.text(tag.card.x + kNamePad, tag.card.middle_y(), tag.name, kName, Tone::Ink, true,
            Side::Left, kLongestName);
    cards.push_back(tag.card);
  }
  return cards;
}

Rect draw_heat(const Ui& ui, const FitFrame& frame) {
  constexpr float kHot = 2.5F, kBarb = 7, kBarbEvery = 13;
  const Rect& a = frame.area;
  const std::size_t count = frame.map.heat_limit_mm.size();
  if (count < 2) return {};
  const ImU32 colour = ui.colour(Tone::Fail);
  const auto place = [&](std::size_t i) {
    return ImVec2(a.x + a.w * static_cast<float>(i) / static_cast<float>(count - 1),
                  frame.y_of(static_cast<double>(frame.map.heat_limit_mm[i])));
  };
  float next = a.x + kBarbEvery;
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const ImVec2 from = place(i);
    const ImVec2 to = place(i + 1);
    straight(ui.draw, from, to, colour, kHot);
    for (; next <= to.x; next += kBarbEvery) {
      const float y = from.y + (to.y - from.y) * (next - from.x) / (to.x - from.x);
      straight(ui.draw, ImVec2(next, y), ImVec2(next - 4, std::min(y + kBarb, a.bottom())), colour,
               kHot);
    }
  }
  constexpr std::string_view kLongWords = "too hot to linger below";
  const bool roomy = ui.width(kLongWords, kName) < 0.45F * a.w;
  const std::string_view words = roomy ? kLongWords : "too hot below";
  const float y = place(0).y - kNameHigh - 3;
  if (y < a.y) return {};
  const Rect card{a.x + 4, y, ui.width(words, kName) + 2 * kNamePad, kNameHigh};
  ui.fill(card, Tone::Card, 4);
  ui.text(card.x + kNamePad, card.middle_y(), words, kName, Tone::Ink);
  return card;
}

}  // namespace hs::web
