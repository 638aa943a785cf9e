#pragma once
// Random numbers that are the same on every machine: the standard distributions differ between
// libraries, so a failing case could not be repeated elsewhere.

#include <cstdint>

namespace hs::test {

// SplitMix64. Source: Steele, Lea and Flood 2014, OOPSLA, figure 17 (from memory).
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15u;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }
  // From low up to, not including, high.
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(bits() >> 11) * 0x1p-53);
  }
  // 0 to count - 1.
  int below(int count) { return static_cast<int>(bits() % static_cast<std::uint64_t>(count)); }
  bool one_in(int count) { return below(count) == 0; }

 private:
  std::uint64_t state_;
};

}  // namespace hs::test
