#include "engine/weather/rain.h"

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/weather/shelter.h"
#include "tests/support/random.h"

namespace {

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using namespace hs::weather;

constexpr double kExact = 1e-12;    // plain arithmetic on doubles
constexpr double kPrinted = 0.005;  // half of the last digit that the reference prints

}  // namespace

TEST_CASE("drops fall at the speeds of Gunn and Kinzer's table", "[weather][source]") {
  // Gunn and Kinzer 1949, table 2 (two transcriptions agree); safety reference, check value 21.
  CHECK(fall_speed_m_s(1) == 4.03);
  CHECK(fall_speed_m_s(2) == 6.49);
  CHECK(fall_speed_m_s(3) == 8.06);
  CHECK(fall_speed_m_s(5) == 9.09);
  CHECK_THAT(*fall_speed_m_s(2.5), WithinAbs(7.42, kPrinted));  // between 2.4 and 2.6
  CHECK(fall_speed_m_s(0.5) == 2.06);
  CHECK(fall_speed_m_s(5.8) == 9.17);
  CHECK_FALSE(fall_speed_m_s(0.49));
  CHECK_FALSE(fall_speed_m_s(5.81));
  CHECK_FALSE(fall_speed_m_s(std::nan("")));
}

TEST_CASE("the table agrees with the formula fitted to it", "[weather][source]") {
  // Atlas and others 1973, v = 9.65 - 10.3 exp(-0.6 D), second hand. Their fit lies 1.6 % from the
  // table where it is worst, at 3.6 mm; 2 % leaves that as it is.
  for (double drop = 1; drop <= 5; drop += 0.05) {
    const double fit = 9.65 - 10.3 * std::exp(-0.6 * drop);
    CAPTURE(drop);
    CHECK_THAT(*fall_speed_m_s(drop), WithinRel(fit, 0.02));
  }
}

TEST_CASE("the two laws of drop size agree in moderate rain and part in a downpour",
          "[weather][source]") {
  // Best 1950 and Laws and Parsons 1943, check value 22; 0.5 % as given there.
  CHECK_THAT(median_drop_best_mm(10), WithinRel(1.885, 0.005));
  CHECK_THAT(median_drop_laws_parsons_mm(10), WithinRel(1.885, 0.005));
  CHECK_THAT(median_drop_best_mm(100), WithinRel(3.215, 0.005));
  CHECK_THAT(median_drop_laws_parsons_mm(100), WithinRel(2.867, 0.005));
  // The drop that findings are judged by is that of moderate rain: field rule, 2 mm at 13 mm/h.
  CHECK_THAT(median_drop_best_mm(13), WithinRel(kUsualDrop_mm, 0.05));
}

TEST_CASE("rain of 2 mm drops in a wind of 5 m/s slants by 37.6 degrees", "[weather][source]") {
  // tan = u / v_t; check value 23.
  CHECK_THAT(slant_deg(5, 2), WithinAbs(37.6, 0.05));
  CHECK_THAT(reach_mm(2000, 5, 2), WithinAbs(1540, 5));
  // A newspaper's 12 mph for 45 degrees at 2 mm is low: 6.49 m/s is 14.5 mph. Its 20 mph at 5 mm is
  // 9.09 m/s (20.3 mph), right. Disputed, as noted in the reference.
  CHECK_THAT(slant_deg(6.49, 2), WithinAbs(45, 1e-9));
  CHECK_THAT(6.49 / 0.44704, WithinAbs(14.5, 0.05));
  CHECK(slant_deg(12 * 0.44704, 2) < 40);
  CHECK_THAT(slant_deg(20 * 0.44704, 5), WithinAbs(45, 0.6));
}

TEST_CASE("still air lets rain fall straight and drizzle slants most", "[weather][law]") {
  CHECK(slant_deg(0, 2) == 0);
  CHECK(reach_mm(2000, 0, 2) == 0);
  CHECK(reach_mm(-100, 9, 2) == 0);
  double last = 90;
  for (const double drop : {0.5, 1.0, 2.0, 3.0, 5.0}) {
    CHECK(slant_deg(5, drop) < last);
    last = slant_deg(5, drop);
  }
  // Outside the table its ends hold.
  CHECK(slant_deg(5, 0.1) == slant_deg(5, 0.5));
  CHECK(slant_deg(5, 9) == slant_deg(5, 5.8));
}

TEST_CASE("an overhang and a reach are two views of one slant", "[weather][law]") {
  hs::test::Random random(4711);
  for (int i = 0; i < 500; ++i) {
    const double out = 1 + random.below(1500), wind = 0.1 + 0.1 * random.below(200);
    const double drop = 0.5 + 0.1 * random.below(54);
    const double dry = *dry_face_mm(out, wind, drop);
    CHECK_THAT(reach_mm(dry, wind, drop), WithinRel(out, 1e-9));
    CHECK_THAT(*dry_up_to_m_s(out, dry, drop), WithinRel(wind, 1e-9));
    CHECK_THAT(std::tan(slant_deg(wind, drop) * 3.14159265358979323846 / 180) * dry,
               WithinRel(out, 1e-9));
  }
  CHECK_FALSE(dry_face_mm(25, 0, 2));
  CHECK_FALSE(dry_up_to_m_s(25, 0, 2));
  CHECK(dry_up_to_m_s(-25, 100, 2) == 0);
}

