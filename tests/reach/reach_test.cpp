#include "engine/reach/reach.h"

#include <algorithm>
#include <cmath>

#include "catch_amalgamated.hpp"

namespace {

using Catch::Matchers::WithinAbs;
using namespace hs::reach;

// Half of the last digit that the reference prints.
constexpr double kPrinted_mm = 0.5;
// The reference says "about" for the middle of the knee table; its own tolerance.
constexpr double kKnee_mm = 3;
// Plain arithmetic on doubles.
constexpr double kExact_mm = 1e-9;

// Survey's mean woman (US Army 2012): arm to grip 652, shoulder 1335, surface 75 below the elbow.
constexpr double kArm_mm = 652, kShoulder_mm = 1335, kSurface_mm = 949;

}  // namespace

TEST_CASE("a mean woman's straight arm grips 525 in front of her shoulder", "[reach][source]") {
  // Ergonomics reference, section 2, horizontal reach over a surface (plain geometry).
  const Zones zones =
      zones_over(kSurface_mm,
                 {.shoulder_mm = kShoulder_mm, .arm_to_grip_mm = kArm_mm, .forearm_hand_mm = 440});
  CHECK_THAT(zones.far_mm, WithinAbs(525, kPrinted_mm));
  CHECK_THAT(zones.near_mm, WithinAbs(440, kExact_mm));
}

TEST_CASE("the belly takes away from both zones", "[reach][law]") {
  const Arm slim{.shoulder_mm = kShoulder_mm, .arm_to_grip_mm = kArm_mm, .forearm_hand_mm = 440};
  Arm round = slim;
  round.belly_mm = 130;
  CHECK_THAT(zones_over(kSurface_mm, slim).far_mm - zones_over(kSurface_mm, round).far_mm,
             WithinAbs(130, kExact_mm));
  CHECK_THAT(zones_over(kSurface_mm, slim).near_mm - zones_over(kSurface_mm, round).near_mm,
             WithinAbs(130, kExact_mm));
}

TEST_CASE("a lean of 20 degrees brings the shoulder forward by its sine", "[reach]") {
  // Trunk 400 over the hips: forward 400 sin 20 = 136.8, down 400 (1 - cos 20) = 24.1.
  const double dropped_mm = kShoulder_mm - 24.1229517;
  const double by_hand_mm =
      136.8080573 +
      std::sqrt(kArm_mm * kArm_mm - (dropped_mm - kSurface_mm) * (dropped_mm - kSurface_mm));
  const Zones zones = zones_over(kSurface_mm, {.shoulder_mm = kShoulder_mm,
                                               .arm_to_grip_mm = kArm_mm,
                                               .forearm_hand_mm = 440,
                                               .hip_mm = kShoulder_mm - 400});
  CHECK_THAT(zones.far_mm, WithinAbs(by_hand_mm, 1e-6));  // the hand figures have 7 decimals
}

TEST_CASE("a surface below the hanging hand is out of reach", "[reach][law]") {
  const Zones zones =
      zones_over(kShoulder_mm - kArm_mm - 1,
                 {.shoulder_mm = kShoulder_mm, .arm_to_grip_mm = kArm_mm, .forearm_hand_mm = 440});
  CHECK(zones.far_mm == 0);
  CHECK(zones.near_mm == 0);
}

TEST_CASE("the near zone never ends beyond the far one and neither is negative", "[reach][law]") {
  for (double surface_mm = 200; surface_mm <= 1700; surface_mm += 25) {
    for (double belly_mm = 0; belly_mm <= 700; belly_mm += 100) {
      const Zones zones = zones_over(surface_mm, {.shoulder_mm = kShoulder_mm,
                                                  .arm_to_grip_mm = kArm_mm,
                                                  .forearm_hand_mm = 440,
                                                  .hip_mm = 880,
                                                  .belly_mm = belly_mm});
      CAPTURE(surface_mm, belly_mm);
      CHECK(zones.near_mm >= 0);
      CHECK(zones.near_mm <= zones.far_mm);
      CHECK(std::isfinite(zones.far_mm));
    }
  }
}

TEST_CASE("knee depth is the access standard's", "[reach][source]") {
  // ADA 2010 306.3, depth 280 at 230 high, about 242 at 460, 205 at 685.
  REQUIRE(knee_depth_mm(230));
  CHECK_THAT(*knee_depth_mm(230), WithinAbs(280, kExact_mm));
  CHECK_THAT(*knee_depth_mm(460), WithinAbs(242, kKnee_mm));
  CHECK_THAT(*knee_depth_mm(685), WithinAbs(205, kExact_mm));
  CHECK_FALSE(knee_depth_mm(229.9));
  CHECK_FALSE(knee_depth_mm(685.1));
  CHECK_FALSE(knee_depth_mm(std::nan("")));
}

TEST_CASE("forward reach over a counter is the access standard's", "[reach][source]") {
  // ADA 2010 308.2.2.
  CHECK(forward_reach_high_mm(500) == 1220);
  CHECK(forward_reach_high_mm(510) == 1220);
  CHECK(forward_reach_high_mm(510.1) == 1120);
  CHECK(forward_reach_high_mm(600) == 1120);
  CHECK(forward_reach_high_mm(635) == 1120);
  CHECK_FALSE(forward_reach_high_mm(635.1));
  CHECK_FALSE(forward_reach_high_mm(640));
}

TEST_CASE("a body stands as near as its belly or its toes let it", "[reach]") {
  // Belly 130 in front of the eye, mouth set back 80: 80 + 25 + 130.
  CHECK_THAT(nearest_standoff_mm({80, 25, 75}, 130, 150), WithinAbs(235, kExact_mm));
  // No overhang, no toe space, long feet: the kick board stops the toes at 80 + 250.
  CHECK_THAT(nearest_standoff_mm({80, 0, 0}, 130, 250), WithinAbs(330, kExact_mm));
  // Toe space lets the same feet under the counter.
  CHECK(nearest_standoff_mm({80, 25, 100}, 130, 250) < nearest_standoff_mm({80, 0, 0}, 130, 250));
  // A mouth that sticks out over the edge never asks for a place behind the mouth.
  CHECK(nearest_standoff_mm({0, 0, 0}, -100, -100) == 0);
}

TEST_CASE("the feet line is the watching distance less setback and toes", "[reach]") {
  CHECK_THAT(feet_line_mm(700, 80, 130), WithinAbs(490, kExact_mm));
  CHECK(feet_line_mm(200, 150, 130) < 0);
}
