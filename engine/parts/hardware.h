#pragma once
// Hinges, slides, screws and the like, counted by stated rules; for parts' own files.

#include <span>
#include <vector>

#include "engine/parts/parts.h"

namespace hs::parts {

std::vector<Hardware> hardware_of(std::span<const frame::Piece> pieces, const Choices& choices);

}  // namespace hs::parts
