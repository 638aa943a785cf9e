#pragma once
// A network's tasks on days: who works when, which days stand, where waiting runs through the
// night.
//
// The engine has no clock: the first day and the weather are inputs. Times are local, without a
// zone; a change to summer time is not in them.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "engine/schedule/network.h"

namespace hs::schedule {

// Gregorian, years 1 to 9999.
struct Date {
  int year = 2026, month = 1, day = 1;
  bool operator==(const Date&) const = default;
};
// Days since 1 January 1970; nullopt for a day that is not in the calendar.
std::optional<int> day_number(const Date& date);
Date date_of(int day_number);
int weekday_of(int day_number);  // 0 Monday to 6 Sunday

// What a day is like, for the gates that need it. A day not told stands everything, and what is
// placed on it says so.
struct DayWeather {
  Date date;
  Gates stands = 0;  // bits of what the day is good for
};

struct Calendar {
  Date first;
  int begins_min = 8 * 60;                                    // work begins, after midnight
  std::array<int, 7> minutes{480, 480, 480, 480, 480, 0, 0};  // worked, Monday to Sunday
  std::vector<Date> off;
  std::vector<DayWeather> weather;
};

// Minutes since midnight of the first day.
using Minute = std::int64_t;
struct Span {
  Minute from = 0, to = 0;
  bool operator==(const Span&) const = default;
};

struct Placed {
  std::vector<Span> work;                  // in order; empty: no work
  Minute start = 0, worked = 0, done = 0;  // done: its waiting over
  bool weather_open = false;               // stands on days whose weather nobody has told
  // How late it may begin: the plan's end stays where it is, and all that begins after it is as
  // late as it may be. The network's slack knows no hands and no nights; this does.
  Minute latest = 0;
  bool holds_end() const { return latest == start; }
};
struct Plan {
  std::vector<Placed> tasks;  // in the order given
  Minute end = 0;             // the last one done
};

inline constexpr int kHorizon_days = 730;  // beyond it a task finds no day: our judgement

// On which days are the tasks done? Those that hold the end first (least late start, ties by the
// order given), each as early as its person, what it waits for and the days allow. Not always the
// shortest plan that there is, but always one that holds. Tasks of one person do not overlap; an
// unbroken one lies within a day; needs and holds are kept on every day told. A task without work
// takes no notice of days.
// How late each may begin is worked out from the end backwards on the same days.
// Problems in words: those of network_of(), a calendar without working time, a date that is none,
// an unbroken task longer than any day, a task that finds no day within two years.
Result<Plan> plan_of(std::span<const Task> tasks, const Calendar& calendar);

// The date and minute of the day of a plan's minute.
struct When {
  Date date;
  int minute = 0;
};
When when(const Calendar& calendar, Minute minute);

}  // namespace hs::schedule
