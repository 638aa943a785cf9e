#include "engine/report/compare.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "engine/base/json_writer.h"
#include "engine/config/fields.h"
#include "engine/report/field_text.h"
#include "engine/report/headline.h"
#include "engine/report/html.h"
#include "engine/report/json_values.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

using Stations = std::span<const Compared>;

std::string judged(Verdict verdict, std::string_view words) {
  std::string text(verdict_word(verdict));
  if (!words.empty()) text += ": " + std::string(words);
  return text;
}

// One table on its way: rows that say the same everywhere are only counted.
struct Sheaf {
  Table table;
  std::size_t same = 0;

  Sheaf(std::string caption, Stations stations) {
    table.caption = std::move(caption);
    table.columns = {""};
    for (const Compared& station : stations) table.columns.push_back(station.name);
  }

  void row(std::string name, std::vector<std::string> cells) {
    if (std::all_of(cells.begin(), cells.end(),
                    [&](const std::string& cell) { return cell == cells.front(); })) {
      ++same;
      return;
    }
    cells.insert(cells.begin(), std::move(name));
    table.rows.push_back(std::move(cells));
  }
};

template <class Cell>
std::vector<std::string> cells_of(Stations stations, const Cell& cell) {
  std::vector<std::string> cells;
  for (const Compared& station : stations) cells.push_back(cell(station));
  return cells;
}

std::string headline_cell(const Headline& h, bool masonry) {
  // A mason's height is another one, so it says which.
  std::string text = masonry ? h.label + " " + h.value : h.value;
  if (!h.yours.empty()) text += "; " + h.yours;
  return judged(h.verdict, text);
}

Sheaf heights(Stations stations, Units units) {
  Sheaf sheaf("Heights", stations);
  sheaf.row("Oven", cells_of(stations, [units](const Compared& s) {
              return headline_cell(oven_headline(*s.config, *s.evaluation, units),
                                   config::is_masonry(s.config->oven.kind));
            }));
  sheaf.row("Dough counter", cells_of(stations, [units](const Compared& s) {
              return headline_cell(dough_headline(*s.config, *s.evaluation, units), false);
            }));
  sheaf.row("From dough counter up to the oven's base",
            cells_of(stations, [units](const Compared& s) {
              const auto& riser_mm = s.evaluation->used.riser_mm;
              return riser_mm ? plain_length(*riser_mm, units, true) : std::string(kNoHeight);
            }));
  sheaf.row("Where to stand", cells_of(stations, [units](const Compared& s) {
              const std::string line = feet_line(*s.evaluation, units);
              return line.empty() ? std::string(kNoHeight) : line;
            }));
  return sheaf;
}

const config::Cook* cook_named(const config::Config& config, std::string_view name) {
  const auto it = std::find_if(config.cooks.begin(), config.cooks.end(),
                               [name](const config::Cook& c) { return c.name == name; });
  return it == config.cooks.end() ? nullptr : &*it;
}

std::vector<std::string> cook_names(Stations stations) {
  std::vector<std::string> names;
  for (const Compared& station : stations) {
    for (const config::Cook& cook : station.config->cooks) {
      if (std::find(names.begin(), names.end(), cook.name) == names.end()) {
        names.push_back(cook.name);
      }
    }
  }
  return names;
}

Sheaf people(Stations stations, Units units) {
  Sheaf sheaf("How it suits whom", stations);
  std::vector<Summary> said;
  for (const Compared& s : stations) said.push_back(summary(*s.config, *s.evaluation, units));
  for (const std::string& name : cook_names(stations)) {
    std::vector<std::string> cells;
    for (const Summary& s : said) {
      const auto it = std::find_if(s.cooks.begin(), s.cooks.end(),
                                   [&](const CookLine& line) { return line.name == name; });
      cells.push_back(it == s.cooks.end() ? std::string(kNoHeight) : judged(it->verdict, it->line));
    }
    sheaf.row(name, std::move(cells));
  }
  return sheaf;
}

// What a finding is about, wherever it stands in its station.
struct Subject {
  std::string_view rule, where, cook;

  bool operator==(const Subject&) const = default;
};

Subject subject_of(const Finding& finding, const config::Config& config) {
  return {finding.rule, finding.where,
          finding.cook ? std::string_view(config.cooks[*finding.cook].name) : std::string_view()};
}

const Finding* finding_on(const Compared& station, const Subject& subject) {
  for (const Finding& finding : station.evaluation->findings) {
    if (subject_of(finding, *station.config) == subject) return &finding;
  }
  return nullptr;
}

