#pragma once
// What the six surfaces of a part are called where the part stands: a person at the bench turns it
// by these words.

#include <array>
#include <span>
#include <string>
#include <string_view>

#include "engine/parts/parts.h"

namespace hs::parts {

// One face or edge of a piece in its place: "inside", "outside", "top", "underside", "front edge",
// "hinged edge". Inside and outside are those of the box, the drawer, the base or the
// oven's block that the piece is a part of.
std::string_view side_of(const frame::Piece& piece, frame::Face face);

// The same of a part's surface, by parts::At. Pieces of one part may be turned: then both words,
// "left or right edge".
std::array<std::string, 6> sides_of(const Part& part, std::span<const frame::Piece> pieces);

}  // namespace hs::parts
