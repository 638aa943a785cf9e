#include "web/session/session.h"

#include <algorithm>
#include <utility>

#include "engine/base/number_text.h"
#include "engine/config/fields.h"
#include "engine/config/keys.h"
#include "engine/config/setting.h"
#include "engine/config/validate.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/evaluate/lighting.h"
#include "engine/evaluate/set_out.h"
#include "engine/evaluate/surveying.h"
#include "engine/share/link.h"
#include "web/session/presets.h"

namespace hs::web {
namespace {

constexpr std::size_t kMostSteps = 200;  // of undo; a Config is about 2 kB

// The row's index in "cooks.2.stature_mm"; 0 for a station field.
std::size_t row_of(std::string_view path) {
  const config::List* list = config::list_around(path);
  if (list == nullptr) return 0;
  std::size_t index = 0;
  for (const char c : path.substr(list->path.size() + 1)) {
    if (c < '0' || c > '9') break;
    index = std::min<std::size_t>(index * 10 + static_cast<std::size_t>(c - '0'), 1000);
  }
  return index;
}

// The field of a path, where the config has such a place.
const config::Field* field_at(const config::Config& config, std::string_view path) {
  const config::Field* field = config::find_field(path);
  return field && row_of(path) < config::rows_of(config, field->group) ? field : nullptr;
}

std::vector<Problem> no_such_field(std::string_view path) {
  return {{.path = std::string(path.substr(0, 80)),
           .given = "",
           .allowed = config::known_keys_text(path)}};
}

std::vector<Problem> refused(std::string path, std::string allowed) {
  return {{.path = std::move(path), .given = "", .allowed = std::move(allowed)}};
}

constexpr std::string_view kCounter = "station.counter_height_mm";
constexpr std::string_view kOvenBase = "station.oven_base_height_mm";

// One level has one height: where both are given, changing one changes the other.
void keep_one_level(config::Config& config, std::string_view path) {
  config::Station& station = config.station;
  if (station.arrangement != config::Arrangement::OneLevel) return;
  if (path == kCounter && station.oven_base_height_mm) {
    station.oven_base_height_mm = station.counter_height_mm;
  } else if (path == kOvenBase && station.counter_height_mm) {
    station.counter_height_mm = station.oven_base_height_mm;
  } else if (path == "station.arrangement" && station.oven_base_height_mm &&
             station.counter_height_mm) {
    station.counter_height_mm = station.oven_base_height_mm;
  }
}

}  // namespace

Session::Session() {
  history_.push_back(config_);
  evaluate_now(true);
}

void Session::evaluate_now(bool full) {
  if (full) {
    evaluate::Evaluation next = evaluate::evaluate_station(config_, marks_);
    // Asked here too: the calls themselves must not be made before their code is there.
    if (survey_here_ && !config_.survey.points.empty()) evaluate::add_survey(config_, next);
    if (builds_) evaluate::add_build(config_, next, evaluation_.build);
    evaluation_ = std::move(next);
  } else {
    evaluate::Evaluation next = evaluate::evaluate_fit(config_, marks_);
    next.sensitivity = std::move(evaluation_.sensitivity);
    next.weight_moves = std::move(evaluation_.weight_moves);
    next.fits_adults_share = evaluation_.fits_adults_share;
    if (evaluation_.survey) evaluate::keep_survey(next, evaluation_);
    // The lamp's best place is looked for on release; until then it hangs where it hung.
    auto& lamp = next.light.lamp;
    if (lamp && evaluation_.light.lamp) {
      if (!lamp->head) lamp = evaluate::lamp_at(config_, next, evaluation_.light.lamp->head);
      lamp->search = evaluation_.light.lamp->search;
    }
    if (builds_) evaluate::keep_build(next, evaluation_);
    evaluation_ = std::move(next);
  }
  ++revision_;
}

evaluate::Evaluation Session::told_evaluation() const {
  evaluate::Evaluation told = evaluate::evaluate_station(config_);
  if (survey_here_ && !config_.survey.points.empty()) evaluate::add_survey(config_, told);
  return told;
}

void Session::mark_for(report::Units units) {
  const evaluate::Marks marks = report::marks_of(units);
  if (marks == marks_) return;
  marks_ = marks;
  evaluate_now(!dragging_);
}

void Session::bring_build() {
  if (builds_) return;
  builds_ = true;
  evaluate::add_build(config_, evaluation_);
  ++revision_;
}

std::vector<Problem> Session::adopt(config::Config next) {
  end_drag();
  std::vector<Problem> problems = evaluate::check(next);
  if (!problems.empty()) {
    last_error = sentence(problems.front());
    return problems;
  }
  last_error.clear();
  if (next == config_) return {};
  config_ = std::move(next);
  remember();
  evaluate_now(true);
  return {};
}

void Session::remember() {
  history_.resize(undo_at_ + 1);
  history_.push_back(config_);
  if (history_.size() > kMostSteps) history_.erase(history_.begin());
  undo_at_ = history_.size() - 1;
}

std::vector<Problem> Session::set_field(std::string_view path, std::string_view text,
                                        report::Units bare) {
  const config::Field* field = field_at(config_, path);
  if (!field) return no_such_field(path);
  const std::size_t row = row_of(path);
  config::Config next = config_;
  // Judged alone first, so that a level's other height can follow before the whole is judged.
  const Result<config::Value> value =
      config::value_from_text(*field, std::string(path), text, report::unit_of(bare));
  const bool level = path == kCounter || path == kOvenBase || path == "station.arrangement";
  std::vector<Problem> problems;
  if (value && level) {
    field->set(next, row, *value);
    keep_one_level(next, path);
  } else {
    problems = config::set_field(next, *field, row, text, report::unit_of(bare));
  }
  if (!problems.empty()) {
    last_error = sentence(problems.front());
    return problems;
  }
  return adopt(std::move(next));
}

void Session::drag_field(std::string_view path, double value) {
  const FieldNumber number{path, value};
  drag_fields({&number, 1});
}

void Session::drag_fields(std::span<const FieldNumber> numbers) {
  config::Config next = config_;
  for (const auto& [path, value] : numbers) {
    const config::Field* field = field_at(config_, path);
    if (!field || !is_number(field->quantity) || !(value == value)) return;
    const double clamped = std::clamp(value, field->min, field->max);
    field->set(next, row_of(path), quantised(field->quantity, clamped));
    keep_one_level(next, path);
  }
  dragging_ = true;
  if (next == config_ || !evaluate::check(next).empty()) return;
  config_ = std::move(next);
  evaluate_now(false);
}

void Session::end_drag() {
  if (!dragging_) return;
  dragging_ = false;
  if (config_ == history_[undo_at_]) {
    // Dragged there and back: what was left out on the way is still to be computed.
    evaluate_now(true);
    return;
  }
  last_error.clear();
  remember();
  evaluate_now(true);
}

std::vector<Problem> Session::clear_field(std::string_view path) {
  return clear_fields({&path, 1});
}

std::vector<Problem> Session::clear_fields(std::span<const std::string_view> paths) {
  config::Config next = config_;
  for (const std::string_view path : paths) {
    const config::Field* field = field_at(config_, path);
    if (!field) return no_such_field(path);
    config::Value value = config::default_value(*field);
    if (field->absent != config::Absent::Default) value = std::monostate{};
    const std::size_t row = row_of(path);
    if (std::holds_alternative<std::monostate>(value) && field->quantity == Quantity::Text &&
        field->group == config::Group::Cook) {
      value = config::free_cook_name(config_, row);
    }
    field->set(next, row, value);
    if (next.station.arrangement == config::Arrangement::OneLevel &&
        (path == kCounter || path == kOvenBase)) {
      next.station.counter_height_mm.reset();
      next.station.oven_base_height_mm.reset();
    }
  }
  return adopt(std::move(next));
}

std::vector<Problem> fit_oven(config::Config& next, std::string_view kind) {
  const std::string_view link = preset_link("ovens/" + std::string(kind));
  if (link.empty()) {
    if (kind != "other") {
      return refused("oven.kind", "one of the kinds that the page offers");
    }
    // No sizes of its own: the present ones stay, under another name.
    next.oven.kind = config::OvenKind::Other;
    return {};
  }
  const Result<config::Config> preset = share::from_link(link);
  if (!preset) return preset.error();
  const config::Config& typical = *preset;
  next.oven = typical.oven;
  next.view.pizza_diameter_mm = typical.view.pizza_diameter_mm;
  next.peel = typical.peel;
  next.station.oven_setback_mm = typical.station.oven_setback_mm;
  if (!next.station.top_combustible) {
    next.station.top_combustible = typical.station.top_combustible;
  }
  // A height that suited the other oven says nothing about this one.
  next.station.oven_base_height_mm.reset();
  if (next.station.arrangement == config::Arrangement::OneLevel) {
    next.station.counter_height_mm.reset();
  }
  return {};
}

std::vector<Problem> Session::load_oven(std::string_view kind) {
  config::Config next = config_;
  std::vector<Problem> problems = fit_oven(next, kind);
  if (!problems.empty()) return problems;
  return adopt(std::move(next));
}

std::vector<Problem> Session::add_cook() {
  config::Config next = config_;
  if (!config::add_cook(next)) {
    return refused("cooks", "at most " + std::to_string(config::kMaxCooks) + " cooks");
  }
  return adopt(std::move(next));
}

std::vector<Problem> Session::remove_cook(std::size_t index) {
  config::Config next = config_;
  if (index >= next.cooks.size() || !config::remove_cook(next, index)) {
    return refused("cooks", "at least one cook");
  }
  return adopt(std::move(next));
}

std::vector<Problem> Session::add_point(const config::SurveyPoint& point) {
  config::Config next = config_;
  if (next.survey.points.size() >= config::kMaxPoints) {
    return refused("survey.points", "at most " + std::to_string(config::kMaxPoints) + " points");
  }
  next.survey.points.push_back(point);
  return adopt(std::move(next));
}

std::vector<Problem> Session::remove_point(std::size_t index) {
  config::Config next = config_;
  if (index >= next.survey.points.size()) return refused("survey.points", "no such point");
  next.survey.points.erase(next.survey.points.begin() + static_cast<std::ptrdiff_t>(index));
  return adopt(std::move(next));
}

std::vector<Problem> Session::set_out_points() {
  config::Config next = config_;
  next.survey.points = evaluate::usual_points(next, evaluation_.used);
  if (next.survey.points.empty()) {
    return refused("survey.points", "no cabinet of ours stands there, so that no base is cut");
  }
  return adopt(std::move(next));
}

std::vector<Problem> Session::open_json(std::string_view text) {
  Result<config::Config> read = evaluate::read(text);
  if (!read) {
    last_error = sentence(read.error().front());
    return read.error();
  }
  return adopt(std::move(read.value()));
}

std::vector<Problem> Session::open_link(std::string_view text) {
  Result<config::Config> read = share::from_link(text);
  if (!read) {
    last_error = sentence(read.error().front());
    return read.error();
  }
  return adopt(std::move(read.value()));
}

std::vector<Problem> Session::accept_trial() {
  const std::optional<evaluate::ColdTrial>& trial = evaluation_.trial;
  const config::Field* field = trial ? field_at(config_, trial->likely_field) : nullptr;
  if (!field || !trial->corrected_mm) {
    return refused("trial", "a cold trial whose mark differs from the computed one");
  }
  config::Config next = config_;
  const double value = std::clamp(*trial->corrected_mm, field->min, field->max);
  field->set(next, row_of(trial->likely_field), quantised(field->quantity, value));
  keep_one_level(next, trial->likely_field);
  return adopt(std::move(next));
}

void Session::undo() {
  end_drag();
  if (!can_undo()) return;
  config_ = history_[--undo_at_];
  last_error.clear();
  evaluate_now(true);
}

void Session::redo() {
  end_drag();
  if (!can_redo()) return;
  config_ = history_[++undo_at_];
  last_error.clear();
  evaluate_now(true);
}

void Session::survey_here() {
  survey_here_ = true;
  if (!config_.survey.points.empty() && !dragging_) evaluate_now(true);
}

void Session::forget_history() {
  end_drag();
  history_.assign(1, config_);
  undo_at_ = 0;
}

std::string Session::link() const { return share::to_link(config_); }

}  // namespace hs::web
