// Report key "survey".

#include <cmath>
#include <cstdint>
#include <string>

#include "engine/base/number_text.h"
#include "engine/report/json_values.h"
#include "engine/report/survey_words.h"

namespace hs::report {
namespace {

using evaluate::SurveyResult;

constexpr std::string_view kSetupNames[] = {"a", "b", "c", "d"};
constexpr std::string_view kKindNames[] = {"panel", "joint", "feet", "other"};

std::string hex(std::uint64_t value) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text(16, '0');
  for (std::size_t i = text.size(); i-- > 0; value >>= 4U) text[i] = kDigits[value & 15U];
  return text;
}

void put_index(JsonWriter& out, std::string_view key, const std::optional<std::size_t>& index) {
  put_number(out, key, index ? std::optional(static_cast<double>(*index)) : std::nullopt, 0);
}

void put_points(JsonWriter& out, const SurveyResult& s) {
  out.key("points");
  out.begin_list();
  for (const survey::Point& point : s.levels.points) {
    out.begin_object();
    put_index(out, "reading", point.first);
    put_text(out, "kind", kKindNames[static_cast<std::size_t>(point.kind)]);
    put_mm(out, "x_mm", point.x_mm);
    put_mm(out, "y_mm", point.y_mm);
    put_mm(out, "height_mm", point.height_mm);
    put_number(out, "readings", point.readings, 0);
    put_mm(out, "spread_mm", point.spread_mm);
    put_flag(out, "doubtful", point.doubtful);
    const bool fitted = s.plane && point.height_mm;
    put_mm(out, "off_plane_mm",
           fitted ? std::optional(*point.height_mm - s.plane->at(point.x_mm, point.y_mm))
                  : std::nullopt);
    out.end_object();
  }
  out.end_list();
}

void put_lines(JsonWriter& out, const SurveyResult& s) {
  out.key("level_lines");
  out.begin_list();
  for (const survey::Line& line : s.levels.lines) {
    out.begin_object();
    put_text(out, "setup", kSetupNames[line.setup]);
    put_number(out, "readings", line.readings, 0);
    put_mm(out, "height_mm", line.height_mm);
    out.end_object();
  }
  out.end_list();
  out.key("loops");
  out.begin_list();
  for (const survey::Loop& loop : s.levels.loops) {
    out.begin_object();
    std::string setups;
    for (const int setup : loop.setups) setups += kSetupNames[setup];
    put_text(out, "setups", setups);
    put_mm(out, "closing_error_mm", loop.error_mm);
    put_mm(out, "allowed_mm", survey::closing_limit_mm(s.reading_error_mm, loop.readings));
    out.end_object();
  }
  out.end_list();
}

void put_plane(JsonWriter& out, const SurveyResult& s) {
  out.key("plane");
  if (!s.plane) {
    out.null();
    return;
  }
  out.begin_object();
  put_mm(out, "level_mm", s.plane->level_mm);
  // Rise over each metre.
  put_mm(out, "across_mm_per_m", 1000 * s.plane->across);
  put_mm(out, "back_mm_per_m", 1000 * s.plane->back);
  put_mm(out, "worst_off_mm", s.worst_off_mm);
  put_mm(out, "usual_off_mm", s.usual_off_mm);
  put_share(out, "fall_fraction", s.slope->share);
  put_text_or_null(out, "falls_to", downhill(*s.slope));
  out.end_object();
}

void put_cut(JsonWriter& out, const survey::Cut& cut) {
  put_mm(out, "least_mm", cut.least_mm);
  put_mm(out, "most_mm", cut.most_mm);
  put_mm(out, "fall_mm", cut.fall_mm);
  put_mm(out, "rip_mm", cut.rip_mm);
  put_mm(out, "compass_mm", cut.compass_mm);
  put_mm(out, "compass_unripped_mm", cut.compass_unripped_mm);
  put_text(out, "way", way_name(cut.way));
  out.key("touches_level_mm");
  out.begin_list();
  for (const double along : cut.touches) out.number(trimmed(along, 1));
  out.end_list();
  out.key("rests_on_mm");
  out.begin_list();
  out.number(trimmed(cut.rest.left_mm, 1));
  out.number(trimmed(cut.rest.right_mm, 1));
  out.end_list();
  put_mm(out, "rests_out_of_level_mm", cut.rest.rise_mm);
  out.key("ordinates");
  out.begin_list();
  for (const survey::Ordinate& o : cut.ordinates) {
    out.begin_object();
    put_mm(out, "along_mm", o.along_mm);
    put_mm(out, "height_mm", o.height_mm);
    put_mm(out, "cut_mm", o.cut_mm);
    put_flag(out, "reading", o.read);
    put_flag(out, "joint", o.joint);
    out.end_object();
  }
  out.end_list();
}

void put_panels(JsonWriter& out, const SurveyResult& s) {
  out.key("panels");
  out.begin_list();
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    const survey::PanelLine& panel = s.panels[i];
    out.begin_object();
    put_text(out, "name", panel.name);
    put_mm(out, "length_mm", panel.length_mm());
    put_mm(out, "from_x_mm", panel.from_x_mm);
    put_mm(out, "from_y_mm", panel.from_y_mm);
    put_mm(out, "to_x_mm", panel.to_x_mm);
    put_mm(out, "to_y_mm", panel.to_y_mm);
    put_flag(out, "shows", evaluate::shows(s.places[i]));
    put_text_or_null(out, "lacks", s.grounds[i].lacks);
    out.key("cut");
    if (s.base && s.base->cuts[i]) {
      out.begin_object();
      put_cut(out, *s.base->cuts[i]);
      out.end_object();
    } else {
      out.null();
    }
    out.end_object();
  }
  out.end_list();
}

