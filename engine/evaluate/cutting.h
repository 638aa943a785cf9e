#pragma once
// Which part comes out of which board or sheet, for the parts of one station, and in which order
// the saw passes: values of the packet.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/config/config.h"
#include "engine/frame/piece.h"
#include "engine/parts/parts.h"

namespace hs::evaluate {

// One part to be sawn: how large the saw leaves it, its rough size where it has one.
struct CutItem {
  int part = 0;                        // its number in the parts list
  int copy = 0;                        // which of that part's pieces, from 0
  double length_mm = 0, width_mm = 0;  // length along the grain, or the longer side
  bool at_finished = false;            // its rough size fits no stock, so it is cut to size at once
  std::optional<double> rip_mm;        // of a board wider than that: sawn to this width afterwards
};

// What parts may be cut from: a row of the stock list, or what a yard usually has.
struct CutStock {
  std::string name;
  std::optional<std::size_t> row;  // in config.stock; absent: a usual size, not in the list
  double length_mm = 0, width_mm = 0;
  std::optional<int> on_hand;   // how many there are; absent: bought, as many as needed
  std::optional<double> price;  // of one; absent: not known, or there already
  // A stretch of a board that no part may touch; nothing where it has no length.
  double bad_from_mm = 0, bad_to_mm = 0;
  bool turn = false;  // of a sheet: parts may be turned
  int used = 0;       // how many the plan takes
};

// A piece of a board or sheet once it is sawn. Places from the stock's own lower left corner: x
// along its length, y along its width; of a board y is 0 and width the board's.
struct SawnPiece {
  enum class Kind : std::uint8_t {
    Part,
    Strip,     // sawn again
    Leftover,  // kept: an offcut
    Waste,     // too small to keep
  };
  Kind kind = Kind::Part;
  std::size_t item = 0;  // of a part: index in CutGroup::items
  double x_mm = 0, y_mm = 0, length_mm = 0, width_mm = 0;
  bool turned = false;  // a part whose length lies across the sheet
};

// One pass of the saw, in the order that they are made. The saw takes a kerf beside its line.
struct SawPass {
  int number = 0;                  // from 1, in its board or sheet
  bool trim = false;               // takes a factory edge or a board's end off
  bool along = false;              // the saw runs along the stock's length
  double at_mm = 0;                // near side of the kerf, on the stock: x, or y if along
  double from_mm = 0, to_mm = 0;   // where the saw begins and ends on the other axis
  double fence_mm = 0;             // from the edge of the piece in hand to the kerf
  std::optional<std::size_t> off;  // index in CutStick::pieces of what comes off finished
};

// One board or sheet and all that comes out of it.
struct CutStick {
  std::size_t stock = 0;          // index in CutGroup::stocks
  std::vector<SawnPiece> pieces;  // parts, strips, leftovers, waste
  std::vector<SawPass> passes;    // strips first
};

// What makes one plan better than another. Price where every stock of the group that is bought has
// one; without, the length of the boards or the area of the sheets; sheets of one size are counted.
enum class MeasuredBy : std::uint8_t { Pieces, Length, Area, Price };  // mm, m2, currency

// All parts of one material and section, planned together.
struct CutGroup {
  frame::Material material = frame::Material::Sheet;
  std::string name;     // "exterior plywood, 18.3 mm", "treated lumber, 2x4"
  bool sheets = false;  // else boards
  bool grain = false;   // some part has grain: only a sheet without grain lets it be turned
  double thick_mm = 0, width_mm = 0;  // width: of boards
  std::vector<CutItem> items;
  std::vector<CutStock> stocks;
  std::vector<CutStick> sticks;        // each item once, unless it is in `too_large`
  std::vector<std::size_t> too_large;  // items that no stock holds
  int bought = 0, from_hand = 0;       // boards or sheets
  // What the plan is the least of, how much it is, and a bound below every plan of what is bought.
  MeasuredBy by = MeasuredBy::Pieces;
  double value = 0, at_least = 0;
  bool proven = false;     // the bound meets the plan, and the plan has every item
  double stock_share = 0;  // of what is taken (length or area): ends in a part
};

// Pieces of one part that no stock holds.
struct TooLarge {
  int part = 0;  // its number in the parts list
  int count = 0;
  double length_mm = 0, width_mm = 0;  // as it is first sawn
};
// By part, in the order of the items.
std::vector<TooLarge> too_large_parts(const CutGroup& group);

// A row of the stock list that fits no part, though there are parts of its material.
struct UnusedRow {
  std::size_t row = 0;  // in config.stock
  std::string why;      // "it is 45 mm thick, and parts need 38.1 mm"
};

struct Cutting {
  double kerf_mm = 0, sheet_trim_mm = 0, board_trim_mm = 0;
  std::vector<CutGroup> groups;
  std::vector<UnusedRow> unused;
};

// A leftover at least this long (and, of a sheet, wide) is kept: our judgement.
inline constexpr double kKeptLength_mm = 300, kKeptWidth_mm = 100;

// The plans for all parts that are sawn from boards or sheets: offcuts on hand first, then the
// cheapest stock that holds the parts; the usual sizes of the trade where the list has none for a
// material. The same parts and stock give the same plan on every machine; the search of each group
// is bounded by `steps`.
// `scribed`: the base's boards are cut to ground that was read, so they keep their full width.
Cutting cutting_of(const config::Config& config, const parts::List& parts, bool scribed,
                   std::int64_t steps);

class GroupRun;

// The same in as many goes as the caller likes; how it is split changes nothing. Config and parts
// outlive it.
class CuttingRun {
 public:
  CuttingRun(const config::Config& config, const parts::List& parts, bool scribed,
             std::int64_t steps);
  ~CuttingRun();

  // Works on for about so many steps; false: all groups are planned.
  bool advance(std::int64_t steps);
  std::size_t groups() const { return out_.groups.size(); }
  std::size_t planned() const { return at_; }  // of them
  // The plans; of what is not searched yet the best so far, of what was not begun a quick one.
  Cutting take();

 private:
  void begin();  // the group `at_`
  void end();

  const config::Config& config_;
  std::int64_t steps_;
  Cutting out_;
  std::vector<std::vector<std::size_t>> items_;  // of each group, that some stock holds
  std::size_t at_ = 0;
  std::unique_ptr<GroupRun> run_;
};

}  // namespace hs::evaluate
