#pragma once
// A key's name in the UI Events standard (KeyboardEvent.code), which the canvas goes by.

#include <string>

namespace hs::web::native {

// `key`: one of GLFW_KEY_*, which name places on a keyboard as the standard's codes do. Empty for a
// key that the standard names otherwise on each system.
std::string code_of(int key);

}  // namespace hs::web::native
