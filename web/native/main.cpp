// The window of scripts/serve --native: the page's canvas on a desktop, without a browser.

#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

#include "web/native/app.h"
#include "web/native/options.h"
#include "web/native/picture_file.h"
#include "web/native/window.h"

namespace {

using namespace hs::web::native;

constexpr int kDone = 0;
constexpr int kFault = 1;
constexpr int kBadInput = 2;

int fault(const std::string& words) {
  std::fprintf(stderr, "hearthsight-window: %s\n", words.c_str());
  return kFault;
}

int refuse(const std::vector<hs::Problem>& problems) {
  for (const hs::Problem& problem : problems) {
    std::fprintf(stderr, "%s\n", hs::sentence(problem).c_str());
  }
  return kBadInput;
}

// Draws until nothing more is wanted, writes what there is then.
int take_picture(App& app, const Window& window, const Options& options) {
  while (app.due()) app.frame();
  if (!app.error().empty()) return fault(app.error());
  const WindowSize size = window.size();
  if (!write_picture(options.screenshot, size.pixel_width, size.pixel_height)) {
    return fault(options.screenshot + " could not be written");
  }
  if (options.items) std::printf("%s\n", app.items_json().c_str());
  return kDone;
}

int run(const Options& options) {
  hs::web::Session session;
  const std::vector<hs::Problem> problems = open_station(session, options);
  if (!problems.empty()) return refuse(problems);
  Window window;
  std::string error;
  if (!window.open(options.width, options.height, options.scale, error)) {
    return fault("no window: " + error);
  }
  App app(session, window, options);
  if (!app.start()) return fault("the graphics driver cannot draw this");
  window.events(false);
  if (!options.screenshot.empty()) return take_picture(app, window, options);
  bool told = false;
  while (!window.closing()) {
    if (app.due()) {
      app.frame();
      window.show_frame();
    }
    if (!told && !app.error().empty()) {
      fault(app.error());
      told = true;
    }
    window.events(!app.due());
  }
  return kDone;
}

}  // namespace

int main(int argc, char** argv) {
  const auto options =
      read_options(std::vector<std::string_view>(argv + (argc > 0 ? 1 : 0), argv + argc));
  if (!options) return refuse(options.error());
  if (options->help) {
    std::fputs(std::string(help_text()).c_str(), stdout);
    return kDone;
  }
  return run(*options);
}
