// Critical paths against published networks, and against a search that tries every chain.
#include "engine/schedule/network.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::schedule;
using Catch::Matchers::ContainsSubstring;

namespace {

constexpr int kHour = 60;

struct Row {
  std::string name;
  int hours;
  std::string after;  // one letter each
};

std::vector<Task> nodes(const std::vector<Row>& rows) {
  std::vector<Task> tasks;
  for (const Row& row : rows) {
    Task task;
    task.key = task.name = row.name;
    task.work_min = row.hours * kHour;
    for (const char c : row.after) {
      for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].name == std::string(1, c)) task.after.push_back({i});
      }
    }
    tasks.push_back(task);
  }
  return tasks;
}

// A network of arrows between numbered events: a task waits for all that end where it begins.
struct Arrow {
  int from, to, hours;
};
std::vector<Task> arrows(const std::vector<Arrow>& list) {
  std::vector<Task> tasks;
  for (const Arrow& arrow : list) {
    Task task;
    task.key = task.name = std::to_string(arrow.from) + "-" + std::to_string(arrow.to);
    task.work_min = arrow.hours * kHour;
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (list[i].to == arrow.from) task.after.push_back({i});
    }
    tasks.push_back(task);
  }
  return tasks;
}

std::map<std::string, int> slacks(const std::vector<Task>& tasks, const Network& network) {
  std::map<std::string, int> out;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    if (network.tasks[i].slack_min != 0) {
      out[tasks[i].name] = network.tasks[i].slack_min / kHour;
    }
  }
  return out;
}

std::vector<std::string> paths(const std::vector<Task>& tasks, const Network& network) {
  std::vector<std::string> out;
  for (const auto& path : network.critical_paths) {
    std::string text;
    for (const std::size_t i : path) text += (text.empty() ? "" : " ") + tasks[i].name;
    out.push_back(text);
  }
  return out;
}

using Slacks = std::map<std::string, int>;
using Paths = std::vector<std::string>;

}  // namespace

TEST_CASE("published networks of tasks come out as printed", "[schedule][source]") {
  // studylib.net/doc/8378728 (read, worked again): 16 h, A-B-D-E-G, C and F have 1 h.
  std::vector<Task> tasks = nodes({{"A", 6, ""},
                                   {"B", 2, "A"},
                                   {"C", 2, "A"},
                                   {"D", 3, "B"},
                                   {"F", 2, "C"},
                                   {"E", 4, "DF"},
                                   {"G", 1, "E"}});
  auto network = network_of(tasks);
  REQUIRE(network);
  CHECK(network->length_min == 16 * kHour);
  CHECK(paths(tasks, *network) == Paths{"A B D E G"});
  CHECK(slacks(tasks, *network) == Slacks{{"C", 1}, {"F", 1}});
  const Timed& c = network->tasks[2];
  CHECK(c.early_start_min == 6 * kHour);
  CHECK(c.early_finish_min == 8 * kHour);
  CHECK(c.late_start_min == 7 * kHour);
  CHECK(c.late_finish_min == 9 * kHour);
  const Timed& f = network->tasks[4];
  CHECK(f.early_start_min == 8 * kHour);
  CHECK(f.late_finish_min == 11 * kHour);

  // melakarnets.com (read): 19, every slack 0. The page names A-B-D-E-F only; A-C-E-F is as long.
  tasks = nodes(
      {{"A", 4, ""}, {"B", 3, "A"}, {"C", 5, "A"}, {"D", 2, "B"}, {"E", 6, "CD"}, {"F", 4, "E"}});
  network = network_of(tasks);
  CHECK(network->length_min == 19 * kHour);
  CHECK(slacks(tasks, *network).empty());
  CHECK(paths(tasks, *network) == Paths{"A B D E F", "A C E F"});
  CHECK(network->path_count == 2);

  // A textbook's project (from memory): 15, A-C-E-G-H; B 1, D 1, F 6.
  tasks = nodes({{"A", 2, ""},
                 {"B", 3, ""},
                 {"C", 2, "A"},
                 {"D", 4, "AB"},
                 {"E", 4, "C"},
                 {"F", 3, "C"},
                 {"G", 5, "DE"},
                 {"H", 2, "FG"}});
  network = network_of(tasks);
  CHECK(network->length_min == 15 * kHour);
  CHECK(paths(tasks, *network) == Paths{"A C E G H"});
  CHECK(slacks(tasks, *network) == Slacks{{"B", 1}, {"D", 1}, {"F", 6}});
}

