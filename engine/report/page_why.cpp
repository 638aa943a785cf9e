// Why a number is what it is: the rule in words, the inputs it used, where it comes from.

#include "engine/config/fields.h"
#include "engine/report/field_text.h"
#include "engine/report/headline.h"
#include "engine/report/json_values.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"
#include "engine/report/rules_json.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

void put_input(JsonWriter& out, std::string_view label, std::string_view value,
               std::string_view field) {
  out.begin_object();
  put_text(out, "label", label);
  put_text(out, "value", value);
  if (!field.empty()) put_text(out, "field", field);
  out.end_object();
}

// The height that this rule is given as the reason of.
void put_answers(JsonWriter& out, const Page& page, const rules::Rule& rule) {
  for (const Headline& h : {oven_headline(page.config, page.evaluation, page.units),
                            dough_headline(page.config, page.evaluation, page.units)}) {
    if (h.why != rule.id || (h.why == "height.given" && h.yours.empty())) continue;
    const std::string reason = height_reason(page, h.id);
    if (!reason.empty()) put_input(out, h.label + ", recommended", reason, {});
  }
}

// What was measured and held against what, for each finding of the rule.
void put_results(JsonWriter& out, const Page& page, const rules::Rule& rule) {
  if (rule.unit == rules::Unit::None) return;
  for (const Finding& finding : page.evaluation.findings) {
    if (finding.rule != rule.id) continue;
    std::string whose;
    if (finding.cook)
      whose = page.cook_name(*finding.cook) + ": ";
    else if (!finding.where.empty())
      whose = capitalised(std::string(finding.where)) + ": ";
    if (finding.measured && !rules::words_of(rule).measures.empty()) {
      put_input(out, whose + std::string(rules::words_of(rule).measures),
                in_unit(rule.unit, *finding.measured, page.units), {});
    }
    // A share's limit is said in full by its words.
    if (finding.limit && !rules::words_of(rule).against.empty() &&
        rule.unit != rules::Unit::Share) {
      put_input(out, whose + "limit, " + std::string(rules::words_of(rule).against),
                in_unit(rule.unit, *finding.limit, page.units), {});
    }
  }
}

// An estimated height says so, with its error.
const cook::Estimate* estimate_for(const config::Field& field, const cook::Body& body) {
  if (field.path == "cooks[].eye_height_mm") return &body.eye;
  if (field.path == "cooks[].elbow_height_mm") return &body.elbow;
  if (field.path == "cooks[].shoulder_height_mm") return &body.shoulder;
  return nullptr;
}

std::string cook_value(const Page& page, const config::Field& field, std::size_t i) {
  const cook::Estimate* estimate = estimate_for(field, page.evaluation.cooks[i].body);
  if (estimate == nullptr || estimate->basis == cook::Basis::Measured) {
    return field_text(field, page.config, i, page.units);
  }
  return page.length(estimate->value_mm) + " \u00B1 " + page.length(estimate->sd_mm) +
         ", estimated";
}

// The cooks that a rule is about: those with a finding of it, or all of them.
bool concerns(const Page& page, const rules::Rule& rule, std::size_t cook) {
  bool about_cooks = false;
  for (const Finding& finding : page.evaluation.findings) {
    if (finding.rule != rule.id || !finding.cook) continue;
    if (*finding.cook == cook) return true;
    about_cooks = true;
  }
  return !about_cooks;
}

// What is used where this height is not given; nullopt: it is given, or it is another field.
std::optional<double> recommended_for(const Page& page, const config::Field& field) {
  const config::Station& station = page.config.station;
  const evaluate::Heights& used = page.evaluation.used;
  if (field.path == "station.counter_height_mm" && !station.counter_height_mm) {
    return used.counter_mm;
  }
  if (field.path == "station.oven_base_height_mm" && !station.oven_base_height_mm) {
    return used.oven_base_mm;
  }
  return {};
}

void put_fields(JsonWriter& out, const Page& page, const rules::Rule& rule) {
  for (const config::Field& field : config::fields()) {
    if (!rules::reads(rule, config::help_of(field).rules)) continue;
    if (field.group == config::Group::Station) {
      std::string value = field_text(field, page.config, 0, page.units);
      if (const auto mm = recommended_for(page, field)) value += ", " + page.length(*mm);
      put_input(out, field.label, value, field.path);
      continue;
    }
    if (field.group != config::Group::Cook) continue;  // readings have their own table
    for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
      if (!concerns(page, rule, i)) continue;
      put_input(out, page.cook_name(i) + ": " + std::string(field.label),
                cook_value(page, field, i), config::path_of(field, i));
    }
  }
}

void put_ground(JsonWriter& out, std::string_view source_id, std::string_view clause,
                rules::Basis basis) {
  put_text(out, "source", citation(source_id));
  put_text(out, "clause", clause);
  put_text(out, "basis", rules::basis_words(basis));
  const rules::Source* source = rules::find_source(source_id);
  if (source != nullptr && !source->note.empty()) put_text(out, "caution", source->note);
}

void put_rule_why(JsonWriter& out, const Page& page, const rules::Rule& rule) {
  out.key(rule.id);
  out.begin_object();
  put_text(out, "title", rule.title);
  put_text(out, "words", rules::words_of(rule).words);
  out.key("inputs");
  out.begin_list();
  put_answers(out, page, rule);
  put_results(out, page, rule);
  put_fields(out, page, rule);
  out.end_list();
  put_ground(out, rule.source, rule.clause, rule.basis);
  out.end_object();
}

void put_caution_why(JsonWriter& out, const rules::Caution& caution) {
  out.key(caution.id);
  out.begin_object();
  put_text(out, "title", caution.title);
  put_text(out, "words", caution.text);
  out.key("inputs");
  out.begin_list();
  out.end_list();
  put_ground(out, caution.source, caution.clause, caution.basis);
  out.end_object();
}

}  // namespace

void put_whys(JsonWriter& out, const Page& page, const std::vector<std::string_view>& ids) {
  out.begin_object();
  for (const std::string_view id : ids) {
    if (const rules::Rule* rule = rules::find_rule(id)) {
      put_rule_why(out, page, *rule);
      continue;
    }
    for (const rules::Caution& caution : rules::cautions()) {
      if (caution.id == id) put_caution_why(out, caution);
    }
  }
  out.end_object();
}

}  // namespace hs::report
