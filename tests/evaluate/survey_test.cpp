// The survey inside evaluate(): what feeds the heights, what is found, what is left alone.
#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/surveying.h"
#include "engine/frame/places.h"
#include "engine/report/report_json.h"
#include "engine/report/summary.h"
#include "engine/share/link.h"
#include "tests/report/preset.h"
#include "tests/support/findings.h"
#include "tests/support/random.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using Catch::Matchers::WithinAbs;
using config::PointKind;
using evaluate::PanelPlace;
using test::found;

namespace {

constexpr double kTenth_mm = 0.051;

// Level ground, read at both ends of every panel that shows and at the feet.
config::Config level_site() {
  config::Config c;
  evaluate::Evaluation e = evaluate::evaluate_station(c);
  evaluate::SurveyResult plan;
  evaluate::base_panels(c, e.used, plan);
  for (const survey::PanelLine& panel : plan.panels) {
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
      c.survey.points.push_back({panel.from_x_mm + share * (panel.to_x_mm - panel.from_x_mm),
                                 panel.from_y_mm + share * (panel.to_y_mm - panel.from_y_mm), 900});
    }
  }
  c.survey.points.resize(std::min<std::size_t>(c.survey.points.size(), config::kMaxPoints - 2));
  c.survey.points.push_back({300, -400, 900, config::Setup::A, PointKind::Feet});
  c.survey.points.push_back({1200, -400, 900, config::Setup::A, PointKind::Feet});
  return c;
}

Verdict verdict(const config::Config& c, std::string_view rule) {
  return test::verdict(evaluate::evaluate(c), rule);
}

}  // namespace

TEST_CASE("without a reading there is no survey and no word of one", "[evaluate][survey]") {
  const config::Config c;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  CHECK(e.survey == nullptr);
  for (const Finding& finding : e.findings) CHECK_FALSE(finding.rule.starts_with("survey."));
  CHECK(report::report_json(c, e).find("\"survey\": null") != std::string::npos);
}

TEST_CASE("the ground moves no height that is recommended or used", "[evaluate][survey][law]") {
  config::Config c = test::preset("stations/garden_shelter");
  const evaluate::Evaluation with = evaluate::evaluate(c);
  c.survey.points.clear();
  const evaluate::Evaluation without = evaluate::evaluate(c);
  // A counter's height is above the feet, whatever the ground under the base does.
  CHECK(with.used.counter_mm == without.used.counter_mm);
  CHECK(with.used.oven_base_mm == without.used.oven_base_mm);
}

TEST_CASE("a counter is as high over the feet on any ground, and told from the base as well",
          "[evaluate][survey][law]") {
  test::Random random(90);
  for (int i = 0; i < test::sweep(60); ++i) {
    config::Config c = level_site();
    const double across = random.between(-0.02, 0.02), back = random.between(-0.02, 0.02);
    for (config::SurveyPoint& p : c.survey.points) {
      p.reading_mm = quantised(Quantity::Length, *p.reading_mm - across * p.x_mm - back * p.y_mm +
                                                     random.between(-3, 3));
    }
    const evaluate::Evaluation e = evaluate::evaluate(c);
    REQUIRE(e.survey != nullptr);
    REQUIRE(e.survey->base.has_value());
    const survey::Base& base = *e.survey->base;
    REQUIRE(e.survey->counter.has_value());
    const evaluate::AboveBase& above = *e.survey->counter;
    // Base and what stands on it together reach the height in use over the feet, to 0.1 mm.
    REQUIRE_THAT(base.top_mm + above.base_mm, WithinAbs(*e.used.counter_mm, kTenth_mm));
    REQUIRE_THAT(base.lowest_mm + above.low_mm, WithinAbs(*e.used.counter_mm, kTenth_mm));
    REQUIRE_THAT(base.highest_mm + above.high_mm, WithinAbs(*e.used.counter_mm, kTenth_mm));
    // And the feet are nought.
    double feet = 0;
    for (const survey::Point& p : e.survey->levels.points) {
      if (p.kind == survey::Kind::Feet) feet += *p.height_mm;
    }
    REQUIRE_THAT(feet, WithinAbs(0, 1e-6));
  }
}

