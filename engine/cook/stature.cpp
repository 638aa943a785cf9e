#include "engine/cook/stature.h"

#include "engine/config/fields.h"
#include "engine/cook/body.h"

namespace hs::cook {

std::optional<double> stature_for_eye(const config::Cook& cook, double eye_mm) {
  const config::Field* field = config::find_field("cooks[].stature_mm");
  config::Cook tried = cook;
  tried.eye_height_mm.reset();
  const auto eye_at = [&tried](int stature_mm) {
    tried.stature_mm = stature_mm;
    return body_of(tried).eye.value_mm;
  };
  // The lowest whole millimetre whose eye is not below: the eye rises with the body's height.
  int low = static_cast<int>(field->min), high = static_cast<int>(field->max);
  if (!(eye_mm >= eye_at(low) && eye_mm <= eye_at(high))) return std::nullopt;
  while (low < high) {
    const int middle = low + (high - low) / 2;
    if (eye_at(middle) < eye_mm) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

}  // namespace hs::cook
