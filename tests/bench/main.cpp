#include "tests/bench/bench.h"

int main() {
  bench_sight();
  bench_evaluate();
  bench_cuts();
  return 0;
}
