#include "engine/report/html.h"

#include <utility>

#include "engine/report/svg.h"

namespace hs::report {
namespace {

// Shape and word of a verdict, as the page has them (web/js/dom.js).
std::pair<std::string_view, std::string_view> mark_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Ok:
      return {"\u25CF", "Good"};
    case Verdict::Warn:
      return {"\u25B2", "Watch"};
    case Verdict::Fail:
      return {"\u25A0", "Does not work"};
    case Verdict::Unknown:
      return {"\u25C6", "Not known"};
  }
  return {};
}

}  // namespace

std::string_view verdict_word(Verdict verdict) { return mark_of(verdict).second; }

void HtmlWriter::open(std::string_view tag, std::string_view attributes) {
  out_ += "<" + std::string(tag);
  if (!attributes.empty()) out_ += " " + std::string(attributes);
  out_ += ">";
  open_.emplace_back(tag);
}

void HtmlWriter::close() {
  out_ += "</" + open_.back() + ">\n";
  open_.pop_back();
}

void HtmlWriter::text(std::string_view words) { out_ += xml_escaped(words); }

void HtmlWriter::element(std::string_view tag, std::string_view words,
                         std::string_view attributes) {
  if (words.empty()) return;
  open(tag, attributes);
  text(words);
  close();
}

void put_verdict(HtmlWriter& out, Verdict verdict) {
  const auto [shape, word] = mark_of(verdict);
  out.open("b", "class=\"verdict\" data-verdict=\"" + std::string(verdict_name(verdict)) + "\"");
  out.text(std::string(shape) + " " + std::string(word));
  out.close();
}

void put_html_table(HtmlWriter& out, const Table& table) {
  if (table.rows.empty()) return;
  out.open("div", "class=\"scroll\"");
  out.open("table");
  out.element("caption", table.caption);
  bool headed = false;
  for (const std::string& column : table.columns) headed = headed || !column.empty();
  if (headed) {
    out.open("thead");
    out.open("tr");
    for (const std::string& column : table.columns) {
      out.open("th", "scope=\"col\"");
      out.text(column);
      out.close();
    }
    out.close();
    out.close();
  }
  out.open("tbody");
  for (const std::vector<std::string>& row : table.rows) {
    out.open("tr");
    for (std::size_t i = 0; i < row.size(); ++i) {
      out.open(i == 0 ? "th" : "td", i == 0 ? "scope=\"row\"" : "");
      out.text(row[i]);
      out.close();
    }
    out.close();
  }
  out.close();
  out.close();
  out.close();
}

std::string html_document(std::string_view title, std::string_view style, std::string_view body) {
  HtmlWriter out;
  out.markup("<!DOCTYPE html>\n");
  out.open("html", "lang=\"en\"");
  out.open("head");
  out.markup(
      "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\"/>\n"
      "<meta name=\"referrer\" content=\"no-referrer\"/>\n");
  out.element("title", title);
  out.markup(style);
  out.close();
  out.open("body");
  out.markup(body);
  out.close();
  out.close();
  return out.take();
}

}  // namespace hs::report
