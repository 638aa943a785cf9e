#include "engine/share/coder.h"

#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/share/seal.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::share;

namespace {

struct Event {
  bool is_bit;
  std::uint64_t value, n;
};

std::vector<Event> random_events(test::Random& random) {
  std::vector<Event> events;
  const int count = random.below(400);
  // Extremes put long runs of equal digits into the output, where a carry has to run far back.
  const int style = random.below(4);
  for (int i = 0; i < count; ++i) {
    const bool is_bit = random.one_in(2);
    const std::uint64_t n =
        is_bit ? 2 : 1 + random.bits() % (random.one_in(3) ? kMostOutcomes : 100);
    std::uint64_t value = random.bits() % n;
    if (style == 1) value = n - 1;
    if (style == 2) value = 0;
    if (style == 3 && random.one_in(2)) value = n - 1;
    events.push_back({is_bit, value, n});
  }
  return events;
}

}  // namespace

TEST_CASE("what is coded is decoded, whatever the events", "[share][coder][law]") {
  test::Random random(3);
  for (int i = 0; i < test::sweep(3000); ++i) {
    const auto events = random_events(random);
    Encoder encoder;
    Odds odds;
    for (const Event& event : events) {
      event.is_bit ? encoder.bit(odds, event.value != 0) : encoder.below(event.value, event.n);
    }
    const auto digits = encoder.finish();
    CHECK((digits.empty() || digits.back() != 0));
    Decoder decoder(digits);
    odds = Odds{};
    bool same = true;
    for (const Event& event : events) {
      const std::uint64_t got = event.is_bit ? (decoder.bit(odds) ? 1 : 0) : decoder.below(event.n);
      same = same && got == event.value;
    }
    REQUIRE(same);
  }
}

TEST_CASE("equal outcomes cost their share of a digit and one digit more at most",
          "[share][coder]") {
  Encoder encoder;
  test::Random random(4);
  for (int i = 0; i < 60; ++i) encoder.below(random.bits() % 1000, 1000);
  // 60 * log2(1000) / 6 = 99.66 digits.
  const std::size_t digits = encoder.finish().size();
  CHECK(digits >= 98);  // the last digits may happen to be zeros
  CHECK(digits <= 101);
}

TEST_CASE("a habit is learnt: a hundred equal answers cost about a digit", "[share][coder]") {
  Encoder encoder;
  Odds odds;
  for (int i = 0; i < 100; ++i) encoder.bit(odds, true);
  // The estimator's cost of n equal events is 0.5 log2(n) + 1 bits: 4.3 for a hundred.
  CHECK(encoder.finish().size() <= 1);
}

TEST_CASE("the check digits are those of the published check value", "[share][seal]") {
  // CRC-16 with this polynomial and start gives 0x29B1 for "123456789" (the usual check value of
  // published CRC catalogues, from memory); 0x29B1 = 10673 = 2 * 3844 + 48 * 62 + 9.
  CHECK(check_digits("123456789") == "2m9");
}
