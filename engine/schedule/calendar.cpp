#include "engine/schedule/calendar.h"

#include <algorithm>
#include <map>
#include <string>

#include "engine/base/text.h"

namespace hs::schedule {
namespace {

constexpr Minute kDay_min = 24 * 60;
constexpr int kLastYear = 9900;  // no plan reaches a year of five digits

constexpr bool leap(int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }
constexpr int days_in(int year, int month) {
  constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && leap(year) ? 29 : kDays[month - 1];
}
// Days before 1 January of a year, from 1 January of year 1.
constexpr int days_before(int year) {
  const int past = year - 1;
  return past * 365 + past / 4 - past / 100 + past / 400;
}
constexpr int kEpoch = days_before(1970);

std::string date_text(const Date& date) {
  return std::to_string(date.year) + '-' + std::to_string(date.month) + '-' +
         std::to_string(date.day);
}

// A day of the plan, by number from the first.
struct DayInfo {
  int minutes = 0;
  Gates stands = 0xFF;
  bool told = false;
};

struct Planner {
  std::span<const Task> tasks;
  const Calendar& calendar;
  std::vector<DayInfo> days{};
  std::map<int, std::vector<Span>> busy{};  // by person, in order
  Plan plan{};

  bool stands(std::size_t day, Gates needed, bool& open) const {
    if (needed == kAnyDay) return true;
    if (!days[day].told) {
      open = true;
      return true;
    }
    return (days[day].stands & needed) == needed;
  }

  // Free working time of a person on a day, not before `from`.
  std::vector<Span> free_on(std::size_t day, int who, Minute from) const {
    const Minute begins = static_cast<Minute>(day) * kDay_min + calendar.begins_min;
    std::vector<Span> free;
    Span window{std::max(from, begins), begins + days[day].minutes};
    if (const auto it = busy.find(who); who >= 0 && it != busy.end()) {
      for (const Span& taken : it->second) {
        if (taken.to <= window.from) continue;
        if (taken.from >= window.to) break;
        if (taken.from > window.from) free.push_back({window.from, taken.from});
        window.from = std::max(window.from, taken.to);
      }
    }
    if (window.to > window.from) free.push_back(window);
    return free;
  }

  // Work laid into free time from `from` on; nullopt: no day left.
  std::optional<Placed> work_from(const Task& task, Minute from) const {
    Placed placed;
    Minute left = task.work_min;
    for (auto day = static_cast<std::size_t>(std::max<Minute>(from, 0) / kDay_min);
         day < days.size(); ++day) {
      bool open = false;
      if (days[day].minutes == 0 || !stands(day, task.needs, open)) continue;
      for (const Span& span : free_on(day, task.who, from)) {
        const Minute room = span.to - span.from;
        if (task.unbroken && room < left) continue;
        const Minute used = std::min(room, left);
        placed.work.push_back({span.from, span.from + used});
        placed.weather_open |= open;
        left -= used;
        if (left > 0) continue;
        placed.start = placed.work.front().from;
        placed.worked = placed.work.back().to;
        return placed;
      }
    }
    return {};
  }

  // The first day after the work on which the weather does not hold; nullopt: it holds.
  std::optional<std::size_t> breaks_on(const Task& task, Minute worked, bool& open) const {
    if (task.holds == kAnyDay || task.hold_min == 0) return {};
    const auto last = static_cast<std::size_t>((worked + task.hold_min - 1) / kDay_min);
    for (auto day = static_cast<std::size_t>(worked / kDay_min); day <= last; ++day) {
      if (day >= days.size()) break;
      if (!stands(day, task.holds, open)) return day;
    }
    return {};
  }

  std::optional<Placed> place(const Task& task, Minute from) const {
    if (task.work_min == 0) {
      Placed placed;
      placed.start = placed.worked = from;
      placed.done = from + task.wait_min;
      return placed;
    }
    for (;;) {
      std::optional<Placed> placed = work_from(task, from);
      if (!placed) return {};
      const auto bad = breaks_on(task, placed->worked, placed->weather_open);
      if (!bad) {
        placed->done = placed->worked + task.wait_min;
        return placed;
      }
      // Nothing that ends before that day's end can hold.
      const Minute after = (static_cast<Minute>(*bad) + 1) * kDay_min;
      from = std::max(after - task.work_min, (placed->start / kDay_min + 1) * kDay_min);
    }
  }

