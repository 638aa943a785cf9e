#pragma once
// A parsed JSON text as a plain value: what migration steps change and reading walks through.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace hs::config {

struct Node {
  enum class Kind : std::uint8_t { Null, Flag, Number, Text, List, Object };

  Kind kind = Kind::Null;
  bool flag = false;
  double number = 0;
  std::string text;               // Text: the text; Number: its digits as written
  std::vector<std::string> keys;  // Object: keys[i] belongs to items[i]
  std::vector<Node> items;        // List and Object

  // The first member of that name; nullptr where there is none.
  const Node* find(std::string_view key) const;
  Node* find(std::string_view key);
  // The member of that name, added as null at the end where there is none.
  Node& member(std::string_view key);
};

// The node as a message shows it: "null", "12.5", "\"adult\"" shortened, "a list", "an object".
std::string shown(const Node& node);

}  // namespace hs::config
