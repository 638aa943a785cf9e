#include "engine/share/merge.h"

#include <algorithm>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/config/validate.h"
#include "engine/share/link.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using config::Config;
using config::Cook;
using share::Differs;
using share::Say;

namespace {

Cook cook(std::string name, double stature_mm) {
  Cook c;
  c.name = std::move(name);
  c.stature_mm = stature_mm;
  return c;
}

Config household() {
  Config c;
  c.title = "Behind the shed";
  c.cooks = {cook("Ana", 1650), cook("Ben", 1810)};
  c.view.standoff_mm = 650;
  return c;
}

std::vector<std::string> paths(const share::Difference& d) {
  std::vector<std::string> found;
  for (const config::Field* field : d.fields) found.emplace_back(field->path);
  return found;
}

std::vector<std::string> names(const Config& config) {
  std::vector<std::string> found;
  for (const Cook& c : config.cooks) found.push_back(c.name);
  return found;
}

Config taken(const Config& ours, const Config& theirs, std::vector<Say> said) {
  const Result<Config> result = share::merged(ours, theirs, said);
  REQUIRE(result.has_value());
  return *result;
}

}  // namespace

TEST_CASE("a reply with one more cook is one question, and yes adds them at the end", "[merge]") {
  const Config ours = household();
  Config theirs = ours;
  theirs.cooks.push_back(cook("Mia", 1580));
  theirs.cooks.back().eye_height_mm = 1500;
  CHECK(share::is_reply(ours, theirs));
  const auto all = share::differences(ours, theirs);
  REQUIRE(all.size() == 1);
  CHECK(all[0].kind == Differs::NewCook);
  CHECK(all[0].theirs == 2);
  CHECK(paths(all[0]) == std::vector<std::string>{"cooks[].stature_mm", "cooks[].eye_height_mm"});
  CHECK(taken(ours, theirs, {Say::Theirs}) == theirs);
  CHECK(taken(ours, theirs, {Say::Ours}) == ours);
  CHECK(taken(ours, theirs, {}) == ours);
  CHECK(taken(ours, theirs, {Say::Both}) == ours);
}

TEST_CASE("a link is a reply of the same household only", "[merge]") {
  const Config ours = household();
  CHECK_FALSE(share::is_reply(ours, ours));
  Config theirs = ours;
  theirs.view.standoff_mm = 700;
  CHECK_FALSE(share::is_reply(ours, theirs));  // nobody new: another form of the station

  theirs = ours;
  theirs.cooks[0].stature_mm = 1670;
  CHECK(share::is_reply(ours, theirs));
  theirs.oven.kind = config::OvenKind::SteelCabinet;
  CHECK_FALSE(share::is_reply(ours, theirs));

  theirs = ours;
  theirs.cooks = {cook("Mia", 1580)};
  CHECK_FALSE(share::is_reply(ours, theirs));  // nobody in common

  // Someone alone who puts their own number right, but not where the station is another one too.
  Config alone = household();
  alone.cooks = {cook("Ana", 1650)};
  theirs = alone;
  theirs.cooks[0].stature_mm = 1640;
  CHECK(share::is_reply(alone, theirs));
  theirs.view.standoff_mm = 900;
  CHECK_FALSE(share::is_reply(alone, theirs));

  // As many other questions as there may be, and one more.
  theirs = ours;
  theirs.cooks.push_back(cook("Mia", 1580));
  theirs.title = "Another";
  theirs.view = {710, 510, 10, config::Target::Pizza, 310, 20};
  theirs.peel = {340, 910};
  CHECK(share::is_reply(ours, theirs));
  theirs.station.prep_depth_mm = 700;
  CHECK_FALSE(share::is_reply(ours, theirs));
}

TEST_CASE("the same name with other numbers: kept, taken, or both under names of their own",
          "[merge]") {
  const Config ours = household();
  Config theirs = ours;
  theirs.cooks[0].stature_mm = 1700.5;
  theirs.cooks[0].handed = config::Hand::Left;
  const auto all = share::differences(ours, theirs);
  REQUIRE(all.size() == 1);
  CHECK(all[0].kind == Differs::OtherCook);
  CHECK(paths(all[0]) == std::vector<std::string>{"cooks[].stature_mm", "cooks[].handed"});
  CHECK(taken(ours, theirs, {Say::Ours}) == ours);
  CHECK(taken(ours, theirs, {Say::Theirs}) == theirs);
  const Config both = taken(ours, theirs, {Say::Both});
  CHECK(names(both) == std::vector<std::string>{"Ana", "Ben", "Ana 2"});
  CHECK(both.cooks[0] == ours.cooks[0]);
  CHECK(both.cooks[2].stature_mm == 1700.5);
}