void put_base(JsonWriter& out, const SurveyResult& s) {
  out.key("base");
  if (!s.base) {
    out.null();
    return;
  }
  const survey::Base& base = *s.base;
  out.begin_object();
  put_mm(out, "top_mm", base.top_mm);
  put_flag(out, "top_as_built", s.built);
  put_flag(out, "possible", base.possible);
  put_flag(out, "fits", base.fits);
  put_mm(out, "lowest_top_mm", base.possible ? std::optional(base.lowest_top_mm) : std::nullopt);
  put_mm(out, "highest_top_mm", base.possible ? std::optional(base.highest_top_mm) : std::nullopt);
  put_mm(out, "board_needed_mm", base.board_needed_mm);
  put_mm(out, "highest_ground_mm", base.high_mm);
  put_text(out, "highest_under", s.panels[base.high_panel].name);
  put_mm(out, "lowest_ground_mm", base.low_mm);
  put_text(out, "lowest_under", s.panels[base.low_panel].name);
  out.key("order");
  out.begin_list();
  for (const std::size_t i : base.order) out.string(s.panels[i].name);
  out.end_list();
  out.end_object();
}

void put_above(JsonWriter& out, std::string_view key,
               const std::optional<evaluate::AboveBase>& above) {
  if (!above) {
    put_null(out, key);
    return;
  }
  out.key(key);
  out.begin_object();
  put_mm(out, "above_feet_mm", above->feet_mm);
  put_mm(out, "above_base_mm", above->base_mm);
  put_mm(out, "above_lowest_ground_mm", above->low_mm);
  put_mm(out, "above_highest_ground_mm", above->high_mm);
  out.end_object();
}

}  // namespace

std::string_view downhill(const survey::Slope& slope) {
  constexpr double kLevel = 0.001;
  if (slope.share < kLevel) return {};
  // Eighths of a turn: tan 22.5 degrees.
  constexpr double kEighth = 0.41421356237309503;
  const double x = std::abs(slope.x), y = std::abs(slope.y);
  const bool across = x > kEighth * y, along = y > kEighth * x;
  if (across && along) {
    if (slope.y < 0) return slope.x < 0 ? "front left" : "front right";
    return slope.x < 0 ? "back left" : "back right";
  }
  if (across) return slope.x < 0 ? "left" : "right";
  return slope.y < 0 ? "front" : "back";
}

std::string_view way_name(survey::Way way) {
  switch (way) {
    case survey::Way::Straight:
      return "straight";
    case survey::Way::Shim:
      return "shim";
    case survey::Way::Scribe:
      return "scribe";
    case survey::Way::Legs:
      return "legs";
  }
  return "";
}

void put_survey(JsonWriter& out, const evaluate::SurveyResult& s) {
  out.begin_object();
  put_text(out, "inputs_digest", hex(s.digest));
  put_points(out, s);
  put_number(out, "missing", static_cast<double>(s.levels.missing), 0);
  put_number(out, "not_joined", static_cast<double>(s.levels.unjoined), 0);
  put_lines(out, s);
  put_number(out, "feet_points", s.feet, 0);
  put_mm(out, "feet_spread_mm", s.feet_spread_mm);
  put_index(out, "highest_point", s.high);
  put_index(out, "lowest_point", s.low);
  put_mm(out, "reading_plus_minus_mm", s.reading_error_mm);
  put_plane(out, s);
  put_base(out, s);
  put_above(out, "counter", s.counter);
  put_above(out, "oven_counter", s.oven);
  put_panels(out, s);
  out.end_object();
}

}  // namespace hs::report
