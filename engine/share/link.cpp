#include "engine/share/link.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "engine/base/text.h"
#include "engine/config/fields.h"
#include "engine/config/validate.h"
#include "engine/share/link_model.h"
#include "engine/share/seal.h"

namespace hs::share {
namespace {

using config::Absent;
using config::ChoiceIndex;
using config::Config;
using config::Field;
using config::Group;
using config::Value;

constexpr std::string_view kDigits64 =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
enum class Fault { None, Newer, Damaged };

std::int64_t quanta(const Field& field, double value) {
  return std::llround(value * quanta_per_unit(field.quantity));
}

// The value that a left-out field has.
Value implied_value(const Field& field, std::size_t cook) {
  const Value value = default_value(field);
  const bool name = field.absent == Absent::Derived && std::holds_alternative<std::string>(value);
  return name ? Value{config::default_cook_name(cook)} : value;
}

template <typename T>
T held(const Value& value) {
  const T* there = std::get_if<T>(&value);
  return there == nullptr ? T{} : *there;
}

template <typename Coder>
Value code_choice(Coder& coder, Model& model, const Field& field, const Value& value,
                  Fault& fault) {
  // The default never comes here, so the words are counted without it.
  const Value usual = default_value(field);
  const auto* skipped = std::get_if<ChoiceIndex>(&usual);
  const std::uint64_t index = held<ChoiceIndex>(value).index;
  const bool past = skipped != nullptr && index > skipped->index;
  std::uint64_t got = model.choice.code(coder, (past ? index - 1 : index) + 1) - 1;
  if (skipped != nullptr && got >= skipped->index) ++got;
  if (got >= field.choices.size()) {
    fault = Fault::Newer;
    got = 0;
  }
  return ChoiceIndex{static_cast<std::uint8_t>(got)};
}

template <typename Coder>
Value code_value(Coder& coder, Model& model, const Field& field, const Value& value, Fault& fault) {
  switch (field.quantity) {
    case Quantity::Text:
      return model.texts.code(coder, held<std::string>(value));
    case Quantity::Flag:
      // A flag that is not at its default can only be the other one.
      if (field.absent == Absent::Default) return !held<bool>(default_value(field));
      return coder.bit(model.flag, held<bool>(value));
    case Quantity::Choice:
      return code_choice(coder, model, field, value, fault);
    case Quantity::Length:
    case Quantity::Angle:
    case Quantity::Temperature:
    case Quantity::Mass:
    case Quantity::Years:
    case Quantity::Speed:
    case Quantity::Share:
    case Quantity::Weight:
    case Quantity::Flux:
    case Quantity::Power:
    case Quantity::Money:
    case Quantity::Count:
      break;
  }
  const std::int64_t least = quanta(field, field.min);
  const std::int64_t most = quanta(field, field.max);
  const std::int64_t whole = std::clamp(quanta(field, held<double>(value)), least, most);
  Numbers& numbers = model.numbers[static_cast<std::size_t>(field.quantity)];
  return static_cast<double>(numbers.code(coder, least, most, whole)) /
         quanta_per_unit(field.quantity);
}

// Where a section's tags begin, and what stands there: a field, or in the station a list (the
// survey's points, the stock), which comes whole under the tag of its first field.
struct Stop {
  std::uint64_t tag = 0;
  const Field* field = nullptr;
  Group list = Group::Station;
};
constexpr std::uint64_t kPointsTag = 240, kStockTag = 330;

// The tag before the section's first.
constexpr std::uint64_t tag_before(Group group) {
  switch (group) {
    case Group::Station:
      return 0;
    case Group::Cook:
      return 99;
    case Group::Point:
      return kPointsTag - 1;
    case Group::Stock:
      return kStockTag - 1;
  }
  return 0;
}

std::vector<Stop> stops_of(Group group) {
  std::vector<Stop> stops;
  for (const Field& field : config::fields()) {
    if (field.group == group) stops.push_back({field.tag, &field});
  }
  if (group == Group::Station) {
    stops.push_back({kPointsTag, nullptr, Group::Point});
    stops.push_back({kStockTag, nullptr, Group::Stock});
  }
  std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.tag < b.tag; });
  return stops;
}

bool has_something(const Stop& stop, const Config& config, std::size_t row) {
  if (stop.field == nullptr) return rows_of(config, stop.list) > 0;
  return stop.field->get(config, row) != implied_value(*stop.field, row);
}

template <typename Coder>
Fault code_list(Coder& coder, Model& model, Group group, Config& config);

