#pragma once
// The events that a link codes, written once for both directions: with an Out the given value is
// written and comes back, with an In the given value is ignored and the read one comes back.

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/quantity.h"
#include "engine/base/text.h"
#include "engine/config/fields.h"
#include "engine/share/coder.h"

namespace hs::share {

struct Out {
  static constexpr bool kReading = false;
  Encoder coder;
  bool bit(Odds& odds, bool yes) {
    coder.bit(odds, yes);
    return yes;
  }
  std::uint64_t below(std::uint64_t value, std::uint64_t n) {
    coder.below(value, n);
    return value;
  }
};

struct In {
  static constexpr bool kReading = true;
  Decoder coder;
  bool bit(Odds& odds, bool) { return coder.bit(odds); }
  std::uint64_t below(std::uint64_t, std::uint64_t n) { return coder.below(n); }
};

// Positive whole numbers, small ones cheap: how many bits in unary, then the bits.
// Source: Elias 1975, IEEE Trans. Inf. Theory 21(2), gamma code (from memory), its unary part
// learnt.
struct Counts {
  static constexpr unsigned kMostBits = 18;
  std::array<Odds, kMostBits> longer{};

  template <typename Coder>
  std::uint64_t code(Coder& coder, std::uint64_t value) {
    unsigned bits = 0;
    while (bits < kMostBits && coder.bit(longer[bits], (value >> (bits + 1)) != 0)) ++bits;
    const std::uint64_t top = std::uint64_t{1} << bits;
    return top + coder.below(value - top, top);
  }
};

// Characters by class, each class learnt from the one before it.
struct Characters {
  enum Class : std::size_t { Lower, Upper, Space, Digit, Mark, Other };
  static constexpr std::size_t kClasses = 6;
  std::array<std::array<Odds, kClasses - 1>, kClasses> is_class{};
  Odds same_block;
  std::uint64_t block = 1;  // of 128 code points; the first is Latin-1's upper half

  static Class class_of(std::uint32_t c) {
    if (c >= 'a' && c <= 'z') return Lower;
    if (c >= 'A' && c <= 'Z') return Upper;
    if (c == ' ') return Space;
    if (c >= '0' && c <= '9') return Digit;
    return c > ' ' && c < 0x7F ? Mark : Other;
  }

  template <typename Coder>
  std::uint32_t code(Coder& coder, Class before, std::uint32_t c) {
    const Class wanted = class_of(c);
    std::size_t got = Lower;
    while (got < Other && !coder.bit(is_class[before][got], wanted == got)) ++got;
    const auto within = [&](std::uint32_t first, std::uint64_t n) {
      return first + static_cast<std::uint32_t>(coder.below(c - first, n));
    };
    switch (got) {
      case Lower:
        return within('a', 26);
      case Upper:
        return within('A', 26);
      case Space:
        return ' ';
      case Digit:
        return within('0', 10);
      case Mark:
        return within('!', 94);
      default:
        return other(coder, c);
    }
  }

  template <typename Coder>
  std::uint32_t other(Coder& coder, std::uint32_t c) {
    constexpr std::uint64_t kBlocks = 0x110000 >> 7;
    if (!coder.bit(same_block, c >> 7U == block)) block = coder.below(c >> 7U, kBlocks);
    return static_cast<std::uint32_t>((block << 7U) + coder.below(c & 127U, 128));
  }
};

// Texts, with those seen before at the price of their number.
struct Texts {
  Counts length;
  Characters characters;
  Odds seen;
  std::vector<std::string> known;

  template <typename Coder>
  std::string code(Coder& coder, std::string_view text) {
    std::size_t index = 0;
    while (index < known.size() && known[index] != text) ++index;
    if (!known.empty() && coder.bit(seen, index < known.size())) {
      return known[static_cast<std::size_t>(coder.below(index, known.size()))];
    }
    std::vector<std::uint32_t> points;
    for (std::size_t at = 0; at < text.size();) {
      const CodePoint point = code_point_at(text, at);
      points.push_back(point.value);
      at += std::max<std::size_t>(point.bytes, 1);
    }
    const std::uint64_t count = length.code(coder, points.size() + 1) - 1;
    // No field takes as many; damaged digits must not cost memory.
    if (Coder::kReading)
      points.assign(static_cast<std::size_t>(std::min<std::uint64_t>(count, 1000)), 0);
    std::string out;
    Characters::Class before = Characters::Space;
    for (const std::uint32_t point : points) {
      const std::uint32_t c = characters.code(coder, before, point);
      append_code_point(out, c);
      before = Characters::class_of(c);
    }
    return out;
  }
};

// Numbers as multiples of 50, 10 or 1 quantum (5 mm, 1 mm, 0.1 mm), the coarsest that fits: people
// measure in whole and half centimetres, inches land anywhere.
struct Numbers {
  Odds coarse, whole;

  template <typename Coder>
  std::int64_t code(Coder& coder, std::int64_t least, std::int64_t most, std::int64_t value) {
    // A narrow range may hold no multiple of a grain: then there is nothing to ask.
    const auto fits = [&](std::int64_t step) {
      return ceil_div(least, step) <= -ceil_div(-most, step);
    };
    std::int64_t grain = 1;
    if (fits(kCoarse) && coder.bit(coarse, value % kCoarse == 0)) {
      grain = kCoarse;
    } else if (fits(kWhole) && coder.bit(whole, value % kWhole == 0)) {
      grain = kWhole;
    }
    const std::int64_t first = ceil_div(least, grain);
    const std::int64_t last = -ceil_div(-most, grain);
    const auto n = static_cast<std::uint64_t>(last - first + 1);
    const auto rank = static_cast<std::uint64_t>(value / grain - first);
    return (first + static_cast<std::int64_t>(coder.below(rank, n))) * grain;
  }

 private:
  static constexpr std::int64_t kCoarse = 50, kWhole = 10;

  static std::int64_t ceil_div(std::int64_t a, std::int64_t b) {
    return a / b + (a % b > 0 ? 1 : 0);
  }
};

// Which tag comes next after `before`: its neighbour, the first of the next ten (where the table
// begins a new group), any other, or none. 0: no more.
struct Tags {
  std::array<Odds, 2> neighbour{};  // by whether the last one was
  Odds end, next_ten;
  Counts distance;
  bool was_neighbour = true;

  template <typename Coder>
  std::uint64_t code(Coder& coder, std::uint64_t before, std::uint64_t tag) {
    was_neighbour = coder.bit(neighbour[was_neighbour ? 1 : 0], tag == before + 1);
    if (was_neighbour) return before + 1;
    if (coder.bit(end, tag == 0)) return 0;
    const std::uint64_t ten = (before / 10 + 1) * 10;
    if (coder.bit(next_ten, tag == ten)) return ten;
    return before + distance.code(coder, tag - before);
  }
};

struct Model {
  Counts cooks, points, stock;
  std::array<Tags, 4> tags{};  // by group
  Counts choice;
  Odds flag;
  Texts texts;
  std::array<Numbers, 12> numbers{};  // by quantity
};

}  // namespace hs::share