Sheaf findings(Stations stations, Units units) {
  Sheaf sheaf("Findings", stations);
  std::vector<Subject> subjects;
  for (const Compared& station : stations) {
    for (const Finding& finding : station.evaluation->findings) {
      const Subject subject = subject_of(finding, *station.config);
      if (std::find(subjects.begin(), subjects.end(), subject) == subjects.end()) {
        subjects.push_back(subject);
      }
    }
  }
  for (const Subject& subject : subjects) {
    std::vector<const Finding*> found;
    for (const Compared& station : stations) found.push_back(finding_on(station, subject));
    const auto verdict_of = [](const Finding* f) { return f ? f->verdict : Verdict::Ok; };
    // Other numbers under the same verdict are in the heights and in what each station says; and
    // what is fine where it is asked, and not asked elsewhere, sets no station apart.
    if (std::all_of(found.begin(), found.end(),
                    [&](const Finding* f) { return verdict_of(f) == verdict_of(found.front()); })) {
      ++sheaf.same;
      continue;
    }
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < stations.size(); ++i) {
      const Finding* f = found[i];
      const bool fine = f && f->verdict == Verdict::Ok;
      cells.push_back(!f ? std::string(kNoHeight)
                         : judged(f->verdict, fine ? std::string()
                                                   : sentence(*f, *stations[i].config,
                                                              *stations[i].evaluation, units)));
    }
    const rules::Rule* rule = rules::find_rule(subject.rule);
    std::string name(rule ? rule->title : subject.rule);
    for (const std::string_view more : {subject.where, subject.cook}) {
      if (!more.empty()) name += ", " + std::string(more);
    }
    cells.insert(cells.begin(), std::move(name));
    sheaf.table.rows.push_back(std::move(cells));
  }
  return sheaf;
}

Sheaf answers(Stations stations, Units units) {
  Sheaf sheaf("Answers", stations);
  for (const config::Field& field : config::fields()) {
    // The title is the column's head.
    if (field.group != config::Group::Station || field.path == "title") continue;
    sheaf.row(std::string(field.label), cells_of(stations, [&](const Compared& s) {
                // A text that nobody has typed.
                const std::string said = field_text(field, *s.config, 0, units);
                return said.empty() ? std::string("not said") : said;
              }));
  }
  for (const std::string& name : cook_names(stations)) {
    const bool everywhere = std::all_of(stations.begin(), stations.end(), [&](const Compared& s) {
      return cook_named(*s.config, name) != nullptr;
    });
    for (const config::Field& field : config::fields()) {
      if (field.group != config::Group::Cook || field.path == "cooks[].name") continue;
      // Who is not in one of them is told by that alone; their height only says who it is.
      if (!everywhere && field.path != "cooks[].stature_mm") continue;
      sheaf.row(name + ", " + std::string(field.label), cells_of(stations, [&](const Compared& s) {
                  const config::Cook* cook = cook_named(*s.config, name);
                  if (!cook) return std::string("not in it");
                  const auto row = static_cast<std::size_t>(cook - s.config->cooks.data());
                  return field_text(field, *s.config, row, units);
                }));
    }
  }
  sheaf.row("Readings of the ground", cells_of(stations, [](const Compared& s) {
              return std::to_string(s.config->survey.points.size());
            }));
  sheaf.row("Rows of the stock list", cells_of(stations, [](const Compared& s) {
              return std::to_string(s.config->stock.size());
            }));
  return sheaf;
}

std::string counted(std::size_t count, std::string_view one, std::string_view more) {
  return std::to_string(count) + " " + std::string(count == 1 ? one : more);
}

}  // namespace

Comparison compare(Stations stations, Units units) {
  const Sheaf high = heights(stations, units), who = people(stations, units),
              found = findings(stations, units), said = answers(stations, units);
  Comparison comparison;
  for (const Sheaf* sheaf : {&high, &who, &found, &said}) {
    if (!sheaf->table.rows.empty()) comparison.tables.push_back(sheaf->table);
  }
  comparison.same = (comparison.tables.empty() ? "Nothing differs. " : std::string()) +
                    "The same in all of them: " +
                    counted(high.same + who.same, "height or person, ", "heights and people, ") +
                    counted(found.same, "finding, ", "findings, ") +
                    counted(said.same, "answer.", "answers.");
  return comparison;
}

std::string compare_json(Stations stations, Units units) {
  const Comparison comparison = compare(stations, units);
  JsonWriter out;
  out.begin_object();
  out.key("tables");
  out.begin_list();
  for (const Table& table : comparison.tables) put_table(out, table);
  out.end_list();
  put_text(out, "same", comparison.same);
  out.end_object();
  return out.take();
}

}  // namespace hs::report
