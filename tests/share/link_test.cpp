#include "engine/share/link.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "engine/config/read.h"
#include "engine/share/coder.h"
#include "engine/share/seal.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using share::from_link;
using share::to_link;

namespace {

bool is_link_character(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '_';
}

std::string sealed(const std::string& coded) { return coded + share::check_digits(coded); }

std::string message(std::string_view text) {
  const auto config = from_link(text);
  return config ? "" : sentence(config.error().at(0));
}

}  // namespace

TEST_CASE("a link holds letters, digits, '-' and '_' and ends in a letter or digit", "[share]") {
  test::Random random(1);
  for (int i = 0; i < test::sweep(1000); ++i) {
    const std::string link = to_link(test::random_config(random));
    CHECK(std::all_of(link.begin(), link.end(), is_link_character));
    CHECK(link.front() == share::kLinkVersion);
    CHECK(std::isalnum(static_cast<unsigned char>(link.back())) != 0);
  }
}

TEST_CASE("the default station's link is five characters", "[share]") {
  CHECK(to_link(config::Config{}).size() == 5);
}

TEST_CASE(
    "the fullest four-cook config fits in 260 characters, in 340 with what stands around it, and "
    "in "
    "480 with how it is built; in 800 with the shop, power, paint and plan",
    "[share][size]") {
  test::Random random(5);
  std::size_t longest = 0, longest_around = 0, longest_built = 0, longest_of_all = 0;
  for (int i = 0; i < test::sweep(1000); ++i) {
    config::Config config = test::fullest_config(random, 4);
    // The 340 were set before a station had a base: tags from 240 on, which have a limit of their
    // own in tests/evaluate/survey_test.cpp.
    config.survey = {};
    longest_of_all = std::max(longest_of_all, to_link(config).size());
    const auto without = [&config](int from) {
      for (const config::Field& field : config::fields()) {
        if (field.tag >= from && field.group == config::Group::Station) {
          field.set(config, 0, config::default_value(field));
        }
      }
      return to_link(config).size();
    };
    // The 480 were set before a station had a shop: tags from 330 on.
    longest_built = std::max(longest_built, without(330));
    // What it is built of and stands on has tags from 240 on.
    longest_around = std::max(longest_around, without(240));
    // The 260 were set for what a station is seen and built by, before it had a lamp or neighbours:
    // tags from 150 on.
    longest = std::max(longest, without(150));
  }
  CAPTURE(longest, longest_around, longest_built, longest_of_all);
  CHECK(longest <= 260);
  CHECK(longest_around <= 340);
  CHECK(longest_built <= 480);
  CHECK(longest_of_all <= 800);
}

TEST_CASE("twelve cooks with the longest names and title stay within a link", "[share][size]") {
  test::Random random(6);
  config::Config config = test::fullest_config(random, config::kMaxCooks);
  config.title.clear();
  for (int i = 0; i < 26; ++i)
    append_code_point(config.title, 0x4E00U + 123U * static_cast<unsigned>(i));
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    std::string& name = config.cooks[i].name;
    name.clear();
    for (unsigned j = 0; j < 10; ++j)
      append_code_point(name, 0x10000U + 7919U * (j + 10U * static_cast<unsigned>(i)));
  }
  config.trial.cook = config.cooks[0].name;
  const std::string link = to_link(config);
  CHECK(link.size() <= share::kLongestLink);
  const auto back = from_link(link);
  REQUIRE(back.has_value());
  CHECK(*back == config);
}

TEST_CASE("every single changed character is noticed", "[share][law]") {
  test::Random random(8);
  for (int i = 0; i < test::sweep(20); ++i) {
    const std::string link = to_link(test::random_config(random));
    for (std::size_t at = 0; at < link.size(); ++at) {
      for (char c = '!'; c <= '~'; ++c) {
        if (c == link[at] || c == '#') continue;
        std::string changed = link;
        changed[at] = c;
        REQUIRE_FALSE(from_link(changed).has_value());
      }
    }
  }
}

TEST_CASE("every swap of two neighbours is noticed", "[share][law]") {
  test::Random random(9);
  for (int i = 0; i < test::sweep(50); ++i) {
    const std::string link = to_link(test::random_config(random));
    for (std::size_t at = 0; at + 1 < link.size(); ++at) {
      if (link[at] == link[at + 1]) continue;
      std::string changed = link;
      std::swap(changed[at], changed[at + 1]);
      REQUIRE_FALSE(from_link(changed).has_value());
    }
  }
}

