#pragma once
// A strict reader of iCalendar, written from the grammar of RFC 5545 and from nothing of the
// writer's: content lines (3.1), TEXT (3.3.11), DATE-TIME (3.3.5), components (3.4, 3.6, 3.6.1).
// Anything outside the grammar is an error with its line.

#include <cctype>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace hs::test {

struct IcsProperty {
  std::string name, params, value;  // value as it stands, unfolded
};
struct IcsComponent {
  std::string name;
  std::vector<IcsProperty> properties;
  std::vector<IcsComponent> inside;

  std::vector<std::string> all(std::string_view wanted) const {
    std::vector<std::string> out;
    for (const IcsProperty& one : properties) {
      if (one.name == wanted) out.push_back(one.value);
    }
    return out;
  }
  std::string one(std::string_view wanted) const {
    const auto found = all(wanted);
    return found.size() == 1 ? found[0] : "(" + std::to_string(found.size()) + " of them)";
  }
};

struct IcsRead {
  IcsComponent calendar;
  std::string error;  // empty: well formed
};

class IcsReader {
 public:
  explicit IcsReader(std::string_view text) : text_(text) {}

  IcsRead read() {
    IcsRead out;
    unfold();
    if (error_.empty()) out.calendar = component(0);
    if (error_.empty() && at_ != lines_.size()) fail("something after the calendar");
    if (error_.empty()) check_calendar(out.calendar);
    out.error = error_;
    return out;
  }

  // TEXT: ESCAPED-CHAR = "\\" / "\;" / "\," / "\N" / "\n"; a bare ; or , or control is none.
  static bool unescape(std::string_view value, std::string& out) {
    out.clear();
    for (std::size_t i = 0; i < value.size(); ++i) {
      const char c = value[i];
      if (c == ';' || c == ',') return false;
      if (static_cast<unsigned char>(c) < 0x20 && c != '\t') return false;
      if (c == 0x7F) return false;
      if (c != '\\') {
        out += c;
        continue;
      }
      if (++i == value.size()) return false;
      switch (value[i]) {
        case '\\':
        case ';':
        case ',':
          out += value[i];
          break;
        case 'n':
        case 'N':
          out += '\n';
          break;
        default:
          return false;
      }
    }
    return true;
  }

  // DATE-TIME: date "T" time ["Z"], of digits in their ranges.
  static bool is_date_time(std::string_view v, bool utc) {
    if (v.size() != (utc ? 16u : 15u) || v[8] != 'T' || (utc && v[15] != 'Z')) return false;
    for (std::size_t i = 0; i < 15; ++i) {
      if (i != 8 && std::isdigit(static_cast<unsigned char>(v[i])) == 0) return false;
    }
    const auto two = [&](std::size_t i) { return (v[i] - '0') * 10 + (v[i + 1] - '0'); };
    return two(4) >= 1 && two(4) <= 12 && two(6) >= 1 && two(6) <= 31 && two(9) <= 23 &&
           two(11) <= 59 && two(13) <= 60;
  }

 private:
  void fail(const std::string& why) {
    if (error_.empty()) error_ = "line " + std::to_string(at_ + 1) + ": " + why;
  }

  // Lines end in CRLF, hold at most 75 octets without it, and go on where the next begins with a
  // space or a tab. Octets: a fold may not part a character here, although the standard lets it.
  void unfold() {
    std::size_t from = 0;
    while (from < text_.size()) {
      const std::size_t end = text_.find("\r\n", from);
      if (end == std::string_view::npos) return fail("no CRLF at its end");
      const std::string_view line = text_.substr(from, end - from);
      from = end + 2;
      if (line.size() > 75) fail("longer than 75 octets");
      if (line.find('\r') != line.npos || line.find('\n') != line.npos) fail("a bare CR or LF");
      if (line.empty()) fail("an empty line");
      const bool goes_on = !line.empty() && (line[0] == ' ' || line[0] == '\t');
      const std::string_view rest = goes_on ? line.substr(1) : line;
      if (!rest.empty() && (static_cast<unsigned char>(rest[0]) & 0xC0) == 0x80) {
        fail("folded inside a character");
      }
      if (goes_on && lines_.empty()) fail("goes on from nothing");
      if (goes_on && !lines_.empty()) {
        lines_.back() += rest;
      } else {
        lines_.emplace_back(rest);
      }
    }
  }

