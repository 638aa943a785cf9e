#include "engine/report/svg.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <sstream>

#include "catch_amalgamated.hpp"
#include "engine/report/sheet.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using hs::test::kPresets;
using hs::test::preset;

namespace {

// Walks an XML text that has neither comments nor declarations, as ours has not. Returns what is
// wrong with it, empty when it is well formed, and counts elements and the letters of their text.
struct Walk {
  std::string wrong;
  std::size_t elements = 0, texts = 0;
};

bool is_entity(std::string_view text, std::size_t at) {
  for (const std::string_view entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"}) {
    if (text.substr(at, entity.size()) == entity) return true;
  }
  return false;
}

Walk walk(std::string_view xml) {
  Walk out;
  std::vector<std::string> open;
  bool rooted = false;
  for (std::size_t at = 0; at < xml.size();) {
    if (xml[at] != '<') {
      if (xml[at] == '&' && !is_entity(xml, at)) out.wrong = "a bare &";
      if (xml[at] == '>') out.wrong = "a bare >";
      if (open.empty() && std::isspace(static_cast<unsigned char>(xml[at])) == 0) {
        out.wrong = "text outside the root";
      }
      if (!out.wrong.empty()) return out;
      ++at;
      continue;
    }
    // To the tag's end, past quoted values.
    std::size_t end = at + 1;
    char quote = 0;
    for (; end < xml.size() && (quote != 0 || xml[end] != '>'); ++end) {
      if (quote != 0 && xml[end] == '<') out.wrong = "< in a value";
      if (quote != 0 && xml[end] == '&' && !is_entity(xml, end)) out.wrong = "a bare & in a value";
      if (xml[end] == '"') quote = quote == 0 ? '"' : 0;
    }
    if (end == xml.size()) out.wrong = "a tag that does not end";
    if (!out.wrong.empty()) return out;
    const std::string_view tag = xml.substr(at + 1, end - at - 1);
    const bool closing = tag.starts_with('/');
    const bool empty = tag.ends_with('/');
    std::string name;
    for (std::size_t i = closing ? 1 : 0; i < tag.size(); ++i) {
      if (std::isalnum(static_cast<unsigned char>(tag[i])) == 0) break;
      name += tag[i];
    }
    if (closing) {
      if (open.empty() || open.back() != name) {
        out.wrong = "</" + name + "> closes nothing";
        return out;
      }
      open.pop_back();
    } else {
      if (open.empty() && rooted) out.wrong = "two roots";
      rooted = true;
      ++out.elements;
      if (name == "text") ++out.texts;
      if (std::count(tag.begin(), tag.end(), '"') % 2 != 0) out.wrong = "a quote left open";
      if (!empty) open.push_back(name);
    }
    at = end + 1;
  }
  if (!open.empty()) out.wrong = "<" + open.back() + "> is left open";
  return out;
}

std::string drawn(const SheetKind& kind, const config::Config& config, const SheetView& view) {
  const Sheet sheet = kind.draw(config, evaluate::evaluate(config), view);
  return svg(sheet.drawing,
             {.title = sheet.title, .description = sheet.description, .text_mm = sheet.text_mm});
}

}  // namespace

TEST_CASE("the walker refuses what is not well formed", "[report][svg]") {
  for (const char* bad : {"<a><b></a>", "<a>&</a>", "<a", "<a></a><b/>", "<a x=\"&\"/>", "x<a/>"}) {
    INFO(bad);
    CHECK_FALSE(walk(bad).wrong.empty());
  }
  CHECK(walk("<a x=\"1\"><b/>&lt;</a>\n").wrong.empty());
}

