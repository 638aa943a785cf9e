// Dew point against the published form and examples, and the gate for a day.
#include "engine/finish/air.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"

using namespace hs;
using namespace hs::finish;
using Catch::Matchers::WithinAbs;

namespace {

Weather fine() { return {20, 50, 20, 48, 12}; }

Verdict of(const Day& day, Gate gate) { return day.checks[static_cast<std::size_t>(gate)].verdict; }

}  // namespace

TEST_CASE("dew points are those of the Magnus form", "[finish][source]") {
  // Lawrence 2005, constants 17.625 and 243.04 (computed from them): 13.86, 12.00, 7.59 C.
  CHECK_THAT(dew_point_c(25, 50).value_or(0), WithinAbs(13.86, 0.01));
  CHECK_THAT(dew_point_c(20, 60).value_or(0), WithinAbs(12.00, 0.01));
  CHECK_THAT(dew_point_c(10, 85).value_or(0), WithinAbs(7.59, 0.01));
  // A worked question with other constants, 17.27 and 237.7 (assignmentexpert.com, read): 22 C, 78
  // % gives 17.98 C; inside the form's own 0.35 C.
  CHECK_THAT(dew_point_c(22, 78).value_or(0), WithinAbs(17.98, 0.35));
  CHECK_THAT(dew_point_c(22, 100).value_or(0), WithinAbs(22, 1e-9));
  CHECK_FALSE(dew_point_c(61, 50).has_value());
  CHECK_FALSE(dew_point_c(20, 0).has_value());
  CHECK_FALSE(dew_point_c(20, 101).has_value());
  CHECK_FALSE(dew_point_c(std::nan(""), 50).has_value());
}

TEST_CASE("the rule of thumb is up to a degree and a half off, as it says", "[finish][source]") {
  // Lawrence 2005: T - (100 - RH)/5 for more than 50 % humidity.
  CHECK_THAT(dew_point_thumb_c(20, 60).value_or(0), WithinAbs(12, 1e-12));
  double worst = 0;
  for (int t = 0; t <= 30; t += 5) {
    for (int rh = 51; rh <= 100; ++rh) {
      const double exact = dew_point_c(t, rh).value_or(99);
      worst = std::max(worst, std::abs(dew_point_thumb_c(t, rh).value_or(0) - exact));
    }
  }
  CHECK(worst < 1.5);
  CHECK(worst > 1.4);
  CHECK_FALSE(dew_point_thumb_c(20, 50).has_value());
}

TEST_CASE("a surface near its dew point is refused", "[finish][source]") {
  // Surface and air 10 C, 85 %: margin 2.41 C; refused by 3 C and by 5 F (2.78 C).
  Weather damp = fine();
  damp.air_c = 10;
  damp.humidity_percent = 85;
  damp.surface_c = 10;
  const Day day = day_for_paint(damp, {});
  CHECK(of(day, Gate::Dew) == Verdict::Fail);
  CHECK_THAT(day.checks[2].measured.value_or(0), WithinAbs(2.41, 0.005));
  PaintLimits five_f;
  five_f.over_dew_k = 5 / 1.8;
  CHECK(of(day_for_paint(damp, five_f), Gate::Dew) == Verdict::Fail);
  // At the limit is inside, just under is not.
  Weather at = fine();
  at.surface_c = *dew_point_c(20, 50) + 3;
  CHECK(of(day_for_paint(at, {}), Gate::Dew) == Verdict::Ok);
  at.surface_c = *at.surface_c - 0.01;
  CHECK(of(day_for_paint(at, {}), Gate::Dew) == Verdict::Fail);
  // Without a reading of the surface dew is not known.
  at.surface_c = {};
  CHECK(of(day_for_paint(at, {}), Gate::Dew) == Verdict::Unknown);
  CHECK(day_for_paint(at, {}).verdict == Verdict::Unknown);
}

TEST_CASE("each condition of a day has its limit", "[finish][source]") {
  // 50 to 90 F, 80 % (columnist, makers); 24 h dry and warm after the coat (paint institute).
  CHECK(day_for_paint(fine(), {}).verdict == Verdict::Ok);
  const auto with = [](auto change) {
    Weather one = fine();
    change(one);
    return day_for_paint(one, {});
  };
  CHECK(with([](Weather& w) {
          w.surface_c = 10;
          w.humidity_percent = 30;
        }).verdict == Verdict::Ok);
  CHECK(of(with([](Weather& w) { w.surface_c = 9.9; }), Gate::Cold) == Verdict::Fail);
  CHECK(of(with([](Weather& w) { w.surface_c = 32; }), Gate::Hot) == Verdict::Ok);
  CHECK(of(with([](Weather& w) { w.surface_c = 32.1; }), Gate::Hot) == Verdict::Fail);
  CHECK(of(with([](Weather& w) { w.humidity_percent = 80; }), Gate::Humid) == Verdict::Ok);
  CHECK(of(with([](Weather& w) { w.humidity_percent = 80.1; }), Gate::Humid) == Verdict::Fail);
  CHECK(of(with([](Weather& w) { w.hours_to_rain = 24; }), Gate::Rain) == Verdict::Ok);
  CHECK(of(with([](Weather& w) { w.hours_to_rain = 23; }), Gate::Rain) == Verdict::Fail);
  CHECK(of(with([](Weather& w) { w.coldest_after_c = 9; }), Gate::Night) == Verdict::Fail);
  CHECK(with([](Weather& w) { w.hours_to_rain = {}; }).verdict == Verdict::Unknown);
  CHECK(with([](Weather& w) { w.humidity_percent = std::nan(""); }).verdict == Verdict::Unknown);
  for (int gate = 0; gate < 6; ++gate) {
    for (const Verdict verdict : {Verdict::Ok, Verdict::Fail, Verdict::Unknown}) {
      CHECK_FALSE(gate_words(static_cast<Gate>(gate), verdict).empty());
    }
  }
}
