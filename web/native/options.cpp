#include "web/native/options.h"

#include <optional>
#include <utility>

#include "engine/base/number_text.h"
#include "engine/base/text.h"

namespace hs::web::native {
namespace {

// Smaller than a phone nothing fits; larger than this no monitor is.
constexpr int kLeastSize = 240, kMostSize = 8000;
constexpr double kLeastScale = 0.5, kMostScale = 4;

std::optional<int> pixels(std::string_view text) {
  int value = 0;
  if (text.empty() || text.size() > 4) return std::nullopt;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + (c - '0');
  }
  if (value < kLeastSize || value > kMostSize) return std::nullopt;
  return value;
}

bool read_size(std::string_view text, Options& out) {
  const std::size_t cross = text.find('x');
  if (cross == std::string_view::npos) return false;
  const auto width = pixels(text.substr(0, cross));
  const auto height = pixels(text.substr(cross + 1));
  if (!width || !height) return false;
  out.width = *width;
  out.height = *height;
  return true;
}

bool read_scale(std::string_view text, Options& out) {
  const auto value = parse_decimal(text);
  if (!value || *value < kLeastScale || *value > kMostScale) return false;
  out.scale = static_cast<float>(*value);
  return true;
}

template <typename T, std::size_t N>
bool read_word(std::string_view text, const std::pair<std::string_view, T> (&words)[N], T& out) {
  for (const auto& [word, value] : words) {
    if (word != text) continue;
    out = value;
    return true;
  }
  return false;
}

constexpr std::pair<std::string_view, Picture> kPictures[] = {{"section", Picture::Section},
                                                              {"fit", Picture::FitMap},
                                                              {"scene", Picture::Scene},
                                                              {"lamp", Picture::Lamp}};
constexpr std::pair<std::string_view, report::Units> kUnits[] = {{"in", report::Units::Inch},
                                                                 {"mm", report::Units::Millimetre}};
constexpr std::pair<std::string_view, Theme> kThemes[] = {{"sun", Theme::Sun},
                                                          {"dusk", Theme::Dusk}};

bool keep(std::string_view text, std::string& out) {
  out = std::string(text);
  return !text.empty();
}

struct Row {
  std::string_view name, allowed;
  bool (*read)(std::string_view, Options&);
};

constexpr Row kRows[] = {
    {"--link", "a link's text or address", [](auto text, auto& o) { return keep(text, o.link); }},
    {"--file", "a station's JSON file", [](auto text, auto& o) { return keep(text, o.file); }},
    {"--picture", "section, fit, scene or lamp",
     [](auto text, auto& o) { return read_word(text, kPictures, o.picture); }},
    {"--units", "in or mm", [](auto text, auto& o) { return read_word(text, kUnits, o.units); }},
    {"--theme", "sun or dusk",
     [](auto text, auto& o) { return read_word(text, kThemes, o.theme); }},
    {"--size", "WIDTHxHEIGHT, each 240 to 8000", read_size},
    {"--scale", "0.5 to 4", read_scale},
    {"--page", "the page's address", [](auto text, auto& o) { return keep(text, o.page); }},
    {"--screenshot", "a file to write",
     [](auto text, auto& o) { return keep(text, o.screenshot); }},
};

}  // namespace

Result<Options> read_options(const std::vector<std::string_view>& words) {
  Options out;
  std::vector<Problem> problems;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string_view word = words[i];
    if (word == "--help" || word == "-h") {
      out.help = true;
      continue;
    }
    if (word == "--items") {
      out.items = true;
      continue;
    }
    const std::size_t equals = word.find('=');
    const std::string_view name = word.substr(0, equals);
    const Row* row = nullptr;
    for (const Row& one : kRows) {
      if (one.name == name) row = &one;
    }
    if (row == nullptr) {
      problems.push_back({shortened(word), "this option", "one that --help lists"});
      continue;
    }
    std::string_view value;
    if (equals != std::string_view::npos) {
      value = word.substr(equals + 1);
    } else if (i + 1 < words.size()) {
      value = words[++i];
    }
    if (!row->read(value, out)) {
      problems.push_back({std::string(name), shortened(value), std::string(row->allowed)});
    }
  }
  if (!out.link.empty() && !out.file.empty()) {
    problems.push_back({"--file", "a file beside a link", "one of the two"});
  }
  if (out.items && out.screenshot.empty()) {
    problems.push_back({"--items", "no picture", "--screenshot FILE beside it"});
  }
  if (!problems.empty()) return problems;
  return out;
}

std::string_view help_text() {
  return "hearthsight-window: the station's pictures and controls in a window, without a browser\n"
         "\n"
         "  --link TEXT                 opens a link\n"
         "  --file FILE                 opens a station's JSON file; without both: the example\n"
         "  --picture WORD              section, fit, scene or lamp: what it shows first\n"
         "  --units in|mm               --theme sun|dusk\n"
         "  --size WIDTHxHEIGHT         --scale NUMBER   device pixels in one of these\n"
         "  --page ADDRESS              of the page, for the links that it prints\n"
         "  --screenshot FILE.ppm       writes the picture once it is at rest, and ends\n"
         "  --items                     with it: prints every control's place, JSON\n"
         "\n"
         "Keys: Tab, arrows, Page Up and Down, Home, End, Enter as in the page. U units, P "
         "picture,\n"
         "T sun or dusk. Ctrl+Z undo, Ctrl+Y redo, Ctrl+C copies the link, Ctrl+V opens a copied\n"
         "one, Ctrl+Q ends. What is typed or only read is in the page: scripts/serve.\n"
         "Exit 0: done. 2: bad input, named on stderr. 1: no window, or a file not written.\n";
}

}  // namespace hs::web::native
