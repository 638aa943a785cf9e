#pragma once
// The saw's passes as a file for a spreadsheet program, one a row, and the stock list.

#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/packet.h"

namespace hs::report {

std::string cuts_csv(const evaluate::Cutting& cutting);

}  // namespace hs::report
