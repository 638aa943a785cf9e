#pragma once
// Random valid configs over the whole field table, so that a new field is tested as soon as it has
// a row. Valid means config::validate(); the oven need not be one that can be built.

#include <algorithm>
#include <cmath>
#include <string>

#include "engine/base/number_text.h"
#include "engine/base/text.h"
#include "engine/config/config.h"
#include "engine/config/fields.h"
#include "tests/support/random.h"

namespace hs::test {

// Text of at most `most` bytes in one of a few scripts, without blanks at its ends.
inline std::string random_text(Random& random, std::size_t least, std::size_t most) {
  constexpr std::uint32_t kFirst[] = {'a', 'A', '!', 0xC0, 0x400, 0x4E00, 0x1F300};
  constexpr int kCount[] = {26, 26, 90, 200, 250, 2000, 200};
  const auto target =
      least + static_cast<std::size_t>(random.below(static_cast<int>(most - least) + 1));
  const int script = random.below(8);  // 7: all mixed
  std::string out;
  for (;;) {
    const auto from = static_cast<std::size_t>(script < 7 ? script : random.below(7));
    std::string next;
    append_code_point(next, kFirst[from] + static_cast<std::uint32_t>(random.below(kCount[from])));
    if (random.one_in(6)) next = " " + next;
    if (out.size() + next.size() > target) break;
    out += next;
  }
  out = std::string(trimmed_ends(out));
  return out.size() < least ? std::string(std::max<std::size_t>(least, 1), 'x') : out;
}

// A value anywhere in the field's range: whole steps of 5, of 1, or of one quantum.
inline double random_number(Random& random, const config::Field& field) {
  const int per_unit = quanta_per_unit(field.quantity);
  const auto least = std::llround(field.min * per_unit);
  const auto most = std::llround(field.max * per_unit);
  const int grains[] = {50, 10, 1};
  const int grain = grains[random.below(3)];
  const auto value = least + random.below(static_cast<int>(most - least) + 1);
  const auto rounded = std::clamp<long long>(value / grain * grain, least, most);
  return static_cast<double>(rounded) / per_unit;
}

inline config::Value random_value(Random& random, const config::Field& field) {
  switch (field.quantity) {
    case Quantity::Text:
      return random_text(random, static_cast<std::size_t>(field.min),
                         static_cast<std::size_t>(field.max));
    case Quantity::Flag:
      return random.one_in(2);
    case Quantity::Choice:
      return config::ChoiceIndex{
          static_cast<std::uint8_t>(random.below(static_cast<int>(field.choices.size())))};
    default:
      return random_number(random, field);
  }
}

// What single fields cannot see: unique names, one level at one height, a trial by someone here,
// pieces that can be measured.
inline void mend(Random& random, config::Config& config) {
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (config.cooks[j].name == config.cooks[i].name) {
        config.cooks[i].name = "Nobody " + std::to_string(i);
      }
    }
  }
  if (!config.frame.as_built.empty()) {
    config.frame.as_built = "base=" + trimmed(90 + 0.1 * random.below(600), 1);
  }
  if (!config.plan.start.empty())
    config.plan.start = "2027-04-0" + std::to_string(1 + random.below(9));
  if (!config.plan.wet_days.empty()) config.plan.wet_days = "2027-04-06 2027-04-08";
  if (!config.plan.off_days.empty()) config.plan.off_days = "2027-05-01";
  config::Station& station = config.station;
  if (station.arrangement == config::Arrangement::OneLevel && station.counter_height_mm) {
    if (station.oven_base_height_mm) station.oven_base_height_mm = station.counter_height_mm;
  }
  for (config::SurveyPoint& point : config.survey.points) {
    if (point.kind == config::PointKind::Feet && point.y_mm >= 0)
      point.y_mm = -0.1 - point.y_mm / 4;
    point.y_mm = quantised(Quantity::Length, point.y_mm);
  }
  if (config.trial.cook) {
    config.trial.cook =
        config.cooks[static_cast<std::size_t>(random.below(static_cast<int>(config.cooks.size())))]
            .name;
  }
}

// Each field is set with a chance drawn once for the whole config, from hardly any to all.
inline config::Config random_config(Random& random) {
  config::Config config;
  config.cooks.assign(1 + static_cast<std::size_t>(random.below(config::kMaxCooks)),
                      config::Cook{});
  constexpr int kOneIn[] = {20, 4, 2, 1};
  const int one_in = kOneIn[random.below(4)];
  if (random.one_in(3)) {
    config.survey.points.resize(static_cast<std::size_t>(random.below(config::kMaxPoints + 1)));
  }
  if (random.one_in(3)) {
    config.stock.resize(static_cast<std::size_t>(random.below(config::kMaxStock + 1)));
  }
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    config.cooks[i].name = config::default_cook_name(i);
  }
  for (const config::Field& field : config::fields()) {
    const std::size_t count = config::rows_of(config, field.group);
    for (std::size_t i = 0; i < count; ++i) {
      if (random.one_in(one_in)) field.set(config, i, random_value(random, field));
    }
  }
  mend(random, config);
  return config;
}

// The fullest one: every field of every cook and of the station away from its default, numbers with
// a tenth, four-letter names, a short title.
// Readings of the ground are a list of their own.
inline config::Config fullest_config(Random& random, std::size_t cooks) {
  config::Config config;
  config.cooks.assign(cooks, config::Cook{});
  constexpr const char* kNames[] = {"Anna", "Bert", "Carl", "Dora", "Emil", "Fred",
                                    "Gina", "Hugo", "Ines", "Jane", "Karl", "Lena"};
  for (const config::Field& field : config::fields()) {
    const std::size_t count = config::rows_of(config, field.group);
    for (std::size_t i = 0; i < count; ++i) {
      const config::Value usual = config::default_value(field);
      config::Value value = usual;
      while (value == usual) {
        if (field.quantity == Quantity::Text) {
          value = std::string(field.group == config::Group::Cook ? kNames[i] : "Patio");
        } else if (is_number(field.quantity)) {
          const int per_unit = quanta_per_unit(field.quantity);
          const auto least = std::llround(field.min * per_unit);
          const auto most = std::llround(field.max * per_unit);
          auto whole = least + random.below(static_cast<int>(most - least));
          if (whole % 5 == 0) ++whole;
          value = static_cast<double>(whole) / per_unit;
        } else {
          value = random_value(random, field);
        }
      }
      field.set(config, i, value);
    }
  }
  mend(random, config);
  return config;
}

}  // namespace hs::test