// One section: the station's fields, or those of one row of a list, in the order of their tags.
template <typename Coder>
Fault code_section(Coder& coder, Model& model, Group group, std::size_t row, Config& config) {
  std::uint64_t before = tag_before(group);
  const std::vector<Stop> stops = stops_of(group);
  Tags& tags = model.tags[static_cast<std::size_t>(group)];
  Fault fault = Fault::None;
  auto next = stops.begin();
  for (;;) {
    Value value;
    if constexpr (!Coder::kReading) {
      next = std::find_if(next, stops.end(),
                          [&](const Stop& stop) { return has_something(stop, config, row); });
    }
    const std::uint64_t tag = tags.code(coder, before, next == stops.end() ? 0 : next->tag);
    if (tag == 0) return fault;
    if constexpr (Coder::kReading) {
      next = std::find_if(stops.begin(), stops.end(),
                          [&](const Stop& stop) { return stop.tag == tag; });
      if (next == stops.end()) return Fault::Newer;
    }
    if (next->field == nullptr) {
      fault = code_list(coder, model, next->list, config);
    } else {
      const Field& field = *next->field;
      if constexpr (!Coder::kReading) value = field.get(config, row);
      value = code_value(coder, model, field, value, fault);
      if (Coder::kReading) field.set(config, row, value);
    }
    if (fault != Fault::None) return fault;
    before = tag;
    ++next;
  }
}

template <typename Coder>
Fault code_list(Coder& coder, Model& model, Group group, Config& config) {
  Counts& counts = group == Group::Point ? model.points : model.stock;
  const std::uint64_t count = counts.code(coder, rows_of(config, group));
  if (count > config::list_of(group)->most) return Fault::Damaged;
  if constexpr (Coder::kReading) set_rows(config, group, static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < rows_of(config, group); ++i) {
    const Fault fault = code_section(coder, model, group, i, config);
    if (fault != Fault::None) return fault;
  }
  return Fault::None;
}

template <typename Coder>
Fault code_config(Coder& coder, Config& config) {
  Model model;
  const std::uint64_t coded = model.cooks.code(coder, config.cooks.size());
  if (coded > config::kMaxCooks) return Fault::Damaged;
  const auto count = static_cast<std::size_t>(coded);
  if constexpr (Coder::kReading) {
    config.cooks.assign(count, config::Cook{});
    for (std::size_t i = 0; i < count; ++i) config.cooks[i].name = config::default_cook_name(i);
  }
  for (std::size_t i = 0; i < count; ++i) {
    const Fault fault = code_section(coder, model, Group::Cook, i, config);
    if (fault != Fault::None) return fault;
  }
  // A trial is made by one of the cooks, so their names are known texts.
  for (const config::Cook& cook : config.cooks) model.texts.known.push_back(cook.name);
  return code_section(coder, model, Group::Station, 0, config);
}

// What a person copied: without an address before '#', without the breaks that mail adds.
std::string bare_text(std::string_view text) {
  const std::size_t hash = text.rfind('#');
  if (hash != std::string_view::npos) text.remove_prefix(hash + 1);
  std::string out;
  for (const char c : text) {
    if (c != ' ' && c != '\t' && c != '\r' && c != '\n') out.push_back(c);
  }
  return out;
}

Problem damaged(std::string_view text) {
  return {"link", "\"" + shortened(text) + "\", which is damaged or cut short,",
          "the whole link as it was copied"};
}

Problem newer(std::string_view text) {
  return {
      "link", "\"" + shortened(text) + "\", made by a newer version,",
      "a link of version " + std::string(1, kLinkVersion) + ", or open it with the newer version"};
}

std::optional<std::vector<std::uint8_t>> digits_of(std::string_view body) {
  std::vector<std::uint8_t> digits;
  for (const char c : body) {
    const std::size_t digit = kDigits64.find(c);
    if (digit == std::string_view::npos) return std::nullopt;
    digits.push_back(static_cast<std::uint8_t>(digit));
  }
  return digits;
}

}  // namespace

std::string to_link(const Config& config) {
  Out out;
  Config written = config;
  code_config(out, written);
  std::string text(1, kLinkVersion);
  for (const std::uint8_t digit : out.coder.finish()) text.push_back(kDigits64[digit]);
  return text + check_digits(text);
}

Result<Config> from_link(std::string_view text) {
  // Four times the longest leaves room for an address and for breaks.
  if (text.size() > 4 * kLongestLink) return damaged(text);
  const std::string bare = bare_text(text);
  if (bare.size() < 1 + kCheckDigits || bare.size() > kLongestLink) return damaged(text);
  const std::string_view coded = std::string_view(bare).substr(0, bare.size() - kCheckDigits);
  if (check_digits(coded) != bare.substr(coded.size())) return damaged(text);
  const bool letter = coded[0] >= 'a' && coded[0] <= 'z';
  if (coded[0] != kLinkVersion) return letter ? newer(text) : damaged(text);
  auto digits = digits_of(coded.substr(1));
  if (!digits) return damaged(text);
  In in{Decoder(*std::move(digits))};
  Config config;
  const Fault fault = code_config(in, config);
  if (fault == Fault::Newer) return newer(text);
  if (fault == Fault::Damaged) return damaged(text);
  std::vector<Problem> problems = config::validate(config);
  if (!problems.empty()) return capped(std::move(problems));
  // Only the one text that to_link writes is a link: a forged one is not half believed.
  if (to_link(config) != bare) return damaged(text);
  return config;
}

}  // namespace hs::share
