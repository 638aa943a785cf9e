#pragma once
// The sheet job as the search sees it: equal parts together, and one saw cut inside every width and
// height. Pieces then lie edge to edge, in a sheet that is one cut longer and wider.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/cuts/sheets.h"

namespace hs::cuts {

struct Areas {
  struct Type {
    std::int64_t w = 0, h = 0;  // the longer side is w where parts may be turned
  };
  std::int64_t w = 0, h = 0;  // of a sheet inside its trimmed edges
  bool turn = false;
  std::vector<Type> types;
  std::vector<int> demand;
};
Areas areas_of(const SheetJob& job);

// One sheet while it is cut up. Pane 0 is the sheet; `second` of a cut may still be an offcut.
struct Tile {
  Pane::Kind kind = Pane::Kind::Offcut;
  std::int64_t w = 0, h = 0;
  int first = 0, second = 0;  // of a cut
  int type = -1;              // of a part
};
using Tiles = std::vector<Tile>;
using Layout = std::vector<Tiles>;

// Cuts an offcut in two and returns the first of them; all of it where there is nothing to cut off.
int cut_off(Tiles& tiles, int tile, Pane::Kind kind, std::int64_t at);
// Cuts a part out of the lower left corner of an offcut, the named cut first.
void cut_part(Tiles& tiles, int tile, int type, std::int64_t w, std::int64_t h, Pane::Kind first);

// The largest offcut, by area.
std::int64_t largest_offcut(const Layout& layout);

// The tiles with their saw cuts taken out again, and with the job's own parts.
std::vector<SheetCuts> sheets_of(const SheetJob& job, const Areas& areas, const Layout& layout);

// The most that dual feasible functions prove (Fekete and Schepers 2004, from memory; checked
// against full searches). Holds for every way of cutting.
std::int64_t sheets_bound(const Areas& areas);

}  // namespace hs::cuts
