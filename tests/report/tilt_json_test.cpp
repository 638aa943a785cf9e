#include "engine/report/tilt_json.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/config/fields.h"
#include "engine/config/setting.h"
#include "tests/report/preset.h"

using namespace hs;
using measure::Gravity;
using nlohmann::json;
using report::Tilted;
using report::TiltUse;
using report::Units;

namespace {

constexpr double kRad = std::numbers::pi / 180;

std::vector<Gravity> still(double deg, double roll_deg = 0) {
  return std::vector<Gravity>(
      60, Gravity{std::cos(deg * kRad) * std::sin(roll_deg * kRad), std::sin(deg * kRad),
                  std::cos(deg * kRad) * std::cos(roll_deg * kRad)});
}

struct Plan {
  config::Config config = test::preset("demo");
  evaluate::Evaluation evaluation = evaluate::evaluate(config);

  json asked(TiltUse use, const std::vector<Gravity>& first, const std::vector<Gravity>& second,
             std::optional<double> distance_mm = {}, std::size_t cook = 0,
             Units units = Units::Millimetre) const {
    const Tilted tilted{use, cook, first, second, distance_mm};
    return json::parse(report::tilt_json(config, evaluation, tilted, units));
  }
};

std::string all(const json& answer) {
  std::string text;
  for (const auto& line : answer["said"]) text += line.get<std::string>() + "\n";
  return text;
}

}  // namespace

TEST_CASE("a line of sight as the plan has it agrees, and another one says by how much",
          "[report][measure]") {
  const Plan plan;
  const sight::Eye& eye = plan.evaluation.cooks[0].watching.eye;
  const double far_mm = plan.evaluation.geometry.floor.far_mm;
  // Right triangle: the eye over the floor, the run to the floor's far edge.
  const double deg = std::atan2(eye.height_mm, eye.distance_mm + far_mm) / kRad;
  for (const double sign : {1.0, -1.0}) {
    const json same =
        plan.asked(TiltUse::Sight, still(sign * (deg + 0.8), 90), still(sign * (-deg + 0.8), 90));
    CHECK(same["problem"] == "");
    CHECK(all(same).find("They agree") != std::string::npos);
    CHECK(all(same).find("is cancelled") != std::string::npos);
    CHECK(same["offer"].is_null());
    const json other =
        plan.asked(TiltUse::Sight, still(sign * (deg + 5), 90), still(-sign * (deg + 5), 90));
    CHECK(all(other).find("5.0\u00B0 apart") != std::string::npos);
    CHECK(all(other).find("higher") != std::string::npos);
  }
  const json once = plan.asked(TiltUse::Sight, still(-deg, 90), {});
  CHECK(all(once).find("Turn the phone round") != std::string::npos);
  // The error of one way is 1.044 degrees, told as no less.
  CHECK(all(once).find("\u00B1 1.1\u00B0") != std::string::npos);
}

TEST_CASE("the fall of the ground is offered for the plan, and only offered", "[report][measure]") {
  const Plan plan;
  // 1 in 48 is a quarter inch in a foot: 63.5 mm in 3048.
  const double deg = std::atan(1.0 / 48) / kRad;
  const json found = plan.asked(TiltUse::Fall, still(-deg), still(deg));
  CHECK(all(found).find("falls 64 mm in 10 ft") != std::string::npos);
  CHECK(found["offer"]["field"] == "site.fall_mm");
  CHECK(found["offer"]["value"] == "63.5 mm");
  const json inches = plan.asked(TiltUse::Fall, still(-deg), still(deg), {}, 0, Units::Inch);
  CHECK(all(inches).find("falls 2\u00BD in") != std::string::npos);
  const json up = plan.asked(TiltUse::Fall, still(deg), still(-deg));
  CHECK(all(up).find("rises 64 mm") != std::string::npos);
  CHECK(up["offer"]["value"] == "-63.5 mm");
  // 30 degrees is a stair, not a terrace: told, and not offered.
  const json steep = plan.asked(TiltUse::Fall, still(-30), still(30));
  CHECK(steep["problem"] == "");
  CHECK(steep["offer"].is_null());
}

