#pragma once
// Reading what older versions wrote: "hearthsight/1" is the first format, and each later one adds a
// step from its predecessor. A renamed key or a changed default is such a step, so that a file
// keeps its meaning for ever.

#include <span>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/tree.h"

namespace hs::config {

// Changes a tree of version `from` into one of version `from` + 1. Given values are moved or
// rewritten; a default that changes is written out as the old value where the key was left out.
struct MigrationStep {
  int from;
  void (*apply)(Node& root);
};

struct Migration {
  std::span<const MigrationStep> steps;
  int newest = kFormatVersion;
};

// The steps of this program. Tests pass their own.
Migration current_migration();

// "hearthsight/1"
std::string format_name(int version);

// Brings the tree to the newest version. Problems are about the key "format": missing, wrong, made
// by a newer version; `readable` is false when the rest of the tree cannot be judged.
struct Migrated {
  std::vector<Problem> problems;
  bool readable = true;
};
Migrated migrate(Node& root, const Migration& migration);

}  // namespace hs::config
