#include "engine/report/safety_sheet.h"

#include <algorithm>
#include <utility>

#include "engine/config/fields.h"
#include "engine/heat/tolerance.h"
#include "engine/report/cited.h"
#include "engine/report/field_text.h"
#include "engine/report/phrases.h"
#include "engine/report/readers_units.h"
#include "engine/report/sheet_parts.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

using clearance::Hot;
using clearance::Side;

bool id_of_manual(std::string_view id) {
  const rules::Rule* rule = rules::find_rule(id);
  return rule != nullptr && rule->source == "oven_manual";
}

struct Maker {
  const config::Config& config;
  const evaluate::Evaluation& e;
  Units units;
  SafetySheet out{};

  std::string length(double mm) const { return plain_length(mm, units, true); }
  std::string given(std::string_view path) const {
    const config::Field* field = config::find_field(path);
    return field ? field_text(*field, config, 0, units) : std::string();
  }
  // The number of a source, from the id of the rule or caution that rests on it. The oven's manual
  // is one source, whatever it is asked.
  std::size_t source(std::string_view id) {
    const std::string note =
        id_of_manual(id) ? std::string("this oven's own manual") : source_note(id);
    if (note.empty()) return 0;
    auto& all = out.sources;
    const auto it = std::find(all.begin(), all.end(), note);
    if (it != all.end()) return static_cast<std::size_t>(it - all.begin()) + 1;
    all.push_back(note);
    return all.size();
  }
  void part(std::string_view id, std::string_view title) { out.parts.push_back({id, title, {}}); }
  void line(SafetyLine line) { out.parts.back().lines.push_back(std::move(line)); }
  void caution(std::string_view id, std::string_view more = {}) {
    for (const rules::Caution& caution : rules::cautions()) {
      if (caution.id != id || !applies(caution, config.oven.fuel)) continue;
      line({{},
            std::string(caution.title),
            readers_first(caution.text, units) + std::string(more),
            source(id)});
    }
  }
  void finding(const Finding& finding) {
    const rules::Rule* rule = rules::find_rule(finding.rule);
    line({finding.verdict, std::string(rule ? rule->title : finding.rule),
          readers_first(sentence(finding, config, e, units), units), source(finding.rule)});
  }
  // Every finding of this rule; or only those that are not well.
  void findings(std::string_view rule, bool also_good = true) {
    for (const Finding& each : e.findings) {
      if (each.rule == rule && (also_good || each.verdict != Verdict::Ok)) finding(each);
    }
  }
};

std::string_view rule_of(Hot hot, Side side) {
  if (hot == Hot::Flue) return "clearance.flue";
  if (hot == Hot::Grill) return "clearance.grill";
  switch (side) {
    case Side::Left:
    case Side::Right:
      return "clearance.side";
    case Side::Back:
      return "clearance.back";
    case Side::Above:
      return "clearance.above";
    case Side::Front:
      return "clearance.front";
    case Side::Below:
      return "clearance.below";
  }
  return {};
}

Verdict verdict_of(const Maker& m, const clearance::Zone& zone) {
  const std::string_view rule = rule_of(zone.hot, zone.need.side);
  const std::string_view side = clearance::side_name(zone.need.side);
  for (const Finding& finding : m.e.findings) {
    if (finding.rule != rule) continue;
    if (rule == "clearance.side" && !finding.where.ends_with(side)) continue;
    return finding.verdict;
  }
  return Verdict::Unknown;
}