TEST_CASE("an eye height comes with its error, and is offered only where it is the surer one",
          "[report][measure]") {
  Plan plan;
  plan.config.cooks[0] = {};
  plan.config.cooks[0].name = "Ana";
  plan.evaluation = evaluate::evaluate(plan.config);
  // Phone 1000 up and 3000 away, eye at 1600: by hand in tests/measure.
  const auto feet = still(-18.43495, 90), eye = still(11.30993, 90);
  const json found = plan.asked(TiltUse::Eye, feet, eye, 3000);
  CHECK(found["problem"] == "");
  CHECK(all(found).find("1600 mm above the ground, \u00B1 24 mm") != std::string::npos);
  // 24 mm against the survey's 8: no eye height, but a body height for who knows none.
  CHECK(found["offer"]["field"] == "cooks.0.stature_mm");
  CHECK(all(found).find("not offered as one") != std::string::npos);
  // What is offered puts the eye where it was measured.
  config::Config next = plan.config;
  CHECK(config::set_field(next, *config::find_field("cooks[].stature_mm"), 0,
                          found["offer"]["value"].get<std::string>(), Unit::Inch)
            .empty());
  CHECK(std::abs(evaluate::evaluate(next).cooks[0].body.eye.value_mm - 1600) <= 1);
  // Measured by tape already: nothing to offer.
  plan.config.cooks[0].eye_height_mm = 1580;
  plan.evaluation = evaluate::evaluate(plan.config);
  const json known = plan.asked(TiltUse::Eye, feet, eye, 3000);
  CHECK(known["offer"].is_null());
  CHECK(all(known).find("measured by tape") != std::string::npos);
  // A young child's estimate is less sure than a short sight.
  plan.config.cooks[0] = {};
  plan.config.cooks[0].name = "Kim";
  plan.config.cooks[0].build = config::Build::Child;
  plan.config.cooks[0].age_years = 5;
  plan.config.cooks[0].stature_mm = 1200;
  plan.evaluation = evaluate::evaluate(plan.config);
  // 1000 mm away, phone 600 up, eye at 1100: 0.3 degrees are 7.12 and 6.54 mm, the zero 1.92, the
  // tape 5.5; root of the squares 11.29, by hand.
  REQUIRE(plan.evaluation.cooks[0].body.eye.sd_mm > 11.3);
  const json child = plan.asked(TiltUse::Eye, still(-30.96376, 90), still(26.56505, 90), 1000);
  CHECK(all(child).find("1100 mm above the ground, \u00B1 11 mm") != std::string::npos);
  CHECK(child["offer"]["field"] == "cooks.0.eye_height_mm");
  CHECK(child["offer"]["value"] == "1100 mm");
}

TEST_CASE("what cannot be measured so is said, and nothing else", "[report][measure]") {
  const Plan plan;
  const auto refused = [](const json& answer) {
    CHECK(answer["said"].empty());
    CHECK(answer["offer"].is_null());
    return answer["problem"].get<std::string>();
  };
  CHECK(refused(plan.asked(TiltUse::Sight, {}, {})).find("held still") != std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Sight, still(-15, 90), still(-15, 90))).find("one line") !=
        std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Fall, still(-2), {})).find("held still") != std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Fall, still(-2, 90), still(2, 90))).find("on its back") !=
        std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Eye, still(-18), still(11))).find("distance") !=
        std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Eye, still(-18), still(11), 300)).find("1000 to 8000 mm") !=
        std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Eye, still(-18), still(-20), 3000)).find("No height") !=
        std::string::npos);
  CHECK(refused(plan.asked(TiltUse::Fall, still(-2), still(2), {}, 99)).find("who") !=
        std::string::npos);
}
