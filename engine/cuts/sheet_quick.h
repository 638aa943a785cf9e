#pragma once
// Quick plans for sheets: part by part, into the first or the best offcut, and in strips.

#include <cstdint>
#include <vector>

#include "engine/cuts/areas.h"
#include "engine/cuts/lines.h"

namespace hs::cuts {

// One way to go about it. All of them together are kQuickWays; later numbers shuffle the order.
struct QuickWay {
  enum class Order : std::uint8_t { Area, Height, Width, Longest, Around };
  enum class Choice : std::uint8_t { First, SmallestOffcut, TightestSide };
  enum class Split : std::uint8_t { Across, Along, LargerOffcut, SmallerOffcut };
  Order order = Order::Area;
  Choice choice = Choice::First;
  Split split = Split::Across;
  std::uint32_t shuffle = 0;  // 0: in order; else the seed that moves parts out of their place
};
inline constexpr std::uint32_t kQuickWays = 5 * 3 * 4;
QuickWay quick_way(std::uint32_t number);

// What `demand` asks for, cut that way.
Layout quick_plan(const Areas& areas, const std::vector<int>& demand, const QuickWay& way,
                  Meter& meter);

// First fit, highest first: strips of the sheet's full width (`kind` Along) or height, each as high
// as its first part, each part into the first strip that takes it. The plainest plan to saw.
// `upright`, where parts may be turned: the long side up the strip.
Layout strip_plan(const Areas& areas, Pane::Kind kind, bool upright, Meter& meter);

}  // namespace hs::cuts
