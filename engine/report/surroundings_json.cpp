#include "engine/report/surroundings_json.h"

#include "engine/report/json_values.h"

namespace hs::report {
namespace {

void put_box(JsonWriter& out, const std::optional<clearance::Box>& box) {
  if (!box) {
    put_null(out, "box");
    return;
  }
  out.key("box");
  out.begin_object();
  put_mm(out, "left_mm", box->left_mm);
  put_mm(out, "right_mm", box->right_mm);
  put_mm(out, "near_mm", box->near_mm);
  put_mm(out, "far_mm", box->far_mm);
  put_mm(out, "bottom_mm", box->bottom_mm);
  put_mm(out, "top_mm", box->top_mm);
  out.end_object();
}

void put_zones(JsonWriter& out, const evaluate::Surroundings& around) {
  out.key("zones");
  out.begin_list();
  for (const clearance::Zone& zone : around.hot) {
    out.begin_object();
    put_text(out, "hot", clearance::hot_name(zone.hot));
    put_text(out, "side", clearance::side_name(zone.need.side));
    put_mm(out, "required_mm", zone.need.required_mm);
    put_text(out, "from", clearance::from_name(zone.need.from));
    put_flag(out, "place_drawn", zone.drawn);
    put_box(out, zone.box);
    out.end_object();
  }
  out.end_list();
}

void put_room(JsonWriter& out, const evaluate::Surroundings& around) {
  out.key("room");
  out.begin_list();
  for (const reach::Zone& zone : around.room) {
    out.begin_object();
    put_text(out, "rule", zone.rule);
    put_mm(out, "required_mm", zone.required_mm);
    put_mm(out, "available_mm", zone.available_mm);
    out.key("outline");
    out.begin_list();
    for (const PlanSpot& spot : zone.outline) {
      out.begin_object();
      put_mm(out, "x_mm", spot.x_mm);
      put_mm(out, "y_mm", spot.y_mm);
      out.end_object();
    }
    out.end_list();
    out.end_object();
  }
  out.end_list();
}

void put_vents(JsonWriter& out, std::string_view key,
               const std::optional<clearance::Vents>& vents) {
  if (!vents) {
    put_null(out, key);
    return;
  }
  out.key(key);
  out.begin_object();
  put_number(out, "high_cm2", vents->high_cm2, 1);
  put_number(out, "low_cm2", vents->low_cm2, 1);
  put_flag(out, "each_opening", vents->each);
  out.end_object();
}

}  // namespace

void put_surroundings(JsonWriter& out, const evaluate::Evaluation& e) {
  const evaluate::Surroundings& around = e.surroundings;
  put_zones(out, around);
  put_room(out, around);
  const auto& rain = around.rain;
  const auto of = [&rain](double weather::Wet::*part) {
    return rain ? std::optional<double>((*rain).*part) : std::nullopt;
  };
  out.key("weather");
  out.begin_object();
  put_mm(out, "counter_wet_mm", of(&weather::Wet::top_mm));
  put_mm(out, "face_dry_mm", of(&weather::Wet::face_dry_mm));
  put_mm(out, "face_mm", of(&weather::Wet::face_mm));
  put_number(out, "counter_dry_up_to_m_s", around.dry_up_to_m_s, 1);
  out.end_object();
  out.key("cylinder_vents");
  out.begin_object();
  put_vents(out, "grill_form", around.grill_vents);
  put_vents(out, "fire_feature_form", around.fire_feature_vents);
  out.end_object();
}

}  // namespace hs::report
