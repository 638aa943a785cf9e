#include "engine/power/box.h"

#include <algorithm>
#include <string_view>

#include "engine/power/wire.h"

namespace hs::power {
namespace {

constexpr int kMostCount = 200;

struct Reckoner {
  std::vector<Problem> problems{};
  BoxFill fill{};
  double largest_in3 = 0;  // of any conductor in the box

  double room(int awg, std::string_view of) {
    const auto row = wire(awg);
    if (row) return row->box_in3;
    problems.push_back({std::string(of), std::to_string(awg) + " AWG",
                        "14, 12, 10, 8 or 6 AWG; others are " + std::string(kAsk)});
    return 0;
  }
  bool counted(int count, std::string_view of) {
    if (count >= 0 && count <= kMostCount) return true;
    problems.push_back({std::string(of), std::to_string(count), "0 to 200"});
    return false;
  }
  void add(std::string what, double in3) {
    fill.in3 += in3;
    fill.lines.push_back({std::move(what), in3});
  }
};

}  // namespace

Result<BoxFill> box_fill(const BoxContents& contents, Edition edition) {
  Reckoner box;
  for (const Conductors& some : contents.conductors) {
    if (!box.counted(some.count, "conductors") || some.count == 0) continue;
    const double one = box.room(some.awg, "conductors");
    box.largest_in3 = std::max(box.largest_in3, one);
    box.add(std::to_string(some.count) + (some.count == 1 ? " conductor of " : " conductors of ") +
                std::to_string(some.awg) + " AWG",
            some.count * one);
  }
  int grounds = 0;
  double ground_in3 = 0;
  for (const Conductors& some : contents.grounds) {
    if (!box.counted(some.count, "grounds") || some.count == 0) continue;
    grounds += some.count;
    ground_in3 = std::max(ground_in3, box.room(some.awg, "grounds"));
  }
  box.largest_in3 = std::max(box.largest_in3, ground_in3);
  if (contents.inside_clamps) box.add("inside clamps, once", box.largest_in3);
  if (box.counted(contents.support_fittings, "support fittings") && contents.support_fittings > 0) {
    box.add(std::to_string(contents.support_fittings) + " support fittings",
            contents.support_fittings * box.largest_in3);
  }
  for (const Device& device : contents.devices) {
    box.add("device on " + std::to_string(device.awg) + " AWG, twice",
            2 * box.room(device.awg, "devices"));
  }
  if (grounds > 0) {
    const int extra = edition == Edition::From2020 ? std::max(0, grounds - 4) : 0;
    std::string what = std::to_string(grounds) + " grounds: once";
    if (extra > 0) what += ", and a quarter for each over four";
    box.add(std::move(what), ground_in3 + extra * 0.25 * ground_in3);
  }
  if (!box.problems.empty()) return std::move(box.problems);
  return std::move(box.fill);
}

Result<BoxByEdition> box_fill_by_edition(const BoxContents& contents) {
  Result<BoxFill> before = box_fill(contents, Edition::To2017);
  if (!before) return before.error();
  Result<BoxFill> after = box_fill(contents, Edition::From2020);
  BoxByEdition both{std::move(*before), std::move(*after), 0};
  both.difference_in3 = both.from2020.in3 - both.to2017.in3;
  return both;
}

}  // namespace hs::power
