#include "engine/report/summary.h"

#include <string>

#include "catch_amalgamated.hpp"
#include "engine/report/headline.h"
#include "engine/report/phrases.h"
#include "tests/report/hand_built.h"

using namespace hs;
using report::Summary;
using report::Units;

namespace {

Summary built(Units units) {
  const config::Config config = test::hand_built_config();
  return report::summary(config,
                         units == Units::Inch ? test::hand_built_in_inches(config)
                                              : test::hand_built_evaluation(config),
                         units);
}

}  // namespace

TEST_CASE("the two heights come first, each with its band and reason", "[report][summary]") {
  const Summary s = built(Units::Inch);
  REQUIRE(s.headlines.size() == 2);
  CHECK(s.headlines[0].id == "oven_counter");
  CHECK(s.headlines[0].label == "Oven counter");
  CHECK(s.headlines[0].value == "42\u00BC in");
  CHECK(s.headlines[0].band == "about as good: 41\u00BD to 42\u00BC in");
  CHECK(s.headlines[0].yours.empty());
  CHECK(s.headlines[0].note == "recommended: as high as Ana's hands allow");
  CHECK(s.headlines[0].why == "height.hand_ceiling");
  CHECK(s.headlines[0].verdict == Verdict::Ok);
  CHECK(s.headlines[1].id == "dough_counter");
  CHECK(s.headlines[1].value == "35\u00BE in");
  CHECK(s.headlines[1].why == "height.dough_band");
  CHECK(s.headlines[1].verdict == Verdict::Warn);
  const Summary metric = built(Units::Millimetre);
  CHECK(metric.headlines[0].value == "1075 mm");
  CHECK(metric.headlines[0].band == "about as good: 1055 to 1075 mm");
  CHECK(metric.headlines[1].value == "910 mm");
}

TEST_CASE("each cook has one line", "[report][summary]") {
  const Summary s = built(Units::Inch);
  REQUIRE(s.cooks.size() == 2);
  CHECK(s.cooks[0].name == "Ana");
  CHECK(s.cooks[0].line == "sees 76 % of the pizza; all of it from 35 in away");
  CHECK(s.cooks[0].verdict == Verdict::Warn);
  CHECK(s.cooks[1].line == "dough 1\u00B9\u2075\u2044\u2081\u2086 in too high");
  CHECK(s.cooks[1].verdict == Verdict::Warn);
}

TEST_CASE("a cook who watches from where it is too hot is told from where on",
          "[report][summary][heat]") {
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.cooks[0].heat.linger_standoff_mm = config.view.standoff_mm;
  const Summary easy = report::summary(config, e, Units::Millimetre);
  CHECK(easy.cooks[0].line.find("too hot") == std::string::npos);
  e.cooks[0].heat.linger_standoff_mm = config.view.standoff_mm + 10;
  const Summary hot = report::summary(config, e, Units::Millimetre);
  CHECK(hot.cooks[0].line == easy.cooks[0].line + "; too hot to linger nearer than 710 mm");
}

TEST_CASE("the worst caution is a failure before what nobody knows", "[report][summary]") {
  const Summary s = built(Units::Millimetre);
  CHECK(s.worst == "On the left there is only 200 mm; its manual asks for 300 mm.");
  CHECK(s.worst_rule == "clearance.side");
  CHECK(s.worst_verdict == Verdict::Fail);
}

TEST_CASE("several clearances that nobody knows are one caution", "[report][summary]") {
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.findings = {{"clearance.side", Verdict::Unknown, {}, {}, {}, {}, "on the left"},
                {"clearance.back", Verdict::Unknown, {}, {}, {}, {}, "at the back"},
                {"sight.pizza_share", Verdict::Warn, 0, 0.76, 0.999, -0.239, {}}};
  const Summary s = report::summary(config, e, Units::Inch);
  CHECK(
      s.worst ==
      "Nobody has said how much free room this oven needs around it: find it in its manual before "
      "you build.");
  CHECK(s.worst_verdict == Verdict::Unknown);
}

