#include "web/app/canvas.h"

#include <algorithm>
#include <cfloat>
#include <utility>

#include "imgui.h"
#include "imgui_internal.h"
#include "web/app/panels.h"

namespace hs::web {
namespace {

// `fallback`: the face gives the last one the characters that it lacks.
ImFont* add_font(std::string_view bytes, bool fallback = false) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  config.MergeMode = fallback;
  // Dear ImGui takes the bytes as mutable and leaves them alone when it does not own them.
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<char*>(bytes.data()),
                                                    static_cast<int>(bytes.size()), kText, &config);
}

KeyAction action_of(std::string_view code) {
  struct Row {
    std::string_view code;
    KeyAction action;
  };
  constexpr Row kRows[] = {
      {"ArrowLeft", KeyAction::Less},
      {"ArrowDown", KeyAction::Less},
      {"ArrowRight", KeyAction::More},
      {"ArrowUp", KeyAction::More},
      {"PageDown", KeyAction::MuchLess},
      {"PageUp", KeyAction::MuchMore},
      {"Home", KeyAction::Least},
      {"End", KeyAction::Most},
      {"Enter", KeyAction::Press},
      {"NumpadEnter", KeyAction::Press},
      {"Space", KeyAction::Press},
      {"Equal", KeyAction::Closer},
      {"NumpadAdd", KeyAction::Closer},
      {"Minus", KeyAction::Farther},
      {"NumpadSubtract", KeyAction::Farther},
  };
  for (const Row& row : kRows) {
    if (row.code == code) return row.action;
  }
  return KeyAction::None;
}

// Between two layouts of one frame.
constexpr float kAtOnce_s = 1e-4F;

}  // namespace

Canvas::Canvas(Session& session, View& view, std::string_view font, std::string_view bold_font)
    : session_(session), view_(view) {
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigFlags |= ImGuiConfigFlags_IsTouchScreen;
  io.ConfigInputTrickleEventQueue = true;
  ImGui::GetStyle().WindowMinSize = ImVec2(1, 1);
  font_ = add_font(font);
  bold_ = add_font(bold_font);
  // The bold font carries fewer characters; a rare one in a name is then drawn plain.
  add_font(font, true);
}

Canvas::~Canvas() { ImGui::DestroyContext(); }

void Canvas::resize(float width, float height, float scale, const Insets& insets) {
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = ImVec2(std::max(1.0F, width), std::max(1.0F, height));
  io.DisplayFramebufferScale = ImVec2(scale, scale);
  scale_ = scale;
  insets_ = insets;
  wake();
}

void Canvas::follow(PointerKind kind, const Finger& finger) {
  const auto at = std::find_if(fingers_.begin(), fingers_.end(),
                               [&](const Finger& other) { return other.id == finger.id; });
  switch (kind) {
    case PointerKind::Down:
      last_down_ = finger;
      if (at == fingers_.end()) fingers_.push_back(finger);
      break;
    case PointerKind::Move:
      if (at == fingers_.end()) break;
      at->x = finger.x;
      at->y = finger.y;
      break;
    case PointerKind::Up:
    case PointerKind::Cancel:
      if (at != fingers_.end()) fingers_.erase(at);
      break;
  }
}

void Canvas::pointer(PointerKind kind, int id, bool touch, float x, float y, double time_ms) {
  ImGuiIO& io = ImGui::GetIO();
  follow(kind, {id, x, y, time_ms < 0 ? time_ms_ : time_ms});
  if (pointing_ && scene_picture_.held() && !fingers_.empty()) {
    // The scene takes every finger; to Dear ImGui they are one, which is up with the last of them.
    pointer_ = fingers_.front().id;
    wake();
    if (id != pointer_) return;
  }
  // One finger works everything else; others that come while it is down are left out.
  if (pointing_ && id != pointer_) return;
  // Source, position, button, in this order: Dear ImGui judges each by what came before it.
  io.AddMouseSourceEvent(touch ? ImGuiMouseSource_TouchScreen : ImGuiMouseSource_Mouse);
  switch (kind) {
    case PointerKind::Down:
      pointing_ = true;
      pointer_ = id;
      focus_.ring = false;
      io.AddMousePosEvent(x, y);
      io.AddMouseButtonEvent(0, true);
      break;
    case PointerKind::Move:
      io.AddMousePosEvent(x, y);
      break;
    case PointerKind::Up:
      pointing_ = false;
      io.AddMousePosEvent(x, y);
      io.AddMouseButtonEvent(0, false);
      // A lifted finger points nowhere, so nothing stays lit under it.
      if (touch) io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
      break;
    case PointerKind::Cancel:
      // Away first: a release outside the target presses nothing.
      io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
      if (pointing_) io.AddMouseButtonEvent(0, false);
      pointing_ = false;
      break;
  }
  // A move settles in the frame that takes it; what begins or ends needs some to settle.
  if (kind == PointerKind::Move) {
    wanted_ = std::max(wanted_, 1);
  } else {
    wake();
  }
}

