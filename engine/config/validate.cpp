#include "engine/config/validate.h"

#include <algorithm>
#include <cmath>

#include "engine/base/text.h"

namespace hs::config {
namespace {

// As a sentence says it; unit_name() is the one that tables show.
std::string spoken_unit(Quantity quantity, Unit unit) {
  switch (quantity) {
    case Quantity::Angle:
      return " degrees";
    case Quantity::Temperature:
      return unit == Unit::Inch ? " degrees Fahrenheit" : " degrees Celsius";
    case Quantity::Flux:
      return " lumens";
    case Quantity::Power:
      return " watts";
    case Quantity::Length:
    case Quantity::Mass:
    case Quantity::Years:
    case Quantity::Speed:
      return " " + std::string(shown_unit(quantity, unit).name);
    case Quantity::Share:
    case Quantity::Weight:
    case Quantity::Money:
    case Quantity::Count:
    case Quantity::Text:
    case Quantity::Flag:
    case Quantity::Choice:
      return "";
  }
  return "";
}

// Both ends are rounded into the range, so that each may be typed as it is shown.
std::string range_text(const Field& field, Unit unit) {
  const ShownUnit shown = shown_unit(field.quantity, unit);
  double low = field.min;
  double high = field.max;
  if (shown.scale != 1) {
    low = std::ceil(shown.from_own(low) * 10) / 10;
    high = std::floor(shown.from_own(high) * 10) / 10;
  }
  return trimmed(low, 2) + " to " + trimmed(high, 2) + spoken_unit(field.quantity, unit);
}

std::string words(std::span<const std::string_view> choices) {
  std::string out;
  for (const std::string_view choice : choices) {
    if (!out.empty()) out += ", ";
    out += choice;
  }
  return out;
}

bool right_type(const Field& field, const Value& value) {
  if (std::holds_alternative<std::monostate>(value)) {
    // Only an optional member is absent by default.
    return std::holds_alternative<std::monostate>(default_value(field));
  }
  switch (field.quantity) {
    case Quantity::Text:
      return std::holds_alternative<std::string>(value);
    case Quantity::Flag:
      return std::holds_alternative<bool>(value);
    case Quantity::Choice:
      return std::holds_alternative<ChoiceIndex>(value);
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
      return std::holds_alternative<double>(value);
  }
  return false;
}

bool in_range(const Field& field, const Value& value) {
  if (const auto* number = std::get_if<double>(&value)) {
    if (!std::isfinite(*number)) return false;
    const double rounded = quantised(field.quantity, *number);
    if (field.quantity == Quantity::Count && rounded != *number) return false;
    return rounded >= field.min && rounded <= field.max;
  }
  if (const auto* choice = std::get_if<ChoiceIndex>(&value)) {
    return choice->index < field.choices.size();
  }
  if (const auto* text = std::get_if<std::string>(&value)) {
    const auto bytes = static_cast<double>(text->size());
    return bytes >= field.min && bytes <= field.max && is_printable(*text) &&
           trimmed_ends(*text).size() == text->size();
  }
  return true;
}

void check_names(const Config& config, std::vector<Problem>& problems) {
  for (std::size_t i = 1; i < config.cooks.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (config.cooks[i].name != config.cooks[j].name) continue;
      problems.push_back({"cooks." + std::to_string(i) + ".name",
                          "\"" + shortened(config.cooks[i].name) + "\", the name of cook " +
                              std::to_string(j + 1) + ",",
                          "a name of their own"});
      break;
    }
  }
}

void check_levels(const Config& config, std::vector<Problem>& problems) {
  const Station& station = config.station;
  if (station.arrangement != Arrangement::OneLevel) return;
  if (!station.counter_height_mm || !station.oven_base_height_mm) return;
  if (*station.counter_height_mm == *station.oven_base_height_mm) return;
  const std::string counter = trimmed(*station.counter_height_mm, 1) + " mm";
  const std::string base = trimmed(*station.oven_base_height_mm, 1) + " mm";
  const std::string why = ", because station.arrangement is one_level";
  problems.push_back({"station.counter_height_mm", counter,
                      "the same as station.oven_base_height_mm (" + base + ")" + why});
  problems.push_back({"station.oven_base_height_mm", base,
                      "the same as station.counter_height_mm (" + counter + ")" + why});
}

void check_trial(const Config& config, std::vector<Problem>& problems) {
  if (!config.trial.cook) return;
  for (const Cook& cook : config.cooks) {
    if (cook.name == *config.trial.cook) return;
  }
  problems.push_back({"trial.at.cook", "\"" + shortened(*config.trial.cook) + "\"",
                      "the name of one of the cooks"});
}

// Feet stand in front of the counters: a reading behind their front edge is of something else.
void check_feet(const Config& config, std::vector<Problem>& problems) {
  const std::vector<SurveyPoint>& points = config.survey.points;
  for (std::size_t i = 0; i < std::min(points.size(), kMaxPoints); ++i) {
    if (points[i].kind != PointKind::Feet || points[i].y_mm < 0) continue;
    problems.push_back({"survey.points." + std::to_string(i) + ".y_mm",
                        trimmed(points[i].y_mm, 1) + " mm",
                        "less than 0, because feet stand in front of the counters' edge"});
  }
}

}  // namespace

