#include "engine/frame/cylinder.h"

#include <cstddef>

#include "engine/base/lasting_texts.h"

namespace hs::frame {
namespace {

constexpr double kHair_kg = 0.1;  // 20 lb are written as 9, 9.07 and 9.1 kg
constexpr Cylinder kSizes[] = {{9.07, 370, 480, 457},
                               {13.61, 370, 635, 610},
                               {18.14, 425, 790, 762},
                               {45.36, 435, 1245, 1219}};

constexpr std::size_t kBays = 20;
constexpr std::string_view kOfBay[] = {"clear width of the gas bay", "clear depth of the gas bay",
                                       "clear height of the gas bay"};
constexpr auto kWords = [] {
  LastingTexts<3 * kBays, 40> words;
  for (const std::string_view way :
       {"clear width of bay ", "clear depth of bay ", "clear height of bay "}) {
    for (std::size_t bay = 1; bay <= kBays; ++bay) words.add(way, bay, " from the left");
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
  return kWords[which * kBays + static_cast<std::size_t>(bay)];
}

}  // namespace hs::frame
