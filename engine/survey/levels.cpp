#include "engine/survey/levels.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/quantity.h"
#include "engine/survey/plane.h"

namespace hs::survey {
namespace {

constexpr int kSetups = 4;

// So that halves of a tenth are told alike whatever was added to the readings.
double millionth(double mm) { return round_to(mm, 1000000); }

using Matrix = std::array<std::array<double, kSetups>, kSetups>;

struct Observation {
  std::size_t point = 0;
  int setup = 0;
  double reading_mm = 0;
};

bool same_place(const Point& point, const Reading& reading) {
  const double dx = point.x_mm - reading.x_mm, dy = point.y_mm - reading.y_mm;
  return dx * dx + dy * dy <= kSamePlace_mm * kSamePlace_mm;
}

// The readings' places, and each reading with its place.
std::vector<Observation> gather(std::span<const Reading> readings, Levels& out) {
  std::vector<Observation> all;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const Reading& r = readings[i];
    if (r.setup < 0 || r.setup >= kSetups) continue;
    std::size_t at = 0;
    while (at < out.points.size() && !same_place(out.points[at], r)) ++at;
    if (at == out.points.size()) {
      Point point;
      point.x_mm = r.x_mm;
      point.y_mm = r.y_mm;
      point.kind = r.kind;
      point.first = i;
      out.points.push_back(point);
    }
    if (!r.reading_mm) continue;
    ++out.points[at].readings;
    all.push_back({at, r.setup, *r.reading_mm});
  }
  return all;
}

// What one line reads more than another at the places that both have.
struct Difference {
  int shared = 0;
  double sum_mm = 0, least_mm = 0, most_mm = 0;
  double mean_mm() const { return sum_mm / shared; }
};

struct Mean {
  double sum_mm = 0;
  int count = 0;
};

class Network {
 public:
  Network(const std::vector<Observation>& all, std::size_t points) : means_(points) {
    for (const Observation& o : all) {
      Mean& mean = means_[o.point][static_cast<std::size_t>(o.setup)];
      mean.sum_mm += o.reading_mm;
      ++mean.count;
      ++used_[static_cast<std::size_t>(o.setup)];
    }
    for (int a = 0; a < kSetups; ++a) {
      for (int b = a + 1; b < kSetups; ++b) compare(a, b);
    }
  }

  int readings(int setup) const { return used_[static_cast<std::size_t>(setup)]; }
  const Difference& between(int a, int b) const {
    return differences_[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)];
  }
  bool joined(int a, int b) const { return between(std::min(a, b), std::max(a, b)).shared > 0; }
  // How much more b reads than a.
  double step_mm(int a, int b) const {
    return a < b ? between(a, b).mean_mm() : -between(b, a).mean_mm();
  }

  // The lines that hang together with the most readings; ties: the first.
  std::array<bool, kSetups> largest() const {
    std::array<bool, kSetups> best{};
    int most = 0;
    for (int root = 0; root < kSetups; ++root) {
      if (readings(root) == 0) continue;
      std::array<bool, kSetups> in{};
      in[static_cast<std::size_t>(root)] = true;
      for (int pass = 0; pass < kSetups; ++pass) {
        for (int a = 0; a < kSetups; ++a) {
          for (int b = 0; b < kSetups; ++b) {
            if (a != b && in[static_cast<std::size_t>(a)] && joined(a, b)) {
              in[static_cast<std::size_t>(b)] = true;
            }
          }
        }
      }
      int count = 0;
      for (int s = 0; s < kSetups; ++s) count += in[static_cast<std::size_t>(s)] ? readings(s) : 0;
      if (count > most) {
        most = count;
        best = in;
      }
    }
    return best;
  }

