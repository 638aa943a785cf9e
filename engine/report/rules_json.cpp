#include "engine/report/rules_json.h"

#include "engine/config/fields.h"
#include "engine/report/json_values.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"
#include "engine/rules/sources.h"

namespace hs::report {
namespace {

std::string_view applies_name(rules::Applies applies) {
  switch (applies) {
    case rules::Applies::Always:
      return "any";
    case rules::Applies::Gas:
      return "gas";
    case rules::Applies::Solid:
      return "solid";
    case rules::Applies::Flame:
      return "flame";
    case rules::Applies::Electric:
      return "electric";
  }
  return "any";
}

void put_rule(JsonWriter& out, const rules::Rule& rule) {
  out.begin_object();
  put_text(out, "id", rule.id);
  put_text(out, "module", rules::module_of(rule));
  put_text(out, "title", rule.title);
  put_text_or_null(out, "unit", rules::unit_name(rule.unit));
  put_text_or_null(out, "measured", rules::words_of(rule).measures);
  put_text_or_null(out, "limit", rules::words_of(rule).against);
  put_text(out, "words", rules::words_of(rule).words);
  put_text(out, "source", rule.source);
  put_text_or_null(out, "clause", rule.clause);
  put_text(out, "basis", rules::basis_name(rule.basis));
  put_flag(out, "finding", rule.finding);
  out.key("fields");
  out.begin_list();
  for (const config::Field& field : config::fields()) {
    if (rules::reads(rule, config::help_of(field).rules)) out.string(field.path);
  }
  out.end_list();
  out.end_object();
}

}  // namespace

std::string citation(std::string_view source_id) {
  const rules::Source* source = rules::find_source(source_id);
  if (source == nullptr) return {};
  std::string text = std::string(source->author) + ". " + std::string(source->title);
  if (!source->edition.empty()) text += ", " + std::string(source->edition);
  return text;
}

std::string rules_json() {
  JsonWriter out;
  out.begin_object();
  put_text(out, "format", "hearthsight-rules/1");
  out.key("rules");
  out.begin_list();
  for (const rules::Rule& rule : rules::rules()) put_rule(out, rule);
  out.end_list();
  out.key("sources");
  out.begin_list();
  for (const rules::Source& source : rules::sources()) {
    out.begin_object();
    put_text(out, "id", source.id);
    put_text(out, "citation", citation(source.id));
    put_text(out, "author", source.author);
    put_text(out, "title", source.title);
    put_text_or_null(out, "edition", source.edition);
    put_text(out, "basis", rules::basis_name(source.basis));
    put_text_or_null(out, "note", source.note);
    out.end_object();
  }
  out.end_list();
  out.key("cautions");
  out.begin_list();
  for (const rules::Caution& caution : rules::cautions()) {
    out.begin_object();
    put_text(out, "id", caution.id);
    put_text(out, "applies", applies_name(caution.applies));
    put_text(out, "title", caution.title);
    put_text(out, "text", caution.text);
    put_text(out, "source", caution.source);
    put_text_or_null(out, "clause", caution.clause);
    put_text(out, "basis", rules::basis_name(caution.basis));
    out.end_object();
  }
  out.end_list();
  out.end_object();
  return out.take();
}

}  // namespace hs::report
