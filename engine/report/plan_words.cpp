#include "engine/report/plan_words.h"

#include <algorithm>

#include "engine/base/number_text.h"
#include "engine/report/build_sheets.h"
#include "engine/report/ics.h"
#include "engine/report/report_json.h"

namespace hs::report {
namespace {

std::string two(int value) { return (value < 10 ? "0" : "") + std::to_string(value); }

std::string hours(int minutes) {
  return minutes == 0 ? std::string() : trimmed(minutes / 60.0, 1) + " h";
}

std::string day(const evaluate::Timetable& plan, schedule::Minute minute) {
  const schedule::When when = schedule::when(plan.calendar, minute);
  constexpr std::string_view kDays[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  const auto number = schedule::day_number(when.date);
  const std::string weekday(number ? kDays[static_cast<std::size_t>(schedule::weekday_of(*number))]
                                   : "");
  return weekday + " " + std::to_string(when.date.year) + "-" + two(when.date.month) + "-" +
         two(when.date.day) + " " + two(when.minute / 60) + ":" + two(when.minute % 60);
}

std::string after_words(const evaluate::Timetable& plan, std::size_t task) {
  std::string words;
  for (const schedule::After& after : plan.tasks[task].after) {
    words += (words.empty() ? "" : "; ") + plan.tasks[after.task].name;
  }
  return words;
}

}  // namespace

Table task_table(const evaluate::Timetable& plan) {
  Table table{"Tasks", {"Task", "Who", "Work", "Waiting"}, {}};
  if (plan.plan) {
    table.caption = "Tasks, each person doing one thing at a time";
    for (const char* head : {"Begins", "Done", "May begin as late as"})
      table.columns.push_back(head);
  } else {
    table.caption = "Tasks, as if there were hands for all of them";
    table.columns.push_back("Slack");
  }
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const schedule::Task& task = plan.tasks[i];
    const schedule::Timed& timed = plan.network.tasks[i];
    std::vector<std::string> row{task.name, std::string(plan.notes[i].who), hours(task.work_min),
                                 hours(task.wait_min)};
    if (plan.plan) {
      const schedule::Placed& placed = plan.plan->tasks[i];
      row.push_back(day(plan, placed.start));
      row.push_back(day(plan, placed.done) + (placed.weather_open ? ", if the weather holds" : ""));
      row.push_back(placed.holds_end() ? "holds the end" : day(plan, placed.latest));
    } else {
      row.push_back(timed.critical() ? "none" : hours(timed.slack_min));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string slack_words(const evaluate::Timetable& plan) {
  return plan.plan ? "A task that holds the end moves the end where it begins later. Any other may "
                     "begin as late as is told, with the same hands on the same days; what begins "
                     "after it is then as late as it may be."
                   : "Slack is counted as if there were hands for every task that could go on, and "
                     "every hour were a working one; a task without slack holds the end even then. "
                     "One builder has less slack than this: give a first day, and the plan tells "
                     "how late each task may begin with the hands that there are.";
}

std::vector<std::string> critical_paths(const evaluate::Timetable& plan) {
  std::vector<std::string> all;
  for (const std::vector<std::size_t>& path : plan.network.critical_paths) {
    std::string words;
    for (const std::size_t task : path) {
      words += (words.empty() ? "The longest chain: " : ", then ") + plan.tasks[task].name;
    }
    all.push_back(words + ".");
  }
  return all;
}

std::string step_words(const evaluate::Timetable& plan, std::size_t i) {
  const schedule::Task& task = plan.tasks[i];
  const evaluate::TaskNote& note = plan.notes[i];
  std::string words;
  const auto say = [&words](std::string_view what, std::string_view text) {
    if (text.empty()) return;
    if (!words.empty()) words += ' ';
    words += std::string(what) + std::string(text) + ".";
  };
  say("Who: ", note.who);
  say("With: ", note.tools);
  say("Work: ", hours(task.work_min));
  say("Counted: ", note.counted);
  say("Then it waits ", hours(task.wait_min));
  say("After: ", after_words(plan, i));
  if (plan.plan) say("Begins ", day(plan, plan.plan->tasks[i].start));
  if (!note.caution.empty()) {
    words += (words.empty() ? "" : " ") + std::string("Take care: ") + std::string(note.caution);
  }
  return words;
}

std::optional<Sheet> named_sheet(std::string_view name, const PacketView& view, double line_mm) {
  if (name.empty()) return {};
  if (const SheetKind* kind = find_sheet(name)) {
    return kind->draw(view.config, view.evaluation, view.sheet(line_mm));
  }
  return build_sheet(name, view.config, view.evaluation, view.sheet(line_mm));
}

std::string plan_ics(const config::Config& config, const evaluate::Timetable& plan) {
  if (!plan.plan) return {};
  const schedule::Date& first = plan.calendar.first;
  const std::string stamp = std::to_string(first.year) + two(first.month) + two(first.day);
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) notes.push_back(step_words(plan, i));
  const auto text = ics_text(
      plan.tasks, *plan.plan, plan.calendar,
      {"hearthsight-" + config_fingerprint(config), stamp + "T000000Z", config.title, 0}, notes);
  return text ? *text : std::string();
}

}  // namespace hs::report
