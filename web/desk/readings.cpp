#include "web/desk/readings.h"

#include <cstddef>
#include <optional>

#include "engine/base/number_text.h"

namespace hs::web {
namespace {

constexpr std::size_t kMost = 3000;

}  // namespace

std::vector<measure::Gravity> readings(std::string_view text) {
  std::vector<double> numbers;
  while (!text.empty()) {
    const std::string_view word = text.substr(0, text.find(' '));
    text.remove_prefix(word.size() < text.size() ? word.size() + 1 : word.size());
    const std::optional<double> number = parse_decimal(word);
    if (!number || numbers.size() >= 3 * kMost) return {};
    numbers.push_back(*number);
  }
  if (numbers.size() % 3 != 0) return {};
  std::vector<measure::Gravity> all;
  for (std::size_t i = 0; i < numbers.size(); i += 3) {
    all.push_back({numbers[i], numbers[i + 1], numbers[i + 2]});
  }
  return all;
}

}  // namespace hs::web
