#pragma once
// A part in words: where its pieces are, what is done to its faces and edges.

#include <optional>
#include <string>

#include "engine/evaluate/build.h"
#include "engine/report/phrases.h"

namespace hs::report {

// "12  shelf, 2", and "28 1/8 x 22 5/8 x 23/32 in, exterior plywood"; a board that is cut to the
// ground has from its least to its most width, and the drawing of its cut.
std::string part_name(const parts::Part& part);
std::string part_size(const parts::Part& part, const evaluate::Evaluation& e, Units units);

// How wide a board of the base is once it is cut to the ground; its size as a part is for level
// ground.
struct GroundCut {
  double least_mm = 0, most_mm = 0;
  std::string sheets;      // "base_1, base_4": where its cut is drawn
  std::string do_not_cut;  // why not yet; empty: nothing stands against it
  bool all = true;         // false: the ground under one of its pieces is not read
};
// nullopt where the part is no such board, or nothing under it is read.
std::optional<GroundCut> ground_cut(const parts::Part& part, const evaluate::Evaluation& e);
// "cut to the ground: 3 1/2 in to 4 1/4 in wide, see its own sheet base_1".
std::string ground_cut_words(const GroundCut& cut, Units units);
// "under the oven, bay 1, 2; under the dough counter": each place once, in the order of the
// letters.
std::string places_words(const parts::Part& part, const evaluate::Build& build);
// "cabinet colour, filled and rounded".
std::string surface_words(const frame::Surface& surface);

}  // namespace hs::report
