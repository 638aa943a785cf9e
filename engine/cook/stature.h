#pragma once
// Body height from a measured eye level: body_of() turned round.

#include <optional>

#include "engine/config/config.h"

namespace hs::cook {

// Answers: how tall, barefoot and to 1 mm, is someone of this build, age, shoes and seat whose eye
// is estimated where theirs was measured? For who knows their eye level and not their height; what
// is measured stays measured, and only what nobody measured follows from it (computed from the same
// survey: on one person off by about the survey's error of the eye, 7 to 10 mm). nullopt: no
// height of 800 to 2300 mm puts an eye there.
std::optional<double> stature_for_eye(const config::Cook& cook, double eye_mm);

}  // namespace hs::cook
