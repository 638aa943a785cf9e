#include "engine/report/report_json.h"

#include <cctype>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/base/version.h"
#include "engine/evaluate/evaluate.h"
#include "engine/rules/rules.h"
#include "tests/report/hand_built.h"

using namespace hs;
using nlohmann::json;

namespace {

json hand_built() {
  const config::Config config = test::hand_built_config();
  return json::parse(report::report_json(config, test::hand_built_evaluation(config)));
}

json of(const config::Config& config) {
  return json::parse(report::report_json(config, evaluate::evaluate(config)));
}

void require_keys(const json& object, const std::vector<const char*>& keys) {
  for (const char* key : keys) {
    CAPTURE(key);
    REQUIRE(object.contains(key));
  }
}

// A word on its own: "inf" is not in "information".
bool has_word(const std::string& text, const std::string& word) {
  const auto letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const bool before = at > 0 && letter(text[at - 1]);
    const bool after = at + word.size() < text.size() && letter(text[at + word.size()]);
    if (!before && !after) return true;
  }
  return false;
}

const std::vector<const char*> kHeightKeys{"counter_height_mm", "oven_base_height_mm",
                                           "oven_floor_height_mm", "riser_mm"};
const std::vector<const char*> kRecommendedKeys{"counter_height_mm",    "oven_base_height_mm",
                                                "oven_floor_height_mm", "riser_mm",
                                                "prep_depth_mm",        "standoff_mm",
                                                "working_standoff_mm",  "feet_line_mm",
                                                "comfort_band_mm",      "binding"};

}  // namespace

TEST_CASE("every key of the contract is there, for a cook at the oven and one who is not",
          "[report][json][contract]") {
  config::Config alone;
  alone.cooks[0].at = config::At::Prep;
  for (const json& r : {hand_built(), of(config::Config{}), of(alone)}) {
    require_keys(r, {"format", "recommended", "recommended_build", "arrangements", "sensitivity",
                     "fits_adults_fraction", "trial", "engine", "clearances", "used", "cooks",
                     "heat", "findings", "sources", "cautions"});
    CHECK(r.at("format") == "hearthsight-report/1");
    require_keys(r.at("recommended"), kRecommendedKeys);
    require_keys(r.at("used"), kRecommendedKeys);
    require_keys(r.at("recommended_build").at("mm"), kHeightKeys);
    require_keys(r.at("engine"), {"version", "config_fingerprint"});
    for (const json& a : r.at("arrangements")) {
      require_keys(a, {"arrangement", "heights", "worst_cook", "given_up"});
      require_keys(a.at("heights"), kHeightKeys);
    }
    for (const json& s : r.at("sensitivity")) require_keys(s, {"cook", "measure", "moves_mm"});
    for (const json& c : r.at("clearances")) {
      require_keys(c, {"side", "required_mm", "from", "available_mm"});
    }
    CHECK(r.at("clearances").size() == 6);
    for (const json& cook : r.at("cooks")) {
      require_keys(cook, {"name", "eye_height_mm", "elbow_height_mm", "shoulder_height_mm",
                          "estimate_sd_mm", "upright", "full_view", "least_stoop", "hand_at_oven",
                          "nearest_standoff_mm", "prep", "step_mm"});
      require_keys(cook.at("estimate_sd_mm"), {"eye", "elbow"});
      require_keys(cook.at("full_view"), {"oven_floor_height_mm", "standoff_mm"});
      if (!cook.at("upright").is_null()) {
        require_keys(cook.at("upright"),
                     {"visible_floor_fraction", "visible_pizza_fraction", "farthest_visible_mm",
                      "steepest_gaze_deg", "shallowest_gaze_deg"});
      }
      if (!cook.at("least_stoop").is_null()) {
        require_keys(cook.at("least_stoop"), {"trunk_deg", "knee_deg", "neck_deg",
                                              "face_to_mouth_mm", "visible_floor_fraction"});
      }
      if (!cook.at("hand_at_oven").is_null()) {
        require_keys(cook.at("hand_at_oven"), {"above_elbow_mm", "below_shoulder_mm"});
      }
      if (!cook.at("prep").is_null()) {
        require_keys(cook.at("prep"), {"offset_mm", "band_mm", "verdict"});
      }
    }
    for (const json& finding : r.at("findings")) {
      require_keys(finding, {"id", "rule", "cook", "margin", "verdict", "measured", "limit", "unit",
                             "where", "sentence", "source"});
      CHECK(finding.at("id").get<std::string>().rfind(finding.at("rule").get<std::string>(), 0) ==
            0);
    }
    for (const json& source : r.at("sources")) {
      require_keys(source, {"id", "citation", "clause", "basis"});
    }
    CHECK_FALSE(r.at("cautions").empty());
  }
}

