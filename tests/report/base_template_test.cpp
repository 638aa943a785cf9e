// Full-size strips of the base's cuts: true on the paper, whole, and the same where sheets meet.
#include "engine/report/base_template.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/report/build_sheets.h"
#include "engine/report/sheet_parts.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kDrawn_mm = 1e-6;
constexpr Paper kPapers[] = {Paper::A4, Paper::Letter};

evaluate::Evaluation shelter() {
  return evaluate::evaluate(test::preset("stations/garden_shelter"));
}

std::vector<Spot> cut_line(const TemplateSheet& sheet) {
  for (const Mark& mark : sheet.drawing.marks()) {
    if (mark.role != Role::Curve || mark.weight != Weight::Heavy) continue;
    const auto points = sheet.drawing.points(mark);
    return {points.begin(), points.end()};
  }
  FAIL("no cut on " << sheet.title);
  return {};
}

// x of the marks where sheets meet: the dashed upright lines through a whole strip.
std::vector<double> marks_of(const TemplateSheet& sheet) {
  std::vector<double> places;
  for (const Mark& mark : sheet.drawing.marks()) {
    if (mark.role != Role::Heading || sheet.drawing.text(mark).size() > 3) continue;
    places.push_back(sheet.drawing.points(mark)[0].x_mm);
  }
  return places;
}

double height_at(const std::vector<Spot>& line, double x) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (x < line[i].x_mm - kDrawn_mm || x > line[i + 1].x_mm + kDrawn_mm) continue;
    const double share = (x - line[i].x_mm) / (line[i + 1].x_mm - line[i].x_mm);
    return line[i].y_mm + share * (line[i + 1].y_mm - line[i].y_mm);
  }
  FAIL("the cut does not reach " << x);
  return 0;
}

}  // namespace

TEST_CASE("every sheet is inside its paper, has its two lines of 100 mm and labels apart",
          "[report][survey]") {
  for (const Paper paper : kPapers) {
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      const auto sheets = base_template(shelter(), paper, units);
      REQUIRE(sheets.size() >= 20);
      for (const TemplateSheet& sheet : sheets) {
        INFO(sheet.title);
        const Box box = inked_box(sheet.drawing, kTemplateText_mm);
        // Printers leave 5 mm blank at most edges.
        CHECK(box.left_mm >= 5);
        CHECK(box.bottom_mm >= 5);
        CHECK(box.right_mm <= size_of(paper).width_mm - 5);
        CHECK(box.top_mm <= size_of(paper).height_mm - 5);
        int level = 0, upright = 0;
        std::vector<Box> placed;
        for (const Mark& mark : sheet.drawing.marks()) {
          const auto points = sheet.drawing.points(mark);
          if (mark.role == Role::Scale) {
            const double x = points[1].x_mm - points[0].x_mm, y = points[1].y_mm - points[0].y_mm;
            level += x == kBar_mm && y == 0 ? 1 : 0;
            upright += x == 0 && y == kBar_mm ? 1 : 0;
          }
          if (mark.char_count == 0) continue;
          Drawing alone;
          alone.text(Role::Label, points[0], sheet.drawing.text(mark), mark.align);
          const Box label = inked_box(alone, 0.7 * kTemplateText_mm);
          for (const Box& other : placed) {
            CHECK((label.left_mm >= other.right_mm || label.right_mm <= other.left_mm ||
                   label.bottom_mm >= other.top_mm || label.top_mm <= other.bottom_mm));
          }
          placed.push_back(label);
        }
        CHECK(level == 1);
        CHECK(upright == 1);
      }
    }
  }
}