TEST_CASE("a constant added to every reading changes nothing but the line",
          "[evaluate][survey][law]") {
  config::Config c = test::preset("stations/garden_shelter");
  const std::string before = report::report_json(c, evaluate::evaluate(c));
  for (config::SurveyPoint& p : c.survey.points) *p.reading_mm += 123.4;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const std::string after = report::report_json(c, e);
  // Line by line: only the two lines' heights, the digest and the fingerprint differ.
  std::istringstream a(before), b(after);
  int differing = 0;
  for (std::string left, right; std::getline(a, left) && std::getline(b, right);) {
    if (left == right) continue;
    ++differing;
    const bool line = left.find("height_mm") != std::string::npos;
    const bool print =
        left.find("digest") != std::string::npos || left.find("fingerprint") != std::string::npos;
    INFO(left << " | " << right);
    CHECK((line || print));
  }
  CHECK(differing == 4);
}

TEST_CASE("level ground gives straight panels", "[evaluate][survey][law]") {
  const evaluate::Evaluation e = evaluate::evaluate(level_site());
  REQUIRE(e.survey->base.has_value());
  int panels = 0;
  for (const auto& cut : e.survey->base->cuts) {
    if (!cut) continue;
    ++panels;
    CHECK(cut->way == survey::Way::Straight);
    for (const survey::Ordinate& o : cut->ordinates) CHECK(o.cut_mm == 0);
  }
  CHECK(panels >= 4);
  CHECK(e.survey->slope->share == 0);
  CHECK(found(e, "survey.drainage")->verdict == Verdict::Warn);
}

TEST_CASE("each rule of the ground just inside, at and just outside its limit",
          "[evaluate][survey][boundary]") {
  // Feet: 10 mm between them is our judgement's limit.
  config::Config c = level_site();
  config::SurveyPoint& foot = c.survey.points.back();
  for (const auto& [mm, expected] :
       {std::pair{909.9, Verdict::Ok}, {910.0, Verdict::Ok}, {910.1, Verdict::Warn}}) {
    foot.reading_mm = mm;
    CHECK(verdict(c, "survey.feet") == expected);
  }
  // Board: the base's top is 100 over level ground.
  c = level_site();
  for (const auto& [mm, expected] :
       {std::pair{100.1, Verdict::Ok}, {100.0, Verdict::Ok}, {99.9, Verdict::Fail}}) {
    c.survey.board_mm = mm;
    c.survey.base_mm = 100;
    CHECK(verdict(c, "survey.base") == expected);
  }
  c = level_site();
  c.survey.base_mm = 60;
  for (const auto& [mm, expected] :
       {std::pair{59.9, Verdict::Ok}, {60.0, Verdict::Ok}, {60.1, Verdict::Fail}}) {
    c.survey.least_mm = mm;
    CHECK(verdict(c, "survey.least") == expected);
  }
  // Anchors: 5 and 10 diameters, a supplier's rule of thumb (second hand).
  c = level_site();
  c.survey.footing = config::Footing::Slab;
  c.survey.anchor = {6.4, 64.0, 32.0};
  CHECK(verdict(c, "survey.anchor") == Verdict::Ok);
  CHECK(verdict(c, "survey.anchor_spacing") == Verdict::Ok);
  c.survey.anchor = {6.4, 63.9, 31.9};
  CHECK(verdict(c, "survey.anchor") == Verdict::Fail);
  CHECK(verdict(c, "survey.anchor_spacing") == Verdict::Fail);
}