TEST_CASE("a cook who is not at the oven sees nothing there, and null says so",
          "[report][json][contract]") {
  const json r = hand_built();
  const json& ben = r.at("cooks").at(1);
  CHECK(ben.at("upright").is_null());
  CHECK(ben.at("least_stoop").is_null());
  CHECK(ben.at("hand_at_oven").is_null());
  CHECK(ben.at("full_view").at("standoff_mm").is_null());
  CHECK(ben.at("estimate_sd_mm").at("elbow").is_null());  // measured
  CHECK(ben.at("estimate_sd_mm").at("eye") == 8);
  // A cook who is not at the oven has no heat to tell.
  const json cooks = r.at("heat").at("cooks");
  REQUIRE(cooks.size() == 2);
  require_keys(cooks[0], {"name", "face_kw_m2", "hand_kw_m2", "tolerance_s", "linger_standoff_mm"});
  CHECK(cooks[1].at("face_kw_m2").is_null());
  CHECK(r.at("light").at("lamp").is_null());
}

TEST_CASE("numbers stand at the contract's quanta", "[report][json][contract]") {
  const json r = hand_built();
  const json& ana = r.at("cooks").at(0);
  CHECK(ana.at("eye_height_mm") == 1661.0);
  CHECK(ana.at("upright").at("visible_pizza_fraction") == 0.7644);
  CHECK(ana.at("upright").at("farthest_visible_mm") == 298.4);
  CHECK(ana.at("upright").at("steepest_gaze_deg") == 31.9);
  CHECK(r.at("fits_adults_fraction") == 0.7124);
}

TEST_CASE("a builder's marks are whole steps under the hands' ceiling", "[report][json]") {
  const json build = hand_built().at("recommended_build");
  CHECK(build.at("mm").at("oven_base_height_mm") == 1075);
  CHECK(build.at("mm").at("counter_height_mm") == 910);
  CHECK(build.at("mm").at("riser_mm") == 165);
  CHECK(build.at("inch").at("oven_base_height_in") == 42.25);
  CHECK(build.at("inch").at("oven_base_height_text") == "42 1/4 in");
  CHECK(build.at("inch").at("counter_height_in") == 35.75);
}

TEST_CASE("findings have ids of their own, and their sources and nothing else are listed",
          "[report][json]") {
  config::Config several;
  several.cooks.push_back({.name = "Two", .stature_mm = 1620});
  for (const json& r : {hand_built(), of(several)}) {
    std::set<std::string> ids, cited, listed;
    for (const json& finding : r.at("findings")) {
      CAPTURE(finding.at("id"));
      CHECK(ids.insert(finding.at("id").get<std::string>()).second);
      cited.insert(finding.at("source").get<std::string>());
    }
    for (const json& caution : r.at("cautions")) {
      cited.insert(caution.at("source").get<std::string>());
    }
    for (const json& source : r.at("sources")) {
      CHECK(listed.insert(source.at("id").get<std::string>()).second);
    }
    for (const std::string& id : cited) {
      CAPTURE(id);
      CHECK(listed.count(id) == 1);
    }
    // Besides findings and cautions only estimates, the guests' share and what binds are cited.
    CHECK(listed.size() <= cited.size() + 3);
  }
}

