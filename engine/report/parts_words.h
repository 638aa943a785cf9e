#pragma once
// A part in words: where its pieces are, what is done to its faces and edges.

#include <string>

#include "engine/evaluate/build.h"
#include "engine/report/phrases.h"

namespace hs::report {

// "12  shelf, 2", and "28 1/8 x 22 5/8 x 23/32 in, exterior plywood".
std::string part_name(const parts::Part& part);
std::string part_size(const parts::Part& part, Units units);
// "under the oven, bay 1, 2; under the dough counter": each place once, in the order of the
// letters.
std::string places_words(const parts::Part& part, const evaluate::Build& build);
// "cabinet colour, filled and rounded".
std::string surface_words(const frame::Surface& surface);

}  // namespace hs::report