void add_clear_room(Maker& m) {
  m.part("free", "Keep free of all that burns");
  bool flue = false, grill = false;
  for (const clearance::Zone& zone : m.e.surroundings.hot) {
    // All sides of the flue ask for the same, and so do those of a grill.
    if (zone.hot == Hot::Flue && std::exchange(flue, true)) continue;
    if (zone.hot == Hot::Grill && std::exchange(grill, true)) continue;
    std::string name = zone.hot == Hot::Oven ? std::string(clearance::side_name(zone.need.side))
                                             : std::string(clearance::hot_name(zone.hot));
    std::string words = "UNKNOWN how much is needed: find out before you build";
    std::size_t source = 0;
    if (zone.need.required_mm) {
      const std::string_view rule = clear_rule(zone.hot, zone.need);
      source = m.source(rule);
      words = m.length(*zone.need.required_mm) + ", says " +
              std::string(clear_asker(zone.hot, zone.need.from));
    }
    // A grill's own box is not the room between the two, which is judged apart.
    if (zone.hot != Hot::Grill) {
      words += zone.need.available_mm ? "; there is " + m.length(*zone.need.available_mm)
                                      : std::string("; what is there is not measured");
    }
    m.line({verdict_of(m, zone), capitalised(std::move(name)), std::move(words), source});
  }
  for (const std::string_view rule :
       {"clearance.on_combustible", "clearance.cover", "clearance.open_sides", "clearance.post",
        "clearance.grill_cover", "clearance.flue_top", "clearance.apron", "clearance.house"}) {
    m.findings(rule, false);
  }
  m.findings("clearance.railing", false);
  m.caution("caution.railings");
  m.caution("caution.cover");
  m.caution("caution.wood_dries");
}

std::string seconds(double flux_kw_m2) {
  const auto time_s = heat::tolerance_s(flux_kw_m2);
  return time_s ? ", hurts in some " + fixed(*time_s, 0) + " s" : std::string();
}

// The three bands, in words, each with what falls in it.
std::string bands_of(const evaluate::CookHeat& heat) {
  struct Part {
    const char* what;
    double flux_kw_m2;
  };
  const Part parts[] = {{"face, watching", heat.face_watching_kw_m2},
                        {"face, peel in hand", heat.face_working_kw_m2},
                        {"hand on the peel", heat.hand_through_kw_m2}};
  std::string all;
  for (const heat::Band band : {heat::Band::Hot, heat::Band::Brief, heat::Band::Linger}) {
    std::string in_band;
    for (const Part& part : parts) {
      if (heat::band_of(part.flux_kw_m2) != band) continue;
      in_band += std::string(in_band.empty() ? "" : "; ") + part.what + " " +
                 heat_flux(part.flux_kw_m2) +
                 (band == heat::Band::Linger ? "" : seconds(part.flux_kw_m2));
    }
    if (in_band.empty()) continue;
    all += band == heat::Band::Hot     ? "Too hot without glove, shield or a longer peel: "
           : band == heat::Band::Brief ? "A brief reach only: "
                                       : "Within what people outdoors are allowed: ";
    all += in_band + ". ";
  }
  return all;
}

void add_heat(Maker& m) {
  m.part("heat", "Heat at face and hand, at least");
  bool any = false;
  for (std::size_t i = 0; i < m.e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = m.e.cooks[i];
    if (!cook.at_oven) continue;
    any = true;
    Verdict worst = Verdict::Ok;
    for (const Finding& finding : m.e.findings) {
      if (finding.cook == i && finding.rule.starts_with("heat.") &&
          badness(finding.verdict) > badness(worst)) {
        worst = finding.verdict;
      }
    }
    m.line({worst, m.config.cooks[i].name,
            bands_of(cook.heat) + "Linger no nearer than " +
                distance(cook.heat.linger_standoff_mm, m.units, Round::Up) + ".",
            m.source("heat.face")});
  }
  if (any) m.findings("heat.not_computed");
  using heat::Material;
  const auto bears = [&m](Material material, double contact_s) {
    return temperature(heat::touch_limit_c(material, contact_s), m.units);
  };
  m.line({{},
          "Touch",
          "Bare skin bears metal of " + bears(Material::Metal, 1) + " for 1 s, " +
              bears(Material::Metal, 60) + " for a minute; stone of " + bears(Material::Stone, 1) +
              " and " + bears(Material::Stone, 60) + ".",
          m.source("heat.touch")});
  m.caution("caution.burns");
}