TEST_CASE("loose pavers give no anchor any credit", "[evaluate][survey]") {
  config::Config c = level_site();
  CHECK(verdict(c, "survey.anchor") == Verdict::Unknown);
  c.survey.footing = config::Footing::LoosePavers;
  c.survey.anchor = {6.4, 640.0, 320.0};
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const Finding& finding = *found(e, "survey.anchor");
  CHECK(finding.verdict == Verdict::Warn);
  const std::string words = report::sentence(finding, c, e, report::Units::Inch);
  CHECK(words.find("adds nothing against tipping") != std::string::npos);
  CHECK(words.find("tied to a wall") != std::string::npos);
  CHECK(words.find("ocate buried") != std::string::npos);
  CHECK(found(e, "survey.anchor_spacing") == nullptr);
}

TEST_CASE("gas under a closed base is told, and water that is dammed", "[evaluate][survey]") {
  config::Config c = level_site();
  CHECK(found(evaluate::evaluate(c), "survey.gas_vent") == nullptr);
  CHECK(verdict(c, "survey.weeps") == Verdict::Unknown);
  c.site.cylinder = config::Cylinder::OwnCabinet;
  CHECK(verdict(c, "survey.gas_vent") == Verdict::Unknown);
  c.survey.gas_vent_open = false;
  c.survey.weeps = false;
  CHECK(verdict(c, "survey.gas_vent") == Verdict::Fail);
  CHECK(verdict(c, "survey.weeps") == Verdict::Warn);
  c.survey.gas_vent_open = c.survey.weeps = true;
  CHECK(verdict(c, "survey.gas_vent") == Verdict::Ok);
  CHECK(verdict(c, "survey.weeps") == Verdict::Ok);
}

TEST_CASE("a drag keeps the survey and its findings, and a digest tells what it was made for",
          "[evaluate][survey]") {
  config::Config c = test::preset("stations/settled_yard");
  const evaluate::Evaluation full = evaluate::evaluate(c);
  evaluate::Evaluation dragged = evaluate::evaluate_fit(c);
  CHECK(dragged.survey == nullptr);
  evaluate::keep_survey(dragged, full);
  REQUIRE(dragged.survey != nullptr);
  CHECK(dragged.survey->digest == full.survey->digest);
  REQUIRE(dragged.findings.size() == full.findings.size());
  for (std::size_t i = 0; i < full.findings.size(); ++i) {
    CHECK(dragged.findings[i].rule == full.findings[i].rule);
  }
  c.survey.least_mm += 0.1;
  CHECK(evaluate::evaluate(c).survey->digest != full.survey->digest);
}

TEST_CASE("a masonry oven gets no base of boards", "[evaluate][survey]") {
  config::Config c = test::preset("ovens/masonry_dome_28");
  const evaluate::Evaluation e = evaluate::evaluate(c);
  evaluate::SurveyResult plan;
  evaluate::base_panels(c, e.used, plan);
  for (const survey::PanelLine& panel : plan.panels) {
    CHECK(panel.name.find("oven") == std::string_view::npos);
  }
}

