#pragma once
// Texts with a number in them that last as long as the program, made when it is compiled: a
// finding's place is a literal, and "point 12" is one of them.

#include <array>
#include <cstddef>
#include <string_view>

namespace hs {

// At most `Most` texts of at most `Longest` letters. One too many or too long does not compile
// where the object is constexpr.
template <std::size_t Most, std::size_t Longest>
class LastingTexts {
 public:
  // Number 1 to 99, in decimal; 0: none between the two.
  constexpr void add(std::string_view before, std::size_t number, std::string_view after) {
    std::size_t& size = sizes_[count_];
    auto& text = texts_[count_++];
    for (const char c : before) text[size++] = c;
    if (number >= 10) text[size++] = static_cast<char>('0' + number / 10);
    if (number > 0) text[size++] = static_cast<char>('0' + number % 10);
    for (const char c : after) text[size++] = c;
  }

  constexpr std::size_t count() const { return count_; }
  constexpr std::string_view operator[](std::size_t i) const {
    return {texts_[i].data(), sizes_[i]};
  }

 private:
  std::array<std::array<char, Longest>, Most> texts_{};
  std::array<std::size_t, Most> sizes_{};
  std::size_t count_ = 0;
};

}  // namespace hs
