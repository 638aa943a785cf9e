#pragma once
// What comes before what, how long all of it takes at least, and which tasks hold the end.
//
// Whole minutes, so that sums are exact. A task's work is somebody's; its waiting (paint dries,
// glue cures) is nobody's and runs through the night. Hours here are counted as if every hour were
// a working one; engine/schedule/calendar.h puts them on days.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "engine/base/result.h"

namespace hs::schedule {

struct After {
  std::size_t task = 0;
  bool when_worked = false;  // may begin when that one's work is done, its waiting not over
};

// Which days a task, or what it has left wet, can stand: bits, so that a day's weather can be told
// once for all of them.
using Gates = std::uint8_t;
inline constexpr Gates kAnyDay = 0;
inline constexpr Gates kDryDay = 1;    // no rain on site
inline constexpr Gates kPaintDay = 2;  // engine/finish says so

struct Task {
  std::string key{};   // "paint.coat_1": stays the same from plan to plan
  std::string name{};  // "first coat on doors"
  std::vector<After> after{};
  int work_min = 0, wait_min = 0;
  int who = 0;            // one person does one thing at a time; -1: nobody's hands (a delivery)
  bool unbroken = false;  // done in one go, within one day
  Gates needs = kAnyDay;  // on each day of its work
  Gates holds = kAnyDay;  // on each day in the first hold_min after its work
  int hold_min = 0;
};

struct Timed {
  int early_start_min = 0, early_finish_min = 0;  // with its waiting
  int late_start_min = 0, late_finish_min = 0;
  int slack_min = 0;  // how much later it may begin without moving the end
  bool critical() const { return slack_min == 0; }
};

struct Network {
  int length_min = 0;
  std::vector<Timed> tasks;  // in the order given
  // Every chain of tasks without slack from the beginning to the end, in the order of the tasks;
  // no more than kMostPaths of them, `path_count` says how many there are (capped at 1e9).
  std::vector<std::vector<std::size_t>> critical_paths;
  std::int64_t path_count = 0;
  std::vector<std::size_t> order;  // one in which every task comes after what it waits for
};
inline constexpr std::size_t kMostTasks = 1000, kMostPaths = 64;
inline constexpr int kMostMin = 366 * 24 * 60;  // work or waiting of one task

// Critical path method: earliest times forward, latest times backward, slack the difference.
// Source: general; tests hold it to published examples. A circle of tasks that wait for each other
// is a problem that names them all; so are tasks that are not there, and times outside 0 to a year.
// Exact. An empty list is a network of length 0.
Result<Network> network_of(std::span<const Task> tasks);

}  // namespace hs::schedule
