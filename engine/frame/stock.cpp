#include "engine/frame/stock.h"

#include <algorithm>
#include <cmath>

namespace hs::frame {

std::optional<double> dressed_thickness_mm(int nominal_quarters) {
  switch (nominal_quarters) {
    case 4:
      return kOneBy_mm;
    case 5:
      return kInch_mm;
    case 8:
      return kTwoBy_mm;
    default:
      return {};
  }
}

std::optional<double> dressed_width_mm(int nominal_in) {
  if (nominal_in < 2 || nominal_in > 12) return {};
  return (nominal_in - (nominal_in < 8 ? 0.5 : 0.75)) * kInch_mm;
}

std::optional<int> board_at_least(double width_mm) {
  for (const int nominal : {2, 3, 4, 6, 8, 10, 12}) {
    if (*dressed_width_mm(nominal) >= width_mm - 0.05) return nominal;
  }
  return {};
}

int supports_under(double board_mm) {
  return 1 + std::max(1, static_cast<int>(std::ceil(board_mm / kSupports_mm - 1e-6)));
}

}  // namespace hs::frame
