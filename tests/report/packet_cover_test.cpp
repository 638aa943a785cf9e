#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/packet.h"
#include "engine/report/packet.h"
#include "tests/report/preset.h"

using namespace hs;

namespace {

std::string words_of_cover(const config::Config& config) {
  const report::Document document =
      report::packet_document(config, evaluate::evaluate_packet(config), {});
  std::string all;
  for (const report::DocBlock& block : document.parts.at(0).blocks) all += block.words + "\n";
  return all;
}

}  // namespace

TEST_CASE("the packet's cover names what its PDF cannot print", "[report][packet]") {
  config::Config config = test::preset("demo");
  CHECK(words_of_cover(config).find("Latin letters only") == std::string::npos);
  // Marked Latin letters are printed, at worst without their mark.
  config.cooks[0].name = "Zo\u00EB";
  CHECK(words_of_cover(config).find("Latin letters only") == std::string::npos);
  config.cooks[1].name = "\u041E\u043B\u0435\u0433";
  config.title = "\u5EAD";
  const std::string cover = words_of_cover(config);
  CHECK(cover.find("prints others as \"?\": title, name of cook 2.") != std::string::npos);
}
