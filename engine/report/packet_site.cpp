// What happens on site: wiring, paint, and the plan with a step for each task.

#include <algorithm>
#include <string>

#include "engine/base/number_text.h"
#include "engine/evaluate/packet.h"
#include "engine/report/build_sheets.h"
#include "engine/report/packet_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/plan_words.h"
#include "engine/report/readers_units.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/wiring_sheet.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

constexpr std::string_view kNoFrame =
    "no cabinet is worked out for this station, so nothing is planned for it.";

std::string from_rule(std::string_view id) {
  const std::string source = source_note(id);
  return source.empty() ? std::string() : " (" + source + ")";
}

std::string hours(double h) { return trimmed(h, 1) + " h"; }

std::string area(double m2, Units units) {
  constexpr double kFoot_m2 = 0.09290304;
  return units == Units::Inch ? fixed(m2 / kFoot_m2, 1) + " sq ft" : fixed(m2, 2) + " m\u00B2";
}

std::string paint(double l, Units units) {
  return units == Units::Inch ? fixed(l / finish::kQuart_l, 2) + " qt" : fixed(l, 2) + " l";
}

std::string known_by(const power::Answer& answer) {
  std::string words(answer.clause);
  if (!words.empty()) words += "; ";
  return words + std::string(rules::basis_words(answer.basis));
}

Table circuit_table(const evaluate::Wiring& wiring) {
  Table table{"The circuit", {"", ""}, {}};
  const auto row = [&table](std::string what, std::string value) {
    table.rows.push_back({std::move(what), std::move(value)});
  };
  row("Supply", trimmed(wiring.volts, 0) + " V, breaker " + trimmed(wiring.breaker_a, 0) + " A");
  row("Loads, all at once", fixed(wiring.circuit.amps, 1) + " A; counted " +
                                fixed(wiring.circuit.counted_a, 1) + " A; " +
                                (wiring.circuit.fits ? "fits" : "DOES NOT FIT"));
  if (wiring.drop_v && wiring.drop_share) {
    row("Lost over the run", fixed(*wiring.drop_v, 1) + " V, " + percent(*wiring.drop_share));
  }
  if (wiring.thinnest) row("Thinnest wire for it", std::to_string(wiring.thinnest->awg) + " AWG");
  if (wiring.box) {
    row("Room in one outlet box", "to 2017: " + fixed(wiring.box->to2017.in3, 2) +
                                      " cu in; from 2020: " + fixed(wiring.box->from2020.in3, 2) +
                                      " cu in");
  }
  return table;
}

Table cutout_table(const PacketView& view, const evaluate::Wiring& wiring) {
  const auto length = [&](double mm) { return shop_length(mm, view.choice.units, false); };
  Table table{"Cut out before paint",
              {"What", "Out of", "Along", "Up", "Wide", "High", "To the edge", "To the next one"},
              {}};
  const auto rim = [&](double mm) { return mm < 0 ? length(-mm) + " beyond it" : length(mm); };
  for (const power::Cutout& cut : wiring.cutting.cutouts) {
    const power::Fitting& fitting = wiring.fittings[cut.fitting];
    const FromEdges edges = edges_of(wiring.panels[fitting.panel].thick);
    table.rows.push_back({power::fitting_name(fitting),
                          panel_words(wiring.panel_parts[fitting.panel]),
                          length(cut.u_mm) + " from its " + std::string(edges.along),
                          length(cut.v_mm) + " from its " + std::string(edges.up),
                          length(cut.wide_mm), cut.round ? "round" : length(cut.high_mm),
                          rim(cut.rim_mm), cut.web_mm ? length(*cut.web_mm) : "alone"});
  }
  return table;
}

Table amounts_table(const evaluate::Painting& painting, Units units) {
  Table table{
      "How much", {"Paint", "Area, once over", "Coats", "Between", "and", "Cans to buy"}, {}};
  const auto row = [&](const evaluate::PaintAmount& one) {
    if (one.coats == 0) return;
    table.rows.push_back({one.name, area(one.area_m2, units), std::to_string(one.coats),
                          paint(one.least_l, units), paint(one.most_l, units),
                          units == Units::Inch ? std::to_string(one.quarts) + " qt"
                                               : std::to_string(one.litres) + " l"});
  };
  row(painting.primer);
  for (const evaluate::PaintAmount& one : painting.paints) row(one);
  return table;
}

