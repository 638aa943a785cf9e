#include "engine/config/setting.h"

#include <algorithm>
#include <cmath>

#include "engine/base/text.h"
#include "engine/config/json.h"
#include "engine/config/keys.h"
#include "engine/config/migrate.h"
#include "engine/config/read.h"
#include "engine/config/validate.h"

namespace hs::config {
namespace {

Problem refused(const Field& field, const std::string& path, std::string given, Unit unit) {
  return {path, std::move(given), allowed_text(field, unit)};
}

// Text that is no number at all: the range alone would not say what was wrong with it.
Problem not_read(const Field& field, const std::string& path, std::string given, Unit unit) {
  Problem problem = refused(field, path, std::move(given), unit);
  if (field.quantity == Quantity::Length) {
    problem.allowed +=
        " (written as 1080 mm, 108 cm, 42 1/2 in or 3' 6 1/2\"; a comma is a decimal mark)";
  }
  return problem;
}

std::optional<Value> choice_from(const Field& field, std::string_view word) {
  for (std::size_t i = 0; i < field.choices.size(); ++i) {
    if (field.choices[i] == word) return ChoiceIndex{static_cast<std::uint8_t>(i)};
  }
  return std::nullopt;
}

Result<Value> checked(const Field& field, const std::string& path, const Value& value, Unit unit) {
  if (auto problem = check_value(field, path, value, unit)) return *std::move(problem);
  if (const auto* number = std::get_if<double>(&value)) {
    return Value{quantised(field.quantity, *number)};
  }
  return value;
}

Value text_value(std::string_view text) { return std::string(trimmed_ends(text)); }

bool may_be_absent(const Field& field) {
  return std::holds_alternative<std::monostate>(default_value(field));
}

void set_value(Config& config, const Field& field, std::size_t row, const Value& value) {
  const std::string before = field.group == Group::Cook ? config.cooks[row].name : std::string();
  field.set(config, row, value);
  if (field.group != Group::Cook) return;
  if (config.cooks[row].name.empty()) config.cooks[row].name = free_cook_name(config, row);
  if (config.cooks[row].name != before) follow_rename(config, before, config.cooks[row].name);
}

// An empty name is allowed on its way in: free_cook_name() fills it.
bool is_name_to_fill(const Field& field, const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return field.absent == Absent::Derived && text != nullptr && text->empty();
}

// A decimal index without leading zeros; nullopt for anything else.
std::optional<std::size_t> index_from(std::string_view digits) {
  if (digits.empty() || digits.size() > 3 || (digits.size() > 1 && digits[0] == '0')) {
    return std::nullopt;
  }
  std::size_t index = 0;
  for (const char digit : digits) {
    if (digit < '0' || digit > '9') return std::nullopt;
    index = index * 10 + static_cast<std::size_t>(digit - '0');
  }
  return index;
}

Result<Value> value_from_setting(const Field& field, const std::string& path,
                                 std::string_view text) {
  const bool quoted = text.starts_with('"');
  const bool literal = text == "null" || text == "true" || text == "false";
  if (quoted || literal || is_number(field.quantity)) {
    const Parsed parsed = parse_json(text);
    const bool scalar =
        parsed.root.kind != Node::Kind::List && parsed.root.kind != Node::Kind::Object;
    if (parsed.complete && scalar) return value_from_node(field, path, parsed.root);
  }
  // An empty shell variable must not clear a measurement.
  if (field.quantity != Quantity::Text && trimmed_ends(text).empty()) {
    return refused(field, path, "nothing", Unit::Mm);
  }
  return value_from_text(field, path, text, Unit::Mm);
}

}  // namespace

Result<Value> value_from_node(const Field& field, const std::string& path, const Node& node) {
  Value value;
  bool fits = false;
  switch (node.kind) {
    case Node::Kind::Null:
      fits = field.absent == Absent::Unknown;
      break;
    case Node::Kind::Flag:
      value = node.flag;
      fits = field.quantity == Quantity::Flag;
      break;
    case Node::Kind::Number:
      value = node.number;
      fits = is_number(field.quantity);
      break;
    case Node::Kind::Text:
      if (field.quantity == Quantity::Text) {
        value = text_value(node.text);
        if (is_name_to_fill(field, value)) return value;
        fits = true;
      } else if (field.quantity == Quantity::Choice) {
        const auto choice = choice_from(field, node.text);
        fits = choice.has_value();
        if (choice) value = *choice;
      } else if (field.quantity == Quantity::Length) {
        const auto mm = parse_length_mm(node.text, Unit::Mm);
        if (!mm) return not_read(field, path, shown(node), Unit::Mm);
        value = *mm;
        fits = true;
      }
      break;
    case Node::Kind::List:
    case Node::Kind::Object:
      break;
  }
  if (!fits) return refused(field, path, shown(node), Unit::Mm);
  Result<Value> out = checked(field, path, value, Unit::Mm);
  // A number of a hundred digits, or a length in another unit, is best shown as it was written.
  const bool plain = node.kind == Node::Kind::Number && std::abs(node.number) < 1e9;
  if (!out && !plain) return refused(field, path, shown(node), Unit::Mm);
  return out;
}

Result<Value> value_from_text(const Field& field, const std::string& path, std::string_view text,
                              Unit bare) {
  text = trimmed_ends(text);
  const std::string given = "\"" + shortened(text) + "\"";
  if (text.empty() && may_be_absent(field)) return Value{};
  if (text.empty() && field.quantity != Quantity::Text) {
    return Problem{path, "", "missing; give " + allowed_text(field, bare)};
  }
  switch (field.quantity) {
    case Quantity::Text: {
      const Value value = text_value(text);
      if (is_name_to_fill(field, value)) return value;
      return checked(field, path, value, bare);
    }
    case Quantity::Flag:
      if (text == "true" || text == "yes") return Value{true};
      if (text == "false" || text == "no") return Value{false};
      return refused(field, path, given, bare);
    case Quantity::Choice: {
      const auto choice = choice_from(field, text);
      if (!choice) return refused(field, path, given, bare);
      return *choice;
    }
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
    case Quantity::Count: {
      const auto number = parse_number(field.quantity, text, bare);
      if (!number) return not_read(field, path, given, bare);
      Result<Value> out = checked(field, path, Value{*number}, bare);
      if (!out) return refused(field, path, given, bare);
      return out;
    }
  }
  return refused(field, path, given, bare);
}

std::vector<Problem> set_field(Config& config, const Field& field, std::size_t row,
                               std::string_view text, Unit bare) {
  const std::string path = path_of(field, row);
  const List* list = list_of(field.group);
  const std::size_t rows = rows_of(config, field.group);
  if (list != nullptr && row >= rows) {
    const std::string item(list->item);
    return {{path, item + " " + std::to_string(row),
             rows == 0 ? "no " + item + ": there is none" : "0 to " + std::to_string(rows - 1)}};
  }
  const Result<Value> value = value_from_text(field, path, text, bare);
  if (!value) return value.error();
  Config next = config;
  set_value(next, field, row, *value);
  std::vector<Problem> problems = validate(next);
  if (problems.empty()) config = std::move(next);
  return problems;
}

namespace {

// `{"side_mm":...}` for "oven.listed_clearance": the first number of the group.
std::string example_of(std::string_view group) {
  for (const Field& field : fields()) {
    if (!is_under(field.path, group) || !is_number(field.quantity)) continue;
    if (field.path.size() != group.size() + 1 + key_of(field).size()) continue;  // nested deeper
    return "{\"" + std::string(key_of(field)) + "\":...}";
  }
  return "{...}";
}

std::string allowed_json(std::string_view table_path) {
  if (is_list(table_path)) {
    return "a JSON list such as [" + example_of(std::string(table_path) + "[]") + "]";
  }
  return "a JSON object such as " + example_of(table_path) +
         (may_be_null(table_path) ? ", null" : "") + ", or one of its members by name";
}

// A group, a list or one of its rows, as a file with this text in its place would give it.
std::vector<Problem> set_group(Config& config, const std::string& table_path,
                               const std::string& path, const List* list, std::size_t row,
                               std::string_view text) {
  Parsed parsed = parse_json(text);
  const std::string_view ends = trimmed_ends(text);
  const bool meant_as_json = ends.starts_with('{') || ends.starts_with('[');
  if (!parsed.complete && !meant_as_json) {
    return {
        {path, ends.empty() ? "nothing" : "\"" + shortened(ends) + "\"", allowed_json(table_path)}};
  }
  if (!parsed.problems.empty()) {
    for (Problem& problem : parsed.problems) {
      problem.path = problem.path.empty() ? path : path + "." + problem.path;
      if (!parsed.complete) problem.allowed += "; here " + allowed_json(table_path);
    }
    return std::move(parsed.problems);
  }
  const Node::Kind kind = parsed.root.kind;
  const bool null = kind == Node::Kind::Null && may_be_null(table_path);
  const bool fits = is_list(table_path) ? kind == Node::Kind::List : kind == Node::Kind::Object;
  if (!fits && !null) return {{path, shown(parsed.root), allowed_json(table_path)}};
  Reading next{config, {}};
  if (list != nullptr && row == rows_of(next.config, list->group)) {
    set_rows(next.config, list->group, row + 1);
  }
  if (!is_list(table_path)) reset_group(next.config, table_path, row);
  read_member(next, table_path, path, row, parsed.root);
  if (!next.problems.empty()) return capped(std::move(next.problems));
  for (std::size_t i = 0; i < next.config.cooks.size(); ++i) {
    std::string& name = next.config.cooks[i].name;
    if (name.empty()) name = free_cook_name(next.config, i);
  }
  config = std::move(next.config);
  return {};
}

std::vector<Problem> unknown_key(std::string_view path) {
  return {{shortened(path, 80), "an unknown key", known_keys_text(path)}};
}

}  // namespace

std::vector<Problem> apply_setting(Config& config, std::string_view path, std::string_view text) {
  if (path == "format") {
    return {{"format", "a setting",
             "it in the file itself, as \"" + format_name(kFormatVersion) + "\""}};
  }
  const Field* field = find_field(path);
  const List* list = list_around(path);
  std::string group;  // the field table's name for a group or list
  std::size_t row = 0;
  if (list != nullptr) {
    const std::string_view rest = path.substr(list->path.size() + 1);
    const std::size_t dot = rest.find('.');
    const auto index = index_from(rest.substr(0, dot));
    if (dot == std::string_view::npos) group = std::string(list->path) + "[]";
    if ((field == nullptr && group.empty()) || !index) return unknown_key(path);
    row = *index;
    const std::size_t most = std::min(rows_of(config, list->group), list->most - 1);
    if (row > most) {
      const std::string item(list->item);
      return {{shortened(path, 80), item + " " + std::to_string(row),
               item + " 0 to " + std::to_string(most)}};
    }
  } else if (path.find('[') != std::string_view::npos) {
    return unknown_key(path);  // "cooks[].share" is the table's spelling, not a cook's
  } else if (field == nullptr && (is_group(path) || is_list(path))) {
    group = path;
  }
  if (!group.empty()) return set_group(config, group, std::string(path), list, row, text);
  if (field == nullptr) return unknown_key(path);
  const Result<Value> value = value_from_setting(*field, path_of(*field, row), text);
  if (!value) return value.error();
  if (list != nullptr && row == rows_of(config, list->group)) {
    if (list->group == Group::Cook) {
      add_cook(config);
    } else {
      set_rows(config, list->group, row + 1);
    }
  }
  set_value(config, *field, row, *value);
  return {};
}

bool add_cook(Config& config) {
  if (config.cooks.size() >= kMaxCooks) return false;
  Cook cook;
  cook.name = free_cook_name(config, config.cooks.size());
  config.cooks.push_back(std::move(cook));
  return true;
}

void follow_rename(Config& config, std::string_view before, const std::string& after) {
  if (config.trial.cook == before) config.trial.cook = after;
}

bool remove_cook(Config& config, std::size_t cook) {
  if (config.cooks.size() <= 1 || cook >= config.cooks.size()) return false;
  if (config.trial.cook == config.cooks[cook].name) config.trial = Trial{};
  config.cooks.erase(config.cooks.begin() + static_cast<std::ptrdiff_t>(cook));
  return true;
}

}  // namespace hs::config