  // contentline = name *(";" param ) ":" value; name = 1*(ALPHA / DIGIT / "-").
  IcsProperty property(std::string_view line) {
    IcsProperty out;
    std::size_t i = 0;
    while (i < line.size() &&
           (std::isalnum(static_cast<unsigned char>(line[i])) != 0 || line[i] == '-')) {
      out.name += line[i++];
    }
    if (out.name.empty()) fail("no name");
    bool quoted = false;
    const std::size_t params = i;
    while (i < line.size() && (quoted || line[i] != ':')) {
      if (line[i] == '"') quoted = !quoted;
      ++i;
    }
    if (i == line.size()) fail("no value");
    out.params = line.substr(params, i - params);
    if (!out.params.empty() && out.params[0] != ';') fail("parameters without their mark");
    if (i < line.size()) out.value = line.substr(i + 1);
    for (const char c : out.value) {
      if ((static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7F) fail("a control");
    }
    return out;
  }

  IcsComponent component(int depth) {
    IcsComponent out;
    const IcsProperty begin = property(at_ < lines_.size() ? lines_[at_] : "");
    if (begin.name != "BEGIN" || depth > 2) fail("BEGIN expected");
    out.name = begin.value;
    ++at_;
    while (error_.empty()) {
      if (at_ >= lines_.size()) {
        fail("no END of " + out.name);
        break;
      }
      IcsProperty one = property(lines_[at_]);
      if (one.name == "BEGIN") {
        out.inside.push_back(component(depth + 1));
        continue;
      }
      if (one.name == "END") {
        if (one.value != out.name) fail("END of " + one.value + " in " + out.name);
        ++at_;
        break;
      }
      out.properties.push_back(std::move(one));
      ++at_;
    }
    return out;
  }

  // 3.6: PRODID and VERSION once each. 3.6.1: DTSTAMP and UID once each, DTSTART without METHOD.
  void check_calendar(const IcsComponent& calendar) {
    if (calendar.name != "VCALENDAR") fail("not a calendar");
    if (calendar.one("VERSION") != "2.0") fail("VERSION");
    if (calendar.all("PRODID").size() != 1) fail("PRODID");
    if (calendar.inside.empty()) fail("a calendar without a component");
    std::map<std::string, int> uids;
    for (const IcsComponent& event : calendar.inside) {
      if (event.name != "VEVENT") fail("not an event");
      if (event.all("UID").size() != 1 || ++uids[event.one("UID")] > 1) fail("UID");
      if (!is_date_time(event.one("DTSTAMP"), true)) fail("DTSTAMP");
      const std::string start = event.one("DTSTART");
      const bool utc = !start.empty() && start.back() == 'Z';
      if (!is_date_time(start, utc)) fail("DTSTART");
      const auto ends = event.all("DTEND");
      if (ends.size() > 1) fail("two ends");
      if (ends.size() == 1 && (!is_date_time(ends[0], utc) || ends[0] <= start)) fail("DTEND");
      std::string plain;
      for (const char* name : {"SUMMARY", "DESCRIPTION"}) {
        const auto values = event.all(name);
        if (values.size() > 1) fail(std::string("two of ") + name);
        if (values.size() == 1 && !unescape(values[0], plain)) fail(name);
      }
    }
  }

  std::string_view text_;
  std::vector<std::string> lines_;
  std::size_t at_ = 0;
  std::string error_;
};

}  // namespace hs::test
