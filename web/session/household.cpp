// What a household does to its station as a whole: someone adds themselves, a station of
// one's own begins. All of it comes after the first picture.

#include <optional>
#include <string>
#include <utility>

#include "engine/base/number_text.h"
#include "engine/base/text.h"
#include "engine/config/fields.h"
#include "engine/config/setting.h"
#include "engine/cook/stature.h"
#include "web/session/session.h"

namespace hs::web {
namespace {

bool is_blank(std::string_view text) { return trimmed_ends(text).empty(); }

std::string path_of_cook(std::size_t row, std::string_view key) {
  return "cooks." + std::to_string(row) + "." + std::string(key);
}

// A body's height as people say it: a bare number that is nobody's height in the person's own unit
// is one in centimetres ("168") or metres ("1.68").
std::string said_height(std::string_view text, Unit unit) {
  const std::string given(trimmed_ends(text));
  const std::optional<double> number = parse_decimal(given);
  if (!number) return given;
  const config::Field* field = config::find_field("cooks[].stature_mm");
  const auto is_height = [field](double mm) { return mm >= field->min && mm <= field->max; };
  if (is_height(*number * (unit == Unit::Inch ? 25.4 : 1))) return given;
  if (is_height(*number * 10)) return given + " cm";
  if (is_height(*number * 1000)) return given + " m";
  return given;
}

// Sets one field of a cook; what is wrong with it is added to `problems`.
void put(config::Config& next, std::size_t row, std::string_view key, std::string_view text,
         Unit unit, std::vector<Problem>& problems) {
  if (is_blank(text)) return;
  const config::Field* field = config::find_field(path_of_cook(row, key));
  const std::vector<Problem> wrong = config::set_field(next, *field, row, text, unit);
  problems.insert(problems.end(), wrong.begin(), wrong.end());
}

}  // namespace

std::vector<Problem> Session::add_person(const Person& person, report::Units bare) {
  config::Config next = config_;
  const bool there = person.place && *person.place < next.cooks.size();
  if (!there && !config::add_cook(next)) {
    return {{"cooks", "", "at most " + std::to_string(config::kMaxCooks) + " cooks"}};
  }
  const std::size_t row = there ? *person.place : next.cooks.size() - 1;
  const Unit unit = report::unit_of(bare);
  std::vector<Problem> problems;
  if (is_blank(person.name)) problems.push_back({path_of_cook(row, "name"), "", "a name"});
  put(next, row, "name", person.name, unit, problems);
  put(next, row, "stature_mm", said_height(person.stature, unit), unit, problems);
  put(next, row, "eye_height_mm", person.eye, unit, problems);
  put(next, row, "elbow_height_mm", person.elbow, unit, problems);
  if (!problems.empty()) return problems;
  config::Cook& cook = next.cooks[row];
  if (is_blank(person.stature) && !(there && !cook.eye_height_mm)) {
    const std::string path = path_of_cook(row, "stature_mm");
    if (!cook.eye_height_mm) return {{path, "", "a body height, or a measured eye level"}};
    const auto stature_mm = cook::stature_for_eye(cook, *cook.eye_height_mm);
    if (!stature_mm) return {{path, "", "a body height: nobody's follows from that eye level"}};
    cook.stature_mm = *stature_mm;
  }
  return adopt(std::move(next));
}

std::vector<Problem> Session::start_own(std::string_view tallest, std::string_view shortest,
                                        std::string_view kind, report::Units bare) {
  config::Config next;
  const Unit unit = report::unit_of(bare);
  std::vector<Problem> problems;
  if (is_blank(tallest)) problems.push_back({path_of_cook(0, "stature_mm"), "", "a body height"});
  put(next, 0, "stature_mm", said_height(tallest, unit), unit, problems);
  if (!is_blank(shortest)) {
    config::add_cook(next);
    put(next, 1, "stature_mm", said_height(shortest, unit), unit, problems);
    next.cooks[0].name = config::kTallest;
    next.cooks[1].name = config::kShortest;
  }
  const std::vector<Problem> oven = fit_oven(next, kind);
  problems.insert(problems.end(), oven.begin(), oven.end());
  if (!problems.empty()) return problems;
  return adopt(std::move(next));
}

}  // namespace hs::web
