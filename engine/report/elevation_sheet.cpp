// The station from the front: heights, widths, the mouth's true outline, and the cooks to scale.

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/report/figure.h"
#include "engine/report/section.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/station_layout.h"

namespace hs::report {
namespace {

constexpr double kToeSpace_mm = 100;  // how high a toe space is drawn
constexpr double kGround_mm = 60;
constexpr double kPerson_mm = 620;     // room for one figure
constexpr double kPeopleGap_mm = 250;  // and between them and the station
constexpr double kEye_mm = 16;
constexpr double kSame_mm = 1;

using Outline = std::array<Spot, 4>;

Outline from_front(const Block& b) {
  return {Spot{b.left_mm, b.bottom_mm}, Spot{b.right_mm, b.bottom_mm}, Spot{b.right_mm, b.top_mm},
          Spot{b.left_mm, b.top_mm}};
}

void draw_cabinet(Drawing& d, const StationLayout& s, const Block& b, bool masonry) {
  if (masonry) {
    d.polygon(Role::Riser, from_front(b));
    d.outline(Role::Riser, from_front(b), Weight::Normal);
    return;
  }
  const double slab = std::min(s.top_mm, b.height_mm());
  const double toe = std::min(kToeSpace_mm, 0.5 * b.height_mm());
  Block body = b;
  body.top_mm -= slab;
  d.polygon(Role::Cabinet, from_front(body));
  d.outline(Role::Cabinet, from_front(body), Weight::Thin);
  d.line(Role::Cabinet, {b.left_mm, toe}, {b.right_mm, toe}, Weight::Thin);
  Block top = b;
  top.bottom_mm = body.top_mm;
  d.polygon(Role::Counter, from_front(top));
}

// A box, or the dome that the kind has; drawn to the body's own width and height.
std::vector<Spot> body_outline(const config::Oven& oven, const Block& b, double floor_mm) {
  const bool dome = oven.kind != config::OvenKind::SteelCabinet &&
                    oven.kind != config::OvenKind::MasonryBarrel &&
                    oven.kind != config::OvenKind::Other;
  if (!dome) {
    const Outline box = from_front(b);
    return {box.begin(), box.end()};
  }
  const double shoulder = floor_mm + 0.35 * (b.top_mm - floor_mm);
  const double half = b.width_mm() / 2, middle = (b.left_mm + b.right_mm) / 2;
  std::vector<Spot> points{{b.left_mm, b.bottom_mm}, {b.right_mm, b.bottom_mm}};
  for (const Spot& p : arc({0, 0}, 1, 0, 180)) {
    points.push_back({middle + half * p.x_mm, shoulder + (b.top_mm - shoulder) * p.y_mm});
  }
  return points;
}

void draw_station(Drawing& d, const config::Config& config, const StationLayout& s) {
  if (s.cover) {
    for (const Block& post : s.cover->posts)
      d.outline(Role::Cover, from_front(post), Weight::Thin, true);
    d.outline(Role::Cover, from_front(s.cover->roof), Weight::Normal);
    d.hatch(Role::Cover, from_front(s.cover->roof));
  }
  if (s.oven_stand) draw_cabinet(d, s, *s.oven_stand, s.masonry_base);
  if (s.dough_counter) draw_cabinet(d, s, *s.dough_counter, false);
  if (s.riser) {
    d.polygon(Role::Riser, from_front(*s.riser));
    d.outline(Role::Riser, from_front(*s.riser), Weight::Normal);
  }
  for (const CookPlace& place : s.cooks) {
    for (const auto& box : {place.table_box, place.step_box}) {
      if (box) d.outline(Role::Counter, from_front(*box), Weight::Normal, true);
    }
  }
  if (!s.oven_body) return;
  const std::vector<Spot> body = body_outline(config.oven, *s.oven_body, s.floor_mm);
  d.polygon(Role::OvenBody, body);
  // The outer opening, and through it the inner one.
  d.polygon(Role::OvenFloor, s.outer_mouth);
  d.polygon(Role::OvenInside, s.inner_mouth);
  d.outline(Role::Sightline, s.inner_mouth, Weight::Heavy);
  if (s.brow) d.outline(Role::PersonLine, from_front(*s.brow), Weight::Normal, true);
}

// Level lines from low to high with their texts at one place, kept a line apart.
struct Level {
  double z_mm = 0, from_x_mm = 0;
  std::string text;
  double words_mm = 0;
};

void spread(std::vector<Level>& levels, double line_mm) {
  std::sort(levels.begin(), levels.end(),
            [](const Level& a, const Level& b) { return a.z_mm < b.z_mm; });
  for (Level& level : levels) level.words_mm = level.z_mm;
  for (int pass = 0; pass < 30; ++pass) {
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
      const double lap = 1.1 * line_mm - (levels[i + 1].words_mm - levels[i].words_mm);
      if (lap <= 0) continue;
      levels[i].words_mm -= lap / 2;
      levels[i + 1].words_mm += lap / 2;
    }
  }
}

void draw_levels(Drawing& d, std::vector<Level> levels, double x_mm, double line_mm) {
  spread(levels, line_mm);
  for (std::size_t i = 0; i < levels.size(); ++i) {
    const Level& level = levels[i];
    const double at = x_mm + (0.8 + 0.9 * static_cast<double>(i)) * line_mm;
    const double knee = x_mm + (1.4 + 0.9 * static_cast<double>(levels.size())) * line_mm;
    const double words = knee + line_mm;
    d.polyline(Role::Dimension,
               std::array{Spot{level.from_x_mm, level.z_mm}, Spot{knee, level.z_mm},
                          Spot{words - 0.2 * line_mm, level.words_mm}},
               Weight::Thin);
    d.dimension({at, 0}, {at, level.z_mm}, "");
    d.text(Role::Label, {words, level.words_mm}, level.text);
  }
}

std::vector<Level> heights_of(const evaluate::Evaluation& e, const StationLayout& s,
                              const SheetPen& pen) {
  std::vector<Level> levels;
  const evaluate::Heights& shown = e.used;
  if (s.dough_counter && shown.counter_mm) {
    levels.push_back({s.dough_counter->top_mm, s.dough_counter->right_mm,
                      pen.length(*shown.counter_mm) + " dough counter", 0});
  }
  if (s.oven_body) {
    const bool same =
        s.dough_counter && std::abs(s.dough_counter->top_mm - s.oven_body->bottom_mm) <= kSame_mm;
    if (!same && shown.oven_base_mm && s.oven_body->bottom_mm > 0) {
      levels.push_back({s.oven_body->bottom_mm, s.oven_body->right_mm,
                        pen.length(*shown.oven_base_mm) + (s.riser ? " block's top" : " oven base"),
                        0});
    }
    if (shown.oven_floor_mm) {
      levels.push_back(
          {s.floor_mm, s.oven_body->right_mm, pen.length(*shown.oven_floor_mm) + " oven floor", 0});
    }
    const double mouth = e.geometry.inner.height_mm;
    levels.push_back({s.floor_mm + mouth, e.geometry.inner.half_width_mm,
                      pen.length(s.floor_mm + mouth) + " mouth's top edge", 0});
    levels.push_back({s.oven_body->top_mm, s.oven_body->right_mm,
                      pen.length(s.oven_body->top_mm) + " oven's top", 0});
  }
  if (s.cover) {
    levels.push_back({s.cover->underside_mm, s.cover->roof.right_mm,
                      pen.length(s.cover->underside_mm) + " under the cover", 0});
  }
  return levels;
}

}  // namespace