TEST_CASE("the base's panels close round each counter", "[evaluate][survey][law]") {
  test::Random random(91);
  for (int i = 0; i < test::sweep(2000); ++i) {
    const config::Config c = test::random_config(random);
    evaluate::Heights used;
    if (random.one_in(2)) used.counter_mm = 900;
    if (random.one_in(2)) used.oven_base_mm = 1000;
    const frame::Places stands = frame::places(c, {used.counter_mm, used.oven_base_mm});
    evaluate::SurveyResult plan;
    evaluate::base_panels(c, used, plan);
    const bool oven = stands.oven_stand && !config::is_masonry(c.oven.kind);
    const auto count = [&](PanelPlace place) {
      return std::count(plan.places.begin(), plan.places.end(), place);
    };
    REQUIRE(plan.places.size() == plan.panels.size());
    // Front and back of each counter that leaves room for boards under it.
    const auto closed = [&](const std::optional<Block>& counter, PanelPlace front,
                            PanelPlace back) {
      REQUIRE(count(front) == count(back));
      REQUIRE(count(front) <= (counter ? 1 : 0));
      const double less_mm = 2 * c.station.overhang_mm + c.station.toe_space_mm + 100;
      const bool room = counter && counter->depth_mm() > less_mm && counter->width_mm() > less_mm;
      if (room) REQUIRE(count(front) == 1);
    };
    closed(oven ? stands.oven_stand : std::nullopt, PanelPlace::OvenFront, PanelPlace::OvenBack);
    closed(stands.dough_counter, PanelPlace::DoughFront, PanelPlace::DoughBack);
    // Both ends, but for one that a masonry pier closes; between two counters what sticks out.
    const auto ends = count(PanelPlace::LeftEnd) + count(PanelPlace::RightEnd);
    const bool pier = stands.oven_stand && !oven;
    const bool deep = std::all_of(plan.within.begin(), plan.within.end(),
                                  [](const Block& base) { return base.depth_mm() > 100; });
    if (deep && plan.within.size() == (oven ? 1U : 0U) + (stands.dough_counter ? 1U : 0U)) {
      REQUIRE(ends == (plan.within.empty() ? 0 : pier ? 1 : 2));
    }
    REQUIRE(count(PanelPlace::Between) <= (plan.within.size() == 2 ? 1 : 0));
    for (const survey::PanelLine& panel : plan.panels) {
      REQUIRE(std::isfinite(panel.length_mm()));
      REQUIRE(panel.from_x_mm >= -kTenth_mm);
      REQUIRE(panel.to_x_mm >= -kTenth_mm);
    }
  }
}

TEST_CASE("a survey of 24 points keeps the whole link within 500 characters",
          "[share][survey][size]") {
  const config::Config shelter = test::preset("stations/garden_shelter");
  REQUIRE(shelter.survey.points.size() == 24);
  CHECK(share::to_link(shelter).size() <= 500);
  // With places and readings to a tenth of a millimetre, from all four lines.
  test::Random random(92);
  std::size_t longest = 0;
  for (int i = 0; i < test::sweep(200); ++i) {
    config::Config c = shelter;
    for (config::SurveyPoint& p : c.survey.points) {
      p = {random.below(30000) / 10.0 + 0.1, -random.below(9000) / 10.0 - 0.1,
           random.below(15000) / 10.0, static_cast<config::Setup>(random.below(4)),
           static_cast<PointKind>(random.below(4))};
      p.x_mm = quantised(Quantity::Length, p.x_mm);
      p.y_mm = quantised(Quantity::Length, p.y_mm);
      p.reading_mm = quantised(Quantity::Length, *p.reading_mm);
    }
    const std::string link = share::to_link(c);
    longest = std::max(longest, link.size());
    REQUIRE(*share::from_link(link) == c);
  }
  CAPTURE(longest);
  CHECK(longest <= 500);
}

TEST_CASE("readings of one line alone are never called good", "[evaluate][survey]") {
  const auto told = [](const config::Config& c) {
    const evaluate::Evaluation e = evaluate::evaluate(c);
    std::vector<std::pair<Verdict, std::string>> all;
    for (const Finding& f : e.findings) {
      if (f.rule != "survey.doubtful") continue;
      all.emplace_back(f.verdict, report::sentence(f, c, e, report::Units::Inch));
    }
    return all;
  };
  config::Config c;
  for (int k = 0; k < 5; ++k) c.survey.points.push_back({400.0 * k, 150, 900});
  auto all = told(c);
  REQUIRE(all.size() == 1);
  CHECK(all[0].first == Verdict::Unknown);
  CHECK(all[0].second.find("off this line") != std::string::npos);
  c.survey.points.push_back({2000, 150, 900});
  all = told(c);
  REQUIRE(all.size() == 1);
  CHECK(all[0].first == Verdict::Unknown);
  CHECK(all[0].second.find("cannot tell yet") != std::string::npos);
  CHECK(all[0].second.find("off this line") != std::string::npos);
  // 3 7/8 in off, among six.
  c.survey.points[3].reading_mm = 900 - 98.4;
  all = told(c);
  REQUIRE(all.size() == 2);
  for (const auto& [verdict, words] : all) CHECK(verdict != Verdict::Ok);
  CHECK(evaluate::evaluate(c).survey->levels.points[3].doubtful);
}

