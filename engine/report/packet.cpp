#include "engine/report/packet.h"

#include <algorithm>
#include <array>

#include "engine/base/text.h"
#include "engine/config/json.h"
#include "engine/config/read.h"
#include "engine/config/stock_csv.h"
#include "engine/evaluate/packet.h"
#include "engine/report/cuts_csv.h"
#include "engine/report/html_document.h"
#include "engine/report/packet_parts.h"
#include "engine/report/parts_csv.h"
#include "engine/report/pdf_document.h"
#include "engine/report/plan_words.h"
#include "engine/report/report_json.h"
#include "engine/report/svg.h"

namespace hs::report {
namespace {

constexpr std::size_t kLongestAddress = 300;

}  // namespace

Result<std::string> packet_address(std::string_view text) {
  const bool web = text.starts_with("https://") || text.starts_with("http://");
  const bool plain =
      std::all_of(text.begin(), text.end(), [](char c) { return c > ' ' && c < 127 && c != '#'; });
  if (web && plain && text.size() > 8 && text.size() <= kLongestAddress) return std::string(text);
  return Problem{"--address", shortened(text),
                 "https:// or http:// and at most 300 characters without '#' and spaces"};
}

Document packet_document(const config::Config& config, const evaluate::Evaluation& evaluation,
                         const PacketChoice& choice) {
  const PacketView view{config, evaluation, choice};
  Document document{station_title(config), {}, choice.paper, choice.units, {}};
  document.parts.push_back(cover_part(view).part);
  std::vector<DocBlock> missing;
  // What must be minded, the whole as it will stand, then what a shop makes of it.
  std::array all{mind_part(view),   drawings_part(view), parts_part(view),  cuts_part(view),
                 metal_part(view),  money_part(view),    base_part(view),   wiring_part(view),
                 finish_part(view), plan_part(view),     safety_part(view), sources_part(view)};
  for (PacketPart& made : all) {
    if (made.part.blocks.empty()) {
      missing.push_back(words("Not in this packet: " + made.why, made.part.title + "."));
    } else {
      // These go on where the part before them ends; all others may be handed on alone.
      const std::string& id = made.part.id;
      made.part.starts_page = id != "mind" && id != "finish" && id != "sources";
      document.parts.push_back(std::move(made.part));
    }
  }
  // Under the contents.
  auto& cover = document.parts[0].blocks;
  const auto contents = std::find_if(cover.begin(), cover.end(), [](const DocBlock& b) {
    return b.kind == DocBlock::Kind::Contents;
  });
  cover.insert(contents + 1, missing.begin(), missing.end());
  return document;
}

std::vector<PacketFile> packet_files(const config::Config& config,
                                     const evaluate::Evaluation& evaluation,
                                     const PacketChoice& choice) {
  const Document document = packet_document(config, evaluation, choice);
  std::vector<PacketFile> files;
  files.push_back({"packet.pdf", document_pdf(document)});
  files.push_back({"packet.html", document_html(document)});
  if (evaluation.build && evaluation.build->frame.made()) {
    files.push_back({"parts.csv", parts_csv(evaluation)});
    files.push_back({"hardware.csv", hardware_csv(*evaluation.build)});
  }
  if (evaluation.packet) {
    files.push_back({"cuts.csv", cuts_csv(evaluation.packet->cutting)});
    std::string ics = plan_ics(config, evaluation.packet->timetable);
    if (!ics.empty()) files.push_back({"plan.ics", std::move(ics)});
  }
  for (const DocPart& part : document.parts) {
    for (const DocBlock& block : part.blocks) {
      if (!block.in_file || block.file.empty()) continue;
      const Sheet& sheet = *block.in_file;
      files.push_back(
          {"drawings/" + block.file + ".svg", svg(sheet.drawing, {.title = sheet.title,
                                                                  .description = sheet.description,
                                                                  .text_mm = sheet.text_mm})});
    }
    for (std::size_t i = 0; i < part.strips.size(); ++i) {
      files.push_back({"drawings/strip_" + std::to_string(i + 1) + ".svg",
                       template_svg(part.strips[i], choice.paper)});
    }
  }
  files.push_back({"stock.csv", config::stock_csv(config)});
  files.push_back({"station.json", config::config_json(config)});
  return files;
}

}  // namespace hs::report
