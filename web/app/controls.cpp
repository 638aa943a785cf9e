// The four main controls: what stands in the oven's place, how high, who looks from where, how
// deep.

#include <algorithm>
#include <string>

#include "engine/config/fields.h"
#include "engine/report/choice_label.h"
#include "engine/report/headline.h"
#include "engine/report/phrases.h"
#include "engine/report/section.h"
#include "web/app/panels.h"

namespace hs::web {
namespace {

using config::OvenKind;

const config::Field& kind_field() { return *config::find_field("oven.kind"); }

// Width of the chip before a control.
float chip_width(const Rect& row) { return row.w < 330 ? 64.0F : 84.0F; }

double small_step(report::Units units) { return units == report::Units::Inch ? 6.35 : 5; }
double large_step(report::Units units) { return units == report::Units::Inch ? 12.7 : 10; }

// As far as the field itself goes, whatever part of it the control shows.
void limit(ValueSpec& spec) {
  const config::Field& field = *config::find_field(spec.path);
  spec.least_mm = field.min;
  spec.most_mm = field.max;
}

void ask(const ValueSpec& spec, const ValueChange& change, Intents& intents) {
  if (change.to_mm) intents.push_back({Ask::Drag, std::string(spec.path), *change.to_mm});
  if (change.done) intents.push_back({Ask::DragEnd, {}, 0});
}

// A height of the station: what is given, or else the recommended one.
ValueSpec height_spec(const Station& s, const View& view, bool dough) {
  const evaluate::Evaluation& e = s.evaluation;
  ValueSpec spec;
  spec.path = dough ? "station.counter_height_mm" : "station.oven_base_height_mm";
  const bool slab = config::is_masonry(s.config.oven.kind);
  const bool own = !s.summary.headlines[dough ? 1 : 0].yours.empty();
  spec.label = dough  ? own ? "Your dough" : "Dough counter"
               : slab ? own ? "Your slab" : "Slab"
               : own  ? "Your oven"
                      : "Oven counter";
  spec.hint = "flag: recommended, green: as good";
  const evaluate::Heights& shown = e.used;
  const std::optional<double>& used = dough ? shown.counter_mm : shown.oven_base_mm;
  const evaluate::Heights& recommended = e.recommended.heights;
  spec.mark_mm = dough ? recommended.counter_mm : recommended.oven_base_mm;
  spec.band = dough ? e.recommended.dough_band : e.recommended.oven_band;
  constexpr double kUsual_mm = 900;  // nobody at this place: somewhere to start from
  spec.value_mm = used.value_or(kUsual_mm);
  spec.low_mm = dough ? 550 : 600;
  spec.high_mm = dough ? 1250 : 1400;
  if (spec.mark_mm) {
    spec.low_mm = std::min(spec.low_mm, *spec.mark_mm - 100);
    spec.high_mm = std::max(spec.high_mm, *spec.mark_mm + 100);
  }
  limit(spec);
  spec.low_mm = std::max(spec.low_mm, spec.least_mm);
  spec.step_mm = small_step(view.units);
  spec.text = used ? report::plain_length(*used, view.units, true) : std::string("not set");
  spec.units = view.units;
  return spec;
}

void draw_height(Ui& ui, const Rect& row, const Station& s, const View& view, bool dough,
                 Hold& hold, Intents& intents) {
  const ValueSpec spec = height_spec(s, view, dough);
  ask(spec, value_control(ui, row, spec, hold), intents);
}

void draw_sight(Ui& ui, const Rect& row, const Station& s, const View& view, Hold& hold,
                Intents& intents) {
  const std::vector<config::Cook>& cooks = s.config.cooks;
  const float chip_wide = chip_width(row);
  const Rect who{row.x, row.y, chip_wide, row.h};
  if (chip(ui, who, "action:person", "Who looks: " + cooks[view.person].name + ". Change",
           cooks[view.person].name, true)) {
    // The next one who works at the oven; alone there, the people's list is what helps.
    std::size_t next = view.person;
    do {
      next = (next + 1) % cooks.size();
    } while (next != view.person && !config::works_at_oven(cooks[next]));
    if (next == view.person) {
      intents.push_back({Ask::Sheet, "people", 0});
    } else {
      intents.push_back({Ask::Person, {}, static_cast<double>(next)});
    }
  }
  ValueSpec spec;
  spec.path = "view.standoff_mm";
  spec.label = "Eye to oven";
  spec.hint = "flag: sees it all from here on";
  spec.value_mm = s.config.view.standoff_mm;
  spec.low_mm = 300;
  spec.high_mm = 1500;
  limit(spec);
  spec.step_mm = view.units == report::Units::Inch ? 25.4 : 10;
  const evaluate::CookResult& cook = s.evaluation.cooks[view.person];
  if (cook.at_oven && cook.full_view.standoff_mm && *cook.full_view.standoff_mm < spec.high_mm) {
    // From here on all of the target is in view.
    spec.mark_mm = cook.full_view.standoff_mm;
    spec.band = height::Band{*cook.full_view.standoff_mm, spec.high_mm};
  }
  spec.text = report::distance(spec.value_mm, view.units);
  spec.units = view.units;
  const Rect rest{row.x + chip_wide + kUnit, row.y, row.w - chip_wide - kUnit, row.h};
  ask(spec, value_control(ui, rest, spec, hold), intents);
}

void draw_prep(Ui& ui, const Rect& row, const Station& s, const View& view, Hold& hold,
               Intents& intents) {
  ValueSpec spec;
  spec.path = "station.prep_depth_mm";
  spec.label = "Counter depth";
  spec.value_mm = s.config.station.prep_depth_mm;
  spec.low_mm = 300;
  spec.high_mm = 1000;
  limit(spec);
  spec.step_mm = large_step(view.units);
  if (s.evaluation.recommended.prep_depth_mm > 0) {
    spec.mark_mm = s.evaluation.recommended.prep_depth_mm;
  }
  spec.text = report::plain_length(spec.value_mm, view.units, true);
  spec.units = view.units;
  spec.compact = true;
  ask(spec, value_control(ui, row, spec, hold), intents);
}

}  // namespace

std::string_view kind_word(OvenKind kind) {
  return kind_field().choices[static_cast<std::size_t>(kind)];
}
std::string kind_name(OvenKind kind) {
  return report::choice_label(kind_field(), static_cast<std::size_t>(kind));
}

std::size_t looking(const config::Config& config, std::size_t chosen) {
  const std::size_t count = config.cooks.size();
  const std::size_t person = std::min(chosen, count - 1);
  if (config::works_at_oven(config.cooks[person])) return person;
  for (std::size_t i = 0; i < count; ++i) {
    if (config::works_at_oven(config.cooks[i])) return i;
  }
  return person;
}

void draw_controls(Ui& ui, const Layout& layout, const Station& s, const View& view, Hold& hold,
                   Intents& intents) {
  const bool shared = layout.dough.h <= 0;
  if (shared) {
    const float wide = chip_width(layout.height);
    const Rect which{layout.height.x, layout.height.y, wide, layout.height.h};
    if (switch_chip(ui, which, "action:height", "Which height: oven or dough counter", "Oven",
                    "Dough", view.dough_counter)) {
      intents.push_back({Ask::DoughCounter, {}, view.dough_counter ? 0.0 : 1.0});
    }
    const Rect rest{layout.height.x + wide + kUnit, layout.height.y, layout.height.w - wide - kUnit,
                    layout.height.h};
    draw_height(ui, rest, s, view, view.dough_counter, hold, intents);
  } else {
    draw_height(ui, layout.height, s, view, false, hold, intents);
    draw_height(ui, layout.dough, s, view, true, hold, intents);
  }
  draw_sight(ui, layout.sight, s, view, hold, intents);

  const OvenKind kind = s.config.oven.kind;
  const std::string word = "\"" + std::string(kind_word(kind)) + "\"";
  const Choice choice = chooser(ui, layout.kind, "oven.kind", "Oven kind", kind_name(kind), word);
  if (choice == Choice::Open) intents.push_back({Ask::Sheet, "oven", 0});
  if (choice == Choice::Previous || choice == Choice::Next) {
    // "Another oven" has no sizes of its own to load; the arrows pass it by.
    const std::size_t count = kind_field().choices.size() - 1;
    const std::size_t at = std::min(static_cast<std::size_t>(kind), count);
    const std::size_t next = choice == Choice::Next ? (at >= count ? 0 : (at + 1) % count)
                                                    : (at == 0 ? count - 1 : at - 1);
    intents.push_back({Ask::LoadOven, std::string(kind_field().choices[next]), 0});
  }
  draw_prep(ui, layout.prep, s, view, hold, intents);
}

}  // namespace hs::web
