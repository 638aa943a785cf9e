#pragma once
// Pieces as they came out, measured: "base=104.2 dough.box=29 1/8 in oven.substrate.width=687.5".
// Each entry is a name, '=' and a length: bare numbers are millimetres, a fraction is inches.
// Entries stand apart by spaces; what follows an entry and holds no '=' is still its length. Names:
//   base                                     top of the base above the ground at the cook's feet
//   dough.box oven.box                       height of that run's boxes
//   dough.substrate.width .depth .thick      the primed sheets under the metal top (oven. too)
//   dough.1.opening.width .height            a bay's opening, bays counted from the left (oven.
//   too) riser.height                             the block under the oven, as it stands

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/base/result.h"

namespace hs::frame {

struct AsBuilt {
  std::string_view name;  // in the text that was read
  double mm = 0;
};

inline constexpr double kBuiltLeast_mm = 1, kBuiltMost_mm = 7000;

// Entries in their order; what cannot be read is left out.
std::vector<AsBuilt> read_as_built(std::string_view text);

// The same name as a text that lasts; empty for none of those above, or a bay past the twentieth.
std::string_view lasting_name(std::string_view name);

// The text with one piece's measure in the place of what it had; `size` is a length as people write
// it, a bare number of it in `bare`, and nothing takes the piece out. Kept in mm with one decimal.
// Errors: a name that no piece can have; a size that is no length, or out of range. Path
// "frame.as_built." and the name.
Result<std::string> with_built(std::string_view text, std::string_view name, std::string_view size,
                               Unit bare);

// Everything wrong with the text: an entry without '=', a name that no piece can have, a number
// that is none or out of range, a name twice. Path "frame.as_built".
std::vector<Problem> as_built_problems(std::string_view text);

}  // namespace hs::frame
