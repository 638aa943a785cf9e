// Days: the calendar itself, plans by hand, and laws that every plan keeps.
#include "engine/schedule/calendar.h"

#include <algorithm>
#include <array>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::schedule;
using Catch::Matchers::ContainsSubstring;

namespace {

constexpr int kHour = 60;
constexpr Minute kDay = 24 * 60;
constexpr Gates kBoth = kDryDay | kPaintDay;

Task task(const char* name, int work_h, int wait_h, std::vector<After> after = {}) {
  Task one;
  one.key = one.name = name;
  one.work_min = work_h * kHour;
  one.wait_min = wait_h * kHour;
  one.after = std::move(after);
  return one;
}

// Thursday 1 January 2026, eight hours from eight, Monday to Friday.
Calendar calendar() { return {}; }

constexpr Minute at(int day, int hour) { return day * kDay + hour * kHour; }

}  // namespace

TEST_CASE("days are numbered and named as a wall calendar has them", "[schedule][source]") {
  // 1 January 1970 was a Thursday, 1 January 2000 a Saturday and day 10957 (POSIX), 29 February
  // 2024 a Thursday; 1900 had no leap day.
  CHECK(day_number({1970, 1, 1}) == 0);
  CHECK(day_number({2000, 1, 1}) == 10957);
  CHECK(weekday_of(0) == 3);
  CHECK(weekday_of(10957) == 5);
  CHECK(weekday_of(*day_number({2024, 2, 29})) == 3);
  CHECK(weekday_of(-1) == 2);
  CHECK_FALSE(day_number({1900, 2, 29}).has_value());
  CHECK_FALSE(day_number({2026, 13, 1}).has_value());
  CHECK_FALSE(day_number({2026, 4, 31}).has_value());
  int number = *day_number({1896, 1, 1});
  for (Date date{1896, 1, 1}; date.year < 2110; ++number) {
    if (date_of(number) != date || day_number(date) != number) {
      FAIL("day " << number);
    }
    ++date.day;
    if (!day_number(date)) date = {date.year, date.month + 1, 1};
    if (!day_number(date)) date = {date.year + 1, 1, 1};
  }
}

TEST_CASE("work keeps to weekdays and hours, waiting runs through nights", "[schedule]") {
  const std::array tasks{task("cut", 12, 0), task("prime", 2, 24, {{0}}),
                         task("paint", 1, 0, {{1}})};
  const auto plan = plan_of(tasks, calendar());
  REQUIRE(plan);
  // Thursday 8 to 16, Friday 8 to 12; prime Friday 12 to 14, dry on Saturday 14; paint on Monday.
  CHECK(plan->tasks[0].work == std::vector<Span>{{at(0, 8), at(0, 16)}, {at(1, 8), at(1, 12)}});
  CHECK(plan->tasks[1].work == std::vector<Span>{{at(1, 12), at(1, 14)}});
  CHECK(plan->tasks[1].done == at(2, 14));
  CHECK(plan->tasks[2].start == at(4, 8));
  CHECK(plan->end == at(4, 9));
  const When end = when(calendar(), plan->end);
  CHECK(end.date == Date{2026, 1, 5});
  CHECK(end.minute == 9 * kHour);
  // A day off, and a first day that is a Saturday.
  Calendar other = calendar();
  other.off = {{2026, 1, 5}};
  CHECK(plan_of(tasks, other)->tasks[2].start == at(5, 8));
  other.first = {2026, 1, 3};
  CHECK(plan_of(tasks, other)->tasks[0].start == at(3, 8));
}

