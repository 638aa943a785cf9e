// Comma-separated values against RFC 4180's own examples and rules, and the published list of what
// a spreadsheet program takes for a formula (OWASP, "CSV Injection").
#include "engine/base/csv.h"

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"

using namespace hs;

namespace {

using Cells = std::vector<std::vector<std::string>>;

Cells cells_of(std::string_view text) {
  const auto read = read_csv(text);
  Cells all;
  if (!read) {
    for (const Problem& problem : read.error()) all.push_back({sentence(problem)});
    return all;
  }
  for (const CsvRow& row : *read) all.push_back(row.cells);
  return all;
}

std::string cell(std::string_view text) {
  CsvWriter out;
  out.text(text);
  return out.take();
}

}  // namespace

TEST_CASE("the examples of RFC 4180, section 2, are read", "[csv]") {
  const Cells plain{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
  CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == plain);                        // 2.1
  CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx") == plain);                            // 2.2
  CHECK(cells_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == plain);                // 2.5
  CHECK(cells_of("\"aaa\",\"b\"\"bb\",\"ccc\"") == Cells{{"aaa", "b\"bb", "ccc"}});  // 2.7
  CHECK(cells_of("\"a,b\",c") == Cells{{"a,b", "c"}});  // 2.6, the comma
  CHECK(cells_of(" a , b") == Cells{{" a ", " b"}});    // 2.4: spaces are part of a field
}

TEST_CASE("what spreadsheet programs write besides is read too", "[csv]") {
  CHECK(cells_of("\xEF\xBB\xBF"
                 "a,b\n1,2\n") == Cells{{"a", "b"}, {"1", "2"}});
  CHECK(cells_of("a;b\n1,5;2\n") == Cells{{"a", "b"}, {"1,5", "2"}});
  CHECK(cells_of("a,b\n\n,\n1,2\n") == Cells{{"a", "b"}, {"1", "2"}});
  CHECK(cells_of("").empty());
  const auto rows = read_csv("a,b\n\n1,2\n");
  REQUIRE(rows.has_value());
  CHECK((*rows)[1].line == 3);
}

TEST_CASE("what is wrong is named by its line and column", "[csv]") {
  const auto said = [](std::string_view text) {
    const auto read = read_csv(text);
    REQUIRE_FALSE(read.has_value());
    return sentence(read.error()[0]);
  };
  CHECK_THAT(said("a,b\n1,x\"y\n"), Catch::Matchers::StartsWith("line 2, column 2: "));
  CHECK_THAT(said("a,\"b\n1,2\n"), Catch::Matchers::StartsWith("line 1, column 2: "));
  CHECK_THAT(said("a\n\"b\"c\n"), Catch::Matchers::StartsWith("line 2, column 1: "));
  // RFC 4180 lets a quoted field hold a line break (2.6); ours are of one line, and say so.
  CHECK_THAT(said("a\n1\n\"b\nc\"\n"), Catch::Matchers::StartsWith("line 3, column 1: "));
  CHECK_THAT(said("a,\xFF\n"), Catch::Matchers::ContainsSubstring("not UTF-8"));
  CHECK_THAT(said(std::string(65, ',')), Catch::Matchers::ContainsSubstring("at most 64"));
  CHECK_THAT(said(std::string(kMostCsvBytes + 1, 'a')),
             Catch::Matchers::ContainsSubstring("bytes"));
}

TEST_CASE("nothing that was typed is taken for a formula", "[csv]") {
  for (const std::string_view text :
       {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "=cmd|' /C calc'!A0", "\uFF1D1"}) {
    const std::string written = cell(text);
    INFO(written);
    const std::size_t first = written[0] == '"' ? 1 : 0;
    CHECK(written[first] == '\'');
  }
  CHECK(cell("side") == "side");
  CHECK(cell("a=b") == "a=b");
}

TEST_CASE("numbers are bare, with a point, whatever their sign", "[csv]") {
  CsvWriter out;
  out.number(-12.5, 2);
  out.number(0.1 + 0.2, 3);
  out.number(std::optional<double>(), 1);
  out.number(1e6, 0);
  out.end_row();
  CHECK(out.take() == "-12.5,0.3,,1000000\r\n");
}

TEST_CASE("any words come back as they were", "[csv]") {
  const std::vector<std::string> pieces = {"=", "'", "\"",     ",",      ";", "+",  "-",  "@",
                                           "a", " ", "\uFF0B", "\u00E9", "0", "''", "<b>"};
  test::Random random(20261125);
  for (int i = 0; i < 2000; ++i) {
    std::vector<std::string> row;
    CsvWriter out;
    for (int c = 0; c < 4; ++c) {
      std::string words;
      const int many = random.below(6);
      for (int n = 0; n < many; ++n) {
        words += pieces[static_cast<std::size_t>(random.below(static_cast<int>(pieces.size())))];
      }
      if (c == 0) words += "x";  // a row of nothing is no row
      out.text(words);
      row.push_back(words);
    }
    out.end_row();
    // A comma in the first line keeps the separator a comma.
    const auto read = read_csv("a,b,c,d\r\n" + out.take());
    REQUIRE(read.has_value());
    REQUIRE(read->size() == 2);
    CHECK((*read)[1].cells == row);
  }
}
