// Paint by area, film and gap.
#include "engine/finish/paint.h"

#include <array>
#include <cmath>

#include "catch_amalgamated.hpp"

using namespace hs::finish;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("litres and films come to what tables say", "[finish][source]") {
  // 120 ft2, two coats, 375 ft2/gal: 0.64 gal (computed).
  CHECK_THAT(litres(120 * 0.09290304, 2, m2_per_l(375)) / kGallon_l, WithinAbs(0.64, 1e-9));
  // 1604 / coverage: 400 ft2/gal is 4.0 mil wet (computed).
  CHECK_THAT(wet_film_um(m2_per_l(400)) / 25.4, WithinAbs(1604.0 / 400, 0.001));
  CHECK_THAT(wet_film_um(m2_per_l(300)) / 25.4, WithinAbs(1604.0 / 300, 0.002));
  // A US gallon is 231 cubic inches.
  CHECK_THAT(kGallon_l, WithinAbs(231 * 2.54 * 2.54 * 2.54 / 1000, 1e-12));
  CHECK_THAT(dry_film_um(10, 0.4), WithinAbs(40, 1e-12));
}

TEST_CASE("areas go to their colours, and the primer goes on every face", "[finish]") {
  const std::array colours{Colour{"green", 2}, Colour{"unused", 2}, Colour{"cream", 3}};
  const std::array faces{
      Face{"door", "front", 0, 1000, 500, 0, 2},              // 1 m2
      Face{"door", "back", 2, 1000, 500, 100000, 1},          // 0.4 m2
      Face{"substrate", "under", 0, 2000, 1000, 0, 1, true},  // 2 m2, primer
      Face{"ghost", "front", 7, 100, 100, 0, 1},
      Face{"ghost", "back", 0, 100, 100, 20000, 1},
  };
  const PaintAnswer answer = paint_for(faces, colours, {});
  CHECK(answer.left_out == std::vector<std::size_t>{3, 4});
  CHECK_THAT(answer.list.primer.area_m2, WithinAbs(3.4, 1e-9));
  CHECK(answer.list.primer.faces == std::vector<std::size_t>{0, 1, 2});
  REQUIRE(answer.list.colours.size() == 2);
  const Amount& green = answer.list.colours[0];
  const Amount& cream = answer.list.colours[1];
  CHECK(green.name == "green");
  CHECK_THAT(green.area_m2, WithinAbs(1, 1e-9));
  CHECK_THAT(cream.area_m2, WithinAbs(0.4, 1e-9));
  // By hand: 1 m2, two coats; 300 ft2/gal is 7.363 m2/l; a tenth is lost.
  CHECK_THAT(green.most_l, WithinRel(2 / 7.363 * 1.1, 1e-4));
  CHECK_THAT(green.least_l / green.most_l, WithinAbs(0.75, 1e-9));
  CHECK(green.quarts == 1);
  CHECK(cream.coats == 3);
  // Cans hold the longer answer: 20 times the area, 5.98 l is 7 quarts or 6 litres.
  Coating coating;
  std::array large{faces[0]};
  large[0].count = 40;
  const Amount much = paint_for(large, colours, coating).list.colours.at(0);
  CHECK_THAT(much.most_l, WithinRel(5.976, 1e-3));
  CHECK(much.quarts == 7);
  CHECK(much.litres == 6);
  CHECK(paint_for({}, colours, coating).list.primer.quarts == 0);
}

TEST_CASE("paint narrows a gap by a film on both edges", "[finish]") {
  // One primer of 40, two coats of 35 micrometres: 0.11 mm an edge.
  const double film = film_mm(1, 40, 2, 35);
  CHECK_THAT(film, WithinAbs(0.11, 1e-12));
  CHECK_THAT(gap_after_paint_mm(3, film, film), WithinAbs(2.78, 1e-12));
  CHECK_THAT(gap_after_paint_mm(gap_to_cut_mm(kInsetLeast_mm, film, film), film, film),
             WithinAbs(kInsetLeast_mm, 1e-12));
}

TEST_CASE("the masking list names each kind once, with how many", "[finish]") {
  const std::array features{Feature::Outlet, Feature::HingeCup, Feature::HingeCup, Feature::Label};
  const auto list = masking_list(features);
  REQUIRE(list.size() == 3);
  CHECK(list[0].feature == Feature::HingeCup);
  CHECK(list[0].count == 2);
  CHECK(list[2].feature == Feature::Label);
  for (int i = 0; i <= static_cast<int>(Feature::Label); ++i) {
    CHECK_FALSE(masking(static_cast<Feature>(i)).why.empty());
  }
}
