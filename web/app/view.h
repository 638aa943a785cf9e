#pragma once
// What one person looks at on one device: not part of the station, not undone, not in the link.
// And what that person asks for: panels collect intents, the canvas applies them after the frame.

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "engine/report/summary.h"
#include "web/app/theme.h"

namespace hs::web {

enum class Picture : std::uint8_t { Section, FitMap, Scene, Lamp };

struct View {
  report::Units units = report::Units::Inch;
  Theme theme = Theme::Sun;
  Picture picture = Picture::Section;
  std::size_t person = 0;      // who looks
  bool dough_counter = false;  // which height the shared control sets
  // Of the scene.
  bool later_here = true;     // what comes after the first picture is (web/later.txt)
  bool through_eyes = false;  // from the eye of the one who looks
  bool leaning = false;       // that one bends until the target shows
  bool clear_zones = false;   // what must stay free is shown
  bool pulled_apart = false;  // the cabinets' pieces away from their places
  bool still = false;         // asked for: no motion but what a finger makes
};

// One finger, or the mouse with its button down, CSS px.
struct Finger {
  int id = 0;
  float x = 0, y = 0;
  double since_ms = 0;  // when it came down
};

enum class Ask : std::uint8_t {
  Drag,  // path, value
  DragEnd,
  Clear,     // path
  LoadOven,  // path: the kind's word
  Undo,
  Redo,
  Sheet,  // path: "people:<row>", "oven", "why:<rule>"
  Units,
  Picture,       // value: of Picture
  Person,        // value: index
  DoughCounter,  // value: 0 or 1
  ThroughEyes,   // value: 0 or 1
  Lean,          // value: 0 or 1
  ClearZones,    // value: 0 or 1
  PullApart,     // value: 0 or 1
  Choose,        // path, value: index of the choice
  LampBest,      // the lamp's head back to the best place found
};

struct Intent {
  Ask ask;
  std::string path;
  double value = 0;
};
using Intents = std::vector<Intent>;

}  // namespace hs::web
