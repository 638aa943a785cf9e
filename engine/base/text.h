#pragma once
// Text that came from outside: is it UTF-8, may it be shown, how is it shortened.
//
// Text inside the engine is always valid UTF-8 without control characters, so that it fits on one
// line, in JSON, in HTML and in a drawing without a second thought.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace hs {

// The code point that starts at `at`, and how many bytes it takes. bytes 0: not valid UTF-8 there
// (truncated, overlong, a surrogate or beyond U+10FFFF).
struct CodePoint {
  std::uint32_t value = 0;
  std::size_t bytes = 0;
};
CodePoint code_point_at(std::string_view text, std::size_t at);

// Appends a code point's UTF-8 bytes. U+FFFD for what no code point may be.
void append_code_point(std::string& text, std::uint32_t value);

bool is_utf8(std::string_view text);

// Characters that break a line, hide, or turn the reading direction of what follows: C0 and C1
// controls, line and paragraph separators, direction marks, the byte order mark.
bool is_control(std::uint32_t code_point);

// Valid UTF-8 without control characters.
bool is_printable(std::string_view text);

// Without spaces, tabs and line breaks at either end.
std::string_view trimmed_ends(std::string_view text);

// At most `most` code points of `text`, for a message: controls left out, bytes that are not UTF-8
// shown as '?', "..." at the end where something was cut. Always printable.
std::string shortened(std::string_view text, std::size_t most = 40);

// Number of single-character insertions, deletions and replacements between two short ASCII words;
// counts bytes. For "did you mean".
std::size_t edit_distance(std::string_view a, std::string_view b);

}  // namespace hs
