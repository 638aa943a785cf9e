#include "web/app/items.h"

#include "engine/base/json_writer.h"
#include "engine/base/number_text.h"

namespace hs::web {

void Items::add(std::string_view id, std::string_view label, const Rect& rect,
                std::string_view value) {
  items_.push_back({std::string(id), std::string(label), rect,
                    value.empty() ? std::string("null") : std::string(value)});
}

const Item* Items::find(std::string_view id) const {
  for (const Item& item : items_) {
    if (item.id == id) return &item;
  }
  return nullptr;
}

std::string_view Items::repeated() const {
  for (std::size_t i = 0; i < items_.size(); ++i) {
    for (std::size_t j = i + 1; j < items_.size(); ++j) {
      if (items_[i].id == items_[j].id) return items_[i].id;
    }
  }
  return {};
}

std::string Items::json() const {
  std::string out = "[";
  for (const Item& item : items_) {
    if (out.size() > 1) out += ",";
    out +=
        "{\"id\":" + json_string(item.id) + ",\"label\":" + json_string(item.label) + ",\"rect\":[";
    const float sides[] = {item.rect.x, item.rect.y, item.rect.w, item.rect.h};
    for (int i = 0; i < 4; ++i) {
      if (i > 0) out += ",";
      out += trimmed(static_cast<double>(sides[i]), 2);
    }
    out += "],\"value\":" + item.value + "}";
  }
  return out + "]";
}

std::string_view Items::neighbour(std::string_view id, bool backwards) const {
  if (items_.empty()) return {};
  std::size_t at = items_.size();
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (items_[i].id == id) at = i;
  }
  if (at == items_.size()) return backwards ? items_.back().id : items_.front().id;
  if (backwards) return at == 0 ? std::string_view{} : std::string_view(items_[at - 1].id);
  return at + 1 == items_.size() ? std::string_view{} : std::string_view(items_[at + 1].id);
}

}  // namespace hs::web
