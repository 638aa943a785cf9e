#include "engine/config/schema.h"

#include <algorithm>

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/keys.h"
#include "engine/config/migrate.h"

namespace hs::config {
namespace {

constexpr int kDecimals = 2;

std::string_view absent_name(Absent absent) {
  switch (absent) {
    case Absent::Default:
      return "default";
    case Absent::Derived:
      return "derived";
    case Absent::Unknown:
      return "unknown";
  }
  return "";
}

void write_number(JsonWriter& json, std::string_view key, double value) {
  json.key(key);
  json.number(trimmed(value, kDecimals));
}

void write_value(JsonWriter& json, const Field& field, const Value& value) {
  if (const auto* number = std::get_if<double>(&value)) {
    json.number(trimmed(*number, kDecimals));
  } else if (const auto* flag = std::get_if<bool>(&value)) {
    json.boolean(*flag);
  } else if (const auto* text = std::get_if<std::string>(&value)) {
    json.string(*text);
  } else if (const auto* choice = std::get_if<ChoiceIndex>(&value)) {
    json.string(field.choices[choice->index]);
  } else {
    json.null();
  }
}

void write_types(JsonWriter& json, std::string_view first, std::string_view second, bool nullable) {
  json.key("type");
  if (second.empty() && !nullable) {
    json.string(first);
    return;
  }
  json.begin_list();
  json.string(first);
  if (!second.empty()) json.string(second);
  if (nullable) json.string("null");
  json.end_list();
}

void write_field(JsonWriter& json, const Field& field) {
  const bool nullable = field.absent == Absent::Unknown;
  json.begin_object();
  json.key("title");
  json.string(field.label);
  json.key("description");
  const std::string_view unit = unit_name(field.quantity);
  json.string(std::string(help_of(field).question) + " " + std::string(help_of(field).measure) +
              (unit.empty() ? "" : " Unit: " + std::string(unit) + "."));
  if (field.quantity == Quantity::Choice) {
    json.key("enum");
    json.begin_list();
    for (const std::string_view choice : field.choices) json.string(choice);
    if (nullable) json.null();
    json.end_list();
  } else if (field.quantity == Quantity::Flag) {
    write_types(json, "boolean", "", nullable);
  } else if (field.quantity == Quantity::Text) {
    write_types(json, "string", "", nullable);
    // Bytes of UTF-8 in truth, so this many characters at most. A blank name is filled in.
    write_number(json, "maxLength", field.max);
  } else {
    // A length may also be a text such as "41 3/8 in"; the range then goes unchecked here.
    const bool length = field.quantity == Quantity::Length;
    write_types(json, "number", length ? "string" : "", nullable);
    write_number(json, "minimum", field.min);
    write_number(json, "maximum", field.max);
    if (length) {
      json.key("pattern");
      json.string("[0-9]|\u00BC|\u00BD|\u00BE|[\u215B-\u215E]");
    }
  }
  const Value value = default_value(field);
  if (field.absent == Absent::Default) {
    json.key("default");
    write_value(json, field, value);
  }
  json.end_object();
}

void write_object(JsonWriter& json, const std::string& group);

// The members of a group in table order; a nested group stands where its first field does.
void write_members(JsonWriter& json, const std::string& group) {
  const std::string prefix = group.empty() ? "" : group + ".";
  std::string last;  // a group's fields are neighbours in the table
  for (const Field& field : fields()) {
    if (!field.path.starts_with(prefix)) continue;
    const std::string_view rest = field.path.substr(prefix.size());
    const std::string name(rest.substr(0, rest.find('.')));
    if (name.size() == rest.size()) {
      json.key(name);
      write_field(json, field);
      continue;
    }
    if (name == last) continue;
    last = name;
    if (!name.ends_with("[]")) {
      json.key(name);
      write_object(json, prefix + name);
      continue;
    }
    json.key(name.substr(0, name.size() - 2));
    json.begin_object();
    json.key("type");
    json.string("array");
    const List& list = *list_of(field.group);
    json.key("minItems");
    json.number(std::to_string(list.least));
    json.key("maxItems");
    json.number(std::to_string(list.most));
    json.key("items");
    write_object(json, prefix + name);
    json.end_object();
  }
}

void write_object_start(JsonWriter& json, bool nullable) {
  write_types(json, "object", "", nullable);
  json.key("additionalProperties");
  json.boolean(false);
}

void write_object(JsonWriter& json, const std::string& group) {
  json.begin_object();
  write_object_start(json, may_be_null(group));
  json.key("properties");
  json.begin_object();
  write_members(json, group);
  json.end_object();
  json.end_object();
}

// The row's rule ids, which it holds as one text.
void write_rules(JsonWriter& json, std::string_view rules) {
  json.begin_list();
  while (!rules.empty()) {
    const std::size_t end = std::min(rules.find(' '), rules.size());
    json.string(rules.substr(0, end));
    rules.remove_prefix(std::min(end + 1, rules.size()));
  }
  json.end_list();
}

void write_row(JsonWriter& json, const Field& field) {
  const auto text = [&json](std::string_view key, std::string_view value) {
    json.key(key);
    json.string(value);
  };
  json.begin_object();
  json.key("tag");
  json.number(std::to_string(field.tag));
  text("path", field.path);
  const List* list = list_of(field.group);
  text("group", list == nullptr ? "station" : list->item);
  text("label", field.label);
  text("question", help_of(field).question);
  text("measure", help_of(field).measure);
  text("quantity", quantity_name(field.quantity));
  text("unit", unit_name(field.quantity));
  const bool ranged = is_number(field.quantity) || field.quantity == Quantity::Text;
  const auto number = [&](std::string_view key, double value, bool there) {
    json.key(key);
    there ? json.number(trimmed(value, kDecimals)) : json.null();
  };
  number("min", field.min, ranged);
  number("max", field.max, ranged);
  number("step", field.step, is_number(field.quantity));
  json.key("choices");
  json.begin_list();
  for (const std::string_view choice : field.choices) json.string(choice);
  json.end_list();
  text("absent", absent_name(field.absent));
  json.key("default");
  write_value(json, field, default_value(field));
  json.key("rules");
  write_rules(json, help_of(field).rules);
  json.end_object();
}

}  // namespace

std::string_view quantity_name(Quantity quantity) {
  switch (quantity) {
    case Quantity::Length:
      return "length";
    case Quantity::Angle:
      return "angle";
    case Quantity::Temperature:
      return "temperature";
    case Quantity::Mass:
      return "mass";
    case Quantity::Years:
      return "years";
    case Quantity::Speed:
      return "speed";
    case Quantity::Share:
      return "share";
    case Quantity::Weight:
      return "weight";
    case Quantity::Flux:
      return "light";
    case Quantity::Power:
      return "power";
    case Quantity::Money:
      return "money";
    case Quantity::Count:
      return "count";
    case Quantity::Text:
      return "text";
    case Quantity::Flag:
      return "flag";
    case Quantity::Choice:
      return "choice";
  }
  return "";
}

std::string schema_json() {
  JsonWriter json;
  json.begin_object();
  json.key("$schema");
  json.string("https://json-schema.org/draft/2020-12/schema");
  json.key("title");
  json.string("Hearthsight config");
  write_object_start(json, false);
  json.key("required");
  json.begin_list();
  json.string("format");
  json.end_list();
  json.key("properties");
  json.begin_object();
  json.key("format");
  json.begin_object();
  json.key("const");
  json.string(format_name(kFormatVersion));
  json.end_object();
  write_members(json, "");
  json.end_object();
  json.end_object();
  return json.take();
}

std::string fields_json() {
  JsonWriter json;
  json.begin_object();
  json.key("format");
  json.string(format_name(kFormatVersion));
  json.key("most_cooks");
  json.number(std::to_string(kMaxCooks));
  json.key("most_points");
  json.number(std::to_string(kMaxPoints));
  json.key("most_stock");
  json.number(std::to_string(kMaxStock));
  json.key("fields");
  json.begin_list();
  for (const Field& field : fields()) write_row(json, field);
  json.end_list();
  json.end_object();
  return json.take();
}

}  // namespace hs::config
