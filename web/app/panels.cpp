#include "web/app/panels.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "imgui.h"

namespace hs::web {
namespace {

constexpr float kSmallest = 11.5F;

std::string sheet_of(std::string_view rule) { return "why:" + std::string(rule); }

// A headline's value with its unit smaller: "42 1/2" then "in".
void draw_figure(const Ui& ui, float x, float y, std::string_view value, float size, float room) {
  const std::size_t space = value.rfind(' ');
  const bool has_unit = space != std::string_view::npos && value.size() - space <= 4;
  const std::string_view number = has_unit ? value.substr(0, space) : value;
  const std::string_view unit = has_unit ? value.substr(space + 1) : std::string_view{};
  const float unit_share = 0.55F;
  while (size > 20 &&
         ui.width(number, size, true) + ui.width(unit, size * unit_share, true) + 6 > room) {
    size -= 1;
  }
  ui.text(x, y, number, size, Tone::Ink, true);
  if (has_unit) {
    ui.text(x + ui.width(number, size, true) + 6, y + size * 0.17F, unit, size * unit_share,
            Tone::Ink, true);
  }
}

// As many whole parts as there is room for: half a clause tells nobody what is wrong.
std::string_view whole_parts(const Ui& ui, std::string_view text, std::string_view between,
                             float size, float room, bool heavy = false) {
  while (ui.width(text, size, heavy) > room) {
    const std::size_t at = text.rfind(between);
    if (at == std::string_view::npos) break;
    text = text.substr(0, at);
  }
  return text;
}

}  // namespace

void draw_headlines(Ui& ui, const Layout& layout, const Station& station, Intents& intents) {
  const std::vector<report::Headline>& headlines = station.summary.headlines;
  for (std::size_t i = 0; i < headlines.size() && i < layout.headlines.size(); ++i) {
    const report::Headline& h = headlines[i];
    const Rect& r = layout.headlines[i];
    const std::string id = "action:why." + std::string(h.id);
    const bool own = !h.yours.empty();
    const std::string label =
        h.label + " " + h.value + ", " + h.yours + (own ? ", " : "") + h.note + ". Why?";
    const Touch touch = ui.target(id, label, r);
    if (touch.pressed) intents.push_back({Ask::Sheet, sheet_of(h.why), 0});
    ui.fill(r, touch.held ? Tone::ControlOn : Tone::Card);
    ui.frame(r, Tone::Rule, 1.5F);
    // A bar in the verdict's colour; the badge says the same by its shape.
    const float pad = 3 * kUnit;
    ui.draw->AddRectFilled(ImVec2(r.x, r.y), ImVec2(r.x + 6, r.bottom()),
                           ui.colour(tone_of(h.verdict)), kRadius, ImDrawFlags_RoundCornersLeft);
    const float x = r.x + pad + 2;
    const float room = r.w - 2 * pad - 2;
    const float small = layout.note_text;
    const float line = small * 1.25F;
    const float top = r.y + 1.5F * kUnit;
    const float label_size = ui.fitted(h.label, small + 1, kSmallest, room - 24, true);
    ui.text(x, top + line / 2, h.label, label_size, Tone::Ink, true, Side::Left, room - 22);
    if (!own) ui.badge(r.right() - pad - 4, top + line / 2 + 2, 9, h.verdict);
    // The band or the person's own height on its own line, the note on what is left under it; the
    // figures of both headlines stand on one line.
    const float figure_y = top + line + layout.headline_text * 0.53F;
    draw_figure(ui, x, figure_y, h.value, layout.headline_text, room);
    float y = top + line + layout.headline_text * 1.08F + 1;
    if (own) {
      // The verdict is on the person's own height, not on the recommended one over it.
      ui.badge(x + 7, y + line / 2, 7, h.verdict);
      const std::string_view yours = whole_parts(ui, h.yours, ", ", small, room - 18, true);
      ui.text(x + 18, y + line / 2, yours, small, Tone::Ink, true, Side::Left, room - 17);
      y += line;
    } else if (!h.band.empty()) {
      const std::string_view band = whole_parts(ui, h.band, ": ", kSmallest, room);
      const float size = ui.fitted(band, small, kSmallest, room, false);
      ui.text(x, y + line / 2, band, size, Tone::Ink, false, Side::Left, room + 1);
      y += line;
    }
    if (!h.note.empty()) {
      const int most = std::max(1, static_cast<int>((r.bottom() - y) / line));
      const bool one = most == 1 || ui.width(h.note, small) <= room;
      const Rect box{x, y, room, (one ? 1 : 2) * line};
      // What is wrong for whom before that it is recommended, where both have no room.
      constexpr std::string_view kWord = "recommended; ";
      std::string_view note = h.note;
      const float lines = static_cast<float>(std::min(most, 2)) - 0.2F;
      if (note.starts_with(kWord) && ui.width(note, kSmallest) > lines * room) {
        note.remove_prefix(kWord.size());
      }
      ui.paragraph(box, note, small, kSmallest, std::min(most, 2), Tone::InkSoft);
    }
  }
}

void draw_tools(Ui& ui, const Layout& layout, const Station& station, const View& view,
                Intents& intents) {
  // The picture after the present one.
  struct Next {
    Picture picture;
    const char* label;
    const char* word;
  };
  constexpr Next kNext[] = {{Picture::FitMap, "Show the fit map", "Map"},
                            {Picture::Scene, "Show the station in three dimensions", "3-D"},
                            {Picture::Section, "Show the side section", "Side"},
                            {Picture::FitMap, "Show the fit map", "Map"}};
  const Next& next = kNext[static_cast<std::size_t>(view.picture)];
  if (tool(ui, layout.tools[0], "action:picture", next.label, Tool::Word, true, next.word)) {
    intents.push_back({Ask::Picture, {}, static_cast<double>(next.picture)});
  }
  const bool inches = view.units == report::Units::Inch;
  if (switch_chip(ui, layout.tools[1], "action:units",
                  inches ? "Change to millimetres" : "Change to inches", "in", "mm", !inches)) {
    intents.push_back({Ask::Units, {}, inches ? 1.0 : 0.0});
  }
  if (tool(ui, layout.tools[2], "action:undo", "Undo", Tool::Undo, station.can_undo)) {
    intents.push_back({Ask::Undo, {}, 0});
  }
  if (tool(ui, layout.tools[3], "action:redo", "Redo", Tool::Redo, station.can_redo)) {
    intents.push_back({Ask::Redo, {}, 0});
  }
}

void draw_lines(Ui& ui, const Layout& layout, const Station& station, const View& view,
                Intents& intents) {
  const std::vector<report::CookLine>& cooks = station.summary.cooks;
  const Rect& r = layout.lines;
  std::string label = "People:";
  for (const report::CookLine& cook : cooks) label += " " + cook.name + " " + cook.line + ".";
  const Touch touch = ui.target("action:people", label, r);
  if (touch.held) ui.fill(r, Tone::ControlOn);

  // The worst-off first where not all have room; their order otherwise.
  std::vector<std::size_t> order;
  const bool all = layout.line_count >= cooks.size();
  constexpr Verdict kByHarm[] = {Verdict::Fail, Verdict::Warn, Verdict::Unknown, Verdict::Ok};
  for (const Verdict verdict : kByHarm) {
    for (std::size_t i = 0; i < cooks.size(); ++i) {
      if (all ? verdict == Verdict::Fail : cooks[i].verdict == verdict) order.push_back(i);
    }
  }
  const std::size_t shown = all ? cooks.size() : layout.line_count - 1;
  const float size = layout.roomy ? kText + 1 : kText - 1;
  const float used =
      static_cast<float>(std::max<std::size_t>(layout.line_count, 1)) * layout.line_height;
  float y = r.middle_y() - used / 2 + layout.line_height / 2;
  if (touch.pressed) {
    // At the cook whose line the finger left; by a key at the one who looks.
    std::string sheet = "people";
    const float line = (ImGui::GetIO().MousePos.y - r.middle_y() + used / 2) / layout.line_height;
    const std::size_t row = static_cast<std::size_t>(std::max(0.0F, line));
    if (touch.key == KeyAction::Press) {
      sheet += ":" + std::to_string(view.person);
    } else if (row < shown || all) {
      sheet += ":" + std::to_string(order[std::min(row, shown - 1)]);
    }
    intents.push_back({Ask::Sheet, std::move(sheet), 0});
  }
  float names = 0;
  for (std::size_t i = 0; i < shown; ++i) {
    names = std::max(names, ui.width(cooks[order[i]].name, size, true));
  }
  names = std::min(names, r.w * 0.28F);
  for (std::size_t i = 0; i < shown; ++i) {
    const report::CookLine& cook = cooks[order[i]];
    ui.badge(r.x + 10, y, 7, cook.verdict);
    ui.text(r.x + 24, y, cook.name, size, Tone::Ink, true, Side::Left, names + 1);
    const float x = r.x + 24 + names + 8;
    const float room = r.right() - x;
    constexpr float kLeast = 12;
    constexpr std::string_view kMore = " \u2026";
    std::string line(whole_parts(ui, cook.line, "; ", kLeast, room));
    if (line.size() < cook.line.size()) {
      line = whole_parts(ui, line, "; ", kLeast, room - ui.width(kMore, kLeast));
      line += kMore;
    }
    const float fit = ui.fitted(line, size, kLeast, room, false);
    ui.text(x, y, line, fit, Tone::Ink, false, Side::Left, room + 1);
    if (order[i] == view.person && cooks.size() > 1) {
      ui.line(r.x + 24, y + size * 0.62F, r.x + 24 + ui.width(cook.name, size, true),
              y + size * 0.62F, Tone::Sightline, 2);
    }
    y += layout.line_height;
  }
  if (!all) {
    ui.text(r.x + 24, y, "All " + std::to_string(cooks.size()) + " cooks", size, Tone::Ink, true);
    draw_eye(ui, r.x + 10, y, 16, Tone::Ink);
  }
}

void draw_caution(Ui& ui, const Layout& layout, const Station& station, Intents& intents) {
  const report::Summary& s = station.summary;
  const Rect& r = layout.caution;
  if (s.worst.empty()) return;
  const Touch touch = ui.target("action:worst", s.worst + " Why?", r);
  if (touch.pressed) intents.push_back({Ask::Sheet, sheet_of(s.worst_rule), 0});
  ui.fill(r, touch.held ? Tone::ControlOn : wash_of(s.worst_verdict));
  ui.frame(r, tone_of(s.worst_verdict), 2);
  ui.badge(r.x + 22, r.middle_y(), 11, s.worst_verdict);
  const Rect words{r.x + 42, r.y + 3, r.w - 66, r.h - 6};
  ui.paragraph(words, s.worst, layout.roomy ? kText + 1 : kText, 12, 3, Tone::Ink, true);
  const float x = r.right() - 14;
  const float y = r.middle_y();
  ui.line(x - 4, y - 7, x + 3, y, Tone::Ink, 2.5F);
  ui.line(x + 3, y, x - 4, y + 7, Tone::Ink, 2.5F);
}

}  // namespace hs::web
