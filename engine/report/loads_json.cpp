#include "engine/evaluate/build.h"
#include "engine/report/build_json.h"
#include "engine/report/json_values.h"
#include "engine/report/loads_words.h"

namespace hs::report {
namespace {

void put_lump(JsonWriter& out, std::string_view key, const loads::Lump& lump) {
  out.key(key);
  out.begin_object();
  put_number(out, "mass_kg", lump.mass_kg, 1);
  put_mm(out, "x_mm", lump.x_mm);
  put_mm(out, "y_mm", lump.y_mm);
  put_mm(out, "z_mm", lump.z_mm);
  out.end_object();
}

void put_case(JsonWriter& out, const loads::TipCase& one) {
  out.begin_object();
  put_text(out, "case", loads::case_name(one.what));
  put_factor(out, "factor", one.tip.factor);
  put_number(out, "wanted", loads::kEnough, 2);
  put_text(out, "over", side_words(one.tip.side));
  put_number(out, "holds_n_m", one.tip.holds_n_m, 1);
  put_number(out, "turns_n_m", one.tip.turns_n_m, 1);
  put_number(out, "tie_n", one.tie_n > 0 ? std::optional(one.tie_n) : std::nullopt, 0);
  put_number(out, "anchors_n", one.anchor_n > 0 ? std::optional(one.anchor_n) : std::nullopt, 0);
  out.end_object();
}

void put_run(JsonWriter& out, const loads::RunLoads& run) {
  out.begin_object();
  put_text(out, "run", run.oven ? "oven" : "dough");
  put_lump(out, "whole", run.whole);
  out.key("tipping");
  out.begin_list();
  for (const loads::TipCase& one : run.cases) put_case(out, one);
  out.end_list();
  put_number(out, "tips_in_gust_m_s", run.gust_m_s, 1);
  put_number(out, "tips_at_pull_n", run.pull_n, 0);
  const bool known = run.support_n > 0;
  put_number(out, "support_n", known ? std::optional(run.support_n) : std::nullopt, 0);
  put_number(out, "pressure_kpa", known ? std::optional(run.pressure_kpa) : std::nullopt, 1);
  out.end_object();
}

void put_deck(JsonWriter& out, const loads::Deck& deck) {
  out.begin_object();
  put_text(out, "under", under_words(deck.what));
  put_mm(out, "span_mm", deck.span_mm);
  put_mm(out, "thick_mm", deck.thick_mm);
  put_number(out, "sheets", deck.layers, 0);
  put_mm(out, "strip_mm", deck.strip_mm);
  put_number(out, "sag_mm", deck.bend.sag_mm, 2);
  put_number(out, "limit_mm", deck.limit_mm, 2);
  put_number(out, "years_sag_mm", deck.years_mm(), 2);
  put_number(out, "years_limit_mm", deck.years_limit_mm(), 2);
  put_number(out, "moment_n_m", deck.bend.moment_n_mm / 1000, 1);
  put_share(out, "of_strength", deck.strength);
  put_number(out, "stiffeners", deck.stiffeners, 0);
  put_text_or_null(out, "stiffener", stiffener_words(deck));
  put_number(out, "sag_with_them_mm", deck.stiffened_mm, 2);
  out.end_object();
}

void put_growth(JsonWriter& out, const loads::Growth& one) {
  out.begin_object();
  put_text(out, "what", grows_words(one.what));
  put_mm(out, "length_mm", one.length_mm);
  put_number(out, "longer_mm", one.longer_mm, 2);
  put_number(out, "shorter_mm", one.shorter_mm, 2);
  put_number(out, "needed_mm", one.needed_mm, 2);
  put_number(out, "room_mm", one.room_mm, 2);
  put_mm(out, "slot_mm", one.slot_mm);
  out.end_object();
}

}  // namespace

std::string_view side_words(loads::Side side) {
  switch (side) {
    case loads::Side::Front:
      return "to the front";
    case loads::Side::Right:
      return "to the right";
    case loads::Side::Back:
      return "to the back";
    case loads::Side::Left:
      return "to the left";
  }
  return "";
}

std::string_view under_words(loads::Under under) {
  return under == loads::Under::Block ? "top of the block" : "sheets under the oven";
}

std::string_view grows_words(loads::Grows grows) {
  switch (grows) {
    case loads::Grows::BaseBoard:
      return "longest base board";
    case loads::Grows::Front:
      return "largest door or drawer front";
    case loads::Grows::MetalTop:
      return "longest metal top";
  }
  return "";
}

std::string stiffener_words(const loads::Deck& deck) {
  if (!deck.mended) return "more sheets, or a plate under the feet: stiffeners are not enough";
  if (deck.stiffeners == 0) return {};
  const std::string count = std::to_string(deck.stiffeners);
  if (deck.stiffener_in == 0) return count + " of steel: no 2x6 is stiff enough";
  return count + " of 2x" + std::to_string(deck.stiffener_in) + " on edge, front to back";
}

void put_loads(JsonWriter& out, const loads::Loads& loads) {
  out.key("loads");
  out.begin_object();
  put_lump(out, "whole", loads.whole);
  out.key("runs");
  out.begin_list();
  for (const loads::RunLoads& run : loads.runs) put_run(out, run);
  out.end_list();
  out.key("oven");
  if (loads.oven) {
    out.begin_object();
    put_lump(out, "body", loads.oven->body);
    put_number(out, "foot_n", loads.oven->foot_n, 0);
    put_number(out, "tips_in_gust_m_s", loads.oven->gust_m_s, 1);
    put_number(out, "tips_at_pull_n", loads.oven->pull_n, 0);
    out.end_object();
  } else {
    out.null();
  }
  out.key("decks");
  out.begin_list();
  for (const loads::Deck& deck : loads.decks) put_deck(out, deck);
  out.end_list();
  out.key("lifts");
  out.begin_list();
  for (const loads::Lift& lift : loads.lifts) {
    out.begin_object();
    put_text(out, "what", lift.what);
    put_number(out, "mass_kg", lift.mass_kg, 1);
    out.end_object();
  }
  out.end_list();
  out.key("growth");
  out.begin_list();
  for (const loads::Growth& one : loads.growth) put_growth(out, one);
  out.end_list();
  put_number(out, "pier_kpa", loads.pier_kpa, 1);
  put_number(out, "tie_screws",
             loads.screws > 0 ? std::optional<double>(loads.screws) : std::nullopt, 0);
  put_number(out, "tie_washer_mm", loads.screws > 0 ? std::optional(loads.washer_mm) : std::nullopt,
             0);
  out.end_object();
}

}  // namespace hs::report