TEST_CASE("a second one of a name takes the next free name, never a longer one than allowed",
          "[merge]") {
  Config ours = household();
  ours.cooks.push_back(cook("Ana 2", 1600));
  Config theirs = ours;
  theirs.cooks[0].stature_mm = 1700;
  theirs.cooks.push_back(cook("Ana 3", 1500));
  const Config both = taken(ours, theirs, {Say::Theirs, Say::Both});
  CHECK(names(both) == std::vector<std::string>{"Ana", "Ben", "Ana 2", "Ana 3", "Ana 4"});

  // 40 bytes, the last of them in characters of two and three bytes.
  const auto most = static_cast<std::size_t>(config::find_field("cooks[].name")->max);
  for (const std::string letter : {"x", "\u00E9", "\u4E2D"}) {
    std::string name;
    while (name.size() + letter.size() <= most) name += letter;
    ours.cooks = {cook(name, 1700), cook("Ben", 1800)};
    theirs = ours;
    theirs.cooks[0].stature_mm = 1750;
    const Config next = taken(ours, theirs, {Say::Both});
    CHECK(next.cooks[2].name.ends_with(" 2"));
    CHECK(next.cooks[2].name.size() <= most);
    CHECK(config::validate(next).empty());
  }
}

TEST_CASE("who is here and not there stays, unasked", "[merge]") {
  const Config ours = household();
  Config theirs = ours;
  theirs.cooks = {ours.cooks[0], cook("Mia", 1580)};
  const auto all = share::differences(ours, theirs);
  REQUIRE(all.size() == 1);
  CHECK(names(taken(ours, theirs, {Say::Theirs})) == std::vector<std::string>{"Ana", "Ben", "Mia"});
}

TEST_CASE("someone who was entered by height alone comes in with a name, in that place",
          "[merge]") {
  Config ours = household();
  ours.cooks = {cook("Tallest", 1880), cook("Shortest", 1620)};
  ours.trial.cold_farthest_seen_mm = 300;
  ours.trial.cook = "Tallest";
  Config theirs = ours;
  theirs.cooks[0] = cook("Bela", 1890);
  theirs.trial.cook = "Bela";
  CHECK(share::is_reply(ours, theirs));
  const auto all = share::differences(ours, theirs);
  REQUIRE(all.size() == 2);
  CHECK(all[0].kind == Differs::NewCook);
  CHECK(all[0].for_stand_in);
  CHECK(all[0].ours == 0);
  CHECK(taken(ours, theirs, {Say::InPlace, Say::Theirs}) == theirs);
  // Whoever looked in the trial is the same person under their name.
  CHECK(taken(ours, theirs, {Say::InPlace, Say::Ours}) == theirs);
  CHECK(names(taken(ours, theirs, {Say::Theirs})) ==
        std::vector<std::string>{"Tallest", "Shortest", "Bela"});
  CHECK(taken(ours, theirs, {}) == ours);

  // Alone, too; but a name that somebody chose is nobody's place, nor is one that is still there.
  ours.cooks = {cook("Cook 1", 1700)};
  ours.trial = {};
  theirs = ours;
  theirs.cooks[0] = cook("Bela", 1890);
  CHECK(share::is_reply(ours, theirs));
  CHECK(taken(ours, theirs, {Say::InPlace}) == theirs);
  ours.cooks[0].name = "Dad";
  CHECK_FALSE(share::is_reply(ours, theirs));
  CHECK_FALSE(share::differences(ours, theirs)[0].for_stand_in);
  CHECK(names(taken(ours, theirs, {Say::InPlace})) == std::vector<std::string>{"Dad", "Bela"});
  ours.cooks[0].name = "Cook 1";
  theirs.cooks.push_back(cook("Cook 1", 1700));
  CHECK_FALSE(share::differences(ours, theirs)[0].for_stand_in);
}

TEST_CASE("replies of two people come in one after the other", "[merge]") {
  const Config ours = household();
  Config mia = ours, tom = ours;
  mia.cooks.push_back(cook("Mia", 1580));
  tom.cooks.push_back(cook("Tom", 1900));
  const Config first = taken(ours, mia, {Say::Theirs});
  CHECK(share::is_reply(first, tom));
  const Config second = taken(first, tom, {Say::Theirs});
  CHECK(names(second) == std::vector<std::string>{"Ana", "Ben", "Mia", "Tom"});
  // The same link again has nothing to add.
  CHECK_FALSE(share::is_reply(second, tom));
}

