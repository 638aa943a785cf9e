// The dragged path, the full evaluation and the fit map, for a household of four.

#include "engine/evaluate/evaluate.h"
#include "tests/bench/bench.h"

namespace {

hs::config::Config four_cooks() {
  using hs::config::Build;
  hs::config::Config c;
  c.cooks.clear();
  constexpr double kStatures_mm[] = {1860, 1580, 1700, 1640};
  constexpr Build kBuilds[] = {Build::AdultA, Build::AdultB, Build::Adult, Build::AdultB};
  for (std::size_t i = 0; i < 4; ++i) {
    hs::config::Cook cook;
    cook.name = hs::config::default_cook_name(i);
    cook.stature_mm = kStatures_mm[i];
    cook.build = kBuilds[i];
    c.cooks.push_back(cook);
  }
  return c;
}

}  // namespace

void bench_evaluate() {
  using hs::bench::keep;
  hs::config::Config config = four_cooks();
  // Every call gets another standoff, so that nothing can be kept from the one before.
  int turn = 0;
  const auto next = [&] { config.view.standoff_mm = 650 + turn++ % 100; };

  const double fit_ns = hs::bench::median_ns(
      [&] {
        next();
        keep(hs::evaluate::evaluate_fit(config).cooks[0].watching.pizza_share);
      },
      20);
  hs::bench::print("dragged path (fit), four cooks", fit_ns / 1e3, "us (target <= 300 native)");

  const double full_ns = hs::bench::median_ns(
      [&] {
        next();
        keep(*hs::evaluate::evaluate(config).fits_adults_share);
      },
      5);
  hs::bench::print("full evaluation with sensitivity and guests, four cooks", full_ns / 1e6,
                   "ms (target <= 3)");

  const double map_ns = hs::bench::median_ns(
      [&] {
        next();
        keep(static_cast<double>(hs::evaluate::fit_map(config, 96, 64).share[0]));
      },
      1);
  hs::bench::print("fit map 96x64, four cooks", map_ns / 1e6, "ms (target <= 40 in WebAssembly)");
}