void Canvas::wheel(float, float dy) {
  // A notch is about 100 px of the browser, and down is positive there.
  ImGui::GetIO().AddMouseWheelEvent(0, -dy / 100);
  wake();
}

bool Canvas::key(std::string_view code, bool down, int modifiers) {
  constexpr int kOtherModifiers = 2 | 4 | 8;
  if ((modifiers & kOtherModifiers) != 0) return false;
  if (code == "Tab") {
    if (!down) return false;
    const std::string_view next =
        items_.neighbour(focus_.ring ? std::string_view(focus_.id) : "", (modifiers & kShift) != 0);
    focus_.id = std::string(next);
    focus_.ring = !next.empty();
    focus_.action = KeyAction::None;
    wake();
    return focus_.ring;
  }
  const KeyAction action = action_of(code);
  if (action == KeyAction::None || items_.find(focus_.id) == nullptr) return false;
  if (down) {
    focus_.ring = true;
    focus_.action = action;
    focus_.sideways = code == "ArrowLeft" || code == "ArrowRight";
    wake();
  }
  return true;
}

void Canvas::blur() {
  focus_ = {};
  fingers_.clear();
  if (pointing_) pointer(PointerKind::Cancel, pointer_, true, 0, 0);
  wake();
}

void Canvas::refresh_summary() {
  if (summary_made_ && summary_of_ == session_.revision() && summary_units_ == view_.units) return;
  summary_ = report::summary(session_.config(), session_.evaluation(), view_.units);
  summary_of_ = session_.revision();
  summary_units_ = view_.units;
  summary_made_ = true;
}

int Canvas::frame(double time_ms) {
  ImGuiIO& io = ImGui::GetIO();
  const double passed = last_ms_ < 0 ? 16.7 : time_ms - last_ms_;
  last_ms_ = time_ms;
  time_ms_ = time_ms;
  passed_ms_ = std::clamp(passed, 1.0, 50.0);
  io.DeltaTime = static_cast<float>(std::clamp(passed, 1.0, 200.0) / 1000);
  view_.person = looking(session_.config(), view_.person);
  refresh_summary();

  ++frames_;
  wanted_ = std::max(0, wanted_ - 1);
  if (pass()) {
    // What the finger has just asked for shows in this frame already: laid out once more, painted
    // once. What that asks for in turn shows in the next one.
    io.DeltaTime = kAtOnce_s;
    passed_ms_ = 0;
    refresh_summary();
    if (pass()) wake();
  }
  // Events still in the queue need frames of their own.
  if (ImGui::GetCurrentContext()->InputEventsQueue.Size > 0) wanted_ = std::max(wanted_, 2);
  if (view_.picture == Picture::Scene && scene_picture_.moving()) wanted_ = std::max(wanted_, 1);
  return wanted_;
}

bool Canvas::pass() {
  ImGui::NewFrame();
  draw();
  ImGui::Render();
  IM_ASSERT(items_.repeated().empty());
  const std::uint32_t before = session_.revision();
  apply();
  return session_.revision() != before;
}

void Canvas::draw() {
  const ImGuiIO& io = ImGui::GetIO();
  items_.clear();
  intents_.clear();
  layout_ = layout_of(io.DisplaySize.x, io.DisplaySize.y, insets_, summary_.cooks.size());

  constexpr ImGuiWindowFlags kFlags = ImGuiWindowFlags_NoDecoration |
                                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoMove |
                                      ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                                      ImGuiWindowFlags_NoScrollWithMouse;
  ImGui::SetNextWindowPos(ImVec2(0, 0));
  ImGui::SetNextWindowSize(io.DisplaySize);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0F);
  ImGui::Begin("##canvas", nullptr, kFlags);
  // Dear ImGui tells the screen's density only to the face that it uses itself.
  bold_->CurrentRasterizerDensity = font_->CurrentRasterizerDensity;
  Ui ui;
  ui.draw = ImGui::GetWindowDrawList();
  // Edges are smoothed over one device pixel, not over one CSS pixel.
  ui.pixel = 1 / scale_;
  ui.draw->_FringeScale = ui.pixel;
  ImGui::GetForegroundDrawList()->_FringeScale = ui.pixel;
  ui.regular = font_;
  ui.bold = bold_;
  ui.theme = view_.theme;
  ui.items = &items_;
  ui.focus = &focus_;

  const Station station{session_.config(), session_.evaluation(), summary_, session_.can_undo(),
                        session_.can_redo()};
  draw_headlines(ui, layout_, station, intents_);
  draw_picture(ui, station);
  if (view_.picture == Picture::Lamp && view_.later_here && session_.evaluation().light.lamp) {
    draw_lamp_panel(ui, layout_, station, view_, hold_, intents_);
  } else {
    draw_lines(ui, layout_, station, view_, intents_);
    draw_caution(ui, layout_, station, intents_);
    draw_controls(ui, layout_, station, view_, hold_, intents_);
  }
  cursor_ = ui.cursor.empty() ? "default" : std::string(ui.cursor);
  ImGui::End();
  ImGui::PopStyleVar(2);
  // The item that had the keyboard may be gone.
  if (!focus_.id.empty() && items_.find(focus_.id) == nullptr) focus_ = {};
  focus_.action = KeyAction::None;
}