TEST_CASE("changed values of the station are asked one by one, what belongs together at once",
          "[merge]") {
  const Config ours = household();
  Config theirs = ours;
  theirs.view.standoff_mm = 800;
  theirs.station.prep_depth_mm = 700;
  theirs.station.arrangement = config::Arrangement::OneLevel;
  theirs.station.counter_height_mm = 950;
  theirs.station.oven_base_height_mm = 950;
  theirs.trial.cold_farthest_seen_mm = 300;
  theirs.trial.cook = "Ana";
  theirs.light.mount = config::Mount::Left;
  theirs.light.head = {100, 200, 300};
  theirs.survey.points = {{0, 0, 500.0, config::Setup::A, config::PointKind::Panel}};
  theirs.stock.resize(1);
  theirs.stock[0].price = 12.5;
  const auto all = share::differences(ours, theirs);
  std::vector<std::string> asked;
  for (const auto& d : all) {
    asked.emplace_back(!d.fields.empty()                 ? d.fields[0]->path
                       : d.kind == share::Differs::Stock ? "stock"
                                                         : "ground");
  }
  std::sort(asked.begin(), asked.end());
  CHECK(asked == std::vector<std::string>{"ground", "light.head.across_mm", "light.mount",
                                          "station.arrangement", "station.prep_depth_mm", "stock",
                                          "trial.cold_farthest_seen_mm", "view.standoff_mm"});
  for (const auto& d : all) {
    if (!d.fields.empty() && d.fields[0]->path == "station.arrangement")
      CHECK(d.fields.size() == 3);
  }
  CHECK(taken(ours, theirs, std::vector<Say>(all.size(), Say::Theirs)) == theirs);
  // Each alone leaves all others as they were.
  for (std::size_t i = 0; i < all.size(); ++i) {
    std::vector<Say> said(all.size(), Say::Ours);
    said[i] = Say::Theirs;
    const Config one = taken(ours, theirs, said);
    CHECK(one != ours);
    CHECK(share::differences(one, theirs).size() == all.size() - 1);
  }
}

TEST_CASE("more than twelve cooks are refused in words, and nothing is half done", "[merge]") {
  Config ours = household();
  while (ours.cooks.size() < 11) {
    ours.cooks.push_back(cook("Cook " + std::to_string(ours.cooks.size() + 1), 1700));
  }
  Config theirs = ours;
  theirs.cooks.erase(theirs.cooks.begin() + 5, theirs.cooks.end());
  theirs.cooks.push_back(cook("Mia", 1580));
  theirs.cooks.push_back(cook("Tom", 1900));
  REQUIRE(share::is_reply(ours, theirs));
  CHECK(taken(ours, theirs, {Say::Theirs, Say::Ours}).cooks.size() == config::kMaxCooks);
  const std::vector<Say> both{Say::Theirs, Say::Theirs};
  const auto refused = share::merged(ours, theirs, both);
  REQUIRE_FALSE(refused.has_value());
  CHECK(sentence(refused.error()[0]).find("1 to 12 cooks") != std::string::npos);
}

TEST_CASE("a trial by someone who is left out is refused", "[merge]") {
  const Config ours = household();
  Config theirs = ours;
  theirs.cooks.push_back(cook("Mia", 1580));
  theirs.trial.cold_farthest_seen_mm = 300;
  theirs.trial.cook = "Mia";
  const std::vector<Say> without{Say::Ours, Say::Theirs};
  const auto refused = share::merged(ours, theirs, without);
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error()[0].path == "trial.at.cook");
  CHECK(taken(ours, theirs, {Say::Theirs, Say::Theirs}) == theirs);
}

TEST_CASE("of any two stations, all of theirs is theirs but for who is only here, and none is ours",
          "[merge]") {
  test::Random random(11);
  for (int i = 0; i < test::sweep(300); ++i) {
    const Config ours = test::random_config(random), theirs = test::random_config(random);
    const auto all = share::differences(ours, theirs);
    CHECK(taken(ours, theirs, std::vector<Say>(all.size(), Say::Ours)) == ours);
    const auto next = share::merged(ours, theirs, std::vector<Say>(all.size(), Say::Theirs));
    if (!next) {
      CHECK(next.error()[0].path == "cooks");  // too many of both
      continue;
    }
    CHECK(share::differences(*next, theirs).empty());
    const std::string link = share::to_link(*next);
    CHECK(share::from_link(link).has_value() == (link.size() <= share::kLongestLink));
    CHECK(share::differences(ours, ours).empty());
  }
}
