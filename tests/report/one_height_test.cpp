// A height has one number wherever a person reads it: on the cards, under Why, in every drawing,
// and in the packet that a shop builds from.

#include <cmath>
#include <regex>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/build.h"
#include "engine/evaluate/packet.h"
#include "engine/report/packet.h"
#include "engine/report/phrases.h"
#include "engine/report/summary.h"
#include "tests/report/preset.h"

using namespace hs;
using report::Units;

namespace {

constexpr std::int64_t kFewSteps = 2'000;

// Without the cut plans: what is left of a sheet may be as long as a counter is high.
std::string packet_text(const report::Document& document) {
  std::string all;
  const auto add = [&all](const std::string& text) { all += text + "\n"; };
  for (const report::DocPart& part : document.parts) {
    if (part.id == "cuts") continue;
    for (const report::DocBlock& block : part.blocks) {
      add(block.head);
      add(block.words);
      for (const auto& row : block.table.rows) {
        for (const std::string& cell : row) add(cell);
      }
      if (!block.figure) continue;
      add(block.figure->description);
      const report::Drawing& drawing = block.figure->drawing;
      for (const report::Mark& mark : drawing.marks()) {
        if (mark.char_count > 0) add(std::string(drawing.text(mark)));
      }
    }
  }
  return report::plain_marks(all);
}

std::string page_text(const config::Config& config, const evaluate::Evaluation& e, Units units) {
  const report::Summary s = report::summary(config, e, units);
  std::string all = report::spoken(s) + "\n";
  for (const report::Headline& h : s.headlines) all += h.note + "\n" + h.band + "\n";
  for (const Finding& f : e.findings) all += report::sentence(f, config, e, units) + "\n";
  return report::plain_marks(all);
}

struct Told {
  int same = 0;                    // the height, to what it is written to
  std::vector<std::string> other;  // a length that a reader takes for a second opinion of it
};

// Lengths with their unit that are this height, or nearer to it than a mark and not it.
Told told(const std::string& text, double height_mm, Units units) {
  const bool inch = units == Units::Inch;
  const std::regex length(inch ? R"((?:^|[^\d./])(\d{2})(?: (\d{1,2})/(\d{1,2}))? in(?! \d))"
                               : R"((?:^|[^\d.])(\d{3,4}(?:\.\d)?) mm\b)");
  const double written_mm = inch ? 25.4 / 32 + 0.01 : 0.51;
  const double taken_for_mm = evaluate::mark_step_mm(report::marks_of(units)) / 2 + 0.1;
  Told out;
  for (std::sregex_iterator it(text.begin(), text.end(), length), end; it != end; ++it) {
    const std::smatch& m = *it;
    double mm = std::stod(m[1]);
    if (inch) {
      if (m[2].matched) mm += std::stod(m[2]) / std::stod(m[3]);
      mm *= 25.4;
    }
    const double off_mm = std::abs(mm - height_mm);
    if (off_mm <= written_mm) {
      ++out.same;
    } else if (off_mm <= taken_for_mm) {
      const auto from = static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, m.position() - 40));
      out.other.push_back(text.substr(from, 80));
    }
  }
  return out;
}

config::Config two_adults(double tall_mm, double short_mm) {
  config::Config c;
  c.cooks.clear();
  c.cooks.push_back({.name = "Ana", .stature_mm = tall_mm});
  c.cooks.push_back({.name = "Bela", .stature_mm = short_mm});
  return c;
}

config::Config given_heights() {
  config::Config c = two_adults(1790, 1650);
  c.station.counter_height_mm = 861.7;
  c.station.oven_base_height_mm = 1043.3;
  return c;
}

}  // namespace

TEST_CASE("cards, reasons, drawings and the packet have one height", "[report][packet][law]") {
  const std::vector<std::pair<const char*, config::Config>> stations = {
      {"1.88 and 1.62 m", two_adults(1880, 1620)},
      {"1.75 and 1.69 m", two_adults(1750, 1690)},
      {"evening lamp", test::preset("stations/evening_lamp")},
      {"given heights", given_heights()},
      {"four cooks", test::preset("stations/four_cooks")},
  };
  for (const auto& [name, config] : stations) {
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      INFO(name << (units == Units::Inch ? ", inches" : ", millimetres"));
      const auto e = evaluate::evaluate_packet(config, report::marks_of(units), kFewSteps);
      REQUIRE(e.used.counter_mm);
      REQUIRE(e.used.oven_base_mm);
      report::PacketChoice choice;
      choice.units = units;
      const std::string packet = packet_text(report::packet_document(config, e, choice));
      const std::string page = page_text(config, e, units);
      for (const double height_mm : {*e.used.counter_mm, *e.used.oven_base_mm}) {
        for (const std::string* text : {&packet, &page}) {
          const Told found = told(*text, height_mm, units);
          CAPTURE(height_mm, text == &packet, found.other);
          CHECK(found.same > 0);
          CHECK(found.other.empty());
        }
      }
      CHECK(told(packet, *e.used.oven_floor_mm, units).same > 0);
      // The cabinets are built to it, and the cover says it large.
      const report::Summary s = report::summary(config, e, units);
      const evaluate::Heights& best = e.recommended.heights;
      CHECK(s.headlines[0].value == report::plain_length(*best.oven_base_mm, units, true));
      CHECK(s.headlines[1].value == report::plain_length(*best.counter_mm, units, true));
      REQUIRE(e.build);
      for (const frame::Run& run : e.build->frame.runs) {
        // A riser lifts the oven off the counter, which is one.
        const bool oven = run.oven && config.station.arrangement != config::Arrangement::Riser;
        const double wanted_mm = oven ? *e.used.oven_base_mm : *e.used.counter_mm;
        CHECK_THAT(run.top_mm, Catch::Matchers::WithinAbs(wanted_mm, 0.1));
      }
      // A height that is not the one in use is seen.
      const double step_mm = evaluate::mark_step_mm(report::marks_of(units));
      CHECK_FALSE(told(packet, *e.used.counter_mm + 0.4 * step_mm, units).other.empty());
    }
  }
}