TEST_CASE("every sheet of every preset is well-formed and says what it is", "[report][svg]") {
  for (const char* name : kPresets) {
    const config::Config config = preset(name);
    for (const SheetKind& kind : sheet_kinds()) {
      INFO(name << " " << kind.name);
      const std::string text = drawn(kind, config, {.units = Units::Millimetre});
      const Walk result = walk(text);
      CHECK(result.wrong == "");
      CHECK(result.texts > (kind.section.empty() ? 4 : 1));  // a plot may have nothing to show
      CHECK(text.find("<title>" + std::string(kind.title)) != std::string::npos);
      CHECK(text.find("<desc>") != std::string::npos);
      CHECK(text.find("<script") == std::string::npos);
      CHECK(text.find("style=") == std::string::npos);  // a page's policy would drop it
      for (const char* broken : {"nan", "inf", "null"}) {
        CHECK(text.find(std::string("\"") + broken) == std::string::npos);
      }
    }
  }
}

TEST_CASE("what a household types cannot break out of the text", "[report][svg]") {
  config::Config config;
  config.title = "</title><script>alert(1)</script>";
  config.cooks[0].name = "A&B <\"'>";
  for (const SheetKind& kind : sheet_kinds()) {
    const std::string text = drawn(kind, config, {});
    CHECK(walk(text).wrong == "");
    CHECK(text.find("<script") == std::string::npos);
    // The base's plot names no cook, but the station's title.
    const bool names_cooks = kind.name != "base-profile";
    CHECK(text.find(names_cooks ? "A&amp;B &lt;&quot;&#39;&gt;" : "&lt;script&gt;") !=
          std::string::npos);
  }
}

TEST_CASE("one user unit is one millimetre, up is up", "[report][svg]") {
  Drawing d;
  d.line(Role::Scale, {100, 200}, {1100, 200}, Weight::Heavy);
  const std::string text = svg(d, {.text_mm = 50});
  CHECK(text.find("<line x1=\"100\" y1=\"-200\" x2=\"1100\" y2=\"-200\"") != std::string::npos);
  // A line of text's height more on every side.
  CHECK(text.find("viewBox=\"50 -250 1100 100\" width=\"1100mm\" height=\"100mm\"") !=
        std::string::npos);
  const std::string fitted = svg(d, {.text_mm = 50, .size = SvgSize::Fitted});
  CHECK(fitted.find("mm\"") == std::string::npos);
  CHECK(fitted.find("viewBox=\"50 -250 1100 100\"") != std::string::npos);
}

TEST_CASE("the drawings' colours are the page's own", "[report][svg]") {
  std::ifstream in(std::string(HEARTHSIGHT_SOURCE_DIR) + "/web/theme.css");
  std::stringstream read;
  read << in.rdbuf();
  const std::string css = read.str();
  const std::size_t dusk = css.find("[data-theme=\"dusk\"]");
  REQUIRE(dusk != std::string::npos);
  for (const Ink& ink : inks()) {
    INFO(ink.name);
    const std::string name = "--" + std::string(ink.name) + ": ";
    CHECK(css.find(name + std::string(ink.sun) + ";") < dusk);
    const std::size_t at = css.find(name, dusk);
    REQUIRE(at != std::string::npos);
    CHECK(css.substr(at + name.size(), 7) == ink.dusk);
  }
}

TEST_CASE("colours for the page are its properties, with the sun's beside them", "[report][svg]") {
  Drawing d;
  d.polygon(Role::OvenBody, std::array{Spot{0, 0}, Spot{10, 0}, Spot{10, 10}});
  CHECK(svg(d, {.colours = SvgColours::Page}).find("fill=\"var(--oven_body, #4c5a53)\"") !=
        std::string::npos);
  CHECK(svg(d, {.colours = SvgColours::Dusk}).find("fill=\"#8a998f\"") != std::string::npos);
  const std::string alone = svg(d, {});
  CHECK(alone.find("prefers-color-scheme:dark") != std::string::npos);
  CHECK(alone.find("@media print") != std::string::npos);
  CHECK(svg(d, {.colours = SvgColours::Sun}).find("<style") == std::string::npos);
}