Sheet elevation_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                      const SheetView& view) {
  Sheet sheet;
  Drawing& d = sheet.drawing;
  const StationLayout s = station_layout(config, evaluation);
  const std::size_t chosen = std::min(view.cook, evaluation.cooks.size() - 1);
  const double count = static_cast<double>(evaluation.cooks.size());
  const double left =
      (s.cover ? s.cover->roof.left_mm : s.extent.left_mm) - count * kPerson_mm - kPeopleGap_mm;
  const double right = s.cover ? s.cover->roof.right_mm : s.extent.right_mm;
  sheet.text_mm = line_of(view, sheet_text_mm((right - left) * 1.3));
  const double line = sheet.text_mm;
  SheetPen pen(d, line, view.units);

  d.polygon(Role::Ground, std::array{Spot{left, -kGround_mm}, Spot{right, -kGround_mm},
                                     Spot{right, 0}, Spot{left, 0}});
  d.line(Role::Ground, {left, 0}, {right, 0}, Weight::Heavy);
  draw_station(d, config, s);

  // The cooks beside it, the eye of each carried across to the oven.
  std::vector<Level> eyes;
  for (std::size_t i = 0; i < evaluation.cooks.size(); ++i) {
    const cook::Body& body = evaluation.cooks[i].body;
    const double x = left + (static_cast<double>(i) + 0.5) * kPerson_mm;
    const std::vector<Spot> figure = front_figure_of(body, x, 0);
    const bool at_oven = evaluation.cooks[i].at_oven;
    if (body.seated) {
      const double seat = config.cooks[i].seat_height_mm, half = 0.17 * body.stature_mm;
      d.polygon(Role::Seat, std::array{Spot{x - half, seat - 50}, Spot{x + half, seat - 50},
                                       Spot{x + half, seat}, Spot{x - half, seat}});
      for (const double leg : {x - half, x + half - 50}) {
        d.polygon(Role::Seat, std::array{Spot{leg, 0}, Spot{leg + 50, 0}, Spot{leg + 50, seat},
                                         Spot{leg, seat}});
      }
    }
    d.polygon(i == chosen ? Role::Person : Role::OtherPerson, figure);
    const double to = at_oven && s.oven_body ? s.oven_body->right_mm : x + kPerson_mm / 2;
    d.line(Role::EyeLevel, {left, body.eye.value_mm}, {to, body.eye.value_mm}, Weight::Thin, true);
    d.dot(Role::Eye, {x, body.eye.value_mm}, kEye_mm);
    d.text(Role::Label, {x, -kGround_mm - 0.8 * line},
           config.cooks[i].name + (body.seated ? ", seated" : ""), Align::Centre);
    eyes.push_back({body.eye.value_mm, left,
                    config.cooks[i].name + "'s eye " + pen.length(body.eye.value_mm), 0});
  }
  spread(eyes, line);
  for (const Level& eye : eyes) {
    d.line(Role::Dimension, {left, eye.z_mm}, {left - 1.2 * line, eye.words_mm}, Weight::Thin);
    d.text(Role::Label, {left - 1.4 * line, eye.words_mm}, eye.text, Align::Right);
  }

  draw_levels(d, heights_of(evaluation, s, pen), right, line);

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
  if (across.size() > 1) pen.chain(across, -kGround_mm - 2.8 * line, 0);
  if (s.oven_body) {
    const double half = evaluation.geometry.inner.half_width_mm;
    const std::array body{s.oven_body->left_mm, -half, half, s.oven_body->right_mm};
    pen.chain(body, s.oven_body->top_mm + 1.4 * line,
              s.floor_mm + evaluation.geometry.inner.height_mm);
  }

  for (std::size_t i = 0; i < s.cooks.size(); ++i) {
    const CookPlace& place = s.cooks[i];
    const auto name = [&](const std::optional<Block>& box, const char* what, const char* rule) {
      if (!box) return;
      pen.key({(box->left_mm + box->right_mm) / 2, box->top_mm - 0.8 * line}, Role::Label,
              config.cooks[i].name + what + pen.length(box->top_mm) + " high (" +
                  source_note(rule) + ")");
    };
    name(place.table_box, "'s own low table, away from the oven, ", "cook.child_table");
    name(place.step_box, "'s step at the dough counter, ", "cook.child_place");
  }
  const Box inked = inked_box(d, line);
  pen.note(
      "Heights are from the ground at the cook's feet. Recommended ones are as a builder "
      "marks them; given ones as they are (" +
      source_note("height.compromise") + ")");
  pen.note("Eye heights in shoes, measured or from the stature (" +
           source_note("cook.survey_adult") + ")");
  if (s.cover) {
    pen.note(
        "How far the cover reaches to the sides and where its posts stand is drawn, not given");
  }
  pen.finish({inked.left_mm, inked.bottom_mm - 2 * line}, inked.right_mm - inked.left_mm);
  std::vector<std::string> entries;
  for (const Level& level : heights_of(evaluation, s, pen)) {
    entries.push_back(level.text);
  }
  for (const Level& eye : eyes) entries.push_back(eye.text);
  describe(sheet, "Front elevation", config,
           "The station from the front with every cook beside it to scale.", entries);
  return sheet;
}

}  // namespace hs::report
