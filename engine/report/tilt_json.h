#pragma once
// What a phone's tilt says of the plan, in words: measured, how sure, against the plan, and what a
// person may put into it.

#include <cstddef>
#include <optional>
#include <span>
#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/measure/tilt.h"
#include "engine/report/summary.h"

namespace hs::report {

enum class TiltUse : std::uint8_t { Sight, Fall, Eye };

struct Tilted {
  TiltUse use = TiltUse::Sight;
  std::size_t cook = 0;  // who looks, or whose eye it is
  // Sight and fall: one way and turned round. Eye: at the feet and at the eye.
  std::span<const measure::Gravity> first, second;
  std::optional<double> distance_mm;  // from the phone to the one whose eye it is
};

// {"problem": "", "said": [sentences], "offer": {"field", "value", "label"} or null}. Where
// `problem` is not empty nothing else is said. A value is text that any device reads alike. Nothing
// is offered that the plan already has better: an eye height only where its standard error is no
// larger than the estimate's, else as a body height.
std::string tilt_json(const config::Config& config, const evaluate::Evaluation& evaluation,
                      const Tilted& tilted, Units units);

}  // namespace hs::report
