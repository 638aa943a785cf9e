// The cut plans of a station in the report: {"kerf_mm", "sheet_trim_mm", "board_trim_mm",
// "groups"}. Places on a board or sheet go from its lower left corner, x along its length.

#include "engine/evaluate/cutting.h"
#include "engine/report/json_values.h"
#include "engine/report/packet_json.h"

namespace hs::report {
namespace {

using evaluate::CutGroup;
using evaluate::MeasuredBy;
using evaluate::SawnPiece;

std::string_view by_name(MeasuredBy by) {
  constexpr std::string_view kNames[] = {"pieces", "length_mm", "area_m2", "price"};
  return kNames[static_cast<std::size_t>(by)];
}

std::string_view kind_name(SawnPiece::Kind kind) {
  constexpr std::string_view kNames[] = {"part", "strip", "leftover", "waste"};
  return kNames[static_cast<std::size_t>(kind)];
}

void put_items(JsonWriter& out, const CutGroup& group) {
  out.key("items");
  out.begin_list();
  for (const evaluate::CutItem& item : group.items) {
    out.begin_object();
    put_number(out, "part", item.part, 0);
    put_number(out, "copy", item.copy + 1, 0);
    put_mm(out, "length_mm", item.length_mm);
    put_mm(out, "width_mm", item.width_mm);
    put_flag(out, "at_finished_size", item.at_finished);
    put_mm(out, "rip_to_mm", item.rip_mm);
    out.end_object();
  }
  out.end_list();
  out.key("too_large");
  out.begin_list();
  for (const std::size_t item : group.too_large) out.number(std::to_string(item));
  out.end_list();
}

void put_stocks(JsonWriter& out, const CutGroup& group) {
  out.key("stocks");
  out.begin_list();
  for (const evaluate::CutStock& stock : group.stocks) {
    out.begin_object();
    put_text(out, "name", stock.name);
    put_number(out, "stock_row", stock.row ? std::optional<double>(*stock.row) : std::nullopt, 0);
    put_mm(out, "length_mm", stock.length_mm);
    put_mm(out, "width_mm", stock.width_mm);
    put_number(out, "on_hand", stock.on_hand ? std::optional<double>(*stock.on_hand) : std::nullopt,
               0);
    put_number(out, "price", stock.price, 2);
    put_flag(out, "may_turn", stock.turn);
    put_number(out, "used", stock.used, 0);
    out.end_object();
  }
  out.end_list();
}

void put_stick(JsonWriter& out, const CutGroup& group, const evaluate::CutStick& stick) {
  out.begin_object();
  put_number(out, "stock", static_cast<double>(stick.stock), 0);
  out.key("pieces");
  out.begin_list();
  for (const SawnPiece& piece : stick.pieces) {
    const bool part = piece.kind == SawnPiece::Kind::Part;
    out.begin_object();
    put_text(out, "kind", kind_name(piece.kind));
    put_number(out, "item", part ? std::optional(static_cast<double>(piece.item)) : std::nullopt,
               0);
    put_mm(out, "x_mm", piece.x_mm);
    if (group.sheets) put_mm(out, "y_mm", piece.y_mm);
    put_mm(out, "length_mm", piece.length_mm);
    if (group.sheets) {
      put_mm(out, "width_mm", piece.width_mm);
      put_flag(out, "turned", piece.turned);
    }
    out.end_object();
  }
  out.end_list();
  out.key("passes");
  out.begin_list();
  for (const evaluate::SawPass& pass : stick.passes) {
    out.begin_object();
    put_number(out, "number", pass.number, 0);
    put_flag(out, "trim", pass.trim);
    if (group.sheets) put_text(out, "saw_runs", pass.along ? "along" : "across");
    put_mm(out, "at_mm", pass.at_mm);
    if (group.sheets) {
      put_mm(out, "from_mm", pass.from_mm);
      put_mm(out, "to_mm", pass.to_mm);
    }
    put_mm(out, "fence_mm", pass.fence_mm);
    put_number(out, "off", pass.off ? std::optional<double>(*pass.off) : std::nullopt, 0);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

void put_group(JsonWriter& out, const CutGroup& group) {
  out.begin_object();
  put_text(out, "name", group.name);
  put_text(out, "material", frame::material_name(group.material));
  put_text(out, "from", group.sheets ? "sheets" : "boards");
  put_mm(out, "thick_mm", group.thick_mm);
  put_mm(out, "width_mm", group.sheets ? std::nullopt : std::optional(group.width_mm));
  put_number(out, "bought", group.bought, 0);
  put_number(out, "from_hand", group.from_hand, 0);
  put_text(out, "measured_by", by_name(group.by));
  put_number(out, "value", group.value, 2);
  put_number(out, "at_least", group.at_least, 2);
  put_flag(out, "proven", group.proven);
  put_share(out, "used_fraction", group.stock_share);
  put_items(out, group);
  put_stocks(out, group);
  out.key("plans");
  out.begin_list();
  for (const evaluate::CutStick& stick : group.sticks) put_stick(out, group, stick);
  out.end_list();
  out.end_object();
}

}  // namespace

void put_cutting(JsonWriter& out, const evaluate::Cutting& cutting) {
  out.key("cuts");
  out.begin_object();
  put_mm(out, "kerf_mm", cutting.kerf_mm);
  put_mm(out, "sheet_trim_mm", cutting.sheet_trim_mm);
  put_mm(out, "board_trim_mm", cutting.board_trim_mm);
  out.key("groups");
  out.begin_list();
  for (const CutGroup& group : cutting.groups) put_group(out, group);
  out.end_list();
  out.key("not_used");
  out.begin_list();
  for (const evaluate::UnusedRow& one : cutting.unused) {
    out.begin_object();
    put_number(out, "stock_row", static_cast<double>(one.row), 0);
    put_text(out, "why", one.why);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

}  // namespace hs::report
