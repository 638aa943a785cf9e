#include "engine/report/heat_json.h"

#include "engine/heat/tolerance.h"
#include "engine/report/json_values.h"

namespace hs::report {
namespace {

std::optional<double> only_if(bool known, double value) {
  return known ? std::optional<double>(value) : std::nullopt;
}

void put_seconds(JsonWriter& out, std::string_view key, const std::optional<double>& kw_m2) {
  put_number(out, key, kw_m2 ? heat::tolerance_s(*kw_m2) : std::nullopt, 1);
}

void put_place(JsonWriter& out, std::string_view key, const std::optional<Vec>& at) {
  if (!at) {
    put_null(out, key);
    return;
  }
  out.key(key);
  out.begin_object();
  put_mm(out, "across_mm", at->x);
  put_mm(out, "ahead_mm", -at->y);
  put_mm(out, "up_mm", at->z);
  out.end_object();
}

}  // namespace

void put_heat(JsonWriter& out, const config::Config& config, const evaluate::Evaluation& e) {
  out.key("heat");
  out.begin_object();
  put_flux(out, "mouth_emissive_kw_m2", e.mouth.emissive_kw_m2);
  put_share(out, "emissivity", e.mouth.emissivity);
  put_number(out, "flame_factor", e.mouth.flame_factor, 2);
  out.key("cooks");
  out.begin_list();
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const bool known = e.cooks[i].at_oven;
    const evaluate::CookHeat& heat = e.cooks[i].heat;
    const auto face = only_if(known, heat.face_watching_kw_m2);
    const auto hand = only_if(known, heat.hand_through_kw_m2);
    out.begin_object();
    put_text(out, "name", config.cooks[i].name);
    put_flux(out, "face_kw_m2", face);
    put_flux(out, "face_working_kw_m2", only_if(known, heat.face_working_kw_m2));
    put_flux(out, "hand_kw_m2", only_if(known, heat.hand_kw_m2));
    put_flux(out, "hand_through_kw_m2", hand);
    put_flux(out, "hand_short_peel_kw_m2", only_if(known, heat.short_peel_kw_m2));
    put_flux(out, "hand_long_peel_kw_m2", only_if(known, heat.long_peel_kw_m2));
    put_seconds(out, "tolerance_s", face);
    put_seconds(out, "hand_tolerance_s", hand);
    put_mm(out, "hand_ahead_mm", only_if(known, heat.hand_ahead_mm));
    put_mm(out, "linger_standoff_mm", only_if(known, heat.linger_standoff_mm));
    put_flux(out, "withdrawn_stoop_kw_m2", heat.withdrawn_stoop_kw_m2);
    out.end_object();
  }
  out.end_list();
  out.end_object();
}

void put_light(JsonWriter& out, const evaluate::Evaluation& e) {
  out.key("light");
  out.begin_object();
  const auto& lamp = e.light.lamp;
  if (lamp) {
    const bool known = lamp->head.has_value();
    out.key("lamp");
    out.begin_object();
    put_place(out, "mount", lamp->mount);
    put_place(out, "head", lamp->head);
    put_place(out, "aim", known ? std::optional<Vec>(lamp->light.aim) : std::nullopt);
    put_lux(out, "pizza_lx", only_if(known, lamp->light.lux));
    put_lux(out, "pizza_least_lx", only_if(known, lamp->light.least_lux));
    put_share(out, "lit_fraction", only_if(known, lamp->light.lit_share));
    put_mm(out, "neck_needed_mm", only_if(known, lamp->neck_needed_mm));
    put_mm(out, "shortest_neck_mm", lamp->search.shortest_neck_mm);
    put_flux(out, "heat_kw_m2", only_if(known, lamp->heat_kw_m2));
    put_number(out, "places", only_if(lamp->search.done, lamp->search.places), 0);
    out.end_object();
  } else {
    put_null(out, "lamp");
  }
  put_lux(out, "prep_lx", e.light.prep_lux);
  put_lux(out, "landing_lx", e.light.landing_lux);
  out.end_object();
}

}  // namespace hs::report
