#include "engine/heat/tolerance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "engine/base/quantity.h"

namespace hs::heat {
namespace {

constexpr double kSeverePain = 1.33, kPower = 1.33;  // SFPE eq. 63.43; r runs from 1.33 to 1.67
constexpr double kLongest_s = 3600;

// Where the table and memory differ the lower of the two stands: wood for 1 s is 110 in the table
// and 99 from memory.
constexpr std::array<double, 6> kContact_s = {1, 5, 10, 60, 600, 8 * 3600.0};
constexpr double kTouch_c[5][6] = {
    {62, 56, 55, 51, 48, 43},  // bare metal; 10 s from memory
    {80, 72, 66, 56, 48, 43},  // stone, ceramic, glass: memory; 5 s between its neighbours
    {85, 76, 70, 60, 48, 43},  // plastic: memory; 5 s between its neighbours
    {99, 92, 89, 60, 48, 43},  // wood; 1 s and 10 s from memory
    {85, 74, 72, 60, 48, 43},  // dense coated textile; 10 s between its neighbours
};

}  // namespace

Band band_of(double flux_kw_m2) {
  const double told = round_to(flux_kw_m2, 100);
  if (told <= kLinger_kw_m2) return Band::Linger;
  return told <= kBrief_kw_m2 ? Band::Brief : Band::Hot;
}

std::optional<double> tolerance_s(double flux_kw_m2) {
  if (!(flux_kw_m2 > 0)) return {};
  const double seconds = 60 * kSeverePain / std::pow(flux_kw_m2, kPower);
  if (seconds > kLongest_s) return {};
  return seconds;
}

double through_layers(int layers) { return 1.0 / (std::max(layers, 0) + 1); }

double touch_limit_c(Material material, double contact_s) {
  const double(&row)[6] = kTouch_c[static_cast<std::size_t>(material)];
  const double at_s = std::clamp(contact_s, kContact_s.front(), kContact_s.back());
  std::size_t i = 0;
  while (i + 2 < kContact_s.size() && kContact_s[i + 1] < at_s) ++i;
  const double part = std::log(at_s / kContact_s[i]) / std::log(kContact_s[i + 1] / kContact_s[i]);
  // Exact at the published times, whatever the logarithms round to.
  if (at_s == kContact_s[i + 1]) return row[i + 1];
  return row[i] + (row[i + 1] - row[i]) * part;
}

}  // namespace hs::heat
