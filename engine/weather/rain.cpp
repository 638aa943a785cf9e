#include "engine/weather/rain.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

#include "engine/base/quantity.h"

namespace hs::weather {
namespace {

struct Row {
  double drop_mm, speed_m_s;
};

// Gunn and Kinzer 1949, table 2, still air at sea level.
constexpr Row kFall[] = {{0.5, 2.06}, {0.6, 2.47}, {0.7, 2.87}, {0.8, 3.27}, {0.9, 3.67},
                         {1.0, 4.03}, {1.2, 4.64}, {1.4, 5.17}, {1.6, 5.65}, {1.8, 6.09},
                         {2.0, 6.49}, {2.2, 6.90}, {2.4, 7.27}, {2.6, 7.57}, {2.8, 7.82},
                         {3.0, 8.06}, {3.2, 8.26}, {3.4, 8.44}, {3.6, 8.60}, {3.8, 8.72},
                         {4.0, 8.83}, {4.2, 8.92}, {4.4, 8.98}, {4.6, 9.03}, {4.8, 9.07},
                         {5.0, 9.09}, {5.2, 9.12}, {5.4, 9.14}, {5.6, 9.16}, {5.8, 9.17}};

double speed_at(double drop_mm) {
  const double drop = std::clamp(drop_mm, kSmallestDrop_mm, kLargestDrop_mm);
  std::size_t i = 1;
  while (i + 1 < std::size(kFall) && kFall[i].drop_mm < drop) ++i;
  const Row& low = kFall[i - 1];
  const Row& high = kFall[i];
  const double part = (drop - low.drop_mm) / (high.drop_mm - low.drop_mm);
  return low.speed_m_s + part * (high.speed_m_s - low.speed_m_s);
}

}  // namespace

std::optional<double> fall_speed_m_s(double drop_mm) {
  if (!(drop_mm >= kSmallestDrop_mm) || drop_mm > kLargestDrop_mm) return {};
  return speed_at(drop_mm);
}

double median_drop_best_mm(double rain_mm_h) { return 1.105 * std::pow(rain_mm_h, 0.232); }
double median_drop_laws_parsons_mm(double rain_mm_h) { return 1.24 * std::pow(rain_mm_h, 0.182); }

double slant_deg(double wind_m_s, double drop_mm) {
  return rad_to_deg(std::atan2(wind_m_s, speed_at(drop_mm)));
}

double reach_mm(double height_mm, double wind_m_s, double drop_mm) {
  return std::max(0.0, height_mm) * wind_m_s / speed_at(drop_mm);
}

std::optional<double> dry_face_mm(double overhang_mm, double wind_m_s, double drop_mm) {
  if (wind_m_s <= 0) return {};
  return std::max(0.0, overhang_mm) * speed_at(drop_mm) / wind_m_s;
}

std::optional<double> dry_up_to_m_s(double out_mm, double height_mm, double drop_mm) {
  if (height_mm <= 0) return {};
  return std::max(0.0, out_mm) * speed_at(drop_mm) / height_mm;
}

double driving_rain_mm_h(double wind_m_s, double rain_mm_h, double angle_deg, double factor_s_m) {
  const double onto = std::max(0.0, std::cos(deg_to_rad(angle_deg)));
  return factor_s_m * wind_m_s * rain_mm_h * onto;
}

}  // namespace hs::weather