TEST_CASE("published networks of arrows come out as printed", "[schedule][source]") {
  // ar.scribd.com/doc/47113515 (read, worked again).
  std::vector<Task> tasks =
      arrows({{1, 2, 7}, {1, 3, 10}, {2, 4, 6}, {3, 4, 5}, {3, 5, 4}, {4, 5, 3}, {5, 6, 2}});
  auto network = network_of(tasks);
  REQUIRE(network);
  CHECK(network->length_min == 20 * kHour);
  CHECK(paths(tasks, *network) == Paths{"1-3 3-4 4-5 5-6"});
  CHECK(slacks(tasks, *network) == Slacks{{"1-2", 2}, {"2-4", 2}, {"3-5", 4}});

  // The same page, with a dummy of no length.
  tasks = arrows({{1, 2, 8},
                  {1, 3, 10},
                  {1, 4, 9},
                  {2, 5, 6},
                  {2, 6, 4},
                  {3, 5, 5},
                  {4, 5, 0},
                  {4, 7, 7},
                  {5, 7, 12},
                  {5, 8, 15},
                  {6, 9, 18},
                  {7, 8, 4},
                  {8, 9, 7}});
  network = network_of(tasks);
  CHECK(network->length_min == 38 * kHour);
  CHECK(paths(tasks, *network) == Paths{"1-3 3-5 5-7 7-8 8-9"});
  CHECK(slacks(tasks, *network) == Slacks{{"1-2", 1},
                                          {"1-4", 6},
                                          {"2-5", 1},
                                          {"2-6", 8},
                                          {"4-5", 6},
                                          {"4-7", 11},
                                          {"5-8", 1},
                                          {"6-9", 8}});
}

TEST_CASE("waiting holds up what needs it, and nothing else", "[schedule]") {
  // Glue 1 h of work, 24 h of waiting; load after all of it, clean when the work is done.
  std::vector<Task> tasks = nodes({{"glue", 1, ""}, {"load", 1, ""}, {"clean", 2, ""}});
  tasks[0].wait_min = 24 * kHour;
  tasks[1].after = {{0}};
  tasks[2].after = {{0, true}};
  const auto network = network_of(tasks);
  REQUIRE(network);
  CHECK(network->length_min == 26 * kHour);
  CHECK(network->tasks[1].early_start_min == 25 * kHour);
  CHECK(network->tasks[2].early_start_min == 1 * kHour);
  CHECK(network->tasks[2].slack_min == 23 * kHour);
  CHECK(paths(tasks, *network) == Paths{"glue load"});
}

TEST_CASE("a circle is refused, and names its tasks", "[schedule]") {
  std::vector<Task> tasks =
      nodes({{"A", 1, ""}, {"B", 1, "AD"}, {"C", 1, "B"}, {"D", 1, "C"}, {"E", 1, "D"}});
  const auto network = network_of(tasks);
  REQUIRE_FALSE(network);
  const std::string text = sentence(network.error().at(0));
  for (const char* name : {"B", "C", "D"}) CHECK_THAT(text, ContainsSubstring(name));
  CHECK_THAT(text, ContainsSubstring("B -> C -> D -> B") || ContainsSubstring("C -> D -> B -> C") ||
                       ContainsSubstring("D -> B -> C -> D"));
  CHECK_THAT(text, !ContainsSubstring("E") && !ContainsSubstring("A ->"));
  tasks = nodes({{"paint", 1, ""}});
  tasks[0].after = {{0}};
  CHECK_THAT(sentence(network_of(tasks).error().at(0)), ContainsSubstring("paint -> paint"));
  tasks[0].after = {{7}};
  CHECK_THAT(sentence(network_of(tasks).error().at(0)), ContainsSubstring("not there"));
  tasks[0].after = {};
  tasks[0].work_min = -1;
  CHECK_FALSE(network_of(tasks));
  CHECK(network_of({})->length_min == 0);
}

