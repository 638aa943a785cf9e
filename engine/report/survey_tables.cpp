// Tables of the ground and of the base's panels: each cell already in words.

#include <algorithm>
#include <cmath>

#include "engine/base/number_text.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/survey_words.h"

namespace hs::report {
namespace {

using evaluate::SurveyResult;

std::string above_or_below(double mm, Units units) {
  constexpr double kNothing_mm = 0.05;
  if (std::abs(mm) < kNothing_mm) return "level with the feet";
  return cut_length(std::abs(mm), units) + (mm > 0 ? " above" : " below");
}

std::string_view kind_words(survey::Kind kind) {
  switch (kind) {
    case survey::Kind::Panel:
      return "panel";
    case survey::Kind::Joint:
      return "joint";
    case survey::Kind::Feet:
      return "feet";
    case survey::Kind::Other:
      return "ground";
  }
  return "";
}

Table points_table(const Page& page, const SurveyResult& s) {
  Table table{"The ground, as read; heights above the feet",
              {"Point", "Along", "Back", "There", "Height", "Off the plane", "Reading"},
              {}};
  for (const survey::Point& point : s.levels.points) {
    std::string state = "one";
    if (point.readings == 0) state = "missing";
    if (point.readings > 0 && !point.height_mm) state = "line not joined";
    if (point.readings > 1) {
      state = trimmed(point.readings, 0) + ", apart by " + cut_length(point.spread_mm, page.units);
    }
    if (point.doubtful) state += "; doubtful, read it again";
    std::string off = "not known";
    if (point.height_mm && s.plane) {
      off =
          cut_length(std::abs(*point.height_mm - s.plane->at(point.x_mm, point.y_mm)), page.units);
    }
    table.rows.push_back(
        {trimmed(static_cast<double>(point.first + 1), 0), page.length(point.x_mm),
         page.length(point.y_mm), std::string(kind_words(point.kind)),
         point.height_mm ? above_or_below(*point.height_mm, page.units) : std::string("not known"),
         std::move(off), std::move(state)});
  }
  return table;
}

Table summary_table(const Page& page, const SurveyResult& s) {
  Table table{"What the ground does", {"Of the ground", "As read"}, {}};
  const auto row = [&](std::string name, std::string value) {
    table.rows.push_back({std::move(name), std::move(value)});
  };
  if (s.high) {
    row("Highest", "point " + trimmed(static_cast<double>(s.levels.points[*s.high].first + 1), 0) +
                       ", " + above_or_below(*s.levels.points[*s.high].height_mm, page.units));
    row("Lowest", "point " + trimmed(static_cast<double>(s.levels.points[*s.low].first + 1), 0) +
                      ", " + above_or_below(*s.levels.points[*s.low].height_mm, page.units));
  }
  if (s.plane) {
    // A metre, or 10 ft.
    const double run_mm = page.units == Units::Inch ? 3048 : 1000;
    const auto each = [&](double share, const char* up, const char* down) {
      return cut_length(std::abs(share) * run_mm, page.units) + " for each " + page.length(run_mm) +
             ", " + (share > 0 ? up : down);
    };
    row("Along the front", each(s.plane->across, "rising to the right", "rising to the left"));
    row("Front to back", each(s.plane->back, "rising to the back", "rising to the front"));
    const std::string_view way = downhill(*s.slope);
    row("Water runs", way.empty() ? std::string("nowhere: it is level")
                                  : "to the " + std::string(way) + ", " +
                                        trimmed(100 * s.slope->share, 1) + " %");
    std::string off = cut_length(s.usual_off_mm, page.units) + " as a rule, " +
                      cut_length(s.worst_off_mm, page.units) + " at most";
    if (!s.doubts.empty()) {
      double doubtful_mm = 0;
      for (const std::size_t i : s.doubts) {
        const survey::Point& point = s.levels.points[i];
        doubtful_mm =
            std::max(doubtful_mm, std::abs(*point.height_mm - s.plane->at(point.x_mm, point.y_mm)));
      }
      off += ", without what is doubtful: that is up to " + cut_length(doubtful_mm, page.units);
    }
    row("Off the plane", std::move(off));
  }
  if (s.base) row("Top of the base", base_top(s, page.units));
  row("One reading", "plus or minus " + cut_length(s.reading_error_mm, page.units));
  for (const survey::Loop& loop : s.levels.loops) {
    std::string lines;
    for (const int setup : loop.setups) {
      lines += (lines.empty() ? "" : ", ") + std::string(1, static_cast<char>('a' + setup));
    }
    row("Lines " + lines + " close to", cut_length(loop.error_mm, page.units));
  }
  return table;
}

std::string places(const std::vector<double>& along_mm, Units units) {
  std::string text;
  for (const double mm : along_mm) text += (text.empty() ? "" : ", ") + cut_length(mm, units);
  return text;
}

Table panels_table(const Page& page, const SurveyResult& s) {
  const survey::Base& base = *s.base;
  Table table{"Panels of the base, in order",
              {"Panel", "Rip the board to", "Compass", "Compass, board not ripped", "Least left",
               "Touches level at", "How"},
              {}};
  for (const std::size_t i : base.order) {
    const survey::Cut& cut = *base.cuts[i];
    const std::string stop = do_not_cut(s, i);
    table.rows.push_back(
        {capitalised(std::string(s.panels[i].name)), cut_length(cut.rip_mm, page.units),
         cut_length(cut.compass_mm, page.units), cut_length(cut.compass_unripped_mm, page.units),
         cut_length(cut.least_mm, page.units), places(cut.touches, page.units),
         stop.empty() ? std::string(way_words(cut.way)) : lower_first(stop)});
  }
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    if (base.cuts[i]) continue;
    table.rows.push_back(
        {capitalised(std::string(s.panels[i].name)), "not known", "not known", "not known",
         "not known", "not known",
         "needs " + std::string(s.grounds[i].lacks) +
             (evaluate::shows(s.places[i]) ? "" : ", or stands clear of the ground")});
  }
  return table;
}

Table heights_table(const Page& page, const SurveyResult& s) {
  Table table{"The same height, measured from elsewhere",
              {"Top", "Above the feet", "Above the base", "Above the highest ground under it",
               "Above the lowest ground under it"},
              {}};
  const auto row = [&](const char* name, const std::optional<evaluate::AboveBase>& above) {
    if (!above) return;
    table.rows.push_back({name, page.length(above->feet_mm), page.length(above->base_mm),
                          page.length(above->high_mm), page.length(above->low_mm)});
  };
  row("Dough counter", s.counter);
  row("Oven counter", s.oven);
  return table;
}

}  // namespace

