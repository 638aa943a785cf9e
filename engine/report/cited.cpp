#include "engine/report/cited.h"

#include <algorithm>

#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

// A list of clauses apart by "; " holds this one whole.
bool holds(std::string_view clauses, std::string_view clause) {
  const std::string list = "; " + std::string(clauses) + "; ";
  return list.find("; " + std::string(clause) + "; ") != std::string::npos;
}

void cite(std::vector<Cited>& all, std::string_view source, std::string_view clause,
          rules::Basis basis) {
  auto it = std::find_if(all.begin(), all.end(),
                         [source](const Cited& cited) { return cited.source == source; });
  if (it == all.end()) it = all.insert(all.end(), {source, {}, basis});
  it->basis = std::max(it->basis, basis);
  if (clause.empty() || holds(it->clauses, clause)) return;
  it->clauses += (it->clauses.empty() ? "" : "; ") + std::string(clause);
}

void cite_rule(std::vector<Cited>& all, std::string_view id) {
  if (const rules::Rule* rule = rules::find_rule(id)) {
    cite(all, rule->source, rule->clause, rule->basis);
  }
}

}  // namespace

// Where several findings share a rule, what tells them apart joins the id: "clearance.side.left".
std::string finding_id(const Finding& finding, const std::vector<Finding>& all) {
  std::string id(finding.rule);
  const auto same = std::count_if(all.begin(), all.end(), [&finding](const Finding& other) {
    return other.rule == finding.rule;
  });
  if (same < 2) return id;
  if (finding.cook) id += "." + std::to_string(*finding.cook + 1);
  if (!finding.where.empty()) {
    const std::size_t space = finding.where.rfind(' ');
    id += "." + std::string(space == std::string_view::npos ? finding.where
                                                            : finding.where.substr(space + 1));
  }
  return id;
}

std::string_view clear_rule(clearance::Hot hot, const clearance::Need& need) {
  using clearance::From;
  using clearance::Hot;
  using clearance::Side;
  if (need.from == From::Unknown || need.from == From::Local) return {};
  if (hot == Hot::Flue) return need.from == From::Published ? "clearance.flue" : "";
  if (hot == Hot::Grill) return "clearance.grill";
  const bool published = need.from == From::Published;
  switch (need.side) {
    case Side::Left:
    case Side::Right:
      return published ? "clearance.unlisted_sides" : "clearance.side";
    case Side::Back:
      return published ? "clearance.unlisted_sides" : "clearance.back";
    case Side::Above:
      return published ? "clearance.unlisted_open" : "clearance.above";
    case Side::Front:
      return published ? "clearance.unlisted_open" : "clearance.front";
    case Side::Below:
      return "clearance.below";
  }
  return {};
}

std::string_view clear_asker(clearance::Hot hot, clearance::From from) {
  using clearance::From;
  using clearance::Hot;
  switch (from) {
    case From::Unknown:
      return "nobody yet";
    case From::Listed:
      return hot == Hot::Flue    ? "the flue's maker"
             : hot == Hot::Grill ? "the grill's manual"
                                 : "the oven's manual";
    case From::Local:
      return "a local rule";
    case From::Published:
      return "published codes, no listing";
  }
  return {};
}

std::vector<Cited> cited_sources(const config::Config& config, const evaluate::Evaluation& e) {
  std::vector<Cited> all;
  for (const Finding& finding : e.findings) cite_rule(all, finding.rule);
  for (const clearance::Zone& zone : e.surroundings.hot) {
    if (zone.need.from == clearance::From::Published)
      cite_rule(all, clear_rule(zone.hot, zone.need));
  }
  if (!e.surroundings.storms.empty()) {
    for (const std::string_view id :
         {"weather.drop_air", "weather.drop_landing", "weather.driving_rain"}) {
      cite_rule(all, id);
    }
  }
  cite_rule(all, e.recommended.binding);
  for (const evaluate::CookResult& cook : e.cooks) {
    switch (cook.body.elbow.basis) {
      case cook::Basis::Measured:
        break;
      case cook::Basis::SurveyAdult:
        cite_rule(all, "cook.survey_adult");
        break;
      case cook::Basis::SurveyChild:
        cite_rule(all, "cook.survey_child");
        break;
      case cook::Basis::SurveySeated:
        cite_rule(all, "cook.seated");
        break;
    }
    if (cook.standing.stature_percent) {
      cite_rule(all, cook.body.child ? "cook.stature_for_age" : "cook.taller_than");
    }
  }
  if (e.fits_adults_share) cite_rule(all, "height.fits_adults");
  for (const rules::Caution& caution : rules::cautions()) {
    if (!applies(caution, config.oven.fuel)) continue;
    cite(all, caution.source, caution.clause, caution.basis);
  }
  return all;
}

bool applies(const rules::Caution& caution, config::Fuel fuel) {
  using config::Fuel;
  using rules::Applies;
  switch (caution.applies) {
    case Applies::Always:
      return true;
    case Applies::Gas:
      return fuel == Fuel::Gas || fuel == Fuel::GasAndWood;
    case Applies::Solid:
      return fuel == Fuel::Wood || fuel == Fuel::GasAndWood || fuel == Fuel::Pellet ||
             fuel == Fuel::Charcoal;
    case Applies::Flame:
      return fuel != Fuel::Electric;
    case Applies::Electric:
      return fuel == Fuel::Electric || fuel == Fuel::Pellet;
  }
  return true;
}

}  // namespace hs::report
