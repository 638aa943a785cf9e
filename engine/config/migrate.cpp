#include "engine/config/migrate.h"

#include <optional>

#include "engine/base/text.h"

namespace hs::config {
namespace {

constexpr std::string_view kFamily = "hearthsight/";

// "hearthsight/12" -> 12. Numbers are short, positive and without leading zeros.
std::optional<int> version_of(std::string_view format) {
  if (!format.starts_with(kFamily)) return std::nullopt;
  const std::string_view digits = format.substr(kFamily.size());
  if (digits.empty() || digits.size() > 4 || digits[0] == '0') return std::nullopt;
  int version = 0;
  for (const char digit : digits) {
    if (digit < '0' || digit > '9') return std::nullopt;
    version = version * 10 + (digit - '0');
  }
  return version;
}

std::string quoted(int version) { return "\"" + format_name(version) + "\""; }

const MigrationStep* step_from(const Migration& migration, int version) {
  for (const MigrationStep& step : migration.steps) {
    if (step.from == version) return &step;
  }
  return nullptr;
}

}  // namespace

Migration current_migration() { return Migration{}; }

std::string format_name(int version) { return std::string(kFamily) + std::to_string(version); }

Migrated migrate(Node& root, const Migration& migration) {
  Migrated out;
  Node* format = root.find("format");
  if (format == nullptr) {
    out.problems.push_back({"format", "", "missing; give " + quoted(migration.newest)});
    return out;
  }
  const auto version =
      format->kind == Node::Kind::Text ? version_of(format->text) : std::optional<int>{};
  if (!version) {
    const bool text = format->kind == Node::Kind::Text;
    const std::string given =
        text ? "\"" + shortened(format->text) + "\"" : std::string("something else than text");
    out.problems.push_back({"format", given, quoted(migration.newest)});
    return out;
  }
  if (*version > migration.newest) {
    out.problems.push_back({"format",
                            "\"" + shortened(format->text) + "\", made by a newer version,",
                            quoted(migration.newest) + ", or open it with the newer version"});
    out.readable = false;
    return out;
  }
  for (int at = *version; at < migration.newest; ++at) {
    const MigrationStep* step = step_from(migration, at);
    if (step == nullptr) {
      out.problems.push_back({"format", "\"" + shortened(format->text) + "\"",
                              "a version that can still be read, " + quoted(migration.newest)});
      out.readable = false;
      return out;
    }
    step->apply(root);
    // A step may add keys, which moves the members.
    format = &root.member("format");
    format->text = format_name(at + 1);
  }
  return out;
}

}  // namespace hs::config