std::string allowed_text(const Field& field, Unit unit) {
  std::string out;
  switch (field.quantity) {
    case Quantity::Text:
      out = "text of " + trimmed(field.min, 0) + " to " + trimmed(field.max, 0) +
            " bytes without control characters";
      break;
    case Quantity::Flag:
      out = "true or false";
      break;
    case Quantity::Choice:
      out = "one of " + words(field.choices);
      break;
    case Quantity::Length:
      out = length_range_text(field.min, field.max, unit);
      break;
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
      out = range_text(field, unit);
      break;
    case Quantity::Count:
      out = range_text(field, unit) + ", a whole number";
      break;
  }
  if (field.absent == Absent::Unknown) out += ", or leave it out";
  return out;
}

std::string given_text(const Field& field, const Value& value, Unit unit) {
  if (std::holds_alternative<std::monostate>(value)) return "null";
  if (const auto* text = std::get_if<std::string>(&value)) return "\"" + shortened(*text) + "\"";
  if (const auto* flag = std::get_if<bool>(&value)) return *flag ? "true" : "false";
  if (const auto* choice = std::get_if<ChoiceIndex>(&value)) {
    return "choice " + std::to_string(choice->index);
  }
  const auto* number = std::get_if<double>(&value);
  if (number == nullptr || !std::isfinite(*number)) return "a number that is not finite";
  // Beyond this a number is a slip, and its digits would fill the line.
  if (std::abs(*number) >= 1e9) return "a number beyond 999999999";
  if (field.quantity == Quantity::Length && unit == Unit::Inch) return inches_text(*number);
  const ShownUnit shown = shown_unit(field.quantity, unit);
  return trimmed(shown.from_own(*number), shown.scale != 1 ? 1 : 2) +
         spoken_unit(field.quantity, unit);
}

std::optional<Problem> check_value(const Field& field, const std::string& path, const Value& value,
                                   Unit unit) {
  if (right_type(field, value) && in_range(field, value)) return std::nullopt;
  return Problem{path, given_text(field, value, unit), allowed_text(field, unit)};
}

std::vector<Problem> validate(const Config& config) {
  std::vector<Problem> problems;
  for (const List& list : lists()) {
    const std::size_t count = rows_of(config, list.group);
    if (count >= list.least && count <= list.most) continue;
    const std::string many = " " + std::string(list.item) + "s";
    problems.push_back({std::string(list.path), std::to_string(count) + many,
                        std::to_string(list.least) + " to " + std::to_string(list.most) + many});
  }
  for (const Field& field : fields()) {
    const List* list = list_of(field.group);
    const std::size_t count = rows_of(config, field.group);
    for (std::size_t i = 0; i < (list ? std::min(count, list->most) : count); ++i) {
      if (auto problem = check_value(field, path_of(field, i), field.get(config, i))) {
        problems.push_back(*std::move(problem));
      }
    }
  }
  check_names(config, problems);
  check_levels(config, problems);
  check_trial(config, problems);
  check_feet(config, problems);
  return problems;
}

bool is_stand_in(std::string_view name) {
  if (name == kTallest || name == kShortest) return true;
  for (std::size_t i = 0; i < kMaxCooks; ++i) {
    if (name == default_cook_name(i)) return true;
  }
  return false;
}

std::string free_cook_name(const Config& config, std::size_t index) {
  for (std::size_t number = index;; ++number) {
    std::string name = default_cook_name(number);
    const bool taken = std::any_of(config.cooks.begin(), config.cooks.end(),
                                   [&](const Cook& cook) { return cook.name == name; });
    if (!taken) return name;
  }
}

}  // namespace hs::config
