#pragma once
// A table that is written down as constexpr rows and linked with all its texts as one.
//
// A std::string_view in a linked table is an address and a length, eight bytes that no download
// compresses well (measured: 4 KB of the page for all tables). Here the texts stand one after
// another, each with a zero behind it, and the rows are filled from them when first asked for.

#include <array>
#include <cstddef>
#include <string_view>
#include <type_traits>

namespace hs {

// The text at `at`, which then stands behind its zero.
inline std::string_view take_text(const char*& at) {
  const std::string_view text(at);
  at += text.size() + 1;
  return text;
}

// `Rows`: a constexpr std::array; `Texts`: its rows' members of type std::string_view, all of them.
// No text may hold a zero.
template <bool Later, const auto& Rows, auto... Texts>
class TableOfTexts {
  static constexpr std::size_t kCount = Rows.size();
  using Row = std::remove_cvref_t<decltype(Rows[0])>;

 public:
  static const std::array<Row, kCount>& rows() {
    static const std::array<Row, kCount> all = filled();
    return all;
  }

 private:
  static constexpr std::string_view kMark = Later ? "texts that come later: 0000000" : "";
  static constexpr std::size_t kHead = Later ? kMark.size() + 1 : 0;

  static constexpr std::size_t size_of_all() {
    std::size_t size = kHead;
    for (const Row& row : Rows) size += (((row.*Texts).size() + 1) + ...);
    return size;
  }

  static constexpr auto joined() {
    std::array<char, size_of_all()> all{};
    std::size_t at = 0;
    const auto put = [&](std::string_view text) {
      for (const char c : text) all[at++] = c;
      ++at;
    };
    if (Later) {
      put(kMark);
      // The size stands in the mark's noughts.
      for (std::size_t rest = all.size(), i = kMark.size(); rest > 0; rest /= 10) {
        all[--i] = static_cast<char>('0' + rest % 10);
      }
    }
    for (const Row& row : Rows) (put(row.*Texts), ...);
    return all;
  }

  static constexpr auto without_texts() {
    std::array<Row, kCount> all = Rows;
    for (Row& row : all) ((row.*Texts = {}), ...);
    return all;
  }

  static std::array<Row, kCount> filled() {
    static constexpr auto kTexts = joined();
    static constexpr auto kRest = without_texts();
    std::array<Row, kCount> all = kRest;
    const char* at = kTexts.data();
    if (Later) take_text(at);
    for (Row& row : all) ((row.*Texts = take_text(at)), ...);
    return all;
  }
};

template <const auto& Rows, auto... Texts>
using PackedTable = TableOfTexts<false, Rows, Texts...>;
template <const auto& Rows, auto... Texts>
using LaterTable = TableOfTexts<true, Rows, Texts...>;

}  // namespace hs
