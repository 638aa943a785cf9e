#include "engine/share/seal.h"

#include <cstdint>

namespace hs::share {
namespace {

constexpr std::string_view kDigits62 =
    "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";

std::uint32_t crc16(std::string_view text) {
  std::uint32_t crc = 0xFFFF;
  for (const char c : text) {
    crc ^= static_cast<std::uint32_t>(static_cast<unsigned char>(c)) << 8U;
    for (int i = 0; i < 8; ++i) {
      const bool carry = (crc & 0x8000U) != 0;
      crc = (crc << 1U) & 0xFFFFU;
      if (carry) crc ^= 0x1021U;
    }
  }
  return crc;
}

}  // namespace

std::string check_digits(std::string_view text) {
  std::uint32_t rest = crc16(text);
  std::string out(kCheckDigits, '0');
  for (std::size_t i = kCheckDigits; i-- > 0; rest /= 62) out[i] = kDigits62[rest % 62];
  return out;
}

}  // namespace hs::share
