#include "engine/evaluate/surveying.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "engine/base/lasting_texts.h"
#include "engine/base/quantity.h"
#include "engine/config/fields.h"
#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"
#include "engine/frame/as_built.h"
#include "engine/frame/frame.h"
#include "engine/weather/shelter.h"

namespace hs::evaluate {
namespace {

constexpr double kGap_mm = 600;        // between readings under a panel: our judgement
constexpr double kFeetSpread_mm = 10;  // between cooks' feet: our judgement
constexpr int kFewestFeet = 2;         // no evenness in one point; not where one cook stands: ours
constexpr double kAnchorEdge = 5, kAnchorSpacing = 10;  // diameters; a supplier's rule, second hand

constexpr auto kPointNames = [] {
  LastingTexts<config::kMaxPoints, 8> names;
  for (std::size_t i = 1; i <= config::kMaxPoints; ++i) names.add("point ", i, "");
  return names;
}();

survey::Kind kind_of(config::PointKind kind) {
  switch (kind) {
    case config::PointKind::Panel:
      return survey::Kind::Panel;
    case config::PointKind::Joint:
      return survey::Kind::Joint;
    case config::PointKind::Feet:
      return survey::Kind::Feet;
    case config::PointKind::Other:
      return survey::Kind::Other;
  }
  return survey::Kind::Other;
}

survey::Tool tool_of(const std::optional<config::LevelTool>& tool) {
  if (!tool) return survey::Tool::Unknown;
  switch (*tool) {
    case config::LevelTool::Laser:
      return survey::Tool::Laser;
    case config::LevelTool::WaterLevel:
      return survey::Tool::WaterLevel;
    case config::LevelTool::Straightedge:
      return survey::Tool::Straightedge;
  }
  return survey::Tool::Unknown;
}

// FNV-1a, 64 bits (Fowler, Noll and Vo; from memory), over whole tenths.
class Digest {
 public:
  void add(std::int64_t value) {
    auto left = static_cast<std::uint64_t>(value);
    for (int i = 0; i < 8; ++i, left >>= 8U) {
      hash_ = (hash_ ^ (left & 0xFFU)) * 0x100000001B3U;
    }
  }
  void add_mm(double mm) { add(std::llround(mm * 10)); }
  std::uint64_t value() const { return hash_; }

