// Comfort and share over one height, a row for each cook.

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/evaluate/curves.h"
#include "engine/report/phrases.h"
#include "engine/report/plot_parts.h"
#include "engine/report/plots.h"

namespace hs::report {
namespace {

using evaluate::Curve;
using evaluate::Curves;

// What a plot says of one value; everything in the person's units.
struct Words {
  std::string_view heading;  // "Easy hands in dough"
  std::string height;        // "Dough counter"
  std::string shows;         // what each row shows, one sentence
  std::string_view top, foot;
};

// Samples that fall on the ticks: half inches, or 10 mm.
double sample_step_mm(Units units) { return units == Units::Inch ? 12.7 : 10; }

// What lies this far outside stands at the foot of a row.
struct Foot {
  double off_mm;
  std::string_view axis, words;
};
Foot foot_of(Units units) {
  if (units == Units::Inch) return {6 * 25.4, "6 in", "6 in"};
  return {150, "150", "150 mm"};
}

std::string off_words(const Curve& curve, double height_mm, double off_mm, Units units) {
  if (off_mm <= height::kHandTolerance_mm) return "easy";
  return plain_length(off_mm, units, true) +
         (height_mm > curve.good.high_mm ? " above easy" : " below easy");
}

// The part of a curve between nought and one, cut where it leaves.
std::vector<std::vector<Spot>> pieces(const PlotRows& rows, const std::vector<double>& heights_mm,
                                      const std::vector<double>& parts, double upper_mm) {
  std::vector<std::vector<Spot>> all;
  const auto place = [&](double mm, double part) {
    return Spot{rows.x(mm), upper_mm - kPlotRow_mm * (1 - part)};
  };
  const auto inside = [](double part) { return part >= 0; };
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool here = inside(parts[i]), before = i > 0 && inside(parts[i - 1]);
    if (here && !before) all.emplace_back();
    if (i > 0 && here != before) {
      const double way = parts[i - 1] / (parts[i - 1] - parts[i]);
      all.back().push_back(place(heights_mm[i - 1] + way * (heights_mm[i] - heights_mm[i - 1]), 0));
    }
    if (here) all.back().push_back(place(heights_mm[i], parts[i]));
  }
  return all;
}

std::array<Spot, 4> box(double left, double right, double lower, double upper) {
  return {Spot{left, lower}, Spot{right, lower}, Spot{right, upper}, Spot{left, upper}};
}

// `part` puts a value between 0 at a row's foot and 1 at its top; `said` is a value in words.
template <typename Part, typename Said>
Sheet curve_plot(const config::Config& config, const Curves& curves, const SheetView& view,
                 const Words& words, double shift_mm, Part part, Said said) {
  Sheet sheet;
  sheet.text_mm = kPlotText_mm;
  Drawing& d = sheet.drawing;
  PlotRows rows(d, view.units, curves.heights_mm.front(), curves.heights_mm.back(), shift_mm);
  rows.heading(words.heading);
  const auto height_text = [&](double mm) { return plain_length(mm + shift_mm, view.units, true); };
  if (curves.used_mm) rows.flag(*curves.used_mm, "in use: " + height_text(*curves.used_mm));
  const bool band = curves.good && curves.good->high_mm > curves.good->low_mm;
  std::string band_words;
  if (band) {
    const height::Band shown{curves.good->low_mm + shift_mm, curves.good->high_mm + shift_mm};
    // As under the headline: the height that it is given for belongs to it, rounded as it is.
    const double used = curves.used_mm.value_or(0) + shift_mm;
    const bool holds = height::outside_mm(used, shown) <= height::kOverHands_mm;
    band_words =
        build_band(shown, holds ? used : shown.middle_mm(), view.units, true) + ": about as good";
  }
  std::vector<std::string> lines;
  for (const Curve& curve : curves.cooks) {
    const std::string& name = config.cooks[curve.cook].name;
    const std::string now =
        curve.at_used ? said(curve, *curves.used_mm, *curve.at_used) : std::string();
    const double upper = rows.row(name, now, kPlotRow_mm), lower = upper - kPlotRow_mm;
    rows.gauge(upper, words.top);
    rows.gauge(lower, words.foot);
    if (band) {
      d.hatch(Role::GoodBand,
              box(rows.x(curves.good->low_mm), rows.x(curves.good->high_mm), lower, upper));
    }
    std::vector<double> parts;
    parts.reserve(curve.values.size());
    for (const double value : curve.values) parts.push_back(part(value));
    for (const std::vector<Spot>& piece : pieces(rows, curves.heights_mm, parts, upper)) {
      d.polyline(Role::Curve, piece, Weight::Heavy);
    }
    if (curve.ceiling_mm && rows.shows(*curve.ceiling_mm)) {
      const double x = rows.x(*curve.ceiling_mm);
      d.line(Role::Limit, {x, lower}, {x, upper}, Weight::Heavy);
    }
    if (!now.empty()) lines.push_back(name + " " + now);
  }
  if (curves.used_mm) {
    const double x = rows.x(*curves.used_mm);
    for (std::size_t i = 0; i < curves.cooks.size(); ++i) {
      d.line(Role::InUse, {x, rows.upper(i) - kPlotRow_mm}, {x, rows.upper(i)}, Weight::Heavy,
             true);
      const double at = std::max(0.0, part(*curves.cooks[i].at_used));
      d.dot(Role::InUse, {x, rows.upper(i) - kPlotRow_mm * (1 - at)}, 0.28 * kPlotText_mm);
    }
  }
  rows.axis(words.height + " above the ground");

  SheetPen key(d, kPlotText_mm, view.units);
  if (curves.used_mm) key.note("the height in use", Role::InUse);
  if (band) key.note(band_words, Role::GoodBand);
  if (curves.cooks.front().ceiling_mm) {
    key.note("highest for that cook's hands", Role::Limit);
  }
  key.list({kPlotLeft_mm, rows.bottom()}, kPlotRight_mm - kPlotLeft_mm);

  std::string first(words.shows);
  if (curves.used_mm) {
    first += " At " + height_text(*curves.used_mm) + ", the height in use:";
    for (std::size_t i = 0; i < lines.size(); ++i) first += (i > 0 ? "; " : " ") + lines[i];
    first += ".";
  }
  if (band) first += " " + band_words + ".";
  describe(sheet, words.heading, config, first, {});

  sheet.table.caption = std::string(words.heading);
  sheet.table.columns.push_back(words.height);
  for (const Curve& curve : curves.cooks) {
    sheet.table.columns.push_back(config.cooks[curve.cook].name);
  }
  constexpr std::size_t kEvery = 4;  // 2 in, or 40 mm
  for (std::size_t i = 0; i < curves.heights_mm.size(); i += kEvery) {
    std::vector<std::string> row{plain_length(curves.heights_mm[i] + shift_mm, view.units, true)};
    for (const Curve& curve : curves.cooks) {
      row.push_back(said(curve, curves.heights_mm[i], curve.values[i]));
    }
    sheet.table.rows.push_back(std::move(row));
  }
  return sheet;
}

Sheet nothing(const config::Config& config, std::string_view heading, std::string_view words) {
  Sheet sheet;
  say_nothing(sheet, heading, words);
  describe(sheet, heading, config, words, {});
  return sheet;
}

Sheet comfort_plot(const config::Config& config, const Curves& curves, const SheetView& view,
                   const Words& words, double shift_mm) {
  // As the household search weighs it: by the square of what is off.
  const double foot_mm = foot_of(view.units).off_mm;
  return curve_plot(
      config, curves, view, words, shift_mm,
      [foot_mm](double off_mm) { return 1 - off_mm * off_mm / (foot_mm * foot_mm); },
      [&](const Curve& curve, double height_mm, double off_mm) {
        return off_words(curve, height_mm, off_mm, view.units);
      });
}

// A masonry oven is known by its floor, any other by the counter it stands on.
std::string oven_height_words(const config::Config& config) {
  return config::is_masonry(config.oven.kind) ? "Oven floor" : "Oven counter";
}
double oven_shift_mm(const config::Config& config) {
  return config::is_masonry(config.oven.kind) ? config.oven.floor_above_base_mm : 0;
}

}  // namespace

