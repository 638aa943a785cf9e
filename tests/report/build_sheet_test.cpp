// Drawings of what is built say what the parts list says.

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/base/csv.h"
#include "engine/base/number_text.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/packet.h"
#include "engine/report/build_sheets.h"
#include "engine/report/parts_csv.h"
#include "engine/report/parts_words.h"
#include "engine/report/phrases.h"
#include "engine/report/report_json.h"
#include "engine/report/sheet_parts.h"
#include "engine/report/wiring_sheet.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;

namespace {

std::vector<std::string> names_of(const config::Config& config, const evaluate::Evaluation& e) {
  std::vector<std::string> names;
  for (std::size_t i = 1; i <= base_cut_count(e); ++i) names.push_back("base_" + std::to_string(i));
  if (!e.build->frame.made()) return names;
  names.insert(names.end(), {"frame_front", "frame_side", "frame_pulled_apart"});
  for (const std::string_view step : step_sheet_names()) {
    if (step_sheet(step, config, e, {})) names.emplace_back(step);
  }
  for (std::size_t i = 1; i <= e.build->parts.parts.size(); ++i) {
    names.push_back("panel_" + std::to_string(i));
  }
  return names;
}

template <typename Check>
void each_sheet(Check check) {
  for (const char* name : test::kPresets) {
    const config::Config config = test::preset(name);
    const evaluate::Evaluation e = evaluate::evaluate_all(config);
    for (const std::string& sheet_name : names_of(config, e)) {
      for (const Units units : {Units::Inch, Units::Millimetre}) {
        INFO(name << " " << sheet_name);
        const auto sheet = build_sheet(sheet_name, config, e, {.units = units});
        REQUIRE(sheet.has_value());
        check(*sheet, units);
      }
    }
  }
}

Box place_of(const Drawing& d, const Mark& mark, double text_mm) {
  Drawing alone;
  const auto points = d.points(mark);
  const bool dimension = mark.shape == Shape::Dimension;
  const Spot at =
      dimension ? Spot{(points[0].x_mm + points[1].x_mm) / 2, (points[0].y_mm + points[1].y_mm) / 2}
                : points[0];
  alone.text(Role::Label, at, d.text(mark), dimension ? Align::Centre : mark.align);
  return inked_box(alone, 0.7 * text_mm);
}

bool lap(const Box& a, const Box& b) {
  return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.bottom_mm < b.top_mm &&
         b.bottom_mm < a.top_mm;
}

}  // namespace

TEST_CASE("every drawing of what is built is finite and says what it shows", "[report][build]") {
  each_sheet([](const Sheet& sheet, Units) {
    for (const Mark& mark : sheet.drawing.marks()) {
      for (const Spot& p : sheet.drawing.points(mark)) {
        REQUIRE((std::isfinite(p.x_mm) && std::isfinite(p.y_mm)));
      }
    }
    REQUIRE_FALSE(sheet.description.empty());
    REQUIRE_FALSE(sheet.title.empty());
  });
}

TEST_CASE("every dimension of what is built says the length that it spans", "[report][build]") {
  std::size_t checked = 0;
  each_sheet([&](const Sheet& sheet, Units units) {
    for (const Mark& mark : sheet.drawing.marks()) {
      if (mark.shape != Shape::Dimension || mark.char_count == 0) continue;
      const auto ends = sheet.drawing.points(mark);
      const double span = std::hypot(ends[1].x_mm - ends[0].x_mm, ends[1].y_mm - ends[0].y_mm);
      // A counter's height above the ground is written as on the cards.
      const bool upright = ends[0].y_mm == 0 && ends[0].x_mm == ends[1].x_mm;
      const bool height = upright && sheet.title.starts_with("Cabinets");
      REQUIRE(sheet.drawing.text(mark) ==
              (height ? plain_length(span, units, true) : shop_length(span, units, true)));
      ++checked;
    }
  });
  CHECK(checked > 100);
}

