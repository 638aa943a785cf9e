#include <algorithm>
#include <array>
#include <cctype>
#include <optional>
#include <regex>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"
#include "engine/reach/reach.h"
#include "engine/report/phrases.h"
#include "engine/report/summary.h"
#include "engine/rules/rules.h"
#include "tests/report/hand_built.h"

using namespace hs;
using report::Units;

namespace {

std::string said(const Finding& finding, Units units) {
  const config::Config config = test::hand_built_config();
  return report::sentence(finding, config,
                          units == report::Units::Inch ? test::hand_built_in_inches(config)
                                                       : test::hand_built_evaluation(config),
                          units);
}

// Something that a rule did not foresee: the words for a verdict without a sentence.
bool fallback(const Finding& finding, const std::string& text) {
  const std::string title(rules::find_rule(finding.rule)->title);
  return text == title + ": fine." || text == title + ": take care." ||
         text == title + ": not met." || text == title + ": not known.";
}

}  // namespace

TEST_CASE("a cook who misses part of the pizza is told how far to step back",
          "[report][sentence]") {
  const Finding f{"sight.pizza_share", Verdict::Warn, 0, 0.76444, 0.999, -0.2346, {}};
  CHECK(said(f, Units::Inch) ==
        "Ana sees 76 % of the pizza from 28 in; one step back to 35 in shows all of it.");
  CHECK(said(f, Units::Millimetre) ==
        "Ana sees 76 % of the pizza from 700 mm; one step back to 880 mm shows all of it.");
}

TEST_CASE("nothing is promised where no step back helps", "[report][sentence]") {
  config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.cooks[0].full_view.standoff_mm.reset();
  const Finding f{"sight.pizza_share", Verdict::Fail, 0, 0.2, 0.999, -0.799, {}};
  CHECK(report::sentence(f, config, e, Units::Inch) ==
        "Ana sees only 20 % of the pizza from 28 in.");
}

TEST_CASE("a place that rounds to where the cook stands is told one further",
          "[report][sentence]") {
  config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.cooks[0].full_view.standoff_mm = 704;  // 27.7 in, and 700 mm is 27.6
  const Finding f{"sight.pizza_share", Verdict::Warn, 0, 0.997, 0.999, -0.002, {}};
  CHECK(report::sentence(f, config, e, Units::Inch) ==
        "Ana sees 99 % of the pizza from 28 in; one step back to 29 in shows all of it.");
}

TEST_CASE("what must be seen is named", "[report][sentence]") {
  config::Config config = test::hand_built_config();
  const evaluate::Evaluation e = test::hand_built_evaluation(config);
  const Finding f{"sight.full_view", Verdict::Warn, 0, 877.3, 700, -177.3, {}};
  CHECK(report::sentence(f, config, e, Units::Millimetre) ==
        "Ana sees all of the pizza only from 880 mm back, 180 mm further than the watching "
        "distance.");
  config.view.target = config::Target::WholeFloor;
  CHECK(
      report::sentence(f, config, e, Units::Inch) ==
      "Ana sees the oven's floor to the back only from 35 in back, 7 in further than the watching "
      "distance.");
}

TEST_CASE("hands at their ceiling, under it and over it", "[report][sentence]") {
  CHECK(said({"height.hand_ceiling", Verdict::Ok, 0, 1225, 1226.2, 1.2, {}}, Units::Inch) ==
        "The oven's floor is just as high as Ana's hands allow.");
  CHECK(said({"height.hand_ceiling", Verdict::Ok, 0, 1126, 1226.2, 100.2, {}}, Units::Millimetre) ==
        "Ana's hands are at ease: the oven's floor is 100 mm under the highest that suits them.");
  CHECK(said({"height.hand_ceiling", Verdict::Fail, 0, 1369, 1226.2, -142.8, {}}, Units::Inch) ==
        "Too high for Ana's hands: the oven's floor is at 53\u215E in, and 48\u00BC in is the "
        "highest at "
        "which the peel stays under control.");
}

