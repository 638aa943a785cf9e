#include "engine/frame/as_built.h"

#include <algorithm>

#include "engine/base/number_text.h"
#include "engine/base/text.h"

namespace hs::frame {
namespace {

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool bay_number(std::string_view text) {
  return !text.empty() && text.size() <= 2 && text[0] != '0' &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool a_name(std::string_view name) {
  if (name == "base" || name == "riser.height") return true;
  const std::size_t dot = name.find('.');
  if (dot == std::string_view::npos || !one_of(name.substr(0, dot), {"dough", "oven"}))
    return false;
  const std::string_view rest = name.substr(dot + 1);
  if (one_of(rest, {"box", "substrate.width", "substrate.depth", "substrate.thick"})) return true;
  const std::size_t next = rest.find('.');
  return next != std::string_view::npos && bay_number(rest.substr(0, next)) &&
         one_of(rest.substr(next + 1), {"opening.width", "opening.height"});
}

struct Entry {
  std::string_view text, name;
  std::optional<double> mm;
};

template <typename Take>
void each_entry(std::string_view text, Take take) {
  while (!text.empty()) {
    const std::size_t space = std::min(text.find(' '), text.size());
    const std::string_view entry = text.substr(0, space);
    text.remove_prefix(std::min(space + 1, text.size()));
    if (entry.empty()) continue;
    const std::size_t equals = std::min(entry.find('='), entry.size());
    Entry out{entry, entry.substr(0, equals), {}};
    if (equals < entry.size()) out.mm = parse_decimal(entry.substr(equals + 1));
    take(out);
  }
}

}  // namespace

std::vector<AsBuilt> read_as_built(std::string_view text) {
  std::vector<AsBuilt> out;
  each_entry(text, [&out](const Entry& entry) {
    if (entry.mm) out.push_back({entry.name, quantised(Quantity::Length, *entry.mm)});
  });
  return out;
}

std::vector<Problem> as_built_problems(std::string_view text) {
  constexpr std::string_view kPath = "frame.as_built";
  std::vector<Problem> problems;
  std::vector<std::string_view> names;
  each_entry(text, [&](const Entry& entry) {
    const std::string given = "\"" + shortened(entry.text) + "\"";
    if (!a_name(entry.name)) {
      problems.push_back({std::string(kPath), given,
                          "a piece as the report's frame.measures name it, such as base=104.2"});
    } else if (!entry.mm || *entry.mm < kBuiltLeast_mm || *entry.mm > kBuiltMost_mm) {
      problems.push_back({std::string(kPath), given, "1 to 7000 mm after the '='"});
    } else if (std::find(names.begin(), names.end(), entry.name) != names.end()) {
      problems.push_back({std::string(kPath), given, "each piece once"});
    }
    names.push_back(entry.name);
  });
  return problems;
}

}  // namespace hs::frame
