#pragma once
// The canvas's own controls, drawn and operated here: a value with steppers and a rule to drag
// along, a chooser with two arrows, chips and tools.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "engine/height/height.h"
#include "engine/report/summary.h"
#include "web/app/ui.h"

namespace hs::web {

// The one value that a finger holds. It follows the finger from where it was, so a tap never makes
// it jump; what it may run between is fixed when the finger lands. A hand that goes up or down from
// there passes over it, and moves nothing.
struct Hold {
  std::string id;
  double value = 0;
  float x = 0, y = 0;
  bool moved = false, passed = false;
  double low = 0, high = 0;
};
inline constexpr float kStill = 4;  // CSS px that a finger may tremble

struct ValueSpec {
  std::string_view path;
  std::string_view label;
  double value_mm = 0;
  double low_mm = 0, high_mm = 0;    // what the rule shows; widened to hold the value
  double least_mm = 0, most_mm = 0;  // what the field takes
  double step_mm = 5;                // of a stepper and of a drag
  std::optional<double> mark_mm;     // the recommended value
  std::optional<height::Band> band;  // where nobody loses
  std::string text;                  // the value in words
  std::string_view hint;             // what mark and band are, where there is room for it
  report::Units units = report::Units::Inch;
  bool compact = false;  // no room for label and value on one line
};

struct ValueChange {
  std::optional<double> to_mm;
  bool dragging = false;  // the finger still holds it
  bool done = false;      // let go, or a single step
};

// [-] rule [+]. Keys: arrows a step, Page Up and Page Down ten, Home and End to the rule's ends.
ValueChange value_control(Ui& ui, const Rect& rect, const ValueSpec& spec, Hold& hold);

// Nearest multiple of a step, kept inside least..most.
double snapped(double value_mm, double step_mm, double least_mm, double most_mm);

enum class Choice : std::uint8_t { None, Previous, Next, Open };
// [<] name [>]; a tap on the name opens the list.
Choice chooser(Ui& ui, const Rect& rect, std::string_view path, std::string_view label,
               std::string_view name, std::string_view value);

// Two words, the chosen one filled; a tap changes over.
bool switch_chip(Ui& ui, const Rect& rect, std::string_view id, std::string_view label,
                 std::string_view first, std::string_view second, bool second_chosen);

// A word or two in a rounded box, with an eye before it where it is about looking.
bool chip(Ui& ui, const Rect& rect, std::string_view id, std::string_view label,
          std::string_view text, bool eye = false, bool filled = false);

enum class Tool : std::uint8_t { Word, Undo, Redo, Closer, Farther };
bool tool(Ui& ui, const Rect& rect, std::string_view id, std::string_view label, Tool icon,
          bool enabled, std::string_view text = {});

// An open eye, as wide as `size`.
void draw_eye(const Ui& ui, float x, float y, float size, Tone tone);

}  // namespace hs::web
