#pragma once
// What the native window is told on its command line.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/report/summary.h"
#include "web/app/theme.h"
#include "web/app/view.h"

namespace hs::web::native {

struct Options {
  bool help = false;
  std::string link;  // a link's text, or a whole address with one; empty: none
  std::string file;  // a station's JSON file; empty: none. Without both: the example household
  Picture picture = Picture::Section;
  report::Units units = report::Units::Inch;
  Theme theme = Theme::Sun;
  int width = 900, height = 800;                // CSS px
  float scale = 0;                              // device pixels in one CSS px; 0: the monitor's own
  std::string page = "http://localhost:8480/";  // where scripts/serve puts the page
  std::string screenshot;                       // a file to write; empty: stay open
  bool items = false;                           // print what can be acted on, as JSON
};

Result<Options> read_options(const std::vector<std::string_view>& words);

std::string_view help_text();

}  // namespace hs::web::native
