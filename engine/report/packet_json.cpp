#include "engine/report/packet_json.h"

#include "engine/evaluate/packet.h"
#include "engine/report/json_values.h"

namespace hs::report {

// Apart, so that a program may hold it where it is called only once there is a packet.
void put_packet(JsonWriter& out, const config::Config& config, const evaluate::Packet& packet) {
  put_cutting(out, packet.cutting);
  put_metal(out, packet.metal);
  put_wiring(out, packet.wiring);
  put_painting(out, packet.painting);
  put_timetable(out, packet.timetable);
  put_costing(out, config, packet.costing);
}

void put_packet_stage(JsonWriter& out, const config::Config& config,
                      const evaluate::Evaluation& e) {
  if (e.packet) {
    put_packet(out, config, *e.packet);
    return;
  }
  for (const std::string_view key : {"cuts", "metal", "power", "finish", "plan", "money"}) {
    put_null(out, key);
  }
}

}  // namespace hs::report
