#pragma once
// How many random cases a sweep runs: all of them natively, a tenth where each case costs several
// times as much (sanitizers, WebAssembly under Node).

#if defined(__has_feature)
#if __has_feature(address_sanitizer)
#define HS_TEST_SHORT_SWEEPS
#endif
#endif
#if defined(HEARTHSIGHT_SHORT_SWEEPS) || defined(__EMSCRIPTEN__) || defined(__SANITIZE_ADDRESS__)
#define HS_TEST_SHORT_SWEEPS
#endif

namespace hs::test {

constexpr int sweep(int cases) {
#if defined(HS_TEST_SHORT_SWEEPS)
  return (cases + 9) / 10;
#else
  return cases;
#endif
}

}  // namespace hs::test
