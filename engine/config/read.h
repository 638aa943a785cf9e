#pragma once
// JSON text -> Config -> JSON text.
//
// Reading reports every problem at once, each with path, value, allowed range and unit. Numbers are
// rounded to their quantum; lengths may also be text ("3' 5 3/8\"", "105.1 cm", bare: mm). Writing
// leaves out what equals its default; what was written is read back the same. Whole texts are read
// by evaluate::read(), which also knows the oven.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/config/migrate.h"
#include "engine/config/tree.h"

namespace hs::config {

// A Config with whatever could be read in it, and what could not. Fields with a problem keep their
// default. Each field is judged by itself; validate() judges the whole.
struct Reading {
  Config config;
  std::vector<Problem> problems;
};
Reading read_fields(std::string_view json, const Migration& migration = current_migration());

// One member of a config file read into a Config that is there: a value, a group or the list of
// cooks. `table_path` is how the field table writes it ("cooks[]"), `path` how a message does
// ("cooks.1"). Members that the node leaves out keep what they have; a cook's name may stay empty.
void read_member(Reading& into, const std::string& table_path, const std::string& path,
                 std::size_t cook, const Node& node);

// validate() for a Config that was read with problems: what only follows from a field that could
// not be read is left out.
std::vector<Problem> validate_read(const Reading& reading);

// Keys in the order of the field table, two spaces an indent; every cook with its name.
std::string config_json(const Config& config);

}  // namespace hs::config
