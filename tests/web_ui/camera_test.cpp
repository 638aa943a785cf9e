// The scene's camera: it shows everything, loses nothing and comes to rest.

#include "web/scene/camera.h"

#include <cmath>
#include <vector>

#include "catch_amalgamated.hpp"

using namespace hs::web::scene;

namespace {

// A station some four metres wide.
const std::vector<Vec> kPoints{{-700, -1000, 0},   {-700, -1000, 1800}, {3200, -900, 0},
                               {3200, -900, 1400}, {-700, 700, 0},      {2200, 700, 900},
                               {300, 650, 1500}};

int frames_to_rest(Camera& camera) {
  for (int i = 1; i <= 600; ++i) {
    if (!camera.step(16)) return i;
  }
  return 1000;
}

bool all_in_view(const Camera& camera, double aspect) {
  const Lens lens = lens_of(camera.pose(), aspect);
  for (const Vec& p : kPoints) {
    double x = 0, y = 0;
    if (!place_on(lens, p, x, y) || x < 0 || x > 1 || y < 0 || y > 1) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("the first view shows every point in any picture", "[scene][camera]") {
  for (const double aspect : {0.5, 0.8, 1.0, 1.6, 2.6}) {
    for (const double yaw : {-52.0, 52.0, 0.0}) {
      Camera camera;
      camera.show(kPoints, yaw, aspect);
      camera.step(16);
      CAPTURE(aspect, yaw);
      CHECK(all_in_view(camera, aspect));
    }
  }
}

TEST_CASE("no hand loses the station or goes under the ground", "[scene][camera]") {
  Camera camera;
  camera.show(kPoints, -52, 1.2);
  unsigned seed = 7;
  const auto next = [&seed] {
    seed = seed * 1664525U + 1013904223U;
    return static_cast<double>(seed >> 16) / 65536.0 - 0.5;
  };
  for (int i = 0; i < 2000; ++i) {
    camera.orbit(400 * next(), 400 * next());
    camera.pan(300 * next(), 300 * next(), 300);
    camera.zoom(1 + next());
    camera.step(16);
    const Pose pose = camera.pose();
    CHECK(pose.at.z > 0);
    // What is looked at stays among the points, so the station is before the camera.
    const Lens lens = lens_of(pose, 1.2);
    bool any = false;
    for (const Vec& p : kPoints) {
      double x = 0, y = 0;
      any = any || place_on(lens, p, x, y);
    }
    CHECK(any);
    CHECK(length(pose.at - pose.to) < 40000);
  }
  camera.reset();
  CHECK(frames_to_rest(camera) < 120);
  CHECK(all_in_view(camera, 1.2));
}

TEST_CASE("moves ease and end; without motion they are done at once", "[scene][camera]") {
  Camera camera;
  camera.show(kPoints, -52, 1.2);
  CHECK(frames_to_rest(camera) == 1);
  const Pose before = camera.pose();
  camera.orbit(100, 0);
  CHECK(camera.step(16));
  CHECK(length(camera.pose().at - before.at) > 1);
  const int frames = frames_to_rest(camera);
  CHECK(frames > 5);
  CHECK(frames < 90);
  CHECK_FALSE(camera.step(16));
  camera.set_still(true);
  camera.orbit(100, 0);
  CHECK_FALSE(camera.step(16));
  camera.set_eye({0, -700, 1600}, {0, 300, 1200});
  camera.look_through(true);
  CHECK_FALSE(camera.step(16));
  CHECK(camera.pose().at == Vec{0, -700, 1600});
  CHECK(camera.inside());
}

TEST_CASE("through an eye the glance is 60 degrees along the longer side", "[scene][camera]") {
  for (const double aspect : {0.7, 1.0, 2.0}) {
    Camera camera;
    camera.set_still(true);
    camera.show(kPoints, -52, aspect);
    camera.set_eye({0, -700, 1600}, {0, 300, 1600});
    camera.look_through(true);
    camera.step(16);
    const Lens lens = lens_of(camera.pose(), aspect);
    // A point 30 degrees off along the longer side stands at that side's edge.
    const double off = 1000 * std::tan(kGlance_deg / 2 * 3.14159265358979 / 180);
    const Vec point = aspect >= 1 ? Vec{off, 300, 1600} : Vec{0, 300, 1600 + off};
    double x = 0, y = 0;
    REQUIRE(place_on(lens, point, x, y));
    if (aspect >= 1)
      CHECK(x == Catch::Approx(1).margin(0.001));
    else
      CHECK(y == Catch::Approx(0).margin(0.001));
  }
}

TEST_CASE("a point on the way through a place of the picture is seen at that place",
          "[scene][camera]") {
  for (const double aspect : {0.6, 1.0, 2.2}) {
    Camera camera;
    camera.set_still(true);
    camera.show(kPoints, -52, aspect);
    camera.orbit(130, 40);
    camera.step(16);
    const Lens lens = lens_of(camera.pose(), aspect);
    for (const double x : {0.0, 0.2, 0.5, 0.9}) {
      for (const double y : {0.05, 0.5, 1.0}) {
        const Vec way = way_through(camera.pose(), aspect, x, y);
        CHECK(length(way) == Catch::Approx(1));
        double seen_x = 0, seen_y = 0;
        REQUIRE(place_on(lens, camera.pose().at + way * 3000, seen_x, seen_y));
        CHECK(seen_x == Catch::Approx(x).margin(1e-9));
        CHECK(seen_y == Catch::Approx(y).margin(1e-9));
      }
    }
  }
}

TEST_CASE("the plan lens is true to scale and not mirrored", "[scene][camera]") {
  const Lens lens = plan_lens({-200, 100, 900}, {200, 500, 900});
  double x = 0, y = 0;
  const Matrix& m = lens.view_projection;
  const auto at = [&](Vec p) {
    x = m[0] * p.x + m[4] * p.y + m[8] * p.z + m[12];
    y = m[1] * p.x + m[5] * p.y + m[9] * p.z + m[13];
  };
  at({200, 500, 900});
  CHECK(x == Catch::Approx(1));
  CHECK(y == Catch::Approx(1));
  at({-200, 100, 900});
  CHECK(x == Catch::Approx(-1));
  CHECK(y == Catch::Approx(-1));
}
