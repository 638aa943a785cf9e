#pragma once
// The packet's stage in the report: cuts, metal, power, finish, plan, money. Null, all of them,
// before that stage, and where no cabinet is drawn (a finding says so).

#include <optional>

#include "engine/base/json_writer.h"
#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {
struct Costing;
struct Cutting;
struct MetalSheets;
struct Packet;
struct Painting;
struct Timetable;
struct Wiring;
}  // namespace hs::evaluate

namespace hs::report {

void put_packet(JsonWriter& out, const config::Config& config, const evaluate::Packet& packet);
void put_packet_stage(JsonWriter& out, const config::Config& config,
                      const evaluate::Evaluation& evaluation);

// Parts of put_packet(), each with its own key.
void put_cutting(JsonWriter& out, const evaluate::Cutting& cutting);
void put_metal(JsonWriter& out, const evaluate::MetalSheets& metal);
void put_wiring(JsonWriter& out, const std::optional<evaluate::Wiring>& wiring);
void put_painting(JsonWriter& out, const evaluate::Painting& painting);
void put_timetable(JsonWriter& out, const evaluate::Timetable& timetable);
void put_costing(JsonWriter& out, const config::Config& config, const evaluate::Costing& costing);

}  // namespace hs::report
