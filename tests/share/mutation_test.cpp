// The fuzz target's laws on mutated configs, links and settings, with a fixed seed, so that they
// run in every suite.
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/read.h"
#include "engine/share/link.h"
#include "tests/fuzz/read_anything.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;

namespace {

std::string mutated(test::Random& random, std::string text) {
  const int changes = 1 + random.below(4);
  for (int i = 0; i < changes && !text.empty(); ++i) {
    const auto at = static_cast<std::size_t>(random.below(static_cast<int>(text.size())));
    const auto length = 1 + static_cast<std::size_t>(random.below(20));
    switch (random.below(5)) {
      case 0:
        text[at] = static_cast<char>(random.below(256));
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.insert(
            at, text.substr(static_cast<std::size_t>(random.below(static_cast<int>(text.size()))),
                            length));
        break;
      case 3:
        text.insert(at, 1, static_cast<char>(' ' + random.below(95)));
        break;
      default:
        text.resize(at);
        break;
    }
  }
  return text;
}

}  // namespace

TEST_CASE("mutated files are read or refused, never half of either", "[config][fuzz]") {
  test::Random random(100);
  for (int i = 0; i < test::sweep(5000); ++i) {
    const std::string text = mutated(random, config::config_json(test::random_config(random)));
    CAPTURE(text);
    const char* broken = test::broken_by_json(text);
    REQUIRE((broken == nullptr ? std::string() : broken) == "");
  }
}

TEST_CASE("mutated links are read or refused, with and without good check digits",
          "[share][fuzz]") {
  test::Random random(101);
  for (int i = 0; i < test::sweep(10'000); ++i) {
    const std::string link = share::to_link(test::random_config(random));
    const std::string text = mutated(random, link);
    const std::string body = mutated(random, link.substr(1, link.size() - 4));
    CAPTURE(text, body);
    for (const char* broken : {test::broken_by_link(text), test::broken_by_sealed(body)}) {
      REQUIRE((broken == nullptr ? std::string() : broken) == "");
    }
  }
}

TEST_CASE("mutated settings are applied or refused whole", "[config][fuzz]") {
  test::Random random(102);
  const char* const seeds[] = {"cooks.0.stature_mm=5' 11 3/8\"",
                               "cooks.1.name=\"Bo\"",
                               "oven.kind=other",
                               "oven.outer_mouth=null",
                               "station.counter_height_mm=105,1 cm",
                               "title=x",
                               "oven.floor_temp_c=842 F",
                               "trial.at.cook=Cook 1",
                               "cooks.0.seated=true"};
  for (int i = 0; i < test::sweep(20'000); ++i) {
    const std::string text = mutated(random, seeds[random.below(9)]);
    CAPTURE(text);
    const char* broken = test::broken_by_setting(text);
    REQUIRE((broken == nullptr ? std::string() : broken) == "");
  }
}