  // Heights of the lines by least squares, the first of them at 0: normal equations with the
  // points' heights eliminated.
  std::array<double, kSetups> heights(const std::array<bool, kSetups>& in) const {
    Matrix n{};
    std::array<double, kSetups> right{};
    for (const auto& point : means_) {
      double count = 0, sum = 0;
      for (std::size_t s = 0; s < kSetups; ++s) {
        if (!in[s]) continue;
        count += point[s].count;
        sum += point[s].sum_mm;
      }
      if (count == 0) continue;
      for (std::size_t s = 0; s < kSetups; ++s) {
        if (!in[s] || point[s].count == 0) continue;
        n[s][s] += point[s].count;
        right[s] += point[s].sum_mm - point[s].count * sum / count;
        for (std::size_t t = 0; t < kSetups; ++t) {
          if (in[t]) n[s][t] -= point[s].count * point[t].count / count;
        }
      }
    }
    // Lines that are out, and the first that is in, stay at 0.
    bool first = true;
    for (std::size_t s = 0; s < kSetups; ++s) {
      if (in[s] && !first) continue;
      if (in[s]) first = false;
      for (std::size_t t = 0; t < kSetups; ++t) n[s][t] = n[t][s] = 0;
      n[s][s] = 1;
      right[s] = 0;
    }
    return solved(n, right);
  }

 private:
  void compare(int a, int b) {
    Difference& d = differences_[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)];
    for (const auto& point : means_) {
      const Mean& in_a = point[static_cast<std::size_t>(a)];
      const Mean& in_b = point[static_cast<std::size_t>(b)];
      if (in_a.count == 0 || in_b.count == 0) continue;
      const double more = in_b.sum_mm / in_b.count - in_a.sum_mm / in_a.count;
      d.least_mm = d.shared == 0 ? more : std::min(d.least_mm, more);
      d.most_mm = d.shared == 0 ? more : std::max(d.most_mm, more);
      d.sum_mm += more;
      ++d.shared;
    }
  }

  // Symmetric and positive definite: elimination without exchange.
  static std::array<double, kSetups> solved(Matrix n, std::array<double, kSetups> right) {
    for (std::size_t i = 0; i < kSetups; ++i) {
      for (std::size_t j = i + 1; j < kSetups; ++j) {
        const double factor = n[j][i] / n[i][i];
        for (std::size_t k = i; k < kSetups; ++k) n[j][k] -= factor * n[i][k];
        right[j] -= factor * right[i];
      }
    }
    for (std::size_t i = kSetups; i-- > 0;) {
      for (std::size_t k = i + 1; k < kSetups; ++k) right[i] -= n[i][k] * right[k];
      right[i] /= n[i][i];
    }
    return right;
  }

  std::vector<std::array<Mean, kSetups>> means_;
  std::array<int, kSetups> used_{};
  std::array<std::array<Difference, kSetups>, kSetups> differences_{};
};

// Over one shared point and back over another; round three lines or more.
std::vector<Loop> loops_of(const Network& network) {
  std::vector<Loop> loops;
  for (int a = 0; a < kSetups; ++a) {
    for (int b = a + 1; b < kSetups; ++b) {
      const Difference& d = network.between(a, b);
      if (d.shared >= 2) loops.push_back({{a, b}, millionth(d.most_mm - d.least_mm), 4});
    }
  }
  // A tree over the lines; each join beside it closes one loop.
  std::array<int, kSetups> parent{};
  parent.fill(-1);
  std::array<int, kSetups> depth{};
  std::array<bool, kSetups> seen{};
  for (int root = 0; root < kSetups; ++root) {
    if (seen[static_cast<std::size_t>(root)] || network.readings(root) == 0) continue;
    std::vector<int> queue{root};
    seen[static_cast<std::size_t>(root)] = true;
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (int b = 0; b < kSetups; ++b) {
        if (b == queue[i] || seen[static_cast<std::size_t>(b)] || !network.joined(queue[i], b)) {
          continue;
        }
        seen[static_cast<std::size_t>(b)] = true;
        parent[static_cast<std::size_t>(b)] = queue[i];
        depth[static_cast<std::size_t>(b)] = depth[static_cast<std::size_t>(queue[i])] + 1;
        queue.push_back(b);
      }
    }
  }
  for (int a = 0; a < kSetups; ++a) {
    for (int b = a + 1; b < kSetups; ++b) {
      if (!network.joined(a, b)) continue;
      if (parent[static_cast<std::size_t>(a)] == b || parent[static_cast<std::size_t>(b)] == a) {
        continue;
      }
      // Up the tree from both ends to where they meet.
      double error = network.step_mm(a, b);
      std::vector<int> up{a}, down{b};
      while (up.back() != down.back()) {
        const bool left = depth[static_cast<std::size_t>(up.back())] >=
                          depth[static_cast<std::size_t>(down.back())];
        std::vector<int>& way = left ? up : down;
        const int from = way.back(), to = parent[static_cast<std::size_t>(from)];
        error += left ? network.step_mm(to, from) : network.step_mm(from, to);
        way.push_back(to);
      }
      down.pop_back();
      up.insert(up.end(), down.rbegin(), down.rend());
      const int readings = 2 * static_cast<int>(up.size());
      loops.push_back({std::move(up), millionth(std::abs(error)), readings});
    }
  }
  return loops;
}

