#pragma once
// What the page around the canvas is told: globalThis.hsHost of web/js/main.js.

#include <cstdint>
#include <string>

namespace hs::web::host {

void changed(std::uint32_t revision, bool dragging);
void wake();                               // a frame is wanted
void open_sheet(const std::string& name);  // "people:<row>", "oven", "why:<rule>"
void cursor(const std::string& name);      // of the mouse, a CSS name

}  // namespace hs::web::host
