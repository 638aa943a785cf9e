// The HTML report and the safety sheet: well formed, whole, escaped, and nothing left out.
#include <algorithm>
#include <cmath>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/report/cited.h"
#include "engine/report/html_report.h"
#include "engine/report/phrases.h"
#include "engine/report/readers_units.h"
#include "engine/report/safety_sheet.h"
#include "engine/report/sheet.h"
#include "engine/report/svg.h"
#include "engine/rules/cautions.h"
#include "engine/rules/sources.h"
#include "tests/report/preset.h"

using namespace hs;
using namespace hs::report;
using hs::test::kPresets;
using hs::test::preset;

namespace {

bool holds(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

const SafetyPart* part(const SafetySheet& sheet, std::string_view id) {
  const auto it = std::find_if(sheet.parts.begin(), sheet.parts.end(),
                               [id](const SafetyPart& each) { return each.id == id; });
  return it == sheet.parts.end() ? nullptr : &*it;
}

std::string words(const SafetySheet& sheet, std::string_view id) {
  std::string all;
  const SafetyPart* found = part(sheet, id);
  if (found == nullptr) return all;
  for (const SafetyLine& line : found->lines) all += line.head + ": " + line.words + "\n";
  return all;
}

SafetySheet made(const config::Config& config, Units units = Units::Millimetre) {
  return safety_sheet(config, evaluate::evaluate_fit(config), units);
}

// Every tag is closed by its own, in order; void elements close themselves. Returns what is wrong.
std::string ill_formed(std::string_view html) {
  std::vector<std::string> open;
  std::size_t at = html.find("<html");
  while ((at = html.find('<', at)) != std::string_view::npos) {
    const std::size_t end = html.find('>', at);
    if (end == std::string_view::npos) return "a tag without an end";
    const std::string_view tag = html.substr(at + 1, end - at - 1);
    const std::string name(
        tag.substr(tag[0] == '/', tag.find_first_of(" />", 1) - (tag[0] == '/')));
    if (tag[0] == '/') {
      if (open.empty() || open.back() != std::string(tag.substr(1))) return "</" + name + ">";
      open.pop_back();
    } else if (!tag.ends_with('/')) {
      open.push_back(name);
    }
    at = end;
  }
  return open.empty() ? "" : open.back();
}

}  // namespace

TEST_CASE("every preset has a whole report in both units", "[report][html]") {
  for (const char* name : kPresets) {
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      INFO(name);
      const config::Config config = preset(name);
      const evaluate::Evaluation e = evaluate::evaluate(config);
      const std::string html = report_html(config, e, units, "<style>p{}</style>");
      CHECK(ill_formed(html) == "");
      CHECK(html.starts_with("<!DOCTYPE html>"));
      CHECK(holds(html, "<style>p{}</style>"));
      // Nothing is fetched and nothing runs.
      for (const char* never : {"<script", "src=", "href=", "url(", "@import", " onclick"}) {
        CAPTURE(never);
        CHECK_FALSE(holds(html, never));
      }
      CHECK_FALSE(holds(html, ">nan"));
      // Every finding's sentence, every caution for this fuel, every source.
      for (const Finding& finding : e.findings) {
        CAPTURE(std::string(finding.rule));
        CHECK(holds(html, xml_escaped(sentence(finding, config, e, units))));
      }
      for (const rules::Caution& caution : rules::cautions()) {
        CAPTURE(std::string(caution.id));
        CHECK(holds(html, xml_escaped(readers_first(caution.text, units))) ==
              applies(caution, config.oven.fuel));
      }
      for (const Cited& cited : cited_sources(config, e)) {
        CHECK(holds(html, xml_escaped(rules::find_source(cited.source)->title)));
      }
      // Its drawings and plots, each once, the ground's where it was read; the sources stand last.
      std::size_t wanted = 0;
      for (const SheetKind& kind : sheet_kinds()) wanted += kind.section != "ground" || e.survey;
      std::size_t drawings = 0;
      for (std::size_t at = 0; (at = html.find("<svg", at)) != std::string::npos; ++at) ++drawings;
      CHECK(drawings == wanted);
      CHECK(html.rfind("<section") == html.find("<section id=\"sources\""));
    }
  }
}

