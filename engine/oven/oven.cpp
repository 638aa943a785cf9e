#include "engine/oven/oven.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace hs::oven {
namespace {

constexpr double kOutside = -1;  // what half_width_at answers where there is no opening or floor

Outline outline_of(double width_mm, double height_mm, config::MouthShape shape,
                   double side_height_mm) {
  Outline outline{.half_width_mm = width_mm / 2, .height_mm = height_mm, .spring_mm = height_mm};
  switch (shape) {
    case config::MouthShape::Rectangle:
      break;
    case config::MouthShape::Arch:
      outline.spring_mm = side_height_mm;
      break;
    case config::MouthShape::HalfRound:
      outline.spring_mm = 0;
      break;
  }
  return outline;
}

// The outer opening with every absent member taken from the mouth behind it.
struct OuterSizes {
  double width_mm, height_mm, side_height_mm;
  config::MouthShape shape;
};

OuterSizes outer_sizes(const config::Oven& oven) {
  const config::OuterMouth& outer = oven.outer_mouth;
  return {outer.width_mm.value_or(oven.mouth_width_mm),
          outer.height_mm.value_or(oven.mouth_height_mm),
          outer.side_height_mm.value_or(oven.mouth_side_height_mm),
          outer.shape.value_or(oven.mouth_shape)};
}

// "430 mm", "430.5 mm": lengths are kept in tenths, so one decimal says all.
std::string mm_text(double length_mm) {
  const long long tenths = std::llround(length_mm * 10);
  std::string text = tenths < 0 ? "-" : "";
  const long long size = tenths < 0 ? -tenths : tenths;
  text += std::to_string(size / 10);
  if (size % 10 != 0) text += "." + std::to_string(size % 10);
  return text + " mm";
}

// Equal lengths may differ by a rounding error once two of them are added, never by this much.
constexpr double kSlack_mm = 0.001;

constexpr const char* kAboveFloor = "the body's height less the floor's height in it";

class Refusals {
 public:
  void at_most(const char* path, double given_mm, double limit_mm, const char* why) {
    if (given_mm > limit_mm + kSlack_mm) add(path, given_mm, "at most ", limit_mm, why);
  }
  void at_least(const char* path, double given_mm, double limit_mm, const char* why) {
    if (given_mm < limit_mm - kSlack_mm) add(path, given_mm, "at least ", limit_mm, why);
  }
  std::vector<Problem> take() { return std::move(problems_); }

 private:
  void add(const char* path, double given_mm, const char* relation, double limit_mm,
           const char* why) {
    problems_.push_back({.path = path,
                         .given = mm_text(given_mm),
                         .allowed = relation + mm_text(limit_mm) + " (" + why + ")"});
  }

  std::vector<Problem> problems_;
};

}  // namespace

double Outline::half_width_at(double z_mm) const {
  if (!(z_mm >= 0) || z_mm > height_mm) return kOutside;
  if (z_mm <= spring_mm) return half_width_mm;
  const double rise = (z_mm - spring_mm) / (height_mm - spring_mm);
  return half_width_mm * std::sqrt(std::max(0.0, 1 - rise * rise));
}

double Outline::scale_to_edge(double x_mm, double z_mm) const {
  const double across = std::abs(x_mm);
  if (across == 0 && z_mm == 0) return std::numeric_limits<double>::infinity();
  // Through a vertical side, at or below the point where the curve springs.
  if (half_width_mm * z_mm <= spring_mm * across) return half_width_mm / across;
  // Through the top: the farther root of (s x / half width)^2 + ((s z - spring) / rise)^2 = 1,
  // multiplied out by the rise so that a rectangle, whose rise is nought, needs no case.
  const double rise = height_mm - spring_mm;
  const double ratio = across / half_width_mm;
  const double ratio2 = ratio * ratio;
  const double under_root = z_mm * z_mm - ratio2 * (spring_mm * spring_mm - rise * rise);
  return (z_mm * spring_mm + rise * std::sqrt(std::max(0.0, under_root))) /
         (z_mm * z_mm + ratio2 * rise * rise);
}

double Floor::half_width_at(double y_mm) const {
  if (!(y_mm >= near_mm) || y_mm > far_mm) return kOutside;
  if (!round) return half_width_mm;
  const double half_depth = (far_mm - near_mm) / 2;
  const double along = (y_mm - near_mm) / half_depth - 1;
  return half_width_mm * std::sqrt(std::max(0.0, 1 - along * along));
}