TEST_CASE("a coat waits for its day and for the days after it", "[schedule]") {
  Task coat = task("coat", 2, 4);
  coat.needs = kPaintDay;
  coat.holds = kDryDay;
  coat.hold_min = 24 * kHour;
  coat.unbroken = true;
  Calendar days = calendar();
  // Thursday to paint, rain on Friday; Monday bad; Tuesday and Wednesday well.
  days.weather = {{{2026, 1, 1}, kBoth},
                  {{2026, 1, 2}, 0},
                  {{2026, 1, 5}, kDryDay},
                  {{2026, 1, 6}, kBoth},
                  {{2026, 1, 7}, kBoth}};
  const std::array tasks{coat};
  auto plan = plan_of(tasks, days);
  REQUIRE(plan);
  CHECK(plan->tasks[0].start == at(5, 8));
  CHECK_FALSE(plan->tasks[0].weather_open);
  // Held for 14 hours only, it ends on Thursday: 10 o'clock to midnight.
  std::array shorter{coat};
  shorter[0].hold_min = 14 * kHour;
  CHECK(plan_of(shorter, days)->tasks[0].start == at(0, 8));
  shorter[0].hold_min += 1;
  CHECK(plan_of(shorter, days)->tasks[0].start == at(5, 8));
  // A day that nobody has told is taken, and said.
  days.weather.resize(3);
  plan = plan_of(tasks, days);
  CHECK(plan->tasks[0].start == at(5, 8));
  CHECK(plan->tasks[0].weather_open);
  // Never a day: said in words.
  for (int i = 0; i < kHorizon_days; ++i) {
    days.weather.push_back({date_of(*day_number(days.first) + i), 0});
  }
  const auto never = plan_of(tasks, days);
  REQUIRE_FALSE(never);
  CHECK_THAT(sentence(never.error().at(0)), ContainsSubstring("coat"));
}

TEST_CASE("one person does one thing at a time, two do two", "[schedule]") {
  std::array tasks{task("left", 4, 0), task("right", 4, 0)};
  CHECK(plan_of(tasks, calendar())->end == at(0, 16));
  tasks[1].who = 1;
  CHECK(plan_of(tasks, calendar())->end == at(0, 12));
  // In one go: six hours come first, as they hold the end; four no longer fit that day, two do.
  std::array mixed{task("four", 4, 1), task("six", 6, 0), task("two", 2, 0)};
  for (Task& one : mixed) one.unbroken = true;
  const auto plan = plan_of(mixed, calendar());
  CHECK(plan->tasks[0].work == std::vector<Span>{{at(1, 8), at(1, 12)}});
  CHECK(plan->tasks[1].work == std::vector<Span>{{at(0, 8), at(0, 14)}});
  CHECK(plan->tasks[2].work == std::vector<Span>{{at(0, 14), at(0, 16)}});
  // Broken, the four fill what is left of the day.
  mixed[0].unbroken = false;
  CHECK(plan_of(mixed, calendar())->tasks[0].work.size() == 2);
  mixed[1].work_min = 9 * kHour;
  CHECK_THAT(sentence(plan_of(mixed, calendar()).error().at(0)), ContainsSubstring("six"));
}

TEST_CASE("how late a task may begin knows whose hands it needs", "[schedule]") {
  // Four hours and two, then two: hands for both would give the two hours of slack.
  std::array tasks{task("saw", 4, 0), task("base", 2, 0), task("prime", 2, 0, {{0}, {1}})};
  CHECK(network_of(tasks)->tasks[1].slack_min == 2 * kHour);
  auto plan = plan_of(tasks, calendar());
  for (const Placed& one : plan->tasks) CHECK(one.holds_end());
  // Somebody else's hands: they are free until noon but for their own two hours.
  tasks[1].who = 1;
  plan = plan_of(tasks, calendar());
  CHECK(plan->tasks[1].start == at(0, 8));
  CHECK(plan->tasks[1].latest == at(0, 10));
  CHECK_FALSE(plan->tasks[1].holds_end());
  CHECK(plan->tasks[0].holds_end());
}

TEST_CASE("how late a task may begin knows nights, weekends and weather", "[schedule]") {
  // Dry at two in the night, and nobody works before eight: it may be worked until sixteen.
  std::array tasks{task("coat", 2, 16), task("hang", 1, 0, {{0}})};
  auto plan = plan_of(tasks, calendar());
  CHECK(plan->tasks[0].start == at(0, 8));
  CHECK(plan->tasks[1].start == at(1, 8));
  CHECK(plan->tasks[0].latest == at(0, 14));
  CHECK(plan->tasks[1].holds_end());
  // Ten hours of it: Thursday from eight, Friday to ten, and on Saturday at two it is dry. On
  // Monday it is hung; all of Friday is enough, with two hours of Thursday.
  tasks[0].work_min = 10 * kHour;
  plan = plan_of(tasks, calendar());
  CHECK(plan->tasks[1].start == at(4, 8));
  CHECK(plan->tasks[0].latest == at(0, 14));
  // Held dry for twelve hours, and it rains on Friday: done by noon of Thursday.
  tasks[0].work_min = 2 * kHour;
  tasks[0].holds = kDryDay;
  tasks[0].hold_min = 12 * kHour;
  Calendar days = calendar();
  days.weather = {{{2026, 1, 1}, kBoth}, {{2026, 1, 2}, 0}};
  plan = plan_of(tasks, days);
  CHECK(plan->tasks[0].start == at(0, 8));
  CHECK(plan->tasks[0].latest == at(0, 10));
}