TEST_CASE("no report holds a number that is none", "[report][json][law]") {
  config::Config config;
  config.station.oven_base_height_mm = 1800;  // over the eye: nothing is seen
  config.view.standoff_mm = 100;
  for (const config::Config& each : {config, config::Config{}, test::hand_built_config()}) {
    const std::string text = report::report_json(each, evaluate::evaluate(each));
    for (const char* word : {"nan", "inf", "infinity", "NaN", "Infinity"}) {
      CAPTURE(word);
      CHECK_FALSE(has_word(text, word));
    }
    CHECK(text.find("-0,") == std::string::npos);
  }
}

TEST_CASE("the fingerprint follows the config and nothing else", "[report][json]") {
  config::Config a = test::hand_built_config(), b = a;
  CHECK(report::config_fingerprint(a) == report::config_fingerprint(b));
  CHECK(report::config_fingerprint(a).size() == 16);
  b.oven.brow_mm += 0.1;
  CHECK(report::config_fingerprint(a) != report::config_fingerprint(b));
}

TEST_CASE("the report of the hand-built household is word for word as it was read through",
          "[report][json][golden]") {
  const std::string path = HEARTHSIGHT_SOURCE_DIR "/tests/report/golden/hand_built_report.json";
  std::ifstream file(path);
  REQUIRE(file.good());
  std::stringstream read;
  read << file.rdbuf();
  const config::Config config = test::hand_built_config();
  std::string text = report::report_json(config, test::hand_built_evaluation(config));
  // The version is the build's, and the fingerprint has a test of its own.
  const auto blank = [&text](const std::string& own, const std::string& with) {
    const std::size_t at = text.find(own);
    REQUIRE(at != std::string::npos);
    text.replace(at, own.size(), with);
  };
  blank("\"version\": \"" + std::string(version()) + "\"", "\"version\": \"VERSION\"");
  blank(report::config_fingerprint(config), "FINGERPRINT");
  std::istringstream expected(read.str()), got(text);
  std::string want, have;
  int line = 0;
  while (std::getline(expected, want)) {
    ++line;
    REQUIRE(std::getline(got, have));
    CAPTURE(line);
    REQUIRE(have == want);
  }
  CHECK_FALSE(std::getline(got, have));
}

TEST_CASE("heat and light are told at their quanta, for every cook at the oven",
          "[report][heat][light]") {
  config::Config config;
  config.light.mount = config::Mount::Right;
  config.light.general_lumens = 2000;
  config.light.general_up_mm = 1000;
  const evaluate::Evaluation e = evaluate::evaluate(config);
  const json r = json::parse(report::report_json(config, e));
  const json heat = r.at("heat"), lamp = r.at("light").at("lamp");
  const auto near = [](const json& told, double meant, double quantum) {
    return std::abs(told.get<double>() - meant) <= quantum / 2 + 1e-9;
  };
  CHECK(near(heat.at("mouth_emissive_kw_m2"), e.mouth.emissive_kw_m2, 0.01));
  const json cook = heat.at("cooks").at(0);
  CHECK(near(cook.at("face_kw_m2"), e.cooks[0].heat.face_watching_kw_m2, 0.01));
  CHECK(near(cook.at("hand_kw_m2"), e.cooks[0].heat.hand_kw_m2, 0.01));
  // SFPE Handbook eq. 63.43: 60 x 1.33 / q^1.33 seconds.
  const double q = e.cooks[0].heat.face_watching_kw_m2;
  CHECK(near(cook.at("tolerance_s"), 60 * 1.33 / std::pow(q, 1.33), 0.1));
  REQUIRE(e.light.lamp->head.has_value());
  CHECK(near(lamp.at("head").at("up_mm"), e.light.lamp->head->z, 0.1));
  CHECK(near(lamp.at("head").at("ahead_mm"), -e.light.lamp->head->y, 0.1));
  CHECK(near(lamp.at("pizza_lx"), e.light.lamp->light.lux, 1));
  CHECK(near(r.at("light").at("prep_lx"), *e.light.prep_lux, 1));
  // Nothing above nought is told of a cook who stays at the dough.
  config.cooks[0].at = config::At::Prep;
  const json away = of(config).at("heat").at("cooks").at(0);
  CHECK(away.at("face_kw_m2").is_null());
  CHECK(away.at("tolerance_s").is_null());
}