void Canvas::draw_picture(Ui& ui, const Station& station) {
  const Rect& r = layout_.picture;
  ui.fill(r, Tone::Sky);
  if (view_.picture != Picture::Section && !view_.later_here) {
    ui.paragraph(layout_.scene.inset(16), "This picture is on its way.", kText, kTextSmall, 2,
                 Tone::Ink, false, Side::Centre);
  } else if (view_.picture == Picture::Scene) {
    scene_picture_.draw(ui, r.inset(3), layout_.scene.inset(3),
                        {station.config, station.evaluation, session_.revision(), view_, fingers_,
                         last_down_, passed_ms_},
                        intents_);
  } else if (view_.picture == Picture::Lamp) {
    lamp_picture_.draw(ui, layout_.scene.inset(1), station.config, station.evaluation,
                       session_.revision(), view_, session_.dragging(), intents_);
  } else if (view_.picture == Picture::FitMap) {
    fit_picture_.draw(ui, layout_.scene, station.config, station.evaluation, view_,
                      session_.dragging(), intents_);
  } else {
    section_picture_.draw(ui, r.inset(1), layout_.scene.inset(1), station.config,
                          station.evaluation, session_.revision(), view_);
  }
  draw_tools(ui, layout_, station, view_, intents_);
  ui.frame(r, Tone::Rule, 1.5F);

  if (view_.picture != Picture::Section && view_.picture != Picture::Lamp) return;
  // The lamp is a side section too, nearer.
  const Rect& scene = layout_.scene;
  const bool lamp = view_.picture == Picture::Lamp;
  const Rect corner{scene.right() - kTarget, scene.y, kTarget, kTarget};
  if (tool(ui, corner, "action:lamp",
           lamp ? "Back to the side section" : "Show the lamp at the oven", Tool::Word, true,
           lamp ? "Side" : "Light")) {
    intents_.push_back(
        {Ask::Picture, {}, static_cast<double>(lamp ? Picture::Section : Picture::Lamp)});
  }
  if (lamp) return;
  // Back to the recommended height, while the height in the hand is the person's own.
  const config::Station& given = station.config.station;
  const bool dough = layout_.dough.h <= 0 ? view_.dough_counter : !given.oven_base_height_mm;
  const bool own =
      dough ? given.counter_height_mm.has_value() : given.oven_base_height_mm.has_value();
  if (!own) return;
  const Rect place{corner.x - kGiveBack - kUnit, scene.y + kUnit, kGiveBack, kTarget};
  if (chip(ui, place, "action:recommended",
           dough ? "Use the recommended dough counter" : "Use the recommended oven counter",
           "Use recommended", false, true)) {
    intents_.push_back(
        {Ask::Clear, dough ? "station.counter_height_mm" : "station.oven_base_height_mm", 0});
  }
}

void Canvas::apply() {
  // All that a frame drags is one change: a point has two numbers, a lamp's head three.
  std::vector<FieldNumber> dragged;
  for (const Intent& intent : intents_) {
    if (intent.ask == Ask::Drag) dragged.push_back({intent.path, intent.value});
  }
  if (!dragged.empty()) session_.drag_fields(dragged);
  for (const Intent& intent : intents_) {
    switch (intent.ask) {
      case Ask::Drag:
        break;
      case Ask::DragEnd:
        session_.end_drag();
        break;
      case Ask::Clear:
        session_.clear_field(intent.path);
        break;
      case Ask::LoadOven:
        session_.load_oven(intent.path);
        break;
      case Ask::Undo:
        session_.undo();
        break;
      case Ask::Redo:
        session_.redo();
        break;
      case Ask::Sheet:
        sheets_.push_back(intent.path);
        break;
      case Ask::Units:
        view_.units = intent.value > 0 ? report::Units::Millimetre : report::Units::Inch;
        session_.mark_for(view_.units);
        view_changed_ = true;
        wake();
        break;
      case Ask::Picture:
        view_.picture = static_cast<Picture>(static_cast<int>(intent.value));
        view_changed_ = true;
        wake();
        break;
      case Ask::Person:
        view_.person = static_cast<std::size_t>(intent.value);
        view_changed_ = true;
        wake();
        break;
      case Ask::DoughCounter:
        view_.dough_counter = intent.value > 0;
        wake();
        break;
      case Ask::ThroughEyes:
      case Ask::Lean:
      case Ask::ClearZones:
      case Ask::PullApart:
      case Ask::Choose:
      case Ask::LampBest:
        apply_later(intent);
        break;
    }
  }
  intents_.clear();
}

std::vector<std::string> Canvas::take_sheets() { return std::exchange(sheets_, {}); }
bool Canvas::take_view_changed() { return std::exchange(view_changed_, false); }

}  // namespace hs::web
