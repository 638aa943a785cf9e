#pragma once
// JSON text to a tree and back.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/tree.h"

namespace hs::config {

// What a person writes by hand stays far below these; they keep a hostile file from taking memory.
inline constexpr std::size_t kMostJsonBytes = 1'000'000;
inline constexpr int kDeepestJson = 16;
inline constexpr std::size_t kMostJsonValues = 10'000;

struct Parsed {
  Node root;                      // what could be read before the first break
  std::vector<Problem> problems;  // repeated keys; or where and why reading stopped
  bool complete = false;          // false: the text broke off or went beyond a limit
};

// RFC 8259, and no more: no comments, no NaN, no repeated keys, numbers that a double holds.
Parsed parse_json(std::string_view text);

// Two spaces an indent, a line break at the end.
std::string json_text(const Node& root);

}  // namespace hs::config
