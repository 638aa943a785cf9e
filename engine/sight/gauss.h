#pragma once
// Gauss-Legendre nodes and weights on 0..1, made by the compiler so that every build has the same
// bits and no table of digits needs trust.
//
// Source: computed; Newton's method on the Legendre polynomials from the usual starting angles.

#include <array>
#include <cstddef>
#include <numbers>

namespace hs::sight {

template <std::size_t N>
struct GaussRule {
  static constexpr std::size_t size = N;
  std::array<double, N> node{};
  std::array<double, N> weight{};  // sum 1
};

// The standard cosine is not a constant expression before C++26. |x| <= pi.
constexpr double constant_cos(double x) {
  double term = 1, sum = 1;
  for (int k = 1; k < 20; ++k) {
    term *= -x * x / ((2.0 * k - 1) * (2.0 * k));
    sum += term;
  }
  return sum;
}

template <std::size_t N>
constexpr GaussRule<N> gauss_rule() {
  static_assert(N >= 2);
  GaussRule<N> rule;
  const double n = static_cast<double>(N);
  for (std::size_t i = 0; i < (N + 1) / 2; ++i) {
    double x = constant_cos(std::numbers::pi * (static_cast<double>(i) + 0.75) / (n + 0.5));
    double slope = 0;
    for (int step = 0; step < 6; ++step) {  // doubles the digits each time; 4 suffice
      double value = 1, before = 0;
      for (std::size_t k = 1; k <= N; ++k) {
        const double degree = static_cast<double>(k);
        const double next = ((2 * degree - 1) * x * value - (degree - 1) * before) / degree;
        before = value;
        value = next;
      }
      slope = n * (x * value - before) / (x * x - 1);
      x -= value / slope;
    }
    rule.node[i] = (1 - x) / 2;
    rule.node[N - 1 - i] = (1 + x) / 2;
    rule.weight[i] = rule.weight[N - 1 - i] = 1 / ((1 - x * x) * slope * slope);
  }
  return rule;
}

}  // namespace hs::sight
