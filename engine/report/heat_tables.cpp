// The page's tables of heat and light.

#include <cmath>

#include "engine/base/number_text.h"
#include "engine/heat/tolerance.h"
#include "engine/report/page_parts.h"
#include "engine/report/phrases.h"

namespace hs::report {
namespace {

std::string place(const Page& page, const Vec& at) {
  const bool right = at.x >= 0;
  return page.length(std::abs(at.x)) +
         (right ? " right of the mouth's middle, " : " left of it, ") + page.length(-at.y) +
         " in front, " + page.length(at.z) + " above the oven's floor";
}

}  // namespace

std::vector<Table> heat_tables(const Page& page) {
  Table heat{"Heat in kW/m\u00B2, at least; flames come on top",
             {"Cook", "Face, watching", "Face, peel in hand", "Bare hand", "Hand as chosen",
              "Hand, 24 in peel", "Hand, 48 in peel", "Linger no nearer than"},
             {}};
  for (std::size_t i = 0; i < page.evaluation.cooks.size(); ++i) {
    const evaluate::CookResult& cook = page.evaluation.cooks[i];
    if (!cook.at_oven) continue;
    const evaluate::CookHeat& h = cook.heat;
    heat.rows.push_back(
        {page.cook_name(i), fixed(h.face_watching_kw_m2, 2), fixed(h.face_working_kw_m2, 2),
         fixed(h.hand_kw_m2, 2), fixed(h.hand_through_kw_m2, 2), fixed(h.short_peel_kw_m2, 2),
         fixed(h.long_peel_kw_m2, 2), distance(h.linger_standoff_mm, page.units, Round::Up)});
  }
  using heat::Material;
  struct Row {
    std::string_view name;
    Material material;
  };
  constexpr Row kRows[] = {{"Bare metal", Material::Metal},
                           {"Stone, ceramic, glass", Material::Stone},
                           {"Plastic", Material::Plastic},
                           {"Wood", Material::Wood},
                           {"Dense textile", Material::Textile}};
  constexpr double kContact_s[] = {1, 10, 60, 600};
  Table touch{"Hottest surface that bare skin bears, by how long it is touched",
              {"Surface", "1 s", "10 s", "1 min", "10 min"},
              {}};
  for (const Row& row : kRows) {
    std::vector<std::string> cells{std::string(row.name)};
    for (const double contact_s : kContact_s) {
      cells.push_back(temperature(heat::touch_limit_c(row.material, contact_s), page.units));
    }
    touch.rows.push_back(std::move(cells));
  }
  Table wood{"Wood that stays warm",
             {"", "At most"},
             {{"Under, behind or beside the oven for years (Babrauskas and others 2007)",
               temperature(heat::kWoodForLong_c, page.units)}}};
  return {std::move(heat), std::move(touch), std::move(wood)};
}

std::vector<Table> light_tables(const Page& page) {
  const auto& lamp = page.evaluation.light.lamp;
  Table table{"The lamp at the oven", {"", ""}, {}};
  if (lamp && lamp->head) {
    table.rows.push_back({"Head", place(page, *lamp->head)});
    table.rows.push_back(
        {"Light on the pizza",
         lux(lamp->light.lux) + ", " + lux(lamp->light.least_lux) + " where it is darkest"});
    table.rows.push_back({"Part of the pizza with light", percent(lamp->light.lit_share)});
    table.rows.push_back({"Heat at the head, at least", heat_flux(lamp->heat_kw_m2)});
    table.rows.push_back({"Neck it needs", page.length(lamp->neck_needed_mm)});
  }
  if (lamp && lamp->search.shortest_neck_mm) {
    table.rows.push_back({"Shortest neck that works", page.length(*lamp->search.shortest_neck_mm)});
  }
  return {std::move(table)};
}

}  // namespace hs::report
