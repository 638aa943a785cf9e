#include "web/desk/reply_json.h"

#include <algorithm>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/report/field_text.h"
#include "engine/report/json_values.h"
#include "engine/share/merge.h"

namespace hs::web {
namespace {

using share::Differs;

std::string_view kind_name(Differs kind) {
  switch (kind) {
    case Differs::NewCook:
      return "new";
    case Differs::OtherCook:
      return "cook";
    case Differs::Station:
      return "station";
    case Differs::Ground:
      return "ground";
    case Differs::Stock:
      return "stock";
  }
  return "";
}

void put_row(JsonWriter& out, const config::Field& field, std::string_view here,
             std::string_view there) {
  out.begin_object();
  report::put_text(out, "label", field.label);
  report::put_text(out, "here", here);
  report::put_text(out, "there", there);
  out.end_object();
}

}  // namespace

std::string reply_json(const config::Config& ours, const config::Config& theirs,
                       report::Units units) {
  if (!share::is_reply(ours, theirs)) return "null";
  JsonWriter out;
  out.begin_object();
  out.key("questions");
  out.begin_list();
  const std::vector<share::Difference> all = share::differences(ours, theirs);
  for (const share::Difference& d : all) {
    const bool cook = d.kind == Differs::NewCook || d.kind == Differs::OtherCook;
    out.begin_object();
    report::put_text(out, "kind", kind_name(d.kind));
    report::put_text(out, "name", cook ? theirs.cooks[d.theirs].name : "");
    if (d.for_stand_in) report::put_text(out, "stand_in", ours.cooks[d.ours].name);
    out.key("rows");
    out.begin_list();
    // The height of someone new is told also where it is the usual one.
    const config::Field* height = config::find_field("cooks[].stature_mm");
    if (d.kind == Differs::NewCook &&
        std::find(d.fields.begin(), d.fields.end(), height) == d.fields.end()) {
      put_row(out, *height, "", report::field_text(*height, theirs, d.theirs, units));
    }
    for (const config::Field* field : d.fields) {
      put_row(out, *field,
              d.kind == Differs::NewCook ? "" : report::field_text(*field, ours, d.ours, units),
              report::field_text(*field, theirs, d.theirs, units));
    }
    out.end_list();
    out.end_object();
  }
  out.end_list();
  out.key("stay");
  out.begin_list();
  for (std::size_t row = 0; row < ours.cooks.size(); ++row) {
    const std::string& name = ours.cooks[row].name;
    const bool there = std::any_of(theirs.cooks.begin(), theirs.cooks.end(),
                                   [&](const config::Cook& c) { return c.name == name; });
    // A stand-in whose place somebody takes is asked about already.
    const bool asked = std::any_of(all.begin(), all.end(), [row](const share::Difference& d) {
      return d.for_stand_in && d.ours == row;
    });
    if (!there && !asked) out.string(name);
  }
  out.end_list();
  out.end_object();
  return out.take();
}

Result<config::Config> merged_by_letters(const config::Config& ours, const config::Config& theirs,
                                         std::string_view said) {
  std::vector<share::Say> words;
  for (const char letter : said) {
    words.push_back(letter == 't'   ? share::Say::Theirs
                    : letter == 'p' ? share::Say::InPlace
                    : letter == 'b' ? share::Say::Both
                                    : share::Say::Ours);
  }
  return share::merged(ours, theirs, words);
}

}  // namespace hs::web
