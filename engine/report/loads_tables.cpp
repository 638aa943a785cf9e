// Tables of what is built under its loads: each cell already in words, its margin beside it.

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/loads_words.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/survey_words.h"

namespace hs::report {
namespace {

std::string run_words(bool oven) { return oven ? "Oven's counter" : "Dough counter"; }

std::string signed_share(double factor, double wanted) {
  const double margin = factor / wanted - 1;
  constexpr double kMost = 10;
  if (margin >= kMost) return "plenty";
  constexpr double kHundred = 100;
  return (margin < 0 ? "\u2212" : "+") + fixed(std::abs(margin) * kHundred, 0) + " %";
}

// Small movements are told finer than a rule is read.
std::string small_length(double mm, Units units) {
  if (units == Units::Millimetre) return fixed(mm, mm < 1 ? 2 : 1) + " mm";
  constexpr double kInch_mm = 25.4, kLeast_in = 0.001;
  const double in = mm / kInch_mm;
  if (in > 0 && in < kLeast_in) return "below 0.001 in";
  return fixed(in, 3) + " in";
}

std::string pressure(double kpa, Units units) {
  constexpr double kPsf = 20.885434;
  const std::string metric = fixed(kpa, 1) + " kPa", psf = fixed(kpa * kPsf, 0) + " lb/ft\u00B2";
  return units == Units::Inch ? psf : metric;
}

Table masses_table(const Page& page, const loads::Loads& loads) {
  Table table{
      "Masses, and where they act",
      {"What", "Mass", "From the middle of the mouth", "Behind the mouth", "Above the feet"},
      {}};
  const auto row = [&](std::string name, const loads::Lump& lump) {
    std::string across = page.length(std::abs(lump.x_mm));
    if (std::abs(lump.x_mm) >= 1) across += lump.x_mm > 0 ? " right" : " left";
    table.rows.push_back({std::move(name), mass(lump.mass_kg, page.units), std::move(across),
                          page.length(lump.y_mm), page.length(lump.z_mm)});
  };
  for (const loads::RunLoads& run : loads.runs) {
    row(run_words(run.oven) + (run.oven && loads.oven ? ", with the oven" : ""), run.whole);
  }
  if (loads.runs.size() > 1) row("All of it", loads.whole);
  return table;
}

Table tipping_table(const Page& page, const loads::Loads& loads) {
  Table table{"Tipping: 1.5 times is wanted",
              {"What", "Against", "Holds by", "Margin", "Over", "A tie at the top bears",
               "Or anchors behind"},
              {}};
  for (const loads::RunLoads& run : loads.runs) {
    for (const loads::TipCase& one : run.cases) {
      const auto or_none = [&](double newtons) {
        return newtons > 0 ? force(newtons, page.units) : std::string("nothing");
      };
      const bool no_tie = one.anchor_n > 0 && one.tie_n == 0;
      table.rows.push_back(
          {run_words(run.oven), std::string(loads::case_name(one.what)), times(one.tip.factor),
           signed_share(one.tip.factor, loads::kEnough), std::string(side_words(one.tip.side)),
           no_tie ? std::string("does not help") : or_none(one.tie_n), or_none(one.anchor_n)});
    }
  }
  return table;
}

Table limits_table(const Page& page, const loads::Loads& loads) {
  Table table{"What would tip it", {"What", "A pull at its top", "A gust"}, {}};
  for (const loads::RunLoads& run : loads.runs) {
    table.rows.push_back(
        {run_words(run.oven), force(run.pull_n, page.units), speed(run.gust_m_s, page.units)});
  }
  if (loads.oven) {
    table.rows.push_back({"The oven, on its own feet", force(loads.oven->pull_n, page.units),
                          speed(loads.oven->gust_m_s, page.units)});
  }
  if (loads.screws > 0) {
    table.rows.push_back({"To tie it: " + trimmed(loads.screws, 0) +
                              " screws #10 with 1 1/2 in of thread in a wall's framing, washers "
                              "at least " +
                              page.length(loads.washer_mm) + " across",
                          "", ""});
  }
  return table;
}

Table decks_table(const Page& page, const loads::Loads& loads) {
  Table table{"Under the oven's feet",
              {"What", "Free span", "Sheets", "Bends", "Limit, span / 360", "Margin", "After years",
               "Limit, span / 240", "Of its strength", "Stiffeners", "Bends with them"},
              {}};
  for (const loads::Deck& deck : loads.decks) {
    const std::string stiffeners = stiffener_words(deck);
    table.rows.push_back(
        {capitalised(std::string(under_words(deck.what))), page.length(deck.span_mm),
         trimmed(deck.layers, 0) + ", " + cut_length(deck.thick_mm, page.units) + " in all",
         small_length(deck.bend.sag_mm, page.units), small_length(deck.limit_mm, page.units),
         signed_share(deck.limit_mm, deck.bend.sag_mm), small_length(deck.years_mm(), page.units),
         small_length(deck.years_limit_mm(), page.units), percent(deck.strength),
         stiffeners.empty() ? "none needed" : stiffeners,
         small_length(deck.stiffened_mm, page.units)});
  }
  return table;
}

Table ground_table(const Page& page, const loads::Loads& loads) {
  Table table{"On the ground", {"Under", "One support bears", "Pressure"}, {}};
  for (const loads::RunLoads& run : loads.runs) {
    const bool known = run.support_n > 0;
    table.rows.push_back({run_words(run.oven),
                          known ? force(run.support_n, page.units) : std::string("not known"),
                          known ? pressure(run.pressure_kpa, page.units) : std::string()});
  }
  if (loads.pier_kpa) {
    table.rows.push_back({"Oven's pier", "", pressure(*loads.pier_kpa, page.units)});
  }
  return table;
}

Table lifts_table(const Page& page, const loads::Loads& loads) {
  Table table{"What people lift", {"What", "Mass", "By"}, {}};
  for (const loads::Lift& lift : loads.lifts) {
    const char* by = lift.mass_kg <= loads::kOne_kg   ? "one person"
                     : lift.mass_kg <= loads::kTwo_kg ? "two people"
                                                      : "more hands, or a cart and a ramp";
    table.rows.push_back({capitalised(std::string(lift.what)), mass(lift.mass_kg, page.units), by});
  }
  return table;
}

Table growth_table(const Page& page, const loads::Loads& loads) {
  Table table{"Growth over the year",
              {"What", "Length", "Longer when hottest", "Shorter when coldest", "Room it needs",
               "Room it has", "Slots at its ends"},
              {}};
  for (const loads::Growth& one : loads.growth) {
    table.rows.push_back(
        {capitalised(std::string(grows_words(one.what))), page.length(one.length_mm),
         small_length(one.longer_mm, page.units), small_length(one.shorter_mm, page.units),
         small_length(one.needed_mm, page.units),
         one.room_mm ? small_length(*one.room_mm, page.units) : std::string("leave it"),
         cut_length(one.slot_mm, page.units)});
  }
  return table;
}

}  // namespace

std::vector<Table> loads_tables(const Page& page) {
  if (!page.evaluation.build) return {};
  const loads::Loads& loads = page.evaluation.build->loads;
  if (!loads.made) return {lifts_table(page, loads), ground_table(page, loads)};
  return {tipping_table(page, loads), limits_table(page, loads), decks_table(page, loads),
          ground_table(page, loads),  lifts_table(page, loads),  growth_table(page, loads),
          masses_table(page, loads)};
}

}  // namespace hs::report
