#include "engine/config/read.h"

#include <algorithm>

#include "engine/base/text.h"
#include "engine/config/fields.h"
#include "engine/config/json.h"
#include "engine/config/keys.h"
#include "engine/config/setting.h"
#include "engine/config/validate.h"

namespace hs::config {
namespace {

constexpr std::string_view kFormat = "format";

std::string joined(const std::string& group, std::string_view key) {
  return group.empty() ? std::string(key) : group + "." + std::string(key);
}

class FieldReader {
 public:
  explicit FieldReader(Reading& out) : out_(out) {}

  // `table_path` is how the field table writes this group, `path` how a message does.
  void object(const std::string& table_path, const std::string& path, std::size_t cook,
              const Node& node) {
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
      const std::string_view key = node.keys[i];
      if (table_path.empty() && key == kFormat) continue;
      // A repeated key is reported by the parser; its first value is the one that is judged.
      if (node.find(key) != &node.items[i]) continue;
      member(joined(table_path, key), joined(path, key), cook, node.items[i]);
    }
  }

  void member(const std::string& table_path, const std::string& path, std::size_t cook,
              const Node& node) {
    const Field* field = find_field(table_path);
    if (field != nullptr && field->path == table_path) {
      value(*field, path, cook, node);
    } else if (is_list(table_path)) {
      list(table_path, node);
    } else if (is_group(table_path)) {
      group(table_path, path, cook, node);
    } else {
      // Looking for near misses costs time, which thousands of unknown keys must not add up.
      const bool hinted = ++unknown_keys_ <= kMostHints;
      refuse(shortened(path, 80), "an unknown key",
             hinted ? known_keys_text(path) : "one of the known keys");
    }
  }

 private:
  void value(const Field& field, const std::string& path, std::size_t cook, const Node& node) {
    const Result<Value> read = value_from_node(field, path, node);
    if (read) {
      field.set(out_.config, cook, *read);
    } else {
      out_.problems.insert(out_.problems.end(), read.error().begin(), read.error().end());
    }
  }

  void group(const std::string& table_path, const std::string& path, std::size_t cook,
             const Node& node) {
    if (node.kind == Node::Kind::Object) {
      object(table_path, path, cook, node);
      return;
    }
    const bool nullable = may_be_null(table_path);
    if (node.kind == Node::Kind::Null && nullable) return;  // the default: nothing known
    refuse(path, shown(node), nullable ? "an object or null" : "an object");
  }

  void list(const std::string& path, const Node& node) {
    for (const List& list : lists()) {
      if (list.path == path) rows(list, path, node);
    }
  }

  void rows(const List& list, const std::string& path, const Node& node) {
    // "cooks", "points": as a sentence says it.
    const std::string many = path.substr(path.rfind('.') + 1);
    const std::string allowed =
        "a list of " + std::to_string(list.least) + " to " + std::to_string(list.most) + " " + many;
    if (node.kind != Node::Kind::List) {
      refuse(path, shown(node), allowed);
      return;
    }
    const std::size_t count = node.items.size();
    if (count < list.least || count > list.most) {
      refuse(path, std::to_string(count) + " " + many, allowed);
      if (count < list.least) return;
    }
    const std::size_t kept = std::min(count, list.most);
    set_rows(out_.config, list.group, 0);
    set_rows(out_.config, list.group, kept);
    for (std::size_t i = 0; i < kept; ++i) {
      const std::string item = path + "." + std::to_string(i);
      if (node.items[i].kind == Node::Kind::Object) {
        object(path + "[]", item, i, node.items[i]);
      } else {
        refuse(item, shown(node.items[i]), "an object");
      }
    }
    if (list.group != Group::Cook) return;
    // Given names first: a default one must not take a name that comes later in the list.
    for (std::size_t i = 0; i < kept; ++i) {
      std::string& name = out_.config.cooks[i].name;
      if (name.empty()) name = free_cook_name(out_.config, i);
    }
  }

  void refuse(std::string path, std::string given, std::string allowed) {
    out_.problems.push_back({std::move(path), std::move(given), std::move(allowed)});
  }

  static constexpr int kMostHints = 50;

  Reading& out_;
  int unknown_keys_ = 0;
};

}  // namespace

Reading read_fields(std::string_view json, const Migration& migration) {
  Reading out;
  Parsed parsed = parse_json(json);
  out.problems = std::move(parsed.problems);
  // What comes before a break is no whole config; judging it would only bury the break.
  if (!parsed.complete) {
    for (Problem& problem : out.problems) {
      const Field* field = find_field(problem.path);
      if (field != nullptr) problem.allowed += "; here " + allowed_text(*field, Unit::Mm);
    }
    return out;
  }
  if (parsed.root.kind != Node::Kind::Object) {
    out.problems.push_back({"", shown(parsed.root), "a JSON object with the key \"format\""});
    return out;
  }
  Migrated migrated = migrate(parsed.root, migration);
  out.problems.insert(out.problems.end(), migrated.problems.begin(), migrated.problems.end());
  if (migrated.readable) FieldReader(out).object("", "", 0, parsed.root);
  return out;
}

void read_member(Reading& into, const std::string& table_path, const std::string& path,
                 std::size_t cook, const Node& node) {
  FieldReader(into).member(table_path, path, cook, node);
}

std::vector<Problem> validate_read(const Reading& reading) {
  std::vector<Problem> problems = validate(reading.config);
  if (reading.problems.empty()) return problems;
  const bool cooks_doubtful =
      std::any_of(reading.problems.begin(), reading.problems.end(), [](const Problem& problem) {
        return problem.path.starts_with("cooks") || problem.path.empty();
      });
  // With a cook's name unread, "no such cook" may be wrong.
  const auto follows = [&](const Problem& problem) {
    return cooks_doubtful && problem.path == "trial.at.cook";
  };
  problems.erase(std::remove_if(problems.begin(), problems.end(), follows), problems.end());
  return problems;
}

}  // namespace hs::config
