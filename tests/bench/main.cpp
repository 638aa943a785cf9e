#include "tests/bench/bench.h"

int main() {
  bench_sight();
  bench_evaluate();
  return 0;
}
