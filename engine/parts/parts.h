#pragma once
// One list of all parts, from the pieces of the frame: equal pieces are one part with a quantity.
//
// A part is told in its own frame: along its length (the way of its grain, or its longer side), and
// across it, from one corner, looking at its front face; length, width and the front face's outside
// make a right-handed frame, so no part is its own mirror image. Pieces are equal where one can be
// turned into the other: same material, sizes to 0.1 mm, faces, edges and holes. Metal alone is not
// turned: its order names front, back, left and right as the cook sees them.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/frame/piece.h"

namespace hs::parts {

// Of a part's six surfaces: two faces, the two ends of its length, the two sides of its width.
enum class At : std::uint8_t { Front, Back, Start, End, Low, High };

struct Cut {
  frame::HoleUse use = frame::HoleUse::ShelfPin;
  bool in_front = true;                // seen on the front face; else from behind
  double along_mm = 0, across_mm = 0;  // middle of the first one
  bool round = true;
  double long_mm = 0, wide_mm = 0;  // along and across; round: both the diameter
  double deep_mm = 0;               // 0: through
  int count = 1;
  double pitch_mm = 0;  // between the middles of a row
  bool row_along = false;

  bool operator==(const Cut&) const = default;
};

// Metal that is turned down along the last of its start or end only, up to High. The part is as
// long as that; the rest of the end is straight, so far inside it.
struct Tail {
  At at = At::End;
  double long_mm = 0, inside_mm = 0, down_mm = 0;
};

struct Part {
  int number = 0;  // from 1, in the list's order
  frame::Kind kind = frame::Kind::Side;
  frame::Material material = frame::Material::Sheet;
  double length_mm = 0, width_mm = 0, thick_mm = 0;       // finished, to 0.1 mm
  std::optional<double> rough_length_mm, rough_width_mm;  // absent: bought or folded to size
  std::string stock;                                      // "2x6"; empty: of a sheet, or bought
  bool grain_along = false;                               // false: it has none
  std::array<frame::Surface, 6> surfaces{};               // by At
  std::array<double, 4> folds_mm{};  // metal: turned down at Start, End, Low, High, outside; 0: not
  std::vector<Tail> tails;
  std::vector<Cut> cuts;
  std::vector<std::size_t> pieces;  // which of the pieces it is, by index
  // Of each of these pieces, which of its faces the surfaces are, by At.
  std::vector<std::array<frame::Face, 6>> faces;

  int quantity() const { return static_cast<int>(pieces.size()); }
};

// What metal tops are laid in, as the list of hardware calls it.
inline constexpr std::string_view kBeddingAdhesive = "bedding adhesive";

struct Hardware {
  std::string name;
  double quantity = 0;
  std::string_view unit;  // "", "pair", "l"
  std::string_view rule;  // how it is counted
};

struct List {
  std::vector<Part> parts;
  std::vector<Hardware> hardware;
};

struct Choices {
  double rough_mm = 3;    // sheet parts, both ways
  double bedding_mm = 1;  // under metal
};

// By material, then by kind, then in the order of the pieces. Some 50 us for a large station.
List list_of(std::span<const frame::Piece> pieces, const Choices& choices);

// The part that this piece is, from 1; 0: none.
int number_of(const List& list, std::size_t piece);

// "under the dough counter, bay 2".
std::string place_text(const frame::Piece& piece);
std::string_view use_name(frame::HoleUse use);  // "shelf pin"

// Screws of one joint of this length: one 40 mm from each end and none farther than 150 mm from the
// next; never fewer than two. Common practice.
int screws_along(double joint_mm);

}  // namespace hs::parts
