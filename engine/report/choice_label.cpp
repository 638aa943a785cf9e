#include "engine/report/choice_label.h"

#include <algorithm>
#include <string_view>

#include "engine/report/phrases.h"

namespace hs::report {
namespace {

// The words that do not explain themselves; by the ending of the path, so that the mouth's shape
// and the outer mouth's share their row.
struct Label {
  std::string_view key, word, label;
};
constexpr Label kLabels[] = {
    {"kind", "tabletop_gas_small", "Small tabletop, gas"},
    {"kind", "tabletop_gas_large", "Large tabletop, gas"},
    {"kind", "tabletop_multi_fuel", "Tabletop, multi-fuel"},
    {"kind", "masonry_dome_28", "Masonry dome, 28 in"},
    {"kind", "masonry_dome_36", "Masonry dome, 36 in"},
    {"kind", "other", "Another oven"},
    {"build", "adult_a", "Adult, like the survey's men"},
    {"build", "adult_b", "Adult, like the survey's women"},
    {"build", "child", "Child, 3 to 17"},
    {"at", "both", "Oven and dough counter"},
    {"at", "oven", "Oven only"},
    {"at", "prep", "Dough counter only"},
    {"target", "pizza", "The pizza"},
    {"target", "far_crust", "The pizza and its far rim"},
    {"target", "whole_floor", "The oven's floor to the back"},
    {"hem", "none", "As sawn, deburred"},
    {"hem", "closed", "Hemmed flat"},
    {"hem", "open", "Hemmed with room in it"},
    {"glove", "none", "Bare hand"},
    {"glove", "gauntlet", "Dry gauntlet"},
    {"shield", "none", "Nothing"},
    {"shield", "plate", "A metal plate"},
    {"mount", "none", "No fixed lamp"},
    {"mount", "left", "Left of the mouth"},
    {"mount", "right", "Right of the mouth"},
    {"arrangement", "riser", "Oven on a riser"},
    {"arrangement", "two_level", "Two levels"},
};

}  // namespace

std::string choice_label(const config::Field& field, std::size_t index) {
  if (index >= field.choices.size()) return {};
  const std::string_view key = config::key_of(field);
  for (const Label& row : kLabels) {
    if (row.key == key && row.word == field.choices[index]) return std::string(row.label);
  }
  std::string words(field.choices[index]);
  std::replace(words.begin(), words.end(), '_', ' ');
  return capitalised(std::move(words));
}

}  // namespace hs::report
