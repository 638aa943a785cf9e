#include "engine/report/packet_parts.h"

#include <algorithm>

#include "engine/base/number_text.h"
#include "engine/base/version.h"
#include "engine/config/fields.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/packet.h"
#include "engine/evaluate/survey_result.h"
#include "engine/report/build_sheets.h"
#include "engine/report/cited.h"
#include "engine/report/metal_sheets.h"
#include "engine/report/parts_words.h"
#include "engine/report/pdf_font.h"
#include "engine/report/phrases.h"
#include "engine/report/readers_units.h"
#include "engine/report/report_json.h"
#include "engine/report/safety_sheet.h"
#include "engine/report/sheet_parts.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"
#include "engine/share/link.h"
#include "engine/share/qr.h"

namespace hs::report {
namespace {

using Kind = DocBlock::Kind;

DocBlock block(Kind kind, std::string text, std::string head = {}) {
  DocBlock b;
  b.kind = kind;
  b.words = std::move(text);
  b.head = std::move(head);
  return b;
}

std::string with_source(std::string text, std::string_view id) {
  const std::string source = source_note(id);
  if (!source.empty()) text += " (" + source + ")";
  return text;
}

Table parts_table(const PacketView& view, const evaluate::Build& build) {
  Table table{
      "Parts",
      {"No.", "Part", "Qty", "Length", "Width", "Thick", "First cut", "Material", "Grain", "Place"},
      {}};
  for (const parts::Part& part : build.parts.parts) {
    const auto length = [&](double mm) {
      return part.material == frame::Material::Metal ? metal_length(mm, view.choice.units)
                                                     : shop_length(mm, view.choice.units, false);
    };
    const auto cut = ground_cut(part, view.evaluation);
    std::string first;
    if (part.rough_length_mm) {
      const double wide_mm = part.rough_width_mm.value_or(part.width_mm);
      first = length(*part.rough_length_mm) + " x " +
              length(cut ? std::max(wide_mm, cut->most_mm) : wide_mm);
    }
    std::string width = length(part.width_mm);
    if (cut) width = length(cut->least_mm) + " to " + length(cut->most_mm) + ", see " + cut->sheets;
    std::string material(frame::material_name(part.material));
    if (!part.stock.empty()) material += " " + part.stock;
    const double down_mm = *std::max_element(part.folds_mm.begin(), part.folds_mm.end());
    if (down_mm > 0) material += ", turned down " + length(down_mm) + " outside";
    table.rows.push_back({std::to_string(part.number), std::string(frame::kind_name(part.kind)),
                          std::to_string(part.quantity()), length(part.length_mm), std::move(width),
                          length(part.thick_mm), std::move(first), std::move(material),
                          part.grain_along ? "along" : "", places_words(part, build)});
  }
  return table;
}

Table hardware_table(const evaluate::Build& build, Units units) {
  Table table{"Hardware and fasteners", {"What", "Quantity", "Counted so"}, {}};
  for (const parts::Hardware& one : build.parts.hardware) {
    table.rows.push_back({readers_own(one.name, units),
                          quantity_words(one.quantity, one.unit, units),
                          readers_own(one.rule, units)});
  }
  return table;
}

std::string frame_refusals(const PacketView& view) {
  const Page page = view.page();
  std::string why;
  for (const Finding& finding : view.evaluation.findings) {
    if (!finding.rule.starts_with("frame.") || finding.verdict == Verdict::Ok) continue;
    why += (why.empty() ? "" : " ") + sentence(finding, page.config, page.evaluation, page.units);
  }
  return why.empty() ? "no cabinet can be built for these heights." : why;
}

}  // namespace

DocBlock heading(std::string text) { return block(Kind::Heading, std::move(text)); }
DocBlock words(std::string text, std::string head) {
  return block(Kind::Words, std::move(text), std::move(head));
}
DocBlock note(std::string text) { return block(Kind::Note, std::move(text)); }

DocBlock rows(Table table) {
  DocBlock b = block(Kind::Rows, {});
  b.table = std::move(table);
  return b;
}

DocBlock figure(const PacketView& view, FigureOf of,
                const std::function<Sheet(const SheetView&)>& draw) {
  DocBlock b = block(Kind::Figure, std::move(of.caption), std::move(of.head));
  b.file = std::move(of.file);
  b.whole_page = of.whole_page;
  b.to_scale = of.to_scale;
  b.with_next = of.with_next;
  draw_figure(b, view.paper(), of.key, [&](double line_mm) { return draw(view.sheet(line_mm)); });
  return b;
}

DocBlock caution(std::string_view id) {
  for (const rules::Caution& one : rules::cautions()) {
    if (one.id != id) continue;
    return block(Kind::Caution, with_source(std::string(one.text), id),
                 std::string(one.title) + ".");
  }
  return block(Kind::Caution, {});
}

namespace {

// "Name of cook 2, currency": what somebody typed that the PDF's typeface cannot print whole; empty
// where it prints all.
std::string not_printed(const config::Config& config) {
  std::string names;
  for (const config::Field& field : config::fields()) {
    if (field.quantity != Quantity::Text) continue;
    const config::List* list = config::list_of(field.group);
    for (std::size_t row = 0; row < config::rows_of(config, field.group); ++row) {
      const config::Value value = field.get(config, row);
      const auto* text = std::get_if<std::string>(&value);
      std::size_t lost = 0;
      if (text != nullptr) pdf_letters(*text, &lost);
      if (lost == 0) continue;
      names += (names.empty() ? "" : ", ") + lower_first(std::string(field.label));
      if (list != nullptr)
        names += " of " + std::string(list->item) + " " + std::to_string(row + 1);
    }
  }
  return names;
}

}  // namespace

PacketPart cover_part(const PacketView& view) {
  const config::Config& config = view.config;
  DocPart part{"cover", station_title(config)};
  auto& all = part.blocks;
  std::string names;
  for (const config::Cook& cook : config.cooks) names += (names.empty() ? "" : ", ") + cook.name;
  all.push_back(words("Counters and cabinets around an outdoor pizza oven, for " + names + "."));
  all.push_back(note("Worked out by Hearthsight " + std::string(version()) +
                     "; fingerprint of what was given: " + config_fingerprint(config) + "."));
  if (const std::string lost = not_printed(config); !lost.empty()) {
    all.push_back(note("The PDF's typeface has Latin letters only, and prints others as \"?\": " +
                       lost + ". The packet's HTML shows them whole."));
  }
  const Summary s = summary(config, view.evaluation, view.choice.units);
  for (const Headline& h : s.headlines) {
    all.push_back(block(Kind::Large, plain_marks(h.value), h.label));
    all.push_back(words(with_source(h.note + (h.yours.empty() ? "" : "; " + h.yours) + ". " +
                                        capitalised(h.band) + (h.band.empty() ? "" : "."),
                                    h.why)));
  }
  if (const std::string toes = feet_line(view.evaluation, view.choice.units); !toes.empty()) {
    all.push_back(words(toes + "."));
  }
  const std::vector<Table> people = people_tables(view.page());
  if (!people.empty()) all.push_back(rows(people[0]));
  all.push_back(caution("caution.manual_first"));
  if (view.evaluation.packet && view.evaluation.packet->timetable.open > 0) {
    DocBlock open =
        words(std::to_string(view.evaluation.packet->timetable.open) +
                  " answers are missing or say that something does not work: see what to mind.",
              "Before anything is bought.");
    open.verdict = Verdict::Unknown;
    all.push_back(std::move(open));
  }
  if (Table glance = glance_table(view); !glance.rows.empty()) {
    all.push_back(rows(std::move(glance)));
  }
  all.push_back(heading("In this packet"));
  all.push_back(block(Kind::Contents, {}));

  DocBlock measure = block(Kind::Measure, {});
  const std::string link = share::to_link(config);
  const std::string target = view.choice.address.empty() ? link : view.choice.address + "#" + link;
  measure.square = share::qr_rows(target);
  measure.words = "Measure both lines before you trust a scale of this packet: each is 100 mm (" +
                  inches_text(kBar_mm) +
                  ") where it was printed at 100 %, on paper of its own size. ";
  if (measure.square.empty()) {
    measure.words += "This station is too large for a square that a camera reads.";
  } else if (view.choice.address.empty()) {
    measure.words +=
        "The square holds this station as a link without an address: open the page, and paste what "
        "the camera reads under \"Open a link\".";
  } else {
    measure.words += "The square opens this station, live, at " + view.choice.address;
  }
  all.push_back(std::move(measure));
  return {std::move(part), {}};
}

PacketPart mind_part(const PacketView& view) {
  DocPart part{"mind", "What to mind"};
  const Page page = view.page();
  for (const Finding& finding : view.evaluation.findings) {
    if (finding.verdict == Verdict::Ok) continue;
    const rules::Rule* rule = rules::find_rule(finding.rule);
    DocBlock b = words(
        with_source(
            readers_own(readers_first(sentence(finding, page.config, page.evaluation, page.units),
                                      page.units),
                        page.units),
            finding.rule),
        std::string(rule ? rule->title : finding.rule) + ".");
    b.verdict = finding.verdict;
    part.blocks.push_back(std::move(b));
  }
  return {std::move(part), "there is nothing to mind."};
}

PacketPart drawings_part(const PacketView& view) {
  DocPart part{"drawings", "Drawings"};
  const auto drawn = [&view](auto draw) {
    return [&view, draw](const SheetView& v) { return draw(view.config, view.evaluation, v); };
  };
  for (const SheetKind& kind : sheet_kinds()) {
    if (!kind.section.empty()) continue;
    part.blocks.push_back(figure(view,
                                 {.file = std::string(kind.name),
                                  .head = std::string(kind.title),
                                  .caption = std::string(kind.caption),
                                  .whole_page = true},
                                 drawn(kind.draw)));
  }
  if (view.evaluation.build && view.evaluation.build->frame.made()) {
    for (const FrameSheet& whole : frame_sheets()) {
      // What is not to scale has no line of known length either: the parts list is its key.
      part.blocks.push_back(figure(view,
                                   {.file = std::string(whole.name),
                                    .head = std::string(whole.title),
                                    .caption = std::string(whole.printed),
                                    .whole_page = true,
                                    .to_scale = whole.to_scale,
                                    .key = whole.to_scale},
                                   drawn(whole.draw)));
    }
  }
  return {std::move(part), {}};
}

PacketPart parts_part(const PacketView& view) {
  DocPart part{"parts", "Parts and hardware"};
  const auto& build = view.evaluation.build;
  if (!build || !build->frame.made()) return {std::move(part), frame_refusals(view)};
  part.blocks.push_back(
      words("One list: the numbers on the drawings are these. Length runs with the grain. Measure "
            "the sheets before the first cut: they are rarely as thick as they are called."));
  if (view.evaluation.survey && view.evaluation.survey->base) {
    part.blocks.push_back(
        words("The boards round the base are cut to the ground: rip and scribe them by the base's "
              "profiles. Their width here is the least and the most that stays."));
  }
  part.blocks.push_back(rows(parts_table(view, *build)));
  part.blocks.push_back(rows(hardware_table(*build, view.choice.units)));
  part.blocks.push_back(heading("Every part by itself"));
  for (std::size_t i = 0; i < build->parts.parts.size(); ++i) {
    const parts::Part& one = build->parts.parts[i];
    const std::string number = std::to_string(one.number);
    part.blocks.push_back(figure(
        view,
        {.file = "panel_" + number,
         .head = "Part " + number + ", " + std::string(frame::kind_name(one.kind))},
        [&](const SheetView& v) { return panel_sheet(view.config, view.evaluation, v, i); }));
  }
  return {std::move(part), {}};
}

PacketPart base_part(const PacketView& view) {
  DocPart part{"base", "The ground and the base"};
  if (!view.evaluation.survey)
    return {std::move(part), "no readings of the ground, point by point, are given."};
  const Page page = view.page();
  for (const Section& section : sections(page)) {
    if (section.id != "ground") continue;
    part.blocks.push_back(words(section.intro));
    for (const Table& table : section.tables) {
      if (!table.rows.empty()) part.blocks.push_back(rows(table));
    }
  }
  const SheetKind* profile = find_sheet("base-profile");
  DocBlock drawn =
      figure(view,
             {.file = std::string(profile->name),
              .head = std::string(profile->title),
              .caption = std::string(profile->caption) +
                         " Heights are drawn larger than lengths. Dots: readings; diamonds: "
                         "doubtful ones; dashed: joints. What each board is ripped to and the "
                         "compass: in the table above.",
              .to_scale = false,
              .key = false},
             [&](const SheetView& v) { return profile->draw(view.config, view.evaluation, v); });
  if (!drawn.figure->drawing.marks().empty()) part.blocks.push_back(std::move(drawn));
  for (std::size_t i = 0; i < base_cut_count(view.evaluation); ++i) {
    part.blocks.push_back(figure(
        view,
        {.file = "base_" + std::to_string(i + 1),
         .head = base_cut_title(view.evaluation, i),
         .to_scale = false},
        [&](const SheetView& v) { return base_cut_sheet(view.config, view.evaluation, v, i); }));
  }
  std::vector<std::string> without;
  part.strips = base_template(view.evaluation, view.choice.paper, view.choice.units, &without);
  if (!part.strips.empty()) {
    part.blocks.push_back(words("The next " + std::to_string(part.strips.size()) +
                                " pages are full-size strips: print them at 100 %, measure both "
                                "lines, lay mark on mark."));
  }
  return {std::move(part), {}};
}

PacketPart safety_part(const PacketView& view) {
  const SafetySheet sheet = safety_sheet(view.config, view.evaluation, view.choice.units);
  DocPart part{"safety", "Safety at the oven"};
  part.blocks.push_back(note(sheet.oven));
  for (const SafetyPart& one : sheet.parts) {
    part.blocks.push_back(heading(std::string(one.title)));
    for (const SafetyLine& line : one.lines) {
      std::string text = line.words;
      if (line.source > 0) text += " [" + std::to_string(line.source) + "]";
      DocBlock b = words(std::move(text), line.head.empty() ? line.head : line.head + ":");
      b.verdict = line.verdict;
      part.blocks.push_back(std::move(b));
    }
  }
  std::string said = "Said by:";
  for (std::size_t i = 0; i < sheet.sources.size(); ++i) {
    said += " [" + std::to_string(i + 1) + "] " + sheet.sources[i] + ";";
  }
  said.back() = '.';
  part.blocks.push_back(note(std::move(said)));
  return {std::move(part), {}};
}

PacketPart sources_part(const PacketView& view) {
  DocPart part{"sources", "Sources"};
  for (Table& table : source_tables(view.page())) part.blocks.push_back(rows(std::move(table)));
  return {std::move(part), {}};
}

}  // namespace hs::report
