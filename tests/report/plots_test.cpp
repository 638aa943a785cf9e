#include "engine/report/plots.h"

#include <algorithm>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/curves.h"
#include "engine/report/phrases.h"
#include "engine/report/plot_parts.h"
#include "tests/report/hand_built.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::WithinAbs;
using hs::test::preset;

namespace {

constexpr double kDrawn_mm = 1e-9;  // the drawing copies numbers, it rounds none

std::vector<std::string> texts(const Drawing& d) {
  std::vector<std::string> all;
  for (const Mark& mark : d.marks()) {
    if (mark.shape == Shape::Text) all.emplace_back(d.text(mark));
  }
  return all;
}

bool has(const std::vector<std::string>& all, std::string_view text) {
  return std::find(all.begin(), all.end(), text) != all.end();
}

std::vector<std::vector<Spot>> of(const Drawing& d, Shape shape, Role role) {
  std::vector<std::vector<Spot>> found;
  for (const Mark& mark : d.marks()) {
    if (mark.shape != shape || mark.role != role) continue;
    const auto points = d.points(mark);
    found.emplace_back(points.begin(), points.end());
  }
  return found;
}

}  // namespace

TEST_CASE("ticks are round in the person's unit and far enough apart", "[report][plots]") {
  // 800 mm on 77 mm of paper: 6 in are 14.7 mm apart, 4 in 9.8.
  CHECK(tick_step(700, 1500, 77, 14, Units::Inch) == 6 * 25.4);
  CHECK(tick_step(700, 1500, 77, 9, Units::Inch) == 4 * 25.4);
  CHECK(tick_step(700, 1500, 77, 9, Units::Millimetre) == 100);
  CHECK(ticks(100, 300, 100) == std::vector<double>{100, 200, 300});
  CHECK(ticks(-30, 30, 25.4).size() == 3);
  CHECK(tick_text(914.4, Units::Inch) == "36");
  CHECK(tick_text(900, Units::Millimetre) == "900");
}

TEST_CASE("the share plot has a row for each oven cook, its value at the height in use",
          "[report][plots]") {
  const config::Config config = preset("stations/four_cooks");
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  const Sheet sheet = share_plot(config, e, {.units = Units::Millimetre});
  const std::vector<std::string> all = texts(sheet.drawing);
  const std::vector<std::vector<Spot>> dots = of(sheet.drawing, Shape::Dot, Role::InUse);
  const std::vector<std::vector<Spot>> limits = of(sheet.drawing, Shape::Polyline, Role::Limit);
  std::size_t rows = 0;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    if (!e.cooks[i].at_oven) continue;
    INFO(config.cooks[i].name);
    CHECK(has(all, config.cooks[i].name));
    const double share = e.cooks[i].watching.pizza_share;
    CHECK(has(all, percent(share)));
    CHECK(sheet.description.find(config.cooks[i].name + " " + percent(share)) != std::string::npos);
    // The dot stands at the share's part of the row's height; the row's foot and top are where the
    // line of the hands' limit, which spans it, ends.
    REQUIRE(rows < dots.size());
    REQUIRE(rows < limits.size() - 1);  // the last one is the key's
    const double lower = limits[rows][0].y_mm, upper = limits[rows][1].y_mm;
    CHECK_THAT(dots[rows][0].y_mm, WithinAbs(lower + share * (upper - lower), kDrawn_mm));
    ++rows;
  }
  CHECK(rows > 1);
  CHECK(dots.size() == rows);
}

TEST_CASE("a plot's table has the curve's values", "[report][plots]") {
  const config::Config config = preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate_fit(config);
  const evaluate::Curves curves = evaluate::seen_shares(config, e, 10);
  const Sheet sheet = share_plot(config, e, {.units = Units::Millimetre});
  REQUIRE(sheet.table.columns.size() == 1 + curves.cooks.size());
  CHECK(sheet.table.columns[0] == "Oven counter");
  REQUIRE(sheet.table.rows.size() > 4);
  for (std::size_t i = 0; i < sheet.table.rows.size(); ++i) {
    const std::vector<std::string>& row = sheet.table.rows[i];
    CHECK(row[0] == plain_length(curves.heights_mm[4 * i], Units::Millimetre, true));
    for (std::size_t c = 0; c < curves.cooks.size(); ++c) {
      CHECK(row[1 + c] == percent(curves.cooks[c].values[4 * i]));
    }
  }
}