// What the amounts are worked out with, so that they can be checked against the label.
std::string coverage_words(const finish::Coating& coating, Units units) {
  const auto range = [&](double least_m2_l, double most_m2_l) {
    constexpr double kFoot_m2 = 0.09290304;
    const bool inch = units == Units::Inch;
    const double each = inch ? finish::kGallon_l / kFoot_m2 : 1;
    const int decimals = inch ? 0 : 1;
    return fixed(least_m2_l * each, decimals) + " to " + fixed(most_m2_l * each, decimals) +
           (inch ? " sq ft a gallon" : " m\u00B2 a litre");
  };
  return "Amounts are area times coats, divided by what a can covers, and " +
         percent(coating.lost_share) +
         " more for tray, roller and edges (our judgement). Primer "
         "covers " +
         range(coating.primer_least_m2_l, coating.primer_most_m2_l) + ", paint " +
         range(coating.least_m2_l, coating.most_m2_l) + from_rule("finish.amount") +
         ". The label in hand takes the place of these.";
}

// Faces of one part in one colour are one row.
Table faces_table(const evaluate::Painting& painting, Units units) {
  Table table{"Face by face", {"Part", "Name", "Colour", "Faces", "Area, all of them"}, {}};
  struct Group {
    const evaluate::PaintedFace* first;
    std::string faces;
    double area_m2;
  };
  std::vector<Group> groups;
  for (const evaluate::PaintedFace& face : painting.faces) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      return group.first->part == face.part && group.first->colour == face.colour;
    });
    if (same == groups.end()) {
      groups.push_back({&face, face.face, face.area_m2});
    } else {
      // Pieces that are turned have the one or the other there: together that is both.
      const std::size_t either = face.face.find(" or ");
      const std::size_t told = same->faces.find(face.face);
      if (either != std::string::npos && told != std::string::npos) {
        same->faces.replace(told + either, 4, " and ");
      } else {
        same->faces += ", " + face.face;
      }
      same->area_m2 += face.area_m2;
    }
  }
  for (const Group& group : groups) {
    table.rows.push_back(
        {std::to_string(group.first->part), std::string(group.first->part_name),
         group.first->colour ? painting.colours[*group.first->colour] : "primer only: sealed",
         group.faces, area(group.area_m2, units)});
  }
  return table;
}

Table waits_table(const evaluate::Painting& painting) {
  Table table{"Waiting", {"What", "Hours", "How it is known"}, {}};
  for (const evaluate::WaitingTime& wait : painting.waits) {
    table.rows.push_back({std::string(wait.what),
                          wait.hours ? hours(*wait.hours) : "read the label",
                          std::string(rules::basis_words(wait.basis))});
  }
  return table;
}

}  // namespace

