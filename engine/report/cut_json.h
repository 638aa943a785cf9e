#pragma once
// A cut job as JSON comes in, its plan as JSON goes out. All lengths are whole numbers of the job's
// own unit.
//
// Boards: {"stock": L, "kerf": k, "parts": [length, ...]}, or "stocks": [{"length", "cost"}, ...]
// instead of "stock". A stock may also have "count" (how many there are), "trim" (lost at each end)
// and "defects" ([[from, to], ...] along the board); "trim" beside "stock" is for that one.
//
// Sheets: {"sheet": [width, height], "kerf": k, "turn": may parts be turned, "trim": lost along
// every edge, "parts": [[width, height], ...]}; without "turn" the grain runs along the width.
//
// What a published instance carries beside its job (name, unit, proof, known optimum) is passed
// over.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/cuts/boards.h"
#include "engine/cuts/sheets.h"

namespace hs::report {

struct CutJob {
  std::optional<cuts::SheetJob> sheets;  // absent: boards
  cuts::BoardJob boards;
  bool priced = false;  // stocks with costs: the answer says what they cost together
};

// The job, or everything that is wrong with it.
Result<CutJob> read_cut_job(std::string_view text);

// The plan for it, from a search of at most so many steps (absent: the usual number).
std::string cut_plan_json(const CutJob& job, std::optional<std::int64_t> steps);

}  // namespace hs::report