 private:
  std::uint64_t hash_ = 0xCBF29CE484222325U;
};

std::uint64_t digest_of(const config::Config& config, const Heights& used,
                        const SurveyResult& result) {
  Digest digest;
  for (const config::Field& field : config::fields()) {
    if (!field.path.starts_with("survey.")) continue;
    for (std::size_t i = 0; i < config::rows_of(config, field.group); ++i) {
      digest.add(field.tag);
      const config::Value value = field.get(config, i);
      if (const auto* number = std::get_if<double>(&value)) digest.add_mm(*number);
      if (const auto* flag = std::get_if<bool>(&value)) digest.add(*flag ? 1 : 0);
      if (const auto* choice = std::get_if<config::ChoiceIndex>(&value)) digest.add(choice->index);
    }
  }
  for (const survey::PanelLine& panel : result.panels) {
    for (const double mm : {panel.from_x_mm, panel.from_y_mm, panel.to_x_mm, panel.to_y_mm}) {
      digest.add_mm(mm);
    }
  }
  digest.add_mm(used.counter_mm.value_or(-1));
  digest.add_mm(used.oven_base_mm.value_or(-1));
  for (const frame::AsBuilt& one : frame::read_as_built(config.frame.as_built)) {
    if (one.name == "base") digest.add_mm(one.mm);
  }
  return digest.value();
}

double front_length_mm(const SurveyResult& result) {
  double far = 0;
  for (const survey::PanelLine& panel : result.panels) far = std::max(far, panel.to_x_mm);
  return far;
}

// Mean of the feet; without any, the point nearest to the middle of the front.
double feet_height_mm(SurveyResult& out) {
  double sum = 0, least = 0, most = 0;
  int unread = 0;
  const survey::Point* nearest = nullptr;
  double nearest_square = 0;
  const double middle = front_length_mm(out) / 2;
  std::size_t nearest_at = 0;
  for (std::size_t i = 0; i < out.levels.points.size(); ++i) {
    const survey::Point& point = out.levels.points[i];
    if (!point.height_mm) {
      unread += point.kind == survey::Kind::Feet ? 1 : 0;
      continue;
    }
    const double dx = point.x_mm - middle;
    const double square = dx * dx + point.y_mm * point.y_mm;
    if (nearest == nullptr || square < nearest_square) {
      nearest = &point;
      nearest_at = i;
      nearest_square = square;
    }
    if (point.kind != survey::Kind::Feet) continue;
    least = out.feet == 0 ? *point.height_mm : std::min(least, *point.height_mm);
    most = out.feet == 0 ? *point.height_mm : std::max(most, *point.height_mm);
    sum += *point.height_mm;
    ++out.feet;
    out.zero.push_back(i);
  }
  out.feet_spread_mm = most - least;
  out.feet_missing = std::max(unread, kFewestFeet - out.feet);
  if (out.feet > 0) return sum / out.feet;
  if (nearest == nullptr) return 0;
  out.zero.push_back(nearest_at);
  return *nearest->height_mm;
}

// How far its readings are apart; of a single one, how far off what the others say.
double doubt_mm(const survey::Point& point) {
  return point.readings > 1 ? point.spread_mm : std::abs(point.off_mm);
}

void fit(SurveyResult& out) {
  std::vector<survey::Spot3> spots;
  for (std::size_t i = 0; i < out.levels.points.size(); ++i) {
    const survey::Point& point = out.levels.points[i];
    if (!point.height_mm) continue;
    const auto height = [&](std::size_t at) { return *out.levels.points[at].height_mm; };
    if (!out.high || *point.height_mm > height(*out.high)) out.high = i;
    if (!out.low || *point.height_mm < height(*out.low)) out.low = i;
    if (point.doubtful) {
      out.doubts.push_back(i);
    } else if (!point.step) {
      spots.push_back({point.x_mm, point.y_mm, *point.height_mm});
    }
  }
  std::stable_sort(out.doubts.begin(), out.doubts.end(), [&out](std::size_t a, std::size_t b) {
    return doubt_mm(out.levels.points[a]) > doubt_mm(out.levels.points[b]);
  });
  // What lies on one line, or nearly, tilts a plane by its readings' errors alone.
  if (!survey::on_one_line(spots)) out.plane = survey::fit_plane(spots);
  if (!out.plane) return;
  out.slope = survey::slope_of(*out.plane);
  double squares = 0;
  for (const double off : survey::residuals(*out.plane, spots)) {
    out.worst_off_mm = std::max(out.worst_off_mm, std::abs(off));
    squares += off * off;
  }
  out.usual_off_mm = std::sqrt(squares / static_cast<double>(spots.size()));
}

void judge_accuracy(const config::Config& config, SurveyResult& out) {
  double across = 0;
  for (const survey::Point& a : out.levels.points) {
    for (const survey::Point& b : out.levels.points) {
      const double dx = a.x_mm - b.x_mm, dy = a.y_mm - b.y_mm;
      across = std::max(across, std::sqrt(dx * dx + dy * dy));
    }
  }
  out.reading_error_mm =
      survey::reading_error_mm(tool_of(config.survey.tool), config.survey.laser_mm, across);
  double worst = 0;
  for (const survey::Loop& loop : out.levels.loops) {
    const double limit = survey::closing_limit_mm(out.reading_error_mm, loop.readings);
    if (out.closing_mm && loop.error_mm / limit <= worst) continue;
    worst = loop.error_mm / limit;
    out.closing_mm = loop.error_mm;
    out.closing_limit_mm = limit;
  }
}

// Which doubtful readings bear on each panel's cut?
void set_stops(const survey::Board& board, SurveyResult& out) {
  if (!out.base) return;
  const survey::Base& base = *out.base;
  std::vector<std::size_t> all;
  for (const std::size_t i : out.zero) {
    if (out.levels.points[i].doubtful) all.push_back(out.levels.points[i].first);
  }
  const auto add = [](std::vector<std::size_t>& to, const std::vector<std::size_t>& from) {
    to.insert(to.end(), from.begin(), from.end());
    std::sort(to.begin(), to.end());
    to.erase(std::unique(to.begin(), to.end()), to.end());
  };
  // A top that is not wanted or usual was moved for the highest or the lowest ground.
  if (!board.top_mm && std::abs(base.top_mm - board.usual_mm) > kTolerance) {
    const bool up = base.top_mm > board.usual_mm;
    add(all, out.grounds[up ? base.high_panel : base.low_panel].doubtful);
    if (up && out.inside_high && out.levels.points[*out.inside_high].doubtful) {
      add(all, {out.levels.points[*out.inside_high].first});
    }
  }
  out.stops.resize(out.panels.size());
  for (std::size_t i = 0; i < out.panels.size(); ++i) {
    if (!base.cuts[i]) continue;
    add(out.stops[i], all);
    add(out.stops[i], out.grounds[i].doubtful);
  }
}

std::optional<AboveBase> above(const std::optional<double>& height_mm, const survey::Base& base) {
  if (!height_mm) return {};
  return AboveBase{*height_mm, *height_mm - base.top_mm, *height_mm - base.lowest_mm,
                   *height_mm - base.highest_mm};
}

// Where the base's top came out, if somebody measured it and the cabinets believe it.
std::optional<double> built_base_mm(const config::Config& config, const Heights& used,
                                    const SurveyResult& out) {
  if (!out.base || config.frame.as_built.empty()) return {};
  frame::Asked asked{{used.counter_mm, used.oven_base_mm}, 0, 0, {}, 0, 0};
  stand_on(*out.base, asked);
  for (const frame::Measure& one : frame::frame_of(config, asked).measures) {
    if (one.name == "base" && one.built) return one.used_mm;
  }
  return {};
}

// Boxes and what carries them stand over all of the ground that a base encloses.
void find_inside(SurveyResult& out) {
  const auto& points = out.levels.points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!points[i].height_mm || points[i].kind == survey::Kind::Feet) continue;
    const bool inside = std::any_of(out.within.begin(), out.within.end(), [&](const Block& base) {
      return points[i].x_mm >= base.left_mm && points[i].x_mm <= base.right_mm &&
             points[i].y_mm >= base.near_mm && points[i].y_mm <= base.far_mm;
    });
    if (!inside) continue;
    const double height_mm = *points[i].height_mm;
    if (!out.inside_high || height_mm > *points[*out.inside_high].height_mm) out.inside_high = i;
    if (!out.inside_low || height_mm < *points[*out.inside_low].height_mm) out.inside_low = i;
  }
}

