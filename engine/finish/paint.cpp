#include "engine/finish/paint.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hs::finish {
namespace {

constexpr std::size_t kFeatures = 11;

int cans(double need_l, double can_l) {
  if (!(need_l > 0) || need_l > 1e6) return 0;
  return static_cast<int>(std::ceil(need_l / can_l - 1e-9));
}

double area_m2(const Face& face) {
  const double one = face.long_mm * face.wide_mm - face.cut_out_mm2;
  return face.count * one * 1e-6;
}

void finish_amount(Amount& amount, double least_m2_l, double most_m2_l, double lost_share) {
  amount.least_l = litres(amount.area_m2, amount.coats, most_m2_l) * (1 + lost_share);
  amount.most_l = litres(amount.area_m2, amount.coats, least_m2_l) * (1 + lost_share);
  amount.quarts = cans(amount.most_l, kQuart_l);
  amount.litres = cans(amount.most_l, 1);
}

}  // namespace

double litres(double area_m2, int coats, double coverage_m2_l) {
  return area_m2 * coats / coverage_m2_l;
}

PaintAnswer paint_for(std::span<const Face> faces, std::span<const Colour> colours,
                      const Coating& coating) {
  PaintAnswer answer;
  std::vector<Amount> all(colours.size());
  for (std::size_t i = 0; i < colours.size(); ++i) {
    all[i].name = colours[i].name;
    all[i].coats = std::max(0, colours[i].coats);
  }
  Amount& primer = answer.list.primer;
  primer.name = "primer";
  primer.coats = std::max(0, coating.primer_coats);
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const Face& face = faces[i];
    const double area = area_m2(face);
    const bool coloured = !face.primer_only;
    const bool there = face.colour >= 0 && static_cast<std::size_t>(face.colour) < colours.size();
    if (!(area > 0) || !std::isfinite(area) || face.count <= 0 || (coloured && !there)) {
      answer.left_out.push_back(i);
      continue;
    }
    primer.area_m2 += area;
    primer.faces.push_back(i);
    if (!coloured) continue;
    Amount& amount = all[static_cast<std::size_t>(face.colour)];
    amount.area_m2 += area;
    amount.faces.push_back(i);
  }
  finish_amount(primer, coating.primer_least_m2_l, coating.primer_most_m2_l, coating.lost_share);
  for (Amount& amount : all) {
    if (amount.faces.empty()) continue;
    finish_amount(amount, coating.least_m2_l, coating.most_m2_l, coating.lost_share);
    answer.list.colours.push_back(std::move(amount));
  }
  return answer;
}

double wet_film_um(double coverage_m2_l) { return 1000 / coverage_m2_l; }
double dry_film_um(double coverage_m2_l, double solids_share) {
  return wet_film_um(coverage_m2_l) * solids_share;
}

double film_mm(int primer_coats, double primer_dry_um, int coats, double dry_um) {
  return (primer_coats * primer_dry_um + coats * dry_um) / 1000;
}
double gap_after_paint_mm(double cut_gap_mm, double film_one_mm, double film_other_mm) {
  return cut_gap_mm - film_one_mm - film_other_mm;
}
double gap_to_cut_mm(double wanted_gap_mm, double film_one_mm, double film_other_mm) {
  return wanted_gap_mm + film_one_mm + film_other_mm;
}

Masked masking(Feature feature) {
  constexpr std::array<Masked, kFeatures> kWords{{
      {"hinge cups", "a painted cup is too tight for its hinge"},
      {"hinges", "paint on a pin stops it; better: off, in a bag with the door's number"},
      {"drawer slides", "paint on a slide is scraped off into its bearings; better: off"},
      {"edges of the metal top", "paint does not hold on polish, and shows"},
      {"outlets and lamp boxes", "paint in a contact is a fault that nobody sees"},
      {"wire holes", "their edge is sealed with primer; the wire itself is never painted"},
      {"vent mesh", "paint closes it, and the gas bay must breathe"},
      {"gaskets", "paint sticks the door to them"},
      {"parts with a face to be glued",
       "where a side, back, block front or sheet meets the next part, a band as wide as that one: "
       "an adhesive holds the paint, and the paint lets go"},
      {"threads and levelling feet", "paint locks them"},
      {"labels and rating plates", "whoever serves it must read them"},
  }};
  return kWords[static_cast<std::size_t>(feature)];
}

std::vector<MaskLine> masking_list(std::span<const Feature> features) {
  std::array<int, kFeatures> counts{};
  for (const Feature feature : features) ++counts[static_cast<std::size_t>(feature)];
  std::vector<MaskLine> list;
  for (std::size_t i = 0; i < kFeatures; ++i) {
    if (counts[i] == 0) continue;
    const auto feature = static_cast<Feature>(i);
    list.push_back({feature, masking(feature), counts[i]});
  }
  return list;
}

}  // namespace hs::finish
