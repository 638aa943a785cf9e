// Config -> JSON text, the writing half of read.h.
#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/json.h"
#include "engine/config/read.h"

namespace hs::config {
namespace {

constexpr int kMostDecimals = 2;  // the finest quantum is 0.01

Node text_node(std::string text) {
  Node node;
  node.kind = Node::Kind::Text;
  node.text = std::move(text);
  return node;
}

Node value_node(const Field& field, const Value& value) {
  Node node;
  if (const auto* text = std::get_if<std::string>(&value)) return text_node(*text);
  if (const auto* choice = std::get_if<ChoiceIndex>(&value)) {
    return text_node(std::string(field.choices[choice->index]));
  }
  if (const auto* flag = std::get_if<bool>(&value)) {
    node.kind = Node::Kind::Flag;
    node.flag = *flag;
  } else if (const auto* number = std::get_if<double>(&value)) {
    node.kind = Node::Kind::Number;
    node.number = *number;
    node.text = trimmed(*number, kMostDecimals);
  }
  return node;
}

// The object that holds the last part of `path`, made where it is not there yet.
Node& holder(Node& root, std::string_view path) {
  Node* at = &root;
  for (std::size_t dot = path.find('.'); dot != std::string_view::npos; dot = path.find('.')) {
    at = &at->member(path.substr(0, dot));
    path.remove_prefix(dot + 1);
  }
  return *at;
}

// Every row of a list at once, where the table's first field of one stands.
Node row_list(const Config& config, Group group) {
  Node list;
  list.kind = Node::Kind::List;
  for (std::size_t i = 0; i < rows_of(config, group); ++i) {
    Node row;
    row.kind = Node::Kind::Object;
    for (const Field& field : fields()) {
      if (field.group != group) continue;
      const Value value = field.get(config, i);
      // A name has no default of its own: it is the cook's place in the list.
      const bool name =
          field.absent == Absent::Derived && std::holds_alternative<std::string>(value);
      if (name || value != default_value(field)) {
        row.member(key_of(field)) = value_node(field, value);
      }
    }
    list.items.push_back(std::move(row));
  }
  return list;
}

}  // namespace

std::string config_json(const Config& config) {
  Node root;
  root.member("format") = text_node(format_name(kFormatVersion));
  for (const Field& field : fields()) {
    if (const List* list = list_of(field.group)) {
      // Empty is what every list is by default that may be empty.
      if (rows_of(config, list->group) == 0) continue;
      Node& around = holder(root, list->path);
      const std::string_view key = list->path.substr(list->path.rfind('.') + 1);
      if (around.find(key) == nullptr) around.member(key) = row_list(config, list->group);
      continue;
    }
    const Value value = field.get(config, 0);
    if (value == default_value(field)) continue;
    holder(root, field.path).member(key_of(field)) = value_node(field, value);
  }
  return json_text(root);
}

}  // namespace hs::config
