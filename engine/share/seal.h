#pragma once
// The check digits at a link's end.

#include <cstddef>
#include <string>
#include <string_view>

namespace hs::share {

inline constexpr std::size_t kCheckDigits = 3;  // 62^3 > 2^16

// CRC-16 with polynomial x^16 + x^12 + x^5 + 1, start 0xFFFF, most significant bit first, as three
// digits of 0-9, A-Z, a-z. Every change within 16 neighbouring bits changes it, so every single
// character and every swap of two neighbours. Source: ITU-T V.41 for the polynomial (from memory).
std::string check_digits(std::string_view text);

}  // namespace hs::share
