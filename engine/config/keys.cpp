#include "engine/config/keys.h"

#include <algorithm>

#include "engine/base/text.h"
#include "engine/config/fields.h"

namespace hs::config {

bool is_under(std::string_view path, std::string_view group) {
  return path.size() > group.size() && path.starts_with(group) && path[group.size()] == '.';
}

bool is_group(std::string_view path) {
  return std::any_of(fields().begin(), fields().end(),
                     [&](const Field& field) { return is_under(field.path, path); });
}

bool is_list(std::string_view path) { return is_group(std::string(path) + "[]"); }

bool may_be_null(std::string_view group) {
  if (group.find('.') == std::string_view::npos) return false;
  bool any = false;
  for (const Field& field : fields()) {
    if (!is_under(field.path, group)) continue;
    if (field.absent != Absent::Unknown) return false;
    any = true;
  }
  return any;
}

void reset_group(Config& config, std::string_view group, std::size_t row) {
  for (const Field& field : fields()) {
    if (!is_under(field.path, group)) continue;
    const List* list = list_of(field.group);
    if (list != nullptr && is_under(list->path, group)) {
      set_rows(config, list->group, list->least);  // a list inside the group
      continue;
    }
    field.set(config, row, field.absent == Absent::Derived ? Value{} : default_value(field));
  }
  if (is_under("cooks[].name", group)) config.cooks[row].name.clear();
}

std::string known_keys_text(std::string_view path) {
  constexpr std::size_t kLongest = 80;  // longer ones are not slips
  const std::size_t last_dot = path.rfind('.');
  const std::string_view key =
      last_dot == std::string_view::npos ? path : path.substr(last_dot + 1);
  // The key of a list's row is compared without its index.
  std::string wanted(path);
  if (const List* list = list_around(path)) {
    wanted = std::string(list->path) + "[]." + std::string(key);
  }
  std::string_view best;
  std::size_t best_distance = std::max<std::size_t>(2, key.size() / 4) + 1;
  const auto offer = [&](std::string_view candidate, std::size_t distance) {
    if (distance >= best_distance) return;
    best = candidate;
    best_distance = distance;
  };
  if (wanted.size() <= kLongest) {
    offer("format", edit_distance(wanted, "format"));
    for (const Field& field : fields()) {
      for (std::size_t dot = field.path.find('.'); dot != std::string_view::npos;
           dot = field.path.find('.', dot + 1)) {
        const std::string_view group = field.path.substr(0, dot);
        if (!group.ends_with("[]")) offer(group, edit_distance(wanted, group));
      }
      offer(field.path, edit_distance(wanted, field.path));
      if (key_of(field) == key) offer(field.path, 1);  // the right key in the wrong place
    }
  }
  if (best.empty()) return "one of the known keys (hearthsight fields lists them)";
  return "one of the known keys; did you mean " + std::string(best) + "?";
}

}  // namespace hs::config