  void take(const Task& task, const Placed& placed) {
    if (task.who < 0) return;
    std::vector<Span>& spans = busy[task.who];
    spans.insert(spans.end(), placed.work.begin(), placed.work.end());
    std::sort(spans.begin(), spans.end(),
              [](const Span& a, const Span& b) { return a.from < b.from; });
  }
};

// The plan backwards, what begins last first: each task as late as its person, what waits for it
// and the days allow. What is laid has begun no earlier than in the plan, so that the plan's own
// place of the next one is still free.
struct Backwards {
  Planner late;             // its days; `busy` holds the late work
  const Plan& plan;         // as it stands
  std::vector<Span> own{};  // of each task, from the late beginning to the late end of its work

  // The latest end of its work: before all that waits for it.
  Minute work_by(std::size_t i) const {
    const Task& task = late.tasks[i];
    Minute by = plan.end - task.wait_min;
    for (std::size_t j = 0; j < late.tasks.size(); ++j) {
      const Task& other = late.tasks[j];
      for (const After& after : other.after) {
        if (after.task != i) continue;
        by = std::min(by, own[j].from - (after.when_worked ? 0 : task.wait_min));
      }
    }
    return by;
  }

  // Work laid into free time that ends by `by`, from the last of it backwards.
  std::optional<Placed> work_by_then(const Task& task, Minute by) const {
    Placed placed;
    Minute left = task.work_min;
    for (Minute day = by / kDay_min; day >= 0; --day) {
      const auto at = static_cast<std::size_t>(day);
      bool open = false;
      if (at >= late.days.size() || late.days[at].minutes == 0) continue;
      if (!late.stands(at, task.needs, open)) continue;
      std::vector<Span> free = late.free_on(at, task.who, 0);
      for (auto span = free.rbegin(); span != free.rend(); ++span) {
        const Minute to = std::min(span->to, by), room = to - span->from;
        if (room <= 0 || (task.unbroken && room < left)) continue;
        const Minute used = std::min(room, left);
        placed.work.insert(placed.work.begin(), {to - used, to});
        left -= used;
        if (left > 0) continue;
        placed.start = placed.work.front().from;
        placed.worked = placed.work.back().to;
        return placed;
      }
    }
    return {};
  }

  // As late as may be; the plan's own place where nothing later is found.
  Placed place(std::size_t i) const {
    const Task& task = late.tasks[i];
    Minute by = work_by(i);
    if (task.work_min == 0) {
      Placed placed;
      placed.start = placed.worked = std::max(by, plan.tasks[i].start);
      return placed;
    }
    while (by >= plan.tasks[i].worked) {
      const std::optional<Placed> placed = work_by_then(task, by);
      if (!placed) break;
      bool open = false;
      const auto bad = late.breaks_on(task, placed->worked, open);
      if (!bad && placed->start >= plan.tasks[i].start) return *placed;
      if (!bad) break;
      // Held over before that day begins.
      by = std::min(placed->worked - 1, static_cast<Minute>(*bad) * kDay_min - task.hold_min);
    }
    return plan.tasks[i];
  }
};

// `before`: each after what it waits for.
void add_latest(const Planner& planner, std::span<const std::size_t> before, Plan& plan) {
  Backwards back{{planner.tasks, planner.calendar, planner.days}, plan};
  back.own.resize(plan.tasks.size());
  std::vector<std::size_t> order(plan.tasks.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  // What waits for a task begins no earlier than it does; of those that begin together, what waits
  // for the other comes first.
  std::vector<std::size_t> rank(plan.tasks.size());
  for (std::size_t at = 0; at < before.size(); ++at) rank[before[at]] = at;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const Minute from_a = plan.tasks[a].start, from_b = plan.tasks[b].start;
    if (from_a != from_b) return from_a > from_b;
    return rank[a] > rank[b];
  });
  for (const std::size_t i : order) {
    const Placed placed = back.place(i);
    back.own[i] = {placed.start, placed.worked};
    back.late.take(planner.tasks[i], placed);
  }
  for (std::size_t i = 0; i < order.size(); ++i) plan.tasks[i].latest = back.own[i].from;
}

std::vector<Problem> calendar_problems(const Calendar& calendar) {
  std::vector<Problem> problems;
  const auto check = [&](const Date& date, const char* path) {
    if (!day_number(date)) problems.push_back({path, date_text(date), "a day of the calendar"});
  };
  check(calendar.first, "schedule.first");
  if (calendar.first.year > kLastYear) {
    problems.push_back({"schedule.first", date_text(calendar.first), "a year up to 9900"});
  }
  for (const Date& date : calendar.off) check(date, "schedule.off");
  for (const DayWeather& day : calendar.weather) check(day.date, "schedule.weather");
  if (calendar.begins_min < 0 || calendar.begins_min >= kDay_min) {
    problems.push_back({"schedule.begins", std::to_string(calendar.begins_min) + " min",
                        "a minute of the day, 0 to 1439"});
  }
  int worked = 0;
  for (const int minutes : calendar.minutes) {
    worked = std::max(worked, minutes);
    if (minutes >= 0 && calendar.begins_min + minutes <= kDay_min) continue;
    problems.push_back(
        {"schedule.hours", std::to_string(minutes) + " min", "working time that ends by midnight"});
  }
  if (worked <= 0) {
    problems.push_back({"schedule.hours", "no working day", "hours for at least one weekday"});
  }
  return problems;
}

}  // namespace

