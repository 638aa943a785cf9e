#pragma once
// A number that stands for everything that a part of the scene is made from.

#include <cstddef>
#include <cstdint>
#include <optional>

namespace hs::web::scene {

// FNV-1a over whatever goes in.
struct Digest {
  std::uint64_t value = 1469598103934665603ULL;

  void bytes(const void* data, std::size_t count) {
    const auto* at = static_cast<const unsigned char*>(data);
    for (std::size_t i = 0; i < count; ++i) value = (value ^ at[i]) * 1099511628211ULL;
  }
  template <typename T>
  void add(T number) {
    const double wide = static_cast<double>(number);
    bytes(&wide, sizeof wide);
  }
  void add(const std::optional<double>& number) {
    add(number.has_value() ? 1 : 0);
    add(number.value_or(0));
  }
};

}  // namespace hs::web::scene
