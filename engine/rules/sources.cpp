#include "engine/rules/sources.h"

#include "engine/base/packed_table.h"
#include "engine/rules/source_rows.h"

namespace hs::rules {
namespace {

constexpr bool sources_are_sound() {
  for (const Source& a : kSources) {
    if (a.id.empty() || a.author.empty() || a.title.empty()) return false;
    int same = 0;
    for (const Source& b : kSources) same += a.id == b.id ? 1 : 0;
    if (same != 1) return false;
  }
  return true;
}
static_assert(sources_are_sound(), "a source without id, author or title, or two with one id");

using Sources = PackedTable<kSources, &Source::id, &Source::author, &Source::title,
                            &Source::edition, &Source::note>;

}  // namespace

std::span<const Source> sources() { return Sources::rows(); }

const Source* find_source(std::string_view id) {
  for (const Source& source : sources()) {
    if (source.id == id) return &source;
  }
  return nullptr;
}

}  // namespace hs::rules
