#pragma once
// What pdf_packed() packed, and the pages of a PDF, as a test reads them.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catch_amalgamated.hpp"

namespace hs::test {

// Reads deflate's fixed codes by RFC 1951's own words, a bit at a time; only what pdf_packed()
// writes: one block.
class Unpacker {
 public:
  explicit Unpacker(std::string_view bytes) : bytes_(bytes) {}

  std::string all() {
    REQUIRE(bytes_.size() > 6);
    const auto head = static_cast<unsigned>(byte(0)) * 256 + byte(1);
    CHECK(head % 31 == 0);       // RFC 1950, 2.2: FCHECK
    CHECK((byte(0) & 15) == 8);  // deflate
    at_ = 16;
    CHECK(bits(1) == 1);
    CHECK(bits(2) == 1);
    std::string out;
    for (;;) {
      const unsigned symbol = literal();
      if (symbol == 256) break;
      if (symbol < 256) {
        out += static_cast<char>(symbol);
        continue;
      }
      const std::size_t length = lengths_[symbol - 257] + bits(length_bits_[symbol - 257]);
      unsigned code = 0;
      for (int i = 0; i < 5; ++i) code = code << 1 | bits(1);
      const std::size_t distance = distances_[code] + bits(distance_bits_[code]);
      REQUIRE(distance <= out.size());
      for (std::size_t i = 0; i < length; ++i) out += out[out.size() - distance];
    }
    at_ = (at_ + 7) / 8 * 8;
    std::uint32_t sum = 0;
    for (int i = 0; i < 4; ++i) sum = sum << 8 | byte(at_ / 8 + static_cast<std::size_t>(i));
    std::uint32_t a = 1, b = 0;
    for (const char c : out) {
      a = (a + static_cast<unsigned char>(c)) % 65521;
      b = (b + a) % 65521;
    }
    CHECK(sum == (b << 16 | a));
    CHECK(at_ / 8 + 4 == bytes_.size());
    return out;
  }

 private:
  unsigned byte(std::size_t i) const { return static_cast<unsigned char>(bytes_[i]); }
  unsigned bits(int many) {
    unsigned value = 0;
    for (int i = 0; i < many; ++i, ++at_) value |= (byte(at_ / 8) >> (at_ % 8) & 1) << i;
    return value;
  }
  // RFC 1951, 3.2.6.
  unsigned literal() {
    unsigned code = 0;
    for (int i = 0; i < 7; ++i) code = code << 1 | bits(1);
    if (code <= 0x17) return 256 + code;
    code = code << 1 | bits(1);
    if (code >= 0x30 && code <= 0xBF) return code - 0x30;
    if (code >= 0xC0 && code <= 0xC7) return 280 + code - 0xC0;
    code = code << 1 | bits(1);
    return 144 + code - 0x190;
  }
  static constexpr std::array<std::size_t, 29> lengths_{3,  4,  5,  6,   7,   8,   9,   10,  11, 13,
                                                        15, 17, 19, 23,  27,  31,  35,  43,  51, 59,
                                                        67, 83, 99, 115, 131, 163, 195, 227, 258};
  static constexpr std::array<int, 29> length_bits_{0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2,
                                                    2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0};
  static constexpr std::array<std::size_t, 30> distances_{
      1,   2,   3,   4,   5,   7,    9,    13,   17,   25,   33,   49,   65,    97,    129,
      193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097, 6145, 8193, 12289, 16385, 24577};
  static constexpr std::array<int, 30> distance_bits_{0, 0, 0,  0,  1,  1,  2,  2,  3,  3,
                                                      4, 4, 5,  5,  6,  6,  7,  7,  8,  8,
                                                      9, 9, 10, 10, 11, 11, 12, 12, 13, 13};
  std::string_view bytes_;
  std::size_t at_ = 0;
};

// What each stream of a PDF of ours draws.
inline std::vector<std::string> pdf_streams(std::string_view pdf) {
  std::vector<std::string> all;
  constexpr std::string_view kLength = "<< /Length ", kBegin = "stream\n";
  for (std::size_t at = pdf.find(kLength); at != pdf.npos; at = pdf.find(kLength, at)) {
    std::size_t length = 0;
    for (at += kLength.size(); pdf[at] >= '0' && pdf[at] <= '9'; ++at) {
      length = 10 * length + static_cast<std::size_t>(pdf[at] - '0');
    }
    const std::size_t begin = pdf.find(kBegin, at);
    REQUIRE(begin != pdf.npos);
    if (pdf.substr(at, begin - at).find("/FlateDecode") != std::string_view::npos) {
      all.push_back(Unpacker(pdf.substr(begin + kBegin.size(), length)).all());
    }
    at = begin + kBegin.size() + length;
  }
  return all;
}

}  // namespace hs::test
