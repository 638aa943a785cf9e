#include "engine/config/tree.h"

#include "engine/base/text.h"

namespace hs::config {

const Node* Node::find(std::string_view key) const {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) return &items[i];
  }
  return nullptr;
}

Node* Node::find(std::string_view key) {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) return &items[i];
  }
  return nullptr;
}

Node& Node::member(std::string_view key) {
  if (Node* there = find(key)) return *there;
  kind = Kind::Object;
  keys.emplace_back(key);
  items.emplace_back();
  return items.back();
}

std::string shown(const Node& node) {
  switch (node.kind) {
    case Node::Kind::Null:
      return "null";
    case Node::Kind::Flag:
      return node.flag ? "true" : "false";
    case Node::Kind::Number:
      return shortened(node.text);
    case Node::Kind::Text:
      return "\"" + shortened(node.text) + "\"";
    case Node::Kind::List:
      return "a list";
    case Node::Kind::Object:
      return "an object";
  }
  return "";
}

}  // namespace hs::config