TEST_CASE("labels of what is built do not lie on each other", "[report][build]") {
  each_sheet([](const Sheet& sheet, Units) {
    std::vector<std::pair<Box, std::string>> placed;
    for (const Mark& mark : sheet.drawing.marks()) {
      if (mark.char_count == 0) continue;
      const Box box = place_of(sheet.drawing, mark, sheet.text_mm);
      for (const auto& [other, text] : placed) {
        INFO(text << " and " << sheet.drawing.text(mark));
        REQUIRE_FALSE(lap(box, other));
      }
      placed.push_back({box, std::string(sheet.drawing.text(mark))});
    }
  });
}

TEST_CASE("a board's drawing has every height of its cut, at its place", "[report][ground]") {
  int boards = 0;
  for (const char* name : test::kPresets) {
    const config::Config config = test::preset(name);
    const evaluate::Evaluation e = evaluate::evaluate_all(config);
    std::size_t index = 0;
    for (std::size_t panel = 0; e.survey && panel < e.survey->panels.size(); ++panel) {
      if (!e.survey->base || !e.survey->base->cuts[panel]) continue;
      const survey::Cut& cut = *e.survey->base->cuts[panel];
      INFO(name << " panel " << panel);
      const Sheet sheet = base_cut_sheet(config, e, {.units = Units::Millimetre}, index++);
      CHECK(sheet.title.starts_with(base_cut_title(e, index - 1)));
      std::vector<Spot> curve;
      std::vector<std::pair<double, std::string>> numbers;
      for (const Mark& mark : sheet.drawing.marks()) {
        const auto points = sheet.drawing.points(mark);
        if (mark.role == Role::Curve && mark.shape == Shape::Polyline) {
          curve.assign(points.begin(), points.end());
        }
        if (mark.role == Role::Label && mark.shape == Shape::Text) {
          numbers.push_back({points[0].x_mm, std::string(sheet.drawing.text(mark))});
        }
      }
      REQUIRE(curve.size() == cut.ordinates.size());
      // One scale for all heights, from the board's top edge down.
      const double scale = curve[0].y_mm / cut.ordinates[0].height_mm;
      CHECK(scale <= -1);
      for (std::size_t i = 0; i < curve.size(); ++i) {
        const survey::Ordinate& o = cut.ordinates[i];
        CHECK(curve[i].x_mm == o.along_mm);
        CHECK(curve[i].y_mm == Catch::Approx(scale * o.height_mm));
        for (const double number : {o.height_mm, o.along_mm}) {
          const std::pair wanted{o.along_mm, trimmed(number, 1)};
          CHECK(std::find(numbers.begin(), numbers.end(), wanted) != numbers.end());
        }
      }
      ++boards;
    }
    CHECK(index == base_cut_count(e));
  }
  CHECK(boards > 5);
}

TEST_CASE("a board of the base is told by what its cut leaves where the ground is read",
          "[report][ground]") {
  const config::Config config = test::preset("stations/garden_shelter");
  const evaluate::Evaluation e = evaluate::evaluate_all(config);
  REQUIRE(e.survey->base.has_value());
  const auto& parts = e.build->parts.parts;
  const std::string csv = parts_csv(e);
  int boards = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto cut = ground_cut(parts[i], e);
    const Sheet sheet = panel_sheet(config, e, {.units = Units::Millimetre}, i);
    INFO(sheet.title);
    CHECK((sheet.description.find("cut to the ground") != std::string::npos) == cut.has_value());
    CHECK((sheet.description.find("Finished") != std::string::npos) != cut.has_value());
    const std::string size = part_size(parts[i], e, Units::Millimetre);
    CHECK((size.find(" (base_") != std::string::npos) == cut.has_value());
    if (!cut) continue;
    ++boards;
    CHECK(parts[i].material == frame::Material::BaseBoard);
    // Each sheet that it names is the one of its place: as long as the board, or an end's line.
    const auto index = static_cast<std::size_t>(cut->sheets[5] - '1');
    REQUIRE(index < base_cut_count(e));
    if (parts[i].kind != frame::Kind::BaseFront) continue;
    const bool oven = e.build->frame.pieces[parts[i].pieces[0]].oven;
    CHECK(base_cut_title(e, index) ==
          (oven ? "Front of the oven's counter, cut" : "Front of the dough counter, cut"));
    const std::string words = ground_cut_words(*cut, Units::Millimetre);
    CHECK(sheet.description.find(words) != std::string::npos);
    CHECK(csv.find(cut->sheets) != std::string::npos);
  }
  CHECK(boards > 2);
}

