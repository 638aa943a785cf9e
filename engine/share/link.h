#pragma once
// A Config as the text after '#' in an address, and back.
//
// A version letter, base64url digits (RFC 4648, section 5), three base-62 digits of a CRC-16. So it
// holds letters, digits, '-' and '_', and ends in a letter or digit, which keeps chat programs from
// cutting it. Fields go by their permanent tags; what equals its default is left out; numbers are
// integers of their quantum inside the field's range. Ranges, defaults, the order of choices and
// every constant of this codec are frozen by the samples in tests/share. New tags, and new words at
// the end of a choice, do not change what older links mean.
//
// Exact both ways: from_link(to_link(c)) == c for each valid c, and from_link refuses any text that
// to_link would not have written (spaces, line breaks and what stands before '#' apart).

#include <cstddef>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/config/config.h"

namespace hs::share {

inline constexpr char kLinkVersion = 'a';
inline constexpr std::size_t kLongestLink = 1900;  // what every browser and chat program carries

// The config must be valid (config::validate finds nothing).
std::string to_link(const config::Config& config);

// Checked as a file is: config::validate has passed; evaluate::check() is the caller's. Every
// single changed character and every cut is noticed.
Result<config::Config> from_link(std::string_view text);

}  // namespace hs::share
