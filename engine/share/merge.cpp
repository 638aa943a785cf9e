#include "engine/share/merge.h"

#include <algorithm>
#include <string>
#include <utility>

#include "engine/config/setting.h"
#include "engine/config/validate.h"

namespace hs::share {
namespace {

using config::Config;
using config::Cook;
using config::Field;
using config::Group;

// Fields that are one answer: taken apart they would mean something that nobody said.
std::string_view answer_of(const Field& field) {
  const std::string_view path = field.path;
  if (path.starts_with("trial.")) return "trial";
  if (path.starts_with("light.head.")) return "light.head";
  if (path == "station.arrangement" || path == "station.counter_height_mm" ||
      path == "station.oven_base_height_mm") {
    return "station.arrangement";
  }
  return path;
}

const Cook* find_cook(const Config& config, std::string_view name) {
  const auto it = std::find_if(config.cooks.begin(), config.cooks.end(),
                               [name](const Cook& cook) { return cook.name == name; });
  return it == config.cooks.end() ? nullptr : &*it;
}

std::size_t row_of(const Config& config, const Cook& cook) {
  return static_cast<std::size_t>(&cook - config.cooks.data());
}

std::vector<const Field*> cook_fields(const Config& a, std::size_t row_a, const Config& b,
                                      std::size_t row_b) {
  std::vector<const Field*> found;
  for (const Field& field : config::fields()) {
    if (field.group != Group::Cook || field.path == "cooks[].name") continue;
    if (field.get(a, row_a) != field.get(b, row_b)) found.push_back(&field);
  }
  return found;
}

bool is_of_station(const Difference& d) {
  return d.kind == Differs::Station || d.kind == Differs::Ground || d.kind == Differs::Stock;
}

// "Ana 2", or the next number that is free; short enough for a name.
std::string free_name(const Config& config, const std::string& name) {
  const Field* field = config::find_field("cooks[].name");
  for (std::size_t number = 2;; ++number) {
    const std::string end = " " + std::to_string(number);
    std::string head = name;
    while (!head.empty() && static_cast<double>(head.size() + end.size()) > field->max) {
      // One whole character: what follows a first byte of UTF-8 is 10xxxxxx.
      while (head.size() > 1 && (static_cast<unsigned char>(head.back()) & 0xC0U) == 0x80U) {
        head.pop_back();
      }
      head.pop_back();
    }
    while (!head.empty() && head.back() == ' ') head.pop_back();
    if (find_cook(config, head + end) == nullptr) return head + end;
  }
}

}  // namespace

std::vector<Difference> differences(const Config& ours, const Config& theirs) {
  std::vector<Difference> found, others, station;
  const Config newcomer;
  for (const Cook& cook : theirs.cooks) {
    const std::size_t row = row_of(theirs, cook);
    const Cook* here = find_cook(ours, cook.name);
    if (here == nullptr) {
      const bool kept_place = row < ours.cooks.size() &&
                              config::is_stand_in(ours.cooks[row].name) &&
                              find_cook(theirs, ours.cooks[row].name) == nullptr;
      found.push_back({Differs::NewCook, kept_place ? row : 0, row,
                       cook_fields(newcomer, 0, theirs, row), kept_place});
    } else if (*here != cook) {
      const std::size_t own = row_of(ours, *here);
      others.push_back({Differs::OtherCook, own, row, cook_fields(ours, own, theirs, row)});
    }
  }
  for (const Field& field : config::fields()) {
    if (field.group != Group::Station || field.get(ours, 0) == field.get(theirs, 0)) continue;
    const std::string_view answer = answer_of(field);
    const auto same = std::find_if(station.begin(), station.end(), [answer](const Difference& d) {
      return answer_of(*d.fields.front()) == answer;
    });
    if (same != station.end()) {
      same->fields.push_back(&field);
    } else {
      station.push_back({Differs::Station, 0, 0, {&field}});
    }
  }
  if (ours.survey.points != theirs.survey.points) station.push_back({Differs::Ground});
  if (ours.stock != theirs.stock) station.push_back({Differs::Stock});
  found.insert(found.end(), others.begin(), others.end());
  found.insert(found.end(), station.begin(), station.end());
  return found;
}

bool is_reply(const Config& ours, const Config& theirs) {
  if (ours.oven.kind != theirs.oven.kind) return false;
  const std::vector<Difference> all = differences(ours, theirs);
  const auto elsewhere =
      static_cast<std::size_t>(std::count_if(all.begin(), all.end(), is_of_station));
  if (elsewhere == all.size() || elsewhere > kMostElse) return false;
  const bool known_place =
      std::any_of(all.begin(), all.end(), [](const Difference& d) { return d.for_stand_in; });
  if (known_place && elsewhere == 0) return true;
  return std::any_of(ours.cooks.begin(), ours.cooks.end(), [&](const Cook& cook) {
    const Cook* there = find_cook(theirs, cook.name);
    return there != nullptr && (*there == cook || elsewhere == 0);
  });
}

Result<Config> merged(const Config& ours, const Config& theirs, std::span<const Say> said) {
  const std::vector<Difference> all = differences(ours, theirs);
  Config next = ours;
  std::vector<Cook> again;
  for (std::size_t i = 0; i < std::min(all.size(), said.size()); ++i) {
    if (said[i] == Say::Ours) continue;
    const Difference& d = all[i];
    const bool both = said[i] == Say::Both;
    const bool in_place = said[i] == Say::InPlace;
    if (both && d.kind != Differs::OtherCook) continue;
    if (in_place && d.kind != Differs::NewCook) continue;
    switch (d.kind) {
      case Differs::NewCook:
        if (in_place && d.for_stand_in) {
          const std::string before = next.cooks[d.ours].name;
          next.cooks[d.ours] = theirs.cooks[d.theirs];
          config::follow_rename(next, before, next.cooks[d.ours].name);
        } else {
          next.cooks.push_back(theirs.cooks[d.theirs]);
        }
        break;
      case Differs::OtherCook:
        if (both) {
          again.push_back(theirs.cooks[d.theirs]);
        } else {
          next.cooks[d.ours] = theirs.cooks[d.theirs];
        }
        break;
      case Differs::Station:
        for (const Field* field : d.fields) field->set(next, 0, field->get(theirs, 0));
        break;
      case Differs::Ground:
        next.survey.points = theirs.survey.points;
        break;
      case Differs::Stock:
        next.stock = theirs.stock;
        break;
    }
  }
  // Last, so that their names are free among all the others'.
  for (Cook& cook : again) {
    cook.name = free_name(next, cook.name);
    next.cooks.push_back(std::move(cook));
  }
  std::vector<Problem> problems = config::validate(next);
  if (!problems.empty()) return problems;
  return next;
}

}  // namespace hs::share
