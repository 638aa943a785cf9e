#include "engine/share/coder.h"

#include <utility>

namespace hs::share {
namespace {

constexpr unsigned kWindowBits = 48;
constexpr unsigned kDigitBits = 6;
constexpr std::uint64_t kWindow = std::uint64_t{1} << kWindowBits;
constexpr std::uint64_t kSmallest = kWindow >> kDigitBits;

void learn(Odds& odds, bool yes) {
  constexpr std::uint32_t kMost = 1U << 14U;  // far beyond any link; keeps the sum small
  (yes ? odds.yes : odds.no) += 2;
  if (odds.no + odds.yes > kMost) {
    odds.no = (odds.no >> 1U) | 1U;
    odds.yes = (odds.yes >> 1U) | 1U;
  }
}

// Width of the "no" part of a range.
std::uint64_t no_part(const Odds& odds, std::uint64_t range) {
  return range / (odds.no + odds.yes) * odds.no;
}

}  // namespace

void Encoder::carry() {
  for (std::size_t i = digits_.size(); i-- > 0;) {
    digits_[i] = static_cast<std::uint8_t>((digits_[i] + 1U) & 63U);
    if (digits_[i] != 0) return;
  }
}

void Encoder::narrow(std::uint64_t start, std::uint64_t size) {
  low_ += start;
  range_ = size;
  if (low_ >= kWindow) {
    low_ -= kWindow;
    carry();
  }
  while (range_ < kSmallest) {
    digits_.push_back(static_cast<std::uint8_t>(low_ >> (kWindowBits - kDigitBits)));
    low_ = (low_ << kDigitBits) & (kWindow - 1);
    range_ <<= kDigitBits;
  }
}

void Encoder::bit(Odds& odds, bool yes) {
  const std::uint64_t no = no_part(odds, range_);
  yes ? narrow(no, range_ - no) : narrow(0, no);
  learn(odds, yes);
}

void Encoder::below(std::uint64_t value, std::uint64_t n) {
  const std::uint64_t step = range_ / n;
  narrow(value * step, step);
}

std::vector<std::uint8_t> Encoder::finish() {
  // The number in the interval with the most zero digits at its end.
  for (unsigned kept = 0; kept <= kWindowBits; kept += kDigitBits) {
    const std::uint64_t unit = kWindow >> kept;
    const std::uint64_t number = (low_ + unit - 1) / unit * unit;
    if (number >= low_ + range_) continue;
    if (number >= kWindow) carry();
    for (unsigned done = kDigitBits; done <= kept; done += kDigitBits) {
      digits_.push_back(static_cast<std::uint8_t>((number >> (kWindowBits - done)) & 63U));
    }
    break;
  }
  while (!digits_.empty() && digits_.back() == 0) digits_.pop_back();
  return std::exchange(digits_, {});
}

Decoder::Decoder(std::vector<std::uint8_t> digits) : digits_(std::move(digits)) {
  for (unsigned done = 0; done < kWindowBits; done += kDigitBits) {
    code_ = (code_ << kDigitBits) | next();
  }
}

std::uint8_t Decoder::next() { return at_ < digits_.size() ? digits_[at_++] : std::uint8_t{0}; }

void Decoder::narrow(std::uint64_t start, std::uint64_t size) {
  code_ -= start;
  range_ = size;
  while (range_ < kSmallest) {
    code_ = (code_ << kDigitBits) | next();
    range_ <<= kDigitBits;
  }
}

bool Decoder::bit(Odds& odds) {
  const std::uint64_t no = no_part(odds, range_);
  const bool yes = code_ >= no;
  yes ? narrow(no, range_ - no) : narrow(0, no);
  learn(odds, yes);
  return yes;
}

std::uint64_t Decoder::below(std::uint64_t n) {
  const std::uint64_t step = range_ / n;
  std::uint64_t value = code_ / step;
  // The sliver above n * step belongs to no outcome; only damaged digits point there.
  if (value >= n) {
    value = n - 1;
    code_ = value * step;
  }
  narrow(value * step, step);
  return value;
}

}  // namespace hs::share