TEST_CASE("laid mark on mark the sheets of a panel are its cut, to a tenth of a millimetre",
          "[report][survey]") {
  const evaluate::Evaluation e = shelter();
  for (const Paper paper : kPapers) {
    std::map<std::size_t, std::vector<TemplateSheet>> panels;
    for (TemplateSheet& sheet : base_template(e, paper, Units::Millimetre)) {
      panels[sheet.panel].push_back(std::move(sheet));
    }
    REQUIRE(panels.size() == 7);
    for (const auto& [panel, sheets] : panels) {
      const survey::Cut& cut = *e.survey->base->cuts[panel];
      const double length = e.survey->panels[panel].length_mm();
      CHECK(sheets.front().from_mm == 0);
      CHECK_THAT(sheets.back().to_mm, WithinAbs(length, kDrawn_mm));
      // Height of the level line over the cut, found once; the rest must follow from it.
      std::optional<double> level_y;
      for (std::size_t i = 0; i < sheets.size(); ++i) {
        const TemplateSheet& sheet = sheets[i];
        INFO(sheet.title);
        if (i > 0) CHECK(sheet.from_mm == sheets[i - 1].to_mm);
        const std::vector<double> marks = marks_of(sheet);
        REQUIRE(marks.size() == 2);
        CHECK_THAT(marks[1] - marks[0], WithinAbs(sheet.to_mm - sheet.from_mm, kDrawn_mm));
        const std::vector<Spot> line = cut_line(sheet);
        for (const survey::Ordinate& o : cut.ordinates) {
          if (o.along_mm < sheet.from_mm || o.along_mm > sheet.to_mm) continue;
          const double x = line.front().x_mm + o.along_mm -
                           std::max(0.0, sheet.from_mm - 10);  // sheets begin 10 mm early
          const double top = height_at(line, x) + o.height_mm;
          if (!level_y) level_y = top;
          CHECK_THAT(top, WithinAbs(*level_y, kDrawn_mm));
        }
      }
    }
  }
}

TEST_CASE("without a base there is no strip, and one that is too steep is told",
          "[report][survey]") {
  CHECK(base_template(evaluate::evaluate(config::Config{}), Paper::A4, Units::Inch).empty());
  config::Config c = test::preset("stations/garden_shelter");
  c.survey.board_mm = 400;
  for (config::SurveyPoint& p : c.survey.points) {
    // The right end lies 200 mm lower at its back.
    if (p.x_mm == 2140 && p.y_mm == 610) *p.reading_mm += 200;
  }
  std::vector<std::string> without;
  const auto sheets = base_template(evaluate::evaluate(c), Paper::A4, Units::Inch, &without);
  REQUIRE_FALSE(sheets.empty());
  CHECK(without == std::vector<std::string>{"Right end", "Back of the dough counter"});
  bool told = false;
  for (const Mark& mark : sheets.front().drawing.marks()) {
    told |= sheets.front().drawing.text(mark).find("No strip") != std::string_view::npos;
  }
  CHECK(told);
}

TEST_CASE("a board that a doubtful reading bears on is not to be cut, on every sheet of it",
          "[report][survey]") {
  config::Config c = test::preset("stations/garden_shelter");
  const evaluate::Evaluation sure = evaluate::evaluate(c);
  REQUIRE(sure.survey->doubts.empty());
  // On the front, 50 mm less: the ground seems that much higher.
  const std::string stop = "Do not cut yet: point 6 is doubtful";
  *c.survey.points[5].reading_mm -= 50;
  const evaluate::Evaluation e = evaluate::evaluate(c);
  REQUIRE(e.survey->doubts.size() == 1);
  int told = 0;
  std::size_t index = 0;
  for (std::size_t i = 0; i < e.survey->panels.size(); ++i) {
    if (!e.survey->base->cuts[i]) continue;
    const bool bears = !e.survey->stops[i].empty();
    const Sheet sheet = base_cut_sheet(c, e, {.units = Units::Millimetre}, index++);
    INFO(sheet.title);
    CHECK((sheet.description.find(stop) != std::string::npos) == bears);
    const bool diamonds = std::any_of(
        sheet.drawing.marks().begin(), sheet.drawing.marks().end(),
        [](const Mark& mark) { return mark.role == Role::Limit && mark.shape == Shape::Polygon; });
    CHECK(diamonds == !e.survey->grounds[i].doubtful.empty());
    told += bears ? 1 : 0;
  }
  CHECK(told > 0);
  for (const TemplateSheet& sheet : base_template(e, Paper::A4, Units::Millimetre)) {
    const bool bears = !e.survey->stops[sheet.panel].empty();
    CHECK((sheet.description.find(stop) != std::string::npos) == bears);
  }
  for (const TemplateSheet& sheet : base_template(sure, Paper::A4, Units::Millimetre)) {
    CHECK(sheet.description.find("Do not cut") == std::string::npos);
  }
  // Heights are above the feet: for a doubtful one there every board waits.
  c = test::preset("stations/garden_shelter");
  for (std::size_t i = 0; i < c.survey.points.size(); ++i) {
    if (c.survey.points[i].kind != config::PointKind::Feet) continue;
    *c.survey.points[i].reading_mm -= 80;
    break;
  }
  const evaluate::Evaluation feet = evaluate::evaluate(c);
  for (std::size_t i = 0; i < feet.survey->panels.size(); ++i) {
    if (feet.survey->base->cuts[i]) CHECK_FALSE(feet.survey->stops[i].empty());
  }
}
