#pragma once
// The packet that a shop builds from: one document (cover, drawings, parts and what else the
// evaluation holds, safety sheet, sources), and the files around it.
//
// A sheet whose values the evaluation does not hold is left out, and the cover says so.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/report/document.h"

namespace hs::report {

struct PacketChoice {
  Paper paper = Paper::A4;
  Units units = Units::Inch;
  // Where the live plan is opened, without a fragment: "https://example.org/oven/". Empty: not
  // said; the square then holds the link's text alone.
  std::string address;
};

// An address that may stand before a link: "https://..." or "http://...", at most 300 plain
// characters, no '#'. Problem: path "--address".
Result<std::string> packet_address(std::string_view text);

Document packet_document(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const PacketChoice& choice);

struct PacketFile {
  std::string name;  // "packet.pdf", "drawings/section.svg"
  std::string bytes;
};

// Every file, in the order in which they are listed. The same input gives the same bytes.
std::vector<PacketFile> packet_files(const config::Config& config,
                                     const evaluate::Evaluation& evaluation,
                                     const PacketChoice& choice);

}  // namespace hs::report
