#include "engine/report/page_json.h"

#include <algorithm>

#include "engine/evaluate/build.h"
#include "engine/report/build_sheets.h"
#include "engine/report/cited.h"
#include "engine/report/json_values.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/sheet.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

// Numbers that stand on the page without a finding of their own, and their rules.
constexpr std::string_view kAlwaysExplained[] = {
    "reach.feet_line",   "height.sensitivity",  "height.fits_adults",   "height.compromise",
    "height.full_view",  "height.hand_ceiling", "height.dough_band",    "cook.survey_adult",
    "cook.survey_child", "cook.taller_than",    "cook.shoe_allowance",  "cook.seated",
    "cook.child_table",  "reach.prep_depth",    "heat.linger",          "heat.mouth",
    "heat.touch",        "weather.drop_air",    "weather.drop_landing", "weather.driving_rain"};

// Which section a finding stands in.
std::string_view section_of(std::string_view rule) {
  if (rule == "sight.cold_trial") return "trial";
  if (rule.starts_with("cook.")) return "people";
  if (rule.starts_with("clearance.") || rule == "height.cover_ceiling") return "clearances";
  if (rule.starts_with("reach.") || rule.starts_with("room.")) return "reach";
  if (rule.starts_with("weather.")) return "weather";
  if (rule.starts_with("heat.")) return "heat";
  if (rule.starts_with("light.")) return "light";
  if (rule.starts_with("survey.")) return "ground";
  if (rule.starts_with("load.")) return "loads";
  return "findings";
}

std::vector<Item> finding_items(const Page& page, std::string_view section) {
  std::vector<Item> items;
  const evaluate::Evaluation& e = page.evaluation;
  for (const Finding& finding : e.findings) {
    if (section_of(finding.rule) != section) continue;
    const rules::Rule* rule = rules::find_rule(finding.rule);
    items.push_back({finding_id(finding, e.findings), verdict_name(finding.verdict),
                     std::string(rule ? rule->title : finding.rule),
                     sentence(finding, page.config, e, page.units), finding.rule});
  }
  return items;
}

Item guests_item(const Page& page) {
  const Finding guests{
      "height.fits_adults", Verdict::Ok, {}, page.evaluation.fits_adults_share, {}, {}, {}};
  return {"height.fits_adults", verdict_name(Verdict::Ok),
          std::string(rules::find_rule(guests.rule)->title),
          sentence(guests, page.config, page.evaluation, page.units), guests.rule};
}

std::vector<Item> caution_items(config::Fuel fuel) {
  std::vector<Item> items;
  for (const rules::Caution& caution : rules::cautions()) {
    if (!applies(caution, fuel)) continue;
    items.push_back({std::string(caution.id), verdict_name(Verdict::Warn),
                     std::string(caution.title), std::string(caution.text), caution.id});
  }
  return items;
}

std::string trial_intro() {
  return "Before wood is cut: block the cold oven up to the height, lay a tape on its floor from "
         "the mouth back along the middle, stand at the feet line, and type the farthest mark that "
         "shows.";
}

void put_summary(JsonWriter& out, const Page& page, const Summary& s) {
  out.key("headlines");
  out.begin_list();
  for (const Headline& h : s.headlines) {
    out.begin_object();
    put_text(out, "id", h.id);
    put_text(out, "label", h.label);
    put_text(out, "value", h.value);
    put_text(out, "yours", h.yours);
    put_text(out, "band", h.band);
    put_text(out, "note", h.note);
    put_text(out, "why", h.why);
    put_text(out, "verdict", verdict_name(h.verdict));
    out.end_object();
  }
  out.end_list();
  put_text(out, "live", spoken(s));
  out.key("cooks");
  out.begin_list();
  for (const CookLine& cook : s.cooks) {
    out.begin_object();
    put_text(out, "name", cook.name);
    out.key("stand_in");
    out.boolean(config::is_stand_in(cook.name));
    put_text(out, "line", cook.line);
    put_text(out, "verdict", verdict_name(cook.verdict));
    out.end_object();
  }
  out.end_list();
  out.key("worst");
  out.begin_object();
  put_text(out, "text", s.worst);
  put_text(out, "verdict", verdict_name(s.worst_verdict));
  put_text(out, "rule", s.worst_rule);
  out.end_object();
  put_text(out, "feet_line", feet_line(page.evaluation, page.units));
}

