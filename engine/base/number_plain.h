#pragma once
// The first step of reading a number that a person typed: one spelling for each mark.

#include <optional>
#include <string>
#include <string_view>

namespace hs {

// Lower-case ASCII without blanks at its ends: a one-character fraction becomes " 1/2 ",
// superscript and subscript digits around a slash a plain fraction, typographic quotes and two
// apostrophes the foot and inch marks ' and ", dashes and the minus sign '-', odd spaces ' '. A
// degree sign becomes ' ' where it is allowed. nullopt for a character that has no place in a
// number, and for more than 64 bytes.
std::optional<std::string> plain_number(std::string_view text, bool degree_sign);

}  // namespace hs
