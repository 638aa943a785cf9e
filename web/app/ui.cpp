#include "web/app/ui.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace hs::web {
namespace {

constexpr std::string_view kEllipsis = "\u2026";

// Bytes of the longest start of `text` that ends between characters and is at most `bytes` long.
std::size_t whole_characters(std::string_view text, std::size_t bytes) {
  while (bytes > 0 && bytes < text.size() &&
         (static_cast<unsigned char>(text[bytes]) & 0xC0U) == 0x80U) {
    --bytes;
  }
  return bytes;
}

float line_height(float size) { return std::round(size * 1.2F); }

// Breaks at spaces. A word wider than the room stays whole and is cut when it is drawn.
std::vector<std::string_view> broken(const Ui& ui, std::string_view text, float size, bool heavy,
                                     float room) {
  std::vector<std::string_view> lines;
  std::size_t start = 0;
  std::size_t good = std::string_view::npos;
  for (std::size_t at = 0; at <= text.size(); ++at) {
    if (at < text.size() && text[at] != ' ') continue;
    if (good != std::string_view::npos &&
        ui.width(text.substr(start, at - start), size, heavy) > room) {
      lines.push_back(text.substr(start, good - start));
      start = good + 1;
    }
    good = at;
  }
  if (start < text.size()) lines.push_back(text.substr(start));
  return lines;
}

}  // namespace

Tone tone_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Ok:
      return Tone::Good;
    case Verdict::Warn:
      return Tone::Warn;
    case Verdict::Fail:
      return Tone::Fail;
    case Verdict::Unknown:
      return Tone::Unknown;
  }
  return Tone::Ink;
}

Tone wash_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Ok:
      return Tone::GoodWash;
    case Verdict::Warn:
      return Tone::WarnWash;
    case Verdict::Fail:
      return Tone::FailWash;
    case Verdict::Unknown:
      return Tone::UnknownWash;
  }
  return Tone::Card;
}

ImU32 Ui::colour(Tone which) const {
  const std::uint32_t rgb = tone(theme, which);
  return IM_COL32((rgb >> 16) & 0xFFU, (rgb >> 8) & 0xFFU, rgb & 0xFFU, 255);
}

float Ui::width(std::string_view text, float size, bool heavy) const {
  if (text.empty()) return 0;  // Dear ImGui takes a null end for "up to the zero"
  ImFont* font = heavy ? bold : regular;
  return font->CalcTextSizeA(size, 1e6F, 0, text.data(), text.data() + text.size()).x;
}

float Ui::fitted(std::string_view text, float size, float least, float room, bool heavy) const {
  const float wide = width(text, size, heavy);
  if (wide <= room) return size;
  return std::max(least, std::floor(size * room / wide * 2) / 2);
}

void Ui::text(float x, float y, std::string_view text, float size, Tone tone, bool heavy, Side side,
              float room) const {
  if (text.empty()) return;
  std::string cut;
  if (room > 0 && width(text, size, heavy) > room) {
    const float rest = room - width(kEllipsis, size, heavy);
    std::size_t bytes = text.size();
    while (bytes > 0 && width(text.substr(0, bytes), size, heavy) > rest) {
      bytes = whole_characters(text, bytes - 1);
    }
    cut = std::string(text.substr(0, bytes)) + std::string(kEllipsis);
    text = cut;
  }
  if (side != Side::Left) {
    const float wide = width(text, size, heavy);
    x -= side == Side::Right ? wide : wide / 2;
  }
  ImFont* font = heavy ? bold : regular;
  // The font's box is about 1.17 of its size; its letters stand a little above the middle of it.
  const float top = y - size * 0.58F;
  draw->AddText(font, size, ImVec2(x, top), colour(tone), text.data(), text.data() + text.size());
}

void Ui::paragraph(const Rect& box, std::string_view text, float size, float least, int lines,
                   Tone tone, bool heavy, Side side) const {
  std::vector<std::string_view> rows = broken(*this, text, size, heavy, box.w);
  const auto high = [&] { return line_height(size) * static_cast<float>(rows.size()); };
  while ((static_cast<int>(rows.size()) > lines || high() > box.h + 2) && size > least) {
    size = std::max(least, size - 0.5F);
    rows = broken(*this, text, size, heavy, box.w);
  }
  if (static_cast<int>(rows.size()) > lines) {
    // The last line takes all that is left, and is cut.
    const std::string_view last = rows[static_cast<std::size_t>(lines) - 1];
    rows.resize(static_cast<std::size_t>(lines));
    rows.back() = text.substr(static_cast<std::size_t>(last.data() - text.data()));
  }
  const float step = line_height(size);
  float y = box.middle_y() - step * (static_cast<float>(rows.size()) - 1) / 2;
  for (const std::string_view row : rows) {
    const float x = side == Side::Left ? box.x : side == Side::Right ? box.right() : box.middle_x();
    this->text(x, y, row, size, tone, heavy, side, box.w + 1);
    y += step;
  }
}

