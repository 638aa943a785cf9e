// Our reading of JSON against RFC 8259's own examples and against a library of many users.

#include "engine/config/json.h"

#include <catch_amalgamated.hpp>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::config;

namespace {

// The library's own value of our tree.
nlohmann::json as_library(const Node& node) {
  switch (node.kind) {
    case Node::Kind::Null:
      return nullptr;
    case Node::Kind::Flag:
      return node.flag;
    case Node::Kind::Number:
      return node.number;
    case Node::Kind::Text:
      return node.text;
    case Node::Kind::List: {
      nlohmann::json list = nlohmann::json::array();
      for (const Node& item : node.items) list.push_back(as_library(item));
      return list;
    }
    case Node::Kind::Object: {
      nlohmann::json object = nlohmann::json::object();
      for (std::size_t i = 0; i < node.keys.size(); ++i) {
        object[node.keys[i]] = as_library(node.items[i]);
      }
      return object;
    }
  }
  return nullptr;
}

// Both take it and see the same, or both refuse it.
void agree(const std::string& text) {
  INFO(text);
  const Parsed ours = parse_json(text);
  const nlohmann::json theirs = nlohmann::json::parse(text, nullptr, false);
  CHECK(ours.complete == !theirs.is_discarded());
  CHECK(ours.complete == ours.problems.empty());
  if (ours.complete && !theirs.is_discarded()) CHECK(as_library(ours.root) == theirs);
}

}  // namespace

TEST_CASE("JSON is read as RFC 8259 writes it", "[config][json]") {
  // RFC 8259, section 13, the two examples; section 2 and 9: any value alone, spaces around it, a
  // byte order mark that may be left out of account.
  agree(R"({"Image":{"Width":800,"Height":600,"Title":"View from 15th Floor","Thumbnail":
    {"Url":"http://www.example.com/image/481989943","Height":125,"Width":100},
    "Animated":false,"IDs":[116,943,234,38793]}})");
  agree(R"([{"precision":"zip","Latitude":37.7668,"Longitude":-122.3959,"Address":"","City":
    "SAN FRANCISCO","State":"CA","Zip":"94107","Country":"US"}])");
  for (const char* text : {"null", "true", "false", "0", "-0", "\"\"", "[]", "{}", " [ ] ",
                           "\t{\r\n}", "\xEF\xBB\xBF[1]"}) {
    agree(text);
    CHECK(parse_json(text).complete);
  }
}

TEST_CASE("numbers, escapes and bytes that JSON has not are refused", "[config][json]") {
  // RFC 8259, section 6 (numbers), section 7 (strings; "\uD834\uDD1E" is its G clef), section 8.1
  // (UTF-8).
  for (const char* text :
       {"1.5e3", "1E+2", "1e-7", "-12.25", "123456789012345", "\"\\uD834\\uDD1E\"",
        "\"\\u00e9\\/\\b\"", "\"\xC3\xA9\"", "\"\\\"\\\\\\n\\r\\t\\f\"", "\"\x7F\""}) {
    agree(text);
    CHECK(parse_json(text).complete);
  }
  for (const char* text : {"",
                           " ",
                           "01",
                           "-",
                           "+1",
                           ".5",
                           "1.",
                           "1e",
                           "1e+",
                           "0x1",
                           "NaN",
                           "-Infinity",
                           "tru",
                           "nul",
                           "True",
                           "[1,]",
                           "[,1]",
                           "[1 2]",
                           "{\"a\":1,}",
                           "{\"a\"}",
                           "{a:1}",
                           "{\"a\" 1}",
                           "{1:2}",
                           "[1",
                           "{",
                           "{\"a\":",
                           "[1]]",
                           "1 2",
                           "\"",
                           "\"\\",
                           "\"\\x\"",
                           "\"\\u12\"",
                           "\"\\u12G4\"",
                           "\"\n\"",
                           "\"\xFF\"",
                           "\"\xC3\"",
                           "\"\xED\xA0\x80\"",
                           "\"\\uD834\"",
                           "\"\\uDD1E\"",
                           "\"\\uD834\\u0041\"",
                           "// a\n1",
                           "/* */ 1",
                           "'a'",
                           "1e999",
                           "-1e999"}) {
    agree(text);
    CHECK_FALSE(parse_json(text).complete);
  }
}

TEST_CASE("whatever bytes come, our reading and the library's agree", "[config][json][law]") {
  constexpr std::string_view kPieces[] = {
      "{",     "}",     "[",        "]",           ",",    ":",
      "\"a\"", "\"b\"", "\"\\n\"",  "\"\\u00e9\"", "1",    "-2.5",
      "1e3",   "0",     "true",     "false",       "null", " ",
      "\n",    "\"",    "\\",       "\\u",         "D834", "e",
      "-",     ".",     "\xC3\xA9", "\xC3",        "x",    "\"\\uD834\\uDD1E\""};
  test::Random random(20260801);
  for (int round = 0; round < test::sweep(20'000); ++round) {
    std::string text;
    const int count = 1 + random.below(9);
    for (int i = 0; i < count; ++i) {
      text += kPieces[static_cast<std::size_t>(random.below(static_cast<int>(std::size(kPieces))))];
    }
    if (random.one_in(2)) text = "[" + text + "]";
    const Parsed ours = parse_json(text);
    // A repeated key is ours to refuse; RFC 8259, section 4, leaves it open.
    if (ours.complete && !ours.problems.empty()) continue;
    agree(text);
  }
}