TEST_CASE("a dough counter, how far off it is and what is right add up",
          "[report][sentence][law]") {
  // Whole millimetres or sixteenths, as a person reads them off the sentence.
  const auto lengths = [](const std::string& text) {
    const std::string plain = report::plain_marks(text);
    const std::regex length(R"((\d+)/(\d+)|(\d+)(?: (\d+)/(\d+))?)");
    std::vector<double> found;
    for (std::sregex_iterator it(plain.begin(), plain.end(), length), end; it != end; ++it) {
      const std::smatch& m = *it;
      double value = m[3].matched ? std::stod(m[3]) : std::stod(m[1]) / std::stod(m[2]);
      if (m[4].matched) value += std::stod(m[4]) / std::stod(m[5]);
      found.push_back(value);
    }
    return found;
  };
  int told = 0;
  for (const Units units : {Units::Inch, Units::Millimetre}) {
    for (int tall_mm = 1750; tall_mm <= 1980; tall_mm += 7) {
      config::Config config;
      config.cooks.clear();
      for (const double stature_mm : {static_cast<double>(tall_mm), 1560.0}) {
        config::Cook cook;
        cook.name = stature_mm == 1560 ? "Ana" : "Bela";
        cook.stature_mm = stature_mm;
        config.cooks.push_back(cook);
      }
      const auto e = evaluate::evaluate_fit(config, report::marks_of(units));
      for (const Finding& finding : e.findings) {
        if (finding.rule != "height.dough_band" || finding.verdict == Verdict::Ok) continue;
        const std::string text = report::sentence(finding, config, e, units);
        INFO(text);
        const auto [counter, off, low, high] = [&] {
          const auto all = lengths(text);
          REQUIRE(all.size() == 4);
          return std::array<double, 4>{all[0], all[1], all[2], all[3]};
        }();
        CHECK(off > 0);
        if (text.find("too low") != std::string::npos) CHECK(counter + off == low);
        if (text.find("too high") != std::string::npos) CHECK(counter - off == high);
        ++told;
      }
    }
  }
  CHECK(told > 40);
}

TEST_CASE("a counter too little below the elbow is too high", "[report][sentence]") {
  CHECK(said({"height.dough_band", Verdict::Warn, 1, 120, 170, -50, {}}, Units::Millimetre) ==
        "The dough counter at 910 mm is 50 mm too high for Ben; 760 to 860 mm is right.");
  CHECK(
      said({"height.dough_band", Verdict::Fail, 1, 350, 270, -80, {}}, Units::Millimetre) ==
      "The dough counter at 910 mm is 80 mm too low for Ben: not for a whole batch; 760 to 860 mm "
      "is right.");
  CHECK(said({"height.dough_band", Verdict::Ok, 0, 216.2, 270, 46.2, {}}, Units::Inch) ==
        "The dough counter at 35\u00BE in suits Ana: 8\u00BD in below the elbow.");
}

TEST_CASE("a clearance says whose figure it is, or that nobody has said", "[report][sentence]") {
  CHECK(said({"clearance.side", Verdict::Fail, {}, 200, 300, -100, "on the left"},
             Units::Millimetre) == "On the left there is only 200 mm; its manual asks for 300 mm.");
  CHECK(said({"clearance.side", Verdict::Unknown, {}, {}, 300, {}, "on the right"},
             Units::Millimetre) ==
        "On the right its manual asks for 300 mm; nobody has measured what is there.");
  CHECK(said({"clearance.back", Verdict::Unknown, {}, {}, {}, {}, "at the back"}, Units::Inch) ==
        "How much room this oven needs behind it is not known: find it in its manual before you "
        "build.");
}

TEST_CASE("bending is told by joint", "[report][sentence]") {
  CHECK(said({"sight.stoop", Verdict::Ok, 0, 0, 20, 20, {}}, Units::Inch) ==
        "Without stepping back, Ana sees all of the pizza with knees bent 24\u00B0.");
  CHECK(said({"sight.stoop", Verdict::Fail, 0, {}, 20, {}, {}}, Units::Inch) ==
        "Bending does not help: no stoop that keeps the face out of the heat shows Ana all of the "
        "pizza. Step back to 35 in.");
}

TEST_CASE("an unlikely cold trial names no input", "[report][sentence]") {
  config::Config config = test::hand_built_config();
  evaluate::Evaluation e = test::hand_built_evaluation(config);
  e.trial = evaluate::ColdTrial{.cook = 0,
                                .measured_mm = 250,
                                .predicted_mm = 298,
                                .difference_mm = -48,
                                .likely_field = "oven.mouth_height_mm",
                                .corrected_mm = 118,
                                .standard_errors = 3};
  const Finding f{"sight.cold_trial", Verdict::Warn, 0, 250, 298, -48, {}};
  CHECK(report::sentence(f, config, e, Units::Millimetre) ==
        "In the cold trial Ana saw the 250 mm mark, 48 mm nearer than the 298 mm expected. Most "
        "likely off: mouth height; 118 mm would explain it.");
  e.trial->likely_field = "cooks.0.eye_height_mm";
  CHECK(
      report::sentence(f, config, e, Units::Millimetre).find("Most likely off: Ana's eye height") !=
      std::string::npos);
  // Beyond four of its own errors the trial names none.
  e.trial->likely_field.clear();
  e.trial->corrected_mm.reset();
  CHECK(report::sentence(f, config, e, Units::Millimetre) ==
        "In the cold trial Ana saw the 250 mm mark, 48 mm nearer than the 298 mm expected; no one "
        "input explains that much: measure again.");
}

