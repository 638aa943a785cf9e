#pragma once
// Cut plans as drawings: each board and sheet with its parts and the numbered passes of the saw.

#include <cstddef>
#include <string>
#include <vector>

#include "engine/evaluate/packet.h"
#include "engine/report/sheet.h"

namespace hs::report {

// Boards or sheets of a group that are cut alike are drawn once.
struct CutSheet {
  std::size_t group = 0, stick = 0;  // the first of them
  int alike = 1;
};
std::vector<CutSheet> cut_sheets(const evaluate::Cutting& cutting);

// Stock lies along the paper; x from its left end, y up from its lower edge.
Sheet cut_sheet(const config::Config& config, const evaluate::Evaluation& evaluation,
                const SheetView& view, const CutSheet& which);

// "Comes out: 2 of part 3, 29 1/4 x 22 3/16 in; 1 of part 5, ...": what has no room for its size on
// the plan has it here.
std::string sawn_words(const evaluate::Evaluation& evaluation, const SheetView& view,
                       const CutSheet& which);

// Its passes in their order: number, which way, where the fence stands, what comes off; many of
// them in two halves side by side.
Table pass_table(const evaluate::Evaluation& evaluation, const SheetView& view,
                 const CutSheet& which);

}  // namespace hs::report
