#include "engine/report/ics.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

#include "engine/base/text.h"

namespace hs::report {
namespace {

using schedule::Calendar;
using schedule::Minute;

constexpr std::size_t kLineMost = 75;  // octets, without the line's end: RFC 5545, 3.1

std::string padded(int value, std::size_t digits) {
  std::string text = std::to_string(value);
  while (text.size() < digits) text.insert(text.begin(), '0');
  return text;
}

std::string time_text(const Calendar& calendar, Minute minute) {
  const schedule::When when = schedule::when(calendar, minute);
  return padded(when.date.year, 4) + padded(when.date.month, 2) + padded(when.date.day, 2) + 'T' +
         padded(when.minute / 60, 2) + padded(when.minute % 60, 2) + "00";
}

// "20261125T223100Z", a time that there is.
bool is_utc_stamp(std::string_view text) {
  if (text.size() != 16 || text[8] != 'T' || text[15] != 'Z') return false;
  const auto number = [&](std::size_t from, std::size_t digits) -> std::optional<int> {
    int value = 0;
    for (const char c : text.substr(from, digits)) {
      if (c < '0' || c > '9') return {};
      value = value * 10 + (c - '0');
    }
    return value;
  };
  const auto year = number(0, 4), month = number(4, 2), day = number(6, 2);
  const auto hour = number(9, 2), minute = number(11, 2), second = number(13, 2);
  if (!year || !month || !day || !hour || !minute || !second) return false;
  return schedule::day_number({*year, *month, *day}) && *hour < 24 && *minute < 60 && *second < 60;
}

std::vector<Problem> problems_of(std::span<const schedule::Task> tasks, const schedule::Plan& plan,
                                 const IcsHead& head, std::span<const std::string> notes) {
  std::vector<Problem> problems;
  if (!is_utc_stamp(head.stamp)) {
    problems.push_back({"calendar file, stamp", shortened(head.stamp),
                        "the time of writing in UTC, as 20261125T223100Z"});
  }
  if (head.plan_id.empty()) {
    problems.push_back({"calendar file, plan", "no name", "a name that stays with the station"});
  }
  if (head.sequence < 0) {
    problems.push_back({"calendar file, sequence", std::to_string(head.sequence), "0 or more"});
  }
  if (plan.tasks.size() != tasks.size() || (!notes.empty() && notes.size() != tasks.size())) {
    problems.push_back({"calendar file, tasks", "lists of different lengths", "one of each"});
  }
  std::vector<std::string_view> keys;
  for (const schedule::Task& task : tasks) keys.push_back(task.key);
  std::sort(keys.begin(), keys.end());
  const auto twice = std::adjacent_find(keys.begin(), keys.end());
  if (twice != keys.end()) {
    problems.push_back(
        {"calendar file, tasks", "two with the key " + shortened(*twice), "a key for each"});
  }
  return problems;
}

struct Writer {
  const Calendar& calendar;
  const IcsHead& head;
  std::string out{};

  void event(std::string_view key, std::string_view part, std::string_view summary,
             std::string_view note, schedule::Span span, bool busy) {
    out += ics_line("BEGIN", "VEVENT");
    std::string uid = head.plan_id + '/';
    uid += key;
    uid += part;
    out += ics_line("UID", ics_escaped(uid));
    out += ics_line("DTSTAMP", head.stamp);
    out += ics_line("SEQUENCE", std::to_string(head.sequence));
    out += ics_line("DTSTART", time_text(calendar, span.from));
    // An end must come after the beginning (3.8.2.2); without one the event has no length.
    if (span.to > span.from) out += ics_line("DTEND", time_text(calendar, span.to));
    out += ics_line("SUMMARY", ics_escaped(summary));
    if (!note.empty()) out += ics_line("DESCRIPTION", ics_escaped(note));
    out += ics_line("TRANSP", busy ? "OPAQUE" : "TRANSPARENT");
    out += ics_line("END", "VEVENT");
  }
};

}  // namespace

std::string ics_escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = code_point_at(text, at);
    if (point.bytes == 0) {
      out += '?';
      ++at;
      continue;
    }
    if (point.value == '\n' || point.value == 0x2028 || point.value == 0x2029) {
      out += "\\n";
    } else if (point.value == '\r') {
      // With its line feed one line break, alone one too.
      if (at + 1 >= text.size() || text[at + 1] != '\n') out += "\\n";
    } else if (!is_control(point.value)) {
      if (point.value == '\\' || point.value == ';' || point.value == ',') out += '\\';
      out.append(text.substr(at, point.bytes));
    }
    at += point.bytes;
  }
  return out;
}

std::string ics_line(std::string_view name, std::string_view value) {
  std::string line(name);
  line += ':';
  line += value;
  std::string out;
  std::size_t octets = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t bytes = std::max<std::size_t>(1, code_point_at(line, at).bytes);
    if (octets + bytes > kLineMost) {
      out += "\r\n ";
      octets = 1;
    }
    out.append(line, at, bytes);
    octets += bytes;
    at += bytes;
  }
  return out + "\r\n";
}

Result<std::string> ics_text(std::span<const schedule::Task> tasks, const schedule::Plan& plan,
                             const Calendar& calendar, const IcsHead& head,
                             std::span<const std::string> notes) {
  std::vector<Problem> problems = problems_of(tasks, plan, head, notes);
  if (!problems.empty()) return problems;
  Writer writer{calendar, head};
  writer.out = ics_line("BEGIN", "VCALENDAR") + ics_line("VERSION", "2.0") +
               ics_line("PRODID", "-//Hearthsight//Plan//EN") + ics_line("CALSCALE", "GREGORIAN");
  if (!head.name.empty()) writer.out += ics_line("NAME", ics_escaped(head.name));  // RFC 7986
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const schedule::Task& task = tasks[i];
    const schedule::Placed& placed = plan.tasks[i];
    std::string note = notes.empty() ? std::string() : notes[i];
    if (placed.weather_open) {
      if (!note.empty()) note += '\n';
      note += "The weather of that day is not known yet: look again the day before.";
    }
    for (std::size_t k = 0; k < placed.work.size(); ++k) {
      writer.event(task.key, "/work/" + std::to_string(k + 1), task.name, note, placed.work[k],
                   true);
    }
    const bool waits = placed.done > placed.worked;
    if (waits) {
      writer.event(task.key, "/wait", "Waiting: " + task.name, note, {placed.worked, placed.done},
                   false);
    }
    if (placed.work.empty() && !waits) {
      writer.event(task.key, "/at", task.name, note, {placed.start, placed.start}, false);
    }
  }
  writer.out += ics_line("END", "VCALENDAR");
  return std::move(writer.out);
}

}  // namespace hs::report
