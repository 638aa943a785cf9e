#include "engine/frame/as_built.h"

#include <algorithm>

#include "engine/base/lasting_texts.h"
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

// Millimetres, or a length with its own unit.
std::optional<double> length_of(std::string_view text) {
  if (const auto mm = parse_decimal(text)) return mm;
  return parse_length_mm(text, Unit::Mm);
}

template <typename Take>
void each_entry(std::string_view text, Take take) {
  while (!text.empty()) {
    const std::size_t from = std::min(text.find_first_not_of(' '), text.size());
    text.remove_prefix(from);
    if (text.empty()) return;
    // To the blank before the name of the next one.
    const std::size_t equals = std::min(text.find('='), text.size());
    const std::size_t next =
        std::min(text.find('=', std::min(equals + 1, text.size())), text.size());
    std::size_t end = next < text.size() ? text.rfind(' ', next) : text.size();
    if (end == std::string_view::npos || end <= equals) end = std::min(text.find(' '), text.size());
    std::string_view entry = text.substr(0, end);
    text.remove_prefix(end);
    entry = entry.substr(0, entry.find_last_not_of(' ') + 1);
    Entry out{entry, entry.substr(0, std::min(equals, entry.size())), {}};
    if (equals < entry.size()) out.mm = length_of(entry.substr(equals + 1));
    take(out);
  }
}

constexpr std::size_t kLastingBays = 20;
constexpr auto kLasting = [] {
  LastingTexts<2 + 2 * (4 + 2 * kLastingBays), 24> names;
  names.add("base", 0, "");
  names.add("riser.height", 0, "");
  for (const std::string_view run : {"dough.", "oven."}) {
    for (const std::string_view what :
         {"box", "substrate.width", "substrate.depth", "substrate.thick"}) {
      names.add(run, 0, what);
    }
    for (std::size_t bay = 1; bay <= kLastingBays; ++bay) {
      names.add(run, bay, ".opening.width");
      names.add(run, bay, ".opening.height");
    }
  }
  return names;
}();

}  // namespace

std::vector<AsBuilt> read_as_built(std::string_view text) {
  std::vector<AsBuilt> out;
  each_entry(text, [&out](const Entry& entry) {
    if (entry.mm) out.push_back({entry.name, quantised(Quantity::Length, *entry.mm)});
  });
  return out;
}

std::string_view lasting_name(std::string_view name) {
  for (std::size_t i = 0; i < kLasting.count(); ++i) {
    if (kLasting[i] == name) return kLasting[i];
  }
  return {};
}

Result<std::string> with_built(std::string_view text, std::string_view name, std::string_view size,
                               Unit bare) {
  const std::string path = "frame.as_built." + shortened(name);
  if (!a_name(name)) return Problem{path, "", "no piece has this name"};
  size = trimmed_ends(size);
  std::string entry;
  if (!size.empty()) {
    const std::string given = "\"" + shortened(size) + "\"";
    const auto mm = parse_length_mm(size, bare);
    if (!mm) {
      return Problem{path, given, "a length, such as 740.5 mm, 29 1/8 in or 2' 5 1/8\""};
    }
    if (!(*mm >= kBuiltLeast_mm && *mm <= kBuiltMost_mm)) {
      return Problem{path, given, length_range_text(kBuiltLeast_mm, kBuiltMost_mm, bare)};
    }
    entry = std::string(name) + "=" + trimmed(quantised(Quantity::Length, *mm), 1);
  }
  std::string out;
  const auto put = [&out](std::string_view one) {
    if (!one.empty()) out += (out.empty() ? "" : " ") + std::string(one);
  };
  bool there = false;
  each_entry(text, [&](const Entry& one) {
    if (one.name != name) return put(one.text);
    if (!there) put(entry);
    there = true;
  });
  if (!there) put(entry);
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
      problems.push_back(
          {std::string(kPath), given, "1 to 7000 mm after the '=', or inches such as 4 1/8 in"});
    } else if (std::find(names.begin(), names.end(), entry.name) != names.end()) {
      problems.push_back({std::string(kPath), given, "each piece once"});
    }
    names.push_back(entry.name);
  });
  return problems;
}

}  // namespace hs::frame
