#include "engine/frame/cylinder.h"

#include <array>
#include <cstddef>

namespace hs::frame {
namespace {

constexpr double kHair_kg = 0.1;  // 20 lb are written as 9, 9.07 and 9.1 kg
constexpr Cylinder kSizes[] = {{9.07, 370, 480, 457},
                               {13.61, 370, 635, 610},
                               {18.14, 425, 790, 762},
                               {45.36, 435, 1245, 1219}};

constexpr std::size_t kBays = 20, kLongest = 40;
struct Words {
  std::array<std::array<char, kLongest>, 3 * kBays> text{};
  std::array<std::size_t, 3 * kBays> size{};
};
constexpr std::string_view kClear[] = {"clear width", "clear depth", "clear height"};
constexpr std::string_view kOfBay[] = {"clear width of the gas bay", "clear depth of the gas bay",
                                       "clear height of the gas bay"};
constexpr Words kWords = [] {
  Words words;
  for (std::size_t way = 0; way < 3; ++way) {
    for (std::size_t bay = 1; bay <= kBays; ++bay) {
      const std::size_t at = way * kBays + bay - 1;
      std::size_t& size = words.size[at];
      const auto add = [&](std::string_view part) {
        for (const char c : part) words.text[at][size++] = c;
      };
      add(kClear[way]);
      add(" of bay ");
      if (bay >= 10) words.text[at][size++] = static_cast<char>('0' + bay / 10);
      words.text[at][size++] = static_cast<char>('0' + bay % 10);
      add(" from the left");
    }
  }
  return words;
}();

}  // namespace

std::optional<Cylinder> cylinder_for(double gas_kg) {
  for (const Cylinder& one : kSizes) {
    if (gas_kg <= one.holds_kg + kHair_kg) return one;
  }
  return {};
}

std::optional<Cylinder> cylinder_of(const config::Config& config) {
  return cylinder_for(config.site.cylinder_kg.value_or(kUsualGas_kg));
}

std::string_view clear_words(Way way, int bay) {
  const auto which = static_cast<std::size_t>(way);
  if (bay < 0 || bay >= static_cast<int>(kBays)) return kOfBay[which];
  const std::size_t at = which * kBays + static_cast<std::size_t>(bay);
  return {kWords.text[at].data(), kWords.size[at]};
}

}  // namespace hs::frame