TEST_CASE("what is only not worked out comes after what can be mended", "[report][summary]") {
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.findings = {{"heat.not_computed", Verdict::Unknown, {}, {}, {}, {}, {}},
                {"sight.pizza_share", Verdict::Warn, 0, 0.76, 0.999, -0.239, {}}};
  CHECK(report::summary(config, e, Units::Inch).worst_rule == "sight.pizza_share");
  e.findings.pop_back();
  CHECK(report::summary(config, e, Units::Inch).worst_rule == "heat.not_computed");
  e.findings.clear();
  const Summary calm = report::summary(config, e, Units::Inch);
  CHECK(calm.worst_rule.empty());
  CHECK(calm.worst_verdict == Verdict::Ok);
}

TEST_CASE("a person's own height is told against the recommendation", "[report][summary]") {
  config::Config config = test::hand_built_config();
  config.station.oven_base_height_mm = 1120;
  evaluate::Evaluation e = test::hand_built_in_inches(config);
  e.used.oven_base_mm = 1120;
  e.used.oven_floor_mm = 1270;
  const auto headline = report::oven_headline(config, e, Units::Inch);
  // The figure that is read from afar stays the recommended one.
  CHECK(headline.value == "42\u00BC in");
  CHECK(headline.yours == "yours: 44\u215B in, 1\u215E in above");
  CHECK(headline.note == "recommended: as high as Ana's hands allow");
  CHECK(headline.why == "height.given");
  CHECK(headline.band == "about as good: 41\u00BD to 42\u00BC in");
  CHECK(report::spoken(report::summary(config, e, Units::Inch))
            .starts_with("Oven counter 42 1/4 in, yours: 44 1/8 in, 1 7/8 in above, "
                         "dough counter 35 3/4 in. "));
  config.station.oven_base_height_mm = 1075;
  e.used.oven_base_mm = 1075;
  e.used.oven_floor_mm = 1225;
  const auto same = report::oven_headline(config, e, Units::Inch);
  CHECK(same.yours.empty());
  CHECK(same.note == "yours, as recommended");
  CHECK(same.value == "42\u2075\u2044\u2081\u2086 in");
}

TEST_CASE("a masonry oven is told by its floor, the slab in the note", "[report][summary]") {
  config::Config config = test::hand_built_config();
  config.oven.kind = config::OvenKind::MasonryBarrel;
  const evaluate::Evaluation e = test::hand_built_evaluation(config);
  const auto headline = report::oven_headline(config, e, Units::Millimetre);
  CHECK(headline.label == "Oven floor");
  CHECK(headline.value == "1225 mm");
  CHECK(headline.note == "slab at 1075 mm; recommended: as high as Ana's hands allow");
  CHECK(headline.band == "about as good: 1205 to 1225 mm");
}

TEST_CASE("no card is fine while somebody at it is not", "[report][summary][law]") {
  int blind = 0, both = 0;
  for (double tall_mm = 1700; tall_mm <= 2000; tall_mm += 50) {
    for (double short_mm = 1500; short_mm <= tall_mm; short_mm += 50) {
      config::Config config;
      config.cooks.clear();
      config.cooks.push_back({.name = "Ana", .stature_mm = tall_mm});
      config.cooks.push_back({.name = "Bela", .stature_mm = short_mm});
      for (const Units units : {Units::Inch, Units::Millimetre}) {
        const auto e = evaluate::evaluate_fit(config, report::marks_of(units));
        const Summary s = report::summary(config, e, units);
        CAPTURE(tall_mm, short_mm, s.headlines[0].note, s.headlines[1].note);
        for (const Finding& f : e.findings) {
          if (f.verdict == Verdict::Ok || !f.cook) continue;
          const std::string& name = config.cooks[*f.cook].name;
          const auto names = [&name](const report::Headline& h) {
            return h.verdict != Verdict::Ok && h.note.find(name) != std::string::npos;
          };
          // Seeing little is mended by a step back, so it is no failure of the height.
          if (f.rule == "sight.pizza_share" && f.verdict == Verdict::Fail) {
            ++blind;
            CHECK(names(s.headlines[0]));
          }
          if (f.rule == "height.dough_band") {
            CHECK(names(s.headlines[1]));
            both += f.cook == 1U ? 1 : 0;
          }
        }
      }
    }
  }
  CHECK(blind > 0);
  CHECK(both > 0);
}

