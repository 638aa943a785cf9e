// The integration rule against what defines it: exact for polynomials up to degree 2 n - 1.

#include "engine/sight/gauss.h"

#include <cmath>

#include "catch_amalgamated.hpp"

using Catch::Matchers::WithinAbs;

TEST_CASE("a rule of n nodes integrates x^k exactly up to k = 2n - 1, and not beyond",
          "[sight][source]") {
  // Source: any text on numerical quadrature; integral of x^k over 0..1 is 1 / (k + 1).
  constexpr auto rule = hs::sight::gauss_rule<5>();
  const auto integral = [&](int power) {
    double sum = 0;
    for (std::size_t i = 0; i < rule.size; ++i)
      sum += rule.weight[i] * std::pow(rule.node[i], power);
    return sum;
  };
  for (int power = 0; power <= 9; ++power)
    CHECK_THAT(integral(power), WithinAbs(1.0 / (power + 1), 1e-15));
  CHECK(std::abs(integral(10) - 1.0 / 11) > 1e-7);
}

TEST_CASE("two nodes stand at 1/2 -+ 1/sqrt(12) with equal weights", "[sight][source]") {
  constexpr auto rule = hs::sight::gauss_rule<2>();
  CHECK_THAT(rule.node[0], WithinAbs(0.5 - 1 / std::sqrt(12.0), 1e-15));
  CHECK_THAT(rule.node[1], WithinAbs(0.5 + 1 / std::sqrt(12.0), 1e-15));
  CHECK_THAT(rule.weight[0], WithinAbs(0.5, 1e-15));
}

TEST_CASE("the rule used for sight has weights that sum to 1 and rising nodes", "[sight]") {
  constexpr auto rule = hs::sight::gauss_rule<48>();
  double sum = 0;
  for (std::size_t i = 0; i < rule.size; ++i) {
    sum += rule.weight[i];
    if (i > 0) REQUIRE(rule.node[i] > rule.node[i - 1]);
  }
  CHECK_THAT(sum, WithinAbs(1, 1e-14));
}