void add_gas(Maker& m) {
  m.part("gas", "Gas");
  m.findings("clearance.cylinder");
  const auto area = [&m](double cm2) {
    constexpr double kSquareInch_cm2 = 6.4516;
    return m.units == Units::Inch ? fixed(cm2 / kSquareInch_cm2, 1) + " sq in"
                                  : fixed(cm2, 0) + " cm\u00B2";
  };
  const evaluate::Surroundings& around = m.e.surroundings;
  std::string grill, feature;
  if (around.grill_vents && around.fire_feature_vents) {
    grill = " For this cylinder: " + area(around.grill_vents->low_cm2) + " each.";
    feature = " For this cylinder: high " + area(around.fire_feature_vents->high_cm2) + ", low " +
              area(around.fire_feature_vents->low_cm2) + ".";
  }
  m.caution("caution.lp_cylinder", grill);
  m.caution("caution.lp_cylinder_fire_feature", feature);
  for (const std::string_view id :
       {"caution.cylinder_place", "caution.leak_test", "caution.relight", "caution.gas_fitter"}) {
    m.caution(id);
  }
}

void add_weather(Maker& m) {
  m.part("weather", "Rain, ground, wind and smoke");
  for (const std::string_view rule : {"weather.rain_counter", "weather.rain_face", "weather.drip",
                                      "weather.drainage", "weather.wind_mouth", "weather.smoke"}) {
    m.findings(rule);
  }
}

}  // namespace

SafetySheet safety_sheet(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  Maker m{config, e, units};
  m.out.title = config.title;
  m.out.oven = m.given("oven.kind") + "; fuel: " + lower_first(m.given("oven.fuel")) +
               "; floor at " + m.given("oven.floor_temp_c");
  m.part("first", "First of all");
  m.caution("caution.manual_first");
  add_clear_room(m);
  m.part("people", "Children and pets");
  m.caution("caution.child_free_zone");
  add_heat(m);
  m.part("fire", "Fire, smoke and ash");
  m.findings("clearance.extinguisher");
  for (const std::string_view id :
       {"caution.extinguisher", "caution.carbon_monoxide", "caution.ash"}) {
    m.caution(id);
  }
  add_gas(m);
  m.part("power", "Power, light and stand");
  m.caution("caution.power");
  m.caution("caution.lights");
  m.caution("caution.tipping");
  add_weather(m);
  auto& parts = m.out.parts;
  parts.erase(std::remove_if(parts.begin(), parts.end(),
                             [](const SafetyPart& part) { return part.lines.empty(); }),
              parts.end());
  return std::move(m.out);
}

namespace {

std::string titled(const SafetySheet& sheet) {
  return "Safety at the oven" + (sheet.title.empty() ? std::string() : ": " + sheet.title);
}

}  // namespace

void put_safety_sheet(HtmlWriter& out, const SafetySheet& sheet) {
  out.open("section", "class=\"safety\" id=\"safety\"");
  out.open("h2");
  out.text(titled(sheet));
  out.close();
  out.element("p", sheet.oven, "class=\"soft\"");
  out.open("div", "class=\"parts\"");
  for (const SafetyPart& part : sheet.parts) {
    out.open("div", "class=\"part\" id=\"safety-" + std::string(part.id) + "\"");
    out.element("h3", part.title);
    out.open("ul");
    for (const SafetyLine& line : part.lines) {
      std::string mark;
      if (line.verdict) {
        mark = "data-verdict=\"" + std::string(verdict_name(*line.verdict)) + "\"";
      }
      out.open("li", mark);
      if (line.verdict) {
        put_verdict(out, *line.verdict);
        out.text(" ");
      }
      if (!line.head.empty()) {
        out.element("b", line.head + ":");
      }
      out.text(line.words);
      if (line.source > 0) {
        out.open("sup");
        out.text(std::to_string(line.source));
        out.close();
      }
      out.close();
    }
    out.close();
    out.close();
  }
  out.close();
  out.open("p", "class=\"source\"");
  std::string all = "Said by:";
  for (std::size_t i = 0; i < sheet.sources.size(); ++i) {
    all += (i > 0 ? "; " : " ") + std::to_string(i + 1) + " " + sheet.sources[i];
  }
  out.text(all + ".");
  out.close();
  out.close();
}

std::string safety_html(const config::Config& config, const evaluate::Evaluation& evaluation,
                        Units units, std::string_view style) {
  const SafetySheet sheet = safety_sheet(config, evaluation, units);
  HtmlWriter out;
  out.open("main");
  put_safety_sheet(out, sheet);
  out.close();
  return html_document(titled(sheet), style, out.take());
}

}  // namespace hs::report