TEST_CASE("a base board's drawing and the plan's step say what comes off for the heat",
          "[report][build][plan]") {
  const config::Config config = test::preset("stations/open_courtyard");
  const evaluate::Evaluation e = evaluate::evaluate_packet(config);
  // 1160 mm, 5.76e-5 for each degree from the day it is built to the hottest one: 2.7 mm.
  const auto& growth = e.build->loads.growth;
  REQUIRE(growth.at(0).what == loads::Grows::BaseBoard);
  CHECK(std::ceil(growth[0].needed_mm) == 3);
  int boards = 0;
  for (std::size_t i = 0; i < e.build->parts.parts.size(); ++i) {
    const bool board = e.build->parts.parts[i].material == frame::Material::BaseBoard;
    const Sheet sheet = panel_sheet(config, e, {.units = Units::Millimetre}, i);
    CHECK((sheet.description.find("meets another board, 3 mm come off") != std::string::npos) ==
          board);
    boards += board ? 1 : 0;
  }
  CHECK(boards == 7);
  const evaluate::Timetable& plan = e.packet->timetable;
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    CHECK((plan.notes[i].caution.find("cut 3 mm off the right end") != std::string::npos) ==
          (plan.tasks[i].key == "base.fit"));
  }
}

TEST_CASE("what is cut out for wires is on the wiring sheet and on its part's drawing",
          "[report][build][power]") {
  config::Config config = test::preset("stations/open_courtyard");
  config.power.outlets = 4;
  config.power.outlet_at = config::OutletAt::OvenEnd;
  const evaluate::Evaluation e = evaluate::evaluate_packet(config);
  const evaluate::Wiring& wiring = *e.packet->wiring;
  const evaluate::PanelPart& side = wiring.panel_parts.at(0);
  const std::string from = "part " + std::to_string(side.part) + " (one of " +
                           std::to_string(side.one_of) + "), left side under the oven, bay 1";
  const Sheet own = wiring_sheet(config, e, {.units = Units::Millimetre}, 0);
  CHECK(own.title.find(from) != std::string::npos);
  CHECK(own.description.find("Seen from the right: its front edge is on the left") !=
        std::string::npos);
  CHECK(own.description.find("outlet box, the fourth: 545 mm from the front edge") !=
        std::string::npos);
  for (std::size_t i = 0; i < e.build->parts.parts.size(); ++i) {
    const Sheet sheet = panel_sheet(config, e, {.units = Units::Millimetre}, i);
    INFO(sheet.title);
    CHECK((sheet.description.find("outlet box, the fourth, 120 mm x 70 mm, through") !=
           std::string::npos) == (e.build->parts.parts[i].number == side.part));
    CHECK((sheet.description.find("wire hole, for the outlets, 25 mm across") !=
           std::string::npos) == (e.build->parts.parts[i].number == wiring.panel_parts.at(1).part));
  }
}

