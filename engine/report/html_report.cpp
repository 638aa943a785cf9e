#include "engine/report/html_report.h"

#include <algorithm>
#include <variant>

#include "engine/base/version.h"
#include "engine/config/fields.h"
#include "engine/report/cited.h"
#include "engine/report/field_text.h"
#include "engine/report/html.h"
#include "engine/report/page_parts.h"
#include "engine/report/readers_units.h"
#include "engine/report/report_json.h"
#include "engine/report/safety_sheet.h"
#include "engine/report/sheet.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/svg.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

// Where a caution's number stands. One that is not named here stands under "cautions".
struct Place {
  std::string_view section, caution;
};
constexpr Place kPlaces[] = {
    {"heights", "caution.manual_first"},      {"heights", "caution.tipping"},
    {"clearances", "caution.cover"},          {"clearances", "caution.near_buildings"},
    {"clearances", "caution.railings"},       {"clearances", "caution.wood_dries"},
    {"clearances", "caution.lp_cylinder"},    {"clearances", "caution.lp_cylinder_fire_feature"},
    {"clearances", "caution.cylinder_place"}, {"heat", "caution.burns"},
    {"heat", "caution.child_free_zone"},      {"light", "caution.lights"},
};

std::string_view place_of(std::string_view caution) {
  for (const Place& place : kPlaces) {
    if (place.caution == caution) return place.section;
  }
  return "cautions";
}

struct Document {
  const Page& page;
  HtmlWriter out{};

  void source(std::string_view id) {
    const std::string note = source_note(id);
    if (!note.empty()) out.element("p", "Source: " + note + ".", "class=\"source\"");
  }
  void cautions(std::string_view section) {
    for (const rules::Caution& caution : rules::cautions()) {
      if (place_of(caution.id) != section) continue;
      if (!applies(caution, page.config.oven.fuel)) continue;
      out.open("div", "class=\"caution\"");
      out.open("p");
      put_verdict(out, Verdict::Warn);
      out.text(" ");
      out.element("b", caution.title);
      out.text(readers_first(caution.text, page.units));
      out.close();
      source(caution.id);
      out.close();
    }
  }
  void begin(std::string_view id, std::string_view title, std::string_view intro) {
    out.open("section", "id=\"" + std::string(id) + "\"");
    out.element("h2", title);
    out.element("p", intro);
  }
  void end() { out.close(); }
};

void put_heights(Document& d) {
  const Summary s = summary(d.page.config, d.page.evaluation, d.page.units);
  d.begin("heights", "Heights", {});
  for (const Headline& h : s.headlines) {
    d.out.open("div", "class=\"card\"");
    d.out.element("h3", h.label);
    d.out.element("p", h.value, "class=\"figure\"");
    d.out.open("p");
    put_verdict(d.out, h.verdict);
    d.out.text(" " + h.note);
    d.out.close();
    if (!h.yours.empty()) d.out.element("p", h.yours);
    d.out.element("p", h.band);
    d.source(h.why);
    d.out.close();
  }
  d.out.element("p", feet_line(d.page.evaluation, d.page.units));
  if (!s.worst.empty()) {
    d.out.open("p");
    put_verdict(d.out, s.worst_verdict);
    d.out.text(" Look at this first: " + s.worst);
    d.out.close();
    d.source(s.worst_rule);
  }
  d.out.open("ul");
  for (const CookLine& cook : s.cooks) {
    d.out.open("li");
    put_verdict(d.out, cook.verdict);
    d.out.text(" " + cook.name + ": " + cook.line);
    d.out.close();
  }
  d.out.close();
  d.cautions("heights");
  d.end();
}

void put_drawing(Document& d, const SheetKind& kind) {
  const Sheet sheet = kind.draw(d.page.config, d.page.evaluation, {d.page.units, 0});
  d.out.open("figure", kind.section.empty() ? "class=\"drawing\"" : "class=\"plot\"");
  d.out.element("h3", kind.title);
  d.out.open("div", "class=\"scroll\"");
  d.out.markup(svg(sheet.drawing, {.title = sheet.title,
                                   .description = sheet.description,
                                   .text_mm = sheet.text_mm,
                                   .colours = SvgColours::Page,
                                   .size = SvgSize::Fitted}));
  d.out.close();
  d.out.element("figcaption", kind.caption);
  d.out.close();
  put_html_table(d.out, sheet.table);
}

void put_drawings(Document& d, std::string_view section) {
  for (const SheetKind& kind : sheet_kinds()) {
    if (kind.section == section) put_drawing(d, kind);
  }
}