SurveyResult survey_of(const config::Config& config, const Heights& used) {
  SurveyResult out;
  std::vector<survey::Reading> readings;
  for (const config::SurveyPoint& p : config.survey.points) {
    readings.push_back({p.x_mm, p.y_mm, p.reading_mm, static_cast<int>(p.setup), kind_of(p.kind)});
  }
  base_panels(config, used, out);
  out.digest = digest_of(config, used, out);
  out.levels = survey::levels_of(readings);
  const double feet_mm = feet_height_mm(out);
  for (survey::Point& point : out.levels.points) {
    if (point.height_mm) point.height_mm = round_to(*point.height_mm - feet_mm, 1000000);
  }
  for (survey::Line& line : out.levels.lines) {
    if (line.height_mm) line.height_mm = round_to(*line.height_mm - feet_mm, 1000000);
  }
  fit(out);
  judge_accuracy(config, out);
  for (const survey::PanelLine& panel : out.panels) {
    out.grounds.push_back(survey::ground_under(panel, out.levels.points, 0));
  }
  survey::Board board;
  board.height_mm = config.survey.board_mm;
  board.least_mm = config.survey.least_mm;
  board.step_mm = config.survey.step_mm;
  board.top_mm = config.survey.base_mm;
  find_inside(out);
  if (out.inside_high) board.inside_high_mm = out.levels.points[*out.inside_high].height_mm;
  if (out.inside_low) board.inside_low_mm = out.levels.points[*out.inside_low].height_mm;
  out.base = survey::base_on(out.panels, out.grounds, board);
  if (const auto built_mm = built_base_mm(config, used, out)) {
    board.top_mm = built_mm;
    out.base = survey::base_on(out.panels, out.grounds, board);
    out.built = true;
  }
  set_stops(board, out);
  if (out.base) {
    out.counter = above(used.counter_mm, *out.base);
    if (!config::is_masonry(config.oven.kind)) out.oven = above(used.oven_base_mm, *out.base);
  }
  return out;
}