TEST_CASE("drawings are found by name as far as there are parts", "[report][build]") {
  const config::Config config = test::preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate_all(config);
  const std::size_t count = e.build->parts.parts.size();
  REQUIRE(count > 10);
  CHECK(build_sheet_names(e) ==
        "frame_front, frame_side, frame_pulled_apart, step_base_boards, step_base, step_dry, "
        "step_boxes, step_cabinets, step_sheets, step_tops, step_block, step_fronts, panel_1 to "
        "panel_" +
            std::to_string(count));
  for (const std::string name : {"panel_0", "step_", "step_roof", "panel_", "panel_01", "panel_x",
                                 "panel_99999", "frame", "section", "base_1", "base_0"}) {
    INFO(name);
    CHECK_FALSE(build_sheet(name, config, e, {}));
  }
  CHECK_FALSE(build_sheet("panel_" + std::to_string(count + 1), config, e, {}));
  CHECK(build_sheet("panel_" + std::to_string(count), config, e, {}));
  CHECK_FALSE(build_sheet("frame_front", config, evaluate::evaluate(config), {}));
}

TEST_CASE("a panel's drawing and the report tell one size", "[report][build][json]") {
  const config::Config config = test::preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate_all(config);
  const auto report = nlohmann::json::parse(report_json(config, e));
  REQUIRE(report.at("parts").size() == e.build->parts.parts.size());
  REQUIRE(report.at("frame").at("made") == true);
  std::size_t pieces = 0;
  for (const auto& part : report.at("parts")) {
    const int number = part.at("number").get<int>();
    const auto sheet =
        build_sheet("panel_" + std::to_string(number), config, e, {.units = Units::Millimetre});
    const double length_mm = part.at("finished").at("length_mm").get<double>();
    const double width_mm = part.at("finished").at("width_mm").get<double>();
    CHECK(sheet->description.find("Finished " + shop_length(length_mm, Units::Millimetre, true) +
                                  " x " + shop_length(width_mm, Units::Millimetre, true)) !=
          std::string::npos);
    CHECK(part.at("places").size() == part.at("quantity").get<std::size_t>());
    pieces += part.at("places").size();
  }
  CHECK(pieces == e.build->frame.pieces.size());
  // Before the build stage all three are there and null.
  const auto before = nlohmann::json::parse(report_json(config, evaluate::evaluate(config)));
  for (const char* key : {"frame", "parts", "hardware"}) CHECK(before.at(key).is_null());
}

TEST_CASE("metal is told in decimals of an inch, wood in fractions", "[report][parts]") {
  config::Config config = test::preset("demo");
  config.build.metal_mm = 1.2;
  const evaluate::Evaluation e = evaluate::evaluate_packet(config);
  const auto csv = read_csv(parts_csv(e));
  REQUIRE(csv.has_value());
  const auto& rows = csv.value();
  const auto column = [&](std::string_view name) {
    const auto& head = rows[0].cells;
    return static_cast<std::size_t>(std::find(head.begin(), head.end(), name) - head.begin());
  };
  const auto report = nlohmann::json::parse(report_json(config, e));
  const auto& parts = e.build->parts.parts;
  REQUIRE(rows.size() == parts.size() + 1);
  int metal = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto& cells = rows[i + 1].cells;
    const std::string length = cells[column("length_in")], thick = cells[column("thickness_in")];
    const auto& told = report["parts"][i]["finished"];
    INFO(cells[column("part")]);
    if (parts[i].material != frame::Material::Metal) {
      const double parts32 = std::stod(length) * 32;
      CHECK(parts32 == std::round(parts32));
      continue;
    }
    ++metal;
    CHECK(std::abs(std::stod(length) - parts[i].length_mm / 25.4) <= 0.00005 + 1e-9);
    CHECK(thick == "0.0472");  // 1.2 / 25.4
    CHECK(told["thick_in"] == "0.0472 in");
    CHECK(told["length_in"] == fixed(parts[i].length_mm / 25.4, 3) + " in");
  }
  CHECK(metal > 0);
  CHECK(report["metal"]["orders"][0]["thick_in"] == "0.0472 in");
}
