// Orders of folded metal and the wiring in the report. Blank frame: x to the right, y to the back,
// from the blank's front left corner, the top's face up.

#include "engine/base/number_text.h"
#include "engine/evaluate/metal_order.h"
#include "engine/evaluate/wiring.h"
#include "engine/report/json_values.h"
#include "engine/report/metal_sheets.h"
#include "engine/report/packet_json.h"

namespace hs::report {
namespace {

using evaluate::MetalOrder;

// Fabricators read hundredths.
void put_fine(JsonWriter& out, std::string_view key, double mm) { put_number(out, key, mm, 2); }

void put_spot(JsonWriter& out, const sheet::Spot& spot) {
  out.begin_list();
  out.number(trimmed(spot.x_mm, 2));
  out.number(trimmed(spot.y_mm, 2));
  out.end_list();
}

void put_remarks(JsonWriter& out, std::string_view key, const std::vector<sheet::Remark>& remarks) {
  out.key(key);
  out.begin_list();
  for (const sheet::Remark& remark : remarks) out.string(sheet::words(remark, Unit::Mm));
  out.end_list();
}

std::string_view reads_name(sheet::Reads reads) {
  constexpr std::string_view kNames[] = {"outside", "inside", "flat"};
  return kNames[static_cast<std::size_t>(reads)];
}

void put_blank(JsonWriter& out, const sheet::Blank& blank) {
  out.key("blank");
  if (!blank.possible()) {
    out.null();
    return;
  }
  out.begin_object();
  put_fine(out, "width_mm", blank.width_mm);
  put_fine(out, "depth_mm", blank.depth_mm);
  put_number(out, "area_m2", blank.area_mm2 * 1e-6, 4);
  put_number(out, "mass_kg", blank.mass_kg, 2);
  out.key("outline");
  out.begin_list();
  for (const sheet::Spot& spot : blank.outline) put_spot(out, spot);
  out.end_list();
  out.key("corner_notch");
  out.begin_list();
  for (const sheet::Spot& spot : blank.notch) put_spot(out, spot);
  out.end_list();
  out.key("bends");
  out.begin_list();
  for (const sheet::BendLine& bend : blank.bends) {
    out.begin_object();
    put_text(out, "at", sheet::side_name(bend.side));
    put_number(out, "angle_deg", bend.hem ? 180 : 90, 0);
    out.key("line");
    out.begin_list();
    put_spot(out, bend.from);
    put_spot(out, bend.to);
    out.end_list();
    put_fine(out, "inside_radius_mm", bend.radius_mm);
    put_fine(out, "allowance_mm", bend.arc_mm);
    put_fine(out, "deduction_mm", bend.deduct_mm);
    out.end_object();
  }
  out.end_list();
  out.key("lengths");
  out.begin_list();
  for (const sheet::Told& told : blank.told) {
    out.begin_object();
    put_text(out, "where", told.where);
    put_text(out, "what", told.what);
    put_fine(out, "mm", told.mm);
    put_text(out, "in", metal_length(told.mm, Units::Inch));
    put_text(out, "measured", reads_name(told.reads));
    out.end_object();
  }
  out.end_list();
  out.key("sheet_mm");
  if (blank.sheet < 0) {
    out.null();
  } else {
    const sheet::Sheet& from = sheet::usual_sheets()[static_cast<std::size_t>(blank.sheet)];
    out.begin_list();
    out.number(trimmed(from.long_mm, 1));
    out.number(trimmed(from.wide_mm, 1));
    out.end_list();
  }
  out.end_object();
}

void put_order(JsonWriter& out, const MetalOrder& order) {
  out.begin_object();
  put_number(out, "part", order.part, 0);
  put_text(out, "name", order.name);
  put_number(out, "quantity", order.quantity, 0);
  put_fine(out, "thick_mm", order.top.metal.thick_mm);
  put_text(out, "thick_in", metal_length(order.top.metal.thick_mm, Units::Inch));
  put_fine(out, "inside_radius_mm", order.top.metal.inside_radius_mm);
  put_number(out, "k", order.top.metal.k, 3);
  put_text(out, "polish",
           order.top.polish == sheet::Polish::AlongWidth   ? "along the width"
           : order.top.polish == sheet::Polish::AlongDepth ? "along the depth"
                                                           : "none");
  put_fine(out, "corner_gap_mm", order.top.corner_gap_mm);
  put_fine(out, "corner_relief_mm", order.blank.relief_mm);
  put_mm(out, "outside_width_mm", order.top.width_mm);
  put_mm(out, "outside_depth_mm", order.top.depth_mm);
  out.key("flanges_mm");
  out.begin_object();
  constexpr std::string_view kSides[] = {"front", "back", "left", "right"};
  for (std::size_t i = 0; i < order.top.flanges.size(); ++i) {
    put_mm(out, kSides[i], order.top.flanges[i].down_mm);
  }
  out.end_object();
  out.key("over");
  out.begin_object();
  put_mm(out, "width_mm", order.under_width_mm);
  put_mm(out, "depth_mm", order.under_depth_mm);
  put_mm(out, "thick_mm", order.under_thick_mm);
  put_flag(out, "measured", order.measured);
  out.end_object();
  out.key("fit");
  out.begin_object();
  put_fine(out, "fit_mm", order.fit_mm);
  put_fine(out, "paint_mm", order.paint_mm);
  put_fine(out, "bend_error_mm", order.bend_error_mm);
  put_fine(out, "least_left_mm", order.least_left_mm);
  put_fine(out, "bedding_mm", order.bedding_mm);
  put_fine(out, "drip_mm", order.drip_mm);
  put_fine(out, "hem_return_mm", order.hem_mm);
  put_fine(out, "ease_corner_mm", order.ease_mm);
  put_flag(out, "meets_another_top", order.rests_on_joint);
  out.end_object();
  out.key("joints");
  out.begin_list();
  for (const evaluate::Joint& joint : order.joints) {
    out.begin_object();
    put_text(out, "at", kSides[sheet::index_of(joint.side)]);
    put_number(out, "part", joint.part > 0 ? std::optional<double>(joint.part) : std::nullopt, 0);
    put_fine(out, "gap_mm", joint.gap_mm);
    put_fine(out, "step_mm", joint.step_mm);
    put_fine(out, "alone_mm", joint.alone_mm);
    put_fine(out, "tail_mm", joint.tail_mm);
    out.end_object();
  }
  out.end_list();
  put_blank(out, order.blank);
  put_remarks(out, "refused", order.blank.refusals);
  put_remarks(out, "ask_the_fabricator", order.blank.cautions);
  out.end_object();
}

void put_box_fill(JsonWriter& out, std::string_view key, const power::BoxFill& fill) {
  out.key(key);
  out.begin_object();
  put_number(out, "in3", fill.in3, 2);
  put_number(out, "cm3", fill.in3 * 16.387064, 1);
  out.key("lines");
  out.begin_list();
  for (const power::BoxLine& line : fill.lines) {
    out.begin_object();
    put_text(out, "what", line.what);
    put_number(out, "in3", line.in3, 2);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

void put_cutouts(JsonWriter& out, const evaluate::Wiring& wiring) {
  out.key("cutouts");
  out.begin_list();
  for (const power::Cutout& cutout : wiring.cutting.cutouts) {
    const power::Fitting& fitting = wiring.fittings[cutout.fitting];
    out.begin_object();
    put_text(out, "name", fitting.name);
    put_text(out, "kind", power::kind_name(fitting.kind));
    put_text(out, "panel", wiring.panels[fitting.panel].name);
    put_number(out, "part", wiring.panel_parts[fitting.panel].part, 0);
    put_text(out, "place", wiring.panel_parts[fitting.panel].place);
    put_mm(out, "u_mm", cutout.u_mm);
    put_mm(out, "v_mm", cutout.v_mm);
    put_mm(out, "wide_mm", cutout.wide_mm);
    put_mm(out, "high_mm", cutout.high_mm);
    put_flag(out, "round", cutout.round);
    put_mm(out, "rim_mm", cutout.rim_mm);
    put_mm(out, "web_mm", cutout.web_mm);
    out.end_object();
  }
  out.end_list();
  out.key("remarks");
  out.begin_list();
  for (const power::Remark& remark : wiring.cutting.remarks) {
    out.begin_object();
    put_text(out, "verdict", verdict_name(remark.verdict));
    put_text(out, "words", power::words(remark, wiring.fittings, wiring.keepouts, Unit::Mm));
    put_text(out, "source", remark.source);
    out.end_object();
  }
  out.end_list();
}

}  // namespace

void put_metal(JsonWriter& out, const evaluate::MetalSheets& metal) {
  out.key("metal");
  out.begin_object();
  put_number(out, "mass_kg", metal.mass_kg, 1);
  out.key("orders");
  out.begin_list();
  for (const MetalOrder& order : metal.orders) put_order(out, order);
  out.end_list();
  out.end_object();
}

void put_wiring(JsonWriter& out, const std::optional<evaluate::Wiring>& wiring) {
  out.key("power");
  if (!wiring) {
    out.null();
    return;
  }
  out.begin_object();
  put_text(out, "code", wiring->code == power::Code::Nec ? "NFPA 70" : "IEC 60364");
  put_number(out, "volts", wiring->volts, 0);
  put_number(out, "breaker_a", wiring->breaker_a, 0);
  put_number(out, "amps", wiring->circuit.amps, 2);
  put_number(out, "counted_a", wiring->circuit.counted_a, 2);
  put_flag(out, "fits", wiring->circuit.fits);
  put_number(out, "left_a", wiring->circuit.left_a, 2);
  put_number(out, "drop_v", wiring->drop_v, 2);
  put_share(out, "drop_fraction", wiring->drop_share);
  put_share(out, "advised_fraction", wiring->advised_share);
  put_mm(out, "longest_run_mm", wiring->longest_run_mm);
  put_number(out, "thinnest_awg",
             wiring->thinnest ? std::optional<double>(wiring->thinnest->awg) : std::nullopt, 0);
  out.key("box");
  if (wiring->box) {
    out.begin_object();
    put_box_fill(out, "to_2017", wiring->box->to2017);
    put_box_fill(out, "from_2020", wiring->box->from2020);
    out.end_object();
  } else {
    out.null();
  }
  out.key("answers");
  out.begin_list();
  for (const evaluate::WiringAnswer& one : wiring->answers) {
    out.begin_object();
    put_text(out, "about", one.about);
    put_flag(out, "known", one.answer.known);
    put_text(out, "words", one.answer.words);
    put_text_or_null(out, "clause", one.answer.clause);
    put_text(out, "basis", rules::basis_name(one.answer.basis));
    put_mm(out, "mm", one.answer.mm);
    out.end_object();
  }
  out.end_list();
  put_cutouts(out, *wiring);
  out.end_object();
}

}  // namespace hs::report
