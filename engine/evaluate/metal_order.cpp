#include "engine/evaluate/metal_order.h"

#include <algorithm>
#include <cmath>

#include "engine/base/quantity.h"

namespace hs::evaluate {
namespace {

using frame::Piece;
using sheet::Side;

constexpr double kPaint_mm = 0.2;     // primer and two coats on a face: common practice
constexpr double kBendError_deg = 1;  // fabricators, seen
constexpr double kCornerGap_t = 0.5;  // between flanges at a corner, by thickness: common practice
constexpr double kRadius_t = 1.25;    // inside radius by thickness: a careful shop's, seen

constexpr frame::Face face_of(Side side) {
  constexpr frame::Face kFaces[] = {frame::Face::Near, frame::Face::Far, frame::Face::Left,
                                    frame::Face::Right};
  return kFaces[sheet::index_of(side)];
}

bool built(const frame::Frame& frame, const std::string& name) {
  for (const frame::Measure& measure : frame.measures) {
    if (measure.name == name) return measure.built;
  }
  return false;
}

Joint joint_of(const frame::Frame& frame, const parts::List& parts, const Piece& piece, Side side) {
  constexpr double kNear_mm = 20;  // still one joint
  Joint out{.side = side};
  for (std::size_t i = 0; i < frame.pieces.size(); ++i) {
    const Piece& other = frame.pieces[i];
    if (other.kind != frame::Kind::MetalTop || &other == &piece) continue;
    const double gap_mm = side == Side::Left ? piece.place.left_mm - other.place.right_mm
                                             : other.place.left_mm - piece.place.right_mm;
    if (gap_mm < 0 || gap_mm > kNear_mm) continue;
    out.part = parts::number_of(parts, i);
    out.gap_mm = gap_mm;
    out.alone_mm = std::max(0.0, piece.place.far_mm - other.place.far_mm);
    out.step_mm = piece.place.top_mm - other.place.top_mm;
  }
  return out;
}

MetalOrder order_of(const config::Config& config, const frame::Frame& frame,
                    const parts::List& parts, const Piece& piece) {
  const config::Materials& build = config.build;
  MetalOrder out;
  out.name = std::string(frame::kind_name(piece.kind)) + ", " + parts::place_text(piece);
  sheet::Top& top = out.top;
  top.metal.thick_mm = build.metal_mm;
  top.metal.inside_radius_mm = build.bend_radius_mm.value_or(kRadius_t * build.metal_mm);
  top.corner_gap_mm = kCornerGap_t * build.metal_mm;
  if (build.bend_k) top.metal.k = *build.bend_k;
  top.width_mm = piece.place.width_mm();
  top.depth_mm = piece.place.depth_mm();
  double across_mm = 0, deep_mm = 0, longest_mm = 0;
  const double edge_mm = build.metal_mm + build.fit_mm;
  for (const Side side : {Side::Front, Side::Back, Side::Left, Side::Right}) {
    const auto tail =
        std::find_if(piece.tails.begin(), piece.tails.end(),
                     [&](const frame::Tail& one) { return one.side == face_of(side); });
    const bool tailed = tail != piece.tails.end();
    const double down = tailed ? tail->down_mm : frame::turned_down_mm(piece, face_of(side));
    sheet::Flange& flange = top.flanges[sheet::index_of(side)];
    flange.down_mm = down;
    if (tailed) {
      flange.long_mm = piece.place.far_mm - tail->from_mm;
      flange.step_mm = tail->out_mm;
      top.width_mm += tail->out_mm;
    }
    if (down > 0 && build.hem != config::Hem::None) {
      const bool open = build.hem == config::Hem::Open;
      flange.hem = open ? sheet::Hem::Open : sheet::Hem::Closed;
      flange.return_mm = top.limits.usual_return_t * build.metal_mm;
      flange.gap_mm = open ? top.limits.least_gap_t * build.metal_mm : 0;
      out.hem_mm = flange.return_mm;
      out.hem_needs_mm = build.metal_mm + flange.gap_mm + kPaint_mm;
    }
    longest_mm = std::max(longest_mm, down);
    const bool ends = side == Side::Left || side == Side::Right;
    if (down > 0) (ends ? across_mm : deep_mm) += edge_mm;
    if ((down == 0 || tailed) && ends) {
      out.rests_on_joint = true;
      out.joints.push_back(joint_of(frame, parts, piece, side));
      out.joints.back().tail_mm = flange.long_mm;
    }
  }
  out.blank = sheet::blank_of(top);
  out.under_width_mm = top.width_mm - across_mm;
  out.under_depth_mm = top.depth_mm - deep_mm;
  out.bedding_mm = build.bedding_mm;
  out.drip_mm = build.drip_mm;
  out.under_thick_mm =
      longest_mm > 0 ? longest_mm - build.metal_mm - build.bedding_mm - build.drip_mm : 0;
  if (piece.kind == frame::Kind::MetalTop) {
    const std::string name = piece.oven ? "oven.substrate" : "dough.substrate";
    out.measured = built(frame, name + ".width") && built(frame, name + ".depth");
  }
  // The fit is from the bare substrate to the metal: paint is inside it (build.fit_mm).
  out.fit_mm = build.fit_mm;
  out.paint_mm = kPaint_mm;
  out.bend_error_mm = longest_mm * std::tan(deg_to_rad(kBendError_deg));
  out.least_left_mm = out.fit_mm - out.paint_mm - out.bend_error_mm;
  out.ease_mm = sheet::corner_ease_mm(top.metal.inside_radius_mm, out.fit_mm - out.paint_mm,
                                      build.bedding_mm);
  return out;
}

}  // namespace

MetalSheets metal_orders(const config::Config& config, const frame::Frame& frame,
                         const parts::List& parts) {
  MetalSheets out;
  for (const parts::Part& part : parts.parts) {
    if (part.material != frame::Material::Metal) continue;
    MetalOrder order = order_of(config, frame, parts, frame.pieces[part.pieces.front()]);
    order.part = part.number;
    order.quantity = part.quantity();
    out.mass_kg += order.blank.mass_kg * order.quantity;
    out.orders.push_back(std::move(order));
  }
  return out;
}

}  // namespace hs::evaluate
