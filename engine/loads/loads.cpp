#include "engine/loads/loads.h"

#include <algorithm>
#include <cmath>

#include "engine/loads/parts_of.h"

namespace hs::loads {
namespace {

using frame::Kind;
using frame::Piece;

constexpr double kCubicMetre_mm3 = 1e9;

bool of_box(Kind kind) {
  return kind == Kind::Side || kind == Kind::Bottom || kind == Kind::Back ||
         kind == Kind::Stretcher || kind == Kind::Deck;
}
bool of_riser(Kind kind) {
  return kind == Kind::RiserFront || kind == Kind::RiserSide || kind == Kind::RiserRib ||
         kind == Kind::RiserTop || kind == Kind::RiserCap;
}

// Free spans under the oven, from side to side of each box or from rib to rib of the block.
struct Span {
  double left_mm = 0, right_mm = 0, depth_mm = 0;
};

std::vector<Span> spans_under(const Asked& asked, bool block) {
  std::vector<Span> spans;
  if (!block) {
    for (const Piece& piece : asked.pieces) {
      if (piece.kind != Kind::Bottom || !piece.oven) continue;
      spans.push_back({piece.place.left_mm, piece.place.right_mm, piece.place.depth_mm()});
    }
    return spans;
  }
  std::vector<Block> walls;
  for (const Piece& piece : asked.pieces) {
    if (piece.kind == Kind::RiserSide || piece.kind == Kind::RiserRib) walls.push_back(piece.place);
  }
  std::sort(walls.begin(), walls.end(),
            [](const Block& a, const Block& b) { return a.left_mm < b.left_mm; });
  for (std::size_t i = 0; i + 1 < walls.size(); ++i) {
    spans.push_back({walls[i].right_mm, walls[i + 1].left_mm, walls[i].depth_mm()});
  }
  return spans;
}

// The worst foot: in the middle of the widest span, or where the feet are.
std::optional<Deck> worst_deck(const config::Config& config, const Asked& asked, double foot_n,
                               bool block) {
  const Feet feet = feet_of(config);
  const int layers = !block && config.build.layers == config::Layers::Two ? 2 : 1;
  std::optional<Deck> worst;
  const auto weigh = [&worst](const Deck& deck) {
    const auto badness = [](const Deck& d) {
      return std::max(d.years_mm() / d.years_limit_mm(), d.strength);
    };
    if (!worst || badness(deck) > badness(*worst)) worst = deck;
  };
  for (const Span& span : spans_under(asked, block)) {
    const double wide_mm = span.right_mm - span.left_mm;
    if (wide_mm <= 0) continue;
    for (const double side : {-0.5, 0.5}) {
      std::optional<double> at_mm;
      if (feet.known) at_mm = side * feet.across_mm - span.left_mm;
      weigh(deck_of(foot_n, config.loads.foot_mm, wide_mm, at_mm, config.build.sheet_mm, layers,
                    span.depth_mm));
    }
  }
  if (worst) worst->what = block ? Under::Block : Under::Sheets;
  return worst;
}

// Under a block or a slab the oven's weight is spread over as much as that covers.
std::optional<Deck> spread_deck(const config::Config& config, const Asked& asked,
                                const Block& spread, double mass_kg) {
  const auto strip = outdoor_strip(config.build.sheet_mm);
  if (!strip) return {};
  const int layers = config.build.layers == config::Layers::Two ? 2 : 1;
  std::optional<Deck> worst;
  for (const Span& span : spans_under(asked, false)) {
    Deck deck;
    deck.span_mm = span.right_mm - span.left_mm;
    if (deck.span_mm <= 0 || spread.width_mm() <= 0) continue;
    deck.layers = layers;
    deck.thick_mm = config.build.sheet_mm * layers;
    deck.strip_mm = std::min(spread.depth_mm(), span.depth_mm);
    deck.limit_mm = deck.span_mm * kSagShare;
    const double w_n_mm = mass_kg * kGravity_m_s2 / spread.width_mm();
    deck.bend = even_load(w_n_mm, deck.span_mm, strip->ei_n_mm * deck.strip_mm * layers);
    deck.strength = deck.bend.moment_n_mm / (strip->moment_n * deck.strip_mm * layers);
    deck.stiffened_mm = deck.bend.sag_mm;
    if (!worst || deck.bend.sag_mm / deck.limit_mm > worst->bend.sag_mm / worst->limit_mm) {
      worst = deck;
    }
  }
  return worst;
}

// The block's top, a slab, a pier, or the sheets under the oven.
std::optional<Block> under_feet(const Asked& asked) {
  if (asked.pier) return asked.pier;
  std::optional<Block> sheets;
  for (const Piece& piece : asked.pieces) {
    const Block& place = piece.place;
    if (piece.kind == Kind::RiserTop || piece.kind == Kind::Slab) return place;
    if (piece.kind != Kind::Substrate || !piece.oven) continue;
    if (!sheets) sheets = place;
    sheets->left_mm = std::min(sheets->left_mm, place.left_mm);
    sheets->right_mm = std::max(sheets->right_mm, place.right_mm);
  }
  return sheets;
}

// Only feet whose place is given: the usual ones are inside of the oven's own body.
void add_feet_off(const config::Config& config, const Asked& asked, Loads& out) {
  const std::optional<Block> under = under_feet(asked);
  if (!out.oven || !under) return;
  constexpr double kTiny = 0.05;
  const auto judge = [&](bool across, const std::optional<double>& apart_mm, double reach_mm) {
    if (!apart_mm) return;
    const double feet_mm = *apart_mm + config.loads.foot_mm;
    if (feet_mm > reach_mm + kTiny) out.feet_off.push_back({across, feet_mm, reach_mm});
  };
  const double middle_mm = config.oven.depth_mm / 2;
  judge(true, config.loads.feet_across_mm, 2 * std::min(under->right_mm, -under->left_mm));
  judge(false, config.loads.feet_deep_mm,
        2 * std::min(middle_mm - under->near_mm, under->far_mm - middle_mm));
}

void add_decks(const config::Config& config, const Asked& asked, Loads& out) {
  if (!out.oven || asked.pier || !out.feet_off.empty()) return;
  std::optional<Block> spread;
  bool block = false;
  double mass_kg = config.oven.mass_kg;
  for (const Piece& piece : asked.pieces) {
    if (!of_riser(piece.kind) && piece.kind != Kind::Slab) continue;
    mass_kg += lump_of(piece).mass_kg;
    block |= piece.kind == Kind::RiserTop;
    if (piece.kind == Kind::RiserTop || piece.kind == Kind::Slab) spread = piece.place;
  }
  if (block) {
    if (const auto deck = worst_deck(config, asked, out.oven->foot_n, true)) {
      out.decks.push_back(*deck);
    }
  }
  const auto deck = spread ? spread_deck(config, asked, *spread, mass_kg)
                           : worst_deck(config, asked, out.oven->foot_n, false);
  if (deck) out.decks.push_back(*deck);
}

// What the worst tie asks of screws, each with a washer under its head.
void add_screws(Loads& out) {
  double tie_n = 0;
  for (const RunLoads& run : out.runs) {
    for (const TipCase& one : run.cases) tie_n = std::max(tie_n, one.tie_n);
  }
  if (tie_n <= 0) return;
  const double each_n =
      allowable_withdrawal_lb(kFraming, kScrewShank_in, kScrewThread_in) * kPound_n;
  out.screws = std::max(2, static_cast<int>(std::ceil(tie_n / each_n - 1e-9)));
  const double hole_mm = kScrewShank_in * 25.4;
  const double area_mm2 = tie_n / out.screws / kFaceBears_n_mm2;
  out.washer_mm = std::sqrt(area_mm2 * 4 / 3.14159265358979 + hole_mm * hole_mm);
}

}  // namespace

Feet feet_of(const config::Config& config) {
  constexpr double kInside_mm = 50, kLeast_mm = 50;
  const config::Loads& given = config.loads;
  const auto usual = [&](double size_mm) { return std::max(kLeast_mm, size_mm - 2 * kInside_mm); };
  return {given.feet_across_mm.value_or(usual(config.oven.width_mm)),
          given.feet_deep_mm.value_or(usual(config.oven.depth_mm)),
          given.feet_across_mm.has_value()};
}

std::vector<Lift> lifts_of(const config::Config& config, const Asked& asked) {
  double box_kg = 0, top_kg = 0, sheet_kg = 0, slab_kg = 0, riser_kg = 0;
  for (const bool oven : {false, true}) {
    std::vector<double> boxes;
    for (const Piece& piece : asked.pieces) {
      if (piece.oven != oven || piece.bay < 0 || !of_box(piece.kind)) continue;
      const auto bay = static_cast<std::size_t>(piece.bay);
      if (boxes.size() <= bay) boxes.resize(bay + 1, 0);
      boxes[bay] += lump_of(piece).mass_kg;
    }
    for (const double kg : boxes) box_kg = std::max(box_kg, kg);
  }
  for (const Piece& piece : asked.pieces) {
    const double kg = lump_of(piece).mass_kg;
    if (piece.kind == Kind::MetalTop) top_kg = std::max(top_kg, kg);
    if (piece.kind == Kind::Substrate) sheet_kg = std::max(sheet_kg, kg);
    if (piece.kind == Kind::Slab) slab_kg = std::max(slab_kg, kg);
    if (of_riser(piece.kind)) riser_kg += kg;
  }
  std::vector<Lift> lifts;
  if (asked.oven_base_mm) lifts.push_back({"the oven", config.oven.mass_kg});
  if (box_kg > 0) lifts.push_back({"the heaviest box, without doors", box_kg});
  if (top_kg > 0) lifts.push_back({"the metal top", top_kg});
  if (sheet_kg > 0) lifts.push_back({"a sheet under the metal", sheet_kg});
  if (slab_kg > 0) lifts.push_back({"the slab under the oven", slab_kg});
  if (riser_kg > 0) lifts.push_back({"the block under the oven", riser_kg});
  std::stable_sort(lifts.begin(), lifts.end(),
                   [](const Lift& a, const Lift& b) { return a.mass_kg > b.mass_kg; });
  return lifts;
}

Loads loads_of(const config::Config& config, const Asked& asked) {
  Loads out;
  out.oven = oven_loads(config, asked);
  if (asked.pier) {
    const double area_mm2 = asked.pier->width_mm() * asked.pier->depth_mm();
    const double pier_kg = area_mm2 * asked.pier->height_mm() / kCubicMetre_mm3 * kPier_kg_m3;
    if (area_mm2 > 0) {
      constexpr double kKilo = 1000;
      out.pier_kpa = (pier_kg + config.oven.mass_kg) * kGravity_m_s2 / area_mm2 * kKilo;
    }
  }
  add_feet_off(config, asked, out);
  out.lifts = lifts_of(config, asked);
  if (asked.pieces.empty()) return out;
  out.made = true;
  std::vector<Lump> all;
  for (const Stands& run : asked.runs) {
    out.runs.push_back(run_loads(config, asked, run));
    all.push_back(out.runs.back().whole);
  }
  out.whole = sum_of(all);
  add_decks(config, asked, out);
  out.growth = growth_over_year(config, asked.pieces);
  add_screws(out);
  return out;
}

}  // namespace hs::loads
