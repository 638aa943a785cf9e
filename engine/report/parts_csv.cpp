#include "engine/report/parts_csv.h"

#include <cmath>

#include "engine/base/csv.h"
#include "engine/report/parts_words.h"

namespace hs::report {
namespace {

constexpr double kInch_mm = 25.4;

// Rounded as it is cut: wood to 0.1 mm and the nearest 1/32 in. Metal as metal_length() tells it,
// because a sheet 1.2 mm thick is no 1/16 in.
void put_length(CsvWriter& out, const std::optional<double>& mm, bool metal) {
  out.number(mm, metal ? 3 : 1);
  if (!mm) return out.empty();
  const double inches = *mm / kInch_mm;
  if (metal) return out.number(inches, 4);
  out.number(std::round(inches * 32) / 32, 5);
}

}  // namespace

std::string parts_csv(const evaluate::Evaluation& evaluation) {
  const evaluate::Build& build = *evaluation.build;
  CsvWriter out;
  out.head({"number",
            "part",
            "quantity",
            "place",
            "material",
            "stock",
            "length_mm",
            "length_in",
            "width_mm",
            "width_in",
            "thickness_mm",
            "thickness_in",
            "first_cut_length_mm",
            "first_cut_length_in",
            "first_cut_width_mm",
            "first_cut_width_in",
            "grain",
            "front_face",
            "back_face",
            "left_edge",
            "right_edge",
            "lower_edge",
            "upper_edge",
            "holes",
            "cut_to_ground_least_mm",
            "cut_to_ground_least_in",
            "cut_to_ground_most_mm",
            "cut_to_ground_most_in",
            "cut_to_ground_sheet"});
  for (const parts::Part& part : build.parts.parts) {
    const bool metal = part.material == frame::Material::Metal;
    const auto length = [&](const std::optional<double>& mm) { put_length(out, mm, metal); };
    out.number(part.number, 0);
    out.text(frame::kind_name(part.kind));
    out.number(part.quantity(), 0);
    out.text(places_words(part, build));
    out.text(frame::material_name(part.material));
    out.text(part.stock);
    length(part.length_mm);
    length(part.width_mm);
    length(part.thick_mm);
    length(part.rough_length_mm);
    length(part.rough_width_mm);
    out.text(part.grain_along ? "along the length" : "none");
    for (const frame::Surface& surface : part.surfaces) out.text(surface_words(surface));
    int holes = 0;
    for (const parts::Cut& cut : part.cuts) holes += cut.count;
    out.number(holes, 0);
    const auto cut = ground_cut(part, evaluation);
    length(cut ? std::optional(cut->least_mm) : std::nullopt);
    length(cut ? std::optional(cut->most_mm) : std::nullopt);
    out.text(cut ? cut->sheets : std::string());
    out.end_row();
  }
  return out.take();
}

std::string hardware_csv(const evaluate::Build& build) {
  CsvWriter out;
  out.head({"what", "quantity", "unit", "counted"});
  for (const parts::Hardware& one : build.parts.hardware) {
    out.text(one.name);
    out.number(one.quantity, 1);
    out.text(one.unit);
    out.text(one.rule);
    out.end_row();
  }
  return out.take();
}

}  // namespace hs::report
