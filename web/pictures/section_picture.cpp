#include "web/pictures/section_picture.h"

#include <algorithm>

#include "engine/report/phrases.h"

namespace hs::web {
namespace {

constexpr float kPad = 6;

// Whether the button that gives a height back may be there.
bool any_given(const config::Station& station) {
  return station.oven_base_height_mm || station.counter_height_mm;
}

}  // namespace

void SectionPicture::place(const Ui& ui, const Rect& rect, const config::Config& config,
                           const evaluate::Evaluation& evaluation, const View& view) {
  const report::SectionFrame frame = report::section_frame(config, evaluation, view.person);
  text_ = rect.h > 320 ? kText : kTextSmall;
  // The widest texts there can be, so that the picture holds its scale while values change.
  const bool inches = view.units == report::Units::Inch;
  constexpr std::string_view kName = "dough counter";
  const float name_width = ui.width(kName, text_);
  const float names_width =
      name_width + ui.width(inches ? "44\u00b9\u00b3\u2044\u2081\u2086 in " : "1000 mm ", text_);
  // Under the ground's level there is room for one line of text and what stands over it.
  const float under = 1.9F * text_;
  const float tall = static_cast<float>(frame.box.top_mm);
  const float wide = static_cast<float>(frame.label_x_mm - frame.box.left_mm);
  const float by_height = std::max(30.0F, rect.h - kPad - under) / tall;
  const auto beside = [&](float labels) {
    return std::min(by_height, std::max(60.0F, rect.w - labels - 2 * kPad) / wide);
  };
  // Names under their numbers where that shows the station notably larger.
  const bool stacked = beside(names_width) * 1.1F < beside(name_width);
  const float labels = stacked ? name_width : names_width;
  const float per_mm = beside(labels);
  const float used = wide * per_mm + labels;
  const float left = kPad + std::max(0.0F, (rect.w - 2 * kPad - used) / 2);
  const float spare = std::max(0.0F, rect.h - kPad - under - tall * per_mm);
  to_ = {.x = left - static_cast<float>(frame.box.left_mm) * per_mm,
         .y = rect.h - under - 0.5F * spare,
         .per_mm = per_mm};
  ground_ = to_.y;
  report::SectionView how{.person = view.person,
                          .units = view.units,
                          .text_mm = static_cast<double>(1.25F * text_ / per_mm),
                          .stacked = stacked};
  if (any_given(config.station)) {
    how.label_top_mm = static_cast<double>((to_.y - kTarget - 1.5F * kUnit) / per_mm);
  }
  section_ = report::section(config, evaluation, how);

  plan_.clear();
  const float x = to_.x + static_cast<float>(frame.label_x_mm) * per_mm;
  if (stacked || rect.w - x < 60) return;
  plan_ = report::floor_plan(config, evaluation, view.person);
  const report::Box box = plan_.bounds();
  const float box_w = static_cast<float>(box.right_mm - box.left_mm);
  const float box_h = static_cast<float>(box.top_mm - box.bottom_mm);
  if (box_w <= 0 || box_h <= 0) return;
  // On the ground, up to the lowest label.
  float lowest_mm = 1e6F;
  for (const report::Mark& mark : section_.marks()) {
    if (mark.shape != report::Shape::Text) continue;
    const report::Spot at = section_.points(mark)[0];
    if (at.x_mm >= frame.label_x_mm) lowest_mm = std::min(lowest_mm, static_cast<float>(at.y_mm));
  }
  const float top = to_.y - lowest_mm * per_mm + text_;
  plan_box_ = {x, top, rect.w - x - kPad, ground_ - 3 - top};
  const float fit = std::min(plan_box_.w / box_w, plan_box_.h / box_h);
  plan_to_ = {.x = plan_box_.x - static_cast<float>(box.left_mm) * fit,
              .y = plan_box_.bottom() + static_cast<float>(box.bottom_mm) * fit,
              .per_mm = fit};
  plan_box_.w = box_w * fit;
  const evaluate::CookResult& cook = evaluation.cooks[view.person];
  caption_ = "sees " + report::percent(cook.watching.pizza_share);
}

void SectionPicture::draw(const Ui& ui, const Rect& backdrop, const Rect& rect,
                          const config::Config& config, const evaluate::Evaluation& evaluation,
                          std::uint32_t revision, const View& view) {
  const Key key{revision, view.person, view.units, rect.w, rect.h, ui.width("0", kText)};
  if (!made_ || !(key == key_)) {
    place(ui, rect, config, evaluation, view);
    key_ = key;
    made_ = true;
  }
  const float level = rect.y + ground_;
  ui.draw->AddRectFilled(ImVec2(backdrop.x, level), ImVec2(backdrop.right(), backdrop.bottom()),
                         ui.colour(Tone::Ground), kRadius, ImDrawFlags_RoundCornersBottom);
  ui.line(backdrop.x, level, backdrop.right(), level, Tone::InkSoft, 2.8F);
  ui.draw->PushClipRect(ImVec2(rect.x, rect.y), ImVec2(rect.right(), rect.bottom()), true);
  Projection to = to_;
  to.x += rect.x;
  to.y += rect.y;
  painter_.paint(ui, section_, to, text_);
  if (!plan_.marks().empty() && plan_box_.h > 40) {
    Projection plan = plan_to_;
    plan.x += rect.x;
    plan.y += rect.y;
    painter_.paint(ui, plan_, plan, text_);
    const float below = rect.h - ground_;
    ui.text(rect.x + plan_box_.x + plan_box_.w / 2, rect.y + ground_ + std::min(below, 26.0F) / 2,
            caption_, text_, Tone::Ink, true, Side::Centre);
  }
  ui.draw->PopClipRect();
  // Whose station this is: without it the example that the page opens on reads as one's own.
  if (!config.title.empty()) {
    const bool shared = rect.y < backdrop.y + kTarget;  // the row of the lamp's button
    const float taken = kTarget + kUnit + (any_given(config.station) ? kGiveBack + kUnit : 0);
    const float right = backdrop.right() - kPad - 2 - (shared ? taken : 0);
    ui.text(right, backdrop.y + kPad + text_ / 2 + 2, config.title, text_, Tone::Ink, true,
            Side::Right, 0.42F * backdrop.w);
  }
}

}  // namespace hs::web
