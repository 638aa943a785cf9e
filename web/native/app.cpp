#include "web/native/app.h"

#include <GLES3/gl3.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "engine/base/text.h"
#include "engine/config/json.h"
#include "font_sans.h"
#include "font_sans_bold.h"
#include "imgui.h"
#include "imgui_impl_opengl3.h"
#include "web/session/presets.h"

namespace hs::web::native {
namespace {

constexpr const char* kGlsl = "#version 300 es";
constexpr int kMouse = 0;        // the one pointer there is
constexpr int kCommand = 2 | 8;  // control, and the command key of a keyboard that has one

View view_of(const Options& options) {
  View view;
  view.units = options.units;
  view.theme = options.theme;
  view.picture = options.picture;
  view.still = !options.screenshot.empty();
  return view;
}

// People give a whole address as well as a link alone.
std::string_view link_in(std::string_view text) {
  return trimmed_ends(text.substr(text.find('#') + 1));
}

std::vector<Problem> open_file(Session& session, const std::string& name) {
  std::FILE* file = std::fopen(name.c_str(), "rb");
  if (file == nullptr) return {{shortened(name, 80), std::strerror(errno), "a readable file"}};
  // One byte more than is allowed is enough to refuse a file; the rest stays unread.
  std::string text(config::kMostJsonBytes + 1, '\0');
  text.resize(std::fread(text.data(), 1, text.size(), file));
  const bool bad = std::ferror(file) != 0;
  std::fclose(file);
  if (bad) return {{shortened(name, 80), std::strerror(errno), "a readable file"}};
  return session.open_json(text);
}

void print(const std::string& line) {
  std::printf("%s\n", line.c_str());
  std::fflush(stdout);
}

}  // namespace

std::vector<Problem> open_station(Session& session, const Options& options) {
  session.mark_for(options.units);
  std::vector<Problem> problems = !options.file.empty()   ? open_file(session, options.file)
                                  : !options.link.empty() ? session.open_link(link_in(options.link))
                                                          : session.open_link(preset_link("demo"));
  if (problems.empty()) session.forget_history();
  return problems;
}

App::App(Session& session, Window& window, const Options& options)
    : session_(session),
      window_(window),
      options_(options),
      view_(view_of(options)),
      canvas_(session, view_, hearthsight::embedded::font_sans(),
              hearthsight::embedded::font_sans_bold()),
      notice_(canvas_, view_) {}

bool App::start() {
  ready_ = ImGui_ImplOpenGL3_Init(kGlsl);
  if (!ready_) return false;
  canvas_.scene_picture().use(&scene_);
  window_.listen(this);
  resized();
  return true;
}

App::~App() {
  window_.listen(nullptr);
  if (ready_) ImGui_ImplOpenGL3_Shutdown();
}

void App::frame() {
  const WindowSize size = window_.size();
  if (size.pixel_width < 1 || size.pixel_height < 1) {
    due_ = false;  // minimised; its return is an event
    return;
  }
  ImGui_ImplOpenGL3_NewFrame();
  due_ = canvas_.frame(window_.time_ms()) > 0;
  glViewport(0, 0, size.pixel_width, size.pixel_height);
  const std::uint32_t backdrop = canvas_.backdrop();
  const auto part = [backdrop](int shift) {
    return static_cast<float>((backdrop >> shift) & 0xFFU) / 255.0F;
  };
  glClearColor(part(16), part(8), part(0), 1);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  window_.cursor(canvas_.cursor());
  canvas_.take_view_changed();
  for (const std::string& sheet : canvas_.take_sheets()) answer_sheet(sheet);
}

void App::wake() {
  canvas_.wake();
  due_ = true;
}

std::string App::address() const { return options_.page + "#" + session_.link(); }

void App::answer_sheet(const std::string& sheet) {
  notice_.say(words_for_sheet(sheet));
  print(notice_.words());
  print(address());
  wake();
}

void App::pointer(PointerKind kind, float x, float y) {
  if (kind == PointerKind::Down) notice_.clear();
  canvas_.pointer(kind, kMouse, false, x, y);
  due_ = true;
}

void App::wheel(float dx, float dy) {
  canvas_.wheel(dx, dy);
  due_ = true;
}

void App::key(std::string_view code, char letter, bool down, int modifiers) {
  if (down) {
    notice_.clear();
    wake();
    const bool shift = (modifiers & kShift) != 0;
    if ((modifiers & kCommand) != 0 && command(letter, shift)) return;
    if (modifiers == 0 && choice(letter)) return;
  }
  const bool used = canvas_.key(code, down, modifiers);
  // In a browser the Tab after the last control goes on to the document; here to the first one.
  if (!used && down && code == "Tab") canvas_.key(code, down, modifiers);
}

bool App::command(char letter, bool shift) {
  switch (letter) {
    case 'z':
      if (!shift && session_.can_undo()) session_.undo();
      if (shift && session_.can_redo()) session_.redo();
      return true;
    case 'y':
      if (session_.can_redo()) session_.redo();
      return true;
    case 'c':
      window_.copy(address());
      print(address());
      notice_.say("The link is copied.");
      return true;
    case 'v':
      paste();
      return true;
    case 'q':
      window_.close();
      return true;
    default:
      return false;
  }
}

bool App::choice(char letter) {
  switch (letter) {
    case 'u':
      view_.units =
          view_.units == report::Units::Inch ? report::Units::Millimetre : report::Units::Inch;
      return true;
    case 'p':
      view_.picture = static_cast<Picture>((static_cast<int>(view_.picture) + 1) % 4);
      return true;
    case 't':
      view_.theme = view_.theme == Theme::Sun ? Theme::Dusk : Theme::Sun;
      return true;
    default:
      return false;
  }
}

void App::paste() {
  const std::string text = window_.pasted();
  const std::vector<Problem> problems = session_.open_link(link_in(text));
  if (problems.empty()) {
    notice_.say("The copied link is open. Ctrl+Z goes back.");
    return;
  }
  std::string words = "What was copied is no link that opens.";
  for (const Problem& problem : problems) words += " " + sentence(problem) + ".";
  notice_.say(words);
}

void App::blur() {
  canvas_.blur();
  due_ = true;
}

void App::resized() {
  const WindowSize size = window_.size();
  if (size.pixel_width < 1 || size.pixel_height < 1) return;
  canvas_.resize(size.width, size.height, size.scale, {});
  due_ = true;
}

void App::exposed() { wake(); }

}  // namespace hs::web::native
