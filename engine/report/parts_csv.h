#pragma once
// The parts list and the hardware as files for a spreadsheet program: lengths in mm and, as decimal
// inches, in columns of their own.

#include <string>

#include "engine/evaluate/build.h"

namespace hs::report {

// One row a part.
std::string parts_csv(const evaluate::Evaluation& evaluation);
// One row a thing that is bought by number.
std::string hardware_csv(const evaluate::Build& build);

}  // namespace hs::report