TEST_CASE("a height given on one level is given for both", "[report][summary]") {
  using config::Arrangement;
  config::Station station;
  for (const Arrangement way : {Arrangement::OneLevel, Arrangement::Riser, Arrangement::TwoLevel}) {
    CAPTURE(static_cast<int>(way));
    const bool both = way == Arrangement::OneLevel;
    station = {};
    station.arrangement = way;
    CHECK_FALSE(report::given_heights(station).oven_base);
    CHECK_FALSE(report::given_heights(station).counter);
    station.oven_base_height_mm = 1000;
    CHECK(report::given_heights(station).oven_base);
    CHECK(report::given_heights(station).counter == both);
    station.oven_base_height_mm.reset();
    station.counter_height_mm = 900;
    CHECK(report::given_heights(station).oven_base == both);
    CHECK(report::given_heights(station).counter);
  }
}

TEST_CASE("the block under a given level reaches to it", "[report][sentence]") {
  config::Config config = test::hand_built_config();
  config.station.arrangement = config::Arrangement::OneLevel;
  config.station.counter_height_mm = 1000;
  config.station.existing_counter_mm = 914;
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.used = {1000, 1000, 1150, 0};
  e.existing = evaluate::ExistingCounter{914, 86, 0};
  const Finding finding{"height.existing_counter", Verdict::Ok, {}, 914, 1000, 86, {}};
  CHECK(report::sentence(finding, config, e, Units::Millimetre).find("86 mm") != std::string::npos);
}

TEST_CASE("a block that an existing cabinet needs is told beside the height", "[report][summary]") {
  config::Config config = test::hand_built_config();
  config.station.existing_counter_mm = 914;
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.existing = evaluate::ExistingCounter{914, 161, 0};
  CHECK(report::oven_headline(config, e, Units::Millimetre).note ==
        "block of 161 mm on your cabinet; recommended: as high as Ana's hands allow");
}

TEST_CASE("with nobody at the oven there is a dash and a reason", "[report][summary]") {
  config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_in_inches(config);
  e.cooks[0].at_oven = false;
  e.recommended.heights.oven_base_mm.reset();
  e.used.oven_base_mm.reset();
  e.used.oven_floor_mm.reset();
  const Summary s = report::summary(config, e, Units::Inch);
  CHECK(s.headlines[0].value == "\u2014");
  CHECK(s.headlines[0].why == "cook.nobody_at_oven");
  CHECK(report::feet_line(e, Units::Inch).empty());
  CHECK(report::spoken(s).starts_with("Oven counter none, dough counter 35 3/4 in. "));
}

TEST_CASE("the feet line is measured from the counter's edge", "[report][summary]") {
  // In use 490 mm, which the section draws; recommended 670 mm.
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  CHECK(report::feet_line(e, Units::Inch) ==
        "Toes 19 in from the counter's edge as you stand now; the recommended line is 26 in from "
        "the counter's edge");
  const auto line = [&](double used_mm, double recommended_mm) {
    e.feet_line_mm = used_mm;
    e.recommended.feet_line_mm = recommended_mm;
    return report::feet_line(e, Units::Millimetre);
  };
  CHECK(line(490, 490) == "Toes 490 mm from the counter's edge");
  CHECK(line(-60, -60) == "Toes 60 mm under the counter's edge");
  CHECK(line(2, 2) == "Toes at the counter's edge");
}

TEST_CASE("what is read aloud has no typographic fractions", "[report][summary]") {
  CHECK(
      report::spoken(built(Units::Inch)) ==
      "Oven counter 42 1/4 in, dough counter 35 3/4 in. Ana sees 76 % of the pizza; all of it from "
      "35 in away; Ben: dough 1 15/16 in too high.");
}

