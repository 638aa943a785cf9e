#include "engine/schedule/network.h"

#include <algorithm>
#include <functional>
#include <utility>

#include "engine/base/text.h"

namespace hs::schedule {
namespace {

constexpr std::int64_t kMostCount = 1'000'000'000;
constexpr std::size_t kNamesTold = 12;

int lag_of(const Task& before, const After& after) {
  return before.work_min + (after.when_worked ? 0 : before.wait_min);
}

struct Edge {
  std::size_t to = 0;
  int lag_min = 0;
  bool whole = true;  // waits for all of it
};

struct Graph {
  std::span<const Task> tasks;
  std::vector<std::vector<Edge>> next{};
  std::vector<std::size_t> order{};

  // A task comes as soon as all that it waits for is there, ties by the order given.
  void sort() {
    std::vector<std::size_t> open(tasks.size(), 0);
    for (const auto& edges : next) {
      for (const Edge& edge : edges) ++open[edge.to];
    }
    std::vector<std::size_t> ready;  // a heap, the smallest in front
    const auto later = std::greater<>{};
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      if (open[i] == 0) ready.push_back(i);
    }
    std::make_heap(ready.begin(), ready.end(), later);
    while (!ready.empty()) {
      std::pop_heap(ready.begin(), ready.end(), later);
      const std::size_t task = ready.back();
      ready.pop_back();
      order.push_back(task);
      for (const Edge& edge : next[task]) {
        if (--open[edge.to] != 0) continue;
        ready.push_back(edge.to);
        std::push_heap(ready.begin(), ready.end(), later);
      }
    }
  }

  // What is left has a circle: walk back from one of it until a task comes twice.
  std::string circle() const {
    std::vector<bool> done(tasks.size(), false);
    for (const std::size_t task : order) done[task] = true;
    std::size_t at = 0;
    while (done[at]) ++at;
    std::vector<std::size_t> seen_as(tasks.size(), tasks.size());
    std::vector<std::size_t> walk;
    while (seen_as[at] == tasks.size()) {
      seen_as[at] = walk.size();
      walk.push_back(at);
      for (const After& after : tasks[at].after) {
        if (done[after.task]) continue;
        at = after.task;
        break;
      }
    }
    // Walked backwards; told forwards, and closed.
    std::vector<std::size_t> ring(walk.begin() + static_cast<std::ptrdiff_t>(seen_as[at]),
                                  walk.end());
    std::reverse(ring.begin(), ring.end());
    ring.push_back(ring.front());
    std::string text;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      if (i == kNamesTold && ring.size() > kNamesTold + 1) {
        text += " -> ... (" + std::to_string(ring.size() - 1) + " tasks)";
        break;
      }
      if (i > 0) text += " -> ";
      text += shortened(tasks[ring[i]].name);
    }
    return text;
  }
};

std::vector<Problem> problems_of(std::span<const Task> tasks) {
  std::vector<Problem> problems;
  if (tasks.size() > kMostTasks) {
    problems.push_back({"schedule", std::to_string(tasks.size()) + " tasks", "at most 1000"});
    return problems;
  }
  for (const Task& task : tasks) {
    const std::string name = "schedule, " + shortened(task.name);
    const std::pair<int, std::string_view> times[] = {
        {task.work_min, "work"}, {task.wait_min, "waiting"}, {task.hold_min, "weather to hold"}};
    for (const auto& [minutes, what] : times) {
      if (minutes >= 0 && minutes <= kMostMin) continue;
      problems.push_back({name, std::to_string(minutes) + " min of " + std::string(what),
                          "0 to a year, in minutes"});
    }
    for (const After& after : task.after) {
      if (after.task < tasks.size()) continue;
      problems.push_back({name, "a task that is not there", "a task of the list to wait for"});
    }
  }
  return problems;
}

struct Solver {
  const Graph& graph;
  Network out{};
  std::vector<bool> has_tight_before{};

  int whole(std::size_t i) const { return graph.tasks[i].work_min + graph.tasks[i].wait_min; }