double Floor::area_mm2() const {
  const double box = 2 * half_width_mm * (far_mm - near_mm);
  return round ? box * std::numbers::pi / 4 : box;
}

Geometry geometry_of(const config::Oven& oven) {
  const OuterSizes outer = outer_sizes(oven);
  Geometry geometry;
  geometry.inner = outline_of(oven.mouth_width_mm, oven.mouth_height_mm, oven.mouth_shape,
                              oven.mouth_side_height_mm);
  geometry.outer = outline_of(outer.width_mm, outer.height_mm, outer.shape, outer.side_height_mm);
  geometry.throat_mm = oven.throat_mm;
  geometry.brow_mm = oven.brow_mm;
  geometry.brow_edge_mm = oven.mouth_height_mm;
  geometry.floor = {.round = oven.floor_shape == config::FloorShape::Round,
                    .half_width_mm = oven.floor_width_mm / 2,
                    .near_mm = oven.throat_mm,
                    .far_mm = oven.throat_mm + oven.floor_depth_mm};
  return geometry;
}

std::vector<Problem> impossible(const config::Oven& oven) {
  const OuterSizes outer = outer_sizes(oven);
  Refusals refusals;

  // A floor or a throat that leaves no room at all is named itself: a mouth of "at most -50 mm"
  // would help nobody.
  const double room_above_floor_mm = oven.height_mm - oven.floor_above_base_mm;
  const bool floor_inside = room_above_floor_mm > kSlack_mm;
  if (!floor_inside) {
    refusals.at_most("oven.floor_above_base_mm", oven.floor_above_base_mm,
                     oven.height_mm - std::min(oven.mouth_height_mm, oven.height_mm),
                     "the body's height less the mouth's");
  }
  refusals.at_most("oven.mouth_width_mm", oven.mouth_width_mm, oven.width_mm, "the body's width");
  refusals.at_most("oven.mouth_height_mm", oven.mouth_height_mm,
                   floor_inside ? room_above_floor_mm : oven.height_mm,
                   floor_inside ? kAboveFloor : "the body's height");
  if (oven.mouth_shape == config::MouthShape::Arch) {
    refusals.at_most("oven.mouth_side_height_mm", oven.mouth_side_height_mm, oven.mouth_height_mm,
                     "the mouth's height: the arch springs below its top");
  }
  const double room_behind_throat_mm = oven.depth_mm - oven.throat_mm;
  const bool throat_inside = room_behind_throat_mm > kSlack_mm;
  if (!throat_inside) {
    refusals.at_most("oven.throat_mm", oven.throat_mm,
                     oven.depth_mm - std::min(oven.floor_depth_mm, oven.depth_mm),
                     "the body's depth less the floor's");
  }
  refusals.at_most("oven.floor_width_mm", oven.floor_width_mm, oven.width_mm, "the body's width");
  refusals.at_most("oven.floor_depth_mm", oven.floor_depth_mm,
                   throat_inside ? room_behind_throat_mm : oven.depth_mm,
                   throat_inside ? "the body's depth less the throat" : "the body's depth");
  // Only what was given for the outer opening can be wrong there: the rest is the mouth's own.
  if (oven.outer_mouth.width_mm) {
    refusals.at_least("oven.outer_mouth.width_mm", outer.width_mm, oven.mouth_width_mm,
                      "the mouth's width: the outer opening is the larger one");
    refusals.at_most("oven.outer_mouth.width_mm", outer.width_mm, oven.width_mm,
                     "the body's width");
  }
  if (oven.outer_mouth.height_mm) {
    refusals.at_least("oven.outer_mouth.height_mm", outer.height_mm, oven.mouth_height_mm,
                      "the mouth's height: the outer opening is the larger one");
    if (floor_inside) {
      refusals.at_most("oven.outer_mouth.height_mm", outer.height_mm, room_above_floor_mm,
                       kAboveFloor);
    }
  }
  const bool own_arch = oven.outer_mouth.side_height_mm || oven.outer_mouth.shape;
  if (own_arch && outer.shape == config::MouthShape::Arch) {
    refusals.at_most("oven.outer_mouth.side_height_mm", outer.side_height_mm, outer.height_mm,
                     "the outer opening's height: the arch springs below its top");
  }
  return refusals.take();
}

}  // namespace hs::oven