TEST_CASE("a calendar without days is refused in words", "[schedule]") {
  const std::array tasks{task("cut", 1, 0)};
  Calendar none = calendar();
  none.minutes = {};
  CHECK_THAT(sentence(plan_of(tasks, none).error().at(0)), ContainsSubstring("no working day"));
  none = calendar();
  none.first = {2026, 2, 30};
  CHECK_THAT(sentence(plan_of(tasks, none).error().at(0)), ContainsSubstring("2026-2-30"));
  none.first = {9901, 1, 1};
  CHECK_FALSE(plan_of(tasks, none));
  none = calendar();
  none.begins_min = 20 * kHour;
  CHECK_FALSE(plan_of(tasks, none));
  CHECK(plan_of({}, calendar())->end == 0);
}

TEST_CASE("every plan keeps its laws", "[schedule][law]") {
  test::Random random(11);
  for (int round = 0; round < test::sweep(300); ++round) {
    std::vector<Task> tasks(static_cast<std::size_t>(1 + random.below(9)));
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      Task& one = tasks[i];
      one.name = one.key = std::to_string(i);
      one.work_min = 30 * random.below(20);
      one.wait_min = 60 * random.below(30);
      one.who = random.below(3) - 1;
      one.unbroken = one.work_min <= 480 && random.one_in(2);
      one.needs = static_cast<Gates>(random.below(4));
      one.holds = static_cast<Gates>(random.below(4));
      one.hold_min = 60 * random.below(30);
      for (std::size_t j = 0; j < i; ++j) {
        if (random.one_in(3)) one.after.push_back({j, random.one_in(4)});
      }
    }
    Calendar days = calendar();
    for (int i = 0; i < 20; ++i) {
      days.weather.push_back(
          {date_of(*day_number(days.first) + i), static_cast<Gates>(random.below(4))});
    }
    const auto plan = plan_of(tasks, days);
    REQUIRE(plan);
    const auto stands = [&](Minute minute) -> Gates {
      const auto day = static_cast<std::size_t>(minute / kDay);
      return day < days.weather.size() ? days.weather[day].stands : kBoth;
    };
    const int length = network_of(tasks)->length_min;
    CHECK(plan->end >= length);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const Task& one = tasks[i];
      const Placed& placed = plan->tasks[i];
      Minute worked = 0;
      for (const Span& span : placed.work) {
        worked += span.to - span.from;
        const Minute day = span.from / kDay;
        CHECK(weekday_of(*day_number(days.first) + static_cast<int>(day)) < 5);
        CHECK(span.from >= day * kDay + 8 * kHour);
        CHECK(span.to <= day * kDay + 16 * kHour);
        CHECK((stands(span.from) & one.needs) == one.needs);
        for (std::size_t j = 0; j < i && one.who >= 0; ++j) {
          if (tasks[j].who != one.who) continue;
          for (const Span& other : plan->tasks[j].work) {
            CHECK((other.to <= span.from || span.to <= other.from));
          }
        }
      }
      CHECK(worked == one.work_min);
      if (one.unbroken) CHECK(placed.work.size() <= 1);
      CHECK(placed.done == placed.worked + one.wait_min);
      CHECK(placed.latest >= placed.start);
      CHECK(placed.latest <= plan->end - one.wait_min - one.work_min);
      // What waits for it may not have to begin before it is done.
      for (std::size_t j = i + 1; j < tasks.size(); ++j) {
        for (const After& after : tasks[j].after) {
          if (after.task != i) continue;
          CHECK(placed.latest + one.work_min + (after.when_worked ? 0 : one.wait_min) <=
                plan->tasks[j].latest);
        }
      }
      if (one.work_min > 0 && one.hold_min > 0) {
        for (Minute m = placed.worked; m < placed.worked + one.hold_min; m += kHour / 2) {
          CHECK((stands(m) & one.holds) == one.holds);
        }
      }
      for (const After& after : one.after) {
        const Placed& before = plan->tasks[after.task];
        CHECK(placed.start >= (after.when_worked ? before.worked : before.done));
      }
    }
  }
}
