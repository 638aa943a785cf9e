// Paint, plan and money in the report.

#include "engine/evaluate/costing.h"
#include "engine/evaluate/painting.h"
#include "engine/evaluate/timetable.h"
#include "engine/report/json_values.h"
#include "engine/report/packet_json.h"

namespace hs::report {
namespace {

using evaluate::PaintAmount;

void put_hours(JsonWriter& out, std::string_view key, double minutes) {
  put_number(out, key, minutes / 60, 2);
}

void put_amount(JsonWriter& out, const PaintAmount& amount) {
  out.begin_object();
  put_text(out, "name", amount.name);
  put_number(out, "area_m2", amount.area_m2, 2);
  put_number(out, "coats", amount.coats, 0);
  put_number(out, "least_l", amount.least_l, 2);
  put_number(out, "most_l", amount.most_l, 2);
  put_number(out, "quarts", amount.quarts, 0);
  put_number(out, "litres", amount.litres, 0);
  out.end_object();
}

std::string_view gate_name(finish::Gate gate) {
  constexpr std::string_view kNames[] = {"cold", "hot", "dew", "humid", "rain", "night"};
  return kNames[static_cast<std::size_t>(gate)];
}

void put_day(JsonWriter& out, const evaluate::Painting& painting) {
  out.key("day");
  if (!painting.air_given) {
    out.null();
    return;
  }
  out.begin_object();
  put_text(out, "verdict", verdict_name(painting.day.verdict));
  put_number(out, "dew_point_c", painting.day.dew_point_c, 1);
  out.key("gates");
  out.begin_list();
  for (const finish::GateCheck& check : painting.day.checks) {
    out.begin_object();
    put_text(out, "gate", gate_name(check.gate));
    put_text(out, "verdict", verdict_name(check.verdict));
    put_number(out, "measured", check.measured, 1);
    put_number(out, "limit", check.limit, 1);
    put_text(out, "words", finish::gate_words(check.gate, check.verdict));
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

std::string two(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

// "2027-04-05T08:30", local where the station is.
std::string when_text(const schedule::Calendar& calendar, schedule::Minute minute) {
  const schedule::When when = schedule::when(calendar, minute);
  return std::to_string(when.date.year) + "-" + two(when.date.month) + "-" + two(when.date.day) +
         "T" + two(when.minute / 60) + ":" + two(when.minute % 60);
}

void put_task(JsonWriter& out, const evaluate::Timetable& table, std::size_t i) {
  const schedule::Task& task = table.tasks[i];
  const evaluate::TaskNote& note = table.notes[i];
  out.begin_object();
  put_text(out, "key", task.key);
  put_text(out, "name", task.name);
  put_text(out, "who", note.who);
  put_text_or_null(out, "tools", note.tools);
  put_text(out, "counted", note.counted);
  put_text_or_null(out, "caution", note.caution);
  put_text_or_null(out, "drawing", note.drawing);
  put_hours(out, "work_h", task.work_min);
  put_hours(out, "wait_h", task.wait_min);
  out.key("after");
  out.begin_list();
  for (const schedule::After& after : task.after) out.string(table.tasks[after.task].key);
  out.end_list();
  put_flag(out, "needs_dry_day", (task.needs & schedule::kDryDay) != 0);
  put_flag(out, "needs_paint_day", (task.needs & schedule::kPaintDay) != 0);
  if (i < table.network.tasks.size()) {
    put_hours(out, "slack_h", table.network.tasks[i].slack_min);
    put_flag(out, "critical", table.network.tasks[i].critical());
  }
  if (table.plan) {
    const schedule::Placed& placed = table.plan->tasks[i];
    put_text(out, "start", when_text(table.calendar, placed.start));
    put_text(out, "worked", when_text(table.calendar, placed.worked));
    put_text(out, "done", when_text(table.calendar, placed.done));
    put_flag(out, "weather_open", placed.weather_open);
    put_text(out, "latest_start", when_text(table.calendar, placed.latest));
    put_flag(out, "holds_end", placed.holds_end());
  } else {
    for (const std::string_view key :
         {"start", "worked", "done", "weather_open", "latest_start", "holds_end"}) {
      put_null(out, key);
    }
  }
  out.end_object();
}

std::string_view unit_name(evaluate::ChangeUnit unit) {
  constexpr std::string_view kNames[] = {"mm", "", "m2", "l", "kg", "h", "money"};
  return kNames[static_cast<std::size_t>(unit)];
}

void put_changes(JsonWriter& out, const std::vector<evaluate::Change>& changes) {
  out.key("changes");
  out.begin_list();
  for (const evaluate::Change& change : changes) {
    out.begin_object();
    put_text(out, "of", evaluate::change_name(change.of));
    put_text(out, "what", change.what);
    put_text(out, "measure", change.measure);
    put_text_or_null(out, "unit", unit_name(change.unit));
    put_number(out, "before", change.before, 2);
    put_number(out, "after", change.after, 2);
    put_number(out, "count", change.count, 0);
    out.end_object();
  }
  out.end_list();
}

}  // namespace

void put_painting(JsonWriter& out, const evaluate::Painting& painting) {
  out.key("finish");
  out.begin_object();
  out.key("primer");
  put_amount(out, painting.primer);
  out.key("paints");
  out.begin_list();
  for (const PaintAmount& amount : painting.paints) put_amount(out, amount);
  out.end_list();
  out.key("faces");
  out.begin_list();
  for (const evaluate::PaintedFace& face : painting.faces) {
    out.begin_object();
    put_number(out, "part", face.part, 0);
    put_text(out, "name", face.part_name);
    put_text(out, "face", face.face);
    put_text_or_null(
        out, "colour",
        face.colour ? std::string_view(painting.colours[*face.colour]) : std::string_view());
    put_number(out, "area_m2", face.area_m2, 4);
    out.end_object();
  }
  out.end_list();
  put_number(out, "air_c", painting.air.air_c, 1);
  put_number(out, "humidity_percent", painting.air.humidity_percent, 0);
  put_flag(out, "air_given", painting.air_given);
  put_day(out, painting);
  out.key("waits");
  out.begin_list();
  for (const evaluate::WaitingTime& wait : painting.waits) {
    out.begin_object();
    put_text(out, "until", wait.what);
    put_number(out, "hours", wait.hours, 1);
    put_text(out, "basis", rules::basis_name(wait.basis));
    out.end_object();
  }
  out.end_list();
  out.key("masks");
  out.begin_list();
  for (const finish::MaskLine& line : painting.masks) {
    out.begin_object();
    put_text(out, "what", line.words.what);
    put_text(out, "why", line.words.why);
    put_number(out, "count", line.count, 0);
    out.end_object();
  }
  out.end_list();
  put_number(out, "fronts_off_and_numbered", painting.doors_numbered, 0);
  put_number(out, "inset_gap_mm", painting.gap_mm, 2);
  put_number(out, "inset_film_mm", painting.film_mm, 2);
  put_number(out, "inset_gap_left_mm", painting.gap_left_mm, 2);
  out.end_object();
}

void put_timetable(JsonWriter& out, const evaluate::Timetable& table) {
  out.key("plan");
  out.begin_object();
  put_hours(out, "work_h", table.work_min);
  put_hours(out, "length_h", table.network.length_min);
  put_text_or_null(out, "end",
                   table.plan ? when_text(table.calendar, table.plan->end) : std::string());
  put_text_or_null(out, "why_no_days", table.why_no_plan);
  out.key("critical_paths");
  out.begin_list();
  for (const std::vector<std::size_t>& path : table.network.critical_paths) {
    out.begin_list();
    for (const std::size_t task : path) out.string(table.tasks[task].key);
    out.end_list();
  }
  out.end_list();
  out.key("tasks");
  out.begin_list();
  for (std::size_t i = 0; i < table.tasks.size(); ++i) put_task(out, table, i);
  out.end_list();
  out.end_object();
}

void put_costing(JsonWriter& out, const config::Config& config, const evaluate::Costing& costing) {
  out.key("money");
  out.begin_object();
  put_text_or_null(out, "currency", costing.currency);
  put_number(out, "total", costing.total, 2);
  put_number(out, "lines_without_price", costing.without_price, 0);
  put_number(out, "built_kg", costing.built_kg, 1);
  put_number(out, "taken_kg", costing.taken_kg, 1);
  out.key("sums");
  out.begin_list();
  for (const evaluate::CostSum& sum : costing.sums) {
    out.begin_object();
    put_text(out, "of", evaluate::cost_name(sum.of));
    put_number(out, "total", sum.total, 2);
    put_number(out, "without_price", sum.without_price, 0);
    put_number(out, "mass_kg", sum.mass_kg, 1);
    out.end_object();
  }
  out.end_list();
  out.key("lines");
  out.begin_list();
  for (const evaluate::CostLine& line : costing.lines) {
    out.begin_object();
    put_text(out, "of", evaluate::cost_name(line.of));
    put_text(out, "what", line.what);
    put_number(out, "quantity", line.quantity, 2);
    put_text_or_null(out, "unit", line.unit);
    put_number(out, "price", line.price, 2);
    put_number(out, "total", line.total, 2);
    put_flag(out, "on_hand", line.all_there());
    put_number(out, "from_hand", line.from_hand, 2);
    put_share(out, "waste_fraction", line.waste_share);
    put_number(out, "mass_kg", line.mass_kg, 1);
    out.end_object();
  }
  out.end_list();
  out.key("one_inch");
  out.begin_list();
  for (const evaluate::InchCost& inch : costing.inches) {
    out.begin_object();
    put_text(out, "cook", config.cooks[inch.cook].name);
    put_text(out, "higher", inch.elbow ? "elbow" : "eye");
    put_mm(out, "counter_moves_mm", inch.counter_moves_mm);
    put_mm(out, "oven_base_moves_mm", inch.oven_base_moves_mm);
    put_number(out, "total_moves", inch.total_moves, 2);
    put_number(out, "mass_moves_kg", inch.mass_moves_kg, 1);
    put_number(out, "pieces_changed", inch.pieces_changed, 0);
    put_changes(out, inch.changes);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

}  // namespace hs::report