TEST_CASE("driving rain follows Lacy's factor and the angle of the wind", "[weather][source]") {
  // ISO 15927-3 and WUFI, second hand: 0.222 s/m in the open. 5 m/s and 10 mm/h: 11.1 mm/h.
  CHECK_THAT(driving_rain_mm_h(5, 10, 0), WithinAbs(11.1, kExact));
  CHECK_THAT(driving_rain_mm_h(5, 10, 60), WithinAbs(5.55, 1e-9));
  CHECK_THAT(driving_rain_mm_h(5, 10, 0, 0.07), WithinAbs(3.5, kExact));
  CHECK(driving_rain_mm_h(5, 10, 120) == 0);
}

TEST_CASE("without a cover the counter is wet and its overhang keeps a hand's breadth of face dry",
          "[weather]") {
  const Front front{.counter_mm = 900, .depth_mm = 600, .overhang_mm = 25, .face_low_mm = 100};
  const Wet wet = wet_front(front, {}, 5, 2);
  CHECK(wet.top_mm == 600);
  CHECK(wet.face_mm == 800);
  CHECK_THAT(wet.face_dry_mm, WithinAbs(25 * 6.49 / 5, kPrinted));
  CHECK_FALSE(wet.cover_helps);
  CHECK(wet_front(front, {}, 0, 2).face_dry_mm == 800);
}

TEST_CASE("an edge one metre out keeps a counter dry up to the wind that its height allows",
          "[weather][law]") {
  const Front front{.counter_mm = 900, .depth_mm = 600, .overhang_mm = 25, .face_low_mm = 100};
  const Edge edge{.height_mm = 2400, .out_mm = 1000};
  const double limit = *dry_up_to_m_s(edge.out_mm, edge.height_mm - front.counter_mm, 2);
  CHECK_THAT(limit, WithinAbs(6.49 * 1000 / 1500, kExact));
  CHECK(wet_front(front, edge, limit - 0.01, 2).top_mm == 0);
  CHECK(wet_front(front, edge, limit + 0.01, 2).top_mm > 0);
  // Down the face the same edge reaches as far as the slant through it says.
  const Wet wet = wet_front(front, edge, 3.5, 2);
  CHECK(wet.cover_helps);
  CHECK_THAT(wet.face_dry_mm, WithinAbs(1025 * 6.49 / 3.5 - 1500, kPrinted));
  CHECK(wet_front(front, edge, 0, 2).face_dry_mm == wet.face_mm);
}

TEST_CASE("a cover whose edge is behind the counter's wets the counter in still air", "[weather]") {
  const Front front{.counter_mm = 900, .depth_mm = 600, .overhang_mm = 25, .face_low_mm = 100};
  const Edge edge{.height_mm = 2400, .out_mm = -200};
  CHECK(wet_front(front, edge, 0, 2).top_mm == 200);
  CHECK_FALSE(wet_front(front, edge, 5, 2).cover_helps);
  // Never more than there is.
  CHECK(wet_front(front, Edge{.height_mm = 2400, .out_mm = -900}, 5, 2).top_mm == 600);
}

TEST_CASE("rays of rain agree with what is called wet", "[weather][brute]") {
  // One ray to each point: does the line up the slant pass the counter's edge and the cover's edge?
  hs::test::Random random(99);
  for (int i = 0; i < 200; ++i) {
    Front front;
    front.counter_mm = 600 + random.below(600);
    front.depth_mm = 300 + random.below(700);
    front.overhang_mm = random.below(200);
    Edge edge{1900.0 + random.below(2000), -500.0 + random.below(2500)};
    const double wind = 0.1 * random.below(150);
    const double slope = wind / *fall_speed_m_s(2);  // inwards for each mm down
    const Wet wet = wet_front(front, edge, wind, 2);
    for (int at = 0; at < 40; ++at) {
      const double in = front.depth_mm * (at + 0.5) / 40;
      // Where the ray to this spot of the top crosses the cover's level, outward of the front edge.
      const double out = slope * (edge.height_mm - front.counter_mm) - in;
      if (std::abs(out - edge.out_mm) > 0.01) CHECK((in < wet.top_mm) == (out > edge.out_mm));
      const double down = wet.face_mm * (at + 0.5) / 40;
      const double at_counter = slope * down - front.overhang_mm;
      const double z = front.counter_mm - down;
      const double at_cover = slope * (edge.height_mm - z) - front.overhang_mm;
      const bool reached = at_counter > 0 && at_cover > edge.out_mm;
      const bool near = std::abs(at_counter) < 0.01 || std::abs(at_cover - edge.out_mm) < 0.01;
      if (!near) CHECK((down > wet.face_dry_mm) == reached);
    }
  }
}

TEST_CASE("falls of ground come to what a level line shows", "[weather][source]") {
  // Check value 25: 1/4 in per ft is 2.083 %, and 2 % over 10 ft is 2.4 in (IRC R401.3).
  CHECK_THAT(100 * 0.25 / 12, WithinAbs(2.083, 0.0005));
  CHECK_THAT(fall_share(2.4 * 25.4), WithinAbs(kHardFall, 1e-12));
  // Bare ground, 6 in in the first 10 ft.
  CHECK_THAT(fall_share(6 * 25.4), WithinAbs(kBareFall, 1e-12));
  // 1/8 in per ft, as some pages say, is short of it.
  CHECK(0.125 / 12 < kHardFall);
}
