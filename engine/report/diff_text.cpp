#include "engine/report/diff_text.h"

#include <algorithm>

#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/evaluate/changes.h"
#include "engine/evaluate/packet.h"
#include "engine/report/field_text.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

// The sheets of the packet that print such a value.
std::string_view sheet_of(evaluate::ChangeOf of) {
  using Of = evaluate::ChangeOf;
  switch (of) {
    case Of::Height:
      return "Cover, drawings";
    case Of::Part:
      return "Parts and hardware, every part";
    case Of::Hardware:
      return "Parts and hardware, hardware";
    case Of::Cut:
      return "Cut plans";
    case Of::Metal:
      return "Metal order";
    case Of::Paint:
      return "Finish";
    case Of::Plan:
      return "Plan and build sheet";
    case Of::Money:
      return "Cost and mass";
  }
  return {};
}

std::string value_text(double value, evaluate::ChangeUnit unit, Units units,
                       const std::string& currency) {
  using Unit = evaluate::ChangeUnit;
  switch (unit) {
    case Unit::Mm:
      return shop_length(value, units, false);
    case Unit::Count:
      return trimmed(value, 1);
    case Unit::Square_m:
      return trimmed(value, 3) + " m2";
    case Unit::Litre:
      return trimmed(value, 2) + " l";
    case Unit::Kg:
      return trimmed(value, 2) + " kg";
    case Unit::Hour:
      return trimmed(value, 2) + " h";
    case Unit::Money:
      return fixed(value, 2) + (currency.empty() ? "" : " " + currency);
  }
  return {};
}

std::string change_line(const evaluate::Change& change, Units units, const std::string& currency) {
  const auto value = [&](double v) { return value_text(v, change.unit, units, currency); };
  std::string line = std::string(sheet_of(change.of)) + ": " + change.what;
  if (change.count > 1) line += " (" + std::to_string(change.count) + " alike)";
  if (!change.measure.empty()) line += ", " + std::string(change.measure);
  if (!change.before) {
    line += ": new, " + value(*change.after);
  } else if (!change.after) {
    line += ": gone, was " + value(*change.before);
  } else {
    std::string now = value(*change.after), then = value(*change.before);
    // Less than a ruler shows: both in tenths of a millimetre.
    if (now == then && change.unit == evaluate::ChangeUnit::Mm) {
      now = fixed(*change.after, 1) + " mm";
      then = fixed(*change.before, 1) + " mm";
    }
    line += ": " + now + ", was " + then;
  }
  for (std::size_t i = 0; i < change.places.size(); ++i) {
    line += (i == 0 ? "; " : ", ") + change.places[i];
  }
  return line + "\n";
}

std::string row_name(const config::Config& config, const config::Field& field, std::size_t row) {
  if (field.group == config::Group::Station) return {};
  if (field.group == config::Group::Cook) return " of " + config.cooks[row].name;
  return " of row " + std::to_string(row + 1);
}

std::string given_lines(const DiffSide& before, const DiffSide& after, Units units) {
  std::string lines;
  config::Group told = config::Group::Station;
  for (const config::Field& field : config::fields()) {
    bool came_or_went = false;
    const std::size_t then = config::rows_of(before.config, field.group);
    const std::size_t now = config::rows_of(after.config, field.group);
    for (std::size_t row = 0; row < std::max(then, now); ++row) {
      const bool had = row < then, has = row < now;
      if (had && has && field.get(before.config, row) == field.get(after.config, row)) continue;
      // A row that came or went is told once, by its first field.
      if (had != has) {
        const config::List* list = config::list_of(field.group);
        if (list == nullptr || field.group == told) continue;
        came_or_went = true;
        const DiffSide& side = had ? before : after;
        lines += "Given: " + std::string(list->item) + " " +
                 field_text(field, side.config, row, units) + (had ? " is gone\n" : " is new\n");
        continue;
      }
      lines += "Given: " + std::string(field.label) + row_name(after.config, field, row) + ": " +
               plain_marks(field_text(field, after.config, row, units)) + ", was " +
               plain_marks(field_text(field, before.config, row, units)) + "\n";
    }
    if (came_or_went) told = field.group;
  }
  return lines;
}

// What each sees, and from where: eyes move that even where hands hold the heights.
std::string cook_lines(const Summary& before, const Summary& after) {
  std::string lines;
  for (const CookLine& now : after.cooks) {
    for (const CookLine& then : before.cooks) {
      if (then.name != now.name || then.line == now.line) continue;
      lines += "Cover, drawings: " + now.name + ": " + plain_marks(now.line) +
               "; was: " + plain_marks(then.line) + "\n";
    }
  }
  return lines;
}

// A height that something given has not moved, and what holds it there.
std::string held_lines(const Summary& before, const Summary& after) {
  std::string lines;
  for (const Headline& now : after.headlines) {
    for (const Headline& then : before.headlines) {
      if (then.id != now.id || then.value != now.value) continue;
      lines += "Unmoved: " + lower_first(now.label) + ", " + plain_marks(now.value) +
               (now.note.empty() ? "" : "; " + plain_marks(now.note)) + "\n";
    }
  }
  return lines;
}

}  // namespace

std::string diff_text(const DiffSide& before, const DiffSide& after, Units units) {
  std::string out = given_lines(before, after, units);
  const auto& packet = after.evaluation.packet;
  const std::string currency = packet ? packet->costing.currency : std::string();
  for (const evaluate::Change& change : evaluate::changes(before.evaluation, after.evaluation)) {
    out += change_line(change, units, currency);
  }
  if (!out.empty()) {
    const Summary then = summary(before.config, before.evaluation, units);
    const Summary now = summary(after.config, after.evaluation, units);
    out += cook_lines(then, now) + held_lines(then, now);
  }
  return out.empty() ? "Nothing is different.\n" : out;
}

}  // namespace hs::report
