#pragma once
// What can be acted on in one frame: the page's tests and its keyboard find controls here.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "web/app/layout.h"

namespace hs::web {

struct Item {
  std::string id;     // "field:<path>" or "action:<name>", unique in a frame
  std::string label;  // what a person would call it
  Rect rect;          // CSS px
  std::string value;  // JSON: a number in the field's unit, a word in quotes, or null
};

class Items {
 public:
  void clear() { items_.clear(); }
  void add(std::string_view id, std::string_view label, const Rect& rect, std::string_view value);

  std::span<const Item> all() const { return items_; }
  const Item* find(std::string_view id) const;
  // The first id that stands twice; empty when there is none.
  std::string_view repeated() const;
  std::string json() const;

  // The id after or before this one in reading order; from none, the first or the last. Empty where
  // the list ends: the keyboard then leaves the canvas.
  std::string_view neighbour(std::string_view id, bool backwards) const;

 private:
  std::vector<Item> items_;
};

}  // namespace hs::web