void put_section(JsonWriter& out, const Section& section) {
  out.begin_object();
  put_text(out, "id", section.id);
  put_text(out, "title", section.title);
  put_text(out, "intro", section.intro);
  out.key("tables");
  out.begin_list();
  for (const Table& table : section.tables) {
    if (!table.rows.empty()) put_table(out, table);
  }
  out.end_list();
  out.key("items");
  out.begin_list();
  for (const Item& item : section.items) {
    out.begin_object();
    put_text(out, "id", item.id);
    put_text(out, "verdict", item.verdict);
    put_text(out, "title", item.title);
    put_text(out, "sentence", item.sentence);
    put_text(out, "why", item.why);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

// Every id that something on the page offers a why for, once.
std::vector<std::string_view> explained_by(const Summary& s, const std::vector<Section>& all) {
  std::vector<std::string_view> ids;
  const auto add = [&ids](std::string_view id) {
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  for (const Headline& h : s.headlines) add(h.why);
  add(s.worst_rule);
  for (const Section& section : all) {
    for (const Item& item : section.items) add(item.why);
  }
  for (const std::string_view id : kAlwaysExplained) add(id);
  return ids;
}

}  // namespace

std::string station_title(const config::Config& config) {
  return config.title.empty() ? "An outdoor pizza-oven station" : config.title;
}

std::vector<Section> sections(const Page& page) {
  std::vector<Section> all;
  all.push_back({"people", "People",
                 "Heights above the ground at each cook's feet, in shoes. Two people in three are "
                 "within one standard error of an estimate. Adults stand among those of the US "
                 "Army survey 2012, children among those of their age in the CDC growth charts "
                 "2000, both barefoot.",
                 people_tables(page), finding_items(page, "people")});
  all.push_back({"height_reasons", "How the heights come about", {}, {}, height_items(page)});
  all.push_back({"findings",
                 "What to mind",
                 "Worst first. Each has its reason one tap away.",
                 {},
                 finding_items(page, "findings")});
  all.push_back({"arrangements",
                 "Ways to build it",
                 "The best heights of each way, and what each gives up.",
                 arrangement_tables(page),
                 {}});
  all.push_back({"fit",
                 "Height and distance",
                 "How much of the pizza shows, by the height of the oven's floor above the ground "
                 "at the feet and the eye's distance from the mouth. \"all\": the whole target; "
                 "\"hot\": too hot there for the face to linger, and perhaps farther out too; it "
                 "is no clearance. Computed; the reasons are under seeing all, hands and "
                 "lingering.",
                 fit_tables(page),
                 {}});
  all.push_back({"sensitivity",
                 "How sure this is",
                 sharpest_measurement(page),
                 sensitivity_tables(page),
                 {}});
  if (page.evaluation.fits_adults_share) all.back().items.push_back(guests_item(page));
  all.push_back({"clearances", "Free room around the oven",
                 "The oven's own manual first, then local rules; for an oven without a listing, "
                 "then what codes publish. Where none speaks the answer is: not known.",
                 clearance_tables(page), finding_items(page, "clearances")});
  all.push_back(
      {"heat", "Heat at face and hand",
       "What the mouth throws on bare skin that is turned to it. It permits nothing, and no "
       "clearance comes from it.",
       heat_tables(page), finding_items(page, "heat")});
  all.push_back({"light", "Light after dark",
                 "A fixed light that nobody holds, and light on the counters.", light_tables(page),
                 finding_items(page, "light")});
  all.push_back({"weather", "Rain, wind and smoke",
                 "Straight at the counter's front, in a steady wind; gusts, eddies and splashes "
                 "are not in it. Of smoke only the direction is told.",
                 weather_tables(page), finding_items(page, "weather")});
  all.push_back({"reach", "Arms, peel and room",
                 "From the counter's front edge; the trunk leans at most 20 degrees.",
                 reach_tables(page), finding_items(page, "reach")});
  all.push_back({"station",
                 "Where everything stands",
                 "The plan and the view in three dimensions, as tables. Along the front from the "
                 "middle of the mouth, back from the counters' front edge, heights above the "
                 "ground at the cooks' feet. What is drawn is not measured: our judgement.",
                 station_tables(page),
                 {}});
  if (page.evaluation.build && page.evaluation.build->frame.made()) {
    all.push_back({"build",
                   "What is built",
                   "Cabinets for the heights in use, computed; how they are made is common "
                   "practice where no finding says otherwise. Try it cold before wood is cut. No "
                   "structure is checked here.",
                   build_tables(page),
                   {}});
  }
  if (page.evaluation.survey) {
    all.push_back({"ground", "The ground and the base",
                   "Heights above the finished ground at the cooks' feet. Read by tape they are 1 "
                   "to 2 mm (1/16 in) at best: one cut, and perhaps a trim. Before any hole: "
                   "locate buried cable, gas and irrigation.",
                   survey_tables(page), finding_items(page, "ground")});
  }
  if (page.evaluation.build) {
    all.push_back({"loads", "What it carries, and what tips it",
                   "By statics and published tables, each run by itself, with nothing put on its "
                   "counter. It takes no engineer's place: footings, covers, anchors and wind are "
                   "for one, or for the building office. Tie a tall station to a wall before a "
                   "child is near it.",
                   loads_tables(page), finding_items(page, "loads")});
  }
  all.push_back(
      {"trial", "Try it cold", trial_intro(), trial_tables(page), finding_items(page, "trial")});
  all.push_back({"cautions",
                 "Cautions",
                 "For this oven and its fuel, whatever the numbers say.",
                 {},
                 caution_items(page.config.oven.fuel)});
  all.push_back(
      {"sources", "Sources", "Only those behind what is shown here.", source_tables(page), {}});
  return all;
}

std::vector<std::string_view> explained(const Page& page, const std::vector<Section>& all) {
  return explained_by(summary(page.config, page.evaluation, page.units), all);
}

std::string page_json(const config::Config& config, const evaluate::Evaluation& evaluation,
                      Units units) {
  const Page page{config, evaluation, units};
  const Summary s = summary(config, evaluation, units);
  const std::vector<Section> all = sections(page);
  JsonWriter out;
  out.begin_object();
  put_text(out, "units", units == Units::Inch ? "inch" : "mm");
  put_summary(out, page, s);
  out.key("sections");
  out.begin_list();
  for (const Section& section : all) put_section(out, section);
  out.end_list();
  out.key("drawings");
  out.begin_list();
  const auto put = [&out](std::string_view name, std::string_view title, std::string_view caption,
                          std::string_view section) {
    out.begin_object();
    put_text(out, "name", name);
    put_text(out, "title", title);
    put_text(out, "caption", caption);
    put_text(out, "section", section);
    out.end_object();
  };
  for (const SheetKind& kind : sheet_kinds()) {
    // A plot whose section is not there has nothing to show.
    const bool there = std::any_of(
        all.begin(), all.end(), [&](const Section& section) { return section.id == kind.section; });
    if (!kind.section.empty() && !there) continue;
    put(kind.name, kind.title, kind.caption, kind.section);
  }
  for (std::size_t i = 0; i < base_cut_count(evaluation); ++i) {
    put("base_" + std::to_string(i + 1), base_cut_title(evaluation, i),
        "The height of the cut at every place along the board, drawn large.", "ground");
  }
  if (evaluation.build && evaluation.build->frame.made()) {
    for (const FrameSheet& whole : frame_sheets()) put(whole.name, whole.title, whole.caption, {});
  }
  out.end_list();
  out.key("why");
  put_whys(out, page, explained_by(s, all));
  out.end_object();
  return out.take();
}

}  // namespace hs::report
