// The side section as a full sheet: what the screen shows, with gaze angles, the least stoop, the
// eye's height, the distances from the mouth and the depths.

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/report/figure.h"
#include "engine/report/phrases.h"
#include "engine/report/section.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

struct Side {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  const evaluate::CookResult& cook;
  const std::string& name;
  const SectionFrame& frame;
  Drawing& d;
  SheetPen& pen;
  Spot eye;
  double back_mm = 0;  // of the head
};

// From the eye's own level down to the ray that lands farthest and the one to the floor's front
// edge.
void draw_gaze(Side& s) {
  const evaluate::Seen& seen = s.cook.watching;
  if (seen.eye.height_mm <= 0) return;
  const double reach = 0.34 * seen.eye.distance_mm, line = s.pen.line_mm();
  s.d.line(Role::Dimension, s.eye, {s.eye.x_mm + 1.5 * reach, s.eye.y_mm}, Weight::Thin, true);
  const double near_mm = s.evaluation.geometry.floor.near_mm;
  s.d.line(Role::Sightline, s.eye, {near_mm, s.eye.y_mm - seen.eye.height_mm}, Weight::Thin);
  struct Angle {
    double deg, radius;
    const char* words;
  };
  // The words stand above the eye's level, clear of the oven; the flatter ray's farther up.
  const Angle angles[] = {{seen.steepest_gaze_deg, reach, " down to the floor's front edge"},
                          {seen.shallowest_gaze_deg, 1.4 * reach, " down to the farthest seen"}};
  double words_mm = s.eye.y_mm + 1.6 * line;
  for (const Angle& angle : angles) {
    if (angle.deg <= 0) continue;
    const std::vector<Spot> turn = arc(s.eye, angle.radius, 0, -angle.deg);
    s.d.polyline(Role::Dimension, turn, Weight::Normal);
    s.d.leader(turn[turn.size() / 3], {s.eye.x_mm + 0.9 * angle.radius, words_mm},
               degrees(angle.deg) + angle.words);
    words_mm += 1.3 * line;
  }
}

void draw_stoop(Side& s, std::string& said) {
  if (!s.cook.stoop) {
    said = "No stoop within what is held at an oven shows " + s.name + " the whole target";
    return;
  }
  const evaluate::Stoop& stoop = *s.cook.stoop;
  if (stoop.posture == sight::Posture{}) {
    said = s.name + " sees the whole target upright; no stoop is needed";
    return;
  }
  const Figure bent = bent_figure_of(s.cook.body, s.eye.x_mm, stoop.posture);
  s.d.outline(Role::Person, bent.shape, Weight::Normal, true);
  s.d.dot(Role::Eye, bent.eye, 16);
  said = "Dashed: the least stoop that shows " + s.name + " the target: trunk " +
         degrees(stoop.posture.trunk_deg) + ", knees " + degrees(stoop.posture.knee_deg) +
         ", face " + s.pen.length(stoop.face_to_mouth_mm) + " from the mouth";
}

void draw_lengths(Side& s) {
  const config::Station& station = s.config.station;
  const double line = s.pen.line_mm();
  const double front = -station.oven_setback_mm, bottom = s.frame.box.bottom_mm;
  double y = bottom - 1.2 * line;
  const auto row = [&](std::vector<double> places, const char* words) {
    std::sort(places.begin(), places.end());
    s.pen.chain(places, y, bottom);
    s.d.text(Role::Label, {s.frame.label_x_mm, y}, words);
    y -= 2.4 * line;
  };
  if (s.cook.at_oven) {
    row({s.eye.x_mm, 0}, "eye to mouth, watching");
    row({-s.config.view.working_standoff_mm, 0}, "eye to mouth, peel in hand");
  }
  if (s.evaluation.used.oven_base_mm) {
    row({front, 0, s.config.oven.depth_mm}, "counter's edge, mouth, oven's back");
  }
  if (s.evaluation.used.counter_mm) {
    row({front, front + station.prep_depth_mm}, "dough counter's depth");
  }
  const double x = s.frame.box.left_mm - 1.5 * line;
  s.d.line(Role::Dimension, {s.back_mm, s.eye.y_mm}, {x - 0.3 * line, s.eye.y_mm}, Weight::Thin);
  s.d.line(Role::Dimension, {s.frame.box.left_mm, 0}, {x - 0.3 * line, 0}, Weight::Thin);
  s.pen.height(x, 0, s.eye.y_mm, s.pen.length(s.eye.y_mm));
}

}  // namespace

Sheet section_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                    const SheetView& view) {
  Sheet sheet;
  const std::size_t cook = std::min(view.cook, evaluation.cooks.size() - 1);
  const SectionFrame frame = section_frame(config, evaluation, cook);
  sheet.text_mm = line_of(view, sheet_text_mm(1.5 * (frame.label_x_mm - frame.box.left_mm)));
  sheet.drawing =
      section(config, evaluation,
              {.person = cook, .units = view.units, .text_mm = sheet.text_mm, .keyed = true});
  SheetPen pen(sheet.drawing, sheet.text_mm, view.units);
  const evaluate::CookResult& result = evaluation.cooks[cook];
  Side s{config, evaluation, result, config.cooks[cook].name, frame, sheet.drawing, pen, {}, 0};
  for (const Mark& mark : sheet.drawing.marks()) {
    if (mark.shape == Shape::Dot && mark.role == Role::Eye) s.eye = sheet.drawing.points(mark)[0];
  }
  s.back_mm = s.eye.x_mm - 200;
  draw_lengths(s);
  pen.note(s.name + "'s eye " + pen.length(s.eye.y_mm) + " above the ground, " +
           (result.body.seated ? "seated" : "upright") + " (" +
           (result.body.eye.basis == cook::Basis::Measured ? std::string("measured")
                                                           : source_note("cook.survey_adult")) +
           ")");
  if (result.at_oven && evaluation.used.oven_base_mm) {
    draw_gaze(s);
    std::string said;
    draw_stoop(s, said);
    pen.note(said + " (" + source_note("sight.stoop") + ")");
    if (result.heat.linger_standoff_mm > 0) {
      pen.note("Dashed upright line at eye level: nearer than " +
               pen.length(result.heat.linger_standoff_mm) +
               " is too hot for a face to linger, and flames come on top (" +
               source_note("heat.linger") + ")");
    }
    pen.note("Sees " + percent(result.watching.pizza_share) +
             " of the pizza upright; hatched: not seen (computed)");
  }
  pen.note("The oven's inside between mouth and floor, and the person's outline, are drawn");
  const Box inked = inked_box(sheet.drawing, sheet.text_mm);
  pen.finish({inked.left_mm, inked.bottom_mm - 2 * sheet.text_mm}, inked.right_mm - inked.left_mm);
  describe(sheet, "Side section", config, "The station cut through the middle of the mouth.",
           pen.entries());
  return sheet;
}

}  // namespace hs::report
