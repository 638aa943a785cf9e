#pragma once
// The plan: what is done, by whom, after what, and on which days: values of the packet.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/schedule/calendar.h"
#include "engine/schedule/network.h"

namespace hs::evaluate {

struct Evaluation;
struct Packet;

// What stands beside a task (same index as Timetable::tasks).
struct TaskNote {
  std::string counted;          // "34 saw passes of 4 min": how its hours came
  std::string_view who, tools;  // "the builder"; "track saw, square"
  std::string caution;          // empty: none
  std::string_view drawing;     // name of the drawing that shows it; empty: none
};

struct Timetable {
  std::vector<schedule::Task> tasks;
  std::vector<TaskNote> notes;
  schedule::Network network;
  schedule::Calendar calendar;
  std::optional<schedule::Plan> plan;  // on days; absent: no first day is given, or none fits
  std::string why_no_plan;             // in words, where a day was given
  int work_min = 0;                    // of all tasks together
  int open = 0;  // findings to settle before anything is bought: fails, and what is not known
};

// Tasks of this station from its parts, passes and faces; hours by stated rules, our judgement.
// `evaluation` has its build and the packet's cuts, metal, wiring and painting.
Timetable timetable_of(const config::Config& config, const Evaluation& evaluation,
                       const Packet& packet);

}  // namespace hs::evaluate
