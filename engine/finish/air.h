#pragma once
// May this surface be painted in this air? Dew point, and every condition that paint asks of a day.

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/finding.h"

namespace hs::finish {

// Temperature at which this air's water falls out on a surface, degrees C. Magnus form with the
// constants of Alduchov and Eskridge, 17.625 and 243.04 C: Lawrence 2005, BAMS 86:225 (read).
// Within 0.35 C from -40 to 60 C, 1 to 100 % humidity; nullopt outside.
std::optional<double> dew_point_c(double air_c, double humidity_percent);

// The rule of thumb, T - (100 - RH)/5, above 50 % humidity (Lawrence 2005, read). From 0 to 30 C
// up to 1.5 C off dew_point_c, the most at 30 C and 51 % (computed). nullopt at 50 % and below. For
// a look without a table; no gate goes by it.
std::optional<double> dew_point_thumb_c(double air_c, double humidity_percent);

// What a paint's label asks for; the label in hand takes the place of these.
struct PaintLimits {
  double coldest_c = 10, hottest_c = 32;  // 50 to 90 F: consumer columnist and makers (read)
  double over_dew_k = 3;        // practice after ISO 8502-4 and 12944-7 (second hand); 5 F is 2.8
  double wettest_percent = 80;  // columnist (read); sags above 90 (paint institute, read)
  double dry_h = 24;            // without rain, and above coldest_c, after a coat: institute
                                // (read); one maker asks 8
};

// The air and surface while a coat goes on, and after it.
struct Weather {
  double air_c = 20;
  double humidity_percent = 50;
  std::optional<double> surface_c{};        // measured; absent: not known
  std::optional<double> hours_to_rain{};    // from now; absent: not known
  std::optional<double> coldest_after_c{};  // in the hours after; absent: not known
};

enum class Gate : std::uint8_t { Cold, Hot, Dew, Humid, Rain, Night };
struct GateCheck {
  Gate gate = Gate::Dew;
  Verdict verdict = Verdict::Unknown;
  std::optional<double> measured{}, limit{};  // degrees C, kelvin over dew, percent or hours
};
struct Day {
  std::optional<double> dew_point_c;
  std::vector<GateCheck> checks;  // one of each Gate, in its order
  // Fail where any check fails, else Unknown where any is not known.
  Verdict verdict = Verdict::Unknown;
};

// Is it a day to paint? At a limit is inside it. The surface counts for cold, heat and dew: metal
// and shade are colder than the air, so without a reading dew is not known, and cold and heat go by
// the air. Air outside dew_point_c's range: dew not known.
Day day_for_paint(const Weather& weather, const PaintLimits& limits);

// "the surface is 2.4 K above the dew point; 3 is the least" without its number.
std::string_view gate_words(Gate gate, Verdict verdict);

}  // namespace hs::finish
