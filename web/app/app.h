#pragma once
// What everything that the page's script may call shares: the one station, how it is shown, and the
// text that is being handed out. Behind it: exports.cpp; web/desk/exports.cpp calls it too.

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "web/app/canvas.h"
#include "web/app/view.h"
#include "web/app/window.h"
#include "web/render/scene_renderer.h"
#include "web/session/session.h"

namespace hs::web {

struct App {
  Session session;
  View view;
  Window window;
  render::SceneRenderer scene;
  std::unique_ptr<Canvas> canvas;  // none until the page asks for it
  std::uint32_t told_revision = 0;
  bool later_here = false;  // what web/later.txt names
  std::string cursor;
  std::string answer;
};

App& app();

// Text for the page's script. It holds until the next call; the page may ask for other texts while
// it is told of a change, so the answer comes last.
const char* answer(std::string text);

// Ends a change: tells the page of the new state, and answers with what was refused.
const char* done(const std::vector<Problem>& problems);

}  // namespace hs::web
