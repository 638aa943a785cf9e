#include "engine/report/section.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/report/figure.h"
#include "engine/report/headline.h"
#include "engine/report/oven_cut.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

// Drawn sizes, mm: how thick a top looks, how high a toe space is, how deep the ground is shown.
constexpr double kTop_mm = 40;
constexpr double kToeSpaceHeight_mm = 100;
constexpr double kGround_mm = 230;
constexpr double kMargin_mm = 60;
constexpr double kEyeDot_mm = 22;
constexpr double kSame_mm = 1;  // heights closer than this are one level

std::vector<Spot> rectangle(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

// What the parts of the drawing share.
struct Scene {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  const evaluate::CookResult& cook;
  bool looks = false;       // works at the oven and the oven has a place
  double front_mm = 0;      // the counter's front edge
  double back_mm = 0;       // back of what the oven stands on
  double prep_back_mm = 0;  // back edge of the dough counter
  std::optional<double> oven_base_mm{}, counter_mm{};
  Figure figure{};
  OvenCut cut{};  // empty without an oven base
};

Scene scene_of(const config::Config& config, const evaluate::Evaluation& evaluation,
               std::size_t person) {
  const std::size_t index = std::min(person, evaluation.cooks.size() - 1);
  const evaluate::CookResult& cook = evaluation.cooks[index];
  Scene s{.config = config, .evaluation = evaluation, .cook = cook};
  s.oven_base_mm = evaluation.used.oven_base_mm;
  s.counter_mm = evaluation.used.counter_mm;
  s.looks = cook.at_oven && s.oven_base_mm.has_value();
  s.front_mm = -config.station.oven_setback_mm;
  s.prep_back_mm = s.front_mm + config.station.prep_depth_mm;
  s.back_mm = std::max(config.oven.depth_mm + 40, s.prep_back_mm);
  // Who does not look works at the dough counter's edge.
  constexpr double kBeforeEdge_mm = 25;
  const double at_edge_mm = s.front_mm - cook.body.belly_mm - kBeforeEdge_mm;
  s.figure = figure_of(cook.body, cook.at_oven ? -config.view.standoff_mm : at_edge_mm);
  if (s.oven_base_mm) s.cut = oven_cut(config.oven, evaluation.geometry, *s.oven_base_mm);
  return s;
}

// A masonry oven stands on its own pier, whatever the counters beside it do.
bool one_cabinet(const Scene& s) {
  return s.config.station.arrangement != config::Arrangement::TwoLevel &&
         !config::is_masonry(s.config.oven.kind);
}

// Room to keep free around the oven's body, and the cover over it. A mark that the frame, with a
// little more room for it, does not hold is left out: the table of clearances has the figure.
constexpr double kMostRoomAbove_mm = 400;
constexpr double kMostRoomBehind_mm = 150;

const std::optional<double>& required(const Scene& s, clearance::Side side) {
  return s.evaluation.clearances[static_cast<std::size_t>(side)].required_mm;
}

double body_top_mm(const Scene& s) { return *s.oven_base_mm + s.config.oven.height_mm; }

// Where the free room ends; absent: nobody has said how much.
std::optional<double> free_above_mm(const Scene& s) {
  const std::optional<double>& asked = required(s, clearance::Side::Above);
  return asked ? std::optional(body_top_mm(s) + *asked) : std::nullopt;
}
std::optional<double> free_behind_mm(const Scene& s) {
  const std::optional<double>& asked = required(s, clearance::Side::Back);
  return asked ? std::optional(s.config.oven.depth_mm + *asked) : std::nullopt;
}

void make_room(Box& box, const Scene& s) {
  const double top = box.top_mm - kMargin_mm;
  const auto raise = [&](const std::optional<double>& line_mm) {
    if (!line_mm || *line_mm > top + kMostRoomAbove_mm) return;
    box.top_mm = std::max(box.top_mm, *line_mm + kMargin_mm);
  };
  raise(s.config.site.cover_height_mm);
  if (!s.oven_base_mm) return;
  constexpr double kQuestion_mm = 160;  // for the question mark over the body, or behind it
  const std::optional<double> above = free_above_mm(s), behind = free_behind_mm(s);
  raise(above ? above : std::optional(body_top_mm(s) + kQuestion_mm - kMargin_mm));
  const double edge = behind ? *behind + kMargin_mm : s.config.oven.depth_mm + kQuestion_mm;
  if (edge <= box.right_mm + kMostRoomBehind_mm) box.right_mm = std::max(box.right_mm, edge);
}

SectionFrame frame_of(const Scene& s) {
  SectionFrame frame;
  Box& box = frame.box;
  // Someone at the usual distance and someone a step further back get the same frame, so that the
  // picture holds still while the watching distance is dragged.
  constexpr double kUsualBack_mm = 1050;
  box.left_mm = std::min(-kUsualBack_mm, s.figure.back_mm - kMargin_mm);
  box.right_mm = s.back_mm + kMargin_mm;
  box.bottom_mm = -kGround_mm;
  box.top_mm = std::max({s.figure.top_mm, s.cut.top_mm, 1700.0}) + kMargin_mm;
  make_room(box, s);
  frame.label_x_mm = box.right_mm + 5 * kMargin_mm;
  return frame;
}

void draw_ground(Drawing& d, const Box& box) {
  d.polygon(Role::Ground, rectangle(box.left_mm, -kGround_mm, box.right_mm, 0));
  d.line(Role::Ground, {box.left_mm, 0}, {box.right_mm, 0}, Weight::Heavy);
}

// Cabinet face set back by the overhang, toe space at its foot, the top over it.
void draw_cabinet(Drawing& d, const Scene& s, double height_mm, double back_mm, Role role) {
  const config::Station& station = s.config.station;
  const double face = s.front_mm + station.overhang_mm;
  const double kick = face + station.toe_space_mm;
  const double top = std::min(kTop_mm, height_mm);
  const double toe = std::min(kToeSpaceHeight_mm, 0.5 * height_mm);
  const std::vector<Spot> body{
      {kick, 0},   {back_mm, 0}, {back_mm, height_mm - top}, {face, height_mm - top},
      {face, toe}, {kick, toe}};
  const std::vector<Spot> slab = rectangle(s.front_mm, height_mm - top, back_mm, height_mm);
  if (role == Role::OtherCounter) {
    d.outline(role, body, Weight::Thin, true);
    d.polygon(role, slab);
    d.outline(role, slab, Weight::Thin);
    return;
  }
  d.polygon(Role::Cabinet, body);
  d.outline(Role::Cabinet, body, Weight::Thin);
  d.polygon(Role::Counter, slab);
}

// Blocks in running bond from the ground to the slab, flush with the counter's edge: no overhang
// and no room for toes.
void draw_pier(Drawing& d, const Scene& s, double height_mm) {
  constexpr double kCourse_mm = 200, kBlock_mm = 400;
  const std::vector<Spot> pier = rectangle(s.front_mm, 0, s.back_mm, height_mm);
  d.polygon(Role::Riser, pier);
  for (int course = 0; course * kCourse_mm < height_mm; ++course) {
    const double low = course * kCourse_mm;
    const double top = std::min(low + kCourse_mm, height_mm);
    if (course > 0) d.line(Role::Cabinet, {s.front_mm, low}, {s.back_mm, low}, Weight::Thin);
    const double first = s.front_mm + (course % 2 == 0 ? kBlock_mm : kBlock_mm / 2);
    for (double joint = first; joint < s.back_mm; joint += kBlock_mm) {
      d.line(Role::Cabinet, {joint, low}, {joint, top}, Weight::Thin);
    }
  }
  d.outline(Role::Riser, pier, Weight::Thin);
}

void draw_station(Drawing& d, const Scene& s) {
  const bool apart = s.oven_base_mm && s.counter_mm && !one_cabinet(s) &&
                     std::abs(*s.oven_base_mm - *s.counter_mm) > kSame_mm;
  if (!s.oven_base_mm) {
    if (s.counter_mm) draw_cabinet(d, s, *s.counter_mm, s.prep_back_mm, Role::Cabinet);
    return;
  }
  const double base = *s.oven_base_mm;
  const double under = one_cabinet(s) && s.counter_mm ? std::min(*s.counter_mm, base) : base;
  if (config::is_masonry(s.config.oven.kind)) {
    if (base > 0) draw_pier(d, s, base);
  } else if (under > 0) {
    draw_cabinet(d, s, under, s.back_mm, Role::Cabinet);
  }
  if (apart) draw_cabinet(d, s, *s.counter_mm, s.prep_back_mm, Role::OtherCounter);
  if (base - under > kSame_mm) {
    const std::vector<Spot> block =
        rectangle(-0.2 * s.config.station.oven_setback_mm, under, s.config.oven.depth_mm, base);
    d.polygon(Role::Riser, block);
    d.outline(Role::Riser, block, Weight::Thin);
  }
}

void draw_oven(Drawing& d, const Scene& s) {
  const OvenCut& cut = s.cut;
  if (!cut.flue.empty()) d.polygon(Role::OvenBody, cut.flue);
  for (const std::vector<Spot>& leg : cut.legs) {
    if (!leg.empty()) d.polygon(Role::OvenBody, leg);
  }
  d.polygon(Role::OvenBody, cut.shell);
  if (!cut.brow.empty()) d.polygon(Role::OvenBody, cut.brow);
  d.polygon(Role::OvenInside, cut.hollow);
}

void draw_cover(Drawing& d, const Scene& s, const SectionView& view, const Box& box) {
  const std::optional<double>& cover = s.config.site.cover_height_mm;
  if (!cover || *cover > box.top_mm - kSame_mm) return;
  // From its edge back; dashed where nobody has said how far it reaches.
  const std::optional<double>& out = s.config.site.cover.out_mm;
  const double edge =
      out ? std::max(box.left_mm, -s.config.station.oven_setback_mm - *out) : box.left_mm;
  if (edge > box.right_mm) return;
  d.line(Role::Ground, {edge, *cover}, {box.right_mm, *cover}, Weight::Heavy, !out);
  // Below it, unless the oven is there; behind the person, whose head may be as high.
  const bool close = s.oven_base_mm && *cover - view.text_mm * 1.2 < s.cut.top_mm;
  const double side = close && *cover + 1.2 * view.text_mm <= box.top_mm ? 1 : -1;
  d.text(Role::Label, {box.right_mm - 0.2 * view.text_mm, *cover + side * 0.65 * view.text_mm},
         "cover", Align::Right);
}

// An upright edge that nobody has given a distance for: two dashes with a question mark between.
void draw_unknown_edge(Drawing& d, Spot middle, double text_mm) {
  const double gap = 0.55 * text_mm, end = gap + 0.45 * text_mm;
  for (const double way : {-1.0, 1.0}) {
    d.line(Role::Dimension, {middle.x_mm, middle.y_mm + way * gap},
           {middle.x_mm, middle.y_mm + way * end}, Weight::Normal, true);
  }
  d.text(Role::Label, middle, "?", Align::Centre);
}

// Dashed: the edges of the room that must stay free above, behind and before the oven's body.
void draw_free_room(Drawing& d, const Scene& s, const SectionView& view, const Box& box) {
  const double base = *s.oven_base_mm, body_top = body_top_mm(s), depth = s.config.oven.depth_mm;
  const std::optional<double> above = free_above_mm(s), behind = free_behind_mm(s);
  const std::optional<double>& before = required(s, clearance::Side::Front);
  const double top = std::min(above.value_or(body_top), box.top_mm);
  const double right = std::min(behind.value_or(depth), box.right_mm);
  const double left = std::max(-before.value_or(0), box.left_mm);
  // An edge at the body itself asks for nothing.
  if (above && *above > body_top + kSame_mm && *above <= box.top_mm) {
    d.line(Role::Dimension, {left, top}, {right, top}, Weight::Normal, true);
  }
  if (behind && *behind > depth + kSame_mm && *behind <= box.right_mm) {
    d.line(Role::Dimension, {right, base}, {right, top}, Weight::Normal, true);
  }
  if (before && *before > kSame_mm && -*before >= box.left_mm) {
    d.line(Role::Dimension, {left, base}, {left, top}, Weight::Normal, true);
  }
  // Beside the flue, wherever that stands, and clear of the question behind the oven.
  if (!above) {
    const bool flue_behind = !s.cut.flue.empty() && s.cut.flue[0].x_mm > depth / 2;
    const double y = std::min(body_top + 0.6 * view.text_mm, box.top_mm - 0.5 * view.text_mm);
    const double x = std::min((flue_behind ? 0.3 : 0.65) * depth, depth - 2.5 * view.text_mm);
    d.text(Role::Label, {x, y}, "clearance?", Align::Centre);
  }
  if (!behind) {
    const double x = std::min(depth + 0.6 * view.text_mm, box.right_mm - 0.3 * view.text_mm);
    draw_unknown_edge(d, {x, body_top - 0.2 * s.config.oven.height_mm}, view.text_mm);
  }
}

// Where the highest seen ray ends on the floor; where nothing is seen, the floor's front edge.
struct Look {
  Spot eye, landing, edge;
  bool sees = false, sees_all = false;
};

Look look_of(const Scene& s) {
  const evaluate::Seen& seen = s.cook.watching;
  Look look;
  look.eye = s.figure.eye;
  look.sees = seen.farthest_mm.has_value() && *seen.farthest_mm > s.cut.floor_near_mm;
  const double reach = seen.farthest_mm.value_or(s.cut.floor_near_mm);
  look.sees_all = look.sees && reach >= s.cut.floor_far_mm - kSame_mm;
  look.landing = {std::max(reach, s.cut.floor_near_mm + 1), s.cut.floor_mm};
  look.edge = limiting_edge(s.cut, s.evaluation.geometry, look.eye, look.landing);
  return look;
}

void draw_look(Drawing& d, const Scene& s, const Look& look) {
  const OvenCut& cut = s.cut;
  if (look.sees) {
    d.polygon(Role::Seen,
              std::array{look.eye, Spot{cut.floor_near_mm, cut.floor_mm}, look.landing});
  }
  if (!look.sees) {
    d.hatch(Role::Hidden, cut.hollow);
  } else if (!look.sees_all) {
    d.hatch(Role::Hidden, unseen_hollow(cut, look.edge, look.landing));
  }
}

void draw_pizza(Drawing& d, const Scene& s, const Look& look) {
  const sight::Disc& pizza = s.evaluation.pizza;
  const double floor = s.cut.floor_mm;
  const double top = floor + std::max(20.0, s.config.view.crust_mm);
  const double near = std::max(pizza.y_mm - pizza.radius_mm, s.cut.floor_near_mm);
  const double far = std::min(pizza.y_mm + pizza.radius_mm, s.cut.floor_far_mm);
  const double split = look.sees ? std::clamp(look.landing.x_mm, near, far) : near;
  if (split > near) d.polygon(Role::Pizza, rectangle(near, floor, split, top));
  if (far - split > kSame_mm) {
    const std::vector<Spot> hidden = rectangle(split, floor, far, top);
    d.polygon(Role::Hidden, hidden);
    d.outline(Role::Hidden, hidden, Weight::Normal);
  }
  d.line(Role::OvenFloor, {0, floor}, {s.cut.floor_far_mm, floor}, Weight::Normal);
}

void draw_person(Drawing& d, const Scene& s) {
  if (!s.figure.seat.empty()) d.polygon(Role::Seat, s.figure.seat);
  d.polygon(Role::Person, s.figure.shape);
  d.polygon(Role::Person, s.figure.arm);
  d.outline(Role::PersonLine, s.figure.arm, Weight::Normal);
}

void draw_ray(Drawing& d, const Scene& s, const Look& look) {
  if (look.sees) {
    d.line(Role::Sightline, look.eye, look.landing, Weight::Heavy);
    d.dot(Role::Sightline, look.landing, 12);
  } else {
    // Stopped: by the face above the mouth, or by the floor's own edge for an eye below it.
    const double part = (0 - look.eye.x_mm) / (look.landing.x_mm - look.eye.x_mm);
    const Spot stop{0, look.eye.y_mm + (look.landing.y_mm - look.eye.y_mm) * part};
    d.line(Role::Sightline, look.eye, stop, Weight::Heavy, true);
    constexpr double kArm = 28;
    d.line(Role::Sightline, {stop.x_mm - kArm, stop.y_mm - kArm},
           {stop.x_mm + kArm, stop.y_mm + kArm}, Weight::Heavy);
    d.line(Role::Sightline, {stop.x_mm - kArm, stop.y_mm + kArm},
           {stop.x_mm + kArm, stop.y_mm - kArm}, Weight::Heavy);
  }
  d.dot(Role::Eye, s.figure.eye, kEyeDot_mm);
}

// The place at this eye's height from which on the mouth's heat lets the face linger.
void draw_heat(Drawing& d, const Scene& s, const evaluate::CookHeat& heat, const SectionView& view,
               const Box& box) {
  const double x = -heat.linger_standoff_mm;
  if (x <= box.left_mm) return;
  const double eye = s.figure.eye.y_mm, line = view.text_mm;
  const double cover_mm = s.config.site.cover_height_mm.value_or(0);
  const double ceiling = cover_mm > eye ? std::min(cover_mm, box.top_mm) : box.top_mm;
  // Two short rows where they stand over the head, clear of a flue; one where only that does, or
  // beside the head.
  const double two_mm = std::min(eye + 2.4 * line, ceiling - 2.2 * line);
  const double one_mm = std::min(eye + 2.4 * line, ceiling - 1.2 * line);
  const bool two = two_mm > s.figure.top_mm;
  const double top_mm = two ? two_mm : one_mm;
  d.line(Role::HeatLimit, {x, eye - 2.4 * line}, {x, top_mm}, Weight::Normal, true);
  // On a full sheet the sight line's words stand there; its key says what the mark is.
  if (view.keyed) return;
  Spot at{x, top_mm + 0.6 * line};
  if (!two && !view.stacked) {
    d.text(Role::HeatLimit, at, "too hot to linger");
    return;
  }
  const bool over = top_mm > s.figure.top_mm;
  if (over) at.x_mm = std::max(x, box.left_mm + 2.4 * line);
  const Align align = over ? Align::Centre : Align::Left;
  if (two) {
    d.text(Role::HeatLimit, at, "to linger", align);
    at.y_mm += line;
  }
  d.text(Role::HeatLimit, at, "too hot", align);
}

// The tape on the ground and its distance from the counter's edge, which is not the eye's from the
// mouth.
void draw_feet(Drawing& d, const Scene& s, const SectionView& view) {
  const double feet_mm = s.front_mm - s.figure.toes_mm;
  const double line = -0.24 * kGround_mm;
  const double words_mm = line - 0.48 * view.text_mm;
  d.line(Role::Feet, {s.figure.toes_mm, 30}, {s.figure.toes_mm, -kGround_mm + 20}, Weight::Heavy);
  if (feet_mm <= 0) {
    d.text(Role::Label, {s.figure.toes_mm - 0.4 * view.text_mm, words_mm}, "toes under counter",
           Align::Right);
    return;
  }
  d.line(Role::Dimension, {s.front_mm, 0}, {s.front_mm, 1.15 * line}, Weight::Thin);
  d.dimension({s.figure.toes_mm, line}, {s.front_mm, line}, "");
  // From the tape on, under the gap and whatever stands behind it.
  d.text(Role::Label, {s.figure.toes_mm + 0.4 * view.text_mm, words_mm},
         distance(feet_mm, view.units) + " toes to edge");
}

// A height to build to: its line, its arrow from the ground, its label beside.
struct Level {
  double height_mm = 0;
  double from_x_mm = 0;
  std::string text, name;
  double label_y_mm = 0;
};

std::vector<Level> levels_of(const Scene& s, Units units) {
  std::vector<Level> levels;
  const auto add = [&](double height_mm, double from_x_mm, const char* name) {
    levels.push_back({height_mm, from_x_mm, plain_length(height_mm, units, true), name, 0});
  };
  const bool same =
      s.oven_base_mm && s.counter_mm && std::abs(*s.oven_base_mm - *s.counter_mm) <= kSame_mm;
  if (s.counter_mm && !same) {
    // Where it stands beside the oven's own stand it is drawn through that.
    add(*s.counter_mm, s.prep_back_mm,
        s.oven_base_mm && !one_cabinet(s) ? "dough, beside" : "dough counter");
  }
  if (s.oven_base_mm && *s.oven_base_mm > 0) {
    add(*s.oven_base_mm, s.back_mm,
        same                                     ? "counter"
        : config::is_masonry(s.config.oven.kind) ? "slab"
                                                 : "oven counter");
  }
  if (s.oven_base_mm) {
    add(s.cut.floor_mm, s.config.oven.depth_mm, "oven floor");
  }
  // Lowest first; there are three at most.
  for (std::size_t n = levels.size(); n > 1; --n) {
    for (std::size_t k = 1; k < n; ++k) {
      if (levels[k].height_mm < levels[k - 1].height_mm) std::swap(levels[k], levels[k - 1]);
    }
  }
  return levels;
}

// Labels at their levels, pushed apart to a label's height around the middle of each crowd.
void spread(std::vector<Level>& levels, double high_mm) {
  for (Level& level : levels) level.label_y_mm = level.height_mm;
  for (int pass = 0; pass < 20; ++pass) {
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
      const double lap = high_mm - (levels[i + 1].label_y_mm - levels[i].label_y_mm);
      if (lap <= 0) continue;
      levels[i].label_y_mm -= lap / 2;
      levels[i + 1].label_y_mm += lap / 2;
    }
  }
}

