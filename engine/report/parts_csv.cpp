#include "engine/report/parts_csv.h"

#include "engine/base/csv.h"
#include "engine/report/parts_words.h"

namespace hs::report {
namespace {

constexpr double kInch_mm = 25.4;

// Rounded as it is cut: 0.1 mm, and the nearest 1/32 in.
void put_length(CsvWriter& out, const std::optional<double>& mm) {
  out.number(mm, 1);
  out.number(mm ? std::optional(
                      static_cast<double>(static_cast<long long>(*mm / kInch_mm * 32 + 0.5)) / 32)
                : std::nullopt,
             5);
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
    out.number(part.number, 0);
    out.text(frame::kind_name(part.kind));
    out.number(part.quantity(), 0);
    out.text(places_words(part, build));
    out.text(frame::material_name(part.material));
    out.text(part.stock);
    put_length(out, part.length_mm);
    put_length(out, part.width_mm);
    put_length(out, part.thick_mm);
    put_length(out, part.rough_length_mm);
    put_length(out, part.rough_width_mm);
    out.text(part.grain_along ? "along the length" : "none");
    for (const frame::Surface& surface : part.surfaces) out.text(surface_words(surface));
    int holes = 0;
    for (const parts::Cut& cut : part.cuts) holes += cut.count;
    out.number(holes, 0);
    const auto cut = ground_cut(part, evaluation);
    put_length(out, cut ? std::optional(cut->least_mm) : std::nullopt);
    put_length(out, cut ? std::optional(cut->most_mm) : std::nullopt);
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
