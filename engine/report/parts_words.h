#pragma once
// A part in words: where its pieces are, what is done to its faces and edges.

#include <string>

#include "engine/evaluate/build.h"

namespace hs::report {

// "under the oven, bay 1; under the oven, bay 2": each place once, in the order of the letters.
std::string places_words(const parts::Part& part, const evaluate::Build& build);
// "cabinet colour, filled and rounded".
std::string surface_words(const frame::Surface& surface);

}  // namespace hs::report