void Ui::fill(const Rect& r, Tone tone, float radius) const {
  draw->AddRectFilled(ImVec2(r.x, r.y), ImVec2(r.right(), r.bottom()), colour(tone), radius);
}

void Ui::frame(const Rect& r, Tone tone, float thickness, float radius) const {
  const float half = thickness / 2;
  draw->AddRect(ImVec2(r.x + half, r.y + half), ImVec2(r.right() - half, r.bottom() - half),
                colour(tone), radius, 0, thickness);
}

void Ui::line(float x1, float y1, float x2, float y2, Tone tone, float thickness) const {
  // Not AddLine, which shifts both ends by half a pixel.
  const std::array ends{ImVec2(x1, y1), ImVec2(x2, y2)};
  draw->AddPolyline(ends.data(), 2, colour(tone), 0, thickness);
}

Touch Ui::target(std::string_view id, std::string_view label, const Rect& rect,
                 std::string_view value) {
  items->add(id, label, rect, value);
  const Item& item = items->all().back();
  Touch touch;
  ImGui::SetCursorScreenPos(ImVec2(rect.x, rect.y));
  touch.pressed = ImGui::InvisibleButton(item.id.c_str(), ImVec2(rect.w, rect.h));
  touch.began = ImGui::IsItemActivated();
  touch.held = ImGui::IsItemActive();
  touch.ended = ImGui::IsItemDeactivated();
  touch.hovered = ImGui::IsItemHovered();
  if (touch.began) {
    focus->id = item.id;
    focus->ring = false;
  }
  if (focus->id == item.id) {
    touch.key = focus->action;
    focus->action = KeyAction::None;
    if (touch.key == KeyAction::Press) touch.pressed = true;
    if (focus->ring) {
      // On the foreground, because what follows would paint over its outer half.
      ImGui::GetForegroundDrawList()->AddRect(ImVec2(rect.x - 1, rect.y - 1),
                                              ImVec2(rect.right() + 1, rect.bottom() + 1),
                                              colour(Tone::Focus), kRadius, 0, 3.5F);
    }
  }
  if (touch.hovered && cursor.empty()) cursor = "pointer";
  return touch;
}

void Ui::badge(float x, float y, float r, Verdict verdict) const {
  const ImU32 body = colour(tone_of(verdict));
  const ImU32 mark = colour(Tone::Card);
  const float stroke = std::max(1.6F, r * 0.24F);
  switch (verdict) {
    case Verdict::Ok: {
      draw->AddCircleFilled(ImVec2(x, y), r, body, 24);
      const std::array tick{ImVec2(x - r * 0.46F, y + r * 0.04F),
                            ImVec2(x - r * 0.12F, y + r * 0.40F),
                            ImVec2(x + r * 0.50F, y - r * 0.36F)};
      draw->AddPolyline(tick.data(), 3, mark, 0, stroke);
      break;
    }
    case Verdict::Warn: {
      draw->AddTriangleFilled(ImVec2(x, y - r * 1.08F), ImVec2(x - r * 1.12F, y + r * 0.86F),
                              ImVec2(x + r * 1.12F, y + r * 0.86F), body);
      draw->AddLine(ImVec2(x, y - r * 0.42F), ImVec2(x, y + r * 0.22F), mark, stroke);
      draw->AddCircleFilled(ImVec2(x, y + r * 0.55F), stroke * 0.62F, mark, 8);
      break;
    }
    case Verdict::Fail: {
      draw->AddRectFilled(ImVec2(x - r * 0.94F, y - r * 0.94F),
                          ImVec2(x + r * 0.94F, y + r * 0.94F), body, r * 0.2F);
      const float arm = r * 0.44F;
      draw->AddLine(ImVec2(x - arm, y - arm), ImVec2(x + arm, y + arm), mark, stroke);
      draw->AddLine(ImVec2(x - arm, y + arm), ImVec2(x + arm, y - arm), mark, stroke);
      break;
    }
    case Verdict::Unknown: {
      draw->AddQuadFilled(ImVec2(x, y - r * 1.18F), ImVec2(x + r * 1.18F, y),
                          ImVec2(x, y + r * 1.18F), ImVec2(x - r * 1.18F, y), body);
      text(x, y - 0.2F, "?", r * 1.5F, Tone::Card, true, Side::Centre);
      break;
    }
  }
}

}  // namespace hs::web
