// The station from above: who stands where, what must stay free, what the peel needs.

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/report/figure.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/station_layout.h"

namespace hs::report {
namespace {

constexpr double kHandle_mm = 40;  // how wide a peel's handle is drawn
constexpr double kEye_mm = 16;
constexpr double kSame_mm = 1;

using Outline = std::array<Spot, 4>;

Outline from_above(const Block& b) {
  return {Spot{b.left_mm, b.near_mm}, Spot{b.right_mm, b.near_mm}, Spot{b.right_mm, b.far_mm},
          Spot{b.left_mm, b.far_mm}};
}

Spot middle_of(const Block& b) {
  return {(b.left_mm + b.right_mm) / 2, (b.near_mm + b.far_mm) / 2};
}

struct Plan {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  const StationLayout& layout;
  std::size_t cook = 0;
  Drawing& d;
  SheetPen& pen;
  Units units = Units::Inch;

  const Finding* finding(std::string_view rule) const {
    for (const Finding& f : evaluation.findings) {
      if (f.rule == rule) return &f;
    }
    return nullptr;
  }
  // "; 15 in advised (US kitchen planning guidelines, guideline 23; read)"
  std::string advised(std::string_view rule) const {
    const Finding* f = finding(rule);
    if (f == nullptr || !f->limit) return {};
    return "; " + pen.length(*f->limit) + " advised (" + source_note(rule) + ")";
  }
};

void draw_zone(Drawing& d, Role role, const Block& box, bool dashed) {
  const Outline outline = from_above(box);
  d.hatch(role, outline);
  d.outline(role, outline, Weight::Normal, dashed);
}

void draw_counters(Plan& p) {
  const StationLayout& s = p.layout;
  if (s.oven_stand) {
    const Outline stand = from_above(*s.oven_stand);
    p.d.polygon(s.masonry_base ? Role::Riser : Role::Cabinet, stand);
    p.d.outline(Role::Cabinet, stand, Weight::Normal);
  }
  if (s.dough_counter) {
    const Outline counter = from_above(*s.dough_counter);
    p.d.polygon(Role::Cabinet, counter);
    p.d.outline(Role::Counter, counter, Weight::Heavy);
  }
  for (std::size_t i = 0; i < s.cooks.size(); ++i) {
    const auto draw = [&](const std::optional<Block>& box, const char* what, const char* rule) {
      if (!box) return;
      p.d.polygon(Role::Cabinet, from_above(*box));
      p.d.outline(Role::Counter, from_above(*box), Weight::Normal, true);
      p.pen.key(middle_of(*box), Role::Label,
                p.config.cooks[i].name + what + p.pen.length(box->top_mm) + " high (" +
                    source_note(rule) + ")");
    };
    draw(s.cooks[i].table_box, "'s own low table, away from the oven, ", "cook.child_table");
    draw(s.cooks[i].step_box, "'s step at the dough counter, ", "cook.child_place");
  }
}

void draw_oven(const Plan& p) {
  const StationLayout& s = p.layout;
  const Block& body = *s.oven_body;
  const oven::Geometry& g = p.evaluation.geometry;
  const oven::Floor& floor = g.floor;
  p.d.polygon(Role::OvenBody, from_above(body));
  // The way in: between the two openings, then the floor.
  const double outer = g.outer.half_width_at(0), inner = g.inner.half_width_at(0);
  p.d.polygon(Role::OvenInside, std::array{Spot{-outer, 0}, Spot{outer, 0},
                                           Spot{inner, g.throat_mm}, Spot{-inner, g.throat_mm}});
  p.d.polygon(Role::OvenInside, s.oven_floor);
  p.d.outline(Role::OvenFloor, s.oven_floor, Weight::Normal);
  const double radius = p.evaluation.pizza.radius_mm;
  p.d.outline(Role::Pizza, ellipse({0, p.evaluation.pizza.y_mm}, radius, radius), Weight::Heavy);
  p.d.line(Role::Sightline, {-outer, 0}, {outer, 0}, Weight::Heavy);
  if (s.brow) p.d.outline(Role::OvenBody, from_above(*s.brow), Weight::Normal, true);
  p.d.text(Role::Label, {0, floor.far_mm - 0.9 * p.pen.line_mm()}, "floor", Align::Centre);
}

// Free room round what is hot: what is asked for and by whom, then what nobody has said.
void draw_clear(Plan& p) {
  const StationLayout& s = p.layout;
  for (const auto& [body, what] : {std::pair{s.grill, "grill"}, std::pair{s.flue, "flue"}}) {
    if (!body) continue;
    p.d.outline(Role::OvenBody, from_above(*body), Weight::Normal, true);
    p.pen.note(std::string("The ") + what + "'s size and place along the oven are drawn");
  }
  struct Known {
    std::string who, sides;
    std::vector<Spot> at;
  };
  std::vector<Known> known;
  std::string unknown;
  std::vector<Spot> unknown_at;
  for (const ClearZone& zone : s.clear) {
    const std::string side = clear_side(zone.hot, zone.need.side);
    const bool level =
        zone.need.side != clearance::Side::Above && zone.need.side != clearance::Side::Below;
    if (!zone.known()) {
      unknown += (unknown.empty() ? "" : ", ") + side;
      if (!level) continue;
      draw_zone(p.d, Role::Unknown, zone.box, true);
      if (zone.hot == clearance::Hot::Flue) continue;
      unknown_at.push_back(middle_of(zone.box));
      continue;
    }
    const std::string who = clear_source(zone.hot, zone.need);
    auto same = std::find_if(known.begin(), known.end(),
                             [&](const Known& other) { return other.who == who; });
    if (same == known.end()) same = known.insert(known.end(), {who, "", {}});
    same->sides +=
        (same->sides.empty() ? "" : ", ") + side + " " + p.pen.length(*zone.need.required_mm);
    if (!level || zone.box.width_mm() < kSame_mm || zone.box.depth_mm() < kSame_mm) continue;
    draw_zone(p.d, Role::ClearRoom, zone.box, true);
    // The flue's four lie close together: one letter for all.
    if (zone.hot == clearance::Hot::Flue && !same->at.empty()) continue;
    same->at.push_back(middle_of(zone.box));
  }
  const auto name = [&](const std::vector<Spot>& places, Role role, std::string words) {
    if (places.empty()) {
      p.pen.note(std::move(words));
      return;
    }
    p.pen.key(places.front(), role, std::move(words));
    for (std::size_t i = 1; i < places.size(); ++i) p.pen.again(places[i]);
  };
  for (const Known& one : known) {
    name(one.at, Role::ClearRoom, "Keep free: " + one.sides + " (" + one.who + ")");
  }
  if (unknown.empty()) return;
  name(unknown_at, Role::Unknown,
       "Not known how much must stay free: " + unknown +
           ". Find it in the oven's own manual; the depth drawn means nothing");
}

void draw_child_free(Plan& p) {
  const StationLayout& s = p.layout;
  p.d.outline(Role::ChildFree, s.child_free, Weight::Heavy, true);
  // On its edge in front of the oven, on the side where nobody works dough.
  const double way = s.dough_right ? -1 : 1;
  const Spot at{way * (s.oven_body->right_mm + 0.7 * s.child_free_mm), -0.7 * s.child_free_mm};
  p.pen.key(at, Role::ChildFree,
            "No children and no pets inside this line while the oven is hot: " +
                p.pen.length(s.child_free_mm) + " round it (" +
                source_note("caution.child_free_zone") + ")");
}

void draw_places_for_food(Plan& p) {
  const StationLayout& s = p.layout;
  for (const auto* landing : {&s.landing_left, &s.landing_right}) {
    if (!*landing) continue;
    const Landing& l = **landing;
    const std::string_view side = landing == &s.landing_left ? "left" : "right";
    Block box = l.box;
    box.far_mm = std::min(box.far_mm, s.oven_body->far_mm);
    draw_zone(p.d, l.given ? Role::Landing : Role::Unknown, box, !l.given);
    const Spot at{(box.left_mm + box.right_mm) / 2, box.near_mm + 0.35 * box.depth_mm()};
    const std::string what = "Landing on the " + std::string(side) + " to set a hot pizza down: ";
    p.pen.key(at, l.given ? Role::Landing : Role::Unknown,
              what + (l.given ? p.pen.length(box.width_mm()) : "not known how wide") +
                  p.advised("reach.landing"));
  }
  if (!s.dough_counter) return;
  const Block& counter = *s.dough_counter;
  Block prep = counter;
  const double wide = std::min(counter.width_mm(), p.config.station.prep_width_mm);
  // The landing on the same side is the end next to the oven.
  const bool from_left = !s.oven_body || s.dough_right;
  const auto& landing = s.dough_right ? s.landing_right : s.landing_left;
  if (from_left) {
    prep.left_mm = counter.right_mm - wide;
    if (landing) prep.left_mm = std::max(prep.left_mm, landing->box.right_mm);
  } else {
    prep.right_mm = counter.left_mm + wide;
    if (landing) prep.right_mm = std::min(prep.right_mm, landing->box.left_mm);
  }
  if (prep.width_mm() > 100) draw_zone(p.d, Role::Prep, prep, false);
  const Spot at = prep.width_mm() > 100 ? middle_of(prep) : middle_of(counter);
  std::string area;
  for (const Finding& f : p.evaluation.findings) {
    if (f.rule != "reach.prep_area" || !f.limit) continue;
    area +=
        (area.empty() ? "; advised: " : ", ") + p.pen.length(*f.limit) + " " + std::string(f.where);
  }
  if (!area.empty()) area += " (" + source_note("reach.prep_area") + ")";
  p.pen.key(at, Role::Prep,
            "Dough counter " + p.pen.length(counter.width_mm()) + " wide, " +
                p.pen.length(counter.depth_mm()) + " deep" + area +
                (landing ? ". Its end by the oven is landing too" : ""));
}

const RoomZone* zone_of(const Plan& p, std::string_view rule) {
  for (const RoomZone& zone : p.layout.room) {
    if (zone.rule == rule) return &zone;
  }
  return nullptr;
}

// The peel straight out of the mouth, and the ground that it sweeps when it is turned.
void draw_peel(Plan& p) {
  const RoomZone* out = zone_of(p, "reach.peel_drawback");
  if (out == nullptr || !p.layout.cooks[p.cook].working) return;
  const Spot low = out->outline[0], high = out->outline[2];
  const double blade = std::min(high.x_mm - low.x_mm, high.y_mm - low.y_mm);
  const double x = (low.x_mm + high.x_mm) / 2;
  p.d.outline(Role::Peel,
              std::array{Spot{low.x_mm, 0}, Spot{high.x_mm, 0}, Spot{high.x_mm, -blade},
                         Spot{x + kHandle_mm / 2, -blade}, Spot{x + kHandle_mm / 2, low.y_mm},
                         Spot{x - kHandle_mm / 2, low.y_mm}, Spot{x - kHandle_mm / 2, -blade},
                         Spot{low.x_mm, -blade}},
              Weight::Normal, true);
  std::string words = "The peel, " + p.pen.length(p.config.peel.length_mm) +
                      " long, drawn straight out: " + p.pen.length(*out->required_mm) +
                      " of free ground (" + source_note(out->rule) + ")";
  const RoomZone* turned = zone_of(p, "room.peel_turn");
  if (turned == nullptr) return;
  p.d.outline(Role::Peel, turned->outline, Weight::Normal, true);
  words += ". Turned about the cook it sweeps " + p.pen.length(*turned->required_mm) +
           " of ground (" + source_note(turned->rule) + ")";
  // On the swept edge, on the side where nobody works dough.
  const bool right = !p.layout.dough_right;
  const std::size_t at = right ? 5 : 19;  // of the outline's 50 points: 37 degrees up either side
  p.pen.key(turned->outline[at], Role::Label, std::move(words));
}

std::string_view room_words(std::string_view rule) {
  if (rule == "reach.aisle") return "Free ground behind the cook";
  if (rule == "reach.peel_room") return "Room for the peel";
  if (rule == "room.drawer") return "Before an open door or drawer";
  if (rule == "room.doors_both") return "Doors open on both sides of the aisle";
  if (rule == "room.wheelchair_turn") return "Room to turn a wheelchair";
  return {};
}

// Ground in front of the counter that a rule asks for: its far edge, or its whole outline where it
// is round, with a letter on it.
void draw_room(Plan& p, const Box& box) {
  const StationLayout& s = p.layout;
  for (const Thing& thing : s.things) {
    p.d.hatch(Role::Thing, from_above(thing.box));
    p.d.outline(Role::Thing, from_above(thing.box), Weight::Normal);
  }
  if (!s.things.empty()) {
    const Block& first = s.things.front().box;
    p.pen.key({first.left_mm + 1.2 * p.pen.line_mm(), middle_of(first).y_mm}, Role::Thing,
              "The nearest thing, as measured; how thick it looks is drawn");
  }
  const double line = p.pen.line_mm();
  std::vector<Spot> letters;
  for (const RoomZone& zone : s.room) {
    const std::string_view words = room_words(zone.rule);
    if (words.empty() || !zone.required_mm) continue;
    const double edge = s.front_mm - *zone.required_mm;
    double right = zone.outline[0].x_mm;
    for (const Spot& at : zone.outline) right = std::max(right, at.x_mm);
    p.d.outline(Role::Room, zone.outline, Weight::Normal, true);
    if (zone.rule == "reach.aisle") {
      const double x = box.left_mm - 7 * line;
      p.d.line(Role::Dimension, {x - 0.3 * line, edge}, {zone.outline[0].x_mm, edge}, Weight::Thin);
      p.d.line(Role::Dimension, {x - 0.3 * line, s.front_mm}, {s.extent.left_mm, s.front_mm},
               Weight::Thin);
      p.pen.height(x, edge, s.front_mm, p.pen.length(*zone.required_mm));
    }
    // On its far edge, beside the letters that are there already.
    const bool round = zone.outline.size() > 4;
    Spot at{round ? 0 : right - line, edge};
    const auto taken = [&](const Spot& other) {
      return std::abs(other.x_mm - at.x_mm) < 1.4 * line &&
             std::abs(other.y_mm - at.y_mm) < 1.2 * line;
    };
    while (std::any_of(letters.begin(), letters.end(), taken)) at.x_mm -= 1.4 * line;
    letters.push_back(at);
    p.pen.key(at, Role::Label,
              std::string(words) + ": " + p.pen.length(*zone.required_mm) +
                  (zone.rule.starts_with("reach.") ? " advised (" : " needed (") +
                  source_note(zone.rule) + "), " +
                  (zone.available_mm ? p.pen.length(*zone.available_mm) : "not known how much") +
                  " there");
  }
}

void draw_cover(Plan& p) {
  const StationLayout& s = p.layout;
  if (!s.cover) return;
  if (!s.cover->front_given) {
    p.pen.note("How far the cover reaches is not known: it is not drawn");
    return;
  }
  const Block& roof = s.cover->roof;
  p.d.outline(Role::Cover, from_above(roof), Weight::Normal, true);
  const double out = s.front_mm - roof.near_mm;
  p.pen.key({roof.left_mm + 1.2 * p.pen.line_mm(), roof.near_mm}, Role::Label,
            "The cover's front edge, " + p.pen.length(std::abs(out)) +
                (out < 0 ? " behind" : " in front of") +
                " the counter's, as given; its sides and back are drawn");
}

void draw_person(const Plan& p, std::size_t index) {
  const Stand& stand = stand_of(p.layout, index, p.cook);
  const cook::Body& body = p.evaluation.cooks[index].body;
  const Spot eye{stand.x_mm, stand.y_mm};
  const PlanFigure figure = plan_figure_of(body, eye, stand.facing_deg);
  const bool chosen = index == p.cook && p.layout.cooks[index].watching;
  if (chosen) {
    p.d.polygon(Role::Person, figure.shoulders);
  }
  p.d.outline(chosen ? Role::Person : Role::OtherPerson, figure.shoulders, Weight::Normal);
  if (chosen)
    p.d.outline(Role::PersonLine, figure.head, Weight::Normal);
  else
    p.d.outline(Role::OtherPerson, figure.head, Weight::Normal);
  p.d.dot(Role::Eye, eye, kEye_mm);
  double low = eye.y_mm;
  for (const Spot& at : figure.shoulders) low = std::min(low, at.y_mm);
  p.d.text(Role::Label, {eye.x_mm, low - 0.7 * p.pen.line_mm()}, p.config.cooks[index].name,
           Align::Centre);
}

void draw_feet(Plan& p) {
  const StationLayout& s = p.layout;
  if (!s.feet_line_y_mm) return;
  const double y = *s.feet_line_y_mm, half = 0.75 * s.oven_body->width_mm();
  p.d.line(Role::Feet, {-half, y}, {half, y}, Weight::Heavy);
  const double away = s.front_mm - y;
  const std::string where =
      away > 0 ? distance(away, p.units) + " from the counter's edge" : "under the counter's edge";
  p.pen.key({(s.dough_right ? -1 : 1) * (half + 0.8 * p.pen.line_mm()), y}, Role::Label,
            "Feet line: toes " + where + " to watch (" + source_note("reach.feet_line") + ")");
}

// Ground that must be on the sheet.
Box room_of(const Plan& p) {
  const StationLayout& s = p.layout;
  Box box{s.extent.left_mm, s.extent.near_mm, s.extent.right_mm, s.extent.far_mm};
  const auto take = [&](Spot at) {
    box.left_mm = std::min(box.left_mm, at.x_mm);
    box.right_mm = std::max(box.right_mm, at.x_mm);
    box.bottom_mm = std::min(box.bottom_mm, at.y_mm);
    box.top_mm = std::max(box.top_mm, at.y_mm);
  };
  for (const Spot& at : s.child_free) take(at);
  for (const Thing& thing : s.things) {
    for (const Spot& at : from_above(thing.box)) take(at);
  }
  for (const ClearZone& zone : s.clear) {
    for (const Spot& at : from_above(zone.box)) take(at);
  }
  if (s.grill) {
    for (const Spot& at : from_above(*s.grill)) take(at);
  }
  for (const RoomZone& zone : s.room) {
    for (const Spot& at : zone.outline) take(at);
  }
  if (s.cover && s.cover->front_given) {
    for (const Spot& at : from_above(s.cover->roof)) take(at);
  }
  for (std::size_t i = 0; i < s.cooks.size(); ++i) {
    const Stand& stand = stand_of(s, i, p.cook);
    take({stand.x_mm - 350, stand.y_mm - 350});
    take({stand.x_mm + 350, stand.y_mm});
  }
  return box;
}

void draw_dimensions(Plan& p, const Box& box) {
  const StationLayout& s = p.layout;
  const double line = p.pen.line_mm();
  std::vector<double> across;
  for (const auto& part : {s.oven_stand, s.dough_counter}) {
    if (!part) continue;
    across.push_back(part->left_mm);
    across.push_back(part->right_mm);
  }
  std::sort(across.begin(), across.end());
  across.erase(std::unique(across.begin(), across.end(),
                           [](double a, double b) { return std::abs(a - b) < kSame_mm; }),
               across.end());
  if (across.size() > 1) p.pen.chain(across, box.top_mm + 3.6 * line, s.extent.far_mm);
  if (s.oven_body) {
    const std::array body{s.oven_body->left_mm, s.oven_body->right_mm};
    p.pen.chain(body, box.top_mm + 1.4 * line, s.oven_body->far_mm);
  }
  const double x = box.right_mm + 3 * p.pen.line_mm();
  if (s.dough_counter) {
    const Block& c = *s.dough_counter;
    for (const double y : {c.near_mm, c.far_mm}) {
      p.d.line(Role::Dimension, {c.right_mm, y}, {x + 0.3 * p.pen.line_mm(), y}, Weight::Thin);
    }
    p.pen.height(x, c.near_mm, c.far_mm, p.pen.length(c.depth_mm()));
  }
  if (!s.oven_body || !s.cooks[p.cook].watching) return;
  const double left = box.left_mm - 3 * p.pen.line_mm();
  const double eye = s.cooks[p.cook].watching->y_mm;
  p.d.line(Role::Dimension, {s.oven_body->left_mm, 0}, {left, 0}, Weight::Thin);
  p.d.line(Role::Dimension, {s.cooks[p.cook].watching->x_mm - 300, eye}, {left, eye}, Weight::Thin);
  p.pen.height(left, eye, 0, p.pen.length(-eye));
}

}  // namespace

Sheet plan_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view) {
  Sheet sheet;
  const StationLayout layout = station_layout(config, evaluation);
  const std::size_t cook = std::min(view.cook, evaluation.cooks.size() - 1);
  SheetPen probe(sheet.drawing, 60, view.units);
  Plan p{config, evaluation, layout, cook, sheet.drawing, probe, view.units};
  const Box box = room_of(p);
  sheet.text_mm = line_of(view, sheet_text_mm(box.right_mm - box.left_mm));
  SheetPen pen(sheet.drawing, sheet.text_mm, view.units);
  Plan plan{config, evaluation, layout, cook, sheet.drawing, pen, view.units};
  draw_counters(plan);
  if (layout.oven_body) {
    draw_oven(plan);
    draw_clear(plan);
    draw_places_for_food(plan);
    draw_child_free(plan);
    draw_peel(plan);
    draw_feet(plan);
  } else {
    draw_places_for_food(plan);
  }
  draw_room(plan, box);
  draw_cover(plan);
  for (std::size_t i = 0; i < layout.cooks.size(); ++i) draw_person(plan, i);
  draw_dimensions(plan, box);
  pen.note(
      "Lengths are as given or computed; the side that the dough counter is on, a child's "
      "table and how people stand are drawn, our judgement");
  const Box inked = inked_box(sheet.drawing, sheet.text_mm);
  pen.finish({inked.left_mm, inked.bottom_mm - 2 * sheet.text_mm}, inked.right_mm - inked.left_mm);
  describe(sheet, "Plan", config,
           "The station from above: counters, oven, standing places and what must stay free.",
           pen.entries());
  return sheet;
}

}  // namespace hs::report