void add_readings(Findings& out, const SurveyResult& s) {
  constexpr std::string_view kRule = "survey.readings";
  std::string_view where;
  double widest = 0;
  bool any = false, all = true;
  for (std::size_t i = 0; i < s.panels.size(); ++i) {
    const survey::Ground& ground = s.grounds[i];
    if (!ground.known()) {
      if (shows(s.places[i])) {
        out.add({kRule, Verdict::Unknown, {}, {}, kGap_mm, {}, s.panels[i].name});
        all = false;
      }
      continue;
    }
    if (!shows(s.places[i])) continue;
    any = true;
    if (ground.widest_gap_mm <= widest) continue;
    widest = ground.widest_gap_mm;
    where = s.panels[i].name;
  }
  // Good is only said of the whole base.
  if (any && (all || widest > kGap_mm)) {
    out.at_most(kRule, widest, kGap_mm, Verdict::Warn, {}, where);
  }
  if (s.levels.missing > 0) out.add({kRule, Verdict::Unknown, {}, {}, {}, {}, {}});
}

void add_closing(Findings& out, const SurveyResult& s) {
  constexpr std::string_view kRule = "survey.closing";
  if (s.levels.unjoined > 0) {
    out.add({kRule,
             Verdict::Unknown,
             {},
             {},
             {},
             {},
             "one of them shares no point with the others, and its readings are left out"});
  }
  if (s.closing_mm) {
    out.at_most(kRule, *s.closing_mm, s.closing_limit_mm, Verdict::Warn, {});
  } else if (s.levels.lines.size() > 1 && s.levels.unjoined == 0) {
    out.add({kRule,
             Verdict::Unknown,
             {},
             {},
             {},
             {},
             "one shared point joins them, so that nothing checks it"});
  }
}

// Why it cannot be told yet whether a reading is a slip; empty: it can.
std::string_view not_told(const SurveyResult& s) {
  std::size_t read = 0;
  bool all = true;
  for (const survey::Point& point : s.levels.points) {
    if (!point.height_mm) continue;
    ++read;
    all = all && point.judged;
  }
  if (s.levels.one_line && read >= survey::kFewest) {
    return !s.doubts.empty()
               ? "the other points lie on one line; read three or more off this line"
               : "along the one line that is read none stands out; read three or more points "
                 "off this line too";
  }
  if (s.levels.one_line && read > 2) {
    return "all points lie on one line; read six or more, three of them off this line";
  }
  if (all && read > 2) return {};
  if (read < survey::kFewest) return "too few points are read; read six or more";
  return "most points lie on one line, and too few beside it; read three or more off this line";
}

