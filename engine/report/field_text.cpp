#include "engine/report/field_text.h"

#include "engine/report/choice_label.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

std::string number_words(Quantity quantity, double value, Units units) {
  switch (quantity) {
    case Quantity::Length:
      return plain_length(value, units, true);
    case Quantity::Angle:
      return trimmed(value, 1) + "\u00B0";
    case Quantity::Temperature:
      return temperature(value, units, 1);
    case Quantity::Mass: {
      const ShownUnit unit = shown_unit(quantity, unit_of(units));
      return trimmed(unit.from_own(value), units == Units::Inch ? 0 : 1) + " " +
             std::string(unit.name);
    }
    case Quantity::Years:
      return trimmed(value, 1) + (value == 1 ? " year" : " years");
    case Quantity::Speed:
      return speed(value, units);
    case Quantity::Share:
      return fixed(value * 100, 0) + " %";
    case Quantity::Weight:
      return trimmed(value, 2);
    case Quantity::Flux:
      return fixed(value, 0) + " lm";
    case Quantity::Power:
      return fixed(value, 0) + " W";
    case Quantity::Money:
      return fixed(value, 2);
    case Quantity::Count:
      return fixed(value, 0);
    case Quantity::Text:
    case Quantity::Flag:
    case Quantity::Choice:
      break;
  }
  return {};
}

std::string absent_words(const config::Field& field, const config::Config& config,
                         std::size_t cook) {
  if (field.path == "cooks[].at") {
    return choice_label(field, static_cast<std::size_t>(config::place_of(config.cooks[cook])));
  }
  if (field.path == "station.counter_height_mm" || field.path == "station.oven_base_height_mm") {
    return "the recommended one";
  }
  if (field.path.starts_with("oven.outer_mouth.")) return "the mouth's own";
  if (field.path.starts_with("light.head.")) return "the best place found";
  if (field.path.starts_with("trial.at.")) return "as in use";
  if (field.path.starts_with("cooks[].")) return "not given";
  return "not known";
}

}  // namespace

std::string field_text(const config::Field& field, const config::Config& config, std::size_t cook,
                       Units units) {
  const config::Value value = field.get(config, cook);
  if (const double* number = std::get_if<double>(&value)) {
    return number_words(field.quantity, *number, units);
  }
  if (const bool* flag = std::get_if<bool>(&value)) return *flag ? "yes" : "no";
  if (const std::string* text = std::get_if<std::string>(&value)) return *text;
  if (const config::ChoiceIndex* choice = std::get_if<config::ChoiceIndex>(&value)) {
    return choice_label(field, choice->index);
  }
  return absent_words(field, config, cook);
}

}  // namespace hs::report
