// Tables of free room, cylinder openings and rain: each cell already in words.

#include "engine/report/cited.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/weather/rain.h"

namespace hs::report {
namespace {

std::string area(double cm2, Units units) {
  constexpr double kSquareInch_cm2 = 6.4516;
  return units == Units::Inch ? fixed(cm2 / kSquareInch_cm2, 1) + " sq in"
                              : fixed(cm2, 0) + " cm\u00B2";
}

std::string rain(double mm_h, Units units) {
  return units == Units::Inch ? trimmed(mm_h / 25.4, 2) + " in an hour"
                              : trimmed(mm_h, 1) + " mm an hour";
}

Table vents_table(const Page& page) {
  Table table{"Openings of a closed space for the gas cylinder",
              {"Published form", "High", "Low", "Counted"},
              {}};
  const auto row = [&](std::string form, const std::optional<clearance::Vents>& vents) {
    if (!vents) return;
    table.rows.push_back({std::move(form), area(vents->high_cm2, page.units),
                          area(vents->low_cm2, page.units),
                          vents->each ? "each opening, two high and two low, opposite"
                                      : "all together, two high a quarter turn apart or more"});
  };
  const evaluate::Surroundings& around = page.evaluation.surroundings;
  row("Grills and ovens (Z21.58, through manuals)", around.grill_vents);
  row("Fire features (Z21.97, through manuals)", around.fire_feature_vents);
  return table;
}

}  // namespace

std::vector<Table> clearance_tables(const Page& page) {
  Table table{"Free room", {"Side", "Asked for", "By", "There is"}, {}};
  for (const clearance::Need& need : page.evaluation.clearances) {
    std::string by(clear_asker(clearance::Hot::Oven, need.from));
    table.rows.push_back({capitalised(std::string(clearance::side_name(need.side))),
                          need.required_mm ? page.length(*need.required_mm) : "not known",
                          std::move(by),
                          need.available_mm ? page.length(*need.available_mm) : "not measured"});
  }
  std::vector<Table> tables{std::move(table)};
  Table vents = vents_table(page);
  if (!vents.rows.empty()) tables.push_back(std::move(vents));
  return tables;
}

std::vector<Table> weather_tables(const Page& page) {
  const auto& wind = page.config.site.wind_m_s;
  if (!wind) return {};
  Table table{
      "Rain on the slant at " + speed(*wind, page.units),
      {"Drops", "From the vertical", "Comes in, for each " + page.length(1000) + " of height",
       "Face kept dry by the counter's edge"},
      {}};
  struct Row {
    const char* name;
    double drop_mm;
  };
  constexpr Row kRows[] = {{"0.5 mm, drizzle", 0.5},
                           {"1 mm, light rain", 1},
                           {"2 mm, moderate rain (judged by)", weather::kUsualDrop_mm},
                           {"3 mm, heavy rain", 3},
                           {"5 mm, cloudburst", 5}};
  for (const Row& row : kRows) {
    const auto dry_mm = weather::dry_face_mm(page.config.station.overhang_mm, *wind, row.drop_mm);
    table.rows.push_back({row.name, degrees(weather::slant_deg(*wind, row.drop_mm)),
                          page.length(weather::reach_mm(1000, *wind, row.drop_mm)),
                          dry_mm ? page.length(*dry_mm) : "all of it"});
  }
  std::vector<Table> tables{std::move(table)};
  Table storms{"Rain by how hard it falls, in that wind",
               {"Rain", "Middle drop in the air (Best 1950)",
                "Middle drop that lands (Laws and Parsons 1943)", "From the vertical",
                "Driven onto an upright front (Lacy, ISO 15927-3)"},
               {}};
  for (const evaluate::Storm& storm : page.evaluation.surroundings.storms) {
    storms.rows.push_back({rain(storm.rain_mm_h, page.units), trimmed(storm.drop_air_mm, 1) + " mm",
                           trimmed(storm.drop_landing_mm, 1) + " mm", degrees(storm.slant_deg),
                           rain(storm.onto_front_mm_h, page.units)});
  }
  tables.push_back(std::move(storms));
  if (const auto& limit = page.evaluation.surroundings.dry_up_to_m_s) {
    tables.push_back({"The cover",
                      {"Keeps the counter dry up to"},
                      {{speed(*limit, page.units) + ", straight at the front, drops of 2 mm"}}});
  }
  return tables;
}

}  // namespace hs::report
