#pragma once
// The parts of the packet's document, each from values that the evaluation holds.

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/report/document.h"
#include "engine/report/packet.h"
#include "engine/report/page_parts.h"

namespace hs::report {

// What a part is made from.
struct PacketView {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  const PacketChoice& choice;
  SheetView sheet(double line_mm = 0) const { return {choice.units, 0, line_mm}; }
  Document paper() const { return {{}, {}, choice.paper, choice.units, {}}; }
  Page page() const { return {config, evaluation, choice.units}; }
};

DocBlock heading(std::string words);
DocBlock words(std::string text, std::string head = {});
DocBlock note(std::string text);
DocBlock rows(Table table);
// One drawing with its own file's name. `key`: what its letters mean is printed with it.
struct FigureOf {
  std::string file, head, caption{};
  bool whole_page = false, to_scale = true, key = true, with_next = false;
};
DocBlock figure(const PacketView& view, FigureOf of,
                const std::function<Sheet(const SheetView&)>& draw);
// A caution of the registry, its source after it.
DocBlock caution(std::string_view id);

// Each is empty (no block) where there is nothing to say; `why` then says why.
struct PacketPart {
  DocPart part;
  std::string why;
};
// What to make, buy and carry, in a few lines; no rows where nothing is built.
Table glance_table(const PacketView& view);  // engine/report/packet_shop.cpp
PacketPart cover_part(const PacketView& view);
PacketPart mind_part(const PacketView& view);
PacketPart drawings_part(const PacketView& view);
PacketPart parts_part(const PacketView& view);
PacketPart base_part(const PacketView& view);
PacketPart cuts_part(const PacketView& view);  // engine/report/packet_shop.cpp
PacketPart metal_part(const PacketView& view);
PacketPart money_part(const PacketView& view);
PacketPart wiring_part(const PacketView& view);  // engine/report/packet_site.cpp
PacketPart finish_part(const PacketView& view);
PacketPart plan_part(const PacketView& view);
PacketPart safety_part(const PacketView& view);
PacketPart sources_part(const PacketView& view);

}  // namespace hs::report