void put_section(Document& d, const Section& section) {
  d.begin(section.id, section.title, section.intro);
  for (const Item& item : section.items) {
    d.out.open("div", "class=\"finding\"");
    d.out.open("h3");
    for (const Verdict verdict : {Verdict::Ok, Verdict::Warn, Verdict::Fail, Verdict::Unknown}) {
      if (verdict_name(verdict) == item.verdict) put_verdict(d.out, verdict);
    }
    d.out.text(" " + item.title);
    d.out.close();
    d.out.element("p", item.sentence);
    d.source(item.why);
    d.out.close();
  }
  for (const Table& table : section.tables) put_html_table(d.out, table);
  d.cautions(section.id);
  put_drawings(d, section.id);
  d.end();
}

bool is_given(const config::Value& value) { return !std::holds_alternative<std::monostate>(value); }

// Every value that the figures were worked out from.
void put_given(Document& d) {
  const config::Config& config = d.page.config;
  Table cooks{"Cooks", {""}, {}}, station{"Oven, station and place", {"", ""}, {}};
  Table points{"Readings of the ground", {""}, {}};
  Table stock{"Stock and prices", {""}, {}};
  for (const config::Cook& cook : config.cooks) cooks.columns.push_back(cook.name);
  for (std::size_t i = 0; i < config.survey.points.size(); ++i) {
    points.columns.push_back(std::to_string(i + 1));
  }
  for (std::size_t i = 0; i < config.stock.size(); ++i) {
    stock.columns.push_back(std::to_string(i + 1));
  }
  for (const config::Field& field : config::fields()) {
    if (field.group == config::Group::Station) {
      if (!is_given(field.get(config, 0))) continue;
      station.rows.push_back(
          {std::string(field.label), field_text(field, config, 0, d.page.units)});
      continue;
    }
    std::vector<std::string> row{std::string(field.label)};
    bool any = false;
    for (std::size_t i = 0; i < config::rows_of(config, field.group); ++i) {
      const bool given = is_given(field.get(config, i));
      any = any || given;
      row.push_back(given ? field_text(field, config, i, d.page.units) : "\u2014");
    }
    if (!any) continue;
    Table& table = field.group == config::Group::Cook    ? cooks
                   : field.group == config::Group::Point ? points
                                                         : stock;
    table.rows.push_back(std::move(row));
  }
  d.begin("given", "What this was worked out from", "As typed in, or the usual value.");
  put_html_table(d.out, cooks);
  put_html_table(d.out, station);
  if (!points.rows.empty()) put_html_table(d.out, points);
  if (!stock.rows.empty()) put_html_table(d.out, stock);
  d.end();
}

void put_rules(Document& d, const std::vector<std::string_view>& ids) {
  d.begin("rules", "The rule behind each number", {});
  for (const std::string_view id : ids) {
    const rules::Rule* rule = rules::find_rule(id);
    if (rule == nullptr) continue;
    d.out.open("div", "class=\"finding\"");
    d.out.element("h3", rule->title);
    d.out.element("p", rules::words_of(*rule).words);
    d.source(id);
    d.out.close();
  }
  d.end();
}

}  // namespace

std::string report_html(const config::Config& config, const evaluate::Evaluation& evaluation,
                        Units units, std::string_view style) {
  const Page page{config, evaluation, units};
  Document d{page};
  d.out.open("main");
  d.out.open("header");
  d.out.element("h1", station_title(config));
  d.out.element("p",
                "Worked out by Hearthsight " + std::string(version()) +
                    "; fingerprint of what was given: " + config_fingerprint(config) + ".",
                "class=\"soft\"");
  d.out.close();
  put_heights(d);
  put_safety_sheet(d.out, safety_sheet(config, evaluation, units));
  d.begin("drawings", "Drawings", {});
  put_drawings(d, {});
  d.end();
  const std::vector<Section> all = sections(page);
  for (const Section& section : all) {
    // Those stand at the end.
    if (section.id == "cautions" || section.id == "sources") continue;
    if (section.items.empty() && section.intro.empty() && section.tables.empty()) continue;
    put_section(d, section);
  }
  put_given(d);
  put_rules(d, explained(page, all));
  d.begin("cautions", "Cautions", "Further ones, whatever the numbers say.");
  d.cautions("cautions");
  d.end();
  for (const Section& section : all) {
    if (section.id == "sources") put_section(d, section);
  }
  d.out.close();
  return html_document(station_title(config), style, d.out.take());
}

}  // namespace hs::report