  void times() {
    out.tasks.resize(graph.tasks.size());
    for (const std::size_t i : graph.order) {
      Timed& timed = out.tasks[i];
      timed.early_finish_min = timed.early_start_min + whole(i);
      out.length_min = std::max(out.length_min, timed.early_finish_min);
      for (const Edge& edge : graph.next[i]) {
        int& start = out.tasks[edge.to].early_start_min;
        start = std::max(start, timed.early_start_min + edge.lag_min);
      }
    }
    for (auto it = graph.order.rbegin(); it != graph.order.rend(); ++it) {
      Timed& timed = out.tasks[*it];
      timed.late_start_min = out.length_min - whole(*it);
      for (const Edge& edge : graph.next[*it]) {
        timed.late_start_min =
            std::min(timed.late_start_min, out.tasks[edge.to].late_start_min - edge.lag_min);
      }
      timed.late_finish_min = timed.late_start_min + whole(*it);
      timed.slack_min = timed.late_start_min - timed.early_start_min;
    }
  }

  bool tight(std::size_t from, const Edge& edge) const {
    const Timed& a = out.tasks[from];
    const Timed& b = out.tasks[edge.to];
    return a.critical() && b.critical() && a.early_start_min + edge.lag_min == b.early_start_min;
  }
  // Does a chain end here? All of its time is up, and nothing waits for all of it.
  bool ends(std::size_t i) const {
    if (out.tasks[i].early_finish_min != out.length_min) return false;
    return std::none_of(graph.next[i].begin(), graph.next[i].end(),
                        [&](const Edge& edge) { return edge.whole && tight(i, edge); });
  }

  void count_paths(const std::vector<std::size_t>& starts) {
    std::vector<std::int64_t> from(graph.tasks.size(), 0);
    for (auto it = graph.order.rbegin(); it != graph.order.rend(); ++it) {
      if (!out.tasks[*it].critical()) continue;
      std::int64_t& count = from[*it];
      if (ends(*it)) ++count;
      for (const Edge& edge : graph.next[*it]) {
        if (tight(*it, edge)) count = std::min(kMostCount, count + from[edge.to]);
      }
    }
    for (const std::size_t i : starts) {
      out.path_count = std::min(kMostCount, out.path_count + from[i]);
    }
  }

  // Depth first without recursion: a chain may be as long as the list.
  void list_paths(std::size_t start) {
    std::vector<std::pair<std::size_t, std::size_t>> stack{{start, 0}};  // task, next edge
    while (!stack.empty() && out.critical_paths.size() < kMostPaths) {
      auto& [task, edge_at] = stack.back();
      if (edge_at == 0 && ends(task)) {
        std::vector<std::size_t> path;
        for (const auto& step : stack) path.push_back(step.first);
        out.critical_paths.push_back(std::move(path));
      }
      const std::vector<Edge>& edges = graph.next[task];
      while (edge_at < edges.size() && !tight(task, edges[edge_at])) ++edge_at;
      if (edge_at == edges.size()) {
        stack.pop_back();
        continue;
      }
      const std::size_t to = edges[edge_at++].to;
      stack.push_back({to, 0});
    }
  }

  void paths() {
    has_tight_before.assign(graph.tasks.size(), false);
    for (std::size_t i = 0; i < graph.tasks.size(); ++i) {
      for (const Edge& edge : graph.next[i]) {
        if (tight(i, edge)) has_tight_before[edge.to] = true;
      }
    }
    std::vector<std::size_t> starts;
    for (std::size_t i = 0; i < graph.tasks.size(); ++i) {
      if (out.tasks[i].critical() && !has_tight_before[i]) starts.push_back(i);
    }
    count_paths(starts);
    for (const std::size_t i : starts) list_paths(i);
  }
};

}  // namespace

Result<Network> network_of(std::span<const Task> tasks) {
  std::vector<Problem> problems = problems_of(tasks);
  if (!problems.empty()) return problems;
  Graph graph{tasks};
  graph.next.resize(tasks.size());
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    for (const After& after : tasks[i].after) {
      const Edge edge{i, lag_of(tasks[after.task], after), !after.when_worked};
      std::vector<Edge>& edges = graph.next[after.task];
      // Told twice, the stricter counts once.
      if (!edges.empty() && edges.back().to == i) {
        edges.back().lag_min = std::max(edges.back().lag_min, edge.lag_min);
        edges.back().whole |= edge.whole;
      } else {
        edges.push_back(edge);
      }
    }
  }
  graph.sort();
  if (graph.order.size() < tasks.size()) {
    return Problem{"schedule", graph.circle(),
                   "an order without a circle: each of these waits for the one before it"};
  }
  Solver solver{graph};
  solver.times();
  solver.paths();
  solver.out.order = graph.order;
  return std::move(solver.out);
}

}  // namespace hs::schedule
