#include "engine/evaluate/loading.h"

#include <cmath>
#include <variant>

#include "engine/config/fields.h"

namespace hs::evaluate {
namespace {

std::string_view run_words(bool oven) { return oven ? "oven's counter" : "dough counter"; }

std::string_view rule_of(loads::Case one) {
  switch (one) {
    case loads::Case::Shut:
      return {};
    case loads::Case::Open:
      return "load.tip";
    case loads::Case::Child:
      return "load.child";
    case loads::Case::Pull:
      return "load.pull";
    case loads::Case::Wind:
      return "load.wind";
  }
  return {};
}

// What is held by more than its weight. Only a tie to the front is a wall's; loose pavers and deck
// boards hold no anchor that may be counted on.
bool held_against(const config::Config& config, const loads::TipCase& one) {
  const auto& footing = config.survey.footing;
  if (config.loads.held == config::Held::Wall) return one.tip.side == loads::Side::Front;
  if (config.loads.held != config::Held::Ground) return false;
  return footing == config::Footing::Slab || footing == config::Footing::SetPavers;
}

Verdict share_verdict(double share) { return share <= 1 ? Verdict::Ok : Verdict::Warn; }

void add_share(Findings& out, std::string_view rule, double share) {
  out.add({rule, share_verdict(share), {}, share, 1, 1 - share, {}});
}

void add_tips(Findings& out, const config::Config& config, const loads::Loads& loads) {
  for (const loads::RunLoads& run : loads.runs) {
    for (const loads::TipCase& one : run.cases) {
      const std::string_view rule = rule_of(one.what);
      if (rule.empty()) continue;
      const double factor = one.tip.factor, margin = factor - loads::kEnough;
      Verdict verdict = Verdict::Ok;
      if (factor < loads::kEnough - 1e-6) {
        verdict = held_against(config, one)                            ? Verdict::Warn
                  : config.loads.held || one.what == loads::Case::Wind ? Verdict::Fail
                                                                       : Verdict::Unknown;
      }
      out.add({rule, verdict, {}, factor, loads::kEnough, margin, run_words(run.oven)});
    }
  }
  if (loads.made && !config.loads.gust_m_s) {
    out.add({"load.wind", Verdict::Unknown, {}, {}, loads::kEnough, {}, {}});
  }
}

void add_oven(Findings& out, const config::Config& config, const loads::Loads& loads) {
  if (!loads.oven) return;
  if (!config.loads.gust_m_s) {
    out.add({"load.oven", Verdict::Unknown, {}, {}, loads::kEnough, {}, {}});
    return;
  }
  const double share = loads.oven->gust_m_s / *config.loads.gust_m_s;
  const double factor = std::min(loads::kMost, share * share);
  out.add({"load.oven",
           factor >= loads::kEnough - 1e-6 ? Verdict::Ok : Verdict::Warn,
           {},
           factor,
           loads::kEnough,
           factor - loads::kEnough,
           {}});
}

void add_decks(Findings& out, const loads::Loads& loads) {
  for (const loads::FeetOff& off : loads.feet_off) {
    out.add({"load.feet",
             Verdict::Fail,
             {},
             off.feet_mm,
             off.under_mm,
             off.under_mm - off.feet_mm,
             off.across ? "from left to right" : "from front to back"});
  }
  for (const loads::Deck& deck : loads.decks) {
    const std::string_view where =
        deck.what == loads::Under::Block ? "top of the block" : "sheets under the oven";
    out.add({"load.deck",
             share_verdict(deck.bend.sag_mm / deck.limit_mm),
             {},
             deck.bend.sag_mm / deck.limit_mm,
             1,
             1 - deck.bend.sag_mm / deck.limit_mm,
             where});
    const double years = deck.years_mm() / deck.years_limit_mm();
    out.add({"load.deck_years", share_verdict(years), {}, years, 1, 1 - years, where});
    out.add({"load.deck_strength",
             deck.strength <= 1 ? Verdict::Ok : Verdict::Fail,
             {},
             deck.strength,
             1,
             1 - deck.strength,
             where});
  }
}

void add_path(Findings& out, const config::Config& config, const loads::Loads& loads) {
  if (!loads.made) return;
  const config::Carries carries = config.loads.carries.value_or(config::Carries::Timber);
  constexpr std::string_view kThrough[] = {"treated lumber on shims", "legs", "masonry", ""};
  const bool boards = carries == config::Carries::BaseBoards;
  const bool drawn = carries == config::Carries::Timber;
  out.add({"load.path",
           boards  ? Verdict::Fail
           : drawn ? Verdict::Ok
                   : Verdict::Warn,
           {},
           {},
           {},
           {},
           kThrough[static_cast<std::size_t>(carries)]});
}

void add_pressure(Findings& out, const config::Config& config, const loads::Loads& loads) {
  const bool deck = config.survey.footing == config::Footing::Deck ||
                    (!config.survey.footing && config.site.ground == config::Ground::Deck);
  const auto& carries = config.loads.carries;
  const bool legs = carries == config::Carries::Legs;
  if (loads.made && !deck && (legs || carries == config::Carries::Masonry)) {
    out.add({"load.pressure", Verdict::Unknown, {}, {}, {}, {}, legs ? "legs" : "masonry"});
  }
  double worst_kpa = loads.pier_kpa.value_or(0);
  std::string_view where = loads.pier_kpa ? "oven's pier" : "";
  for (const loads::RunLoads& run : loads.runs) {
    if (run.pressure_kpa <= worst_kpa) continue;
    worst_kpa = run.pressure_kpa;
    where = run_words(run.oven);
  }
  if (where.empty()) return;
  const double share = worst_kpa / loads::kSoil_kpa;
  const Verdict verdict = deck ? Verdict::Unknown : share <= 1 ? Verdict::Ok : Verdict::Warn;
  if (deck) where = {};
  out.add({"load.pressure", verdict, {}, share, 1, 1 - share, where});
}

void add_growth(Findings& out, const loads::Loads& loads) {
  for (const loads::Growth& one : loads.growth) {
    switch (one.what) {
      case loads::Grows::BaseBoard:
        out.add({"load.growth_base", Verdict::Ok, {}, one.needed_mm, {}, {}, {}});
        break;
      case loads::Grows::Front:
        add_share(out, "load.growth_fronts", one.needed_mm / *one.room_mm);
        break;
      case loads::Grows::MetalTop:
        add_share(out, "load.growth_metal", one.needed_mm / *one.room_mm);
        break;
    }
  }
}

}  // namespace

loads::Loads loads_of_build(const config::Config& config, const Evaluation& e,
                            const frame::Frame& frame, std::span<const frame::Piece> pieces) {
  std::vector<loads::Stands> runs;
  if (frame.made()) {
    for (const frame::Run& run : frame.runs) runs.push_back({run.oven, run.counter});
  }
  loads::Asked asked;
  asked.pieces = pieces;
  asked.runs = runs;
  asked.oven_base_mm = e.used.oven_base_mm;
  if (frame.places.masonry_base) asked.pier = frame.places.oven_stand;
  return loads::loads_of(config, asked);
}

std::uint64_t loads_digest(const config::Config& config, const Evaluation& e,
                           std::uint64_t before) {
  // FNV-1a, 64 bits (Fowler, Noll and Vo; from memory), over thousandths.
  std::uint64_t hash = before;
  const auto add = [&hash](std::int64_t value) {
    auto left = static_cast<std::uint64_t>(value);
    for (int i = 0; i < 8; ++i, left >>= 8U) hash = (hash ^ (left & 0xFFU)) * 0x100000001B3U;
  };
  constexpr double kThousandths = 1000;
  for (const config::Field& field : config::fields()) {
    if (!field.path.starts_with("loads.")) continue;
    const config::Value value = field.get(config, 0);
    add(static_cast<std::int64_t>(value.index()));
    if (const auto* number = std::get_if<double>(&value)) add(std::llround(*number * kThousandths));
    if (const auto* choice = std::get_if<config::ChoiceIndex>(&value)) add(choice->index);
  }
  add(e.used.oven_base_mm ? std::llround(*e.used.oven_base_mm * kThousandths) : -1);
  return hash;
}

void add_load_findings(Findings& out, const config::Config& config, const loads::Loads& loads) {
  add_path(out, config, loads);
  add_decks(out, loads);
  add_tips(out, config, loads);
  add_oven(out, config, loads);
  add_pressure(out, config, loads);
  if (!loads.lifts.empty()) {
    const loads::Lift& heaviest = loads.lifts.front();
    out.at_most("load.lift", heaviest.mass_kg, loads::kOne_kg, Verdict::Warn, {}, heaviest.what);
  }
  add_growth(out, loads);
}

}  // namespace hs::evaluate
