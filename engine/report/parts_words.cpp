#include "engine/report/parts_words.h"

#include <set>
#include <string_view>

#include "engine/report/metal_sheets.h"

namespace hs::report {

std::string part_name(const parts::Part& part) {
  const int count = part.quantity();
  return std::to_string(part.number) + " " + std::string(frame::kind_name(part.kind)) +
         (count > 1 ? " (" + std::to_string(count) + " alike)" : "");
}

std::string part_size(const parts::Part& part, Units units) {
  const auto length = [&](double mm) {
    return part.material == frame::Material::Metal ? metal_length(mm, units)
                                                   : shop_length(mm, units, true);
  };
  return length(part.length_mm) + " x " + length(part.width_mm) + " x " + length(part.thick_mm) +
         ", " + std::string(frame::material_name(part.material));
}

std::string places_words(const parts::Part& part, const evaluate::Build& build) {
  std::set<std::string> places;
  for (const std::size_t piece : part.pieces) {
    places.insert(parts::place_text(build.frame.pieces[piece]));
  }
  // "under the oven, bay 1", "under the oven, bay 2": bays of one run are told together.
  constexpr std::string_view kBay = ", bay ";
  std::string where, run;
  for (const std::string& place : places) {
    const std::size_t at = place.rfind(kBay);
    const std::string of = at == std::string::npos ? std::string() : place.substr(0, at);
    if (!of.empty() && of == run) {
      where += ", " + place.substr(at + kBay.size());
    } else {
      where += (where.empty() ? "" : "; ") + place;
    }
    run = of;
  }
  return where;
}

std::string surface_words(const frame::Surface& surface) {
  std::string words(frame::coat_name(surface.coat));
  const std::string_view edge = frame::edge_name(surface.edge);
  if (!edge.empty() && edge != words) words += ", " + std::string(edge);
  return words;
}

}  // namespace hs::report
