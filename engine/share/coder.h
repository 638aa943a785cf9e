#pragma once
// An arithmetic coder over base-64 digits, in integers only, so that every machine writes the same
// digits. Events cost -log2 of their probability; odds are learnt while coding.
//
// State: an interval [low, low + range) of a 48-bit window; a digit of 6 bits leaves at the top
// once range is below 2^42. A carry out of the window runs back through the digits already written.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace hs::share {

// How often a yes-or-no event came out each way, one half before the first (Krichevsky and
// Trofimov, 1981: the add-half estimator; from memory). Twice the counts, to stay with integers.
struct Odds {
  std::uint32_t no = 1;
  std::uint32_t yes = 1;
};

// Largest n for below(n).
inline constexpr std::uint64_t kMostOutcomes = std::uint64_t{1} << 24U;

class Encoder {
 public:
  void bit(Odds& odds, bool yes);
  // One of n equally likely outcomes, 0 <= value < n <= kMostOutcomes.
  void below(std::uint64_t value, std::uint64_t n);
  // The shortest digits that decode to what was coded, without zeros at the end.
  std::vector<std::uint8_t> finish();

 private:
  void narrow(std::uint64_t start, std::uint64_t size);
  void carry();

  std::uint64_t low_ = 0;
  std::uint64_t range_ = std::uint64_t{1} << 48U;
  std::vector<std::uint8_t> digits_;
};

// Decodes whatever digits it gets; zeros follow the last one.
class Decoder {
 public:
  explicit Decoder(std::vector<std::uint8_t> digits);
  bool bit(Odds& odds);
  std::uint64_t below(std::uint64_t n);

 private:
  void narrow(std::uint64_t start, std::uint64_t size);
  std::uint8_t next();

  std::vector<std::uint8_t> digits_;
  std::size_t at_ = 0;
  std::uint64_t code_ = 0;  // distance of the coded number from the interval's low end
  std::uint64_t range_ = std::uint64_t{1} << 48U;
};

}  // namespace hs::share
