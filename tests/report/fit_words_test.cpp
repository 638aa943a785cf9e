#include "engine/report/fit_words.h"

#include "catch_amalgamated.hpp"

using namespace hs;
using namespace hs::report;

namespace {

config::Config three() {
  config::Config config;
  config.cooks = {{.name = "Ana"}, {.name = "Ben"}, {.name = "Cleo"}};
  return config;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a place of the fit map says who sees how much", "[report][fit_map]") {
  const config::Config config = three();
  evaluate::FitSpot spot{
      .share = 0.764, .worst = 1, .see_all = {0, 2}, .too_high = {}, .too_hot = {}, .cooks = 3};
  CHECK(fit_words(config, spot, 1079, 712, Units::Inch) ==
        Lines{"Floor 42\u00BD in, eye 28 in away", "Ben sees 76 % of the pizza",
              "Ana and Cleo see all of it"});
  spot.see_all = {2};
  spot.too_high = {0, 1, 2};
  spot.too_hot = {0};
  CHECK(fit_words(config, spot, 1079, 712, Units::Millimetre) ==
        Lines{"Floor 1079 mm, eye 710 mm away", "Ben sees 76 % of the pizza", "Cleo sees all of it",
              "Too high for the hands of Ana, Ben and Cleo", "Too hot to linger: Ana"});
}

TEST_CASE("where all see it all nobody is named as the worst", "[report][fit_map]") {
  const config::Config config = three();
  const evaluate::FitSpot all{
      .share = 1, .worst = 0, .see_all = {0, 1, 2}, .too_high = {}, .too_hot = {}, .cooks = 3};
  CHECK(fit_words(config, all, 1000, 900, Units::Millimetre) ==
        Lines{"Floor 1000 mm, eye 900 mm away", "Everyone sees all of it"});
  const evaluate::FitSpot one{
      .share = 1, .worst = 1, .see_all = {1}, .too_high = {}, .too_hot = {}, .cooks = 1};
  CHECK(fit_words(config, one, 1000, 900, Units::Millimetre)[1] == "Ben sees all of it");
  CHECK(fit_words(config, {}, 1000, 900, Units::Millimetre).empty());
}