void draw_levels(Drawing& d, const Scene& s, const SectionView& view, const SectionFrame& frame) {
  std::vector<Level> levels = levels_of(s, view.units);
  const double high_mm = (view.stacked ? 2.2 : 1) * view.text_mm;
  spread(levels, high_mm);
  const double gap = frame.label_x_mm - frame.box.right_mm;
  const std::size_t count = levels.size();
  for (std::size_t i = 0; i < count; ++i) {
    double& y = levels[i].label_y_mm;
    y = std::min(y, view.label_top_mm - high_mm * (static_cast<double>(count - i) - 0.5));
  }
  for (std::size_t i = 0; i < count; ++i) {
    const Level& level = levels[i];
    const double x = frame.box.right_mm + gap * static_cast<double>(i) / 4;
    d.polyline(Role::Dimension,
               std::array{Spot{level.from_x_mm + 15, level.height_mm}, Spot{x, level.height_mm},
                          Spot{frame.label_x_mm - 0.15 * view.text_mm, level.label_y_mm}},
               Weight::Thin);
    d.dimension({x, 0}, {x, level.height_mm}, "");
    Spot at{frame.label_x_mm, level.label_y_mm};
    if (!view.stacked) {
      d.text(Role::Label, at, level.text + " " + level.name);
      continue;
    }
    at.y_mm += 0.5 * view.text_mm;
    d.text(Role::Label, at, level.text);
    at.y_mm -= view.text_mm;
    d.text(Role::Label, at, level.name);
  }
}

}  // namespace

SectionFrame section_frame(const config::Config& config, const evaluate::Evaluation& evaluation,
                           std::size_t person) {
  return frame_of(scene_of(config, evaluation, person));
}

Drawing section(const config::Config& config, const evaluate::Evaluation& evaluation,
                const SectionView& view) {
  const Scene s = scene_of(config, evaluation, view.person);
  const SectionFrame frame = frame_of(s);
  Drawing d;
  draw_ground(d, frame.box);
  draw_station(d, s);
  draw_cover(d, s, view, frame.box);
  if (s.oven_base_mm) {
    draw_oven(d, s);
    draw_free_room(d, s, view, frame.box);
  }
  if (s.looks) {
    const Look look = look_of(s);
    draw_look(d, s, look);
    draw_pizza(d, s, look);
    draw_person(d, s);
    draw_ray(d, s, look);
    draw_feet(d, s, view);
    draw_heat(d, s, evaluation.cooks[view.person].heat, view, frame.box);
  } else {
    draw_person(d, s);
    d.dot(Role::Eye, s.figure.eye, kEyeDot_mm);
  }
  draw_levels(d, s, view, frame);
  return d;
}

}  // namespace hs::report
