#include "web/app/host.h"

#include <emscripten.h>

// The names on the page's side are in quotes, so that closure leaves them alone.
// clang-format off
EM_JS(void, host_changed, (int revision, int dragging), {
  const host = globalThis["hsHost"];
  if (host) host["changed"](revision, dragging);
});
EM_JS(void, host_wake, (), {
  const host = globalThis["hsHost"];
  if (host) host["wake"]();
});
EM_JS(void, host_open_sheet, (const char* name), {
  const host = globalThis["hsHost"];
  if (host) host["openSheet"](UTF8ToString(name));
});
EM_JS(void, host_cursor, (const char* name), {
  const host = globalThis["hsHost"];
  if (host) host["cursor"](UTF8ToString(name));
});
// clang-format on

namespace hs::web::host {

void changed(std::uint32_t revision, bool dragging) {
  host_changed(static_cast<int>(revision), dragging ? 1 : 0);
}
void wake() { host_wake(); }
void open_sheet(const std::string& name) { host_open_sheet(name.c_str()); }
void cursor(const std::string& name) { host_cursor(name.c_str()); }

}  // namespace hs::web::host