TEST_CASE("comfort is said as what it is off by, and the line is highest where it is easy",
          "[report][plots]") {
  config::Config config = preset("demo");
  evaluate::Evaluation e = evaluate::evaluate_fit(config);
  // A counter 300 mm above what is recommended is above easy for everyone.
  config.station.counter_height_mm = *e.recommended.heights.counter_mm + 300;
  e = evaluate::evaluate_fit(config);
  const Sheet sheet = dough_comfort_plot(config, e, {.units = Units::Inch});
  const evaluate::Curves curves = evaluate::dough_hands(config, e, 12.7);
  const std::vector<std::string> all = texts(sheet.drawing);
  for (const evaluate::Curve& curve : curves.cooks) {
    CHECK(has(all, plain_length(*curve.at_used, Units::Inch, true) + " above easy"));
  }
  const std::vector<std::vector<Spot>> lines = of(sheet.drawing, Shape::Polyline, Role::Curve);
  REQUIRE(lines.size() == curves.cooks.size());
  for (const std::vector<Spot>& line : lines) {
    const auto higher = [](const Spot& a, const Spot& b) { return a.y_mm < b.y_mm; };
    const double top = std::max_element(line.begin(), line.end(), higher)->y_mm;
    const double foot = std::min_element(line.begin(), line.end(), higher)->y_mm;
    CHECK(top - foot <= kPlotRow_mm + kDrawn_mm);
    CHECK(line.front().y_mm < top);
    CHECK(line.back().y_mm < top);
  }
}

TEST_CASE("the bars of the moves end where the sensitivity says", "[report][plots]") {
  const config::Config config = hs::test::hand_built_config();
  evaluate::Evaluation e = hs::test::hand_built_evaluation(config);
  e.sensitivity = {{0, evaluate::Measure::Elbow, 16.5, 20, -10},
                   {0, evaluate::Measure::Eye, 8.6, 0.4, 0}};
  const Sheet sheet = moves_plot(config, e, {.units = Units::Millimetre});
  const std::vector<std::string> all = texts(sheet.drawing);
  CHECK(has(all, "Ana's elbow height"));
  CHECK(has(all, "if 17 mm more"));
  CHECK(has(all, "+20 mm"));
  CHECK(has(all, "\u221210 mm"));
  CHECK_FALSE(has(all, "Ana's eye height"));
  CHECK(has(all, "1 other estimate moves nothing"));
  const std::vector<std::vector<Spot>> oven = of(sheet.drawing, Shape::Polygon, Role::OvenBody);
  const std::vector<std::vector<Spot>> dough = of(sheet.drawing, Shape::Hatch, Role::Prep);
  REQUIRE(oven.size() == 2);  // and the key's
  REQUIRE(dough.size() == 2);
  const double up = oven[0][1].x_mm - oven[0][0].x_mm, down = dough[0][1].x_mm - dough[0][0].x_mm;
  CHECK(up > 0);
  CHECK_THAT(down, WithinAbs(-up / 2, kDrawn_mm));
}

TEST_CASE("a plot without anything to show says why", "[report][plots]") {
  config::Config config = preset("stations/prep_only");
  evaluate::Evaluation e = evaluate::evaluate_fit(config);
  CHECK(has(texts(share_plot(config, e, {}).drawing), "Nobody works at the oven."));
  CHECK(has(texts(oven_comfort_plot(config, e, {}).drawing), "Nobody works at the oven."));
  CHECK(share_plot(config, e, {}).table.rows.empty());
  for (config::Cook& cook : config.cooks) cook.at = config::At::Oven;
  e = evaluate::evaluate_fit(config);
  CHECK(has(texts(dough_comfort_plot(config, e, {}).drawing), "Nobody works at a dough counter."));
  CHECK(moves_plot(config, e, {}).description.find("measured") != std::string::npos);
}

TEST_CASE("a plot is read on a phone: no text leaves it, the longest name is cut",
          "[report][plots]") {
  config::Config config = preset("demo");
  config.cooks[0].name = "Bartholomew the very patient kneader of dough";
  const evaluate::Evaluation e = evaluate::evaluate(config);
  for (const SheetKind& kind : sheet_kinds()) {
    if (kind.section.empty()) continue;
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      INFO(kind.name);
      const Sheet sheet = kind.draw(config, e, {.units = units});
      const Box box = inked_box(sheet.drawing, sheet.text_mm);
      // 22 lines of text across: 366 CSS px give letters of at least 12 px.
      CHECK((box.right_mm - box.left_mm) / sheet.text_mm < 22.5);
    }
  }
}