PacketPart wiring_part(const PacketView& view) {
  DocPart part{"wiring", "Wiring"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  if (!packet->wiring) return {std::move(part), "neither an outlet nor a wired lamp is asked for."};
  const evaluate::Wiring& wiring = *packet->wiring;
  part.blocks.push_back(caution("caution.power"));
  part.blocks.push_back(words("For a talk with the licensed electrician, who decides" +
                              from_rule("power.code") + "."));
  part.blocks.push_back(rows(circuit_table(wiring)));
  Table answers{"What is asked for", {"About", "Answer", "Said by"}, {}};
  for (const evaluate::WiringAnswer& one : wiring.answers) {
    std::string words(one.answer.words);
    if (one.answer.mm) words += ": " + shop_length(*one.answer.mm, view.choice.units, false);
    answers.rows.push_back({std::string(one.about), std::move(words), known_by(one.answer)});
  }
  part.blocks.push_back(rows(std::move(answers)));
  part.blocks.push_back(rows(cutout_table(view, wiring)));
  part.blocks.push_back(
      words("Lengths go from the panel's edge to the opening's nearest edge; left and right are "
            "those of the cook at the counter. The last two columns are what stays of the panel, "
            "to its nearest edge and to the nearest other opening."));
  const Unit unit = unit_of(view.choice.units);
  for (const power::Remark& remark : wiring.cutting.remarks) {
    DocBlock b = words(power::words(remark, wiring.fittings, wiring.keepouts, unit));
    b.verdict = remark.verdict;
    part.blocks.push_back(std::move(b));
  }
  for (std::size_t i = 0; i < wiring.panels.size(); ++i) {
    if (!has_cutouts(wiring, i)) continue;
    const FromEdges edges = edges_of(wiring.panels[i].thick);
    part.blocks.push_back(figure(
        view,
        {.file = "wiring_" + std::to_string(i + 1),
         .head = capitalised(panel_words(wiring.panel_parts[i])),
         .caption = "Seen " + std::string(edges.seen) + ": its " + std::string(edges.along) +
                    " is on the left, its " + std::string(edges.up) + " below."},
        [&](const SheetView& v) { return wiring_sheet(view.config, view.evaluation, v, i); }));
  }
  std::string steps;
  for (const std::string_view step : power::cutting_steps(view.config.power.painted_first)) {
    steps += (steps.empty() ? "" : " ") + std::string(step);
  }
  part.blocks.push_back(words(std::move(steps), "In this order:"));
  return {std::move(part), {}};
}

PacketPart finish_part(const PacketView& view) {
  DocPart part{"finish", "Finish"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  const evaluate::Painting& painting = packet->painting;
  const Units units = view.choice.units;
  if (painting.faces.empty()) return {std::move(part), "nothing is painted."};
  part.blocks.push_back(words(
      "The substrate is sealed on every face before assembly. Doors and "
      "drawer fronts come off and are numbered: " +
      std::to_string(painting.doors_numbered) + " of them" + from_rule("finish.amount") + "."));
  part.blocks.push_back(rows(amounts_table(painting, units)));
  part.blocks.push_back(words(coverage_words(painting.coating, units)));
  if (painting.gap_mm && painting.film_mm && painting.gap_left_mm) {
    part.blocks.push_back(
        words("Inset gaps are cut " + shop_length(*painting.gap_mm, units, false) +
              readers_own("; paint takes " + trimmed(*painting.film_mm, 2) + " mm of it, " +
                              trimmed(*painting.gap_left_mm, 2) + " mm stays",
                          units) +
              from_rule("finish.gap") + "."));
  }
  if (painting.air_given) {
    DocBlock b = words("Air " + temperature(painting.air.air_c, units, 1) + ", " +
                           trimmed(painting.air.humidity_percent, 0) + " % humidity" +
                           (painting.day.dew_point_c
                                ? ", dew point " + temperature(*painting.day.dew_point_c, units, 1)
                                : std::string()) +
                           from_rule("finish.day") + ".",
                       "The day asked about.");
    b.verdict = painting.day.verdict;
    part.blocks.push_back(std::move(b));
    for (const finish::GateCheck& check : painting.day.checks) {
      DocBlock gate =
          words(capitalised(std::string(finish::gate_words(check.gate, check.verdict))) + ".");
      gate.verdict = check.verdict;
      part.blocks.push_back(std::move(gate));
    }
  } else {
    part.blocks.push_back(
        words("No day's air was given: waiting times are the label's at 25 \u00B0C "
              "(77 \u00B0F) and 50 %" +
              from_rule("finish.waits") + "."));
  }
  part.blocks.push_back(rows(waits_table(painting)));
  Table masks{"Mask off", {"What", "How many", "Why"}, {}};
  for (const finish::MaskLine& line : painting.masks) {
    masks.rows.push_back(
        {std::string(line.words.what), std::to_string(line.count), std::string(line.words.why)});
  }
  part.blocks.push_back(rows(std::move(masks)));
  part.blocks.push_back(rows(faces_table(painting, units)));
  return {std::move(part), {}};
}

PacketPart plan_part(const PacketView& view) {
  DocPart part{"plan", "Plan and build sheet"};
  const auto& packet = view.evaluation.packet;
  if (!packet) return {std::move(part), std::string(kNoFrame)};
  const evaluate::Timetable& plan = packet->timetable;
  if (plan.tasks.empty()) return {std::move(part), "there is nothing to do."};
  if (!plan.plan) {
    part.blocks.push_back(words(plan.why_no_plan.empty()
                                    ? "No first day is given, so there are hours and no days."
                                    : plan.why_no_plan));
  }
  part.blocks.push_back(rows(task_table(plan)));
  part.blocks.push_back(words(slack_words(plan) + " Hours are " + std::string("ours") +
                              from_rule("plan.tasks") + "; weather" + from_rule("plan.weather") +
                              "."));
  part.blocks.push_back(
      words("No number of hands makes the work shorter than its longest chain of tasks that wait "
            "for each other, " +
            hours(plan.network.length_min / 60.0) + " with its waiting."));
  for (const std::string& path : critical_paths(plan)) part.blocks.push_back(words(path));
  part.blocks.push_back(heading("Build sheet: each step in its order"));
  for (const std::size_t i : plan.network.order) {
    DocBlock step;
    step.kind = DocBlock::Kind::Step;
    step.head = capitalised(plan.tasks[i].name);
    step.words = readers_own(step_words(plan, i), view.choice.units);
    const std::string_view drawing = plan.notes[i].drawing;
    if (named_sheet(drawing, view)) {
      // Beside a step the picture alone is large enough to be read; its key is with the drawing.
      draw_figure(step, view.paper(), false,
                  [&](double line_mm) { return *named_sheet(drawing, view, line_mm); });
    }
    part.blocks.push_back(std::move(step));
  }
  return {std::move(part), {}};
}

}  // namespace hs::report
