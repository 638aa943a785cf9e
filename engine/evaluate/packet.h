#pragma once
// The packet's stage: what a shop needs beside the drawings. Asked for by the report of the program
// and by the packet; never while a finger drags, never before the first picture.

#include <cstdint>
#include <memory>
#include <optional>

#include "engine/evaluate/build.h"
#include "engine/evaluate/changes.h"
#include "engine/evaluate/costing.h"
#include "engine/evaluate/cutting.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/metal_order.h"
#include "engine/evaluate/painting.h"
#include "engine/evaluate/timetable.h"
#include "engine/evaluate/wiring.h"

namespace hs::evaluate {

struct Packet {
  Cutting cutting;
  MetalSheets metal;
  std::optional<Wiring> wiring;  // absent: neither outlet nor lamp
  Painting painting;
  Timetable timetable;
  Costing costing;
};

// A search of this many steps for each group of parts: about half a second of a desktop computer
// where nothing is proven before; shop lists are proven in a few thousand.
inline constexpr std::int64_t kPacketSteps = 200'000;

// For an evaluation with a build (add_build()): plans, orders, amounts, tasks and sums, and what
// there is to say of them among the findings. Nothing where no cabinet could be made, but for a
// finding that says so.
void add_packet(const config::Config& config, Evaluation& evaluation,
                std::int64_t steps = kPacketSteps);

// evaluate_all() and the packet's stage.
Evaluation evaluate_packet(const config::Config& config, Marks marks = Marks::Exact,
                           std::int64_t steps = kPacketSteps);

// evaluate_packet() in as many goes as the caller likes, so that somebody may see how far it is and
// stop it; how it is split changes nothing.
class PacketRun {
 public:
  explicit PacketRun(const config::Config& config, Marks marks = Marks::Exact,
                     std::int64_t steps = kPacketSteps);
  // Of an evaluation with a build.
  PacketRun(config::Config config, Evaluation evaluation, std::int64_t steps);
  ~PacketRun();
  PacketRun(const PacketRun&) = delete;
  PacketRun& operator=(const PacketRun&) = delete;

  // Works on for about so many steps of a search; false: nothing is left to do.
  bool advance(std::int64_t steps);
  struct Progress {
    std::size_t done = 0, all = 1;  // plans of one material
    bool inches = false;            // at what an inch of a body costs, after the station itself
  };
  Progress progress() const;
  const config::Config& config() const;
  // The evaluation with its packet, once: where it was stopped with the best plans so far, each
  // with its own bound, and quick ones where no search was begun.
  Evaluation take();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace hs::evaluate