Sheet dough_comfort_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const SheetView& view) {
  constexpr std::string_view kHeading = "Easy hands in dough";
  const Curves curves = evaluate::dough_hands(config, evaluation, sample_step_mm(view.units));
  if (curves.cooks.empty()) return nothing(config, kHeading, "Nobody works at a dough counter.");
  const Foot foot = foot_of(view.units);
  return comfort_plot(config, curves, view,
                      {kHeading, "Dough counter",
                       "Each row is one cook: at its top the counter is easy on the hands, at its "
                       "foot it is " +
                           std::string(foot.words) +
                           " outside of what is easy; being off counts by its square. Computed.",
                       "easy", foot.axis},
                      0);
}

Sheet oven_comfort_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                        const SheetView& view) {
  constexpr std::string_view kHeading = "Easy hands at the oven";
  const Curves curves = evaluate::oven_hands(config, evaluation, sample_step_mm(view.units));
  if (curves.cooks.empty()) return nothing(config, kHeading, "Nobody works at the oven.");
  const Foot foot = foot_of(view.units);
  return comfort_plot(config, curves, view,
                      {kHeading, oven_height_words(config),
                       "Each row is one cook: at its top a peel is easy to hold over the oven's "
                       "floor, at its foot the hand is " +
                           std::string(foot.words) +
                           " outside of what is easy; being off counts by its square. Computed.",
                       "easy", foot.axis},
                      oven_shift_mm(config));
}

Sheet share_plot(const config::Config& config, const evaluate::Evaluation& evaluation,
                 const SheetView& view) {
  constexpr std::string_view kHeading = "How much of the pizza each sees";
  const Curves curves = evaluate::seen_shares(config, evaluation, sample_step_mm(view.units));
  if (curves.cooks.empty()) return nothing(config, kHeading, "Nobody works at the oven.");
  const std::string shows = "Each row is one cook, upright, eye " +
                            distance(config.view.standoff_mm, view.units) +
                            " in front of the mouth: nothing of the pizza at its foot, all of it "
                            "at its top. Computed.";
  return curve_plot(
      config, curves, view, {kHeading, oven_height_words(config), shows, "all", "none"},
      oven_shift_mm(config), [](double share) { return share; },
      [](const Curve&, double, double share) { return percent(share); });
}

}  // namespace hs::report