TEST_CASE("units are switched everywhere that lengths are told", "[report][html]") {
  const config::Config config = preset("demo");
  const evaluate::Evaluation e = evaluate::evaluate(config);
  const std::string inch = report_html(config, e, Units::Inch, {});
  const std::string mm = report_html(config, e, Units::Millimetre, {});
  CHECK(inch != mm);
  const std::string eye = plain_length(e.cooks[0].body.eye.value_mm, Units::Inch, true);
  CHECK(holds(inch, eye));
  CHECK_FALSE(holds(mm, eye));
  CHECK(holds(mm, plain_length(e.cooks[0].body.eye.value_mm, Units::Millimetre, true)));
}

TEST_CASE("what a person typed stays text", "[report][html]") {
  config::Config config = preset("demo");
  config.title = "</title><script>alert(1)</script>";
  config.cooks[0].name = "<img src=x onerror=y>&\"'";
  const evaluate::Evaluation e = evaluate::evaluate(config);
  for (const std::string& html :
       {report_html(config, e, Units::Inch, {}), safety_html(config, e, Units::Inch, {})}) {
    CHECK_FALSE(holds(html, "<script"));
    CHECK_FALSE(holds(html, "<img"));
    CHECK(holds(html, "&lt;script&gt;alert(1)&lt;/script&gt;"));
    CHECK(holds(html, "&lt;img src=x onerror=y&gt;&amp;&quot;&#39;"));
    CHECK(ill_formed(html) == "");
  }
}

TEST_CASE("the safety sheet says who asks for each free room, and shouts what nobody has said",
          "[report][safety]") {
  // Nothing listed anywhere: six unknown sides, no figure that looks like permission.
  const SafetySheet none = made(config::Config{});
  const SafetyPart* free = part(none, "free");
  REQUIRE(free != nullptr);
  for (std::size_t i = 0; i < 6; ++i) {
    CHECK(free->lines[i].verdict == Verdict::Unknown);
    CHECK(holds(free->lines[i].words, "UNKNOWN how much is needed: find out"));
    CHECK(free->lines[i].words.find_first_of("0123456789") == std::string::npos);
    CHECK(free->lines[i].source == 0);
  }
  config::Config config;
  config.oven.listed_clearance.side_mm = 300;
  config.site.local_clearance.back_mm = 450;
  config.station.left_gap_mm = 200;
  config.station.left_combustible = true;
  const SafetySheet some = made(config);
  const auto& lines = part(some, "free")->lines;
  CHECK(lines[0].verdict == Verdict::Fail);
  CHECK(lines[0].words == "300 mm, says the oven's manual; there is 200 mm");
  CHECK(some.sources.at(lines[0].source - 1) == "this oven's own manual");
  CHECK(lines[2].words == "450 mm, says a local rule; what is there is not measured");
  CHECK(lines[2].verdict == Verdict::Unknown);
  config::Config unlisted;
  unlisted.oven.listed = false;
  const SafetySheet published = made(unlisted);
  const auto& by_code = part(published, "free")->lines;
  // NFPA 211 12.6 (second hand) and IRC R1002.5: 36 in; IFGC 623: 48 in.
  CHECK(by_code[0].words ==
        "914 mm, says published codes, no listing; what is there is not measured");
  CHECK(holds(published.sources.at(by_code[0].source - 1), "12.6"));
  CHECK(holds(published.sources.at(by_code[3].source - 1), "International Fuel Gas Code, 623"));
}