TEST_CASE("a link cut anywhere is refused or, by a rare chance, never a wrong one",
          "[share][law]") {
  // A cut link has other check digits; one in 65536 fits by chance, and then the digits before it
  // must still be what to_link writes. None of these samples is such a case.
  test::Random random(10);
  for (int i = 0; i < test::sweep(50); ++i) {
    const std::string link = to_link(test::random_config(random));
    for (std::size_t length = 0; length < link.size(); ++length) {
      REQUIRE_FALSE(from_link(link.substr(0, length)).has_value());
      REQUIRE_FALSE(from_link(link.substr(link.size() - length)).has_value());
    }
  }
}

TEST_CASE("a link is read with breaks, spaces and what stands before '#'", "[share]") {
  test::Random random(11);
  const config::Config config = test::fullest_config(random, 2);
  const std::string link = to_link(config);
  const std::string half = link.substr(0, link.size() / 2);
  const std::string rest = link.substr(link.size() / 2);
  for (const std::string& text : {"#" + link, "https://example.org/x?y#" + link,
                                  " " + half + "\r\n " + rest + "\n", half + "\t" + rest}) {
    CAPTURE(text);
    const auto back = from_link(text);
    REQUIRE(back.has_value());
    CHECK(*back == config);
  }
}

TEST_CASE("damaged, newer and oversized links are told apart in plain words", "[share]") {
  const std::string link = to_link(config::Config{});
  CHECK(message("").find("damaged or cut short") != std::string::npos);
  CHECK(message(link + "x").find("damaged or cut short") != std::string::npos);
  CHECK(message(sealed("bABC")).find("newer version") != std::string::npos);
  CHECK(message(sealed("9ABC")).find("damaged") != std::string::npos);
  CHECK(message(std::string(1'000'000, 'a')).find("damaged") != std::string::npos);
  CHECK(message(sealed("a" + std::string(2000, 'B'))).find("damaged") != std::string::npos);
  CHECK(message("\xFF\xFE").find("damaged") != std::string::npos);
}

TEST_CASE("a tag that no field has is a newer link, not a damaged one", "[share]") {
  // The events of a config with one field after the last: no cook's field, then a far tag.
  share::Encoder coder;
  share::Odds cooks, cook_neighbour, cook_end, neighbour, end, ten;
  coder.bit(cooks, false), coder.below(0, 1);                   // one cook
  coder.bit(cook_neighbour, false), coder.bit(cook_end, true);  // none of their fields
  coder.bit(neighbour, false), coder.bit(end, false), coder.bit(ten, false);
  std::array<share::Odds, 18> longer{};
  for (std::size_t bit = 0; bit < 14; ++bit) coder.bit(longer[bit], true);
  coder.bit(longer[14], false), coder.below(7, 1U << 14U);  // tag 16391
  std::string text(1, share::kLinkVersion);
  for (const std::uint8_t digit : coder.finish()) {
    text.push_back("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"[digit]);
  }
  CHECK(message(sealed(text)).find("newer version") != std::string::npos);
}

TEST_CASE("digits that to_link would not write are refused even with their check digits right",
          "[share][law]") {
  // Forged bodies: whatever they decode to, only the one spelling of a config is taken.
  constexpr std::string_view kDigits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  test::Random random(12);
  int taken = 0;
  for (int i = 0; i < test::sweep(20'000); ++i) {
    std::string coded(1, share::kLinkVersion);
    const int length = random.below(40);
    for (int j = 0; j < length; ++j)
      coded.push_back(kDigits[static_cast<std::size_t>(random.below(64))]);
    const auto config = from_link(sealed(coded));
    if (!config) continue;
    ++taken;
    REQUIRE(to_link(*config) == sealed(coded));
  }
  CHECK(taken > 0);
}

TEST_CASE("a link of values that no file could hold is refused like the file", "[share]") {
  config::Config twins;
  twins.cooks.push_back(twins.cooks[0]);
  CHECK(message(to_link(twins)).find("cooks.1.name") == 0);
  config::Config stranger;
  stranger.trial.cook = "Zed";
  CHECK(message(to_link(stranger)).find("trial.at.cook") == 0);
}

TEST_CASE("every field's range fits the coder", "[share]") {
  for (const config::Field& field : config::fields()) {
    const double quanta = (field.max - field.min) * quanta_per_unit(field.quantity) + 1;
    CHECK(quanta <= static_cast<double>(share::kMostOutcomes));
    CHECK(field.tag < (1U << 14U));
  }
}
