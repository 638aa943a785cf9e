#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/validate.h"
#include "engine/share/link.h"
#include "tests/support/random_config.h"
#include "tests/support/read_config.h"
#include "tests/support/sweep.h"

using namespace hs;

TEST_CASE("what is written as JSON or as a link is read back the same", "[config][share][law]") {
  test::Random random(20);
  int too_long = 0;  // for every program to carry: such a station goes as a file
  for (int i = 0; i < test::sweep(10'000); ++i) {
    const config::Config config = test::random_config(random);
    CAPTURE(i, config::config_json(config));
    REQUIRE(config::validate(config).empty());
    const auto from_json = test::read_config(config::config_json(config));
    REQUIRE(from_json.has_value());
    REQUIRE(*from_json == config);
    const std::string link = share::to_link(config);
    const auto from_link = share::from_link(link);
    REQUIRE(from_link.has_value() == (link.size() <= share::kLongestLink));
    if (!from_link) {
      ++too_long;
      config::Config bare = config;
      bare.stock.clear();
      CHECK(share::to_link(bare).size() <= share::kLongestLink);
      continue;
    }
    REQUIRE(*from_link == config);
    REQUIRE(share::to_link(*from_link) == link);
  }
  CHECK(too_long < test::sweep(10'000) / 4);
}
