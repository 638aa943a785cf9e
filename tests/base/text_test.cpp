#include "engine/base/text.h"

#include <string>

#include "catch_amalgamated.hpp"
#include "engine/base/json_writer.h"
#include "engine/base/result.h"

using namespace hs;

TEST_CASE("only well-formed UTF-8 is taken", "[base][text]") {
  for (const char* good : {"", "oven", "\u00E9", "\u2044", "\U0001F355", "\xF4\x8F\xBF\xBF"}) {
    CAPTURE(good);
    CHECK(is_utf8(good));
  }
  // Source: RFC 3629, section 3 and the examples of section 10: truncated, overlong, surrogate,
  // beyond U+10FFFF, stray continuation.
  for (const char* bad : {"\xC3", "\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                          "\x80", "\xFF", "a\xE2\x82", "\xF0\x82\x82\xAC"}) {
    CHECK_FALSE(is_utf8(bad));
    CHECK_FALSE(is_printable(bad));
  }
}

TEST_CASE("every code point survives its bytes", "[base][text][law]") {
  for (std::uint32_t c = 1; c < 0x110000; c += 37) {
    std::string bytes;
    append_code_point(bytes, c);
    const CodePoint back = code_point_at(bytes, 0);
    const bool surrogate = c >= 0xD800 && c <= 0xDFFF;
    CHECK(back.value == (surrogate ? 0xFFFD : c));
    CHECK(back.bytes == bytes.size());
  }
}

TEST_CASE("characters that hide or break a line are not printable", "[base][text]") {
  for (const char* bad : {"a\nb", "\t", "\x7F", "\u0085", "\u202E", "\u2066", "\uFEFF", "\u2028"}) {
    CHECK_FALSE(is_printable(bad));
  }
  CHECK(is_printable("Anna's oven, 2\u00BD m \u2014 \U0001F355"));
}

TEST_CASE("a long or hostile value is shown short and printable", "[base][text]") {
  CHECK(shortened("oven") == "oven");
  CHECK(shortened(std::string(40, 'x')) == std::string(40, 'x'));
  CHECK(shortened(std::string(41, 'x')) == std::string(37, 'x') + "...");
  CHECK(shortened("a\n\x1B[31mb") == "a[31mb");
  CHECK(shortened("a\xFF") == "a?");
  std::string long_text;
  for (int i = 0; i < 100; ++i) long_text += "\u00E9\x01";
  const std::string shown = shortened(long_text);
  CHECK(is_printable(shown));
  CHECK(shown.size() == 37 * 2 + 3);
}

TEST_CASE("edit distance counts single-character slips", "[base][text]") {
  CHECK(edit_distance("width", "width") == 0);
  CHECK(edit_distance("widht", "width") == 2);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook pair
}

TEST_CASE("a problem is one sentence with path, value and what is allowed", "[base][problem]") {
  CHECK(sentence({"cooks.1.stature_mm", "3000 mm", "800 to 2300 mm"}) ==
        "cooks.1.stature_mm: 3000 mm is not allowed; give 800 to 2300 mm");
  CHECK(sentence({"format", "", "missing; give \"hearthsight/1\""}) ==
        "format: missing; give \"hearthsight/1\"");
  CHECK(sentence({"", "a list", "an object"}) == "a list is not allowed; give an object");
}

TEST_CASE("a list of problems is cut at fifty and says so", "[base][problem]") {
  CHECK(capped(std::vector<Problem>(50)).size() == 50);
  const auto cut = capped(std::vector<Problem>(53));
  REQUIRE(cut.size() == 51);
  CHECK(sentence(cut.back()) == "and 3 more problems");
}

TEST_CASE("JSON text is nested, escaped and comma-separated", "[base][json_writer]") {
  JsonWriter json;
  json.begin_object();
  json.key("a\"\\");
  json.string("x\n\x01\u00E9");
  json.key("list");
  json.begin_list();
  json.number("1.5");
  json.null();
  json.begin_object();
  json.end_object();
  json.end_list();
  json.key("flag");
  json.boolean(true);
  json.end_object();
  CHECK(
      json.take() ==
      "{\n  \"a\\\"\\\\\": \"x\\u000a\\u0001\u00E9\",\n  \"list\": [\n    1.5,\n    null,\n    {}\n"
      "  ],\n  \"flag\": true\n}\n");
}
