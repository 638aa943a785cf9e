#pragma once
// HTML a step at a time. Every word passes through here and comes out escaped, so nothing that a
// person typed can become markup; tags, classes and ids are the program's own.
//
// What it writes is well-formed XML too: any parser can check it.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"
#include "engine/report/table.h"

namespace hs::report {

class HtmlWriter {
 public:
  // `attributes` is the program's own text: "class=\"figure\"".
  void open(std::string_view tag, std::string_view attributes = {});
  void close();  // the last one opened
  void text(std::string_view words);
  // A whole element; nothing at all for no words.
  void element(std::string_view tag, std::string_view words, std::string_view attributes = {});
  // Markup of ours, as it is: a drawing.
  void markup(std::string_view html) { out_ += html; }

  std::string take() { return std::move(out_); }

 private:
  std::string out_;
  std::vector<std::string> open_;
};

// "Good", "Watch", "Does not work", "Not known".
std::string_view verdict_word(Verdict verdict);
// "✓ Good": the verdict's shape and word; colour only repeats them.
void put_verdict(HtmlWriter& out, Verdict verdict);
void put_html_table(HtmlWriter& out, const Table& table);

// A whole document. `style` is markup for its head: the style sheet itself, or links to it. The
// document fetches nothing else and runs no script.
std::string html_document(std::string_view title, std::string_view style, std::string_view body);

}  // namespace hs::report
