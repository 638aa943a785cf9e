#include "engine/report/pdf_packed.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace hs::report {
namespace {

// Lengths and distances of what is repeated: the first of each code and how many bits follow it
// (RFC 1951, 3.2.5).
struct Range {
  std::uint16_t first;
  std::uint8_t bits;
};
constexpr Range kLengths[] = {
    {3, 0},  {4, 0},  {5, 0},  {6, 0},   {7, 0},   {8, 0},   {9, 0},   {10, 0},  {11, 1}, {13, 1},
    {15, 1}, {17, 1}, {19, 2}, {23, 2},  {27, 2},  {31, 2},  {35, 3},  {43, 3},  {51, 3}, {59, 3},
    {67, 4}, {83, 4}, {99, 4}, {115, 4}, {131, 5}, {163, 5}, {195, 5}, {227, 5}, {258, 0}};
constexpr Range kDistances[] = {{1, 0},     {2, 0},     {3, 0},      {4, 0},      {5, 1},
                                {7, 1},     {9, 2},     {13, 2},     {17, 3},     {25, 3},
                                {33, 4},    {49, 4},    {65, 5},     {97, 5},     {129, 6},
                                {193, 6},   {257, 7},   {385, 7},    {513, 8},    {769, 8},
                                {1025, 9},  {1537, 9},  {2049, 10},  {3073, 10},  {4097, 11},
                                {6145, 11}, {8193, 12}, {12289, 12}, {16385, 13}, {24577, 13}};
constexpr std::size_t kShortest = 3, kLongest = 258, kFarthest = 32768;

template <std::size_t N>
std::size_t code_of(const Range (&ranges)[N], std::size_t value) {
  std::size_t code = N - 1;
  while (ranges[code].first > value) --code;
  return code;
}

class Bits {
 public:
  // Numbers: lowest bit first.
  void put(std::uint32_t value, int bits) {
    held_ |= value << count_;
    count_ += bits;
    while (count_ >= 8) {
      out_ += static_cast<char>(held_ & 0xFF);
      held_ >>= 8;
      count_ -= 8;
    }
  }
  // Codes: highest bit first.
  void put_code(std::uint32_t code, int bits) {
    std::uint32_t turned = 0;
    for (int i = 0; i < bits; ++i) turned |= ((code >> i) & 1) << (bits - 1 - i);
    put(turned, bits);
  }
  // The fixed codes (3.2.6).
  void literal(std::size_t value) {
    const auto v = static_cast<std::uint32_t>(value);
    if (v < 144) {
      put_code(0x30 + v, 8);
    } else if (v < 256) {
      put_code(0x190 + v - 144, 9);
    } else if (v < 280) {
      put_code(v - 256, 7);
    } else {
      put_code(0xC0 + v - 280, 8);
    }
  }
  void repeat(std::size_t length, std::size_t distance) {
    const std::size_t l = code_of(kLengths, length);
    literal(257 + l);
    put(static_cast<std::uint32_t>(length - kLengths[l].first), kLengths[l].bits);
    const std::size_t d = code_of(kDistances, distance);
    put_code(static_cast<std::uint32_t>(d), 5);
    put(static_cast<std::uint32_t>(distance - kDistances[d].first), kDistances[d].bits);
  }
  std::string take() {
    if (count_ > 0) put(0, 8 - count_);
    return std::move(out_);
  }

 private:
  std::string out_;
  std::uint32_t held_ = 0;
  int count_ = 0;
};

// Where three bytes were seen last, and before that: chains through the last 32 KB.
class Seen {
 public:
  explicit Seen(std::string_view bytes) : bytes_(bytes), before_(bytes.size(), kNone) {
    last_.fill(kNone);
  }
  void add(std::size_t at) {
    if (at + kShortest > bytes_.size()) return;
    std::uint32_t& last = last_[hash(at)];
    before_[at] = last;
    last = static_cast<std::uint32_t>(at);
  }
  // The longest stretch that begins here and was there before; the nearest of equal ones.
  std::size_t longest(std::size_t at, std::size_t& distance) const {
    if (at + kShortest > bytes_.size()) return 0;
    const std::size_t most = std::min(kLongest, bytes_.size() - at);
    std::size_t best = 0;
    std::uint32_t from = last_[hash(at)];
    for (int tries = 0; tries < kTries && from != kNone && at - from <= kFarthest; ++tries) {
      std::size_t length = 0;
      while (length < most && bytes_[from + length] == bytes_[at + length]) ++length;
      if (length > best) {
        best = length;
        distance = at - from;
        if (best == most) break;
      }
      from = before_[from];
    }
    return best >= kShortest ? best : 0;
  }

 private:
  static constexpr std::uint32_t kNone = 0xFFFFFFFF;
  static constexpr int kTries = 48;
  std::size_t hash(std::size_t at) const {
    const auto byte = [&](std::size_t i) {
      return static_cast<std::uint32_t>(static_cast<unsigned char>(bytes_[at + i]));
    };
    return ((byte(0) << 10) ^ (byte(1) << 5) ^ byte(2)) & (kHashes - 1);
  }
  static constexpr std::size_t kHashes = 1 << 15;

  std::string_view bytes_;
  std::vector<std::uint32_t> before_;
  std::array<std::uint32_t, kHashes> last_{};
};

// RFC 1950, 8.2.
std::uint32_t adler32(std::string_view bytes) {
  constexpr std::uint32_t kPrime = 65521;
  std::uint32_t a = 1, b = 0;
  for (const char c : bytes) {
    a = (a + static_cast<unsigned char>(c)) % kPrime;
    b = (b + a) % kPrime;
  }
  return b << 16 | a;
}

}  // namespace

std::string pdf_packed(std::string_view bytes) {
  Bits bits;
  bits.put(1, 1);          // the last block
  bits.put(1, 2);          // with the fixed codes
  std::vector<Seen> held;  // some 130 KB: not on the stack
  held.push_back(Seen(bytes));
  Seen& seen = held.front();
  for (std::size_t at = 0; at < bytes.size();) {
    std::size_t distance = 0;
    const std::size_t length = seen.longest(at, distance);
    if (length == 0) {
      bits.literal(static_cast<unsigned char>(bytes[at]));
      seen.add(at++);
      continue;
    }
    bits.repeat(length, distance);
    for (std::size_t i = 0; i < length; ++i) seen.add(at++);
  }
  bits.literal(256);             // the end
  std::string out = "\x78\x01";  // deflate, 32 KB; FCHECK makes it a multiple of 31
  out += bits.take();
  const std::uint32_t sum = adler32(bytes);
  for (const int shift : {24, 16, 8, 0}) out += static_cast<char>(sum >> shift & 0xFF);
  return out;
}

}  // namespace hs::report
