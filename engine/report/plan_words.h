#pragma once
// The plan in words: tasks with their hours and days, the longest chains, one step.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/evaluate/packet.h"
#include "engine/report/packet_parts.h"

namespace hs::report {

Table task_table(const evaluate::Timetable& plan);
// What the table's last column means.
std::string slack_words(const evaluate::Timetable& plan);
// "The longest chain: saw the sheets, then seal them, then assemble." Of what waits for each other,
// whoever does it.
std::vector<std::string> critical_paths(const evaluate::Timetable& plan);
// Who, with what, how long, after what, when, and what to take care of.
std::string step_words(const evaluate::Timetable& plan, std::size_t task);
// The drawing of this name, as the command line draws it; absent: there is none.
std::optional<Sheet> named_sheet(std::string_view name, const PacketView& view, double line_mm = 0);

// The plan as a calendar file; empty where it has no days. The engine has no clock, so the stamp is
// the plan's own first day.
std::string plan_ics(const config::Config& config, const evaluate::Timetable& plan);

}  // namespace hs::report