TEST_CASE("a height that is not good says for whom, and by how much", "[report][summary]") {
  config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  const auto dough = [&] { return report::dough_headline(config, e, Units::Inch).note; };
  e.findings = {{"height.dough_band", Verdict::Warn, 0, 40, 100, -25.4, {}},
                {"height.dough_band", Verdict::Fail, 1, 40, 100, -50.8, {}},
                {"height.dough_band", Verdict::Fail, 0, 300, 200, -76.2, {}}};
  CHECK(dough() == "recommended; 3 in too low for Ana, 2 in too high for Ben");
  e.findings.pop_back();
  // Less below the elbow than the band asks for is too high a counter.
  CHECK(dough() == "recommended; 2 in too high for Ben");
  e.findings = {{"reach.seated_counter", Verdict::Fail, 1, 900, 860, -40, {}}};
  CHECK(report::dough_headline(config, e, Units::Millimetre).note ==
        "recommended; 40 mm too high for Ben");

  const auto oven = [&] { return report::oven_headline(config, e, Units::Millimetre).note; };
  e.findings = {{"height.hand_ceiling", Verdict::Fail, 0, 1275, 1225, -50, {}}};
  CHECK(oven() == "recommended; 50 mm too high for Ana's hands");
  e.findings = {{"height.cover_ceiling", Verdict::Fail, {}, 1075, 1000, -75, {}}};
  CHECK(oven() == "recommended; 75 mm too high for the cover");
  config.station.oven_base_height_mm = 1120;
  e.used.oven_base_mm = 1120;
  e.used.oven_floor_mm = 1270;
  e.findings = {{"height.hand_ceiling", Verdict::Fail, 0, 1270, 1225, -45, {}}};
  CHECK(oven() == "recommended; yours 45 mm too high for Ana's hands");
}

TEST_CASE("a cook's line has the worst first", "[report][summary]") {
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.cooks[0].at_prep = true;
  e.cooks[0].prep_band = {100, 200};
  e.cooks[0].prep_offset_mm = 250.8;
  e.cooks[0].prep_verdict = Verdict::Fail;
  const auto line = [&] { return report::summary(config, e, Units::Inch).cooks[0].line; };
  CHECK(line() == "dough 2 in too low; sees 76 % of the pizza; all of it from 35 in away");
  e.cooks[0].prep_verdict = Verdict::Warn;
  CHECK(line() == "sees 76 % of the pizza; all of it from 35 in away; dough 2 in too low");
  // In a chair knees fit under it or they do not.
  e.cooks[0].body.seated = true;
  CHECK(line() == "dough 2 in too low; sees 76 % of the pizza; all of it from 35 in away");
}

TEST_CASE("where no oven stands nobody is warned of it", "[report][summary]") {
  const config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.findings = {{"clearance.side", Verdict::Fail, {}, 200, 300, -100, "on the left"},
                {"height.dough_band", Verdict::Warn, 1, 40, 100, -60, {}}};
  CHECK(report::summary(config, e, Units::Inch).worst_rule == "clearance.side");
  e.used.oven_base_mm.reset();
  CHECK(report::summary(config, e, Units::Inch).worst_rule == "height.dough_band");
}

TEST_CASE("where it is all seen from reads as farther than where it is not", "[report][phrases]") {
  const config::Config config = test::hand_built_config();
  evaluate::CookResult cook;
  CHECK_FALSE(report::all_seen_from(config.view, cook, Units::Inch).has_value());
  REQUIRE(config.view.standoff_mm == 700);
  cook.full_view.standoff_mm = 705;  // 27.8 in, and 700 mm reads as 28 in
  CHECK(report::all_seen_from(config.view, cook, Units::Inch) == "29 in");
  CHECK(report::all_seen_from(config.view, cook, Units::Millimetre) == "710 mm");
  cook.full_view.standoff_mm = 600;  // nearer: seen already
  CHECK(report::all_seen_from(config.view, cook, Units::Inch) == "24 in");
}
