// Reading JSON, links and settings from any bytes. With clang, from the repository's root:
//   clang++ -std=c++20 -O1 -g -fsanitize=fuzzer,address,undefined -I. tests/fuzz/fuzz_read.cpp
//     engine/{base,config,share,oven}/*.cpp engine/evaluate/check.cpp -o build/fuzz_read
//   build/fuzz_read -max_len=4096 -dict=tests/fuzz/read.dict CORPUS tests/share/samples
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "tests/fuzz/read_anything.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  if (const char* broken = hs::test::broken_by(bytes)) {
    std::fprintf(stderr, "%s\n", broken);
    std::abort();
  }
  return 0;
}