TEST_CASE("an unknown rule says nothing and a verdict without words says its title",
          "[report][sentence]") {
  CHECK(said({"height.no_such_rule", Verdict::Fail, {}, {}, {}, {}, {}}, Units::Inch).empty());
  CHECK(said({"sight.gaze", Verdict::Unknown, 0, {}, {}, {}, {}}, Units::Inch) ==
        "How steeply the cook looks down: not known.");
}

TEST_CASE("knee room says the depth and width that nobody is asked for, with their source",
          "[report][sentence][source]") {
  // ADA 2010, 306.3.2 to 306.3.5: depth at least 205 mm at 685 mm and 280 mm at 230 mm, 760 wide.
  CHECK(reach::knee_depth_mm(685) == 205);
  CHECK(reach::knee_depth_mm(230) == 280);
  config::Config config;
  config.cooks[0].seated = true;
  const std::optional<double> heights_mm[] = {std::nullopt, 600.0, 700.0};
  for (const std::optional<double>& knee_mm : heights_mm) {
    config.station.knee_height_mm = knee_mm;
    const evaluate::Evaluation e = evaluate::evaluate(config);
    const auto at = std::find_if(e.findings.begin(), e.findings.end(), [](const Finding& finding) {
      return finding.rule == "reach.knee_room";
    });
    REQUIRE(at != e.findings.end());
    const std::string text = report::sentence(*at, config, e, Units::Millimetre);
    CAPTURE(text);
    for (const char* told : {"8 in (205 mm) at 27 in (685 mm)", "11 in (280 mm) at 9 in (230 mm)",
                             "30 in (760 mm) of width", "(ADA 2010, 306.3.2 to 306.3.5)"}) {
      CHECK(text.find(told) != std::string::npos);
    }
  }
}

TEST_CASE("every finding of real households is a whole sentence", "[report][sentence][evaluate]") {
  config::Config plain;
  config::Config crowd;
  crowd.cooks = {
      {.name = "Ana", .stature_mm = 1560},
      {.name = "Ben", .stature_mm = 1930},
      {.name = "Cleo", .stature_mm = 1200, .build = config::Build::Child, .age_years = 7},
      {.name = "Dov", .stature_mm = 1700, .seated = true},
      {.name = "Eve", .stature_mm = 1720, .build = config::Build::Child, .age_years = 16}};
  crowd.cooks[4].at = config::At::Both;
  crowd.site.cover_height_mm = 1900;
  crowd.site.local_clearance.above_mm = 900;
  crowd.oven.listed_clearance = {300, 200, 750, 600, 50, false, {}};
  crowd.station.top_combustible = true;
  crowd.station.left_gap_mm = 100;
  crowd.station.right_gap_mm = 500;
  crowd.station.back_gap_mm = 250;
  crowd.station.aisle_mm = 900;
  crowd.station.landing_right_mm = 200;
  crowd.station.knee_height_mm = 600;
  crowd.station.existing_counter_mm = 700;
  crowd.trial.cold_farthest_seen_mm = 200;
  config::Config high = plain;
  high.station.oven_base_height_mm = 1219;
  high.station.counter_height_mm = 1000;
  high.view.target = config::Target::FarCrust;
  config::Config over = plain;
  over.station.oven_base_height_mm = 1700;
  config::Config masonry = plain;
  masonry.oven.kind = config::OvenKind::MasonryDome36;
  masonry.view.target = config::Target::WholeFloor;
  masonry.peel.blade_width_mm = 500;
  masonry.view.pizza_diameter_mm = 600;
  for (const config::Config& config : {plain, crowd, high, over, masonry}) {
    const evaluate::Evaluation e = evaluate::evaluate(config);
    for (const Finding& finding : e.findings) {
      CAPTURE(finding.rule, verdict_name(finding.verdict));
      REQUIRE(rules::find_rule(finding.rule) != nullptr);
      for (const Units units : {Units::Inch, Units::Millimetre}) {
        const std::string text = report::sentence(finding, config, e, units);
        CAPTURE(text);
        CHECK_FALSE(fallback(finding, text));
        CHECK(text.back() == '.');
        CHECK(text.find_first_of("{}[]|") == std::string::npos);
        CHECK(text.find("  ") == std::string::npos);
        if (units == Units::Inch) {
          CHECK((text.find(" mm") == std::string::npos || text.find("mm)") != std::string::npos));
        }
      }
    }
  }
}
