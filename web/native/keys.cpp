#include "web/native/keys.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <string_view>

namespace hs::web::native {

std::string code_of(int key) {
  struct Row {
    int key;
    std::string_view code;
  };
  constexpr Row kRows[] = {
      {GLFW_KEY_SPACE, "Space"},
      {GLFW_KEY_APOSTROPHE, "Quote"},
      {GLFW_KEY_COMMA, "Comma"},
      {GLFW_KEY_MINUS, "Minus"},
      {GLFW_KEY_PERIOD, "Period"},
      {GLFW_KEY_SLASH, "Slash"},
      {GLFW_KEY_SEMICOLON, "Semicolon"},
      {GLFW_KEY_EQUAL, "Equal"},
      {GLFW_KEY_LEFT_BRACKET, "BracketLeft"},
      {GLFW_KEY_BACKSLASH, "Backslash"},
      {GLFW_KEY_RIGHT_BRACKET, "BracketRight"},
      {GLFW_KEY_GRAVE_ACCENT, "Backquote"},
      {GLFW_KEY_ESCAPE, "Escape"},
      {GLFW_KEY_ENTER, "Enter"},
      {GLFW_KEY_TAB, "Tab"},
      {GLFW_KEY_BACKSPACE, "Backspace"},
      {GLFW_KEY_INSERT, "Insert"},
      {GLFW_KEY_DELETE, "Delete"},
      {GLFW_KEY_RIGHT, "ArrowRight"},
      {GLFW_KEY_LEFT, "ArrowLeft"},
      {GLFW_KEY_DOWN, "ArrowDown"},
      {GLFW_KEY_UP, "ArrowUp"},
      {GLFW_KEY_PAGE_UP, "PageUp"},
      {GLFW_KEY_PAGE_DOWN, "PageDown"},
      {GLFW_KEY_HOME, "Home"},
      {GLFW_KEY_END, "End"},
      {GLFW_KEY_KP_DECIMAL, "NumpadDecimal"},
      {GLFW_KEY_KP_DIVIDE, "NumpadDivide"},
      {GLFW_KEY_KP_MULTIPLY, "NumpadMultiply"},
      {GLFW_KEY_KP_SUBTRACT, "NumpadSubtract"},
      {GLFW_KEY_KP_ADD, "NumpadAdd"},
      {GLFW_KEY_KP_ENTER, "NumpadEnter"},
      {GLFW_KEY_KP_EQUAL, "NumpadEqual"},
      {GLFW_KEY_LEFT_SHIFT, "ShiftLeft"},
      {GLFW_KEY_RIGHT_SHIFT, "ShiftRight"},
      {GLFW_KEY_LEFT_CONTROL, "ControlLeft"},
      {GLFW_KEY_RIGHT_CONTROL, "ControlRight"},
      {GLFW_KEY_LEFT_ALT, "AltLeft"},
      {GLFW_KEY_RIGHT_ALT, "AltRight"},
      {GLFW_KEY_LEFT_SUPER, "MetaLeft"},
      {GLFW_KEY_RIGHT_SUPER, "MetaRight"},
  };
  for (const Row& row : kRows) {
    if (row.key == key) return std::string(row.code);
  }
  const auto nth = [key](std::string_view stem, int first, char from) {
    return std::string(stem) + static_cast<char>(from + (key - first));
  };
  if (key >= GLFW_KEY_A && key <= GLFW_KEY_Z) return nth("Key", GLFW_KEY_A, 'A');
  if (key >= GLFW_KEY_0 && key <= GLFW_KEY_9) return nth("Digit", GLFW_KEY_0, '0');
  if (key >= GLFW_KEY_KP_0 && key <= GLFW_KEY_KP_9) return nth("Numpad", GLFW_KEY_KP_0, '0');
  if (key >= GLFW_KEY_F1 && key <= GLFW_KEY_F12) return "F" + std::to_string(key - GLFW_KEY_F1 + 1);
  return {};
}

}  // namespace hs::web::native
