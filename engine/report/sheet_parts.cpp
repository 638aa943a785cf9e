#include "engine/report/sheet_parts.h"

#include <algorithm>
#include <array>

#include "engine/base/text.h"
#include "engine/report/cited.h"
#include "engine/report/phrases.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

constexpr double kPerLetter = 0.6;

std::size_t letters_in(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) {
    at += std::max<std::size_t>(1, code_point_at(text, at).bytes);
  }
  return count;
}

std::string note_of(std::string_view source_id, std::string_view clause, rules::Basis basis) {
  const rules::Source* source = rules::find_source(source_id);
  if (source == nullptr) return {};
  // Our own ground is its own name.
  if (basis == rules::Basis::Computed || basis == rules::Basis::Judgement ||
      basis == rules::Basis::CommonPractice) {
    return std::string(basis_words(basis));
  }
  std::string note(source->title);
  // Who says it, unless the title begins with that.
  constexpr std::size_t kLongAuthor = 40;
  const std::string_view first = source->author.substr(0, source->author.find(' '));
  if (source->title.find(first) == std::string_view::npos && source->author.size() <= kLongAuthor) {
    note = std::string(source->author) + ", " + note;
  }
  if (!clause.empty()) note += ", " + std::string(clause);
  switch (basis) {
    case rules::Basis::SecondHand:
      return note + "; second-hand";
    case rules::Basis::Memory:
      return note + "; from memory";
    default:
      return note + "; read";
  }
}

// In the key a line stands for itself, an area for its hatch.
bool is_line(Role zone) {
  return zone == Role::Curve || zone == Role::InUse || zone == Role::Limit;
}

}  // namespace

std::vector<std::string> wrapped(std::string_view text, std::size_t most) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t space = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, space - at);
    if (!line.empty() && letters_in(line) + 1 + letters_in(word) > most) {
      lines.push_back(std::move(line));
      line.clear();
    }
    if (!line.empty()) line += ' ';
    line += word;
    at = space + 1;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

std::size_t letters_across(double width_mm, double line_mm) {
  return static_cast<std::size_t>(
      std::max(20.0, width_mm / (kPerLetter * kLetterPerLine * line_mm)));
}

double text_width_mm(std::string_view text, double line_mm) {
  return kPerLetter * kLetterPerLine * line_mm * static_cast<double>(letters_in(text));
}

Box words_box(Spot at, std::string_view text, Align align, double line_mm) {
  const double wide = text_width_mm(text, line_mm), rim = 0.1 * line_mm;
  const double before = align == Align::Left ? 0 : align == Align::Right ? wide : wide / 2;
  return {at.x_mm - before - rim, at.y_mm - line_mm / 2, at.x_mm - before + wide + rim,
          at.y_mm + line_mm / 2};
}

Box inked_box(const Drawing& drawing, double text_mm) {
  Box box = drawing.bounds();
  for (const Mark& mark : drawing.marks()) {
    if (mark.char_count == 0) continue;
    const std::span<const Spot> points = drawing.points(mark);
    const bool two = mark.shape == Shape::Dimension && points.size() > 1;
    const double x = two ? (points[0].x_mm + points[1].x_mm) / 2 : points[0].x_mm;
    const double y = two ? (points[0].y_mm + points[1].y_mm) / 2 : points[0].y_mm;
    const double wide = text_width_mm(drawing.text(mark), text_mm);
    const double before = two || mark.align == Align::Centre ? wide / 2
                          : mark.align == Align::Right       ? wide
                                                             : 0;
    box.left_mm = std::min(box.left_mm, x - before);
    box.right_mm = std::max(box.right_mm, x - before + wide);
    box.bottom_mm = std::min(box.bottom_mm, y - text_mm / 2);
    box.top_mm = std::max(box.top_mm, y + text_mm / 2);
  }
  return box;
}

std::string source_note(std::string_view id) {
  if (const rules::Rule* rule = rules::find_rule(id)) {
    return note_of(rule->source, rule->clause, rule->basis);
  }
  for (const rules::Caution& caution : rules::cautions()) {
    if (caution.id == id) return note_of(caution.source, caution.clause, caution.basis);
  }
  return {};
}

std::string clear_side(clearance::Hot hot, clearance::Side side) {
  const std::string name(clearance::side_name(side));
  return hot == clearance::Hot::Oven ? name : std::string(clearance::hot_name(hot)) + "'s " + name;
}

std::string clear_source(clearance::Hot hot, const clearance::Need& need) {
  using clearance::From;
  switch (need.from) {
    case From::Unknown:
      break;
    case From::Listed:
      if (hot == clearance::Hot::Oven) return source_note("clearance.side");
      return std::string(clear_asker(hot, need.from));
    case From::Local:
      return "local rule, as typed in";
    case From::Published:
      return source_note(clear_rule(hot, need));
  }
  return {};
}

std::string SheetPen::length(double mm) const {
  return shop_ ? shop_length(mm, units_, true) : plain_length(mm, units_, true);
}

