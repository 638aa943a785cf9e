#include "engine/config/schema.h"

#include <algorithm>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "engine/config/json.h"
#include "engine/config/read.h"
#include "engine/config/validate.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::config;

namespace {

// Parsing refuses repeated keys, so this also shows that no group was written twice.
Node parsed(const std::string& json) {
  Parsed out = parse_json(json);
  REQUIRE(out.complete);
  REQUIRE(out.problems.empty());
  return out.root;
}

const Node* schema_of(const Node& schema, std::string_view path) {
  const Node* at = &schema;
  while (at != nullptr && !path.empty()) {
    const std::size_t dot = std::min(path.find('.'), path.size());
    std::string_view name = path.substr(0, dot);
    const bool list = name.ends_with("[]");
    if (list) name.remove_suffix(2);
    at = at->find("properties");
    if (at != nullptr) at = at->find(name);
    if (at != nullptr && list) at = at->find("items");
    path.remove_prefix(std::min(dot + 1, path.size()));
  }
  return at;
}

bool lists(const Node& node, std::string_view word) {
  if (node.kind == Node::Kind::Text) return node.text == word;
  return std::any_of(node.items.begin(), node.items.end(), [&](const Node& item) {
    return item.text == word || (item.kind == Node::Kind::Null && word == "null");
  });
}

std::string_view type_of(const Node& node) {
  switch (node.kind) {
    case Node::Kind::Null:
      return "null";
    case Node::Kind::Flag:
      return "boolean";
    case Node::Kind::Number:
      return "number";
    case Node::Kind::Text:
      return "string";
    case Node::Kind::List:
      return "array";
    case Node::Kind::Object:
      return "object";
  }
  return "";
}

// The part of JSON Schema that ours uses, written from its specification (2020-12).
bool conforms(const Node& schema, const Node& node) {
  if (const Node* type = schema.find("type"); type && !lists(*type, type_of(node))) return false;
  if (const Node* words = schema.find("enum"); words && !lists(*words, node.text)) return false;
  if (const Node* only = schema.find("const"); only && only->text != node.text) return false;
  if (node.kind == Node::Kind::Number) {
    if (const Node* low = schema.find("minimum"); low && node.number < low->number) return false;
    if (const Node* high = schema.find("maximum"); high && node.number > high->number) return false;
  }
  if (node.kind == Node::Kind::List) {
    const auto count = static_cast<double>(node.items.size());
    if (count < schema.find("minItems")->number || count > schema.find("maxItems")->number)
      return false;
    const Node& items = *schema.find("items");
    return std::all_of(node.items.begin(), node.items.end(),
                       [&](const Node& item) { return conforms(items, item); });
  }
  if (node.kind == Node::Kind::Object) {
    if (schema.find("additionalProperties")->flag) return false;
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
      const Node* member = schema.find("properties")->find(node.keys[i]);
      if (member == nullptr || !conforms(*member, node.items[i])) return false;
    }
    if (const Node* required = schema.find("required")) {
      for (const Node& key : required->items) {
        if (node.find(key.text) == nullptr) return false;
      }
    }
  }
  return true;
}

int leaves(const Node& schema) {
  if (const Node* items = schema.find("items")) return leaves(*items);
  const Node* properties = schema.find("properties");
  if (properties == nullptr) return 1;
  int count = 0;
  for (const Node& member : properties->items) count += leaves(member);
  return count;
}

}  // namespace

TEST_CASE("the schema has each field once, with the table's range", "[config][schema]") {
  const Node schema = parsed(schema_json());
  CHECK(leaves(schema) == static_cast<int>(fields().size()) + 1);  // and "format"
  for (const Field& field : fields()) {
    CAPTURE(field.path);
    const Node* row = schema_of(schema, field.path);
    REQUIRE(row != nullptr);
    CHECK(row->find("title")->text == field.label);
    if (is_number(field.quantity)) {
      CHECK(row->find("minimum")->number == field.min);
      CHECK(row->find("maximum")->number == field.max);
    }
    const Node* null_in = row->find(field.quantity == Quantity::Choice ? "enum" : "type");
    REQUIRE(null_in != nullptr);
    CHECK(lists(*null_in, "null") == (field.absent == Absent::Unknown));
    if (const Node* usual = row->find("default")) CHECK(conforms(*row, *usual));
  }
  CHECK(lists(*schema_of(schema, "oven.outer_mouth")->find("type"), "null"));
  CHECK_FALSE(lists(*schema_of(schema, "oven")->find("type"), "null"));
}

TEST_CASE("every default is within its own range and the default station is valid",
          "[config][schema]") {
  CHECK(validate(Config{}).empty());
  for (const Field& field : fields()) {
    CAPTURE(field.path);
    CHECK_FALSE(check_value(field, "", default_value(field)).has_value());
    CHECK(field.min <= field.max);
    CHECK((field.quantity == Quantity::Choice) == !field.choices.empty());
    CHECK_FALSE(field.label.empty());
    CHECK_FALSE(config::help_of(field).question.empty());
    CHECK_FALSE(config::help_of(field).measure.empty());
    if (is_number(field.quantity)) {
      CHECK(field.step > 0);
      CHECK(quantised(field.quantity, field.min) == field.min);
      CHECK(quantised(field.quantity, field.max) == field.max);
    }
  }
}

TEST_CASE("every config that is written conforms to the schema", "[config][schema][law]") {
  const Node schema = parsed(schema_json());
  test::Random random(7);
  for (int i = 0; i < test::sweep(500); ++i) {
    const std::string json = config_json(test::random_config(random));
    CAPTURE(json);
    REQUIRE(conforms(schema, parsed(json)));
  }
  CHECK_FALSE(conforms(schema, parsed(R"({"format":"hearthsight/1","ovn":{}})")));
  CHECK_FALSE(conforms(schema, parsed(R"({"format":"hearthsight/1","oven":{"width_mm":1}})")));
  CHECK_FALSE(conforms(schema, parsed(R"({"title":"x"})")));
}

TEST_CASE("the field reference has every row of the table", "[config][schema]") {
  const Node reference = parsed(fields_json());
  const Node* rows = reference.find("fields");
  REQUIRE(rows != nullptr);
  REQUIRE(rows->items.size() == fields().size());
  for (std::size_t i = 0; i < fields().size(); ++i) {
    const Field& field = fields()[i];
    const Node& row = rows->items[i];
    CHECK(row.find("path")->text == field.path);
    CHECK(row.find("tag")->number == field.tag);
    CHECK(row.find("choices")->items.size() == field.choices.size());
    CHECK(row.find("step")->kind ==
          (is_number(field.quantity) ? Node::Kind::Number : Node::Kind::Null));
    const auto words =
        std::count(config::help_of(field).rules.begin(), config::help_of(field).rules.end(), ' ');
    CHECK(row.find("rules")->items.size() ==
          (config::help_of(field).rules.empty() ? 0 : static_cast<std::size_t>(words) + 1));
  }
}
