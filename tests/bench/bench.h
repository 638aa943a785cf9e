#pragma once
// A small bench: median times on a steady clock, one line per figure, "name: value unit".
//
// Each bench_* function prints its own lines; main.cpp calls them all.

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>
#include <cstdio>

namespace hs::bench {

// Keeps the compiler from dropping a computation whose result nobody reads.
inline void keep(double value) {
  [[maybe_unused]] static volatile double sink = 0;
  sink = value;
}

// Median time of one call of fn, in nanoseconds, over 31 batches of n calls. The median leaves out
// the batches that another process disturbed. Before them fn runs for a while: a processor speeds
// up, and a WebAssembly engine compiles what is called often a second time, better, in the
// background. In a drag of a second or more that is over after its first frames.
template <typename Fn>
double median_ns(Fn fn, int n) {
  using Clock = std::chrono::steady_clock;
  constexpr auto kWarm = std::chrono::milliseconds(500);
  for (const auto start = Clock::now(); Clock::now() - start < kWarm;) fn();
  constexpr std::size_t kBatches = 31;
  std::array<double, kBatches> times{};
  for (double& time : times) {
    const auto start = Clock::now();
    for (int i = 0; i < n; ++i) fn();
    const std::chrono::duration<double, std::nano> taken = Clock::now() - start;
    time = taken.count() / n;
  }
  std::sort(times.begin(), times.end());
  return times[kBatches / 2];
}

inline void print(const char* name, double value, const char* unit) {
  std::printf("%s: %.4g %s\n", name, value, unit);
}

}  // namespace hs::bench

// One visible-share evaluation against the coarsest regular ray grid of equal worst error.
void bench_sight();
// The dragged path, the full evaluation and the fit map for a household of four.
void bench_evaluate();
// Cut plans on published lists and on a shop's own.
void bench_cuts();