void add_points(Findings& out, const SurveyResult& s) {
  // More of them are no slips: the points' table has them all.
  constexpr std::size_t kMostTold = 6;
  for (std::size_t i = 0; i < std::min(s.doubts.size(), kMostTold); ++i) {
    const survey::Point& point = s.levels.points[s.doubts[i]];
    out.add(
        {"survey.doubtful", Verdict::Warn, {}, doubt_mm(point), {}, {}, point_name(point.first)});
  }
  const std::string_view why = not_told(s);
  if (!why.empty()) {
    out.add({"survey.doubtful", Verdict::Unknown, {}, {}, {}, {}, why});
  } else if (s.doubts.empty()) {
    // Of fewer, each read again, a plane meets most or all.
    const bool some =
        s.levels.points.size() - s.levels.missing - s.levels.unjoined >= survey::kFewest;
    const auto off = some ? std::optional(s.worst_off_mm) : std::nullopt;
    out.add({"survey.doubtful", Verdict::Ok, {}, off, {}, {}, {}});
  }
  if (s.feet_missing > 0 && s.feet_spread_mm <= kFeetSpread_mm + kTolerance) {
    out.add({"survey.feet", Verdict::Unknown, {}, {}, kFeetSpread_mm, {}, {}});
  } else {
    out.at_most("survey.feet", s.feet_spread_mm, kFeetSpread_mm, Verdict::Warn, {});
  }
}

void add_fall(Findings& out, const config::Config& config, const SurveyResult& s) {
  constexpr std::string_view kRule = "survey.drainage";
  const auto& ground = config.site.ground;
  if (ground == config::Ground::Deck || config.survey.footing == config::Footing::Deck) return;
  const double limit = ground == config::Ground::Bare ? weather::kBareFall : weather::kHardFall;
  if (!s.slope) {
    out.add({kRule, Verdict::Unknown, {}, {}, limit, {}, {}});
    return;
  }
  const double share = s.slope->share;
  // To what a tape shows over the run that the figure is made for.
  const bool good = share * weather::kFallRun_mm >= limit * weather::kFallRun_mm - kTolerance;
  out.add({kRule, good ? Verdict::Ok : Verdict::Warn, {}, share, limit, share - limit, {}});
}

void add_base(Findings& out, const config::Config& config, const SurveyResult& s) {
  if (!s.base) return;
  const survey::Base& base = *s.base;
  if (base.possible || s.built) {
    out.at_most("survey.base", base.top_mm - base.low_mm, config.survey.board_mm, Verdict::Fail, {},
                s.panels[base.low_panel].name);
    out.at_least("survey.least", base.top_mm - base.high_mm, config.survey.least_mm, Verdict::Fail,
                 {}, s.panels[base.high_panel].name);
  } else {
    // Another height of the base helps nothing.
    out.at_most("survey.board", base.board_needed_mm, config.survey.board_mm, Verdict::Fail, {});
  }
  if (base.highest_mm > base.high_mm + kTolerance) {
    out.at_least("survey.inside", base.top_mm - base.highest_mm, config.survey.least_mm,
                 Verdict::Fail, {}, point_name(s.levels.points[*s.inside_high].first));
  }
  double fall = 0;
  bool legs = false, steep = false, cut = false;
  for (const auto& one : base.cuts) {
    if (!one) continue;
    fall = std::max(fall, one->fall_mm);
    legs |= one->way == survey::Way::Legs;
    steep |= one->fall_mm > survey::kWedge_mm;
    cut |= one->way == survey::Way::Scribe;
  }
  constexpr std::string_view kRule = "survey.method";
  if (std::any_of(s.stops.begin(), s.stops.end(), [](const auto& one) { return !one.empty(); })) {
    out.add({kRule,
             Verdict::Warn,
             {},
             fall,
             {},
             {},
             "and a reading is doubtful: do not cut before it is read again"});
  } else if (legs) {
    out.add({kRule,
             Verdict::Warn,
             {},
             fall,
             {},
             {},
             steep ? "more than a cut should take up: legs, taller boards, or have the ground "
                     "relevelled"
                   : "and boards of this height do not suit a base of that height: cut nothing "
                     "before one of them is changed"});
  } else if (!cut) {
    out.add({kRule,
             Verdict::Warn,
             {},
             fall,
             {},
             {},
             "so little that shims are quicker than a cut, and can be set again"});
  } else {
    out.add({kRule, Verdict::Ok, {}, fall, {}, {}, {}});
  }
  const double farthest = std::max(std::abs(base.low_mm), std::abs(base.high_mm));
  if (s.counter || s.oven) out.add({"survey.heights", Verdict::Ok, {}, farthest, {}, {}, {}});
}