std::optional<int> day_number(const Date& date) {
  if (date.year < 1 || date.year > 9999 || date.month < 1 || date.month > 12) return {};
  if (date.day < 1 || date.day > days_in(date.year, date.month)) return {};
  int days = days_before(date.year) - kEpoch;
  for (int month = 1; month < date.month; ++month) days += days_in(date.year, month);
  return days + date.day - 1;
}

Date date_of(int day_number) {
  const int days = day_number + kEpoch;
  Date date{days / 366 + 1, 1, 1};
  while (days_before(date.year + 1) <= days) ++date.year;
  int left = days - days_before(date.year);
  while (left >= days_in(date.year, date.month)) left -= days_in(date.year, date.month++);
  date.day = left + 1;
  return date;
}

// 1 January 1970 was a Thursday.
int weekday_of(int day_number) { return ((day_number + 3) % 7 + 7) % 7; }

When when(const Calendar& calendar, Minute minute) {
  const Minute day = minute >= 0 ? minute / kDay_min : -((-minute + kDay_min - 1) / kDay_min);
  const int first = day_number(calendar.first).value_or(0);
  return {date_of(first + static_cast<int>(day)), static_cast<int>(minute - day * kDay_min)};
}

Result<Plan> plan_of(std::span<const Task> tasks, const Calendar& calendar) {
  std::vector<Problem> problems = calendar_problems(calendar);
  if (!problems.empty()) return problems;
  const Result<Network> network = network_of(tasks);
  if (!network) return network.error();
  Planner planner{tasks, calendar};
  const int first = *day_number(calendar.first);
  planner.days.resize(kHorizon_days);
  int longest = 0;
  for (int i = 0; i < kHorizon_days; ++i) {
    DayInfo& day = planner.days[static_cast<std::size_t>(i)];
    day.minutes = calendar.minutes[static_cast<std::size_t>(weekday_of(first + i))];
    longest = std::max(longest, day.minutes);
  }
  for (const Date& date : calendar.off) {
    const int i = *day_number(date) - first;
    if (i >= 0 && i < kHorizon_days) planner.days[static_cast<std::size_t>(i)].minutes = 0;
  }
  for (const DayWeather& told : calendar.weather) {
    const int i = *day_number(told.date) - first;
    if (i < 0 || i >= kHorizon_days) continue;
    planner.days[static_cast<std::size_t>(i)].stands = told.stands;
    planner.days[static_cast<std::size_t>(i)].told = true;
  }
  for (const Task& task : tasks) {
    if (!task.unbroken || task.work_min <= longest) continue;
    problems.push_back(
        {"schedule, " + shortened(task.name), std::to_string(task.work_min) + " min in one go",
         "at most a day's " + std::to_string(longest) + " min, or let it be broken"});
  }
  if (!problems.empty()) return problems;

  std::vector<std::size_t> waits(tasks.size());
  std::vector<bool> placed(tasks.size(), false);
  planner.plan.tasks.resize(tasks.size());
  for (std::size_t round = 0; round < tasks.size(); ++round) {
    // Of those that wait for nothing more, the one that holds the end most.
    std::optional<std::size_t> next;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      if (placed[i]) continue;
      const bool ready = std::all_of(tasks[i].after.begin(), tasks[i].after.end(),
                                     [&](const After& after) { return placed[after.task]; });
      if (!ready) continue;
      if (!next || network->tasks[i].late_start_min < network->tasks[*next].late_start_min) {
        next = i;
      }
    }
    const Task& task = tasks[*next];
    Minute from = 0;
    for (const After& after : task.after) {
      const Placed& before = planner.plan.tasks[after.task];
      from = std::max(from, after.when_worked ? before.worked : before.done);
    }
    const std::optional<Placed> found = planner.place(task, from);
    if (!found) {
      return Problem{"schedule, " + shortened(task.name), "no day within two years",
                     "days that its weather and its person allow"};
    }
    placed[*next] = true;
    planner.take(task, *found);
    planner.plan.tasks[*next] = *found;
    planner.plan.end = std::max(planner.plan.end, found->done);
  }
  add_latest(planner, network->order, planner.plan);
  return std::move(planner.plan);
}

}  // namespace hs::schedule