std::string cut_length(double mm, Units units) {
  if (units == Units::Millimetre) return trimmed(mm, 1) + " mm";
  constexpr int kThirtySeconds = 32;
  return inches_text(mm, kThirtySeconds, Fractions::Typographic);
}

std::string point_list(const std::vector<std::size_t>& readings) {
  std::string text = readings.size() == 1 ? "point " : "points ";
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (i > 0) text += i + 1 == readings.size() ? " and " : ", ";
    text += std::to_string(readings[i] + 1);
  }
  return text;
}

std::string do_not_cut(const SurveyResult& survey, std::size_t panel) {
  if (survey.base && panel < survey.base->cuts.size() && survey.base->cuts[panel] &&
      survey.base->cuts[panel]->way == survey::Way::Legs) {
    return "Do not cut: this board does not suit its ground (" +
           std::string(way_words(survey::Way::Legs)) + ")";
  }
  if (panel >= survey.stops.size() || survey.stops[panel].empty()) return {};
  return "Do not cut yet: " + point_list(survey.stops[panel]) +
         (survey.stops[panel].size() == 1 ? " is doubtful" : " are doubtful");
}

std::string base_top(const SurveyResult& survey, Units units) {
  return cut_length(survey.base->top_mm, units) + " above the cooks' feet" +
         (survey.built ? ", as it was measured when built" : "");
}

std::string_view way_words(survey::Way way) {
  switch (way) {
    case survey::Way::Straight:
      return "leave it straight";
    case survey::Way::Shim:
      return "shims are wiser than a cut";
    case survey::Way::Scribe:
      return "cut once";
    case survey::Way::Legs:
      return "legs, a taller board, or relevel the ground";
  }
  return "";
}

std::vector<Table> survey_tables(const Page& page) {
  const auto& survey = page.evaluation.survey;
  if (!survey) return {};
  std::vector<Table> tables{summary_table(page, *survey)};
  if (survey->base) {
    tables.push_back(panels_table(page, *survey));
    tables.push_back(heights_table(page, *survey));
  }
  tables.push_back(points_table(page, *survey));
  return tables;
}

}  // namespace hs::report
