#include "engine/finish/air.h"

#include <cmath>
#include <cstddef>

namespace hs::finish {
namespace {

constexpr double kMagnusA = 17.625, kMagnusB_c = 243.04;
constexpr double kTiny = 1e-9;

GateCheck least(Gate gate, std::optional<double> measured, double limit) {
  GateCheck check{gate, Verdict::Unknown, measured, limit};
  if (measured && std::isfinite(*measured)) {
    check.verdict = *measured >= limit - kTiny ? Verdict::Ok : Verdict::Fail;
  }
  return check;
}
GateCheck most(Gate gate, std::optional<double> measured, double limit) {
  GateCheck check{gate, Verdict::Unknown, measured, limit};
  if (measured && std::isfinite(*measured)) {
    check.verdict = *measured <= limit + kTiny ? Verdict::Ok : Verdict::Fail;
  }
  return check;
}

}  // namespace

std::optional<double> dew_point_c(double air_c, double humidity_percent) {
  if (!(air_c >= -40 && air_c <= 60)) return {};
  if (!(humidity_percent >= 1 && humidity_percent <= 100)) return {};
  const double g = std::log(humidity_percent / 100) + kMagnusA * air_c / (kMagnusB_c + air_c);
  return kMagnusB_c * g / (kMagnusA - g);
}

std::optional<double> dew_point_thumb_c(double air_c, double humidity_percent) {
  if (!(humidity_percent > 50 && humidity_percent <= 100)) return {};
  return air_c - (100 - humidity_percent) / 5;
}

Day day_for_paint(const Weather& weather, const PaintLimits& limits) {
  Day day;
  day.dew_point_c = dew_point_c(weather.air_c, weather.humidity_percent);
  std::optional<double> over_dew;
  if (day.dew_point_c && weather.surface_c) over_dew = *weather.surface_c - *day.dew_point_c;
  const double surface_c = weather.surface_c.value_or(weather.air_c);
  day.checks = {least(Gate::Cold, surface_c, limits.coldest_c),
                most(Gate::Hot, surface_c, limits.hottest_c),
                least(Gate::Dew, over_dew, limits.over_dew_k),
                most(Gate::Humid, weather.humidity_percent, limits.wettest_percent),
                least(Gate::Rain, weather.hours_to_rain, limits.dry_h),
                least(Gate::Night, weather.coldest_after_c, limits.coldest_c)};
  day.verdict = Verdict::Ok;
  for (const GateCheck& check : day.checks) {
    if (badness(check.verdict) > badness(day.verdict)) day.verdict = check.verdict;
  }
  return day;
}

std::string_view gate_words(Gate gate, Verdict verdict) {
  constexpr std::string_view kOk[] = {"the surface is warm enough",
                                      "the surface is not too hot",
                                      "the surface stays clear of the dew point",
                                      "the air is dry enough",
                                      "it stays dry long enough",
                                      "the night stays warm enough"};
  constexpr std::string_view kFail[] = {
      "the surface is too cold: paint does not close",
      "the surface is too hot: paint skins over",
      "the surface is too near the dew point: water lies on it that nobody sees",
      "the air is too damp: paint sags and stays soft",
      "rain comes before the coat stands it",
      "the night gets colder than the coat stands"};
  constexpr std::string_view kUnknown[] = {
      "nobody has measured how warm the surface is",
      "nobody has measured how hot the surface is",
      "nobody has measured the surface: metal and shade are colder than the air",
      "nobody has measured the air's humidity",
      "nobody has said when rain comes",
      "nobody has said how cold the night gets"};
  const auto i = static_cast<std::size_t>(gate);
  if (verdict == Verdict::Unknown) return kUnknown[i];
  return verdict == Verdict::Ok ? kOk[i] : kFail[i];
}

}  // namespace hs::finish