Verdict verdict_of(const std::optional<bool>& said, Verdict otherwise) {
  if (!said) return Verdict::Unknown;
  return *said ? Verdict::Ok : otherwise;
}

void add_openings(Findings& out, const config::Config& config, const SurveyResult& s) {
  if (!s.base) return;
  out.add({"survey.weeps",
           verdict_of(config.survey.weeps, Verdict::Warn),
           {},
           {},
           {},
           {},
           s.panels[s.base->low_panel].name});
  const bool gas =
      config.oven.fuel == config::Fuel::Gas || config.oven.fuel == config::Fuel::GasAndWood;
  const auto& cylinder = config.site.cylinder;
  if (gas && cylinder && *cylinder != config::Cylinder::None) {
    out.add({"survey.gas_vent",
             verdict_of(config.survey.gas_vent_open, Verdict::Fail),
             {},
             {},
             {},
             {},
             {}});
  }
}

void add_anchors(Findings& out, const config::Config& config, const SurveyResult& s) {
  if (!s.base) return;
  constexpr std::string_view kRule = "survey.anchor";
  const auto& footing = config.survey.footing;
  const config::Anchor& anchor = config.survey.anchor;
  if (footing == config::Footing::LoosePavers) {
    out.add({kRule,
             Verdict::Warn,
             {},
             {},
             {},
             {},
             "loose pavers hold no anchor, so that anchoring adds nothing against tipping: it must "
             "stand by itself, or be tied to a wall"});
    return;
  }
  if (footing == config::Footing::Deck) {
    out.add({kRule,
             Verdict::Warn,
             {},
             {},
             {},
             {},
             "deck boards alone hold little: screw through them into joists or blocking"});
    return;
  }
  if (!footing || !anchor.diameter_mm || !anchor.edge_mm) {
    out.add({kRule, Verdict::Unknown, {}, anchor.edge_mm, {}, {}, {}});
    return;
  }
  out.at_least(kRule, *anchor.edge_mm, kAnchorEdge * *anchor.diameter_mm, Verdict::Fail, {});
  out.at_least("survey.anchor_spacing", anchor.spacing_mm, kAnchorSpacing * *anchor.diameter_mm,
               Verdict::Fail, {});
}

}  // namespace

void stand_on(const survey::Base& base, frame::Asked& asked) {
  asked.base_mm = base.top_mm;
  asked.ground_high_mm = base.highest_mm;
  asked.ground_low_mm = base.lowest_mm;
}

std::string_view point_name(std::size_t reading) {
  return reading < kPointNames.count() ? kPointNames[reading] : std::string_view();
}

void add_survey(const config::Config& config, Evaluation& e) {
  if (config.survey.points.empty()) return;
  e.survey = std::make_shared<const SurveyResult>(survey_of(config, e.used));
  Findings out;
  add_readings(out, *e.survey);
  add_closing(out, *e.survey);
  add_points(out, *e.survey);
  add_fall(out, config, *e.survey);
  add_base(out, config, *e.survey);
  add_openings(out, config, *e.survey);
  add_anchors(out, config, *e.survey);
  e.findings.insert(e.findings.end(), out.list.begin(), out.list.end());
  order_by_harm(e.findings);
}

}  // namespace hs::evaluate
