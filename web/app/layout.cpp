#include "web/app/layout.h"

#include <algorithm>
#include <cmath>

#include "web/app/theme.h"

namespace hs::web {
namespace {

constexpr float kGap = kUnit;
constexpr float kMargin = 1.5F * kUnit;
constexpr float kTwoRules = 640;  // from this width on both heights stand side by side

// Four square tools at the picture's left edge; along its top where it is narrow and tall, two by
// two where it is low.
void place_tools(Layout& layout) {
  const Rect& picture = layout.picture;
  const std::size_t count = layout.tools.size();
  const std::size_t columns = picture.h > 0.9F * picture.w ? count
                              : picture.h >= 4 * kTarget   ? 1
                                                           : 2;
  for (std::size_t i = 0; i < count; ++i) {
    const float column = static_cast<float>(i % columns);
    const float row = static_cast<float>(i / columns);
    layout.tools[i] = {picture.x + column * kTarget, picture.y + row * kTarget, kTarget, kTarget};
  }
  layout.scene = picture;
  if (columns == count) {
    layout.scene.y += kTarget;
    layout.scene.h -= kTarget;
  } else {
    layout.scene.x += static_cast<float>(columns) * kTarget;
    layout.scene.w -= static_cast<float>(columns) * kTarget;
  }
}

// Controls from the bottom up inside `area`; returns the top edge of the highest.
float place_controls(Layout& layout, const Rect& area) {
  const float row = layout.roomy ? 62.0F : 51.0F;
  float bottom = area.bottom();
  const auto take = [&] {
    bottom -= row;
    const Rect rect{area.x, bottom, area.w, row};
    bottom -= kGap;
    return rect;
  };
  const Rect last = take();
  // Two compact controls side by side; both keep room for their steppers.
  const float kind_width = (area.w - kGap) * (area.w < 330 ? 0.5F : 0.53F);
  layout.kind = {last.x, last.y, kind_width, last.h};
  layout.prep = {last.x + kind_width + kGap, last.y, last.w - kind_width - kGap, last.h};
  layout.sight = take();
  if (layout.roomy) layout.dough = take();
  if (layout.roomy && area.w >= kTwoRules) {
    layout.height = layout.dough;
    layout.height.w = layout.dough.w = (area.w - kGap) / 2;
    layout.dough.x += layout.height.w + kGap;
  } else {
    layout.height = take();
  }
  return bottom;
}

// As many lines as there is room for; where not all cooks fit, at least the worst-off one and how
// many there are in all.
void place_lines(Layout& layout, std::size_t cooks, float room) {
  layout.line_height = layout.roomy ? 26.0F : layout.mode == Mode::Beside ? 18.5F : 20.0F;
  const std::size_t fits = static_cast<std::size_t>(std::max(0.0F, room / layout.line_height));
  layout.line_count = std::min(cooks, std::max<std::size_t>(2, fits));
}

}  // namespace

Layout layout_of(float width, float height, const Insets& insets, std::size_t cooks) {
  Layout layout;
  const Rect all{insets.left + kMargin, insets.top + kMargin,
                 std::max(200.0F, width - insets.left - insets.right - 2 * kMargin),
                 std::max(200.0F, height - insets.top - insets.bottom - 2 * kMargin)};
  layout.mode = all.h < 470 && all.w > 1.2F * all.h ? Mode::Beside : Mode::Column;
  layout.roomy = layout.mode == Mode::Column && all.w >= 480 && all.h >= 700;
  Rect side = all;
  if (layout.mode == Mode::Beside) {
    const float left = all.w * 0.46F;
    layout.caution = {all.x, all.bottom() - kTarget, left, kTarget};
    layout.picture = {all.x, all.y, left, all.h - kTarget - kGap};
    side = {all.x + left + kGap, all.y, all.w - left - kGap, all.h};
  }
  const float half = (side.w - kGap) / 2;
  const bool tight = layout.mode == Mode::Beside || half < 160;
  layout.headline_text = layout.roomy ? kHeadlineLarge : tight ? 30.0F : kHeadline;
  layout.note_text = layout.roomy ? kText : tight ? 12.0F : kTextSmall;
  // A label, the figure, the band, and a note that takes one line only where there is room for it.
  const float lines = layout.roomy && half > 330 ? 2.0F : 3.0F;
  const float headline_height =
      std::round(layout.headline_text + 2 * kUnit + 2 + (lines + 1.15F) * 1.25F * layout.note_text);
  layout.headlines[0] = {side.x, side.y, half, headline_height};
  layout.headlines[1] = {side.x + half + kGap, side.y, half, headline_height};
  const float below_headlines = side.y + headline_height + kGap;

  const float controls_top = place_controls(layout, side);
  if (layout.mode == Mode::Beside) {
    const float free = controls_top - below_headlines;
    place_lines(layout, cooks, free);
    layout.lines = {side.x, below_headlines, side.w, std::max(kTarget, free)};
  } else {
    const float caution_height = layout.roomy ? 60.0F : kTarget;
    layout.caution = {side.x, controls_top - caution_height, side.w, caution_height};
    const float free = layout.caution.y - kGap - below_headlines;
    // The picture keeps its room; the lines take what they need of the rest.
    constexpr float least_picture = 150;
    place_lines(layout, cooks, free - least_picture - 2 * kGap);
    // All lines together are one target, so they are never lower than one.
    const float block =
        std::max(kTarget, static_cast<float>(layout.line_count) * layout.line_height + kGap);
    layout.lines = {side.x, layout.caution.y - kGap - block, side.w, block};
    layout.picture = {side.x, below_headlines, side.w, layout.lines.y - kGap - below_headlines};
  }
  place_tools(layout);
  return layout;
}

}  // namespace hs::web