TEST_CASE("what is told in metric units alone has the reader's before it", "[report]") {
  const auto inch = [](const char* text) { return readers_own(text, Units::Inch); };
  CHECK(inch("plywood, 18.3 mm thick") == "plywood, 23/32 in (18.3 mm) thick");
  CHECK(inch("2438.4 x 1219.2 mm") == "96 x 48 in (2438.4 x 1219.2 mm)");
  CHECK(inch("540 lx is asked") == "50 fc (540 lx) is asked");
  CHECK(inch("5 m2 an hour.") == "54 sq ft (5 m2) an hour.");
  CHECK(inch("4.5 l") == "4.76 qt (4.5 l)");
  CHECK(inch("paint takes 0.2 mm of it") == "paint takes 0.008 in (0.2 mm) of it");
  for (const char* as_it_is : {"screw 4.5 x 50", "25 mm (1 in)", "3 ft (0.9 m)", "5 boxes, 1x6",
                               "drops (of 2 mm)", "ends in 5", ""}) {
    CHECK(inch(as_it_is) == as_it_is);
  }
  CHECK(readers_own("18.3 mm thick", Units::Millimetre) == "18.3 mm thick");
}

TEST_CASE("a measure quoted in two units has the reader's first, as published",
          "[report][safety]") {
  const auto mm = [](const char* text) { return readers_first(text, Units::Millimetre); };
  const auto inch = [](const char* text) { return readers_first(text, Units::Inch); };
  CHECK(mm("at least 3 ft (0.9 m) from it") == "at least 0.9 m (3 ft) from it");
  CHECK(inch("at least 3 ft (0.9 m) from it") == "at least 3 ft (0.9 m) from it");
  CHECK(inch("above 77 C (171 F) for long") == "above 171 F (77 C) for long");
  CHECK(mm("above 77 C (171 F) for long") == "above 77 C (171 F) for long");
  CHECK(mm("10 sq in (65 cm2) and 1/2 sq in for each pound of gas (7.1 cm2 for each kg): gas") ==
        "65 cm2 (10 sq in) and 7.1 cm2 for each kg (1/2 sq in for each pound of gas): gas");
  CHECK(mm("as far as 17 3/4 in (450 mm) off") == "as far as 450 mm (17 3/4 in) off");
  // What is no measure in two units stays: a year, a clause, one unit alone, a mark between.
  for (const char* same : {"since 2020. 3 of them (0.9 m)", "clause 12.6 (second hand)", "3 ft",
                           "3 ft, so far (0.9 m)", "(0.9 m)", "open (3 ft", "3 m (0.9 m)", ""}) {
    CHECK(mm(same) == same);
    CHECK(inch(same) == same);
  }
  CHECK(mm("in 2020. 3 ft (0.9 m)") == "in 2020. 0.9 m (3 ft)");
}

TEST_CASE("the safety sheet speaks the reader's units", "[report][safety]") {
  for (const char* name : kPresets) {
    for (const Units units : {Units::Inch, Units::Millimetre}) {
      const SafetySheet sheet = made(preset(name), units);
      for (const SafetyPart& each : sheet.parts) {
        for (const SafetyLine& line : each.lines) {
          // Outside brackets: no measure of the other system. (kW/m2 has no other form here.)
          std::string bare;
          int deep = 0;
          for (const char c : line.words) {
            deep += c == '(' ? 1 : c == ')' ? -1 : 0;
            if (deep == 0) bare += c;
          }
          const std::regex other(units == Units::Inch
                                     ? "[0-9] (mm|cm|cm2|cm\u00B2|m|kg|C|\u00B0C|m/s)([ .,;:)]|$)"
                                     : "[0-9] (in|ft|sq in|sq ft|lb|F|\u00B0F|mph)([ .,;:)]|$)");
          INFO(name << ": " << line.head << ": " << line.words);
          CHECK_FALSE(std::regex_search(bare, other));
        }
      }
    }
  }
}

