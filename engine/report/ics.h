#pragma once
// A plan as a calendar file that phones and calendar programs read: iCalendar, RFC 5545.
//
// Times are local without a zone ("floating"): eight in the morning where the station is. The
// engine has no clock, so the time of writing is an input.

#include <span>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/schedule/calendar.h"

namespace hs::report {

struct IcsHead {
  std::string plan_id;  // the same for the same station, so that a second file replaces the first
  std::string stamp;    // when it is written, UTC: "20261125T223100Z"
  std::string name;     // of the calendar; empty: none
  int sequence = 0;     // one more each time the plan is changed; 0 or more
};

// One event for each stretch of work, one for each waiting (marked as free time), one without
// length for a task with neither. UIDs are made of plan_id and the task's key alone. `notes`: a
// description for each task, or none at all. CRLF ends each line; lines are folded at 75 octets
// (3.1), never inside a character; text is escaped (3.3.11), so nothing that a person typed ends a
// line or begins a property. Problems: a stamp that is no UTC time, an empty plan_id, a negative
// sequence, two tasks with one key, lists of different lengths.
Result<std::string> ics_text(std::span<const schedule::Task> tasks, const schedule::Plan& plan,
                             const schedule::Calendar& calendar, const IcsHead& head,
                             std::span<const std::string> notes = {});

// A value of type TEXT: backslash, semicolon and comma with a backslash, line breaks as "\n", other
// control characters left out; bytes that are not UTF-8 become '?'.
std::string ics_escaped(std::string_view text);
// "NAME:value" folded, with its line ends.
std::string ics_line(std::string_view name, std::string_view value);

}  // namespace hs::report
