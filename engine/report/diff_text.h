#pragma once
// What is different between two stations, from the values that their packets print: what was given,
// then what changed on which sheet.

#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/summary.h"

namespace hs::report {

// One side: a station and what follows from it, its packet's stage included where both have one.
struct DiffSide {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
};

// A line for each: "Given: Eye height of Idris: 66 in, was 65 in", then "Cover: dough counter,
// height: ...", grouped by sheet; what each cook now sees; a height that stays and what holds it
// there. "Nothing is different." where that is so.
std::string diff_text(const DiffSide& before, const DiffSide& after, Units units);

}  // namespace hs::report