void SheetPen::chain(std::span<const double> places_mm, double y_mm, double from_y_mm) {
  const double way = y_mm > from_y_mm ? 1 : -1;
  for (const double x : places_mm) {
    d_.line(Role::Dimension, {x, from_y_mm}, {x, y_mm + 0.3 * way * text_mm_}, Weight::Thin);
  }
  int low = 0;  // short ones side by side take turns
  for (std::size_t i = 0; i + 1 < places_mm.size(); ++i) {
    const double from = places_mm[i], to = places_mm[i + 1];
    const std::string text = length(to - from);
    if (to - from > text_width_mm(text, text_mm_) + 1.2 * text_mm_) {
      d_.dimension({from, y_mm}, {to, y_mm}, text);
      low = 0;
      continue;
    }
    d_.dimension({from, y_mm}, {to, y_mm}, "");
    const double words = y_mm + way * (0.85 + 0.95 * (low++ % 2)) * text_mm_;
    d_.length({(from + to) / 2, words}, text, Align::Centre);
  }
}

void SheetPen::height(double x_mm, double low_mm, double high_mm, std::string_view text) {
  d_.dimension({x_mm, low_mm}, {x_mm, high_mm}, text);
}

void SheetPen::key(Spot at, Role zone, std::string words) {
  const std::string letter(1, next_);
  d_.text(Role::Key, at, letter, Align::Centre);
  letters_.push_back(letter);
  zones_.push_back(zone);
  words_.push_back(std::move(words));
  next_ = next_ == 'Z' ? 'a' : static_cast<char>(next_ + 1);
}

void SheetPen::again(Spot at) { d_.text(Role::Key, at, letters_.back(), Align::Centre); }

void SheetPen::note(std::string words, Role zone) {
  letters_.emplace_back();
  zones_.push_back(zone);
  words_.push_back(std::move(words));
}

double SheetPen::list(Spot corner, double width_mm) {
  d_.begin_key();
  const double row = 1.25 * text_mm_, swatch = 2.2 * text_mm_;
  const bool letters = next_ != 'A';
  const bool swatches =
      std::any_of(zones_.begin(), zones_.end(), [](Role zone) { return zone != Role::Label; });
  const double words_x =
      corner.x_mm + (letters ? 1.6 * text_mm_ : 0) + (swatches ? swatch + 0.6 * text_mm_ : 0);
  const std::size_t most = letters_across(corner.x_mm + width_mm - words_x, text_mm_);
  double y = corner.y_mm;
  for (std::size_t i = 0; i < words_.size(); ++i) {
    if (!letters_[i].empty()) {
      d_.text(Role::Key, {corner.x_mm + 0.7 * text_mm_, y}, letters_[i], Align::Centre);
    }
    const double left = corner.x_mm + (letters ? 1.6 * text_mm_ : 0);
    if (is_line(zones_[i])) {
      d_.line(zones_[i], {left, y}, {left + swatch, y}, Weight::Heavy, zones_[i] == Role::InUse);
    } else if (zones_[i] != Role::Label) {
      const std::array box{
          Spot{left, y - 0.45 * text_mm_}, Spot{left + swatch, y - 0.45 * text_mm_},
          Spot{left + swatch, y + 0.45 * text_mm_}, Spot{left, y + 0.45 * text_mm_}};
      if (zones_[i] == Role::OvenBody) {
        d_.polygon(zones_[i], box);
      } else if (zones_[i] != Role::ChildFree) {  // that is drawn by its edge
        d_.hatch(zones_[i], box);
      }
      d_.outline(zones_[i], box, Weight::Normal,
                 zones_[i] == Role::ChildFree || zones_[i] == Role::ClearRoom);
    }
    for (const std::string& line : wrapped(words_[i], most)) {
      d_.text(Role::Label, {words_x, y}, line);
      y -= row;
    }
    y -= 0.25 * row;
  }
  return y;
}

double SheetPen::finish(Spot corner, double width_mm) {
  const double y = list(corner, width_mm) - 0.5 * text_mm_;
  const double bar = units_ == Units::Inch ? 36 * 25.4 : 1000;
  d_.line(Role::Scale, {corner.x_mm, y}, {corner.x_mm + bar, y}, Weight::Heavy);
  for (const double x : {corner.x_mm, corner.x_mm + bar}) {
    d_.line(Role::Dimension, {x, y - 0.35 * text_mm_}, {x, y + 0.35 * text_mm_});
  }
  d_.text(Role::Label, {corner.x_mm + bar + 0.5 * text_mm_, y}, "this line is " + length(bar));
  return y - text_mm_;
}

double SheetPen::finish_below() {
  const Box inked = inked_box(d_, text_mm_);
  return finish({inked.left_mm, inked.bottom_mm - 2 * text_mm_},
                std::max(inked.right_mm - inked.left_mm, 40 * text_mm_));
}

double sheet_text_mm(double wide_mm) { return std::clamp(wide_mm / 60, 40.0, 90.0); }

void describe(Sheet& sheet, std::string_view kind, const config::Config& config,
              std::string_view first, const std::vector<std::string>& entries) {
  sheet.title = std::string(kind);
  if (!config.title.empty()) sheet.title += ": " + config.title;
  sheet.description = std::string(first);
  for (const std::string& entry : entries) {
    sheet.description += " " + entry;
    if (!entry.ends_with('.')) sheet.description += '.';
  }
}

}  // namespace hs::report