void mark_doubtful(Levels& out) {
  std::vector<Spot3> spots;
  std::vector<std::size_t> which;
  for (std::size_t i = 0; i < out.points.size(); ++i) {
    const Point& point = out.points[i];
    if (!point.height_mm) continue;
    spots.push_back({point.x_mm, point.y_mm, *point.height_mm});
    which.push_back(i);
  }
  const Outliers judged = outliers(spots);
  out.one_line = judged.one_line;
  for (std::size_t k = 0; k < which.size(); ++k) {
    Point& point = out.points[which[k]];
    point.off_mm = judged.off_mm[k];
    point.judged = judged.judged[k] || point.readings > 1;
    point.doubtful = point.readings == 1 ? point.off_mm != 0 : point.spread_mm > kRepeat_mm;
  }
  const auto off_alike = [](const Point& a, const Point& b) {
    return a.kind == Kind::Feet && b.kind == Kind::Feet && a.off_mm != 0 && b.off_mm != 0 &&
           std::abs(a.off_mm - b.off_mm) <= kLip_mm;
  };
  for (Point& point : out.points) {
    point.step = std::any_of(out.points.begin(), out.points.end(), [&](const Point& other) {
      return &other != &point && off_alike(point, other);
    });
  }
  for (Point& point : out.points) {
    if (point.step && point.readings == 1) point.doubtful = false;
  }
}

}  // namespace

Levels levels_of(std::span<const Reading> readings) {
  Levels out;
  const std::vector<Observation> all = gather(readings, out);
  const Network network(all, out.points.size());
  const std::array<bool, kSetups> in = network.largest();
  const std::array<double, kSetups> heights = network.heights(in);
  for (int s = 0; s < kSetups; ++s) {
    if (network.readings(s) == 0) continue;
    Line line{s, network.readings(s), {}};
    if (in[static_cast<std::size_t>(s)])
      line.height_mm = millionth(heights[static_cast<std::size_t>(s)]);
    out.lines.push_back(line);
  }
  struct Range {
    double sum_mm = 0, least_mm = 0, most_mm = 0;
    int count = 0;
  };
  std::vector<Range> ranges(out.points.size());
  for (const Observation& o : all) {
    if (!in[static_cast<std::size_t>(o.setup)]) continue;
    const double ground = heights[static_cast<std::size_t>(o.setup)] - o.reading_mm;
    Range& range = ranges[o.point];
    range.least_mm = range.count == 0 ? ground : std::min(range.least_mm, ground);
    range.most_mm = range.count == 0 ? ground : std::max(range.most_mm, ground);
    range.sum_mm += ground;
    ++range.count;
  }
  for (std::size_t i = 0; i < out.points.size(); ++i) {
    Point& point = out.points[i];
    if (ranges[i].count > 0) {
      point.height_mm = millionth(ranges[i].sum_mm / ranges[i].count);
      point.spread_mm = millionth(ranges[i].most_mm - ranges[i].least_mm);
    } else {
      ++(point.readings == 0 ? out.missing : out.unjoined);
    }
  }
  out.loops = loops_of(network);
  mark_doubtful(out);
  return out;
}

double reading_error_mm(Tool tool, const std::optional<double>& laser_mm, double distance_mm) {
  double line_mm = 0;
  switch (tool) {
    case Tool::Unknown:
      break;
    case Tool::Laser:
      line_mm = laser_mm.value_or(0) * distance_mm / 10000;
      break;
    case Tool::WaterLevel:
      line_mm = 2;
      break;
    case Tool::Straightedge:
      line_mm = 0.5 * distance_mm / 1000;
      break;
  }
  return std::sqrt(kTape_mm * kTape_mm + line_mm * line_mm);
}

double closing_limit_mm(double error_mm, int readings) {
  return error_mm * std::sqrt(static_cast<double>(readings));
}

}  // namespace hs::survey
