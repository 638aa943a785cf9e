#pragma once
// The lamp at the oven in a few words, for a picture in which its head is moved.

#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

struct LampWord {
  Verdict verdict = Verdict::Ok;
  std::string_view word;  // "mouth": whether the light gets through it
};
// Each thing that is asked of the head's place, always in the same order; the distance from the
// pizza only where it is too small.
std::vector<LampWord> lamp_words(const evaluate::LampChecks& checks);

// "612 lx on the pizza; 540 lx is asked".
std::string lamp_light(const evaluate::Lamp& lamp);
// "neck 812 mm of 900 mm; 640 mm is the shortest that works".
std::string lamp_neck(const config::Config& config, const evaluate::Lamp& lamp, Units units);

// What to say of the lamp first: its worst finding as a sentence. Empty where it has none.
struct LampSaying {
  std::string text;
  std::string_view rule;
  Verdict verdict = Verdict::Ok;
};
LampSaying lamp_saying(const config::Config& config, const evaluate::Evaluation& evaluation,
                       Units units);

}  // namespace hs::report
