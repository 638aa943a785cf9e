#include "web/pictures/scene_picture.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

#include "engine/evaluate/build.h"
#include "engine/report/parts_words.h"
#include "web/app/widgets.h"
#include "web/pictures/scene_colours.h"

namespace hs::web {
namespace {

using scene::PartName;

constexpr double kDoubleTap_ms = 450;  // from one finger down to the next
constexpr float kSameTap_px = 32;
constexpr double kKeyTurn_px = 30;  // of a finger, that an arrow key stands for
constexpr double kKeyZoom = 1.2;
constexpr double kGhost = 0.18;
constexpr double kHomeYaw_deg = 52;
constexpr float kPickedStep = 20, kPickedPad = 8;  // of what is said of a picked part
constexpr float kPickedHigh = 2 * kPickedStep + kPickedPad;

std::size_t index(PartName name) { return static_cast<std::size_t>(name); }

void paint(const ImDrawList*, const ImDrawCmd* command) {
  const auto* self =
      static_cast<std::pair<scene::Surface*, scene::Frame*>*>(command->UserCallbackData);
  self->first->draw(*self->second);
}

}  // namespace

void ScenePicture::show_plan(bool on) {
  plan_ = on;
  changed_ = true;
}

void ScenePicture::refresh(const SceneInput& input) {
  const View& view = input.view;
  const scene::PeopleView people{view.person, view.leaning, camera_.inside()};
  scene::ApartView apart{view.pulled_apart && !people.inside && !view.through_eyes &&
                             scene::can_come_apart(input.evaluation),
                         picked_};
  // Another build has other pieces.
  if (!apart.on || revision_ != input.revision) apart.piece = picked_ = std::nullopt;
  const bool zones = view.clear_zones && !people.inside && !apart.on;
  const bool same = made_ && revision_ == input.revision && people.person == people_.person &&
                    people.leaning == people_.leaning && people.inside == people_.inside &&
                    zones == zones_shown_ && apart == apart_;
  if (same) return;
  // Another extent: all of it is shown again.
  if (made_ && apart.on != apart_.on) camera_.reset();
  const config::Config& config = input.config;
  const evaluate::Evaluation& e = input.evaluation;
  layout_ = report::station_layout(config, e);
  look_ = scene::look_of(config, e, layout_, view.person);
  corners_ =
      apart.on ? scene::apart_corners(e, layout_) : scene::corners_of(e, layout_, view.person);
  feet_line_.reset();
  zone_.reset();
  if (layout_.feet_line_y_mm && !apart.on) {
    const double way = layout_.dough_right ? -1 : 1;
    feet_line_ = scene::Vec{config.view.lateral_mm + way * (scene::kTapeHalf_mm + 30),
                            *layout_.feet_line_y_mm, 0};
  }
  if (layout_.oven_body && !apart.on) {
    // Beside the oven, where nothing stands on the zone.
    const report::Block& body = *layout_.oven_body;
    const double edge = layout_.dough_right ? body.left_mm : body.right_mm;
    const double way = layout_.dough_right ? -1 : 1;
    zone_ = scene::Vec{edge + way * 0.45 * layout_.child_free_mm,
                       body.near_mm - 0.35 * layout_.child_free_mm, 0};
  }
  // Pulled apart, the cabinets stand alone.
  constexpr std::uint64_t kNothing = 1;
  std::array<std::uint64_t, scene::kPartCount> digests;
  digests.fill(kNothing);
  if (apart.on) {
    digests[index(PartName::Station)] = scene::apart_digest(config, e, apart);
  } else {
    digests = {scene::station_digest(config, e), scene::people_digest(config, e, people),
               scene::sight_digest(config, e, people), scene::lamp_digest(e, layout_),
               scene::zones_digest(e, layout_, zones)};
  }
  const auto made = [&](PartName name) -> scene::Part {
    if (apart.on) {
      return name == PartName::Station ? scene::apart_part(config, e, layout_, apart)
                                       : scene::Part{};
    }
    switch (name) {
      case PartName::Station:
        return scene::station_part(config, e, layout_);
      case PartName::People:
        return scene::people_part(config, e, layout_, people);
      case PartName::Sight:
        return scene::sight_part(config, e, layout_, people);
      case PartName::Lamp:
        return scene::lamp_part(e, layout_);
      case PartName::Zones:
        return scene::zones_part(e, layout_, zones);
    }
    return {};
  };
  for (std::size_t i = 0; i < digests.size(); ++i) {
    if (made_ && digests[i] == frame_.digests[i]) continue;
    ++built_;
    changed_ = true;
    frame_.digests[i] = digests[i];
    parts_[i] = made(static_cast<PartName>(i));
    frame_.parts[i] = &parts_[i];
  }
  hearth_mm_ = layout_.floor_mm + (apart.on ? scene::oven_lift_mm(e, layout_) : 0);
  zones_.clear();
  if (zones) zones_ = scene::zone_names(e, layout_);
  zones_shown_ = zones;
  apart_ = apart;
  people_ = people;
  revision_ = input.revision;
  made_ = true;
}

void ScenePicture::hands(const Touch& touch, const Rect& rect, const SceneInput& input,
                         const Focus& focus) {
  const double high = static_cast<double>(rect.h);
  if (touch.began) {
    held_ = true;
    moved_ = false;
    finger_count_ = 0;
    start_x_ = last_x_ = input.last_down.x;
    start_y_ = last_y_ = input.last_down.y;
    start_ms_ = input.last_down.since_ms;
  }
  if (held_) {
    // The middle of all fingers turns or shifts, their distance zooms.
    float x = 0, y = 0, span = 0;
    const std::size_t count = std::min<std::size_t>(input.fingers.size(), 2);
    for (std::size_t i = 0; i < count; ++i) {
      x += input.fingers[i].x / static_cast<float>(count);
      y += input.fingers[i].y / static_cast<float>(count);
    }
    if (count == 2) {
      span = std::hypot(input.fingers[0].x - input.fingers[1].x,
                        input.fingers[0].y - input.fingers[1].y);
    }
    if (count > 0) {
      if (count > 1) moved_ = true;
      if (count == finger_count_) {
        const double dx = static_cast<double>(x - last_x_), dy = static_cast<double>(y - last_y_);
        // A finger may tremble without turning anything.
        if (std::hypot(x - start_x_, y - start_y_) > kStill) moved_ = true;
        if (moved_ && count == 1) camera_.orbit(dx, dy);
        if (count == 2) {
          camera_.pan(dx, dy, high);
          if (last_span_ > 1 && span > 1) {
            camera_.zoom(static_cast<double>(span) / static_cast<double>(last_span_));
          }
        }
      }
      last_x_ = x;
      last_y_ = y;
      last_span_ = span;
    }
    finger_count_ = count;
  }
  if (touch.ended && held_) {
    held_ = false;
    const bool near = std::hypot(last_x_ - tapped_x_, last_y_ - tapped_y_) < kSameTap_px;
    if (!moved_ && near && start_ms_ - tapped_ms_ < kDoubleTap_ms) {
      camera_.reset();
      tapped_ms_ = -1e9;
    } else if (!moved_) {
      if (apart_.on) pick(input, last_x_, last_y_);
      tapped_ms_ = start_ms_;
      tapped_x_ = last_x_;
      tapped_y_ = last_y_;
    }
  }
  const ImGuiIO& io = ImGui::GetIO();
  if (touch.hovered && io.MouseWheel != 0) {
    camera_.zoom(std::pow(kKeyZoom, static_cast<double>(io.MouseWheel)));
  }
  switch (touch.key) {
    case KeyAction::Less:
      if (focus.sideways)
        camera_.orbit(-kKeyTurn_px, 0);
      else
        camera_.orbit(0, kKeyTurn_px);
      break;
    case KeyAction::More:
      if (focus.sideways)
        camera_.orbit(kKeyTurn_px, 0);
      else
        camera_.orbit(0, -kKeyTurn_px);
      break;
    case KeyAction::MuchLess:
    case KeyAction::Farther:
      camera_.zoom(1 / kKeyZoom);
      break;
    case KeyAction::MuchMore:
    case KeyAction::Closer:
      camera_.zoom(kKeyZoom);
      break;
    case KeyAction::Least:
      camera_.reset();
      break;
    case KeyAction::Most:
    case KeyAction::Press:
    case KeyAction::None:
      break;
  }
}

// Beside the tools above the picture, else in its right corner above or near it, clear of the other
// buttons; with words where they fit.
Rect ScenePicture::free_place(const Rect& backdrop, const Rect& rect,
                              std::initializer_list<Rect> others) {
  constexpr float kWords = 112;
  constexpr float kTools = kTarget * static_cast<float>(std::tuple_size_v<decltype(Layout::tools)>);
  const Rect above{backdrop.right() - kWords, backdrop.y - 1, kWords, kTarget};
  if (rect.y - backdrop.y >= kTarget && above.x >= backdrop.x + kTools) return above;
  for (const float wide : {kWords, kTarget}) {
    for (float y = rect.y + kUnit; y + kTarget <= rect.bottom(); y += kTarget + kUnit) {
      for (float right = rect.right() - kUnit; right - wide >= rect.x + rect.w / 2;
           right -= kTarget + kUnit) {
        const Rect here{right - wide, y, wide, kTarget};
        const bool clear = std::none_of(others.begin(), others.end(), [&](const Rect& other) {
          return here.x < other.right() && other.x < here.right() && here.y < other.bottom() &&
                 other.y < here.bottom();
        });
        if (clear) return here;
      }
    }
  }
  return {rect.x, rect.y, kTarget, kTarget};
}

// Another tap on it, or one beside all of them, lets it go.
void ScenePicture::pick(const SceneInput& input, float x, float y) {
  const auto share = [](float at, float low, float size) {
    return static_cast<double>(at - low) / static_cast<double>(std::max(1.0F, size));
  };
  const scene::Pose pose = camera_.pose();
  const scene::Vec way = scene::way_through(
      pose, static_cast<double>(shown_.w) / static_cast<double>(std::max(1.0F, shown_.h)),
      share(x, shown_.x, shown_.w), share(y, shown_.y, shown_.h));
  const auto met = scene::piece_on(input.evaluation, layout_, pose.at, way);
  picked_ = met == apart_.piece ? std::nullopt : met;
}

void ScenePicture::apart_button(Ui& ui, const Rect& place, Intents& intents) const {
  const bool words = place.w > kTarget;
  const std::string_view word = apart_.on ? "Put together" : "Pull apart";
  const bool pressed = chip(ui, place, "action:pull_apart",
                            apart_.on ? "Put the cabinets together" : "Pull the cabinets apart",
                            words ? word : std::string_view(), false, apart_.on);
  if (!words) {
    // Boards away from each other.
    for (const float up : {-9.0F, 0.0F, 9.0F}) {
      ui.fill({place.x + 12, place.middle_y() + up - 2, place.w - 24, 4},
              apart_.on ? Tone::OnAccent : Tone::Ink, 0);
    }
  }
  if (pressed) intents.push_back({Ask::PullApart, {}, apart_.on ? 0.0 : 1.0});
}

// What a finger has picked, as the parts list has it.
void ScenePicture::picked_words(Ui& ui, const Rect& rect, const SceneInput& input) const {
  constexpr float kWords = 13.5F, kStep = kPickedStep, kPad = kPickedPad;
  const auto& build = *input.evaluation.build;
  std::string first = "Tap a part: its number and size";
  std::string second;
  const int number = apart_.piece ? parts::number_of(build.parts, *apart_.piece) : 0;
  if (number > 0) {
    const parts::Part& part = build.parts.parts[static_cast<std::size_t>(number) - 1];
    first = "Part " + report::part_name(part);
    second = report::part_size(part, input.evaluation, input.view.units);
  }
  const float wide = std::min(
      rect.w, std::max(ui.width(first, kWords, true), ui.width(second, kWords)) + 2 * kPad);
  ui.fill({rect.x, rect.y, wide, kStep * (second.empty() ? 1.0F : 2.0F) + kPad}, Tone::Card, 6);
  ui.text(rect.x + kPad, rect.y + kPad / 2 + kStep / 2, first, kWords, Tone::Ink, true);
  if (!second.empty()) {
    ui.text(rect.x + kPad, rect.y + kPad / 2 + 1.5F * kStep, second, kWords, Tone::Ink);
  }
}

void ScenePicture::buttons(Ui& ui, const Rect& backdrop, const Rect& rect, const SceneInput& input,
                           Intents& intents) {
  const std::string& name = input.config.cooks[input.view.person].name;
  const bool eyes = input.view.through_eyes;
  const std::string words = eyes ? std::string("Back to the scene") : "As " + name + " sees";
  const float wide = std::clamp(ui.width(words, kText, true) + 44, 108.0F, 0.6F * rect.w);
  const Rect place{rect.right() - wide - kUnit, rect.bottom() - kTarget - kUnit, wide, kTarget};
  const bool low = place.x >= rect.x + 2 * kTarget;
  // Beside the other, or over it where the zoom buttons leave no room.
  constexpr float kLean = 70;
  const float left = place.x - kLean - kUnit;
  const bool beside = left >= rect.x + (low ? 2 * kTarget + kUnit : 0);
  const Rect lean = beside ? Rect{left, place.y, kLean, kTarget}
                           : Rect{place.right() - kLean, place.y - kTarget - kUnit, kLean, kTarget};
  if (!camera_.looks_through()) {
    // Who has no second finger to spare zooms here.
    const Rect closer{low ? rect.x : rect.right() - 2 * kTarget, low ? place.y : rect.y, kTarget,
                      kTarget};
    const Rect farther{closer.right(), closer.y, kTarget, kTarget};
    if (tool(ui, closer, "action:scene.closer", "Closer", Tool::Closer, true)) {
      camera_.zoom(kKeyZoom);
    }
    if (tool(ui, farther, "action:scene.farther", "Farther away", Tool::Farther, true)) {
      camera_.zoom(1 / kKeyZoom);
    }
    if (apart_.on) {
      // In the lowest row, between the zoom buttons and the picture's edge.
      const bool beside_zoom = place.y < closer.bottom() && closer.y < place.bottom();
      const float from = low && beside_zoom ? farther.right() + kUnit : rect.x;
      const float to = (!low && beside_zoom ? closer.x : rect.right()) - kUnit;
      const float together = std::clamp(to - from, kTarget, 150.0F);
      apart_button(ui, {to - together, place.y, together, kTarget}, intents);
      return;
    }
    // In the lowest row, with its words where they fit: in a corner above it would lie on a head.
    constexpr float kZones = 112;
    const Rect& next = look_.can_lean ? lean : place;
    const float room = next.x - farther.right() - 2 * kUnit;
    const bool in_row = low && (beside || !look_.can_lean);
    const float zones_wide = room >= kZones ? kZones : kTarget;
    const Rect zones = !low ? Rect{closer.x - kTarget, rect.y, kTarget, kTarget}
                       : in_row && room >= zones_wide
                           ? Rect{next.x - kUnit - zones_wide, place.y, zones_wide, kTarget}
                       : in_row && rect.w >= 250
                           ? Rect{rect.right() - kZones - kUnit, rect.y + kUnit, kZones, kTarget}
                           : Rect{lean.x - kTarget - kUnit, lean.y, kTarget, kTarget};
    zone_button(ui, zones, input, intents);
    if (scene::can_come_apart(input.evaluation)) {
      apart_button(ui, free_place(backdrop, rect, {place, lean, closer, farther, zones}), intents);
    }
  }
  if (!look_.sees_oven) return;
  if (chip(ui, place, "action:through_eyes",
           eyes ? "Back to the whole station" : "Look through the eyes of " + name, words, !eyes,
           true)) {
    intents.push_back({Ask::ThroughEyes, {}, eyes ? 0.0 : 1.0});
  }
  if (!look_.can_lean) return;
  const bool leaning = input.view.leaning;
  if (chip(ui, lean, "action:lean", leaning ? "Stand upright" : "Lean until the target shows",
           leaning ? "Upright" : "Lean", false, leaning)) {
    intents.push_back({Ask::Lean, {}, leaning ? 0.0 : 1.0});
  }
}

void ScenePicture::zone_button(Ui& ui, const Rect& place, const SceneInput& input,
                               Intents& intents) const {
  if (!layout_.oven_body) return;
  const bool shown = input.view.clear_zones;
  constexpr std::string_view kId = "action:clear_zones";
  const std::string_view label = shown ? "Hide what must stay free" : "Show what must stay free";
  const bool words = place.w > kTarget;
  const bool pressed = chip(ui, place, kId, label, words ? "Clear zones" : "", false, shown);
  if (!words) {
    // A thing and the room round it.
    const Tone ink = shown ? Tone::OnAccent : Tone::Ink;
    ui.frame(place.inset(12), ink, 2, 0);
    ui.fill(place.inset(19), ink, 0);
  }
  if (pressed) intents.push_back({Ask::ClearZones, {}, shown ? 0.0 : 1.0});
}

// What the paints on the oven's floor mean: a swatch and a word each.
void ScenePicture::key(Ui& ui, const Rect& rect, const SceneInput& input) const {
  if (apart_.on) return picked_words(ui, rect, input);
  if (!look_.sees_oven) return;
  constexpr float kWords = 12.5F, kStep = 17, kSwatch = 13;
  if (input.view.through_eyes) {
    ui.text(rect.x + 4, rect.y + 12, "60\u00B0 of view: our judgement", kWords, Tone::Ink);
    return;
  }
  struct Row {
    scene::Material material;
    const char* words;
  };
  std::vector<Row> rows{{scene::Material::Seen, "seen"}};
  if (look_.can_lean) rows.push_back({scene::Material::SeenLeaning, "only when leaning"});
  if (input.evaluation.cooks[input.view.person].watching.floor_share < 0.9995) {
    rows.push_back({scene::Material::Unseen, "not seen"});
  }
  if (zones_shown_) {
    // What is known and what is not, before what the oven's floor shows.
    rows.clear();
    const auto has = [&](scene::Material material) {
      return std::any_of(zones_.begin(), zones_.end(),
                         [&](const scene::ZoneName& zone) { return zone.material == material; });
    };
    constexpr Row kZones[] = {{scene::Material::ClearRoom, "room to keep clear"},
                              {scene::Material::UnknownRoom, "not known: find out"},
                              {scene::Material::WorkRoom, "ground to work on"},
                              {scene::Material::Landing, "landing"}};
    for (const Row& row : kZones) {
      if (has(row.material)) rows.push_back(row);
    }
    rows.push_back({scene::Material::ChildZone, "child-free zone"});
  }
  if (zones_shown_) {
    // The zones reach under the words on a small screen.
    float wide = 0;
    for (const Row& row : rows) wide = std::max(wide, ui.width(row.words, kWords));
    ui.fill({rect.x, rect.y, wide + kSwatch + 16, static_cast<float>(rows.size()) * kStep + 8},
            Tone::Card, 6);
  }
  float y = rect.y + 4 + kStep / 2;
  for (const Row& row : rows) {
    const Rect box{rect.x + 4, y - kSwatch / 2, kSwatch, kSwatch};
    const std::uint32_t rgb = paint_colour(ui.theme, row.material);
    ui.draw->AddRectFilled(ImVec2(box.x, box.y), ImVec2(box.right(), box.bottom()),
                           IM_COL32((rgb >> 16) & 0xFFU, (rgb >> 8) & 0xFFU, rgb & 0xFFU, 255));
    if (row.material == scene::Material::Unseen) {
      ui.line(box.x + 1, box.bottom() - 1, box.right() - 1, box.y + 1, Tone::Hidden, 2);
    } else if (row.material == scene::Material::SeenLeaning) {
      ui.draw->AddCircleFilled(ImVec2(box.middle_x(), box.middle_y()), 2.5F,
                               ui.colour(Tone::Sightline), 12);
    }
    if (row.material == scene::Material::ClearRoom || row.material == scene::Material::Landing) {
      ui.line(box.x + 1, box.bottom() - 1, box.right() - 1, box.y + 1, Tone::Card, 2);
    } else if (row.material == scene::Material::UnknownRoom) {
      ui.draw->AddCircleFilled(ImVec2(box.middle_x(), box.middle_y()), 3, ui.colour(Tone::Card),
                               12);
    }
    ui.frame(box, Tone::Rule, 1, 0);
    ui.text(box.right() + 6, y, row.words, kWords, Tone::Ink);
    y += kStep;
  }
}

// What the marks on the ground are, and the zones while they are shown, where there is room for
// words. A name that would lie on another one is left out: the key has its colour.
void ScenePicture::names(Ui& ui, const Rect& rect, report::Units units) const {
  if (rect.w < 420 || rect.h < 240 || camera_.inside()) return;
  constexpr float kWords = 12.5F, kHigh = 17;
  std::vector<Rect> taken{{rect.x, rect.bottom() - kTarget - 10, 2 * kTarget + 90, kTarget + 10},
                          {rect.x, rect.y, 160, 100},
                          {rect.right() - 120, rect.y, 120, kTarget + 8}};
  const auto name = [&](scene::Vec at, std::string_view words, bool carded) {
    double x = 0, y = 0;
    if (!scene::place_on(lens_, at, x, y)) return;
    const float px = rect.x + rect.w * static_cast<float>(x);
    const float py = rect.y + rect.h * static_cast<float>(y);
    const float wide = ui.width(words, kWords) + (carded ? 10.0F : 0.0F);
    const Rect box{carded ? px - wide / 2 : px - wide, py - kHigh / 2, wide, kHigh};
    if (box.x < rect.x || box.right() > rect.right() || py < rect.y + 10 ||
        py > rect.bottom() - 10) {
      return;
    }
    for (const Rect& other : taken) {
      if (box.x < other.right() && other.x < box.right() && box.y < other.bottom() &&
          other.y < box.bottom()) {
        return;
      }
    }
    taken.push_back(box);
    if (carded) ui.fill(box, Tone::Card, 4);
    ui.text(box.middle_x(), py, words, kWords, Tone::Ink, false, Side::Centre);
  };
  if (feet_line_) name(*feet_line_, "feet line", false);
  if (zone_) name(*zone_, "child-free zone", false);
  for (const scene::ZoneName& zone : zones_) {
    std::string words(zone.what);
    if (zone.required_mm)
      words = report::plain_length(*zone.required_mm, units, true) + " " + words;
    name(zone.at, words, true);
  }
}

void ScenePicture::fill_frame(const Ui& ui, const Rect& backdrop, const Rect& rect) {
  const ImGuiIO& io = ImGui::GetIO();
  const float scale = io.DisplayFramebufferScale.x;
  const auto pixel = [scale](float css) { return static_cast<int>(std::lround(css * scale)); };
  scene::Frame next = frame_;
  next.left = pixel(backdrop.x);
  next.width = std::max(1, pixel(backdrop.right()) - next.left);
  next.height = std::max(1, pixel(backdrop.bottom()) - pixel(backdrop.y));
  next.bottom = pixel(io.DisplaySize.y) - pixel(backdrop.bottom());
  next.scale = scale;
  if (next.width != frame_.width || next.height != frame_.height || ui.theme != theme_) {
    changed_ = true;
  }
  const auto wide = [](float css) { return static_cast<double>(std::max(1.0F, css)); };
  const bool inside = camera_.inside();
  lens_ = scene::lens_of(camera_.pose(), wide(rect.w) / wide(rect.h));
  const oven::Floor& floor = plan_floor_;
  const scene::Lens shown =
      plan_ ? scene::plan_lens({-floor.half_width_mm, floor.near_mm, layout_.floor_mm},
                               {floor.half_width_mm, floor.far_mm, layout_.floor_mm})
            : lens_;
  next.lens = scene::placed_in(
      shown, static_cast<double>(rect.w) / wide(backdrop.w),
      static_cast<double>(rect.h) / wide(backdrop.h),
      2 * static_cast<double>(rect.middle_x() - backdrop.middle_x()) / wide(backdrop.w),
      2 * static_cast<double>(backdrop.middle_y() - rect.middle_y()) / wide(backdrop.h));
  next.hearth_mm = static_cast<float>(hearth_mm_);
  next.only_paint = plan_;
  if (next.lens.view_projection != frame_.lens.view_projection) changed_ = true;
  next.ghost = inside ? 1.0F : static_cast<float>(kGhost);
  if (changed_) {
    scene_colours(ui.theme, inside, plan_, next);
    ++next.number;
  }
  frame_ = next;
  theme_ = ui.theme;
  changed_ = false;
}

void ScenePicture::draw(Ui& ui, const Rect& backdrop, const Rect& rect, const SceneInput& input,
                        Intents& intents) {
  camera_.set_still(input.view.still);
  refresh(input);
  // The station rests clear of the buttons at the picture's foot.
  // And, pulled apart, of the words at its head, where it is high enough for both.
  const float head = apart_.on && rect.h > 4 * kPickedHigh + kTarget ? kPickedHigh : 0;
  const Rect open{rect.x, rect.y + head, rect.w, rect.h - kTarget - kUnit - head};
  // From the side away from the dough counter, so that the cook is not before the mouth.
  camera_.show(corners_, layout_.dough_right ? -kHomeYaw_deg : kHomeYaw_deg,
               static_cast<double>(open.w) / static_cast<double>(std::max(1.0F, open.h)));
  if (look_.sees_oven) {
    camera_.set_eye(input.view.leaning ? look_.leaning_eye : look_.eye, look_.target);
  }
  camera_.look_through(input.view.through_eyes && look_.sees_oven);
  moving_ = camera_.step(input.passed_ms);
  // The cook who looks is gone from the picture once the camera is in their place.
  refresh(input);
  plan_floor_ = input.evaluation.geometry.floor;
  shown_ = open;
  fill_frame(ui, backdrop, plan_ ? rect : open);
  if (surface_ != nullptr) {
    to_paint_ = {surface_, &frame_};
    ui.draw->AddCallback(paint, &to_paint_);
    ui.draw->AddCallback(ImDrawCallback_ResetRenderState, nullptr);
  }
  if (plan_) return;
  names(ui, open, input.view.units);
  key(ui, rect, input);
  buttons(ui, backdrop, rect, input, intents);
  const Touch touch = ui.target(
      "action:scene",
      "Scene of the station. Arrow keys turn it, plus and minus zoom, Home shows all of it", rect);
  hands(touch, rect, input, *ui.focus);
  moving_ = moving_ || camera_.asked();
  if (touch.hovered) ui.cursor = touch.held ? "grabbing" : "grab";
}

}  // namespace hs::web
