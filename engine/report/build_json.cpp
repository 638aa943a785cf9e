#include "engine/report/build_json.h"

#include <string>

#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/report/json_values.h"
#include "engine/report/loads_words.h"
#include "engine/report/metal_sheets.h"

namespace hs::report {
namespace {

using frame::Frame;
using parts::Part;

std::string_view holds_name(config::Holds holds) {
  constexpr std::string_view kNames[] = {"doors", "drawers", "drawer_and_doors", "open", "gas"};
  return kNames[static_cast<std::size_t>(holds)];
}

std::string_view run_name(bool oven) { return oven ? "oven" : "dough"; }

void put_block(JsonWriter& out, std::string_view key, const Block& block) {
  out.key(key);
  out.begin_object();
  put_mm(out, "left_mm", block.left_mm);
  put_mm(out, "right_mm", block.right_mm);
  put_mm(out, "near_mm", block.near_mm);
  put_mm(out, "far_mm", block.far_mm);
  put_mm(out, "bottom_mm", block.bottom_mm);
  put_mm(out, "top_mm", block.top_mm);
  out.end_object();
}

void put_runs(JsonWriter& out, const Frame& frame) {
  out.key("runs");
  out.begin_list();
  if (frame.made()) {
    for (const frame::Run& run : frame.runs) {
      out.begin_object();
      put_text(out, "run", run_name(run.oven));
      put_mm(out, "wanted_mm", run.counter.top_mm);
      put_mm(out, "top_mm", run.top_mm);
      put_block(out, "boxes", run.boxes);
      put_mm(out, "sheets_mm", run.sheets_mm);
      out.key("bays");
      out.begin_list();
      for (const frame::Bay& bay : run.bays) {
        out.begin_object();
        put_text(out, "holds", holds_name(bay.holds));
        put_block(out, "box", bay.box);
        put_block(out, "opening", bay.opening);
        out.end_object();
      }
      out.end_list();
      out.end_object();
    }
  }
  out.end_list();
}

void put_frame(JsonWriter& out, const Frame& frame) {
  out.key("frame");
  out.begin_object();
  put_flag(out, "made", frame.made());
  put_mm(out, "base_mm", frame.made() ? std::optional(frame.base_mm) : std::nullopt);
  out.key("refused");
  out.begin_list();
  for (const frame::Refusal& one : frame.refusals) {
    out.begin_object();
    put_text(out, "rule", one.rule);
    put_mm(out, "measured_mm", one.measured_mm);
    put_mm(out, "limit_mm", one.limit_mm);
    put_text(out, "where", one.where);
    out.end_object();
  }
  out.end_list();
  put_runs(out, frame);
  out.key("measures");
  out.begin_list();
  for (const frame::Measure& measure : frame.measures) {
    out.begin_object();
    put_text(out, "name", measure.name);
    put_mm(out, "planned_mm", measure.planned_mm);
    put_mm(out, "used_mm", measure.used_mm);
    put_flag(out, "as_built", measure.built);
    if (measure.ignored_mm) put_mm(out, "ignored_mm", measure.ignored_mm);
    out.end_object();
  }
  out.end_list();
  out.key("grill");
  if (frame.grill) {
    out.begin_object();
    put_text(out, "side", frame.grill->right ? "right" : "left");
    put_mm(out, "free_mm", frame.grill->free_mm);
    put_mm(out, "shelf_above_counter_mm", frame.grill->step_mm);
    out.end_object();
  } else {
    out.null();
  }
  out.end_object();
}

// Millimetres as they are cut to, and the nearest 1/32 in; metal in decimals, as its order has it.
void put_size(JsonWriter& out, std::string_view key, const std::optional<double>& length_mm,
              const std::optional<double>& width_mm, const std::optional<double>& thick_mm,
              bool metal) {
  out.key(key);
  if (!length_mm) {
    out.null();
    return;
  }
  out.begin_object();
  const auto put = [&out, metal](const std::string& name, const std::optional<double>& mm) {
    if (!mm) return;
    put_mm(out, name + "_mm", mm);
    put_text(out, name + "_in", metal ? metal_length(*mm, Units::Inch) : inches_text(*mm, 32));
  };
  put("length", length_mm);
  put("width", width_mm);
  put("thick", thick_mm);
  out.end_object();
}

void put_surfaces(JsonWriter& out, const Part& part) {
  constexpr std::string_view kNames[] = {"front", "back", "start", "end", "low", "high"};
  out.key("surfaces");
  out.begin_object();
  for (std::size_t i = 0; i < part.surfaces.size(); ++i) {
    std::string words(frame::coat_name(part.surfaces[i].coat));
    const std::string_view edge = frame::edge_name(part.surfaces[i].edge);
    if (!edge.empty()) words += ", " + std::string(edge);
    put_text(out, kNames[i], words);
  }
  out.end_object();
}

void put_cuts(JsonWriter& out, const Part& part) {
  out.key("holes");
  out.begin_list();
  for (const parts::Cut& cut : part.cuts) {
    out.begin_object();
    put_text(out, "use", parts::use_name(cut.use));
    put_text(out, "face", cut.in_front ? "front" : "back");
    put_mm(out, "along_mm", cut.along_mm);
    put_mm(out, "across_mm", cut.across_mm);
    if (cut.round) {
      put_mm(out, "diameter_mm", cut.long_mm);
    } else {
      put_mm(out, "long_mm", cut.long_mm);
      put_mm(out, "wide_mm", cut.wide_mm);
    }
    put_mm(out, "deep_mm", cut.deep_mm > 0 ? std::optional(cut.deep_mm) : std::nullopt);
    put_number(out, "count", cut.count, 0);
    put_mm(out, "pitch_mm", cut.count > 1 ? std::optional(cut.pitch_mm) : std::nullopt);
    put_text_or_null(out, "row",
                     cut.count > 1 ? (cut.row_along ? "along" : "across") : std::string_view());
    out.end_object();
  }
  out.end_list();
}

void put_part(JsonWriter& out, const Frame& frame, const Part& part) {
  out.begin_object();
  put_number(out, "number", part.number, 0);
  put_text(out, "name", frame::kind_name(part.kind));
  put_number(out, "quantity", part.quantity(), 0);
  put_text(out, "material", frame::material_name(part.material));
  put_text_or_null(out, "stock", part.stock);
  const bool metal = part.material == frame::Material::Metal;
  put_size(out, "finished", part.length_mm, part.width_mm, part.thick_mm, metal);
  put_size(out, "rough", part.rough_length_mm, part.rough_width_mm, {}, metal);
  put_text(out, "grain", part.grain_along ? "along" : "none");
  put_surfaces(out, part);
  out.key("turned_down_mm");
  if (part.folds_mm == std::array<double, 4>{}) {
    out.null();
  } else {
    constexpr std::string_view kNames[] = {"start", "end", "low", "high"};
    out.begin_object();
    for (std::size_t i = 0; i < part.folds_mm.size(); ++i) put_mm(out, kNames[i], part.folds_mm[i]);
    out.end_object();
  }
  out.key("turned_down_tails");
  out.begin_list();
  for (const parts::Tail& tail : part.tails) {
    out.begin_object();
    put_text(out, "at", tail.at == parts::At::Start ? "start" : "end");
    put_mm(out, "long_mm", tail.long_mm);
    put_mm(out, "inside_mm", tail.inside_mm);
    put_mm(out, "down_mm", tail.down_mm);
    out.end_object();
  }
  out.end_list();
  put_cuts(out, part);
  out.key("places");
  out.begin_list();
  for (const std::size_t index : part.pieces) {
    const frame::Piece& piece = frame.pieces[index];
    out.begin_object();
    put_text(out, "where", parts::place_text(piece));
    put_block(out, "block", piece.place);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

}  // namespace

// Apart, so that a program may hold it where it is called only once there is a build.
void put_build(JsonWriter& out, const evaluate::Build& build) {
  put_frame(out, build.frame);
  out.key("parts");
  out.begin_list();
  for (const Part& part : build.parts.parts) put_part(out, build.frame, part);
  out.end_list();
  out.key("hardware");
  out.begin_list();
  for (const parts::Hardware& one : build.parts.hardware) {
    out.begin_object();
    put_text(out, "name", one.name);
    put_number(out, "quantity", one.quantity, 1);
    put_text_or_null(out, "unit", one.unit);
    put_text(out, "counted", one.rule);
    out.end_object();
  }
  out.end_list();
  put_loads(out, build.loads);
}

void put_build_stage(JsonWriter& out, const evaluate::Evaluation& e) {
  if (e.build) {
    put_build(out, *e.build);
    return;
  }
  for (const std::string_view key : {"frame", "parts", "hardware", "loads"}) put_null(out, key);
}

}  // namespace hs::report