TEST_CASE("the safety sheet leaves out what another fuel needs", "[report][safety]") {
  config::Config config;
  config.oven.fuel = config::Fuel::Wood;
  const SafetySheet wood = made(config);
  CHECK(part(wood, "gas") == nullptr);
  CHECK(holds(words(wood, "fire"), "Ash is live for days"));
  CHECK(holds(words(wood, "fire"), "carbon monoxide"));
  config.oven.fuel = config::Fuel::Gas;
  config.site.cylinder = config::Cylinder::OwnCabinet;
  config.site.cylinder_kg = 9.0718474;  // 20 lb
  const SafetySheet gas = made(config, Units::Inch);
  CHECK_FALSE(holds(words(gas, "fire"), "Ash is live"));
  // Through manuals: 20 lb: grills 10 sq in an opening; fire features 20 high and 10 low.
  const std::string told = words(gas, "gas");
  CHECK(holds(told, "For this cylinder: 10.0 sq in each"));
  CHECK(holds(told, "For this cylinder: high 20.0 sq in, low 10.0 sq in"));
  // NFPA and US Fire Administration tips: soapy water; 5 minutes before relighting.
  CHECK(holds(told, "Soapy water"));
  CHECK(holds(told, "wait at least 5 minutes"));
  config.oven.fuel = config::Fuel::Electric;
  const SafetySheet powered = made(config);
  CHECK(part(powered, "gas") == nullptr);
  CHECK_FALSE(holds(words(powered, "fire"), "monoxide"));
  CHECK(holds(words(powered, "power"), "ground-fault"));
}

TEST_CASE("the safety sheet tells the three bands of heat in words", "[report][safety][heat]") {
  config::Config config = preset("stations/brick_oven_too_close");
  std::set<std::string> told;
  std::string all;
  for (const double floor_c : {200.0, 300.0, 400.0, 480.0}) {
    config.oven.floor_temp_c = floor_c;
    const evaluate::Evaluation e = evaluate::evaluate_fit(config);
    const std::string text = words(made(config), "heat");
    for (const evaluate::CookResult& cook : e.cooks) {
      if (!cook.at_oven) continue;
      for (const double flux : {cook.heat.face_watching_kw_m2, cook.heat.face_working_kw_m2,
                                cook.heat.hand_through_kw_m2}) {
        // 24 CFR 51.203: 1.42 kW/m2; SFPE Handbook Table 63.20: 2.5 for half a minute, and the
        // time to pain 60 x 1.33 / q^1.33 s of its eq. 63.43.
        const std::string time = ", hurts in some " + fixed(79.8 / std::pow(flux, 1.33), 0) + " s";
        told.insert(flux < 1.425   ? "Within what people outdoors are allowed: "
                    : flux < 2.505 ? "A brief reach only: "
                                   : "Too hot without glove, shield or a longer peel: ");
        CHECK(holds(text, heat_flux(flux) + (flux < 1.425 ? "" : time)));
      }
    }
    all += text;
    for (const std::string& band : told) CHECK(holds(all, band));
    CHECK(holds(text, "Flames, sparks and hot air are in no heat figure here"));
  }
  CHECK(told.size() == 3);
  // Nobody at the oven: no heat at anybody's face, but hot things are still there to be touched.
  const SafetySheet prep = made(preset("stations/prep_only"));
  CHECK_FALSE(holds(words(prep, "heat"), "kW/m"));
  CHECK(holds(words(prep, "heat"), "Bare skin bears metal"));
}

TEST_CASE("every line of a safety sheet that tells a figure leads to a source",
          "[report][safety]") {
  for (const char* name : kPresets) {
    INFO(name);
    const SafetySheet sheet = made(preset(name));
    std::set<std::size_t> used;
    for (const SafetyPart& each : sheet.parts) {
      CHECK_FALSE(each.lines.empty());
      for (const SafetyLine& line : each.lines) {
        CAPTURE(line.head + ": " + line.words);
        CHECK(line.source <= sheet.sources.size());
        used.insert(line.source);
        // Unknown room and a local figure have no published source.
        const bool own = holds(line.words, "UNKNOWN") || holds(line.words, "a local rule") ||
                         holds(line.words, "the flue's maker");
        if (!own) CHECK(line.source > 0);
      }
    }
    for (std::size_t i = 1; i <= sheet.sources.size(); ++i) CHECK(used.count(i) == 1);
    // What a household must find there whatever its oven.
    CHECK(holds(words(sheet, "first"), "The oven's own installation instructions"));
    CHECK(holds(words(sheet, "people"), "0.9 m (3 ft)"));
    CHECK(holds(words(sheet, "fire"), "1-A:10-B:C"));
    CHECK(part(sheet, "weather") != nullptr);
  }
}
