#include "web/desk/page_fields.h"

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/schema.h"
#include "engine/report/choice_label.h"
#include "engine/report/field_text.h"

namespace hs::web {
namespace {

std::string_view absent_word(config::Absent absent) {
  switch (absent) {
    case config::Absent::Default:
      return "default";
    case config::Absent::Derived:
      return "derived";
    case config::Absent::Unknown:
      return "unknown";
  }
  return "";
}

std::string number_text(const config::Field& field, double value, report::Units units) {
  if (field.quantity == Quantity::Length && units == report::Units::Inch) {
    const std::string text = inches_text(value);
    return text.substr(0, text.rfind(' '));
  }
  const ShownUnit shown = shown_unit(field.quantity, report::unit_of(units));
  // A tenth of a degree Fahrenheit, a pound or a mile an hour is finer than what is kept.
  return trimmed(shown.from_own(value), shown.scale != 1 ? 1 : 2);
}

void write_value(JsonWriter& json, const config::Field& field, const config::Value& value,
                 report::Units units) {
  if (const double* number = std::get_if<double>(&value)) {
    json.string(number_text(field, *number, units));
  } else if (const bool* flag = std::get_if<bool>(&value)) {
    json.string(*flag ? "true" : "false");
  } else if (const std::string* text = std::get_if<std::string>(&value)) {
    json.string(*text);
  } else if (const config::ChoiceIndex* choice = std::get_if<config::ChoiceIndex>(&value)) {
    json.string(field.choices[choice->index]);
  } else {
    json.null();
  }
}

void write_number(JsonWriter& json, std::string_view key, const config::Field& field,
                  double value) {
  json.key(key);
  if (is_number(field.quantity)) {
    json.number(trimmed(value, 2));
  } else {
    json.null();
  }
}

void write_text(JsonWriter& json, std::string_view key, std::string_view text) {
  json.key(key);
  json.string(text);
}

void write_field(JsonWriter& json, const config::Field& field, const config::Config& config,
                 report::Units units) {
  json.begin_object();
  write_text(json, "path", field.path);
  write_text(json, "label", field.label);
  write_text(json, "question", config::help_of(field).question);
  write_text(json, "measure", config::help_of(field).measure);
  write_text(json, "kind", config::quantity_name(field.quantity));
  const ShownUnit shown = shown_unit(field.quantity, report::unit_of(units));
  write_text(json, "unit", shown.name);
  // The field's own number is shown * scale + offset.
  json.key("scale");
  json.number(trimmed(shown.scale, 6));
  json.key("offset");
  json.number(trimmed(shown.offset, 6));
  write_text(json, "absent", absent_word(field.absent));
  write_number(json, "min", field, field.min);
  write_number(json, "max", field, field.max);
  write_number(json, "step", field, field.step);
  json.key("choices");
  json.begin_list();
  for (std::size_t i = 0; i < field.choices.size(); ++i) {
    json.begin_object();
    write_text(json, "value", field.choices[i]);
    write_text(json, "label", report::choice_label(field, i));
    json.end_object();
  }
  json.end_list();
  json.key("values");
  json.begin_list();
  const std::size_t count = config::rows_of(config, field.group);
  for (std::size_t i = 0; i < count; ++i) write_value(json, field, field.get(config, i), units);
  json.end_list();
  // Where an absent choice means one of the others: which, for each cook.
  json.key("usual");
  json.begin_list();
  if (field.absent == config::Absent::Derived && field.quantity == Quantity::Choice) {
    config::Config unsaid = config;
    for (std::size_t i = 0; i < count; ++i) {
      field.set(unsaid, i, {});
      json.string(report::field_text(field, unsaid, i, units));
    }
  }
  json.end_list();
  json.end_object();
}

}  // namespace

std::string page_fields_json(const config::Config& config, report::Units units) {
  JsonWriter json;
  json.begin_object();
  json.key("fields");
  json.begin_list();
  for (const config::Field& field : config::fields()) write_field(json, field, config, units);
  json.end_list();
  json.end_object();
  return json.take();
}

}  // namespace hs::web