TEST_CASE("many critical paths are counted, the first ones listed", "[schedule]") {
  // Ten steps of two equal tasks each: 2^10 paths.
  std::vector<Task> tasks;
  for (int step = 0; step < 10; ++step) {
    for (int k = 0; k < 2; ++k) {
      Task task;
      task.name = std::to_string(step) + std::to_string(k);
      task.work_min = 60;
      const auto base = static_cast<std::size_t>(2 * (step - 1));
      if (step > 0) task.after = {{base}, {base + 1}, {base}};  // one told twice counts once
      tasks.push_back(task);
    }
  }
  const auto network = network_of(tasks);
  REQUIRE(network);
  CHECK(network->path_count == 1024);
  CHECK(network->critical_paths.size() == kMostPaths);
  auto sorted = network->critical_paths;
  std::sort(sorted.begin(), sorted.end());
  CHECK(std::unique(sorted.begin(), sorted.end()) == sorted.end());
}

TEST_CASE("every chain tried one by one agrees", "[schedule][law]") {
  test::Random random(3);
  for (int round = 0; round < test::sweep(500); ++round) {
    std::vector<Task> tasks(static_cast<std::size_t>(2 + random.below(7)));
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      tasks[i].name = std::string(1, static_cast<char>('a' + i));
      tasks[i].work_min = random.below(4);
      tasks[i].wait_min = random.below(3);
      for (std::size_t j = 0; j < i; ++j) {
        if (random.one_in(3)) tasks[i].after.push_back({j, random.one_in(4)});
      }
    }
    // Chains by brute force: every way to walk from a task to later ones.
    int longest = 0;
    std::vector<std::pair<int, std::vector<std::size_t>>> chains;
    const auto walk = [&](auto&& self, std::vector<std::size_t> path, int start) -> void {
      const Task& last = tasks[path.back()];
      const int end = start + last.work_min + last.wait_min;
      chains.push_back({end, path});
      longest = std::max(longest, end);
      for (std::size_t i = path.back() + 1; i < tasks.size(); ++i) {
        for (const After& after : tasks[i].after) {
          if (after.task != path.back()) continue;
          std::vector<std::size_t> longer = path;
          longer.push_back(i);
          self(self, longer, start + last.work_min + (after.when_worked ? 0 : last.wait_min));
        }
      }
    };
    for (std::size_t i = 0; i < tasks.size(); ++i) walk(walk, {i}, 0);
    const auto network = network_of(tasks);
    REQUIRE(network);
    CHECK(network->length_min == longest);
    CHECK(network->path_count == static_cast<std::int64_t>(network->critical_paths.size()));
    // Each path told is a chain of that length, and each task on such a chain is on a path told.
    for (const auto& path : network->critical_paths) {
      CHECK(std::find(chains.begin(), chains.end(), std::pair{longest, path}) != chains.end());
    }
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const bool on_chain = std::any_of(chains.begin(), chains.end(), [&](const auto& chain) {
        return chain.first == longest &&
               std::find(chain.second.begin(), chain.second.end(), i) != chain.second.end();
      });
      const bool told = std::any_of(
          network->critical_paths.begin(), network->critical_paths.end(),
          [&](const auto& path) { return std::find(path.begin(), path.end(), i) != path.end(); });
      CHECK(on_chain == network->tasks[i].critical());
      CHECK(told == on_chain);
    }
  }
}