TEST_CASE("one reading where feet stand says nothing of how even it is there",
          "[evaluate][survey]") {
  config::Config c = level_site();
  const auto told = [&c] {
    const evaluate::Evaluation e = evaluate::evaluate(c);
    const Finding* finding = found(e, "survey.feet");
    return std::pair{finding->verdict, report::sentence(*finding, c, e, report::Units::Inch)};
  };
  c.survey.points.back().reading_mm.reset();
  CHECK(told().first == Verdict::Unknown);
  CHECK(told().second.find("1 point more") != std::string::npos);
  c.survey.points.pop_back();
  CHECK(told().second.find("1 point more") != std::string::npos);
  // All that is set out there counts.
  c.survey.points.push_back({1200, -400, 900, config::Setup::A, PointKind::Feet});
  CHECK(told().first == Verdict::Ok);
  c.survey.points.push_back({2000, -400, {}, config::Setup::A, PointKind::Feet});
  CHECK(told().first == Verdict::Unknown);
  // Two that differ differ, whatever is read after them.
  c.survey.points[c.survey.points.size() - 2].reading_mm = 920;
  CHECK(told().first == Verdict::Warn);
  while (c.survey.points.back().kind == PointKind::Feet) c.survey.points.pop_back();
  CHECK(told().second.find("read it at 2 points") != std::string::npos);
}

TEST_CASE("every doubtful point has its own words, high or low or read twice apart",
          "[evaluate][survey]") {
  config::Config c = level_site();
  const std::size_t n = c.survey.points.size();
  REQUIRE(n > 12);
  c.survey.points[1].reading_mm = 900 - 60;
  c.survey.points[6].reading_mm = 900 + 98.4;
  c.survey.points.push_back(c.survey.points[3]);
  *c.survey.points.back().reading_mm += 12.7;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  std::vector<std::string> all;
  for (const Finding& f : e.findings) {
    if (f.rule != "survey.doubtful") continue;
    CHECK(f.verdict == Verdict::Warn);
    all.push_back(report::sentence(f, c, e, report::Units::Inch));
  }
  REQUIRE(all.size() == 3);
  CAPTURE(all[0], all[1], all[2]);
  // The farthest first.
  CHECK(all[0].starts_with("Point 7 is 3\u215e in lower"));
  CHECK(all[0].find("a hole") != std::string::npos);
  CHECK(all[0].find("stone") == std::string::npos);
  CHECK(all[1].starts_with("Point 2 is 2\u215c in higher"));
  CHECK(all[1].find("a stone") != std::string::npos);
  CHECK(all[2].starts_with("Points 4 and " + std::to_string(n + 1) + " are"));
  CHECK(all[2].find("\u00bd in apart") != std::string::npos);
  CHECK(all[2].find("remove") != std::string::npos);
}

TEST_CASE("a fall that is a little short never reads as if it were enough", "[evaluate][survey]") {
  config::Config c = level_site();
  c.site.ground = config::Ground::Paving;
  for (const double share : {0.0151, 0.0199, 0.01996}) {
    for (std::size_t i = 0; i < c.survey.points.size(); ++i) {
      c.survey.points[i].reading_mm = 900 + share * c.survey.points[i].y_mm;
    }
    const evaluate::Evaluation e = evaluate::evaluate(c);
    const Finding* finding = found(e, "survey.drainage");
    REQUIRE(finding->verdict == Verdict::Warn);
    const std::string words = report::sentence(*finding, c, e, report::Units::Inch);
    INFO(words);
    CHECK(words.find("only 2 %") == std::string::npos);
    CHECK(words.find("2 % is asked for") != std::string::npos);
  }
}
