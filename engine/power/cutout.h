#pragma once
// Boxes and wire holes as cut-outs in the station's panels, and what runs into them: drawers and
// slides, the gas bay, the mouth, hot tops. And when they are cut: before paint.
//
// Everything is a box of the station frame (engine/base/block.h). Clearances to what is hot come
// from a listing; where none is given the answer is "unknown", never a number of ours.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/block.h"
#include "engine/base/finding.h"
#include "engine/base/number_text.h"

namespace hs::power {

enum class Through : std::uint8_t { X, Y, Z };  // which way a panel is thick

struct Panel {
  std::string_view name;
  Block place;
  Through thick = Through::Y;
  bool painted = false;  // already, when the cut is made: each opening is a remark
};

enum class Kind : std::uint8_t { OutletBox, LampBox, WireHole };
std::string_view kind_name(Kind kind);  // "outlet box"
// Of two axes across a panel's thickness: how far, in the order x, y, z.
Through u_of(Through thick);
Through v_of(Through thick);

// What is let into a panel: all of its body, box, plug and cover included, wherever it stands.
struct Fitting {
  std::string_view name;
  Kind kind = Kind::OutletBox;
  std::size_t panel = 0;  // which one it is cut into
  Block body;
};

// An opening in its panel: u and v are the panel's other two axes in the order x, y, z, from the
// panel's low corner to the opening's low corner. A wire hole is round, wide_mm across.
struct Cutout {
  std::size_t fitting = 0;
  double u_mm = 0, v_mm = 0, wide_mm = 0, high_mm = 0;
  bool round = false;
  double rim_mm = 0;  // what stays to the panel's nearest edge
  std::optional<double>
      web_mm{};  // and to the next opening of the panel; absent: it is the only one
};

enum class Zone : std::uint8_t { Drawer, Slide, GasBay, GasValve, Mouth, HotTop, Other };
// `clear_mm`: room to keep, from a listing or a maker; absent: none is known.
struct Keepout {
  std::string name;
  Zone zone = Zone::Other;
  Block place;
  std::optional<double> clear_mm{};
};

// A rim that a panel needs round an opening, to its edge or the next one: our judgement. A wire's
// hole: 1 1/4 in to an edge, so that no screw finds the wire (NEC 300.4(A)(1), from memory).
inline constexpr double kRim_mm = 20, kHoleRim_mm = 31.75;
// From a cylinder's valve to anything that sparks, any direction: 5 ft, NFPA 58 (2017) 6.3.4.3,
// figure I.1(a), read.
inline constexpr double kSpark_mm = 1524;

struct Remark {
  Verdict verdict = Verdict::Fail;
  std::size_t fitting = 0;
  std::optional<std::size_t> keepout{};  // absent: about the panel
  std::string_view what;                 // "stands in the drawer's way"
  double measured_mm = 0, limit_mm = 0;  // limit 0: none to tell
  std::string_view source;
};

struct Cutting {
  std::vector<Cutout> cutouts;  // one for each fitting whose panel is there, in their order
  std::vector<Remark> remarks;  // nothing said of a pair: nothing is wrong
};

// Cut-outs of all fittings, and every pair that is wrong or not known. A fitting that does not
// reach its panel, or a panel that is not there, is a remark. Finite numbers. Ties to "touches": a
// gap of 0 is none.
Cutting cut_panels(std::span<const Panel> panels, std::span<const Fitting> fittings,
                   std::span<const Keepout> keepouts);

// "outlet box, left end": with its name, where it has one.
std::string fitting_name(const Fitting& fitting);

// "outlet box, left end: stands in the way of drawer 2 (overlap 14 mm)."
std::string words(const Remark& remark, std::span<const Fitting> fittings,
                  std::span<const Keepout> keepouts, Unit unit);

// Gap between two blocks, mm, the straight line between their nearest points; negative: how far
// they would have to be moved apart, at least.
double gap_mm(const Block& a, const Block& b);

// What to do at a cut-out, in order: before paint, or where it was forgotten the repair. Common
// practice.
std::span<const std::string_view> cutting_steps(bool painted);

}  // namespace hs::power
