#pragma once
// Every published source, and every ground of our own, that a number of the engine rests on.

#include <cstdint>
#include <span>
#include <string_view>

namespace hs::rules {

// How a figure is known, from best to weakest.
enum class Basis : std::uint8_t {
  Seen,            // read in the source or in a public copy of it
  SecondHand,      // read in a text that quotes the source
  Memory,          // recalled, not found in a stored text
  CommonPractice,  // what the trade does; no source
  Computed,        // plain geometry or arithmetic on the household's own numbers
  Judgement,       // ours, or the household's own choice
};

constexpr std::string_view basis_name(Basis b) {
  switch (b) {
    case Basis::Seen:
      return "seen";
    case Basis::SecondHand:
      return "second_hand";
    case Basis::Memory:
      return "memory";
    case Basis::CommonPractice:
      return "common_practice";
    case Basis::Computed:
      return "computed";
    case Basis::Judgement:
      return "judgement";
  }
  return "";
}

// The same in words that follow a number: "read second-hand".
constexpr std::string_view basis_words(Basis b) {
  switch (b) {
    case Basis::Seen:
      return "read in the source";
    case Basis::SecondHand:
      return "quoted second-hand; the source itself was not read";
    case Basis::Memory:
      return "from memory, not confirmed";
    case Basis::CommonPractice:
      return "common practice, no source";
    case Basis::Computed:
      return "computed";
    case Basis::Judgement:
      return "our judgement";
  }
  return "";
}

struct Source {
  std::string_view id;
  std::string_view author;  // person or body
  std::string_view title;
  std::string_view edition;  // edition or year; empty: none or not known
  Basis basis;               // the best that any figure from it has
  std::string_view note;     // what was read and what was not; may be empty
};

std::span<const Source> sources();

// nullptr when there is none.
const Source* find_source(std::string_view id);

}  // namespace hs::rules
